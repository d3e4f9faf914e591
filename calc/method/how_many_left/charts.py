"""Charts of a removal job: the catch of each pass, and the sum against the estimate."""

from __future__ import annotations

import math

from calc.declare import Axis, Chart, Series
from calc.method.how_many_left.choice import Fit, Job
from calc.method.how_many_left.fit import expected_catches

SHOWN_AHEAD = 5
"""Further passes drawn in the chart."""


def catch_chart(job: Job, fit: Fit | None, ahead: int) -> Chart:
    """Return the catch of each pass, with what the fit expects and what it foresees.

    Without a fit only the catch itself is drawn, so that a stop hides what it must.
    """
    places = tuple(float(place) for place in range(1, len(job.catches) + 1))
    series = [
        Series(
            label="caught", x=places, y=tuple(float(each) for each in job.catches), style="points"
        )
    ]
    if fit is not None:
        series.append(Series(label="expected", x=places, y=fit.expected))
        ahead = min(ahead, SHOWN_AHEAD)
        if ahead:
            series.append(_next_passes(job, fit, ahead))
    return Chart(
        name="catch_per_pass",
        title="Catch per pass",
        alt="Caught on each pass: " + ", ".join(str(each) for each in job.catches) + ".",
        x=Axis(label="pass"),
        y=Axis(label="wasps caught", low=0.0),
        series=tuple(series),
    )


def _next_passes(job: Job, fit: Fit, ahead: int) -> Series:
    """Draw the coming passes of mean length, joined to the last one made."""
    coming = expected_catches(fit.number - job.caught, fit.probability, (1.0,) * ahead)
    k = len(job.catches)
    return Series(
        label="to come, if nothing changes",
        x=tuple(float(k + place) for place in range(ahead + 1)),
        y=(fit.expected[-1], *coming),
        style="dashed",
    )


def total_chart(job: Job, fit: Fit) -> Chart:
    """Return the catch so far against the estimate and its 95 % interval."""
    places = tuple(float(place) for place in range(len(job.catches) + 1))
    ends = (places[0], places[-1])
    series = [
        Series(label="caught so far", x=places, y=_summed(job.catches), style="points"),
        Series(label="expected", x=places, y=_summed(fit.expected)),
        Series(label="estimate", x=ends, y=(fit.number, fit.number), style="dashed"),
    ]
    # A limit far above the estimate would flatten everything else to a line at the bottom.
    if fit.high is not None and fit.high <= 5 * fit.number:
        band = Series(
            label="95 % interval",
            x=ends,
            y=(float(fit.low),) * 2,
            y2=(float(fit.high),) * 2,
            style="band",
        )
        series.insert(0, band)
    return Chart(
        name="total_caught",
        title="Caught so far against the estimate",
        alt=f"{job.caught} caught; estimated at least {math.floor(fit.number)} at the start.",
        x=Axis(label="passes made"),
        y=Axis(label="wasps", low=0.0),
        series=tuple(series),
    )


def _summed(values: tuple[float, ...] | tuple[int, ...]) -> tuple[float, ...]:
    total, sums = 0.0, [0.0]
    for each in values:
        total += each
        sums.append(total)
    return tuple(sums)

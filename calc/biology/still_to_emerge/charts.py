"""Adults out of the sealed cells by the day."""

from __future__ import annotations

from calc.biology.still_to_emerge.brood import Brood
from calc.declare import Axis, Chart, Series

_STEPS = 20


def chart(workers: Brood, queens: Brood, open_end: bool) -> Chart:
    """Return the expected adults and their band; no line where the end is open."""
    end = max(case.days for case in queens.outer)
    x = tuple(end * step / _STEPS for step in range(_STEPS + 1))
    bands = [
        tuple(a + b for a, b in zip(workers.limits(day), queens.limits(day), strict=True))
        for day in x
    ]
    series = [
        Series(
            label="95 % range, all readings",
            x=x,
            y=tuple(0.0 if open_end else low for low, _ in bands),
            y2=tuple(high for _, high in bands),
            style="band",
        )
    ]
    if not open_end:
        both = tuple(workers.expected(day) + queens.expected(day) for day in x)
        series.append(Series(label="all", x=x, y=both))
        if queens.cells:
            series.append(
                Series(
                    label="from queen cells",
                    x=x,
                    y=tuple(queens.expected(day) for day in x),
                    style="dashed",
                )
            )
    return Chart(
        name="emergence",
        title="Out of the sealed cells",
        alt=f"Adults out against days, up to {workers.cells + queens.cells} in "
        f"{end:.0f} days, with a band over all readings.",
        x=Axis(label="days from the count", unit="day", low=0.0),
        y=Axis(label="adults out", low=0.0),
        series=tuple(series),
    )

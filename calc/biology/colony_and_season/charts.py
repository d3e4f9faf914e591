"""The colony's year as a figure."""

from __future__ import annotations

from calc.biology.colony_and_season.size import adults_expected
from calc.biology.season_calendar import HALVES, Year, growth, shift, stages
from calc.declare import Axis, Chart, Series


def year_chart(found: Year, group: str, south: bool, mild: bool, here: int) -> Chart:
    """Return the range of adults through the year, the time of queens and males, and the date.

    Parameters
    ----------
    found : from :func:`calc.biology.season_calendar.year`
    group : species or group
    south, mild : where it is
    here : half-month of the local date
    """
    halves = range(1, HALVES + 1)
    x = tuple(_month(half) for half in halves)
    north = [shift(half) if south else half for half in halves]
    ranges = [
        adults_expected(stages(half, found), group, mild, growth(half, found)) for half in north
    ]
    top = max(high for _, high in ranges) or 1
    series = [
        Series(
            label="adults, low to high",
            x=x,
            y=tuple(float(low) for low, _ in ranges),
            y2=tuple(float(high) for _, high in ranges),
            style="band",
        ),
        Series(label="your date", x=(_month(here),) * 2, y=(0.0, 1.1 * top), style="dashed"),
    ]
    if found.sexuals is not None:
        places = [
            place
            for place, half in zip(x, north, strict=True)
            if found.sexuals[0] <= half <= found.last
        ]
        series.append(
            Series(
                label="young queens and males",
                x=tuple(places),
                y=(1.05 * top,) * len(places),
                style="points",
            )
        )
    return Chart(
        name="year",
        title="The colony's year",
        alt=f"Adults to expect through the year, up to {top}, with your date and the time of "
        "young queens and males.",
        x=Axis(label="month", low=1.0, high=13.0),
        y=Axis(label="adults", low=0.0),
        series=tuple(series),
    )


def _month(half: int) -> float:
    return 1 + (half - 0.5) / 2

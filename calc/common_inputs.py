"""Inputs that several calculators share to the letter."""

from __future__ import annotations

from calc.declare import Count, Number

ALTITUDE = Number(
    name="altitude",
    label="Altitude",
    meaning="Height above the sea; thin air carries less.",
    unit="m",
    customary="ft",
    low=-430,
    high=4500,
    why="from the lowest land to the highest towns",
    source="limits_of_flow_tool",
    usual=0,
    step=100,
)
MONTH = Count(
    name="month",
    label="Month",
    meaning="1 for January.",
    low=1,
    high=12,
    why="months of the year",
    source="arithmetic",
    usual=8,
)
DAY = Count(
    name="day",
    label="Day",
    meaning="Of the month.",
    low=1,
    high=31,
    why="days of a month",
    source="arithmetic",
    usual=20,
)


def centimetres(
    name: str,
    label: str,
    meaning: str,
    low: float,
    high: float,
    default: float,
    why: str,
    only_if: tuple[str, tuple[str, ...]] | None = None,
    *,
    digits: int,
    step: float,
) -> Number:
    """Return a length typed in centimetres or inches, with limits of our own reasoning."""
    return Number(
        name=name,
        label=label,
        meaning=meaning,
        only_if=only_if,
        unit="cm",
        customary="inch",
        low=low,
        high=high,
        why=why,
        source="own_reasoning",
        usual=default,
        digits=digits,
        step=step,
    )

"""Adults to expect on a date: a range from the table of sizes and the stage."""

from __future__ import annotations

from collections.abc import Sequence

from calc.tables import row

FEW = 6
"""Queen and 5 first workers [young_colony_size]."""

YOUNG = 20
"""Most adults of a colony that the queen still carries alone [young_colony_size]."""

_STANDS_IN = {"vulgaris": "vespula"}


def peak_size(group: str) -> tuple[int, int]:
    """Return low and high number of adults at the peak; 0 where no low end is printed.

    Parameters
    ----------
    group : species or group

    Source: colony_size (table).
    """
    found = row("colony_size", _STANDS_IN.get(group, group))
    return int(found.get("low", 0)), int(found["high"])


def adults_expected(stages: Sequence[str], group: str, mild: bool) -> tuple[int, int]:
    """Return the range of adults over the stages that are possible on a date.

    Parameters
    ----------
    stages : from :func:`calc.biology.season_calendar.stages`
    group : species or group
    mild : winters without hard frost

    Range: the top is for planning, single colonies pass it. Source: colony_size (table),
    young_colony_size.
    """
    low, high = peak_size(group)
    ranges = {
        "founding": (1, YOUNG),
        "growing": (FEW, high),
        "peak": (low or FEW, high),
        "sexuals": (low or FEW, high),
        "ending": (0, high),
        "over": (0, high if mild else 0),
    }
    return min(ranges[each][0] for each in stages), max(ranges[each][1] for each in stages)

"""Adults to expect on a date: a range from the table of sizes and the stage."""

from __future__ import annotations

import math
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


def adults_expected(
    stages: Sequence[str], group: str, mild: bool, grown: float = 1.0
) -> tuple[int, int]:
    r"""Return the range of adults over the stages that are possible on a date.

    While it grows, the top is :math:`20\,(high/20)^g`: a steady rate of growth from 20 adults at
    the first workers to the high end at the peak.

    Parameters
    ----------
    stages : from :func:`calc.biology.season_calendar.stages`
    group : species or group
    mild : winters without hard frost
    grown : g, from :func:`calc.biology.season_calendar.growth`

    Range: the top is for planning, single colonies pass it. Source: colony_size (table),
    young_colony_size.
    """
    low, high = peak_size(group)
    ranges = {
        "founding": (1, YOUNG),
        "growing": (FEW, max(YOUNG, round(YOUNG * math.pow(high / YOUNG, grown)))),
        "peak": (low or FEW, high),
        "sexuals": (low or FEW, high),
        "ending": (0, high),
        "over": (0, high if mild else 0),
    }
    return min(ranges[each][0] for each in stages), max(ranges[each][1] for each in stages)

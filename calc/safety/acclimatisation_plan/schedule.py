"""The published shares of the first days in heat, and the work periods of a day."""

from __future__ import annotations

import math
from typing import Any

from calc import tables

SCHEDULE = {
    "new_heat": "new",
    "new_suit": "new",
    "hot_spell": "new",
    "back": "new",
    "used": None,
}
"""Which column of the table of shares is taken for whom; None where neither is.

The bodies differ for who comes back and for a hot spell: the lower shares are taken, and a caution
shows the others."""


def share(schedule: str, day: int) -> float:
    """Return the share of the usual time in heat on a day of the schedule.

    Parameters
    ----------
    schedule : ``new`` (20 percent more each day) or ``returning`` (50, 60, 80, 100: printed for
        people who know the job, and not taken here)
    day : 1 for the first day in heat; after the last day of the schedule its share holds on

    Returns
    -------
    percent

    Source: NIOSH and OSHA (key ``niosh_osha_acclimatization``), United States.
    """
    days = tables.rows("acclimatization")
    return float(days[min(max(day, 1), len(days)) - 1][schedule])


def minutes(full: float, percent: float) -> int:
    """Return the minutes of a day, ``full * percent / 100``, rounded down."""
    return math.floor(full * percent / 100 + 1e-9)


def spells(in_suit: int, work: int | None) -> tuple[int | None, int | None]:
    """Return work periods and minutes on site, with the rest of each hour between two.

    ``work`` is the work minutes in an hour; None where nobody gave them, or zero of them.
    """
    if not work:
        return None, None
    count = math.ceil(in_suit / work)
    return count, in_suit + max(count - 1, 0) * (60 - work)


def days(schedule: str | None, full: float, work: int | None) -> list[dict[str, Any]]:
    """Return the rows of the first days, by full minutes and the work minutes in an hour."""
    made = []
    for day in range(1, len(tables.rows("acclimatization")) + 1):
        percent = 100.0 if schedule is None else share(schedule, day)
        in_suit = minutes(full, percent)
        made.append(
            {
                "day": day,
                "share": percent,
                "in_suit": in_suit,
                "in_spells": spells(in_suit, work)[0],
            }
        )
    return made

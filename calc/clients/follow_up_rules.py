"""Days and rules after the job: looks, last emergence, stragglers, call-back, prevention."""

from __future__ import annotations

import math
from dataclasses import dataclass
from datetime import date, timedelta

from calc import tables
from calc.biology import season_calendar
from calc.method.stragglers_times import wait_for_all

LOOKS = ("check_1", "check_2", "check_3")
"""Rows of the table ``aftercare`` that are looks."""

SURE = 0.95
"""Chance with which all stragglers are gone by the day given."""

GROUPS = {
    "vespula": ("vespula", "vespula", "vespula"),
    "dolichovespula": ("saxonica", "dolichovespula", "dolichovespula"),
    "crabro": ("crabro", "crabro", "crabro"),
    "velutina": ("velutina", "velutina", "velutina"),
    "polistes": ("polistes", "other", None),
}
"""Animal to its group of the season's calendar, of the sealed days and of the head widths."""


def look_days() -> tuple[int, int, int]:
    """Return the days after the job of the three looks."""
    first, second, third = (int(tables.row("aftercare", key)["days"]) for key in LOOKS)
    return first, second, third


def looks(job: date) -> tuple[date, date, date]:
    """Return the dates of the three looks. Source: check_days_ours."""
    first, second, third = (job + timedelta(days=days) for days in look_days())
    return first, second, third


def sealed_days(animal: str) -> tuple[float, float]:
    """Return the least and the longest sealed days of a group. Source: sealed_ranges."""
    low, high = tables.row("development", GROUPS[animal][1])["sealed"]
    return float(low), float(high)


def last_emergence(job: date, animal: str) -> date:
    """Return the day by which the youngest sealed brood left on the day has come out."""
    return job + timedelta(days=math.ceil(sealed_days(animal)[1]))


def straggler_days(left_out: float) -> float:
    """Return the days until all left out are gone in 95 of 100 cases; 0 for none.

    Parameters
    ----------
    left_out : adults still out when you stopped

    Range: exponential lives with the tagged hornets' mean, no nest to come home to. Source:
    straggler_days_ours.
    """
    if left_out <= 0:
        return 0.0
    return wait_for_all(SURE, float(tables.row("aftercare", "life")["days"]), left_out)


@dataclass(frozen=True, slots=True)
class Counts:
    """What was seen afterwards; None where nobody looked yet."""

    first: int | None
    second: int | None
    indoors: bool


def call_back(counts: Counts) -> str:
    """Return why to come back, or "".

    ``indoors``, ``many`` (above the limit), ``slow`` (a fifth or more of the first count is still
    there and it is not a handful). Source: callback_ours.
    """
    rule = tables.row("aftercare", "check_2")
    if counts.indoors:
        return "indoors"
    if counts.second is None:
        return ""
    if counts.second > rule["count"]:
        return "many"
    if counts.first and 100 * counts.second > rule["share"] * counts.first:
        return "slow"
    return ""


def may_seal(counts: Counts) -> bool:
    """Whether both looks saw no wasp go in. Source: never_seal_live, check_days_ours."""
    return counts.first == 0 and counts.second == 0 and not counts.indoors


def spring_day(job: date, animal: str, south: bool) -> date:
    """Return the next first day on which queens of the animal search, by printed calendars.

    Source: table ``season_calendar``; half a year apart in the two halves of the world.
    """
    span = season_calendar.year(GROUPS[animal][0]).queen
    assert span is not None
    half = season_calendar.shift(span[0]) if south else span[0]
    month, late = (half + 1) // 2, half % 2 == 0
    first = date(job.year, month, 16 if late else 1)
    return first if first > job else date(job.year + 1, month, first.day)

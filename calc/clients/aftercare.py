"""Days after the job: looks, last emergence, the next spring."""

from __future__ import annotations

import math
from collections.abc import Sequence
from datetime import date, timedelta

from calc import tables
from calc.biology import season_calendar

LOOKS = ("check_1", "check_2", "check_3")
"""Rows of the table ``aftercare`` that are looks."""

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


def facts(
    job: date, looks: Sequence[str], animal: str | None, comb: str | None, half: str | None
) -> dict[str, str | int | float]:
    """Return what a letter says of the days after the job, as facts of :mod:`calc.clients.letters`.

    Parameters
    ----------
    job : day of the job
    looks : days of the looks such as 2026-08-23, three at most
    animal : key of :data:`GROUPS`, else nothing is said of brood and spring
    comb : ``taken``, ``part``, ``left`` or None
    half : ``north``, ``south`` or None
    """
    made: dict[str, str | int | float] = dict(zip(LOOKS, looks, strict=False))
    made["limit"] = int(tables.row("aftercare", "check_2")["count"])
    made["mesh"] = float(tables.row("sealing", "ours")["opening"])
    if animal in GROUPS:
        if comb in {"part", "left"}:
            made["last_emergence"] = last_emergence(job, animal).isoformat()
        if half is not None:
            made["spring"] = spring_day(job, animal, half == "south").isoformat()
    return made

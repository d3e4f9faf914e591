"""Rules after the job: when to come back, when the hole may be closed, when all are gone."""

from __future__ import annotations

from dataclasses import dataclass

from calc import tables
from calc.method.stragglers_times import wait_for_all

SURE = 0.95
"""Chance with which all stragglers are gone by the day given."""


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

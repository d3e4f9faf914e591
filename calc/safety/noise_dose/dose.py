"""Dose of a day's noise by the published exchange rates, and its eight-hour mean.

Plain numbers: levels in dBA, times in minutes, doses in percent.
"""

from __future__ import annotations

import math
from collections.abc import Sequence

from calc import tables

SHIFT = 480.0
"""Minutes of the reference day, eight hours."""

Spell = tuple[float, float]
"""A level in dBA and its minutes."""


def minutes_allowed(level: float, criterion: float, exchange: float) -> float:
    """Minutes at one level that make a dose of 100 percent, ``480 / 2^((L - Lc) / q)``.

    Parameters
    ----------
    level : A-weighted level at the ear, dBA
    criterion : level allowed for eight hours, dBA
    exchange : decibels that halve the time, dB

    Returns
    -------
    minutes

    Range: the tables it comes from run from 80 to 130 dBA (OSHA) and to 140 dBA (NIOSH).
    Source: OSHA 1910.95 appendix A (90, 5), NIOSH 1998 (85, 3) (keys ``osha_1910_95_a``,
    ``niosh_1998``).
    """
    return SHIFT / math.pow(2.0, (level - criterion) / exchange)


def hours_osha(level: float) -> float:
    """Return the reference duration T of OSHA table G-16a, hours, for a level in dBA."""
    return minutes_allowed(level, *_limit("osha")) / 60


def minutes_niosh(level: float) -> float:
    """Return the duration of NIOSH 98-126 table 1-1, minutes, for a level in dBA."""
    return minutes_allowed(level, *_limit("niosh"))


def dose(spells: Sequence[Spell], criterion: float, exchange: float) -> float:
    """Dose of several spells, ``100 (C1/T1 + C2/T2 + ...)``, in percent of the day's limit.

    Every level counts, also below the 80 dBA at which a dosimeter begins: that errs to the
    cautious side.
    """
    return 100 * sum(
        minutes / minutes_allowed(level, criterion, exchange) for level, minutes in spells
    )


def dose_of(levels: Sequence[float], minutes: Sequence[float], body: str) -> float:
    """Return the dose in percent by the limit of one row of ``noise_limits``."""
    return dose(list(zip(levels, minutes, strict=True)), *_limit(body))


def mean_level(percent: float, criterion: float, exchange: float) -> float | None:
    """Eight-hour mean of a dose, ``q / log10(2) log10(D/100) + Lc``; None without any dose.

    With q = 5 the factor is the 16.61 of OSHA, with q = 3 it is the 10 of NIOSH and of
    the European daily exposure level (9.97 without rounding).
    """
    if percent <= 0:
        return None
    return exchange / math.log10(2) * math.log10(percent / 100) + criterion


def mean_level_of(percent: float, body: str) -> float | None:
    """Return the eight-hour mean of a dose by the limit of one row of ``noise_limits``."""
    return mean_level(percent, *_limit(body))


def _limit(body: str) -> tuple[float, float]:
    row = tables.row("noise_limits", body)
    return float(row["criterion"]), float(row["exchange"])

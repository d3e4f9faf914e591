"""The NIOSH lifting equation.

Plain numbers: lengths in cm, angles in degrees, masses in kg, lifts a minute.
"""

from __future__ import annotations

from dataclasses import dataclass
from itertools import pairwise
from typing import Any

from calc import tables

GRAVITY = 9.80665
"""Newtons per kilogram."""


@dataclass(frozen=True, slots=True)
class Constants:
    """Constants of the equation in one unit system; the manual's two systems differ a little."""

    load: float  # greatest weight
    reach: float  # hands nearest to the ankles
    reach_most: float
    height: float  # best height of the hands
    slope: float  # loss per unit of height off the best
    height_most: float
    travel: float  # lift distance constant


METRIC = Constants(23.0, 25.0, 63.0, 75.0, 0.003, 175.0, 4.5)
"""Constants in kg and cm."""

CUSTOMARY = Constants(51.0, 10.0, 25.0, 30.0, 0.0075, 70.0, 1.8)
"""Constants in lb and inches."""


def horizontal(distance: float, c: Constants = METRIC) -> float:
    """Horizontal multiplier ``25/H``: 1 below 25 cm, 0 beyond 63 cm."""
    return 0.0 if distance > c.reach_most else c.reach / max(distance, c.reach)


def vertical(height: float, c: Constants = METRIC) -> float:
    """Vertical multiplier ``1 - 0.003 |V - 75|``, 0 above 175 cm."""
    return 0.0 if height > c.height_most else 1 - c.slope * abs(height - c.height)


def travel(distance: float, c: Constants = METRIC) -> float:
    """Distance multiplier ``0.82 + 4.5/D``, D at least 25 cm; 0 beyond 175 cm."""
    return 0.0 if distance > c.height_most else 0.82 + c.travel / max(distance, c.reach)


def asymmetry(angle: float) -> float:
    """Asymmetry multiplier ``1 - 0.0032 A``, 0 beyond 135 degrees."""
    return 0.0 if angle > 135 else 1 - 0.0032 * angle


def frequency(lifts: float, duration: str) -> float:
    """Frequency multiplier of table 5, straight between its rows, up to five lifts a minute.

    Parameters
    ----------
    lifts : per minute; below 0.2 counts as 0.2
    duration : ``hour``, ``two_hours`` or ``day``

    Raises
    ------
    ValueError : above five lifts a minute, where the columns by height part
    """
    rows = tables.rows("lift_frequency")
    asked = max(lifts, float(rows[0]["lifts"]))
    for low, high in pairwise(rows):
        if asked <= high["lifts"]:
            share = (asked - low["lifts"]) / (high["lifts"] - low["lifts"])
            return float(low[duration] + share * (high[duration] - low[duration]))
    raise ValueError(f"{lifts} lifts a minute is beyond the rows kept here")


def grip(kind: str, height: float, c: Constants = METRIC) -> float:
    """Coupling multiplier of table 7, by the height of the hands."""
    return float(tables.row("lift_grip", kind)["low" if height < c.height else "high"])


def weight_limit(
    reach: float,
    height: float,
    moved: float,
    angle: float,
    lifts: float,
    duration: str,
    coupling: str,
    c: Constants = METRIC,
) -> float:
    """Recommended weight limit, ``23 HM VM DM AM FM CM``, kg.

    Parameters
    ----------
    reach : hands in front of the ankles, cm
    height : hands above the floor at this end of the lift, cm
    moved : how far the hands go up or down, cm
    angle : turn of the body, degrees
    lifts, duration, coupling : as for :func:`frequency` and :func:`grip`

    Returns
    -------
    kg, 0 outside the limits of a variable

    Range: two hands, standing, stable load, firm floor, up to eight hours.
    Source: NIOSH 94-110, revised 2021 (key ``niosh_lifting_1994``).
    """
    return (
        c.load
        * horizontal(reach, c)
        * vertical(height, c)
        * travel(moved, c)
        * asymmetry(angle)
        * frequency(lifts, duration)
        * grip(coupling, height, c)
    )


def weight_limit_pounds(**task: Any) -> float:
    """Return the limit in lb from lengths in inches, arguments as for :func:`weight_limit`."""
    return weight_limit(**task, c=CUSTOMARY)


def team_limit(limit: float, people: int) -> float:
    """Limit for one or two people together, kg: two thirds of the sum for two.

    Source: HSE, United Kingdom (key ``hse_team``).
    """
    return limit if people == 1 else 2 * limit * level("two")


def level(key: str) -> float:
    """Return a figure of the table ``lift_levels``."""
    return float(tables.row("lift_levels", key)["value"])

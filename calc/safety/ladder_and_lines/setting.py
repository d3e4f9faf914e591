"""Setting a leaning ladder, and its load: lengths in m, angles in degrees, masses in kg."""

from __future__ import annotations

import math

from calc import tables

POUND = 0.45359237
"""Kilograms in a pound."""


def rule(key: str) -> float:
    """Return a figure of the table ``ladder_rules``."""
    return float(tables.row("ladder_rules", key)["value"])


def quarter() -> float:
    """Return the share of the working length by which the foot stands out."""
    return rule("quarter") / 100


def rule_angle() -> float:
    """Angle of a ladder set by the quarter rule, ``acos(1/4)``, degrees.

    The quarter is of the working length, not of the height. Source: ``osha_1926_1053``.
    """
    return math.degrees(math.acos(quarter()))


def working_length(height: float) -> float:
    """Length from foot to top support by the quarter rule, ``H / sin a``, m.

    Parameters
    ----------
    height : height of the top support above the foot, m
    """
    return height / math.sqrt(1 - quarter() ** 2)


def foot_out(height: float) -> float:
    """Distance of the foot from the point under the top support, a quarter of the length, m."""
    return quarter() * working_length(height)


def angle_of(height: float, foot: float) -> float:
    """Angle of a ladder as it stands, ``atan(H / foot)``, degrees from the ground."""
    return math.degrees(math.atan2(height, foot))


def highest_feet(height: float) -> float:
    """Greatest height of the feet above the ground, m: 0.9 m of rail below the top support.

    Source: ``ladder_reach``.
    """
    below = rule("top") * math.sin(math.radians(rule_angle()))
    return max(0.0, height - below)


def duty_limit(rating: str) -> float:
    """Return the greatest load of a rating, kg; ``unknown`` counts as the lightest type."""
    key = "III" if rating == "unknown" else rating
    return float(tables.row("ladder_duty", key)["load"]) * POUND

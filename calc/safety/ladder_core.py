"""Setting a leaning ladder, its load, and distances to overhead lines.

Plain numbers: lengths in m, angles in degrees, masses in kg, voltages in kV.
"""

from __future__ import annotations

import math

from calc import tables

FOOT = 0.3048
"""Metres in a foot."""

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


def clearance_unqualified(voltage: float) -> float:
    """Distance for an unqualified person, ``10 + (4/12) ceil((kV - 50) / 10)`` ft, in ft.

    A part of 10 kV counts as a whole one. Source: OSHA 1910.333(c)(3) (``osha_1910_333``).
    """
    steps = math.ceil(max(0.0, voltage - 50) / 10 - 1e-9)
    return 10 + steps * 4 / 12


def clearance_crane(voltage: float) -> float | None:
    """Distance of table A of OSHA 1926.1408, ft; None above 1,000 kV."""
    return _by_voltage("power_lines", voltage, "crane")


def clearance_presumed(voltage: float) -> float | None:
    """Distance presumed by OSHA 1926.1409 above 350 kV, ft; None where it gives no figure."""
    return _by_voltage("power_lines", voltage, "presumed")


def clearance_germany(voltage: float | None) -> float | None:
    """Distance of DGUV 38, Germany, m; the widest for an unknown voltage, None above 380 kV."""
    if voltage is None:
        return float(tables.rows("power_lines_germany")[-1]["distance"])
    return _by_voltage("power_lines_germany", voltage, "distance")


def clearances(voltage: float | None) -> dict[str, float]:
    """Return the published distances in m by rule; for an unknown voltage the widest of each.

    Empty above 1,000 kV, where no table gives a figure.
    """
    if voltage is None:
        widest = tables.rows("power_lines")[-1]
        feet: dict[str, float | None] = {
            "1926.1408": float(widest["crane"]),
            "1926.1409": float(widest["presumed"]),
        }
    elif clearance_crane(voltage) is None:
        return {}
    else:
        feet = {
            "1910.333": clearance_unqualified(voltage),
            "1926.1408": clearance_crane(voltage),
            "1926.1409": clearance_presumed(voltage),
        }
    metres = {name: value * FOOT for name, value in feet.items() if value is not None}
    german = clearance_germany(voltage)
    return metres if german is None else metres | {"DGUV 38": german}


def needed(voltage: float | None) -> float | None:
    """Return the widest of the published distances, m; None where there is none."""
    return max(clearances(voltage).values(), default=None)


def _by_voltage(table: str, voltage: float, column: str) -> float | None:
    for row in tables.rows(table):
        if voltage <= float(row["upto"]) * (1 + 1e-12):
            value = row.get(column)
            return None if value is None else float(value)
    return None

"""Published distances to overhead lines, in m where no foot is named; voltages in kV."""

from __future__ import annotations

import math

from calc import tables

FOOT = 0.3048
"""Metres in a foot."""


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

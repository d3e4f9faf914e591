"""Values written for a reader, in both systems of units."""

from __future__ import annotations

from calc import units


def both(value: float, unit: str, customary: str, digits: int = 0, there: int = 0) -> str:
    """Write a value in its unit and, in brackets, in the customary one."""
    other = units.convert(value, unit, customary)
    return (
        f"{units.show(value, digits)} {units.label(unit)} "
        f"({units.show(other, there)} {units.label(customary)})"
    )


def speed(value: float) -> str:
    """Write a speed in m/s."""
    return both(value, "m/s", "mph")


def degrees(value: float) -> str:
    """Write a temperature in degC."""
    return both(value, "degC", "degF")

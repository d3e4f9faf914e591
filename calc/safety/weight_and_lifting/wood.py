"""What a piece of trunk weighs: lengths in m, densities in kg/m3, masses in kg."""

from __future__ import annotations

import math

from calc import tables

_CUBIC_FOOT = 0.3048**3
_POUND = 0.45359237


def piece_mass(density: float, diameter: float, length: float, hollow: float = 0.0) -> float:
    """Mass of a round piece, ``rho L pi/4 (D^2 - d^2)``, kg.

    Parameters
    ----------
    density : kg/m3
    diameter, length, hollow : m; ``hollow`` is the diameter of the cavity, 0 if there is none

    Range: a round, straight piece with a round cavity; bark and branches come on top.
    """
    return density * length * math.pi / 4 * (diameter**2 - hollow**2)


def log_pounds(pounds_per_cubic_foot: float, inches: float, feet: float = 1.0) -> float:
    """Return the weight of a green log in lb from lb/ft3, diameter in inches, length in ft."""
    density = pounds_per_cubic_foot * _POUND / _CUBIC_FOOT
    return piece_mass(density, inches * 0.0254, feet * 0.3048) / _POUND


def green_density(gravity: float, moisture: float) -> float:
    """Density of wood, ``1000 G (1 + M/100)``, kg/m3.

    Parameters
    ----------
    gravity : specific gravity, oven-dry mass on the volume at that moisture
    moisture : percent of the oven-dry mass

    Source: Wood Handbook (key ``wood_density_formula``).
    """
    return 1000 * gravity * (1 + moisture / 100)


def dry_density(species: str) -> float | None:
    """Return the air-dry density of a wood, kg/m3; None where none was found printed."""
    value = tables.row("wood_density", species).get("dry")
    return None if value is None else float(value)


def densities(species: str, state: str) -> tuple[float, float]:
    """Return the least and the greatest density of a wood that is green, dry or dead, kg/m3.

    A wood without a printed dry density counts as green, the heavier one.
    """
    green = float(tables.row("wood_density", species)["green"])
    dry = dry_density(species) or green
    return {"green": (green, green), "dry": (dry, dry), "dead": (dry, green)}[state]

"""Strength loss of a hollow stem by the published screening formulas.

Plain numbers: lengths in cm, losses in percent, openings as a share of the girth.
"""

from __future__ import annotations

import math

from calc import tables


def wagener(hollow: float, diameter: float) -> float:
    """Strength loss ``100 d^3/D^3``, percent.

    Parameters
    ----------
    hollow : diameter of the decayed core, same unit as ``diameter``
    diameter : stem inside the bark

    Range: a closed, central, round hollow. Source: Wagener 1963 (key ``wagener_1963``).
    """
    return 100 * (hollow / diameter) ** 3


def coder(hollow: float, diameter: float) -> float:
    """Strength loss ``100 d^4/D^4``, percent: the second moment of a round tube.

    Parameters and range as for :func:`wagener`. Source: Coder 1989 (key ``coder_1989``).
    """
    return 100 * (hollow / diameter) ** 4


def smiley(hollow: float, diameter: float, opening: float) -> float:
    """Strength loss with an opening, ``100 (d^3 + R (D^3 - d^3)) / D^3``, percent.

    Parameters
    ----------
    hollow, diameter : as for :func:`wagener`
    opening : width of the opening along the girth over the girth, 0 to 1

    Range: understates where decay is wider than the opening shows.
    Source: Smiley & Fraedrich 1992 (key ``smiley_fraedrich_1992``).
    """
    core = (hollow / diameter) ** 3
    return 100 * (core + opening * (1 - core))


def area_lost(hollow: float, diameter: float) -> float:
    """Share of the cross-section that is hollow, ``100 d^2/D^2``, percent."""
    return 100 * (hollow / diameter) ** 2


def shell_ratio(wall: float, diameter: float) -> float:
    """Sound wall over stem radius, ``2 t/D``. Source: Mattheck 1992 (key ``mattheck_1992``)."""
    return 2 * wall / diameter


def open_ring_loss(hollow: float, diameter: float, opening: float) -> float:
    """Loss of second moment of area of a slotted ring about its weakest axis, percent.

    The rest of the ring is a sector of half angle ``b = pi (1 - R)``. About its own centroid
    ``Ix = k (b - sin b cos b)`` and ``Iy = k (b + sin b cos b) - A x^2`` with
    ``k = (R^4 - r^4)/4``; the smaller one is compared with the solid stem. Without an opening
    this is :func:`coder`. Textbook integrals (key ``open_ring``), no published threshold.
    """
    outer, inner = diameter / 2, hollow / 2
    half = math.pi * (1 - opening)
    area = half * (outer**2 - inner**2)
    if area <= 1e-9 * outer**2:
        return 100.0
    centroid = 2 / 3 * (outer**3 - inner**3) * math.sin(half) / area
    k = (outer**4 - inner**4) / 4
    across = k * (half - math.sin(half) * math.cos(half))
    along = k * (half + math.sin(half) * math.cos(half)) - area * centroid**2
    solid = math.pi * outer**4 / 4
    return 100 * (1 - max(0.0, min(across, along)) / solid)


def losses_of_section(share: float, opening: float) -> dict[str, float]:
    """Return what every formula says of a section whose hollow is ``share`` of the diameter."""
    return losses(diameter=1.0, wall=(1 - share) / 2, opening=opening)


def losses(diameter: float, wall: float, opening: float) -> dict[str, float]:
    """Return what every formula says of a stem, by the keys of ``strength_loss`` and two more.

    Parameters
    ----------
    diameter : stem inside the bark, cm
    wall : sound wood where it is thinnest, cm
    opening : share of the girth that is open
    """
    hollow = max(0.0, diameter - 2 * wall)
    return {
        "wagener": wagener(hollow, diameter),
        "coder": coder(hollow, diameter),
        "smiley": smiley(hollow, diameter, opening),
        "shell": shell_ratio(wall, diameter),
        "opening": 360 * opening,
        "area": area_lost(hollow, diameter),
        "ring": open_ring_loss(hollow, diameter, opening),
    }


def grade(rule: str, value: float) -> str:
    """Return ``act``, ``caution`` or ``below`` for a value under one of the published rules.

    A value exactly at a level counts as having reached it.
    """
    if reached(rule, value, level(rule, "act")):
        return "act"
    return "caution" if reached(rule, value, level(rule, "caution")) else "below"


def level(rule: str, column: str) -> float | None:
    """Return a printed level in the unit of the formula; None where the rule has none."""
    value = tables.row("strength_loss", rule).get(column)
    if value is None:
        return None
    return float(value) / 100 if rule == "shell" else float(value)


def reached(rule: str, value: float, mark: float | None) -> bool:
    """Return whether a value has reached a level; for the wall, less is worse."""
    if mark is None:
        return False
    return value <= mark + 1e-9 if rule == "shell" else value >= mark - 1e-9

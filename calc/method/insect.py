"""Drag on a wasp's body, its hold on a rough surface, and its speed at the hose's end."""

from __future__ import annotations

import math

from calc.method.duct import velocity_pressure

GRAVITY = 9.80665
DRAG_COEFFICIENT = 1.0
"""Drag coefficient of an insect's body [bennet_clark_alder_1979]."""

MM2 = 1e-6
MG = 1e-6


def drag_in_body_weights(density: float, speed: float, area: float, mass: float) -> float:
    r"""Return the drag :math:`\rho C_d S V^2/2` over the animal's weight.

    Parameters
    ----------
    density : air density, kg/m3
    speed : air speed, m/s
    area : area facing the air, mm2
    mass : body mass, mg

    Notes
    -----
    C_d 1, animal at rest. Source: bennet_clark_alder_1979; the areas are own_reasoning.
    """
    force = DRAG_COEFFICIENT * area * MM2 * velocity_pressure(density, speed)
    return force / (mass * MG * GRAVITY)


def holding_in_body_weights(mass: float, known_mass: float, known_hold: float) -> float:
    """Return an estimate of the hold on a rough surface, in body weights.

    Scaled from an animal whose hold is known: hold per weight falls with the cube root of mass.

    Parameters
    ----------
    mass, known_mass : mg
    known_hold : body weights held by the known animal

    Notes
    -----
    An order of magnitude. Source: federle_2000 for the power, own_reasoning for the transfer.
    """
    return known_hold * math.pow(mass / known_mass, -1 / 3)


def drag_rate(density: float, area: float, mass: float) -> float:
    r"""Return :math:`k = \rho C_d S/(2 m)` in 1/m from kg/m3, mm2 and mg."""
    return density * DRAG_COEFFICIENT * area * MM2 / (2 * mass * MG)


def arrival_share(distance: float) -> float:
    r"""Return the share p of the air's speed reached after a drag-scaled distance k x.

    From rest in steady air, :math:`k x = p/(1 - p) + \ln(1 - p)`, solved for p.

    Parameters
    ----------
    distance : k x, no unit, 0 or more

    Notes
    -----
    No touching of the wall. Source: own_reasoning (quadratic drag).
    """
    low, high = 0.0, 1.0
    for _ in range(60):
        p = (low + high) / 2
        if p / (1 - p) + math.log1p(-p) < distance:
            low = p
        else:
            high = p
    return low

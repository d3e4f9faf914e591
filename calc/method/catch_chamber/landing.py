"""The landing: speed at the end of the hose, what stops it, and the battery that drives it."""

from __future__ import annotations

import math
from functools import cache

from calc.method import insect
from calc.tables import rows

AREA_LOW, AREA_HIGH = 0.4, 1.6
"""Head-on and side-on area over the tumbling mean [body_areas]."""


@cache
def target(column: str) -> float:
    """Return a target of the table ``landing_targets``: speed m/s, give mm, or hose_areas."""
    return next(float(each[column]) for each in rows("landing_targets") if column in each)


def arrival(air_speed: float, density: float, area: float, mass: float, length: float) -> float:
    """Return the speed in m/s at which a body leaves a hose it entered at rest.

    Parameters
    ----------
    air_speed : in the hose, m/s
    density : kg/m3
    area : mm2
    mass : mg
    length : m

    Notes
    -----
    Steady air, no touching of the wall. Source: own_reasoning (quadratic drag, drag coefficient
    of bennet_clark_alder_1979).
    """
    return air_speed * insect.arrival_share(insect.drag_rate(density, area, mass) * length)


def coasting(speed: float, rate: float, distance: float) -> float:
    r"""Return the speed left after a distance in still air, :math:`v\,e^{-k x}`, in m/s.

    Parameters
    ----------
    speed : m/s
    rate : k of :func:`calc.method.insect.drag_rate`, 1/m
    distance : m
    """
    return speed * math.exp(-rate * distance)


def energy(mass: float, speed: float) -> float:
    """Return the energy of motion in mJ from mg and m/s."""
    return mass * speed * speed / 2000


def drop_height(speed: float) -> float:
    """Return the height in m from which a free fall without air ends at ``speed`` m/s."""
    return speed * speed / (2 * insect.GRAVITY)


def mean_deceleration(speed: float, give: float) -> float:
    """Return the mean deceleration v^2/(2 s) in m/s2 when a catch gives way by ``give`` m."""
    return speed * speed / (2 * give)


def give_needed(speed: float) -> float:
    """Return the give in mm that keeps the deceleration of the target landing.

    Source: landing_give_ours.
    """
    ratio = speed / target("speed")
    return target("give") * ratio * ratio


def battery_minutes(energy_wh: float, power: float, usable: float) -> float:
    """Return the minutes a battery of Wh runs a motor of W, ``usable`` being a part of one."""
    return energy_wh * usable / power * 60

"""The landing: speed at the end of the hose, what stops it, and the mesh that holds."""

from __future__ import annotations

import math
from dataclasses import dataclass
from functools import cache

from calc.method import duct, insect
from calc.tables import row, rows

AREA_LOW, AREA_HIGH = 0.4, 1.6
"""Head-on and side-on area over the tumbling mean [body_areas]."""

INCH = 25.4


@cache
def target(column: str) -> float:
    """Return a target of the table ``landing_targets``: speed m/s, give mm, or hose_areas."""
    return next(float(each[column]) for each in rows("landing_targets") if column in each)


@dataclass(frozen=True, slots=True)
class Animal:
    """One animal: mass in mg, its range, tumbling area in mm2, and its row of ``head_widths``."""

    name: str
    mass: float
    area: float
    head: str | None
    invader: bool = False


def area_of(mass: float) -> float:
    """Return the tumbling area in mm2 of a body of ``mass`` mg, scaled from the hornet worker.

    Area goes with mass to two thirds where bodies are alike. Source: body_areas.
    """
    known = row("insect_bodies", "crabro")
    return float(known["tumbling"]) * math.pow(mass / float(known["mass"]), 2 / 3)


def animal(key: str, typed_mass: float | None = None) -> Animal:
    """Return the animal of a key: a row of ``insect_bodies`` or ``caught_animals``, or ``typed``.

    Parameters
    ----------
    key : row key, or ``typed``
    typed_mass : mg, used for ``typed``
    """
    if key == "typed":
        assert typed_mass is not None
        return Animal("animals of your mass", typed_mass, area_of(typed_mass), None)
    for each in rows("insect_bodies"):
        if each["key"] == key:
            head = "crabro" if key == "crabro" else "vespula"
            return Animal(each["animal"], float(each["mass"]), float(each["tumbling"]), head)
    each = row("caught_animals", key)
    mass = float(each["mass"])
    return Animal(each["animal"], mass, area_of(mass), key, each.get("invader") == "yes")


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


def opening_from_count(count: float, wire: float) -> float:
    """Return the clear opening of a mesh, 1/N - d, from wires to the unit of length and wire.

    Source: wire_mesh_glossary.
    """
    return 1 / count - wire


def mesh_loss(flow: float, area: float, share: float, opening: float, density: float,
              viscosity: float) -> float:  # fmt: skip
    """Return the pressure in Pa that a mesh costs.

    Parameters
    ----------
    flow : m3/s
    area : whole area of the mesh, m2
    share : open share, part of one
    opening : clear width between wires, m
    density, viscosity : of the air, kg/m3 and Pa s

    Notes
    -----
    Source: blevins_1984 through :func:`calc.method.duct.screen_loss`.
    """
    speed = flow / area
    reynolds = duct.reynolds(density, speed, opening, viscosity)
    return duct.minor_loss(duct.screen_loss(share, reynolds), density, speed)


def holding(opening: float, head: str | None) -> str:
    """Return what a mesh opening in mm does: holds, likely, unknown or passes.

    ``likely`` means held by a figure in print for this animal, yet smaller ones of the colony,
    legs and feelers may go through.
    """
    if opening <= float(row("head_widths", "all")["holds"]):
        return "holds"
    if head is None:
        return "unknown"
    known = row("head_widths", head)
    if "passes" in known and opening >= float(known["passes"]):
        return "passes"
    if "holds" in known and opening <= float(known["holds"]):
        return "likely"
    return "unknown"

"""The box of one ride: where it settles, how long it lasts, and the mesh that it wants."""

from __future__ import annotations

from typing import Any

from calc.errors import InputError, required
from calc.method import breath as gas
from calc.method.holding_and_driving.inputs import Inputs
from calc.method.live_box import Animals, Box, free_air, minutes_to_temperature, steady_rise

MOST_RISE = 40.0
"""Rise in K beyond which a box counts as running away."""

WIRE_SHARE = 40.0
"""Open share in percent of the mesh that a tight box is told to get [own_reasoning]."""


def box_of(x: Inputs, mass: float) -> Box:
    """Return the box with its openings and the room that ``mass`` g of animals leave in it.

    Raises :class:`InputError` for openings further apart than the box is high.
    """
    long, wide, high = x.length / 100, x.width / 100, x.height / 100
    walls = 2 * (long * wide + long * high + wide * high)
    through = gas.figure(x.walls)
    volume = free_air(long * wide * high * 1000, mass)
    if x.air == "tight":
        return Box(volume, walls * through)
    apart = required("apart", x.apart) if x.air == "two" else 0.0
    if apart > x.height:
        raise InputError(
            "apart",
            apart,
            "no more than the height of the box",
            "Low to high mesh: the two lie further apart than the box is high; "
            "allowed is no more than the height of the box.",
        )
    free = required("mesh_area", x.mesh_area) * 1e-4 * required("mesh_share", x.mesh_share) / 100
    return Box(volume, walls * through, free, apart / 100)


def settled(box: Box, animals: Animals, outside: float) -> tuple[float, float] | None:
    """Return rise in K and share of carbon dioxide at which the box settles, or None."""
    rise = steady_rise(box, animals, outside, MOST_RISE)
    if rise is None:
        return None
    inside = outside + rise
    exchange = box.exchange(rise, inside)
    if exchange <= 0:
        return None
    share = gas.OUTSIDE_SHARE + animals.carbon_dioxide(inside) / 1000 / 60 / exchange
    return rise, min(share, 1.0)


def minutes_to(box: Box, animals: Animals, outside: float, key: str) -> float | None:
    """Return minutes until carbon dioxide or heat is at a limit, with the openings of the box."""
    rise = steady_rise(box, animals, outside, MOST_RISE)
    shown = MOST_RISE if rise is None else rise
    inside = min(outside + shown, gas.limit("end", "temperature"))
    times = [
        gas.minutes_to_share(
            box.volume,
            animals.carbon_dioxide(max(inside, outside)),
            box.exchange(shown, inside),
            gas.limit(key, "percent") / 100,
        )
    ]
    if key == "end":
        times.append(minutes_to_temperature(box, animals, outside, gas.limit("end", "temperature")))
    reached = [time for time in times if time is not None]
    return min(reached) if reached else None


def mesh_for(
    carbon_dioxide: float, share: float, open_share: float, height: float, rise: float
) -> float:
    """Return the mesh in cm2, wires included, that keeps carbon dioxide to a rise of ``share``.

    Parameters
    ----------
    carbon_dioxide : mL/h
    share : rise over outside air, part of one
    open_share : of the mesh, part of one
    height : m from the low to the high one of two equal meshes; 0 for one mesh, diffusion alone
    rise : inside above outside, K

    Notes
    -----
    Each of the two meshes where there are two. Source: stack_flow_equation, callister_5_7.
    """
    needed = gas.air_needed(carbon_dioxide, share) / 60_000
    still = gas.figure("still_layer") / 100
    speed = gas.diffusion_flow(gas.figure("diffusion") * 1e-4, 1.0, still)
    if height > 0:
        driven = gas.stack_flow(gas.figure("discharge_mesh"), 1.0, height / 2, rise, 25.0)
        speed = 2 * speed + driven
    return needed / speed / open_share * 1e4


def ways(x: Inputs, animals: Animals, rise: float, inside: float) -> list[dict[str, Any]]:
    """Return the mesh that each way of ventilating wants, in cm2, beside that of the box."""
    gives = animals.carbon_dioxide(inside)
    share = gas.limit("planned", "percent") / 100 - gas.OUTSIDE_SHARE
    open_share = (WIRE_SHARE if x.mesh_share is None else x.mesh_share) / 100
    height = (x.height if x.apart is None else min(x.height, x.apart)) / 100
    yours = x.mesh_area
    return [
        {
            "way": "One mesh low, one high: each",
            "wanted": mesh_for(gives, share, open_share, height, rise),
            "yours": yours if x.air == "two" else None,
        },
        {
            "way": "One mesh in the lid alone",
            "wanted": mesh_for(gives, share, open_share, 0.0, rise),
            "yours": yours if x.air == "lid" else None,
        },
        {
            "way": "As bee packages have, in all",
            "wanted": gas.figure("package_screen") * animals.mass,
            "yours": screen(x),
        },
    ]


def screen(x: Inputs) -> float:
    """Return the area of all meshes in cm2, wires included."""
    if x.air == "tight":
        return 0.0
    return required("mesh_area", x.mesh_area) * (2 if x.air == "two" else 1)

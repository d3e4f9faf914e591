"""A box with live animals: where its warmth and its air settle, and how fast."""

from __future__ import annotations

import math
from dataclasses import dataclass

from calc.method import breath as gas
from calc.tables import row, rows

INSECT_HEAT = 3.4
"""Heat capacity of an animal, J/(g K): mostly water [own_reasoning]."""

LONGEST = 24 * 60.0
"""Minutes beyond which a warming is no longer followed."""


@dataclass(frozen=True, slots=True)
class Animals:
    """Live animals: all their mass in g, and their state."""

    mass: float
    state: str

    def carbon_dioxide(self, temperature: float) -> float:
        """Return mL/h at the temperature around them, degC."""
        return self.mass * gas.exchange_rate(temperature, self.state)

    def heat(self, temperature: float) -> float:
        """Return W at the temperature around them, degC."""
        return self.mass * gas.heat(gas.exchange_rate(temperature, self.state)) / 1000


@dataclass(frozen=True, slots=True)
class Box:
    """A box: free air in L, heat through its walls in W/K, and its openings.

    ``openings`` is the free area in m2: of each of two openings ``height`` m apart, or of one
    mesh lid where ``height`` is 0. A tight box has none.
    """

    volume: float
    wall: float
    openings: float = 0.0
    height: float = 0.0

    def exchange(self, rise: float, temperature: float) -> float:
        """Return the air exchanged in L/min when the box is ``rise`` K warmer than outside."""
        if self.openings <= 0:
            return 0.0
        still = gas.figure("still_layer") / 100
        areas = 2 if self.height > 0 else 1
        diffused = areas * gas.diffusion_flow(gas.figure("diffusion") * 1e-4, self.openings, still)
        driven = gas.stack_flow(
            gas.figure("discharge_mesh"), self.openings, self.height / 2, rise, temperature
        )
        return (diffused + driven) * 60_000

    def loss(self, rise: float, temperature: float) -> float:
        """Return the heat lost in W when ``rise`` K warmer than outside."""
        carried = gas.heat_carried(self.exchange(rise, temperature), temperature)
        return (self.wall + carried) * rise


def cube_wall(volume: float, through: float) -> float:
    """Return the heat through the walls of a cube of ``volume`` L in W/K, from W/(m2 K)."""
    side = math.pow(volume / 1000, 1 / 3)
    return 6 * side * side * through


def free_air(volume: float, mass: float) -> float:
    """Return the air in L that ``mass`` g of animals leave in a box: a millilitre for each gram."""
    return max(volume - mass / 1000, 0.1 * volume)


def room_wanted(mass: float) -> tuple[float, float]:
    """Return the room in L that ``mass`` g of animals want, from the least to a roomy box.

    Source: package_bees, chamber_volume_ours.
    """
    least = gas.figure("package_space") * gas.figure("space_factor")
    return least * mass / 1000, gas.figure("space_wide") * mass / 1000


def steady_rise(box: Box, animals: Animals, outside: float, most: float = 40.0) -> float | None:
    """Return how far the box settles above outside air, K; None if it runs away.

    Warm animals make more heat, so there may be no such point below ``most`` K.
    """
    low, high = 0.0, 0.0
    step = most / 80
    while high < most:
        high += step
        inside = outside + high
        if box.loss(high, inside) >= animals.heat(inside):
            break
        low = high
    else:
        return None
    for _ in range(40):
        middle = (low + high) / 2
        inside = outside + middle
        if box.loss(middle, inside) >= animals.heat(inside):
            high = middle
        else:
            low = middle
    return high


def minutes_to_temperature(
    box: Box, animals: Animals, outside: float, target: float
) -> float | None:
    """Return minutes until the box is at ``target`` degC; None if not within a day.

    Only air and animals are warmed, not the walls, so a real box takes somewhat longer.
    """
    if outside >= target:
        return 0.0
    capacity = box.volume / 1000 * 1.2 * gas.SPECIFIC_HEAT + animals.mass * INSECT_HEAT
    steps = 60
    rise = target - outside
    seconds = 0.0
    # Time is summed over equal steps of temperature: 1/speed is smooth there, and a box that
    # stalls short of the target shows as a speed of nothing.
    for place in range(steps):
        at = rise * (place + 0.5) / steps
        inside = outside + at
        net = animals.heat(inside) - box.loss(at, inside)
        if net <= 0:
            return None
        seconds += capacity * rise / steps / net
        if seconds / 60 > LONGEST:
            return None
    return seconds / 60


def car_rise(minutes: float) -> float:
    """Return the mean rise of air in a closed car in the sun, degF, on lines through the table.

    Parameters
    ----------
    minutes : since it was parked; beyond the table's last row its value is held

    Notes
    -----
    Averages of clear days; half of all cars get hotter. Source: null_parked_cars.
    """
    points = [(float(each["minutes"]), float(each["rise"])) for each in rows("parked_car")]
    last = points[0]
    for point in points[1:]:
        if minutes <= point[0]:
            share = (minutes - last[0]) / (point[0] - last[0])
            return last[1] + share * (point[1] - last[1])
        last = point
    return last[1]


def car_minutes(start: float, target: float) -> float | None:
    """Return minutes until a parked car's air goes from ``start`` to ``target`` degC, or None."""
    wanted = (target - start) * 9 / 5
    if wanted <= 0:
        return 0.0
    last = row("parked_car", "min_0")
    for each in rows("parked_car"):
        if each["rise"] >= wanted:
            span = float(each["rise"]) - float(last["rise"])
            share = 1.0 if span == 0 else (wanted - float(last["rise"])) / span
            return float(last["minutes"]) + share * (
                float(each["minutes"]) - float(last["minutes"])
            )
        last = each
    return None

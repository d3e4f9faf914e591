"""The core of "Holding and driving": from animals, box and ride to breath, heat and minutes."""

from __future__ import annotations

from typing import Any

from calc.declare import Answer
from calc.method import breath as gas
from calc.method.bodies import Animal
from calc.method.bodies import animal as find_animal
from calc.method.holding_and_driving.cautions import Findings, cautions, verdict
from calc.method.holding_and_driving.charts import carbon_dioxide
from calc.method.holding_and_driving.inputs import Inputs
from calc.method.holding_and_driving.ventilation import (
    MOST_RISE,
    box_of,
    minutes_to,
    screen,
    settled,
    ways,
)
from calc.method.live_box import Animals, Box, car_minutes, car_rise, room_wanted, steady_rise
from calc.tables import rows


def core(x: Inputs) -> Answer:
    """Compute breath, heat, mesh and minutes; see the declaration for units."""
    animal = find_animal(x.animal, x.mass)
    animals = Animals(animal.mass * x.number / 1000, x.state)
    outside = x.temperature
    box = box_of(x, animals.mass)
    rests = settled(box, animals, outside)
    found = _findings(x, animal, animals, box, rests)
    rise = steady_rise(box, animals, outside, MOST_RISE)
    hours = x.ride / 60
    values: dict[str, Any] = {
        "verdict": verdict(found),
        "share": None if rests is None else 100 * rests[1],
        "minutes_tight": found.tight_planned,
        "minutes_spare": _spare(found),
        "minutes_end": found.minutes_end,
        "moods": [
            _mood_row(each["state"], each["key"], box, animals.mass, outside)
            for each in rows("holding_levels")
        ],
        **({} if rise is None else _steady(x, animals, box, rise)),
        "live_mass": animals.mass,
        "volume_needed": found.volume_needed,
        "water": (
            animals.mass * gas.water_loss(gas.figure("water_loss")) * hours / 1000,
            animals.mass * gas.water_loss(gas.figure("water_loss_hot")) * hours / 1000,
        ),
        "car": found.car,
        "car_minutes": car_minutes(outside, gas.limit("end", "temperature")),
    }
    return Answer(
        values=values,
        cautions=cautions(found),
        charts=[carbon_dioxide(box, animals, outside, x.ride)],
    )


def _mood_row(
    label: str, key: str, box: Box, mass: float, outside: float
) -> dict[str, float | str | None]:
    animals = Animals(mass, key)
    rests = settled(box, animals, outside)
    gives = animals.carbon_dioxide(outside)
    return {
        "mood": label.partition(":")[0].partition(",")[0],
        "carbon_dioxide": gives,
        "planned": gas.closed_minutes(box.volume, gives, gas.limit("planned", "percent") / 100),
        "rise": None if rests is None else rests[0],
        "share": None if rests is None else 100 * rests[1],
    }


def _findings(
    x: Inputs, animal: Animal, animals: Animals, box: Box, rests: tuple[float, float] | None
) -> Findings:
    outside = x.temperature
    gives = animals.carbon_dioxide(outside)
    return Findings(
        invader=animal.invader,
        place=x.place,
        tight=x.air == "tight",
        temperature=outside,
        inside=None if rests is None else outside + rests[0],
        share=None if rests is None else rests[1],
        time=x.ride,
        minutes_end=minutes_to(box, animals, outside, "end"),
        tight_planned=gas.closed_minutes(box.volume, gives, gas.limit("planned", "percent") / 100),
        parked=x.parked,
        car=_car(x),
        car_box=_in_car(x, animals, box),
        volume=x.length * x.width * x.height / 1000,
        volume_needed=room_wanted(animals.mass),
        screen=screen(x),
        screen_wanted=gas.figure("package_screen") * animals.mass,
    )


def _in_car(x: Inputs, animals: Animals, box: Box) -> float:
    """Return the temperature of the box in the parked car, degC; its air plus the box's rise."""
    air = _car(x)
    rise = steady_rise(box, animals, air, MOST_RISE)
    return air + (MOST_RISE if rise is None else rise)


def _car(x: Inputs) -> float:
    return float(x.temperature + car_rise(x.parked) * 5 / 9)


def _steady(x: Inputs, animals: Animals, box: Box, rise: float) -> dict[str, Any]:
    """Return what holds once the box has settled; a box that runs away has none of it."""
    inside = x.temperature + rise
    gives = animals.carbon_dioxide(inside)
    sugar = animals.heat(inside) * 3.6 * x.ride / 60 / gas.figure("sugar_energy")
    return {
        "inside": inside,
        "heat": animals.heat(inside),
        "carbon_dioxide": gives,
        "air_needed": gas.air_needed(gives, gas.limit("planned", "percent") / 100),
        "air_moved": box.exchange(rise, inside),
        "meshes": ways(x, animals, rise, inside),
        "sugar": sugar,
        "syrup": 2 * sugar,
    }


def _spare(found: Findings) -> float | None:
    return None if found.minutes_end is None else max(found.minutes_end - found.time, 0.0)

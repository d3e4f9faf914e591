"""The core of "The catch chamber": landing, mesh, air and minutes."""

from __future__ import annotations

from typing import Any

from calc.declare import Answer
from calc.errors import required
from calc.method import air, bodies, duct
from calc.method import breath as gas
from calc.method import mesh as wire
from calc.method.catch_chamber import landing
from calc.method.catch_chamber.cautions import Findings, cautions, verdict
from calc.method.catch_chamber.charts import arrival
from calc.method.catch_chamber.inputs import Inputs
from calc.method.catch_chamber.setups import Setup, compared, meets_at, mesh, setups_of
from calc.method.live_box import (
    Animals,
    Box,
    cube_wall,
    free_air,
    minutes_to_temperature,
    room_wanted,
)

_MESH_WORDS = {
    "holds": "holds every social wasp",
    "likely": "holds this animal by a trap figure; smaller ones may pass",
    "unknown": "no figure in print: may wedge or pass",
    "passes": "lets them pass",
}


def core(x: Inputs) -> Answer:
    """Compute landing, mesh, air and minutes; see the declaration for units."""
    animal = bodies.animal(x.animal, x.mass)
    density = air.density(x.temperature, air.standard_pressure(x.altitude))
    setups = setups_of(x, animal, density)
    animals = Animals(animal.mass * x.adults / 1000, x.state)
    found = _findings(x, setups, animals.mass)
    values: dict[str, Any] = {
        "verdict": verdict(found),
        "arrival_a": setups[0].arrives(),
        "arrival_b": setups[1].arrives() if len(setups) > 1 else None,
        "comparison": compared(x, setups, animals),
        "mesh": _MESH_WORDS[found.mesh],
        "open_share": 100 * duct.mesh_open_share(x.mesh_opening, x.mesh_wire),
        "live_mass": animals.mass,
        "volume_needed": found.volume_needed,
        **_closed(x, animals),
        "battery_minutes": None
        if x.power == "mains"
        else landing.battery_minutes(
            required("battery", x.battery),
            required("motor", x.motor),
            gas.figure("usable_battery") / 100,
        ),
    }
    return Answer(values=values, cautions=cautions(found), charts=[arrival(setups)])


def _closed(x: Inputs, animals: Animals) -> dict[str, float | None]:
    temperature = x.temperature
    gives = animals.carbon_dioxide(temperature)
    box = Box(x.volume, cube_wall(x.volume, gas.figure("thin_wall")))
    shares = {key: gas.limit(key, "percent") / 100 for key in ("planned", "end")}
    free = free_air(x.volume, animals.mass)
    return {
        "minutes_planned": gas.closed_minutes(free, gives, shares["planned"]),
        "minutes_end": gas.closed_minutes(free, gives, shares["end"]),
        "minutes_hot": minutes_to_temperature(
            box, animals, temperature, gas.limit("end", "temperature")
        ),
    }


def _findings(x: Inputs, setups: list[Setup], mass: float) -> Findings:
    arrivals = {setup.name: setup.arrives() for setup in setups}
    slower = min(setups, key=lambda setup: arrivals[setup.name])
    animal = slower.animal
    meets = meets_at(slower, x.gap)
    return Findings(
        animal=f"the {animal.name}" if animal.head else "an animal of your mass",
        invader=animal.invader,
        fastest=max(arrivals.values()),
        slowest=min(arrivals.values()),
        slower_setup=slower.name,
        both=len(setups) > 1 and len(set(arrivals.values())) > 1,
        lands=meets,
        give=x.give,
        give_needed=landing.give_needed(meets),
        kept_share=meets / arrivals[slower.name],
        weak_lift=" and ".join(setup.name for setup in setups if setup.lift < 1),
        mesh=wire.holding(x.mesh_opening, animal.head),
        opening=x.mesh_opening,
        mesh_areas=min(mesh(setup, x)["areas"] for setup in setups),
        volume=x.volume,
        volume_needed=room_wanted(mass),
        temperature=x.temperature,
    )

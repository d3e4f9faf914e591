"""Holding and driving home: breath, heat, mesh and minutes of a box with live animals."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace
from typing import Any

from calc.declare import Answer, Axis, Calculator, Chart, Series
from calc.errors import InputError
from calc.method import holding_gas as gas
from calc.method.catch_chamber_landing import Animal
from calc.method.catch_chamber_landing import animal as find_animal
from calc.method.holding_box import (
    Animals,
    Box,
    car_minutes,
    car_rise,
    minutes_to_temperature,
    steady_rise,
)
from calc.method.holding_cautions import Findings, cautions, verdict
from calc.method.holding_inputs import INPUTS
from calc.method.holding_outputs import OUTPUTS
from calc.tables import rows

Given = Mapping[str, Any]
MOST_RISE = 40.0


def _box(given: Given) -> Box:
    long, wide, high = (given[name] / 100 for name in ("length", "width", "height"))
    walls = 2 * (long * wide + long * high + wide * high)
    through = gas.figure(given["walls"])
    volume = long * wide * high * 1000
    if given["air"] == "tight":
        return Box(volume, walls * through)
    apart = given["apart"] if given["air"] == "two" else 0.0
    if apart > given["height"]:
        raise InputError(
            "apart",
            apart,
            "no more than the height of the box",
            "Low to high mesh: the two lie further apart than the box is high; "
            "allowed is no more than the height of the box.",
        )
    free = given["mesh_area"] * 1e-4 * given["mesh_share"] / 100
    return Box(volume, walls * through, free, apart / 100)


def _settled(box: Box, animals: Animals, outside: float) -> tuple[float, float] | None:
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


def _minutes(box: Box, animals: Animals, outside: float, key: str) -> float | None:
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


def _free(box: Box, animals: Animals) -> Box:
    """Return the box with the room that the bodies leave: a millilitre for each gram."""
    return replace(box, volume=max(box.volume - animals.mass / 1000, 0.1 * box.volume))


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


def _mood_row(
    label: str, key: str, box: Box, mass: float, outside: float
) -> dict[str, float | str | None]:
    animals = Animals(mass, key)
    settled = _settled(box, animals, outside)
    gives = animals.carbon_dioxide(outside)
    return {
        "mood": label.partition(":")[0].partition(",")[0],
        "carbon_dioxide": gives,
        "planned": gas.closed_minutes(box.volume, gives, gas.limit("planned", "percent") / 100),
        "rise": None if settled is None else settled[0],
        "share": None if settled is None else 100 * settled[1],
    }


def _ways(given: Given, animals: Animals, rise: float, inside: float) -> list[dict[str, Any]]:
    gives = animals.carbon_dioxide(inside)
    share = gas.limit("planned", "percent") / 100 - gas.OUTSIDE_SHARE
    open_share = (given["mesh_share"] or 40.0) / 100
    height = min(given["height"], given["apart"] or given["height"]) / 100
    yours = given["mesh_area"]
    return [
        {
            "way": "One mesh low, one high: each",
            "wanted": mesh_for(gives, share, open_share, height, rise),
            "yours": yours if given["air"] == "two" else None,
        },
        {
            "way": "One mesh in the lid alone",
            "wanted": mesh_for(gives, share, open_share, 0.0, rise),
            "yours": yours if given["air"] == "lid" else None,
        },
        {
            "way": "As bee packages have, in all",
            "wanted": gas.figure("package_screen") * animals.mass,
            "yours": _screen(given),
        },
    ]


def _screen(given: Given) -> float:
    count = {"two": 2.0, "lid": 1.0, "tight": 0.0}[given["air"]]
    return float(count * (given["mesh_area"] or 0.0))


def _needed(mass: float) -> tuple[float, float]:
    least = gas.figure("package_space") * gas.figure("space_factor")
    return least * mass / 1000, gas.figure("space_wide") * mass / 1000


def _findings(
    given: Given, animal: Animal, animals: Animals, box: Box, settled: tuple[float, float] | None
) -> Findings:
    outside = given["temperature"]
    gives = animals.carbon_dioxide(outside)
    return Findings(
        invader=animal.invader,
        place=given["place"],
        tight=given["air"] == "tight",
        temperature=outside,
        inside=None if settled is None else outside + settled[0],
        share=None if settled is None else settled[1],
        time=given["ride"],
        minutes_end=_minutes(box, animals, outside, "end"),
        tight_planned=gas.closed_minutes(box.volume, gives, gas.limit("planned", "percent") / 100),
        parked=given["parked"],
        car=_car(given),
        car_box=_in_car(given, animals, box),
        car_minutes=car_minutes(outside, gas.limit("end", "temperature")),
        volume=given["length"] * given["width"] * given["height"] / 1000,
        volume_needed=_needed(animals.mass),
        screen=_screen(given),
        screen_wanted=gas.figure("package_screen") * animals.mass,
    )


def _in_car(given: Given, animals: Animals, box: Box) -> float:
    """Return the temperature of the box in the parked car, degC; its air plus the box's rise."""
    air = _car(given)
    rise = steady_rise(box, animals, air, MOST_RISE)
    return air + (MOST_RISE if rise is None else rise)


def _car(given: Given) -> float:
    return float(given["temperature"] + car_rise(given["parked"]) * 5 / 9)


def core(**given: Any) -> Answer:
    """Compute breath, heat, mesh and minutes from the declared inputs.

    Takes plain numbers in the declared units; None for inputs that do not apply.
    """
    animal = find_animal(given["animal"], given["mass"])
    animals = Animals(animal.mass * given["number"] / 1000, given["state"])
    outside = given["temperature"]
    box = _free(_box(given), animals)
    settled = _settled(box, animals, outside)
    found = _findings(given, animal, animals, box, settled)
    rise = steady_rise(box, animals, outside, MOST_RISE)
    hours = given["ride"] / 60
    values: dict[str, Any] = {
        "verdict": verdict(found),
        "share": None if settled is None else 100 * settled[1],
        "minutes_tight": found.tight_planned,
        "minutes_spare": _spare(found),
        "minutes_end": found.minutes_end,
        "moods": [
            _mood_row(each["state"], each["key"], box, animals.mass, outside)
            for each in rows("holding_levels")
        ],
        **({} if rise is None else _steady(given, animals, box, rise)),
        "live_mass": animals.mass,
        "volume_needed": found.volume_needed,
        "water": (
            animals.mass * gas.water_loss(gas.figure("water_loss")) * hours / 1000,
            animals.mass * gas.water_loss(gas.figure("water_loss_hot")) * hours / 1000,
        ),
        "car": found.car,
        "car_minutes": found.car_minutes,
    }
    return Answer(
        values=values, cautions=cautions(found), charts=_charts(box, animals, outside, given)
    )


def _steady(given: Given, animals: Animals, box: Box, rise: float) -> dict[str, Any]:
    """Return what holds once the box has settled; a box that runs away has none of it."""
    inside = given["temperature"] + rise
    gives = animals.carbon_dioxide(inside)
    sugar = animals.heat(inside) * 3.6 * given["ride"] / 60 / gas.figure("sugar_energy")
    return {
        "inside": inside,
        "heat": animals.heat(inside),
        "carbon_dioxide": gives,
        "air_needed": gas.air_needed(gives, gas.limit("planned", "percent") / 100),
        "air_moved": box.exchange(rise, inside),
        "meshes": _ways(given, animals, rise, inside),
        "sugar": sugar,
        "syrup": 2 * sugar,
    }


def _spare(found: Findings) -> float | None:
    return None if found.minutes_end is None else max(found.minutes_end - found.time, 0.0)


def _charts(box: Box, animals: Animals, outside: float, given: Given) -> list[Chart]:
    longest = min(max(given["ride"], 60.0), 240.0)
    times = tuple(longest * place / 30 for place in range(31))
    rise = steady_rise(box, animals, outside, MOST_RISE)
    shown = MOST_RISE if rise is None else rise
    gives = animals.carbon_dioxide(outside + min(shown, 15.0))
    exchange = box.exchange(shown, outside + shown)
    lines = [
        Series(
            label="Shut tight",
            x=times,
            y=tuple(_percent(box, gives, 0.0, time) for time in times),
        )
    ]
    if exchange > 0:
        lines.append(
            Series(
                label="With your mesh",
                x=times,
                y=tuple(_percent(box, gives, exchange, time) for time in times),
            )
        )
    lines += [
        Series(
            label=label,
            x=(0.0, longest),
            y=(gas.limit(key, "percent"), gas.limit(key, "percent")),
            style="dashed",
        )
        for label, key in (("Planned", "planned"), ("The end", "end"))
    ]
    return [
        Chart(
            name="carbon_dioxide",
            title="Carbon dioxide in the box",
            alt="Carbon dioxide in a tight box rises in a straight line past the planned limit and "
            "the end; with mesh it levels off. Two dashed lines mark the limits.",
            x=Axis(label="Time", unit="min", low=0),
            y=Axis(label="Carbon dioxide", unit="percent", low=0, high=8),
            series=tuple(lines),
        )
    ]


def _percent(box: Box, gives: float, exchange: float, time: float) -> float:
    # The curve is cut at the top of the figure: beyond it no animal is left to breathe.
    return min(100 * gas.share_after(box.volume, gives, exchange, time), 8.0)


holding_and_driving = Calculator(
    name="holding_and_driving",
    title="Holding and driving",
    part="method",
    purpose="Whether a box keeps so many animals alive for so long: their heat, their breath, the "
    "mesh it needs, sugar and water, and what a parked car does.",
    inputs=INPUTS,
    outputs=OUTPUTS,
    core=core,
    sources=(
        "kaefer_2012",
        "kaefer_thesis",
        "kaefer_abstract_misfit",
        "wasps_agitated_2012",
        "gibo_1974",
        "gibo_1977",
        "agitation_levels_ours",
        "energy_per_oxygen",
        "seeley_1974",
        "holding_limits_ours",
        "package_bees",
        "crc_diffusion",
        "still_layer_ours",
        "stack_flow_equation",
        "woods_2005",
        "sucrose_energy",
        "null_parked_cars",
        "mclaren_2005",
        "grundstein_2010",
        "kovac_stabentheiner_2012",
    ),
    formula=(
        (
            r"P = m\,r\,\frac{21.1}{3.6}",
            "Heat in mW of m grams that breathe r mL/g/h.",
            "energy_per_oxygen",
        ),
        (
            r"V\,\frac{dC}{dt} = R - G\,(C - C_0)",
            "Carbon dioxide in a mixed box with breath R and air exchange G.",
            "own_reasoning",
        ),
        (
            r"Q = C_d A \sqrt{2 g h\,\frac{T_i - T_o}{T_i}}",
            "Air that warmth drives through a low and a high opening; h to the middle between.",
            "stack_flow_equation",
        ),
        (
            r"G = \frac{D A}{L}",
            "Air exchange to which diffusion through a mesh amounts.",
            "callister_5_7",
        ),
        (
            r"P(T_i) = (U A + \rho c_p Q)\,(T_i - T_o)",
            "Where the box settles: heat made equals heat lost; warmer animals make more.",
            "own_reasoning",
        ),
    ),
    assumptions=(
        "Breath was measured on resting Vespula workers; for hornets it is likely high. Moods "
        "above rest are our design levels: nobody has measured a catch box.",
        "No wind and no shaking; wind through the load space helps, bodies on the mesh hinder.",
        "Air is mixed, the box stands upright, bodies do not cover the mesh.",
        "Only air and animals warm up, not the walls, so a real box takes somewhat longer.",
        "A parked car follows averages of clear days; a second study found a slower rise in the "
        "first half hour.",
    ),
)

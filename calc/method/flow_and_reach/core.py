"""The core of "Flow and reach of the nozzle": operating point, losses, reach."""

from __future__ import annotations

import math
from collections.abc import Mapping, Sequence
from typing import Any

from calc.declare import Answer
from calc.errors import required
from calc.method import duct, fan, insect
from calc.method.flow_and_reach import charts
from calc.method.flow_and_reach.cautions import cautions
from calc.method.flow_and_reach.inputs import Inputs
from calc.method.flow_and_reach.system import (
    CENTI,
    KILO,
    MILLI,
    System,
    Vacuum,
    operating_flow,
    system_of,
    vacuum_of,
)
from calc.method.flow_and_reach.words import Findings, outward, verdict
from calc.method.suction import Opening
from calc.tables import row, rows


def core(x: Inputs) -> Answer:
    """Compute operating point, pressure budget and reach; see the declaration for units."""
    system = system_of(x)
    air = system.air
    vacuum = vacuum_of(x, air.density)
    flow = operating_flow(vacuum, system)
    mouth, hose = flow / system.nozzle.area, flow / system.hose.area
    animals = _animals(air.density, mouth, hose, system.hose.length)
    found = _findings(x, system, vacuum, flow, animals)
    opening = system.nozzle.opening
    suction = system.loss(flow)
    q = duct.velocity_pressure(air.density, hose)
    behind = sum(part(flow) for _, part in system.parts()[:2]) + q
    values: dict[str, Any] = {
        "verdict": verdict(found),
        "flow": flow / MILLI,
        "suction": suction / KILO,
        "mouth_speed": mouth,
        "hose_speed": hose,
        "reach": None if found.reach is None else outward(found.reach),
        "speed_there": found.speed_there,
        "flow_needed": None
        if opening is None or found.distance is None
        else opening.design(found.animal_speed, found.distance) / MILLI,
        "budget": _budget(system, flow),
        "reaches": None if opening is None else _reaches(opening, flow),
        "animals": animals,
        "gauge": behind / KILO,
        "air_power": fan.air_power(flow, suction),
        "density": air.density,
        "reynolds": found.reynolds,
        "friction": system.hose.factor(found.reynolds),
    }
    figures = []
    if not found.too_fast:
        figures.append(charts.curves(vacuum, system, flow))
        if opening is not None:
            figures.append(charts.speeds(opening, flow, _lines(x.animal)))
    return Answer(values=values, cautions=cautions(found), charts=figures)


def _budget(system: System, flow: float) -> list[dict[str, Any]]:
    losses = [(label, part(flow)) for label, part in system.parts()]
    whole = sum(loss for _, loss in losses)
    lines = [{"part": label, "loss": loss, "share": 100 * loss / whole} for label, loss in losses]
    return [*lines, {"part": "All", "loss": whole, "share": 100.0}]


def _reaches(opening: Opening, flow: float) -> list[dict[str, Any]]:
    return [
        {
            "animal": each["animal"],
            "speed": each["speed"],
            "reach": outward(opening.reach(flow, each["speed"])),
        }
        for each in rows("flight_speeds")
        if "speed" in each
    ]


def _animals(density: float, mouth: float, hose: float, length: float) -> list[dict[str, Any]]:
    ant = row("holding_force", "weaver_ant")
    return [
        {
            "animal": each["animal"],
            "drag": insect.drag_in_body_weights(density, mouth, each["side"], each["mass"]),
            "hold": insect.holding_in_body_weights(each["mass"], ant["mass"], ant["body_weights"]),
            "arrival": hose
            * insect.arrival_share(
                insect.drag_rate(density, each["tumbling"], each["mass"]) * length
            ),
        }
        for each in rows("insect_bodies")
    ]


def _outside(vacuum: Vacuum, flow: float) -> bool:
    return bool(vacuum.points) and not vacuum.points[0][0] <= flow <= vacuum.points[-1][0]


def _findings(
    x: Inputs,
    system: System,
    vacuum: Vacuum,
    flow: float,
    animals: Sequence[Mapping[str, Any]],
) -> Findings:
    opening = system.nozzle.opening
    chosen = row("flight_speeds", x.animal)
    distance = None if opening is None else required("distance", x.distance) * CENTI
    return Findings(
        animal=chosen["phrase"],
        animal_speed=chosen["speed"],
        collar=opening is None,
        gaps=x.gaps,
        mouth_speed=flow / system.nozzle.area,
        hose_speed=flow / system.hose.area,
        reynolds=system.reynolds(flow),
        suction_share=system.loss(flow) / system.air.pressure,
        reach=None if opening is None else opening.reach(flow, chosen["speed"]),
        distance=distance,
        speed_there=None if opening is None or distance is None else opening.speeds(flow, distance),
        diameter=math.sqrt(4 * system.nozzle.area / math.pi),
        one_formula=opening is not None and len(opening.formulas) == 1,
        drag_over_hold=max(each["drag"] / each["hold"] for each in animals),
        arrival=max(each["arrival"] for each in animals),
        corrugated=x.hose_wall == "corrugated",
        from_label=x.figures_from == "label",
        outside_points=_outside(vacuum, flow),
    )


def _lines(chosen: str) -> list[tuple[str, float]]:
    """Return the flight speeds drawn as lines: the design speeds and the one chosen."""
    return [
        (each["animal"], each["speed"])
        for each in rows("flight_speeds")
        if each["key"] in {"entrance", "leaving", "alarmed", chosen}
    ]

"""Flow and reach of the nozzle: what a vacuum draws through its hose, and how far that reaches."""

from __future__ import annotations

import math
from collections.abc import Mapping, Sequence
from typing import Any

from calc.declare import Answer, Calculator
from calc.errors import InputError
from calc.method import duct, fan, flow_charts, flow_inputs, flow_outputs, insect
from calc.method.air import STANDARD_DENSITY
from calc.method.flow_system import (
    CENTI,
    KILO,
    MILLI,
    Hose,
    Mesh,
    System,
    Vacuum,
    air_at,
    coefficient,
    measured,
    nozzle,
    operating_flow,
    two_figures,
)
from calc.method.flow_words import Findings, cautions, outward, verdict
from calc.method.suction import Opening
from calc.tables import row, rows

Given = Mapping[str, Any]


def _vacuum(given: Given, density: float) -> Vacuum:
    ratio = density / STANDARD_DENSITY if given["figures_from"] == "label" else 1.0
    if given["vacuum"] == "points":
        return measured(given["point_flows"], given["point_suctions"], ratio)
    return two_figures(given["vacuum"], given["sealed"] * KILO, given["open_flow"] * MILLI, ratio)


def _mesh(given: Given) -> Mesh | None:
    if given["mesh"] == "none":
        return None
    if given["mesh"] == "share":
        return Mesh(given["mesh_share"] / 100, None)
    share = duct.mesh_open_share(given["mesh_opening"], given["mesh_wire"])
    return Mesh(share, given["mesh_opening"] * MILLI)


def _system(given: Given) -> System:
    side = given["chamber"] * CENTI
    bore = given["hose_bore"] * MILLI
    if side < bore:
        raise InputError(
            "chamber",
            given["chamber"],
            "a side of at least the hose bore",
            "Catch chamber, side: it is narrower than the hose; "
            "allowed is a side of at least the hose bore.",
        )
    return System(
        air=air_at(given["temperature"], given["altitude"]),
        nozzle=nozzle(
            given["nozzle"],
            given["nozzle_bore"],
            given["slot_length"],
            given["slot_width"],
            given["hole"],
            given["gaps"],
        ),
        hose=Hose(
            length=given["hose_length"],
            bore=bore,
            pitch=None if given["pitch"] is None else given["pitch"] * MILLI,
            roughness=(given["roughness"] or 0.0) * MILLI,
        ),
        bends=given["bends"],
        bend_loss=coefficient(given["bend"]),
        chamber=side,
        mesh=_mesh(given),
    )


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
    given: Given,
    system: System,
    vacuum: Vacuum,
    flow: float,
    animals: Sequence[Mapping[str, Any]],
) -> Findings:
    opening = system.nozzle.opening
    chosen = row("flight_speeds", given["animal"])
    distance = None if opening is None else given["distance"] * CENTI
    return Findings(
        animal=chosen["phrase"],
        animal_speed=chosen["speed"],
        collar=opening is None,
        gaps=given["gaps"] or 0.0,
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
        corrugated=given["hose_wall"] == "corrugated",
        from_label=given["figures_from"] == "label",
        outside_points=_outside(vacuum, flow),
        screen_areas=None if system.mesh is None else system.chamber**2 / system.hose.area,
        mesh_opening=given["mesh_opening"],
    )


def core(**given: Any) -> Answer:
    """Compute operating point, pressure budget and reach from the declared inputs.

    Takes plain numbers in the declared units; None for inputs that do not apply.
    """
    system = _system(given)
    air = system.air
    vacuum = _vacuum(given, air.density)
    flow = operating_flow(vacuum, system)
    mouth, hose = flow / system.nozzle.area, flow / system.hose.area
    animals = _animals(air.density, mouth, hose, system.hose.length)
    found = _findings(given, system, vacuum, flow, animals)
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
    charts = []
    if not found.too_fast:
        charts.append(flow_charts.curves(vacuum, system, flow))
        if opening is not None:
            charts.append(flow_charts.speeds(opening, flow, _lines(given["animal"])))
    return Answer(values=values, cautions=cautions(found), charts=charts)


def _lines(chosen: str) -> list[tuple[str, float]]:
    """Return the flight speeds drawn as lines: the design speeds and the one chosen."""
    return [
        (each["animal"], each["speed"])
        for each in rows("flight_speeds")
        if each["key"] in {"entrance", "leaving", "alarmed", chosen}
    ]


flow_and_reach = Calculator(
    name="flow_and_reach",
    title="Flow and reach of the nozzle",
    part="method",
    purpose="What your vacuum draws through its hose, and how close the nozzle must be before "
    "the air outruns a wasp.",
    inputs=(
        # What changes at the nest comes first; the machine is typed once, at home.
        *flow_inputs.NOZZLE,
        *flow_inputs.VACUUM,
        *flow_inputs.HOSE,
        *flow_inputs.CHAMBER,
        *flow_inputs.WEATHER,
    ),
    outputs=flow_outputs.OUTPUTS,
    core=core,
    sources=(
        "acgih_hoods_2001",
        "fletcher_1977",
        "garrison_1983",
        "fletcher_johnson_abstract",
        "flight_design_speeds",
        "lioy_2021",
        "wenner_1963",
        "crabro_speed_page",
        "hawthorne_1963",
        "colebrook_1939",
        "toolbox_minor_losses",
        "blevins_1984",
        "kovac_stabentheiner_2012",
        "body_areas",
        "bennet_clark_alder_1979",
        "federle_2000",
        "weaver_ant_hold",
        "fan_curve_shapes",
        "fan_laws",
    ),
    formula=(
        (
            r"\Delta p_{fan}(Q) = \left(\frac{f L}{D} + \sum K\right)\frac{\rho V^2}{2}",
            "The flow settles where the vacuum's suction equals the loss of all parts.",
            "pipe_flow_text",
        ),
        (
            r"\Delta p_{fan} = P_0\left(1 - \frac{Q}{Q_{max}}\right)",
            "Vacuum from two figures, straight line.",
            "fan_curve_shapes",
        ),
        (
            r"\Delta p_{fan} = P_0\left(1 - \frac{Q^2}{Q_{max}^2}\right)",
            "Blower from two figures, parabola.",
            "fan_curve_shapes",
        ),
        (
            r"\frac{1}{\sqrt f} = -2\log_{10}\left(\frac{e}{3.7 D} + \frac{2.51}{Re\sqrt f}\right)",
            "Friction of a smooth or evenly rough hose above Re 4000; 64/Re below 2100; a "
            "straight line between.",
            "colebrook_1939",
        ),
        (
            r"f = \frac{D}{s}\left[1 - \left(\frac{D}{D + 0.438 s}\right)^2\right]^2",
            "Friction of a corrugated hose with ribs s apart; never below that of a smooth one.",
            "hawthorne_1963",
        ),
        (
            r"V = \frac{Q}{10 x^2 + A}",
            "Speed in front of a plain round nozzle, Dalla Valle; divided by 0.75 with a plate.",
            "acgih_hoods_2001",
        ),
        (
            r"\frac{V}{V_0} = \frac{1}{0.93 + 8.58 x^2/A}",
            "The same, Fletcher.",
            "fletcher_1977",
        ),
        (
            r"\frac{V}{V_0} = 0.08\left(\frac{x}{D}\right)^{-1.7}",
            "The same, Garrison, beyond half a diameter; 0.10 and -1.6 with a plate.",
            "garrison_1983",
        ),
        (
            r"Q = 3.7\, L V x",
            "Plain slot, Silverman; 2.6 with a plate.",
            "acgih_hoods_2001",
        ),
        (
            r"V = \frac{Q}{A_{hole} + A_{gaps}}",
            "Collar that encloses the hole.",
            "acgih_hoods_2001",
        ),
    ),
    assumptions=(
        "The hose is stretched and clean; a slack hose passes less.",
        "The nozzle stands free in still air; wind blows the reach away, a wall beside the nozzle "
        "lengthens it a little.",
        "The speed is that on the axis straight in front; to the side it is less.",
        "Measured points are joined by straight lines; nothing is fitted.",
        "The vacuum's figures are those at the machine's inlet, without hose.",
        "The air is dry; moist air is up to about one hundredth lighter.",
        "A collar's hole counts as wholly open: air must come from inside the cavity or through "
        "the gaps.",
    ),
)

"""The catch chamber: how hard they land, what holds them, and how long their air lasts."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

from calc.declare import Answer, Axis, Calculator, Chart, Out, Series
from calc.method import air, bodies, duct
from calc.method import breath as gas
from calc.method import catch_chamber_landing as landing
from calc.method import mesh as wire
from calc.method.catch_chamber_cautions import Findings, cautions, verdict
from calc.method.catch_chamber_inputs import INPUTS
from calc.method.catch_chamber_setups import Setup, compared, meets_at, mesh
from calc.method.live_box import Animals, Box, cube_wall, minutes_to_temperature

Given = Mapping[str, Any]


def _setups(given: Given, animal: bodies.Animal, density: float) -> list[Setup]:
    names = ["a", "b"] if given["compare"] == "yes" else ["a"]
    return [
        Setup(
            name=name.upper(),
            flow=given[f"flow_{name}"] / 1000,
            bore=given[f"bore_{name}"] / 1000,
            length=given[f"length_{name}"],
            animal=animal,
            density=density,
        )
        for name in names
    ]


def _needed(mass: float) -> tuple[float, float]:
    least = gas.figure("package_space") * gas.figure("space_factor")
    return least * mass / 1000, gas.figure("space_wide") * mass / 1000


def _closed(given: Given, animals: Animals) -> dict[str, float | None]:
    temperature = given["temperature"]
    gives = animals.carbon_dioxide(temperature)
    box = Box(given["volume"], cube_wall(given["volume"], gas.figure("thin_wall")))
    shares = {key: gas.limit(key, "percent") / 100 for key in ("planned", "end")}
    # Animals take up room too: about a millilitre for each gram.
    free = max(given["volume"] - animals.mass / 1000, 0.1 * given["volume"])
    return {
        "minutes_planned": gas.closed_minutes(free, gives, shares["planned"]),
        "minutes_end": gas.closed_minutes(free, gives, shares["end"]),
        "minutes_hot": minutes_to_temperature(
            box, animals, temperature, gas.limit("end", "temperature")
        ),
    }


def _findings(
    given: Given, setups: list[Setup], mass: float, closed: Mapping[str, float | None]
) -> Findings:
    arrivals = {setup.name: setup.arrives() for setup in setups}
    slower = min(setups, key=lambda setup: arrivals[setup.name])
    animal = slower.animal
    meets = meets_at(slower, given)
    assert closed["minutes_planned"] is not None
    assert closed["minutes_end"] is not None
    return Findings(
        animal=f"the {animal.name}" if animal.head else "an animal of your mass",
        invader=animal.invader,
        fastest=max(arrivals.values()),
        slowest=min(arrivals.values()),
        slower_setup=slower.name,
        both=len(setups) > 1 and len(set(arrivals.values())) > 1,
        lands=meets,
        give=given["give"],
        give_needed=landing.give_needed(meets),
        kept_share=meets / arrivals[slower.name],
        weak_lift=" and ".join(setup.name for setup in setups if setup.lift < 1),
        mesh=wire.holding(given["mesh_opening"], animal.head),
        opening=given["mesh_opening"],
        mesh_areas=min(mesh(setup, given)["areas"] for setup in setups),
        volume=given["volume"],
        volume_needed=_needed(mass),
        temperature=given["temperature"],
        minutes_planned=closed["minutes_planned"],
        minutes_end=closed["minutes_end"],
        minutes_hot=closed["minutes_hot"],
    )


_MESH_WORDS = {
    "holds": "holds every social wasp",
    "likely": "holds this animal by a trap figure; smaller ones may pass",
    "unknown": "no figure in print: may wedge or pass",
    "passes": "lets them pass",
}


def core(**given: Any) -> Answer:
    """Compute landing, mesh, air and minutes from the declared inputs.

    Takes plain numbers in the declared units; None for inputs that do not apply.
    """
    animal = bodies.animal(given["animal"], given["mass"])
    density = air.density(given["temperature"], air.standard_pressure(given["altitude"]))
    setups = _setups(given, animal, density)
    animals = Animals(animal.mass * given["adults"] / 1000, given["state"])
    closed = _closed(given, animals)
    found = _findings(given, setups, animals.mass, closed)
    values: dict[str, Any] = {
        "verdict": verdict(found),
        "arrival_a": setups[0].arrives(),
        "arrival_b": setups[1].arrives() if len(setups) > 1 else None,
        "comparison": compared(given, setups, animals),
        "mesh": _MESH_WORDS[found.mesh],
        "open_share": 100 * duct.mesh_open_share(given["mesh_opening"], given["mesh_wire"]),
        "live_mass": animals.mass,
        "volume_needed": found.volume_needed,
        **closed,
        "battery_minutes": None
        if given["power"] == "mains"
        else landing.battery_minutes(
            given["battery"], given["motor"], gas.figure("usable_battery") / 100
        ),
    }
    return Answer(values=values, cautions=cautions(found), charts=[_chart(setups)])


def _chart(setups: list[Setup]) -> Chart:
    longest = max(6.0, *(setup.length for setup in setups))
    lengths = tuple(longest * place / 24 for place in range(25))
    aim_at = landing.target("speed")
    lines = [
        Series(
            label=f"Set-up {setup.name}",
            x=lengths,
            y=tuple(setup.arrives(length=length) for length in lengths),
        )
        for setup in setups
    ]
    marks = Series(
        label="Yours",
        x=tuple(setup.length for setup in setups),
        y=tuple(setup.arrives() for setup in setups),
        style="points",
    )
    aim = Series(label="Target", x=(0.0, longest), y=(aim_at, aim_at), style="dashed")
    return Chart(
        name="arrival",
        title="Arrival speed against hose length",
        alt="Arrival speed rises with hose length, steeply at first, and is lower in a wide hose "
        "than in a narrow one; a dashed line marks the target.",
        x=Axis(label="Hose length", unit="m", customary="ft", low=0),
        y=Axis(label="Arrival speed", unit="m/s", customary="mph", low=0),
        series=(*lines, marks, aim),
    )


_SPEED: dict[str, Any] = {"unit": "m/s", "customary": "mph", "digits": 0}
_MINUTES: dict[str, Any] = {"unit": "min", "digits": 0}

OUTPUTS = (
    Out(name="verdict", label="What it means", meaning="The answer in words.", kind="text"),
    Out(
        name="arrival_a",
        label="Arrival speed, set-up A",
        meaning="Speed at the end of the hose for a tumbling animal.",
        main=True,
        **_SPEED,
    ),
    Out(
        name="arrival_b",
        label="Arrival speed, set-up B",
        meaning="The same in the second hose.",
        main=True,
        **_SPEED,
    ),
    Out(
        name="minutes_planned",
        label="Closed tight: minutes to the planned limit",
        meaning="Motor off, vents shut, until carbon dioxide is at what we plan for.",
        main=True,
        **_MINUTES,
    ),
    Out(
        name="battery_minutes",
        label="Battery lasts",
        meaning="Minutes of suction from all batteries, with the usable share.",
        main=True,
        **_MINUTES,
    ),
    Out(
        name="comparison",
        label="The two set-ups side by side",
        meaning="In the order of the animal's way. The range is for head-on and side-on, with "
        "assumed areas; lift below 1 leaves limp animals in a rising hose; the fall is one that "
        "would hit as hard.",
        kind="table",
        columns=(
            Out(name="what", label="", meaning="What is compared.", kind="text"),
            Out(name="a", label="A", meaning="First set-up.", kind="text"),
            Out(name="b", label="B", meaning="Second set-up.", kind="text"),
        ),
    ),
    Out(name="mesh", label="The mesh", meaning="What the opening does.", kind="text"),
    Out(
        name="open_share",
        label="Open share of the mesh",
        meaning="Part of its area that is hole.",
        unit="percent",
        digits=0,
    ),
    Out(
        name="live_mass",
        label="All animals weigh",
        meaning="Adults times mass.",
        unit="g",
        customary="oz",
        digits=0,
        customary_digits=1,
    ),
    Out(
        name="volume_needed",
        label="Room wanted",
        meaning="From twice the space of package bees to a roomy box; nobody has measured it.",
        kind="interval",
        unit="L",
        customary="gal",
        digits=1,
        customary_digits=1,
    ),
    Out(
        name="minutes_end",
        label="Closed tight: minutes to the end",
        meaning="Motor off, vents shut, until carbon dioxide is at the end of our limits.",
        **_MINUTES,
    ),
    Out(
        name="minutes_hot",
        label="Closed tight: minutes to heat",
        meaning="Until the chamber itself is at the end of our limits; no figure means that its "
        "walls keep it below.",
        **_MINUTES,
    ),
)

catch_chamber = Calculator(
    name="catch_chamber",
    title="The catch chamber",
    part="method",
    purpose="How fast animals come out of your hose, how soft they must land, what mesh holds "
    "them, and how long they can stay in a closed chamber; two set-ups side by side.",
    inputs=INPUTS,
    outputs=OUTPUTS,
    core=core,
    sources=(
        "kovac_stabentheiner_2012",
        "body_areas",
        "bennet_clark_alder_1979",
        "arrival_target",
        "landing_give_ours",
        "hornet_trap_holes",
        "mesh_advice",
        "blevins_1984",
        "kaefer_2012",
        "kaefer_thesis",
        "agitation_levels_ours",
        "energy_per_oxygen",
        "holding_limits_ours",
        "package_bees",
        "chamber_volume_ours",
        "battery_usable_share",
    ),
    formula=(
        (
            r"k x = \frac{p}{1 - p} + \ln(1 - p),\quad k = \frac{\rho C_d S}{2 m}",
            "Share p of the air's speed that a body at rest gains over the hose length x.",
            "own_reasoning",
        ),
        (
            r"v = v_0\,e^{-k x}",
            "Speed left after a flight x through the still air of the chamber.",
            "own_reasoning",
        ),
        (r"a = \frac{v^2}{2 s}", "Mean deceleration over the give s.", "braking_exercise"),
        (
            r"\Delta p = \beta\,\frac{1 - a^2}{a^2}\,\frac{\rho V^2}{2}",
            "Loss of a mesh with open share a; half of it covered halves the share.",
            "blevins_1984",
        ),
        (
            r"t = \frac{V\,\Delta C}{R}",
            "Time in which breath R fills the free air V of a tight chamber to a share.",
            "own_reasoning",
        ),
        (
            r"t = \frac{E\,\eta}{P}",
            "Battery minutes from energy, usable share and power.",
            "vacuum_battery_exercise",
        ),
    ),
    assumptions=(
        "The animal enters at rest, flies in steady air and does not touch the wall; touching "
        "slows it and hurts it.",
        "Areas of the bodies are assumed; head-on and side-on give the range shown.",
        "Breath was measured on yellowjackets at rest. Hornets are larger and probably use less "
        "for their mass; moods above rest are our design levels.",
        "A tight chamber is mixed and has no leak; heat leaves through thin walls only.",
        "No study of injury against speed exists for wasps: the target is reasoned.",
    ),
)

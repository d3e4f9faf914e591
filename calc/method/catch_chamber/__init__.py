"""The catch chamber: how hard they land, what holds them, and how long their air lasts."""

from __future__ import annotations

from calc.declare import Calculator
from calc.method.catch_chamber.core import core
from calc.method.catch_chamber.inputs import Inputs
from calc.method.catch_chamber.results import RESULTS

catch_chamber = Calculator(
    name="catch_chamber",
    title="The catch chamber",
    part="method",
    purpose="How fast animals come out of your hose, how soft they must land, what mesh holds "
    "them, and how long they can stay in a closed chamber; two set-ups side by side.",
    given=Inputs,
    outputs=RESULTS,
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

"""Opening the cavity: where the comb lies and the window that takes it whole."""

from __future__ import annotations

from calc.declare import Calculator
from calc.method.opening_the_cavity.core import core
from calc.method.opening_the_cavity.inputs import Inputs
from calc.method.opening_the_cavity.results import RESULTS

opening_the_cavity = Calculator(
    name="opening_the_cavity",
    title="Opening the cavity",
    part="method",
    purpose="Where the comb lies behind the wall or bark, how high and wide to cut to take it "
    "whole, in what order, with what tools, and what another trade opens.",
    given=Inputs,
    outputs=RESULTS,
    core=core,
    sources=(
        "tiers_hidden",
        "opening_rules_ours",
        "tier_spacing_memory",
        "squamosa_layers",
        "nz_overwintered_1996",
        "ratnieks_1996_combs",
        "robinson_2005_combs",
        "velutina_combs",
        "looney_2023_combs",
        "wsda_2020",
        "wall_practice",
        "other_trades",
        "asbestos_guidance",
        "lead_rule_areas",
        "wiring_rule",
        "stud_spacing_page",
    ),
    formula=(
        (
            r"n = n_0 + \lceil n_0/2 \rceil",
            "Tiers planned for from the tiers in view.",
            "opening_rules_ours",
        ),
        (
            r"h = n\,s + a + b",
            "Height: tiers times spacing, with room above and below.",
            "opening_rules_ours",
        ),
        (
            r"\ell = D\,\arcsin\frac{w}{D}",
            "Width along the bark of a trunk D thick for a window w wide.",
            "arithmetic",
        ),
    ),
    assumptions=(
        "The tiers hang level over one another; nests in slanting or narrow cavities lean and "
        "spread.",
        "No word is said on the strength of tree or building.",
        "How many tiers are hidden and the room for the hand are our advice, not measured.",
    ),
)

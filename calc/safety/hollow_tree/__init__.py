"""Hollow or dead tree: what the published rules say of a stem, before and after a cut."""

from __future__ import annotations

from calc.declare import Calculator
from calc.safety.hollow_tree.core import core
from calc.safety.hollow_tree.inputs import Inputs
from calc.safety.hollow_tree.results import RESULTS

hollow_tree = Calculator(
    name="hollow_tree",
    title="Hollow or dead tree",
    part="safety",
    purpose=(
        "What every published screening rule says of a hollow stem, side by side, before and "
        "after a window is cut; never a clearance."
    ),
    given=Inputs,
    outputs=RESULTS,
    core=core,
    sources=(
        "auf_strength_loss_table",
        "wagener_1963",
        "coder_1989",
        "smiley_fraedrich_1992",
        "isa_open_cavity",
        "mattheck_1992",
        "kane_ryan_2004",
        "rinn_shell",
        "persad_2013",
        "persad_tobin_2015",
        "dead_ash_advice",
        "tree_rule",
        "open_ring",
    ),
    formula=(
        (r"100\,\frac{d^3}{D^3}", "Wagener: hollow d in a stem D; act from 33", "wagener_1963"),
        (
            r"100\,\frac{d^4}{D^4}",
            "Coder: caution from 20, hazard printed above 50; we act from 44",
            "coder_1989",
        ),
        (
            r"100\,\frac{d^3 + R\,(D^3 - d^3)}{D^3}",
            "Smiley and Fraedrich: R is the opening over the girth; act from 33",
            "smiley_fraedrich_1992",
        ),
        (
            r"\frac{t}{R_s} = \frac{2t}{D}",
            "Mattheck: wall over radius; act at 0.30, caution at 0.35",
            "mattheck_1992",
        ),
        (
            r"I_{\min} = \min\left(k(\beta - \sin\beta\cos\beta),\ "
            r"k(\beta + \sin\beta\cos\beta) - A\bar x^2\right)",
            "open ring about its weakest axis, half angle of the wood beta; our arithmetic",
            "open_ring",
        ),
    ),
    assumptions=(
        "A round hollow in the middle of a round stem; real hollows are neither.",
        "The wall is sound where you measured and nowhere thinner.",
        "Wind on a standing stem; cutting, climbing and ladders are not in any formula.",
        "Roots, crown, unions, cracks and lean are not in any formula.",
        "Mattheck's wall rule was made for closed hollows; here it counts for open ones too, to "
        "the cautious side.",
    ),
)

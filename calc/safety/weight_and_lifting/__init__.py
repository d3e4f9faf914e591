"""Weight and lifting: what a load weighs, and how that stands to the lifting limit."""

from __future__ import annotations

from calc.declare import Calculator
from calc.safety.weight_and_lifting.core import core
from calc.safety.weight_and_lifting.inputs import Inputs
from calc.safety.weight_and_lifting.results import RESULTS

weight_and_lifting = Calculator(
    name="weight_and_lifting",
    title="Weight and lifting",
    part="safety",
    purpose=(
        "What a piece of trunk or a box weighs, and how that stands to the published lifting "
        "limit for one or two people."
    ),
    given=Inputs,
    outputs=RESULTS,
    core=core,
    sources=(
        "niosh_lifting_1994",
        "niosh_lifting_frequency",
        "miles_smith_2009",
        "wood_density_formula",
        "wood_handbook",
        "nps_log_table",
        "hse_team",
        "rope_factor",
        "pulley_doubles",
    ),
    formula=(
        (
            r"m = \rho\, \ell\, \tfrac{\pi}{4}\,(D^2 - d^2)",
            "weight of a round piece, density, length, outer and hollow diameter",
            "own_reasoning",
        ),
        (
            r"\rho = 1000\, G \left(1 + \frac{M}{100}\right)",
            "density from specific gravity and moisture in percent",
            "wood_density_formula",
        ),
        (
            r"\mathrm{RWL} = 23 \cdot \frac{25}{H} \cdot (1 - 0.003\,|V - 75|) \cdot "
            r"\left(0.82 + \frac{4.5}{D}\right) \cdot (1 - 0.0032 A) \cdot F \cdot C",
            "recommended weight limit in kg; H, V, D in cm, A in degrees",
            "niosh_lifting_1994",
        ),
        (
            r"\mathrm{LI} = \frac{m}{\mathrm{RWL}}",
            "lifting index, at the worse end of the lift",
            "niosh_lifting_1994",
        ),
        (
            r"\mathrm{RWL}_2 = \tfrac23 \cdot 2\,\mathrm{RWL}",
            "limit for two people of like strength",
            "hse_team",
        ),
    ),
    assumptions=(
        "The piece is round and straight; bark, knots and branches come on top.",
        "The wood is sound at the density of its kind; wet rot can be heavier.",
        "Two hands, standing, firm shoes, a load that does not shift, put down with care.",
        "Lowering counts like lifting; carrying more than a step or two is not covered.",
        "The rope is new, static, and lets the load down slowly; a fall is not covered.",
    ),
)

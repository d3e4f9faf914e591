"""Moving a nest: how many workers find home."""

from __future__ import annotations

from calc.declare import Calculator
from calc.method.moving_a_nest.core import core
from calc.method.moving_a_nest.inputs import Inputs
from calc.method.passing_on import results

moving_a_nest = Calculator(
    name="moving_a_nest",
    title="Moving a nest",
    part="method",
    purpose="How far a nest has to be moved, and how many of its workers may come back.",
    given=Inputs,
    outputs=results("Moving a nest, in figures", "Homing, and the distance to keep."),
    core=core,
    sources=(
        "poidatz_2018_homing",
        "moving_five_km",
        "landcare_queens",
        "union_list_release",
        "introduced_release_law",
        "protected_hornet_de",
    ),
    formula=(
        (
            r"\frac{\hat p + \frac{z^2}{2n} \pm z\sqrt{\frac{\hat p(1 - \hat p)}{n} + "
            r"\frac{z^2}{4 n^2}}}{1 + \frac{z^2}{n}}",
            "Limits of a share that came back, of n set free.",
            "wilson_1927",
        ),
    ),
    assumptions=(
        "The status you give is right; the authority has the last word.",
        "Homing comes from one trial with tagged yellow-legged hornets, without their nest.",
    ),
)

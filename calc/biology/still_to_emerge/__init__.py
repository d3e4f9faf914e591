"""What will still emerge: from sealed cells to days and numbers."""

from __future__ import annotations

from calc.biology.still_to_emerge.core import core
from calc.biology.still_to_emerge.inputs import Inputs
from calc.biology.still_to_emerge.results import RESULTS
from calc.declare import Calculator

still_to_emerge = Calculator(
    name="still_to_emerge",
    title="What will still emerge",
    part="biology",
    purpose=(
        "From sealed cells and the look of the brood: how many adults come out by which day, and "
        "when the last young queen is due."
    ),
    given=Inputs,
    outputs=RESULTS,
    core=core,
    sources=(
        "emergence_by_look",
        "renewal_uniform",
        "colour_shares_wide",
        "colour_shares_late",
        "sealed_ranges",
        "gyne_extra_days",
        "wilson_1927",
        "bumble_bee_stages",
        "gibo_1974_warmth",
    ),
    formula=(
        (
            r"F(t)=\sum_j w_j\,g_j(t),\qquad g_j=\operatorname{clip}\!\left("
            r"\frac{t-a_j}{b_j-a_j},0,1\right)",
            "share out by day t: look j has the share w and comes out between a and b",
            "emergence_by_look",
        ),
        (
            r"a_j=D\,(1-f_j^{high}),\qquad b_j=D\,(1-f_j^{low})",
            "days left of a look from the shares f of the sealed time D",
            "emergence_by_look",
        ),
        (
            r"SE^2=S^2\left(1-\frac nS\right)\frac{\sum w_jg_j^2-F^2}{n-1}+S\sum w_jg_j(1-g_j)",
            "error of the sample and chance of the cells together",
            "emergence_by_look",
        ),
        (
            r"F(t)=\min\!\left(\frac tD,1\right)",
            "without opened cells: even ages",
            "renewal_uniform",
        ),
    ),
    assumptions=(
        "Nothing dies. In nests 1.6 to 4.4 % of the brood was lost; away from the nest more is "
        "lost, so fewer come out than shown.",
        "Worker and queen cells look alike in age. If they do not, calculate each apart.",
        "The brood is as warm as a nest. Cooler brood comes later.",
        "Cells were opened without choosing, at the middle and the rim.",
    ),
)

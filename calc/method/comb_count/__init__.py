"""Counting the comb: from tiers and patches to the whole colony."""

from __future__ import annotations

from calc.declare import Calculator
from calc.method.comb_count.core import core
from calc.method.comb_count.inputs import Inputs
from calc.method.comb_count.results import RESULTS

comb_count = Calculator(
    name="comb_count",
    title="Counting the comb",
    part="method",
    purpose="From the size of the tiers and a few patches: cells in all, eggs, larvae and sealed "
    "cells, and the whole colony.",
    given=Inputs,
    outputs=RESULTS,
    core=core,
    sources=(
        "hexagon_geometry",
        "cochran_1977",
        "goodman_1960",
        "comb_strata",
        "comb_errors",
        "comb_checks",
        "pitch_memory",
        "brood_rule_practice",
    ),
    formula=(
        (
            r"N=\frac{2A}{\sqrt3\,p^2},\qquad A=\frac{\pi ab}{4}",
            "cells on a full tier of area A and pitch p",
            "hexagon_geometry",
        ),
        (
            r"Y=\sum_h M_h\bar y_h,\qquad V=\sum_h M_h^2\left(1-\frac{n_h}{M_h}\right)"
            r"\frac{s_h^2}{n_h}",
            "patches: tiers are strata, M patches would cover the tier, n were counted",
            "cochran_1977",
        ),
        (
            r"df=\frac{\left(\sum g_hs_h^2\right)^2}{\sum\left(g_hs_h^2\right)^2/(n_h-1)},\qquad "
            r"g_h=\frac{M_h(M_h-n_h)}{n_h}",
            "Satterthwaite's degrees of freedom for Student's t",
            "cochran_1977",
        ),
        (
            r"r=\frac{\sum y}{\sum x},\qquad Y=rX,\qquad SE=\frac{X}{\bar x}"
            r"\sqrt{\frac{(1-f)\,s_e^2}{n}}",
            "whole tiers: counted cells y over cells by size x, for the tiers not counted",
            "cochran_1977",
        ),
        (
            r"\operatorname{Var}(Nw)=N^2\operatorname{Var}w+w^2\operatorname{Var}N+"
            r"\operatorname{Var}N\operatorname{Var}w",
            "stage from a share w of the sample",
            "goodman_1960",
        ),
    ),
    assumptions=(
        "Patches lie at random: middle and rim alike. Patches of the middle only make the brood "
        "too high.",
        "The diameters are measured with care: the interval allows 5 % for the area of each tier. "
        "A tenth off in both diameters is a fifth off in cells.",
        "Each tier has one kind of cell. Where a tier changes, enter its two parts as two tiers.",
        "Adults left are taken as given; their uncertainty is not in the interval.",
    ),
)

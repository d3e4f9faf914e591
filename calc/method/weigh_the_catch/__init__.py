"""Weigh the catch: from two weighings and a mean mass to a count."""

from __future__ import annotations

from calc.declare import Calculator
from calc.method.weigh_the_catch.core import core
from calc.method.weigh_the_catch.inputs import Inputs
from calc.method.weigh_the_catch.results import RESULTS

weigh_the_catch = Calculator(
    name="weigh_the_catch",
    title="Count by weight",
    part="method",
    purpose="From the chamber, empty and with the catch, and the mass of one animal: how many "
    "animals are in it, with the interval.",
    given=Inputs,
    outputs=RESULTS,
    core=core,
    sources=(
        "gum_resolution",
        "tartu_weighing",
        "steiner_mackay",
        "fieller_1954",
        "cochran_1977",
        "weigh_cautions",
        "kovac_stabentheiner_2012",
        "crabro_mass_page",
        "velutina_mass_2015",
        "vespula_queen_mass",
        "jaworski_2019",
        "coloss_weigh_bees",
    ),
    formula=(
        (
            r"N=\frac{W}{m},\qquad W=W_{full}-W_{empty}",
            "count from the net weight and the mean mass",
            "coloss_weigh_bees",
        ),
        (
            r"u_W^2=2\,\frac{d^2}{12}",
            "error of two readings on a scale with the smallest step d",
            "gum_resolution",
        ),
        (
            r"m=\frac{\sum M}{\sum n},\qquad u_m^2=\frac{s^2}{\sum n}+\frac{k\,d^2/6}{(\sum n)^2}",
            "mean of k handfuls with n animals and the mass M; from three handfuls on the error of "
            "the ratio, where it is larger",
            "cochran_1977",
        ),
        (
            r"(W-Nm)^2\le t^2\left(u_W^2+N s^2+N^2u_m^2\right)",
            "all N that the weight does not rule out: scale, spread s between bodies, mean",
            "fieller_1954",
        ),
        (
            r"m=(1-q)m_1+q\,m_2,\qquad u_q=\frac{q}{\sqrt3}",
            "two kinds, with a guessed share q",
            "own_reasoning",
        ),
    ),
    assumptions=(
        "Nothing but the animals was added between the two weighings. All else makes the count too "
        "high.",
        "The sample is a blind pick of this catch. Slow animals picked first make the mean wrong.",
        "Bodies of this nest vary as the printed ones do. If they vary more, the interval is too "
        "narrow.",
        "The scale is level, at rest and true. Only its smallest step is in the interval.",
    ),
)

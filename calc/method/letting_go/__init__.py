"""Letting queens and males go: whether they may go here and now."""

from __future__ import annotations

from calc.declare import Calculator
from calc.method.letting_go.core import core
from calc.method.letting_go.inputs import Inputs
from calc.method.passing_on import results

letting_go = Calculator(
    name="letting_go",
    title="Letting queens and males go",
    part="method",
    purpose="Whether young queens and males may go here and now, and what they need until then.",
    given=Inputs,
    outputs=results("Letting go, in figures", "Conditions, sugar water, and nests next year."),
    core=core,
    sources=(
        "release_conditions_ours",
        "ross_1983_mating",
        "landcare_queens",
        "wespenschutz_mortality",
        "germanica_mates",
        "hoffman_2008",
        "union_list_release",
        "introduced_release_law",
        "protected_hornet_de",
        "syrup_practice",
        "starr_1987_mass",
        "baoshan_2023",
    ),
    formula=(
        (
            r"n = Q\,(1 - \ell_1)(1 - \ell_2)(1 - \ell_3)",
            "Nests of next year from Q queens; the high end leaves out the winter loss.",
            "wespenschutz_mortality",
        ),
    ),
    assumptions=(
        "The status you give is right; the authority has the last word.",
        "Conditions for release are reasoned from flight and mating; no release was ever tested.",
    ),
)

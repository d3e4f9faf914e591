"""Brood for poultry: whether unpoisoned brood may be fed, and how much a day."""

from __future__ import annotations

from calc.declare import Calculator
from calc.method.feeding_brood.core import core
from calc.method.feeding_brood.inputs import Inputs
from calc.method.passing_on import results

feeding_brood = Calculator(
    name="feeding_brood",
    title="Brood for poultry",
    part="method",
    purpose="Whether brood may be fed to poultry, how much a day, and for how many days.",
    given=Inputs,
    outputs=results("Feeding brood, in figures", "Portions, and what is in them."),
    core=core,
    sources=(
        "treats_ten",
        "treats_five",
        "hen_feed_page",
        "protein_dilution_page",
        "brood_default_ours",
        "atwater",
        "freezing_practice",
        "freezing_ours",
        "apha_kitchen",
        "pesticide_in_eggs",
        "bait_reaches_larvae",
        "poultry_law",
        "union_list_release",
    ),
    formula=(
        (r"m = N\,F\,s", "Brood a day: hens N, feed F of one, share s.", "treats_ten"),
        (
            r"p = (1 - s)\,p_{feed} + s\,p_{brood}",
            "Protein of the whole diet.",
            "protein_dilution_page",
        ),
        (r"E = 4 P + 9 F + 4 C", "Energy in kcal from grams.", "atwater"),
    ),
    assumptions=(
        "Brood is weighed without comb and fed as it is, water and all.",
        "The tenth for treats is keepers' custom; no study behind it was found.",
    ),
)

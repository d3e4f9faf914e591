"""Which animal is it: ranked candidates, the duty that follows, and the next thing to ask."""

from __future__ import annotations

from calc.biology.which_animal.core import core
from calc.biology.which_animal.inputs import Inputs
from calc.biology.which_animal.question import asks
from calc.biology.which_animal.results import RESULTS
from calc.declare import Calculator

which_animal = Calculator(
    name="which_animal",
    title="Which animal is it?",
    part="biology",
    purpose=(
        "Which animal it may be from what you see at a distance or in a photo, how sure that is, "
        "what to look at next, and what you must do."
    ),
    given=Inputs,
    outputs=RESULTS,
    core=core,
    asks=asks,
    sources=(
        "identify_reasoning",
        "uba_wasps",
        "wsbk_hornet",
        "pnw_hornet",
        "robinson_2005",
        "council_bees",
        "species_memory",
        "bee_memory",
        "common_practice",
    ),
    formula=(
        (
            r"P(a \mid \text{seen}) \propto P(a)\,\prod_t P(o_t \mid a)^{\,T\,w_t}",
            "chance of animal a: prior of the region times the weighted, tempered chances of what "
            "was seen",
            "identify_reasoning",
        ),
        (
            r"P(o \mid a) = n_o \Big/ \sum_{o'} n_{o'}",
            "n is the number of the word (almost always, often, sometimes, rarely, never) that "
            "the trait table gives to option o",
            "identify_reasoning",
        ),
    ),
    assumptions=(
        "The things seen are not independent of each other; the temper lowers their joint weight, "
        "and chances are still not measured frequencies.",
        "Only animals of the table can be named; None of these is a candidate with the same "
        "chance for everything seen.",
        "A single sign of a bee outranks everything else: no social wasp then stands above the "
        "likeliest bee, and the job stops.",
        "Lengths count little and are compared with familiar things, since told lengths run long.",
        "Law is given for the places named; it changes, and yours decides.",
    ),
)

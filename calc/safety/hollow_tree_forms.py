"""Inputs and results of "Hollow or dead tree"."""

from __future__ import annotations

from functools import partial

from calc.common_inputs import centimetres
from calc.declare import Choice, Input, Number, Option, Out

_centimetres = partial(centimetres, digits=1, step=1)


_CUT = ("cut", ("yes",))

INPUTS: tuple[Input, ...] = (
    _centimetres("diameter", "Stem diameter", "Where the hollow is, without the bark. Insects in "
                 "it: guess from outside the zone, by ruler or photo.", 8, 300, 50,
                 "thinner stems are branches"),
    _centimetres("wall", "Sound wood, thinnest", "Between bark and hollow; the thinnest you fear, "
                 "or find after the catch.", 0, 150, 12, "half of the thickest stem"),
    _centimetres("opening", "Opening there is, across", "Width along the girth, all holes at that "
                 "height together.", 0, 900, 6, "the girth of the thickest stem"),
    Choice(
        name="cut",
        label="A window to be cut",
        meaning="Any wood you would take out of the stem.",
        options=(
            Option(value="no", label="No, work through the hole"),
            Option(value="yes", label="Yes"),
        ),
        usual="no",
    ),
    _centimetres("window", "Window, across", "Width along the girth, added to the opening.", 0.5,
                 900, 15, "the girth of the thickest stem", _CUT),
    Choice(
        name="height",
        label="Where the cut is",
        meaning="From where you stand.",
        only_if=_CUT,
        options=(
            Option(value="chest", label="Chest high or lower, feet on the ground"),
            Option(value="above", label="Above the chest, or from a stand"),
            Option(value="ladder", label="From a ladder"),
        ),
        usual="chest",
    ),
    Choice(
        name="dead",
        label="Dead for",
        meaning="A tree with no live crown.",
        options=(
            Option(value="alive", label="Alive, leaves in the crown"),
            Option(value="recent", label="Dead for up to a year"),
            Option(value="long", label="Dead for longer"),
            Option(value="unknown", label="Not known"),
        ),
        usual="unknown",
    ),
    Choice(
        name="ash",
        label="Ash where the borer is",
        meaning="The emerald ash borer: crown thins from the top, D-shaped holes in the bark.",
        options=(
            Option(value="no", label="No"),
            Option(value="yes", label="Yes, or cannot tell"),
        ),
        usual="no",
    ),
    Number(
        name="lean",
        label="Lean",
        meaning="Degrees from upright.",
        unit="degree",
        low=0,
        high=60,
        why="beyond it the tree lies",
        source="own_reasoning",
        usual=3,
        step=1,
    ),
    Choice(
        name="signs",
        label="Signs on the tree",
        meaning="Fungus, cracks, bulges, loose bark, dead crown, lifted soil.",
        options=(
            Option(value="not_looked", label="Not looked yet"),
            Option(value="none", label="Looked all round: none"),
            Option(value="some", label="One or more"),
        ),
        usual="not_looked",
    ),
)  # fmt: skip
"""What the reader gives, in the order of the form."""


def _loss(name: str, label: str, meaning: str, main: bool = False) -> Out:
    return Out(name=name, label=label, meaning=meaning, unit="percent", digits=0, main=main)


OUTPUTS: tuple[Out, ...] = (
    Out(
        name="verdict",
        label="What the published rules say",
        meaning="How many of them say act; never a clearance.",
        kind="text",
        main=True,
    ),
    Out(
        name="rules_before",
        label="Rules that say act, as it stands",
        meaning="Of five.",
        kind="count",
        main=True,
    ),
    Out(
        name="rules_after",
        label="Rules that say act, with the window",
        meaning="Of five.",
        kind="count",
        main=True,
    ),
    Out(
        name="rules",
        label="Side by side",
        meaning="Each rule with its own level.",
        kind="table",
        columns=(
            Out(name="rule", label="Rule", meaning="Year and country.", kind="text"),
            Out(name="before", label="As it stands", meaning="Value.", kind="text"),
            Out(name="after", label="With the window", meaning="Value.", kind="text"),
            Out(name="level", label="Acts at", meaning="Printed level.", kind="text"),
        ),
    ),
    Out(name="who", label="Who decides", meaning="About the tree.", kind="text"),
    _loss("wagener", "Wagener 1963", "Closed hollow."),
    _loss("coder", "Coder 1989", "Closed hollow, as a tube."),
    _loss("smiley_before", "Smiley & Fraedrich 1992, as it stands", "With the opening."),
    _loss("smiley_after", "The same with the window", "With the wider opening."),
    Out(
        name="shell",
        label="Wall over radius",
        meaning="Mattheck 1992; below 0.30 to 0.35 is worse; made for closed hollows.",
        digits=2,
    ),
    Out(
        name="opening_before",
        label="Open part of the girth",
        meaning="Mattheck 1992: more than 120 degrees is the limit.",
        unit="degree",
    ),
    Out(
        name="opening_after",
        label="The same with the window",
        meaning="After the cut.",
        unit="degree",
    ),
    _loss("area", "Hollow part of the section", "For comparison; no rule."),
    _loss("ring_before", "Open ring, weakest way, as it stands", "Our arithmetic; no rule."),
    _loss("ring_after", "The same with the window", "Our arithmetic; no rule."),
)
"""What the reader gets, the main answers first."""

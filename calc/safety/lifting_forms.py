"""Inputs and results of "Weight and lifting"."""

from __future__ import annotations

from functools import partial

from calc import tables
from calc.common_inputs import centimetres
from calc.declare import Choice, Input, Number, Option, Out

_TRUNK = ("load", ("trunk",))
_BOX = ("load", ("weighed",))


_centimetres = partial(centimetres, digits=0, step=5)


INPUTS: tuple[Input, ...] = (
    Choice(
        name="load",
        label="What you lift",
        meaning="A piece of trunk, or a thing you can weigh.",
        options=(
            Option(value="trunk", label="A piece of trunk"),
            Option(value="weighed", label="A box, bin or machine, weighed"),
        ),
        usual="trunk",
    ),
    Choice(
        name="species",
        label="Wood",
        meaning="Take the heavier one when in doubt.",
        only_if=_TRUNK,
        options=tuple(
            Option(value=row["key"], label=row["species"]) for row in tables.rows("wood_density")
        ),
        usual="red_oak",
    ),
    Choice(
        name="state",
        label="State of the wood",
        meaning="How wet it is makes up to half the weight.",
        only_if=_TRUNK,
        options=(
            Option(value="dead", label="Standing dead, or not known"),
            Option(value="green", label="Green, from a live tree"),
            Option(value="dry", label="Air-dry, under cover for years"),
        ),
        usual="green",
    ),
    _centimetres("diameter", "Diameter", "With the bark.", 5, 150, 30, "a piece of trunk", _TRUNK),
    _centimetres("length", "Length of the piece", "Along the grain.", 5, 300, 50,
                 "longer is felling, not lifting", _TRUNK),
    _centimetres("hollow", "Diameter of the hollow", "Zero if it is solid.", 0, 145, 0,
                 "narrower than the trunk", _TRUNK),
    Number(
        name="extra",
        label="Comb and wet rot in it",
        meaning="Added to the wood.",
        only_if=_TRUNK,
        unit="kg",
        customary="lb",
        low=0,
        high=50,
        why="no comb is heavier",
        source="own_reasoning",
        usual=0,
        step=1,
    ),
    Number(
        name="mass",
        label="Weight of the thing",
        meaning="On a scale, full.",
        only_if=_BOX,
        unit="kg",
        customary="lb",
        low=0.5,
        high=200,
        why="heavier is no load for hands",
        source="own_reasoning",
        usual=18,
        digits=1,
        customary_digits=0,
        step=1,
    ),
    Choice(
        name="place",
        label="Where you stand",
        meaning="Your feet, not the load.",
        options=(
            Option(value="firm", label="Firm, level, clear ground"),
            Option(value="rough", label="Slope, mud, brush or snow"),
            Option(value="ladder", label="On a ladder"),
        ),
        usual="firm",
    ),
    Choice(
        name="people",
        label="People",
        meaning="Who lift together.",
        options=(
            Option(value="1", label="One"),
            Option(value="2", label="Two, of like height, with one word"),
        ),
        usual="1",
    ),
    _centimetres("reach", "Hands in front of the ankles", "Half the load and your belly.",
                 15, 90, 40, "an arm's length"),
    _centimetres("start", "Hands above ground, start", "Where you grip it.",
                 0, 200, 15, "what a person reaches"),
    _centimetres("end", "Hands above ground, end", "Where you put it.",
                 0, 200, 90, "what a person reaches"),
    Number(
        name="angle",
        label="Turn of the body",
        meaning="Between your feet and the load, with feet still.",
        unit="degree",
        low=0,
        high=180,
        why="half a turn",
        source="arithmetic",
        usual=30,
        step=5,
    ),
    Choice(
        name="grip",
        label="Grip",
        meaning="Gloves and a round log are a poor grip.",
        options=tuple(
            Option(value=row["key"], label=row["grip"]) for row in tables.rows("lift_grip")
        ),
        usual="poor",
    ),
    Number(
        name="lifts",
        label="Lifts a minute",
        meaning="Mean over a quarter of an hour; once in a while is 0.2.",
        low=0,
        high=5,
        why="faster is line work, and the rows kept here end at five",
        source="niosh_lifting_frequency",
        usual=0.2,
        digits=1,
        step=0.2,
    ),
    Choice(
        name="duration",
        label="Lifting goes on for",
        meaning="With at least as long a rest after a short time.",
        options=(
            Option(value="hour", label="Up to one hour"),
            Option(value="two_hours", label="Up to two hours"),
            Option(value="day", label="Up to eight hours"),
        ),
        usual="hour",
    ),
)  # fmt: skip
"""What the reader gives, in the order of the form."""


def _weight(name: str, label: str, meaning: str, main: bool = False) -> Out:
    return Out(
        name=name,
        label=label,
        meaning=meaning,
        unit="kg",
        customary="lb",
        digits=1,
        customary_digits=0,
        main=main,
    )


OUTPUTS: tuple[Out, ...] = (
    Out(
        name="verdict",
        label="Against the published limit",
        meaning="How the lift stands to it; never a promise.",
        kind="text",
        main=True,
    ),
    _weight("weight", "Weight to plan with", "The heavier end where the wood is not known.", True),
    _weight("weight_limit", "Recommended limit", "For the worse end of the lift.", True),
    Out(
        name="lifting_index",
        label="Lifting index",
        meaning="Weight over limit; 1 is the goal, above 3 nearly all are at more risk.",
        digits=1,
        main=True,
    ),
    Out(
        name="weight_range",
        label="From dry to green",
        meaning="What the state of the wood leaves open.",
        kind="interval",
        unit="kg",
        customary="lb",
        digits=0,
    ),
    Out(
        name="longest_piece",
        label="Longest piece at an index of 1",
        meaning="Cut it no longer than this, for this lift.",
        unit="cm",
        customary="inch",
    ),
    _weight("limit_start", "Limit at the start", "One person, where you grip it."),
    _weight("limit_end", "Limit at the end", "One person, where you put it down with care."),
    Out(
        name="multipliers",
        label="What takes the limit down",
        meaning="1 takes nothing; mend the smallest first.",
        kind="table",
        columns=(
            Out(name="what", label="Part", meaning="Of the lift.", kind="text"),
            Out(name="start", label="Start", meaning="Multiplier.", digits=2),
            Out(name="end", label="End", meaning="Multiplier.", digits=2),
        ),
    ),
    Out(
        name="rope",
        label="Rope strength, at least",
        meaning="Ten times the weight, for slow lowering by hand only.",
        unit="kN",
        customary="kN",
        digits=1,
    ),
    Out(
        name="block",
        label="Pull at a block",
        meaning="Twice the weight, standing still.",
        unit="kN",
        customary="kN",
        digits=1,
    ),
)
"""What the reader gets, the main answers first."""

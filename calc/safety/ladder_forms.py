"""Inputs and results of "Ladder and power lines"."""

from __future__ import annotations

from calc import tables
from calc.declare import Choice, Input, Number, Option, Out

_LINES = ("lines", ("known", "unknown"))


def _mass(name: str, label: str, meaning: str, high: float, default: float) -> Number:
    return Number(
        name=name,
        label=label,
        meaning=meaning,
        unit="kg",
        customary="lb",
        low=0,
        high=high,
        why="heavier is no load for a ladder",
        source="own_reasoning",
        usual=default,
        step=1,
    )


INPUTS: tuple[Input, ...] = (
    Choice(
        name="lines",
        label="Overhead lines",
        meaning="Any wire within two ladder lengths, also the one to the house.",
        options=(
            Option(value="unknown", label="A line, voltage not known"),
            Option(value="known", label="A line, voltage known from the utility"),
            Option(value="none", label="None: I looked up and walked round"),
        ),
        usual="unknown",
    ),
    Number(
        name="voltage",
        label="Voltage of the line",
        meaning="As the utility told you; a guess from the pole does not count.",
        only_if=("lines", ("known",)),
        unit="kV",
        low=0.1,
        high=1500,
        why="lines run from house voltage to about this",
        source="own_reasoning",
        usual=12,
        digits=1,
        step=1,
    ),
    Number(
        name="line_distance",
        label="Nearest you could come to it",
        meaning="You, ladder, hose, pole or branch, also when it slips or swings.",
        only_if=_LINES,
        unit="m",
        customary="ft",
        low=0,
        high=100,
        why="farther away a line is no question",
        source="own_reasoning",
        usual=18,
        digits=1,
        customary_digits=0,
        step=0.5,
    ),
    Choice(
        name="rails",
        label="Rails",
        meaning="What the side rails are made of.",
        options=(
            Option(value="nonconductive", label="Fibreglass or dry wood"),
            Option(value="metal", label="Metal, or wet or dirty wood"),
        ),
        usual="nonconductive",
    ),
    Number(
        name="support_height",
        label="Height where the top rests",
        meaning="Straight up from the foot of the ladder.",
        unit="m",
        customary="ft",
        low=1,
        high=12,
        why="below it you do not need a leaning ladder, above it this work needs a lift",
        source="own_reasoning",
        usual=4,
        digits=2,
        customary_digits=1,
        step=0.1,
    ),
    Choice(
        name="roof",
        label="Stepping off",
        meaning="Whether you leave the ladder for a roof or landing.",
        options=(
            Option(value="no", label="No, I stay on the ladder"),
            Option(value="yes", label="Yes, onto a roof or landing"),
        ),
        usual="no",
    ),
    Number(
        name="nest_height",
        label="Height of the entrance",
        meaning="Where your hands must work, above the foot of the ladder.",
        unit="m",
        customary="ft",
        low=0.3,
        high=15,
        why="higher needs a lift",
        source="own_reasoning",
        usual=4.2,
        digits=2,
        customary_digits=1,
        step=0.1,
    ),
    Number(
        name="rail_length",
        label="Ladder as extended",
        meaning="Length of the rails; leave empty if you have not chosen it yet.",
        optional=True,
        unit="m",
        customary="ft",
        low=1.5,
        high=18,
        why="portable ladders are no longer",
        source="own_reasoning",
        digits=2,
        customary_digits=1,
        step=0.1,
    ),
    Number(
        name="foot_distance",
        label="Foot out, as it stands",
        meaning="From the foot to the point under the top support; empty if not yet up.",
        optional=True,
        unit="m",
        customary="ft",
        low=0.1,
        high=12,
        why="farther out it is no leaning ladder",
        source="own_reasoning",
        digits=2,
        customary_digits=1,
        step=0.05,
    ),
    _mass("person", "You", "Body weight, dressed.", 250, 85),
    _mass("suit", "Suit, boots, belt", "Protective clothing and what hangs on it.", 40, 8),
    _mass("carried", "Hose, tools, box, comb", "All that you carry or that hangs on it.", 100, 12),
    Choice(
        name="rating",
        label="Rating on the ladder",
        meaning="The mark on the rail.",
        options=(
            *(
                Option(value=row["key"], label=row["rating"], meaning=row["standard"])
                for row in tables.rows("ladder_duty")
            ),
            Option(value="unknown", label="No mark, or not readable"),
        ),
        usual="IA",
    ),
)
"""What the reader gives, in the order of the form."""


def _length(name: str, label: str, meaning: str, main: bool = False) -> Out:
    return Out(
        name=name,
        label=label,
        meaning=meaning,
        unit="m",
        customary="ft",
        digits=2,
        customary_digits=1,
        main=main,
    )


def _load(name: str, label: str, meaning: str) -> Out:
    return Out(name=name, label=label, meaning=meaning, unit="kg", customary="lb")


OUTPUTS: tuple[Out, ...] = (
    Out(
        name="verdict",
        label="Against the published rules",
        meaning="Line, load and setting; never a promise.",
        kind="text",
        main=True,
    ),
    _length("clearance", "Keep away from the line by", "Widest of the published distances.", True),
    _length("line_room", "Room left to that distance", "Below zero is too near."),
    _length("foot_out", "Set the foot out by", "A quarter of the working length.", True),
    _length("working_length", "Working length", "From foot to top support, at that angle."),
    _length("rail_needed", "Rails needed", "With 0.91 m above a roof you step off to."),
    Out(
        name="angle",
        label="Angle by the rule",
        meaning="From the ground. The same for every job.",
        unit="degree",
        digits=1,
    ),
    Out(
        name="angle_now",
        label="Angle as it stands",
        meaning="From the foot distance you gave.",
        unit="degree",
        digits=1,
    ),
    _length("feet_highest", "Feet no higher than", "Above the ground."),
    Out(
        name="reach",
        label="Hands work from and to",
        meaning="Above the ground, feet at most that high, without leaning out.",
        kind="interval",
        unit="m",
        customary="ft",
        digits=1,
    ),
    _load("load", "Load on the ladder", "You, suit and all you carry."),
    _load("load_limit", "Rating", "What the mark allows."),
    _load("load_room", "Room left to the rating", "Below zero is overloaded."),
    Out(
        name="distances",
        label="The published distances",
        meaning="Each with its country; the widest is used.",
        kind="table",
        columns=(
            Out(name="rule", label="Rule", meaning="Body and place.", kind="text"),
            _length("distance", "Distance", "To the line."),
            Out(name="kept", label="Kept", meaning="At your distance.", kind="text"),
        ),
    ),
)
"""What the reader gets, the main answers first."""

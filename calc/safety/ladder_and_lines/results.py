"""What "Ladder and power lines" answers, the main answers first."""

from __future__ import annotations

from calc.declare import Out


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


RESULTS: tuple[Out, ...] = (
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

"""What "Ladder and power lines" answers, the main answers first."""

from __future__ import annotations

from calc.declare import Out
from calc.declare.results import out


def _length(name: str, label: str, meaning: str, main: bool = False) -> Out:
    return out(name, label, meaning, "m", digits=2, customary_digits=1, main=main)


def _load(name: str, label: str, meaning: str) -> Out:
    return out(name, label, meaning, "kg")


RESULTS: tuple[Out, ...] = (
    out(
        "verdict",
        "Against the published rules",
        "Line, load and setting; never a promise.",
        kind="text",
        main=True,
    ),
    _length("clearance", "Keep away from the line by", "Widest of the published distances.", True),
    _length("line_room", "Room left to that distance", "Below zero is too near."),
    _length("foot_out", "Set the foot out by", "A quarter of the working length.", True),
    _length("working_length", "Working length", "From foot to top support, at that angle."),
    _length("rail_needed", "Rails needed", "With 0.91 m above a roof you step off to."),
    out(
        "angle", "Angle by the rule", "From the ground. The same for every job.", "degree", digits=1
    ),
    out("angle_now", "Angle as it stands", "From the foot distance you gave.", "degree", digits=1),
    _length("feet_highest", "Feet no higher than", "Above the ground."),
    out(
        "reach",
        "Hands work from and to",
        "Above the ground, feet at most that high, without leaning out.",
        "m",
        kind="interval",
        digits=1,
    ),
    _load("load", "Load on the ladder", "You, suit and all you carry."),
    _load("load_limit", "Rating", "What the mark allows."),
    _load("load_room", "Room left to the rating", "Below zero is overloaded."),
    out(
        "distances",
        "The published distances",
        "Each with its country; the widest is used.",
        kind="table",
        columns=(
            out("rule", "Rule", "Body and place.", kind="text"),
            _length("distance", "Distance", "To the line."),
            out("kept", "Kept", "At your distance.", kind="text"),
        ),
    ),
)

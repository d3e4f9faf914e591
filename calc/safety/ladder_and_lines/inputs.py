"""What "Ladder and power lines" asks for."""

from __future__ import annotations

from typing import Any

from calc import tables
from calc.declare import Given, choice, number
from calc.declare.inputs import Option


def _length(label: str, meaning: str, low: float, high: float, **more: Any) -> Any:
    return number(
        label, meaning, "m", low=low, high=high,
        **{"digits": 2, "customary_digits": 1, "step": 0.1} | more,
    )  # fmt: skip


def _mass(label: str, meaning: str, high: float, **more: Any) -> Any:
    return number(
        label, meaning, "kg", low=0, high=high, why="heavier is no load for a ladder",
        origin="equipment", step=1, **more,
    )  # fmt: skip


def _ratings() -> list[Option]:
    marked = [
        Option(value=row["key"], label=row["rating"], meaning=row["standard"])
        for row in tables.rows("ladder_duty")
    ]
    return [*marked, Option(value="unknown", label="No mark, or not readable")]


class Inputs(Given):
    """Lines near the work, where the ladder leans, and what it carries."""

    lines: str = choice(
        "Overhead lines",
        "Any wire within two ladder lengths, also the one to the house.",
        [
            ("unknown", "A line, voltage not known"),
            ("known", "A line, voltage known from the utility"),
            ("none", "None: I looked up and walked round"),
        ],
        example="unknown",
    )
    line_distance: float | None = _length(
        "Nearest you could come to it",
        "You, ladder, hose, pole or branch, also when it slips or swings.",
        0, 100, why="farther away a line is no question",
        only_if=("lines", ("known", "unknown")), plausible=(0, 40), example=18,
        digits=1, customary_digits=0, step=0.5,
    )  # fmt: skip
    voltage: float | None = number(
        "Voltage of the line",
        "As the utility told you; a guess from the pole does not count.",
        "kV",
        low=0.1,
        high=1500,
        why="lines run from house voltage to about this",
        only_if=("lines", ("known",)),
        plausible=(0.4, 400),
        example=12,
        digits=1,
        step=1,
    )
    support_height: float = _length(
        "Height where the top rests", "Straight up from the foot of the ladder.", 1, 12,
        why="below it you do not need a leaning ladder, above it this work needs a lift",
        plausible=(1.5, 8), example=4,
    )  # fmt: skip
    nest_height: float = _length(
        "Height of the entrance", "Where your hands must work, above the foot of the ladder.",
        0.3, 15, why="higher needs a lift", plausible=(1, 9), example=4.2,
    )  # fmt: skip
    rails: str = choice(
        "Rails",
        "What the side rails are made of.",
        [
            ("nonconductive", "Fibreglass or dry wood"),
            ("metal", "Metal, or wet or dirty wood"),
        ],
        origin="equipment",
        example="nonconductive",
    )
    rating: str = choice(
        "Rating on the ladder",
        "The mark on the rail.",
        _ratings(),
        origin="equipment",
        example="IA",
    )
    person: float = _mass("You", "Body weight, dressed.", 250, plausible=(50, 130), example=85)
    suit: float = _mass(
        "Suit, boots, belt", "Protective clothing and what hangs on it.", 40,
        plausible=(3, 12), example=8,
    )  # fmt: skip
    carried: float = _mass(
        "Hose, tools, box, comb", "All that you carry or that hangs on it.", 100,
        plausible=(2, 25), example=12,
    )  # fmt: skip
    roof: str = choice(
        "Stepping off",
        "Whether you leave the ladder for a roof or landing.",
        [("no", "No, I stay on the ladder"), ("yes", "Yes, onto a roof or landing")],
        origin="usual",
        usual="no",
        usual_source="own_reasoning",
    )
    rail_length: float | None = _length(
        "Ladder as extended",
        "Length of the rails; leave empty if you have not chosen it yet.",
        1.5, 18, why="portable ladders are no longer", origin="extra", optional=True,
        plausible=(2.5, 9),
    )  # fmt: skip
    foot_distance: float | None = _length(
        "Foot out, as it stands",
        "From the foot to the point under the top support; empty if not yet up.",
        0.1, 12, why="farther out it is no leaning ladder", origin="extra", optional=True,
        plausible=(0.4, 2.2), step=0.05,
    )  # fmt: skip

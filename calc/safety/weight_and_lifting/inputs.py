"""What "Weight and lifting" asks for."""

from __future__ import annotations

from typing import Any

from calc import tables
from calc.declare import Given, choice, number

_TRUNK = ("load", ("trunk",))
_BOX = ("load", ("weighed",))


def _rows(table: str, column: str) -> list[tuple[str, str]]:
    return [(row["key"], row[column]) for row in tables.rows(table)]


def _centimetres(label: str, meaning: str, low: float, high: float, **more: Any) -> Any:
    return number(label, meaning, "cm", low=low, high=high, step=5, **more)


class Inputs(Given):
    """A load, where its hands go, and on what the feet stand."""

    load: str = choice(
        "What you lift",
        "A piece of trunk, or a thing you can weigh.",
        [("trunk", "A piece of trunk"), ("weighed", "A box, bin or machine, weighed")],
        example="trunk",
    )
    place: str = choice(
        "Where you stand",
        "Your feet, not the load.",
        [
            ("firm", "Firm, level, clear ground"),
            ("rough", "Slope, mud, brush or snow"),
            ("ladder", "On a ladder"),
        ],
        example="firm",
    )
    diameter: float | None = _centimetres(
        "Diameter", "With the bark.", 5, 150,
        only_if=_TRUNK, plausible=(15, 60), example=30,
    )  # fmt: skip
    length: float | None = _centimetres(
        "Length of the piece", "Along the grain.", 5, 300,
        why="longer is felling, not lifting", only_if=_TRUNK, plausible=(20, 150), example=50,
    )  # fmt: skip
    reach: float = _centimetres(
        "Hands in front of the ankles", "Half the load and your belly.", 15, 90,
        why="an arm's length", plausible=(25, 60), example=40,
    )  # fmt: skip
    mass: float | None = number(
        "Weight of the thing",
        "On a scale, full.",
        "kg",
        low=0.5,
        high=200,
        why="heavier is no load for hands",
        origin="equipment",
        only_if=_BOX,
        plausible=(5, 40),
        example=18,
        digits=1,
        customary="lb",
        customary_digits=0,
        step=1,
    )
    people: str = choice(
        "People",
        "Who lift together.",
        [("1", "One"), ("2", "Two, of like height, with one word")],
        origin="equipment",
        usual="1",
        usual_source="niosh_lifting_1994",
    )
    species: str | None = choice(
        "Wood",
        "Take the heavier one when in doubt; red oak is the heaviest here.",
        _rows("wood_density", "species"),
        origin="usual",
        only_if=_TRUNK,
        usual="red_oak",
        usual_source="miles_smith_2009",
    )
    state: str | None = choice(
        "State of the wood",
        "How wet it is makes up to half the weight.",
        [
            ("dead", "Standing dead, or not known"),
            ("green", "Green, from a live tree"),
            ("dry", "Air-dry, under cover for years"),
        ],
        origin="usual",
        only_if=_TRUNK,
        usual="dead",
        usual_source="own_reasoning",
        example="green",
    )
    hollow: float | None = _centimetres(
        "Diameter of the hollow", "Zero if it is solid, the heaviest.", 0, 145,
        why="narrower than the trunk", origin="usual", only_if=_TRUNK, plausible=(0, 40),
        usual=0, usual_source="own_reasoning",
    )  # fmt: skip
    start: float = _centimetres(
        "Hands above ground, start", "Where you grip it.", 0, 200,
        why="what a person reaches", origin="usual", plausible=(0, 100),
        usual=15, usual_source="own_reasoning",
    )  # fmt: skip
    end: float = _centimetres(
        "Hands above ground, end", "Where you put it.", 0, 200,
        why="what a person reaches", origin="usual", plausible=(0, 140),
        usual=90, usual_source="own_reasoning",
    )  # fmt: skip
    angle: float = number(
        "Turn of the body",
        "Between your feet and the load, with feet still.",
        "degree",
        low=0,
        high=180,
        why="half a turn",
        source="arithmetic",
        origin="usual",
        plausible=(0, 90),
        usual=30,
        usual_source="own_reasoning",
        step=5,
    )
    grip: str = choice(
        "Grip",
        "Gloves and a round log are a poor grip.",
        _rows("lift_grip", "grip"),
        origin="usual",
        usual="poor",
        usual_source="own_reasoning",
    )
    lifts: float = number(
        "Lifts a minute",
        "Mean over a quarter of an hour; once in a while is 0.2.",
        low=0,
        high=5,
        why="faster is line work, and the rows kept here end at five",
        source="niosh_lifting_frequency",
        origin="usual",
        plausible=(0, 2),
        usual=0.2,
        usual_source="own_reasoning",
        digits=1,
        step=0.2,
    )
    duration: str = choice(
        "Lifting goes on for",
        "With at least as long a rest after a short time.",
        [
            ("hour", "Up to one hour"),
            ("two_hours", "Up to two hours"),
            ("day", "Up to eight hours"),
        ],
        origin="usual",
        usual="hour",
        usual_source="own_reasoning",
    )
    extra: float | None = number(
        "Comb and wet rot in it",
        "Added to the wood; a full comb and wet rot are heavy.",
        "kg",
        low=0,
        high=50,
        why="no comb is heavier",
        origin="extra",
        only_if=_TRUNK,
        plausible=(0, 10),
        usual=0,
        usual_source="own_reasoning",
        customary="lb",
        step=1,
    )

"""What "Keeping people away" asks for."""

from __future__ import annotations

from typing import Any

from calc.declare import Given, choice, number
from calc.safety.keep_away.zones import FELT_WIND

_HAS_WAY = ("way", ("path", "road"))


def _distance(label: str, meaning: str, **more: Any) -> Any:
    return number(
        label, meaning, "m", low=0, high=500, why="farther than any zone", source="own_zones",
        origin="extra", plausible=(0, 60), digits=1, customary_digits=0, step=1, **more,
    )  # fmt: skip


class Inputs(Given):
    """The nest, what is done to it, and who and what is around it."""

    group: str = choice(
        "Animals",
        "From “Which animal is it”.",
        [
            ("yellowjacket", "Yellowjackets (Vespula)"),
            ("aerial", "Aerial yellowjackets, tree wasps, bald-faced hornet"),
            ("hornet", "European hornet"),
            ("yellow_legged", "Yellow-legged hornet"),
            ("giant", "Giant hornet"),
            ("paper_wasp", "Paper wasps"),
        ],
        example="yellowjacket",
    )
    disturbance: str = choice(
        "What is done to the nest",
        "The worst of the day.",
        [
            ("passive", "Nothing; people live beside it"),
            ("working", "Adults caught, cavity opened, comb taken out"),
            ("vibration", "The same with saw, drill, mower or blows near it"),
        ],
        example="working",
    )
    colony: str = choice(
        "Colony",
        "Late means the last two months before the first hard frost.",
        [
            ("small", "Small, early in the season"),
            ("grown", "Grown"),
            ("large", "Large, or late in the season"),
        ],
        example="grown",
    )
    neighbour: str = choice(
        "Nearest neighbour",
        "Told means: spoken with today, allergies asked.",
        [("none", "None near"), ("told", "Told"), ("not_told", "Not told yet")],
        example="told",
    )
    loose: str = choice(
        "Children and animals",
        "Dogs, cats, hens and horses count.",
        [("in", "In, counted, door shut"), ("loose", "Still out, or not known")],
        example="in",
    )
    disturbed_before: str = choice(
        "Disturbed in the last days",
        "Stings, blows, water, poison, a blocked hole or a mower nearby.",
        [("no", "No"), ("yes", "Yes, or not known")],
        origin="usual",
        usual="yes",
        usual_source="own_zones",
        example="no",
    )
    wind: float = number(
        "Wind where you stand",
        "At head height; 2 m/s is felt on the face.",
        "m/s",
        low=0,
        high=30,
        why="above a gale nobody works there",
        origin="usual",
        usual=FELT_WIND,
        usual_source="own_zones",
        plausible=(0, 8),
        example=1,
        digits=1,
        step=0.5,
    )
    downwind: str = choice(
        "People downwind",
        "House, path or neighbour on the side the wind blows to.",
        [("no", "Nobody"), ("yes", "Yes, or not known")],
        origin="usual",
        usual="yes",
        usual_source="own_zones",
        example="no",
    )
    house: float | None = _distance(
        "Nest to the nearest door or window", "Measured along the air.", optional=True, example=8
    )
    way: str | None = choice(
        "Path or road near",
        "The nearest one that others use.",
        [
            ("none", "None"),
            ("path", "Path, pavement, playground"),
            ("road", "Road with vehicles"),
        ],
        origin="extra",
        optional=True,
        example="path",
    )
    way_distance: float | None = _distance(
        "Nest to that path or road", "Nearest point.", only_if=_HAS_WAY, example=20
    )
    way_closed: str | None = choice(
        "Closed during the work",
        "Path: tape and a person. Road: by those who may close it.",
        [("yes", "Yes"), ("no", "No")],
        origin="extra",
        only_if=_HAS_WAY,
        example="yes",
    )
    neighbour_distance: float | None = _distance(
        "Nest to the neighbour's house or garden",
        "Nearest place where they sit or play. Not measured counts as near.",
        only_if=("neighbour", ("told", "not_told")),
        optional=True,
        example=25,
    )
    door: float | None = _distance(
        "Nest to the vehicle or shed you run to",
        "Where your run ends, with a free way.",
        optional=True,
        example=12,
    )

"""What "Getting used to the heat" asks for."""

from __future__ import annotations

from calc.declare import Given, choice, count, number


class Inputs(Given):
    """A person, how they are today, and how long a full day is."""

    state: str = choice(
        "Today",
        "Ask it each morning, of each person.",
        [
            ("well", "Rested and well"),
            ("low", "Slept badly, drank alcohol or missed meals"),
            ("ill", "Ill, fever, vomiting or diarrhoea"),
            ("signs", "Signs of heat illness yesterday or today"),
        ],
        example="well",
    )
    person: str = choice(
        "Who",
        "If two fit, take the one higher in the list.",
        [
            ("new_heat", "New to work in heat"),
            ("new_suit", "First days in this suit"),
            ("hot_spell", "First hot spell of the year"),
            ("back", "Experienced, back after a week or more"),
            ("used", "Used to this heat and this suit"),
        ],
        example="new_suit",
    )
    day: int | None = count(
        "Which day in the heat",
        "1 is the first day. Count again from 1 after a week away.",
        only_if=("person", ("new_heat", "new_suit", "hot_spell", "back")),
        low=1,
        high=60,
        why="after two months in the heat the first days are over",
        plausible=(1, 6),
        example=1,
    )
    full_minutes: float = number(
        "Usual time in heat on a full day",
        "Minutes in heat and suit, rests not counted, of someone used to it.",
        "min",
        low=10,
        high=480,
        why="more than a working day is no plan",
        plausible=(30, 300),
        example=120,
        step=10,
    )
    work_minutes: int | None = count(
        "Work in an hour, at most",
        "From “Heat in the suit”, for this person and this weather.",
        unit="min",
        low=0,
        high=60,
        why="an hour has 60 minutes",
        source="arithmetic",
        origin="extra",
        optional=True,
    )

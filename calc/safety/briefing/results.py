"""What "Before you start" answers: one card to read aloud."""

from __future__ import annotations

from calc.declare import Out


def _column(name: str, label: str) -> Out:
    return Out(name=name, label=label, meaning=label + ".", kind="text")


RESULTS: tuple[Out, ...] = (
    Out(
        name="verdict",
        label="Today",
        meaning="If any part stops, the day stops.",
        kind="text",
        main=True,
    ),
    Out(
        name="work_minutes",
        label="Work in an hour, at most",
        meaning="In this heat, in the suit.",
        kind="count",
        unit="min",
        main=True,
    ),
    Out(
        name="outer",
        label="Nobody else outdoors, within",
        meaning="Our zone, with people downwind.",
        unit="m",
        customary="ft",
        main=True,
    ),
    Out(
        name="help_at",
        label="Help at your side after",
        meaning="From the sting on.",
        unit="min",
        main=True,
    ),
    Out(
        name="spells",
        label="Work periods",
        meaning="Pieces of the planned work.",
        kind="count",
    ),
    Out(
        name="on_site",
        label="Time on site",
        meaning="Work with the rests between.",
        unit="min",
    ),
    Out(
        name="conditions",
        label="Go on only if",
        meaning="Each one ticked before the suit goes on.",
        kind="table",
        columns=(_column("part", "Part"), _column("condition", "Condition")),
    ),
    Out(
        name="limits",
        label="Limits, times, distances",
        meaning="Read aloud; each with who set it.",
        kind="table",
        columns=(_column("what", "What"), _column("value", "Value"), _column("by", "Set by")),
    ),
    Out(
        name="stop_list",
        label="Stop at once",
        meaning="Anyone may say stop, and stop means stop.",
        kind="table",
        columns=(_column("sign", "If"), _column("do", "Then")),
    ),
    Out(
        name="numbers",
        label="Write in",
        meaning="Local numbers and names; nothing is filled in here.",
        kind="table",
        columns=(_column("who", "What"), _column("number", "Here")),
    ),
    Out(
        name="typed",
        label="What this card is made of",
        meaning="Read it through: the card is no better than these lines.",
        kind="table",
        columns=(_column("asked", "Asked"), _column("answer", "Answer")),
    ),
)

"""What "Before you start" answers: one card to read aloud."""

from __future__ import annotations

from calc.declare import Out
from calc.declare.results import out


def _column(name: str, label: str) -> Out:
    return out(name, label, label + ".", kind="text")


RESULTS: tuple[Out, ...] = (
    out("verdict", "Today", "If any part stops, the day stops.", kind="text", main=True),
    out(
        "work_minutes",
        "Work in an hour, at most",
        "In this heat, in the suit.",
        kind="count",
        unit="min",
        main=True,
    ),
    out(
        "outer",
        "Nobody else outdoors, within",
        "Our zone, with people downwind.",
        unit="m",
        main=True,
    ),
    out("help_at", "Help at your side after", "From the sting on.", unit="min", main=True),
    out("spells", "Work periods", "Pieces of the planned work.", kind="count"),
    out("on_site", "Time on site", "Work with the rests between.", unit="min"),
    out(
        "conditions",
        "Go on only if",
        "Each one ticked before the suit goes on.",
        kind="table",
        columns=(_column("part", "Part"), _column("condition", "Condition")),
    ),
    out(
        "limits",
        "Limits, times, distances",
        "Read aloud; each with who set it.",
        kind="table",
        columns=(_column("what", "What"), _column("value", "Value"), _column("by", "Set by")),
    ),
    out(
        "stop_list",
        "Stop at once",
        "Anyone may say stop, and stop means stop.",
        kind="table",
        columns=(_column("sign", "If"), _column("do", "Then")),
    ),
    out(
        "numbers",
        "Write in",
        "Local numbers and names; nothing is filled in here.",
        kind="table",
        columns=(_column("who", "What"), _column("number", "Here")),
    ),
    out(
        "typed",
        "What this card is made of",
        "Read it through: the card is no better than these lines.",
        kind="table",
        columns=(_column("asked", "Asked"), _column("answer", "Answer")),
    ),
)

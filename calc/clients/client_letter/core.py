"""The core of "Letters to the client": from what was given to the facts of a letter."""

from __future__ import annotations

from datetime import date

from calc.clients import aftercare, letters
from calc.clients.client_letter.cautions import cautions
from calc.clients.client_letter.inputs import Inputs
from calc.clients.client_letter.readability import measure
from calc.declare import Answer

_PLAIN = (
    "place", "fate", "comb", "treated", "touched", "callback", "measure", "currency", "adults",
    "queens", "males", "left", "tiers", "stings", "price", "total", "deposit", "distance", "arrive",
    "finish", "date", "half",
)  # fmt: skip
"""Inputs that are facts of the letter by the same name."""


def core(x: Inputs) -> Answer:
    """Write one letter from numbers and choices; names stay blanks to fill in."""
    known = facts(x)
    text = letters.compose(x.kind, x.language, known)
    measures = measure(text)
    values = {
        "letter": text,
        "grade": measures.grade if x.language == "en" else None,
        "longest": measures.longest,
        "words": measures.words,
        "left_out": letters.left_out(x.kind, x.language, known),
    }
    told = cautions(
        x.kind, x.language, distance=x.distance, treated=x.treated, fate=x.fate, animal=x.animal
    )
    return Answer(values=values, cautions=told)


def facts(x: Inputs) -> dict[str, letters.Fact]:
    """Return the facts of the letter: what was given, and the days that follow from it."""
    given = {name: getattr(x, name) for name in _PLAIN}
    made: dict[str, letters.Fact] = {
        name: value for name, value in given.items() if value is not None
    }
    if x.animal is not None:
        made["animal"] = letters.ANIMALS[x.animal]
    job = date.fromisoformat(x.date)
    looks = [each.isoformat() for each in aftercare.looks(job)]
    return made | aftercare.facts(job, looks, x.animal, x.comb, x.half)

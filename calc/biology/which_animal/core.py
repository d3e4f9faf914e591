"""The core of "Which animal is it?": from what was seen to ranking and duty."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

from calc.biology.which_animal.cautions import cautions
from calc.biology.which_animal.duty import (
    bee_chance,
    duty,
    is_named,
    law,
    leading_duty,
    named_kin,
)
from calc.biology.which_animal.inputs import Inputs
from calc.biology.which_animal.posterior import chances, seen_traits
from calc.biology.which_animal.question import advice
from calc.biology.which_animal.traits import NONE, group, kin, name_of
from calc.declare import Answer
from calc.tables import row

_SHOWN = 8
_LEAST = 0.01
_WORDS = ((0.9, "very likely"), (0.7, "likely"), (0.0, "more likely than not"))


def core(x: Inputs) -> Answer:
    """Return the ranking and the duty for what was seen.

    Model and validity: :func:`calc.biology.which_animal.posterior.chances`.
    """
    seen = x.seen
    chance = chances(seen)
    return Answer(
        values={
            "duty": leading_duty(chance, seen),
            "animal": _answer(chance),
            "bee_chance": in_words(bee_chance(chance)),
            "law": law(next(iter(chance)), x.region),
            "seen": len(seen_traits(seen)),
            "candidates": _candidates(chance, x.region),
            "ask_next": advice(seen),
        },
        cautions=cautions(chance, seen),
    )


def in_words(chance: float) -> str:
    """Return a chance in words, no finer than the model carries.

    The ends stay open, and from 20 % on it goes in steps of 5 %.
    """
    if chance >= 0.95:
        return "over 95 %"
    if chance < 0.01:
        return "under 1 %"
    if chance < 0.05:
        return "1 to 5 %"
    if chance < 0.2:
        return f"about {round(100 * chance)} %"
    return f"about {min(5 * round(20 * chance), 95)} %"


def _answer(chance: Mapping[str, float]) -> str:
    first = next(iter(chance))
    if is_named(chance):
        word = next(word for least, word in _WORDS if chance[first] >= least)
        return f"{name_of(first)} ({row('species', first)['latin']}), {word}"
    if named_kin(chance):
        kind = named_kin(chance)
        within = [name_of(one) for one in chance if kin(one) == kind][:2]
        article = "An" if kind[0] in "aeiou" else "A"
        return f"{article} {kind}, which one is open. First on the list: {' or '.join(within)}"
    leading = [one for one in chance if one != NONE][:2]
    return f"Unknown. First on the list: {name_of(leading[0])}, then {name_of(leading[1])}"


def _candidates(chance: Mapping[str, float], region: str) -> list[dict[str, Any]]:
    shown = [one for one in chance if chance[one] >= _LEAST][:_SHOWN]
    bee = next(one for one in chance if group(one) == "bee")
    shown += [one for one in (bee, NONE) if one not in shown]
    return [
        {
            "animal": name_of(one),
            "chance": in_words(chance[one]),
            "short": duty(one, region)["short"],
        }
        for one in shown
    ]

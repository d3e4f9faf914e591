"""The next question: what to ask so that the answer stands soonest.

A calculator that leads through a decision has its own way to choose (its ``asks``). The others ask
for what is missing, in the order in which it matters.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from typing import Any

from calc.declare import Calculator, Choice, Incomplete, Input
from calc.influence import ordered


@dataclass(frozen=True, kw_only=True, slots=True)
class Question:
    """What to ask next, and why; no ``asked`` input where nothing more would change the answer.

    ``settled`` says whether what is decided (a duty, a decision) can still become another.
    """

    asked: Input | None
    why: str
    settled: bool
    standing: str = ""

    def as_dict(self) -> dict[str, Any]:
        """JSON form."""
        told: dict[str, Any] = {
            "question": None,
            "why": self.why,
            "settled": self.settled,
            "standing": self.standing,
        }
        if self.asked is not None:
            told["question"] = {
                "input": self.asked.name,
                "label": self.asked.label,
                "meaning": self.asked.meaning,
                "options": [
                    {"value": each.value, "label": each.label, "meaning": each.meaning}
                    for each in (self.asked.options if isinstance(self.asked, Choice) else ())
                ],
            }
        return told


def ask(calculator: Calculator, given: Mapping[str, object]) -> Question:
    """Return the next question of a calculator, after what was given.

    Raises
    ------
    InputError
        for a value that cannot be taken
    """
    if calculator.asks is not None:
        found = calculator.asks(given)
        assert isinstance(found, Question)
        return found
    answer = calculator.answer(given)
    if not isinstance(answer, Incomplete):
        return Question(asked=None, why="All that is needed is given.", settled=True)
    first, *_ = ordered(answer)
    return Question(
        asked=first,
        why=f"{len(answer.missing)} of {answer.needed} values are missing; this one matters most.",
        settled=answer.stopped,
    )

"""The rules of the first call: read from their tables, tested one by one, all of them shown."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from functools import cache
from typing import Any, Literal

from calc import tables

Effect = Literal["path", "decides", "adds"]

TABLES: dict[Effect, str] = {
    "path": "call_paths",
    "decides": "call_choices",
    "adds": "call_conditions",
}
"""The tables of rules, in the order in which they are tried."""

_WORDS = {"is", "not", "below", "not_below", "above", "at_most"}


@dataclass(frozen=True, kw_only=True, slots=True)
class Rule:
    """One row of a table.

    A ``path`` sends the job another way and stops it; a rule that ``decides`` does so if no path
    speaks; one that ``adds`` names something to see to before going.
    """

    key: str
    rule: str
    test: tuple[tuple[str, str, str], ...]
    effect: Effect
    decision: str
    reason: str
    source: str

    def speaks(self, answers: Mapping[str, Any]) -> bool:
        """Say whether every part of the test holds for these answers."""
        return all(holds(answers, *part) for part in self.test)


@cache
def rules() -> tuple[Rule, ...]:
    """Return all rules, in the order of the tables."""
    return tuple(
        Rule(
            key=row["key"],
            rule=row["rule"],
            test=parsed(row["test"]),
            effect=effect,
            decision=row.get("decision", ""),
            reason=row["reason"],
            source=row["source"],
        )
        for effect, name in TABLES.items()
        for row in tables.rows(name)
    )


def parsed(text: str) -> tuple[tuple[str, str, str], ...]:
    """Return the parts of a test such as ``winters is cold; days at_most soon``.

    Raises
    ------
    ValueError
        for a part that is not ``input word value`` with a word known here
    """
    if text == "always":
        return ()
    parts = []
    for part in text.split(";"):
        name, word, value = part.split()
        if word not in _WORDS:
            raise ValueError(f"no such word in a test: {part}")
        parts.append((name, word, value))
    return tuple(parts)


@cache
def deciders() -> tuple[Rule, ...]:
    """Return the rules that can decide, in the order in which the first one holds."""
    return tuple(each for each in rules() if each.effect != "adds")


def spoken(answers: Mapping[str, Any]) -> list[Rule]:
    """Return the rules that speak, in the order of the table."""
    return [each for each in rules() if each.speaks(answers)]


def deciding(found: list[Rule]) -> Rule:
    """Return the rule that decides: the first path, else the first that decides."""
    paths = [each for each in found if each.effect == "path"]
    return (paths or [each for each in found if each.effect == "decides"])[0]


def ends(rule: Rule) -> Mapping[str, Any]:
    """Return what the decision of a rule means: who acts, and words for the caller."""
    found = [row for row in tables.rows("call_decisions") if row["decision"] == rule.decision]
    return found[0]


def limit(key: str) -> float:
    """Return a limit of the table, a distance in m or a number of days."""
    row = tables.row("call_limits", key)
    return float(row["distance"] if "distance" in row else row["days"])


def holds(answers: Mapping[str, Any], name: str, word: str, value: str) -> bool:
    """Say whether one part of a test holds for these answers."""
    given: Any = answers[name]
    if word in {"is", "not"}:
        said = "unknown" if given is None else str(given)
        return (said in value.split("|")) == (word == "is")
    if given is None:
        return False
    bound = limit(value)
    held = {
        "below": given < bound,
        "not_below": given >= bound,
        "above": given > bound,
        "at_most": given <= bound,
    }
    return bool(held[word])

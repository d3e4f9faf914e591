"""The next question of a call: the one whose answer is expected to decide most.

A call ends in one decision. What may still come is weighed by how often callers say what (a guess
of ours, table ``call_answers``) and by what it costs to miss a decision (``call_decisions``). Asked
is the question with the highest expected value of its answer; where no single answer is worth
anything yet, the one that tells most about the decision. The guess sets the order alone: whether
the decision can still change is found from the rules, over every answer.
"""

from __future__ import annotations

import math
from collections.abc import Iterator, Mapping
from functools import cache
from typing import Any

from calc import tables
from calc.asking import Question
from calc.clients.first_call.inputs import Inputs
from calc.clients.first_call.rules import Rule, deciders, deciding, ends, holds, spoken
from calc.declare import Input
from calc.declare.reading import read

FIRST = "hurt"
"""The first question of every call; its worth is the greatest, too."""

ALWAYS_FIRST = "It is the first question of every call: it can end it."

AFTER = {"status": "animal"}
"""Questions that make no sense before another was asked."""

State = frozenset[tuple[str, Any]]
"""Answers given, each by the one that stands for all answers that the rules treat alike."""

Chances = Mapping[str, float]
"""Chance of each decision."""

_INPUTS = {each.name: each for each in Inputs.declared}


def asks(given: Mapping[str, object]) -> Question:
    """Return the next question, or none where no answer could change the decision.

    A question that stands in ``given`` with ``None`` was asked, and the caller could not say.

    Raises
    ------
    InputError
        for an answer that is none of the options
    """
    reading = read("On the phone with a client", Inputs.declared, given, False, {})
    for problem in reading.problems:
        raise problem
    state = stands_for(
        {
            name: one
            for name, one in reading.values.items()
            if one is not None or (name in given and name != FIRST)
        }
    )
    if not any(name == FIRST for name, _ in state):
        return Question(asked=_INPUTS[FIRST], why=ALWAYS_FIRST, settled=False)
    ends_in = chances(state, clear=False)
    if len(ends_in) == 1:
        (decision,) = ends_in
        return Question(
            asked=None, why="No answer could change this.", settled=True, standing=decision
        )
    name = next_question(state)
    now = chances(state)
    raised = {
        max(after, key=lambda each: _weight(each) * (after[each] - now.get(each, 0.0)))
        for _, _, after in _answers(state, name)
    }
    said = sorted(raised, key=_weight, reverse=True)[:3]
    return Question(
        asked=_INPUTS[name],
        why=f"Its answer can mean: {'; '.join(said)}.",
        settled=False,
        standing=ends(deciding(spoken(dict.fromkeys(_INPUTS) | dict(state))))["decision"],
    )


def stands_for(answers: Mapping[str, Any]) -> State:
    """Return the state of a call: only what the rules go by, each answer by its like."""
    made = []
    for name, value in answers.items():
        if name in _classes():
            mark = _signature(name, value)
            alike = [one for one, _ in _classes()[name] if _signature(name, one) == mark]
            made.append((name, alike[0] if alike else value))
    return frozenset(made)


def next_question(state: State) -> str:
    """Return the question whose answer is worth most.

    Worth is the fall of the expected weight of a missed decision; ties go to the question that
    tells most about the decision, in bits, then to the order of the sheet.
    """
    now = chances(state)
    best, worth = "", (-1.0, -1.0)
    for name in _open(state):
        value, gain = -_kept(now), entropy(now)
        for share, _, after in _answers(state, name):
            value += share * _kept(after)
            gain -= share * entropy(after)
        found = (round(value, 9), round(gain, 9))
        if found > worth:
            best, worth = name, found
    return best


def chances(state: State, clear: bool = True) -> Chances:
    """Return how likely each decision is, over all that may still be said.

    With ``clear``, callers are taken to know what they are asked: that is enough to choose the next
    question, and much quicker. Without it every answer counts.
    """
    return _from(0, state, clear)


@cache
def _from(place: int, state: State, clear: bool) -> Chances:
    """Return the same where the rules before a place are known not to hold."""
    known = dict(state)
    for rule in deciders()[place:]:
        name = _undecided(rule, known)
        if name == "":
            return {rule.decision: 1.0}
        if name is not None:
            made: dict[str, float] = {}
            for value, share in _classes(clear)[name]:
                after = _still_used(place, state | {(name, value)})
                for decision, chance in _from(place, after, clear).items():
                    made[decision] = made.get(decision, 0.0) + share * chance
            return made
        place += 1
    raise LookupError("the last rule always holds")


def _still_used(place: int, state: State) -> State:
    """Return the answers that the rules from a place on go by: so that like calls are one."""
    return frozenset(pair for pair in state if pair[0] in _names_from(place))


@cache
def _names_from(place: int) -> frozenset[str]:
    names = {name for rule in deciders()[place:] for name, _, _ in rule.test}
    above = {each.only_if[0] for name in names if (each := _INPUTS[name]).only_if is not None}
    return frozenset(names | above)


def entropy(found: Chances) -> float:
    """Return the information that the decision still holds, in bits."""
    return -math.fsum(chance * math.log2(chance) for chance in found.values() if chance)


def _answers(state: State, name: str) -> Iterator[tuple[float, Any, Chances]]:
    for value, share in _classes(True)[name]:
        yield share, value, chances(state | {(name, value)})


def _undecided(rule: Rule, known: Mapping[str, Any]) -> str | None:
    """Return None for a rule that cannot hold, "" for one that does, else the question it needs."""
    needed = ""
    for name, word, value in rule.test:
        if name in known or not _applies(_INPUTS[name], known):
            if not holds({name: known.get(name)}, name, word, value):
                return None
        elif not needed:
            needed = name
    return needed


def _applies(each: Input, known: Mapping[str, Any]) -> bool:
    """Whether a question may be asked: not where the one it hangs on was answered otherwise."""
    if each.only_if is None:
        return True
    above, values = each.only_if
    return above not in known or known[above] in values


def _open(state: State) -> list[str]:
    """Return the questions that may come next: not asked, and those before them were."""
    known = dict(state)
    return [name for name in _classes() if name not in known and _ready(name, known)]


def _ready(name: str, known: Mapping[str, Any]) -> bool:
    above = _INPUTS[name].only_if
    if above is not None:
        return known.get(above[0]) in above[1]
    return name not in AFTER or AFTER[name] in known


@cache
def _classes(clear: bool = False) -> Mapping[str, tuple[tuple[Any, float], ...]]:
    """Return for each question the answers that the rules tell apart, with their share of calls."""
    made = {}
    for row in tables.rows("call_answers"):
        pairs = zip(row["answers"], row["shares"], strict=True)
        kept = [(value, share) for value, share in pairs if value != "unknown" or not clear]
        whole = math.fsum(share for _, share in kept)
        alike: dict[tuple[bool, ...], tuple[Any, float]] = {}
        for value, share in kept:
            mark = _signature(row["key"], value)
            first, before = alike.get(mark, (value, 0.0))
            alike[mark] = (first, before + share / whole)
        made[row["key"]] = tuple(alike.values())
    return made


def _signature(name: str, value: Any) -> tuple[bool, ...]:
    """Return which parts of the deciding rules hold for an answer."""
    return tuple(
        holds({name: value}, *part) for rule in deciders() for part in rule.test if part[0] == name
    )


@cache
def _weights() -> Mapping[str, float]:
    return {row["decision"]: float(row["weight"]) for row in tables.rows("call_decisions")}


def _weight(decision: str) -> float:
    return _weights()[decision]


def _kept(found: Chances) -> float:
    """Return the greatest weight that one decision taken now would keep from being missed."""
    return max(_weights()[decision] * chance for decision, chance in found.items())

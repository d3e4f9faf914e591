"""What an answer is worth: information, and what it saves by changing what is done.

Losses are counted in false alarms: a stop, or a delay, that was not needed. What it costs to go to
work on an animal that should have been left follows from the limits of the table, at which both
mistakes weigh the same.
"""

from __future__ import annotations

import itertools
import math
from collections.abc import Iterable, Sequence

from calc.biology.which_animal.traits import number

WORK = frozenset({"native", "introduced"})
"""Duties that let a job begin."""

_ASK = frozenset({"authority", "protected", "stray"})
_LIMIT = {"bee": "bee_stop", "notifiable": "report_stop", "ask": "ask_first"}

_Table = Sequence[Sequence[float]]


def information_gain(joint: _Table) -> float:
    """Return the information that an answer gives about a state, in bits.

    Parameters
    ----------
    joint : for each answer its chance together with each state; adds up to 1 at most

    Source: entropy before less the mean entropy after (key ``information_gain_pages``).
    """
    states = _bits(map(sum, zip(*joint, strict=True)))
    answers = _bits(map(sum, joint))
    whole = _bits(itertools.chain.from_iterable(joint))
    return states + answers - whole - _bits([sum(map(sum, joint))])


def _bits(parts: Iterable[float]) -> float:
    return -sum(part * math.log2(part) for part in parts if part > 0)


def expected_saving(joint: _Table, now: Sequence[float], then: _Table) -> float:
    """Return what an answer saves on average, before its cost.

    Parameters
    ----------
    joint : for each answer its chance together with each state
    now : loss of what is done without asking, for each state
    then : for each answer the loss of what is done after it, for each state

    Range: 0 or more where the best is done each time. Source: key ``driller_memory``.
    """
    return sum(
        part * (before - after)
        for answer, losses in zip(joint, then, strict=True)
        for part, before, after in zip(answer, now, losses, strict=True)
    )


def class_of(status: str) -> str:
    """Return what a status of a duty asks you to do: all who are to be asked are one class."""
    return "ask" if status in _ASK else status


def loss(done: str, true: str) -> float:
    """Return the loss of one class of duty where another was right, in false alarms.

    Source: identify_reasoning, and the limits of ``identify_weights``.
    """
    if done == true:
        return 0.0
    if done in WORK and true in WORK:
        return 2.0 if true == "introduced" else 0.5
    if done in WORK and true != "leave":
        limit = number(_LIMIT.get(true, "ask_first"))
        return (1 - limit) / limit
    if done == "leave":
        return {"bee": 2.0, "notifiable": 6.0}.get(true, 1.0)
    if true == "leave":
        return 1.5 if done in WORK else 0.2
    return 1.0

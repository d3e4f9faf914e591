"""The core of the call sheet: from the answers to the rule that decides."""

from __future__ import annotations

from dataclasses import asdict
from typing import Any

from calc.clients.first_call.cautions import cautions
from calc.clients.first_call.inputs import Inputs
from calc.clients.first_call.rules import Rule, deciding, ends, spoken
from calc.declare import Answer, Input
from calc.sources import source


def core(x: Inputs) -> Answer:
    """Judge one call by the rules of the tables."""
    answers: dict[str, Any] = asdict(x)
    found = spoken(answers)
    first = deciding(found)
    end = ends(first)
    return Answer(
        values={
            "decision": end["decision"],
            "why": f"{first.rule}. {first.reason}",
            "who": end["who"],
            "say": end["say"],
            "rules": [_told(first), *(_told(each) for each in _others(found, first))],
            "before": [
                {"what": each.rule, "reason": _why(each)} for each in found if each.effect == "adds"
            ],
            "open": [{"question": each} for each in open_questions(answers)],
        },
        cautions=cautions(x, found),
    )


def open_questions(answers: dict[str, Any]) -> list[str]:
    """Return the labels of questions that nobody has asked, or that the caller could not answer."""
    return [each.label for each in Inputs.declared if _is_open(each, answers)]


def _is_open(each: Input, answers: dict[str, Any]) -> bool:
    if each.only_if is not None and answers[each.only_if[0]] not in each.only_if[1]:
        return False
    missing = {None, "unknown"} | ({"no"} if each.name == "photo" else set())
    return answers[each.name] in missing


def _others(found: list[Rule], first: Rule) -> list[Rule]:
    # The rule without a test always holds; it says something only where it decides.
    return [each for each in found if each.effect != "adds" and each != first and each.test]


def _told(rule: Rule) -> dict[str, str]:
    return {"rule": f"{rule.rule}. {_why(rule)}", "leads_to": rule.decision}


def _why(rule: Rule) -> str:
    return f"{rule.reason} ({source(rule.source).cited()})"

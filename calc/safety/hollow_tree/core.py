"""The core of "Hollow or dead tree": a stem set against every published rule."""

from __future__ import annotations

import math
from typing import Any

from calc.declare import Answer
from calc.errors import InputError
from calc.safety.hollow_tree import section
from calc.safety.hollow_tree.cautions import Findings, cautions
from calc.safety.hollow_tree.charts import losses_chart
from calc.safety.hollow_tree.inputs import Inputs

RULES = {
    "wagener": "Wagener 1963",
    "coder": "Coder 1989",
    "smiley": "Smiley & Fraedrich 1992",
    "shell": "Mattheck 1992, wall",
    "opening": "Mattheck 1992, opening",
}
"""The published rules, by their rows in ``strength_loss``, and their short names."""


def core(x: Inputs) -> Answer:
    """Set a hollow stem against every published rule; see the declaration for units."""
    window = x.window or 0.0  # none is planned unless one is given: the declaration asks for it
    girth = math.pi * x.diameter
    _check(x.diameter, x.wall, x.opening + window, girth, x.window is None)
    before = section.losses(x.diameter, x.wall, x.opening / girth)
    after = section.losses(x.diameter, x.wall, (x.opening + window) / girth)
    grades = {rule: section.grade(rule, before[rule]) for rule in RULES}
    grades_after = {rule: section.grade(rule, after[rule]) for rule in RULES}
    found = Findings(
        before=_acting(grades),
        after=_acting(grades_after),
        warned="caution" in grades.values() or "caution" in grades_after.values(),
        cut=x.cut == "yes",
        height=x.height,
        dead=x.dead,
        ash=x.ash,
        lean=x.lean,
        signs=x.signs,
    )
    values = _values(before, after, found) | {
        "verdict": verdict(found),
        "who": who(found),
        "rules": [
            _line(rule, before, after, grades, grades_after, found.cut) for rule in RULES
        ],
    }  # fmt: skip
    return Answer(
        values=values,
        cautions=cautions(found),
        charts=[losses_chart(x.diameter, x.wall, (x.opening + window) / girth)],
    )


def verdict(found: Findings) -> str:
    """Say how many rules say act; never a clearance."""
    now, then = len(found.before), len(found.after)
    if not now and not then:
        when = "as it stands or with the window" if found.cut else "as it stands"
        return f"None of the 5 published rules says act {when}; that does not clear the tree."
    told = (
        f"{now} of 5 published rules say act as it stands"
        if now
        else ("None of the 5 published rules says act as it stands")
    )
    return f"{told}; with the window {then} of 5 say act." if found.cut else f"{told}."


def who(found: Findings) -> str:
    """Say who decides about the tree."""
    plain = found.dead == "alive" and found.signs == "none" and not found.before
    if plain and not found.cut and not found.warned:
        return "Nothing you gave asks for one first; in any doubt a qualified arborist."
    return "A qualified arborist, before anyone leans on it, climbs it or cuts it."


def _check(diameter: float, wall: float, open_width: float, girth: float, as_is: bool) -> None:
    if wall > diameter / 2 + 1e-9:
        raise InputError(
            "wall",
            wall,
            "at most half of the diameter",
            "Sound wood, thinnest: it is more than half of the diameter; allowed is at most half.",
        )
    if open_width > girth:
        raise InputError(
            "opening" if as_is else "window",
            open_width,
            "at most the girth",
            "Opening and window: together they are wider than the girth; allowed is at most "
            "3.14 times the diameter.",
        )


def _acting(grades: dict[str, str]) -> tuple[str, ...]:
    return tuple(rule for rule, grade in grades.items() if grade == "act")


def _values(before: dict[str, float], after: dict[str, float], found: Findings) -> dict[str, Any]:
    told: dict[str, Any] = {
        "rules_before": len(found.before),
        "wagener": before["wagener"],
        "coder": before["coder"],
        "smiley_before": before["smiley"],
        "shell": before["shell"],
        "opening_before": before["opening"],
        "area": before["area"],
        "ring_before": before["ring"],
    }
    if found.cut:
        told |= {
            "rules_after": len(found.after),
            "smiley_after": after["smiley"],
            "opening_after": after["opening"],
            "ring_after": after["ring"],
        }
    return told


def _line(
    rule: str,
    before: dict[str, float],
    after: dict[str, float],
    grades: dict[str, str],
    grades_after: dict[str, str],
    cut: bool,
) -> dict[str, str]:
    return {
        "rule": RULES[rule],
        "before": _judged(rule, before[rule], grades[rule]),
        "after": _judged(rule, after[rule], grades_after[rule]) if cut else "no window",
        "level": _shown(rule, section.level(rule, "act") or 0.0),
    }


def _judged(rule: str, value: float, grade: str) -> str:
    shown = _shown(rule, value)
    return shown if grade == "below" else f"{shown}: {grade}"


def _shown(rule: str, value: float) -> str:
    if rule == "shell":
        return f"{value:.2f}"
    return f"{value:.0f}°" if rule == "opening" else f"{value:.0f} %"

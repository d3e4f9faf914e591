"""Hollow or dead tree: the declaration and the core. The formulas are in ``hollow_tree_core``."""

from __future__ import annotations

import math
from typing import Any

from calc.declare import Answer, Axis, Calculator, Chart, Series
from calc.errors import InputError
from calc.safety import hollow_tree_core as section
from calc.safety.hollow_tree_cautions import Findings, cautions
from calc.safety.hollow_tree_forms import INPUTS, OUTPUTS

RULES = {
    "wagener": "Wagener 1963",
    "coder": "Coder 1989",
    "smiley": "Smiley & Fraedrich 1992",
    "shell": "Mattheck 1992, wall",
    "opening": "Mattheck 1992, opening",
}
"""The published rules, by their rows in ``strength_loss``, and their short names."""


def core(
    *,
    diameter: float,
    wall: float,
    opening: float,
    cut: str,
    window: float | None,
    height: str | None,
    dead: str,
    ash: str,
    lean: float,
    signs: str,
) -> Answer:
    """Set a hollow stem against every published rule; see the declaration for units."""
    girth = math.pi * diameter
    _check(diameter, wall, opening + (window or 0.0), girth, window is None)
    before = section.losses(diameter, wall, opening / girth)
    after = section.losses(diameter, wall, (opening + (window or 0.0)) / girth)
    grades = {rule: section.grade(rule, before[rule]) for rule in RULES}
    grades_after = {rule: section.grade(rule, after[rule]) for rule in RULES}
    found = Findings(
        before=_acting(grades),
        after=_acting(grades_after),
        warned="caution" in grades.values() or "caution" in grades_after.values(),
        cut=cut == "yes",
        height=height or "chest",
        dead=dead,
        ash=ash == "yes",
        lean=lean,
        signs=signs,
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
        charts=[_chart(diameter, wall, (opening + (window or 0.0)) / girth)],
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


def _chart(diameter: float, wall: float, opening: float) -> Chart:
    x = tuple(diameter / 2 * step / 30 for step in range(31))
    told = [section.losses(diameter, each, opening) for each in x]
    now = section.losses(diameter, wall, opening)
    act = section.level("wagener", "act") or 0.0
    return Chart(
        name="losses",
        title="Loss by every formula against the sound wall",
        alt=(
            "The loss by every formula falls as the sound wall gets thicker. Here: "
            f"{wall:.0f} centimetres and {now['smiley']:.0f} percent by the one that knows the "
            "opening."
        ),
        x=Axis(label="Sound wall", unit="cm", customary="inch", low=0, high=diameter / 2),
        y=Axis(label="Strength lost", unit="percent", low=0, high=100),
        series=(
            Series(label="Smiley & Fraedrich", x=x, y=tuple(each["smiley"] for each in told)),
            Series(label="Wagener", x=x, y=tuple(each["wagener"] for each in told), style="dashed"),
            Series(label="Coder", x=x, y=tuple(each["coder"] for each in told), style="dashed"),
            Series(label="33 %", x=(0.0, diameter / 2), y=(act, act)),
            Series(label="this stem", x=(wall,), y=(now["smiley"],), style="points"),
        ),
    )


hollow_tree = Calculator(
    name="hollow_tree",
    title="Hollow or dead tree",
    part="safety",
    purpose=(
        "What every published screening rule says of a hollow stem, side by side, before and "
        "after a window is cut; never a clearance."
    ),
    inputs=INPUTS,
    outputs=OUTPUTS,
    core=core,
    sources=(
        "auf_strength_loss_table",
        "wagener_1963",
        "coder_1989",
        "smiley_fraedrich_1992",
        "isa_open_cavity",
        "mattheck_1992",
        "kane_ryan_2004",
        "rinn_shell",
        "persad_2013",
        "persad_tobin_2015",
        "dead_ash_advice",
        "tree_rule",
        "open_ring",
    ),
    formula=(
        (r"100\,\frac{d^3}{D^3}", "Wagener: hollow d in a stem D; act from 33", "wagener_1963"),
        (
            r"100\,\frac{d^4}{D^4}",
            "Coder: caution from 20, hazard printed above 50; we act from 44",
            "coder_1989",
        ),
        (
            r"100\,\frac{d^3 + R\,(D^3 - d^3)}{D^3}",
            "Smiley and Fraedrich: R is the opening over the girth; act from 33",
            "smiley_fraedrich_1992",
        ),
        (
            r"\frac{t}{R_s} = \frac{2t}{D}",
            "Mattheck: wall over radius; act at 0.30, caution at 0.35",
            "mattheck_1992",
        ),
        (
            r"I_{\min} = \min\left(k(\beta - \sin\beta\cos\beta),\ "
            r"k(\beta + \sin\beta\cos\beta) - A\bar x^2\right)",
            "open ring about its weakest axis, half angle of the wood beta; our arithmetic",
            "open_ring",
        ),
    ),
    assumptions=(
        "A round hollow in the middle of a round stem; real hollows are neither.",
        "The wall is sound where you measured and nowhere thinner.",
        "Wind on a standing stem; cutting, climbing and ladders are not in any formula.",
        "Roots, crown, unions, cracks and lean are not in any formula.",
        "Mattheck's wall rule was made for closed hollows; here it counts for open ones too, to "
        "the cautious side.",
    ),
)

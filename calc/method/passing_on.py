"""What letting go, moving and feeding share: status, conditions, words, the shape of an answer."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Any

from calc import rules, units
from calc.declare import Caution, Out, choice
from calc.tables import row

HIDDEN = ("verdict", "figures")
"""Results that a stop withholds: all of them."""


def condition(key: str) -> float:
    """Return a value of the table ``release_conditions`` in the unit printed there."""
    return float(row("release_conditions", key)["value"])


def status() -> Any:
    """Declare the status of the species."""
    return choice(
        "Status of the species where you are",
        "From “Which animal is it?”, the nature authority or the wildlife office.",
        [
            ("native", "native, no permit needed"),
            ("protected_permit", "protected, and the permit covers this"),
            ("protected", "protected, no permit"),
            ("introduced_permit", "introduced, office agreed in writing"),
            ("introduced", "introduced, nobody asked"),
            ("invader", "invader, to be reported"),
            ("unknown", "not known"),
        ],
        example="native",
    )


def both(value: float, unit: str, other: str, digits: int = 0, there: int = 0) -> str:
    """Write a value in both systems of units."""
    far = units.convert(value, unit, other)
    return (
        f"{units.show(value, digits)} {units.label(unit)} "
        f"({units.show(far, there)} {units.label(other)})"
    )


def grams(value: float) -> str:
    """Write a mass in both systems of units."""
    return both(value, "g", "oz", 0, 1)


def between(ends: tuple[float, float], digits: int = 0) -> str:
    """Write a range."""
    return f"{units.show(ends[0], digits)} to {units.show(ends[1], digits)}"


def line(what: str, answer: str) -> dict[str, str]:
    """Return a row of the figures."""
    return {"what": what, "answer": answer}


def results(label: str, figures: str) -> tuple[Out, ...]:
    """Declare the answer in words and its figures; the three stand on one page, so by name."""
    return (
        Out(
            name="verdict",
            label="What it means",
            meaning="The answer in words.",
            kind="text",
            main=True,
        ),
        Out(
            name="figures",
            label=label,
            meaning=figures,
            kind="table",
            columns=(
                Out(name="what", label="What", meaning="Condition or figure.", kind="text"),
                Out(name="answer", label="Answer", meaning="Yours.", kind="text"),
            ),
        ),
    )


def about_status(status: str) -> Iterator[Caution]:
    """Yield what the law says to letting go or moving a species of this status."""
    if status == "invader":
        yield Caution(
            level="stop",
            text=f"{rules.text('release', 'law')} Let nothing of it hatch.",
            reason="Release is an offence in the EU, Great Britain and elsewhere; each young queen "
            "can found a nest.",
            source="union_list_release",
            hides=HIDDEN,
        )
    elif status == "introduced":
        yield Caution(
            level="stop",
            text="Do not let go or move an introduced species unless the wildlife office agreed in "
            "writing.",
            reason="Many places forbid it, and it harms what lives there.",
            source="introduced_release_law",
            hides=HIDDEN,
        )
    elif status == "unknown":
        yield Caution(
            level="stop",
            text="Find out first what it is and how the law stands. Not known counts as no.",
            reason="An invader let go by mistake cannot be called back.",
            source="introduced_release_law",
            hides=HIDDEN,
        )
    elif status == "protected":
        yield Caution(
            level="stop",
            text="A protected species is moved and let go only under a permit: ask the nature "
            "authority first.",
            reason="Without it even a well-meant move is an offence.",
            source="protected_hornet_de",
            hides=HIDDEN,
        )
    elif status == "protected_permit":
        yield Caution(
            level="note",
            text="The permit says where, when and who. It comes before everything here.",
            reason="Its conditions bind.",
            source="protected_hornet_de",
        )

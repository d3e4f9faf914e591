"""Exercise sheets from a seed: fresh numbers each time, and the key that goes with them.

A template names a calculator, draws the numbers of one invented case and says what is asked. The
answers are whatever the calculator gives for those numbers; none is written here. The same seed
gives the same sheet on every machine and in every supported Python, since only ``Random.random``
is drawn from.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from random import Random
from typing import Any

from calc import EDITION
from calc.catalogue import CALCULATORS
from calc.declare import Result
from docs_build.exercise_kinds import TEMPLATES, Template

MOST_DRAWS = 60
"""So often a case is drawn anew if its answer is withheld; then the template is at fault."""


@dataclass(frozen=True, slots=True)
class Exercise:
    """One drawn case with its result."""

    number: int
    template: Template
    drawn: Mapping[str, Any]
    result: Result

    def given(self) -> list[tuple[str, str]]:
        """Return label and text of every number and choice that the calculator wants."""
        echoed = self.result.as_dict()["inputs"]
        first = [name for name in echoed if name in self.drawn]
        rest = [name for name in echoed if name not in self.drawn]
        return [
            (echoed[name]["label"], echoed[name]["text"])
            for name in (*first, *rest)
            if self.result.inputs[name] is not None
        ]

    def answers(self) -> list[tuple[str, str]]:
        """Return label and text of each result that was asked for."""
        calculator = self.result.calculator
        return [
            (calculator.out(name).label, self.result.text(name)) for name in self.template.asked
        ]


def exercise(template: Template, number: int, random: Random) -> Exercise:
    """Draw one case whose answers all stand.

    A case whose result carries a stop, or leaves an answer out, is drawn again: on paper nobody
    could solve it.
    """
    calculator = CALCULATORS[template.calculator]
    for _ in range(MOST_DRAWS):
        drawn = {name: draw(random) for name, draw in template.draws.items()}
        result = calculator.run(calculator.example() | drawn)
        answered = all(result.values.get(name) is not None for name in template.asked)
        if answered and not result.stopped:
            return Exercise(number, template, drawn, result)
    raise ValueError(f"exercise {template.name}: no case without a stop in {MOST_DRAWS} draws")


def sheet(seed: int) -> list[Exercise]:
    """Return the exercises of a seed, one of each kind."""
    return [
        # A generator for each kind, so that a new kind leaves the others' numbers as they were.
        exercise(template, number, Random(f"{seed}:{template.name}"))
        for number, template in enumerate(TEMPLATES, start=1)
    ]


def markdown(seed: int) -> str:
    """Return sheet and key of a seed as Markdown."""
    drawn = sheet(seed)
    lines = [f"# Exercise sheet {seed}", "", f"Edition {EDITION}. All cases are invented.", ""]
    lines += [
        "Work by hand where you can, then type the case into the calculator named.",
        "Write the decision before the number.",
        "",
    ]
    for each in drawn:
        lines += _question(each)
    lines += [f"# Key to sheet {seed}", "", f"Edition {EDITION}. For the trainer.", ""]
    for each in drawn:
        lines += _key(each)
    return "\n".join(lines).rstrip() + "\n"


def _question(each: Exercise) -> Iterator[str]:
    yield f"## {each.number}. {each.template.page}"
    yield ""
    yield each.template.story
    yield ""
    yield from (f"- {label}: {text}" for label, text in each.given())
    yield ""
    yield f"Find: {'; '.join(label for label, _ in each.answers())}."
    yield each.template.judge
    yield ""


def _key(each: Exercise) -> Iterator[str]:
    yield f"## {each.number}. {each.template.page}"
    yield ""
    yield from (f"- {label}: **{text}**" for label, text in each.answers())
    yield ""
    yield f"A good answer: {each.template.point}"
    cautions = [caution for caution in each.result.cautions if caution.level == "caution"]
    if cautions:
        yield ""
        yield "Cautions the calculator gives with it:"
        yield ""
        yield from (f"- {caution.text}" for caution in cautions)
    yield ""

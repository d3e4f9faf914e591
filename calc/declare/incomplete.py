"""What can be said while values are missing.

Cautions and stops never wait for numbers: the core is run over plausible values of what is missing,
and what it says every time is said at once. Where few values are missing, the spread of a number
over these runs is told as a range, and never a number itself.
"""

from __future__ import annotations

import itertools
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from random import Random
from typing import TYPE_CHECKING, Any

from calc import EDITION
from calc.declare.answers import echo
from calc.declare.cautions import Caution
from calc.declare.inputs import Input
from calc.errors import InputError

if TYPE_CHECKING:
    from calc.declare.answers import Result
    from calc.declare.calculator import Calculator

RUNS = 24
"""Runs over plausible values: corners first, then random ones by a fixed seed."""

FEW = 2
"""Values that may be missing at most for a range to be told."""


@dataclass(frozen=True, kw_only=True, slots=True)
class Incomplete:
    """An answer that waits: what is missing, and what holds whatever it is."""

    calculator: Calculator
    inputs: Mapping[str, Any]
    origins: Mapping[str, str]
    missing: tuple[Input, ...]
    cautions: tuple[Caution, ...]
    ranges: Mapping[str, tuple[float, float]]
    edition: str = EDITION

    @property
    def stopped(self) -> bool:
        """Whether a stop is certain already."""
        return any(caution.level == "stop" for caution in self.cautions)

    @property
    def needed(self) -> int:
        """Return how many values an answer needs from the person, the job or the equipment."""
        return self.known + len(self.missing)

    @property
    def known(self) -> int:
        """Return how many of them are there."""
        return sum(
            each.needed and self.origins[each.name] != "not given"
            for each in self.calculator.inputs
        )

    def as_dict(self) -> dict[str, Any]:
        """JSON form."""
        return {
            "calculator": self.calculator.name,
            "title": self.calculator.title,
            "edition": self.edition,
            "complete": False,
            "known": self.known,
            "needed": self.needed,
            "missing": [
                {"name": each.name, "label": each.label, "meaning": each.meaning}
                for each in self.missing
            ],
            "inputs": {
                each.name: echo(each, self.inputs.get(each.name), self.origins[each.name])
                for each in self.calculator.inputs
            },
            "cautions": [caution.as_dict() for caution in self.cautions],
            "ranges": {
                name: {
                    "label": self.calculator.out(name).label,
                    "low": low,
                    "high": high,
                    "text": self.calculator.out(name).between(low, high),
                    "customary_text": self.calculator.out(name).between(low, high, customary=True),
                }
                for name, (low, high) in self.ranges.items()
            },
            "sources": [each.as_dict() for each in self.calculator.cited(self.cautions)],
        }


def waiting(
    calculator: Calculator,
    values: Mapping[str, Any],
    origins: Mapping[str, str],
    missing: tuple[Input, ...],
) -> Incomplete:
    """Run over plausible values of what is missing, and keep what holds in every run."""
    results = list(_tried(calculator, values, missing))
    return Incomplete(
        calculator=calculator,
        inputs=values,
        origins=origins,
        missing=missing,
        cautions=_certain(results),
        ranges=_spread(calculator, results) if len(missing) <= FEW else {},
    )


def _tried(
    calculator: Calculator, values: Mapping[str, Any], missing: tuple[Input, ...]
) -> Iterator[Result]:
    known = {name: value for name, value in values.items() if value is not None}
    for run, drawn in enumerate(plausible(missing, RUNS)):
        try:
            yield calculator.run(_completed(calculator, known | drawn, Random(run)))
        except InputError:
            continue  # these values do not go together


def _completed(calculator: Calculator, given: dict[str, Any], random: Random) -> dict[str, Any]:
    """Give also what is needed only now that a choice was drawn."""
    for _ in calculator.inputs:
        reading = calculator.reading(given)
        if not reading.missing:
            break
        given = given | {each.name: each.draw(random) for each in reading.missing}
    return given


def plausible(inputs: Sequence[Input], runs: int) -> Iterator[dict[str, Any]]:
    """Yield plausible values of all inputs: the corners if they are few, then random ones."""
    corners = list(
        itertools.islice(itertools.product(*(each.over(2) for each in inputs)), runs + 1)
    )
    made = 0
    if len(corners) <= runs // 2:
        for corner in corners:
            yield {each.name: value for each, value in zip(inputs, corner, strict=True)}
        made = len(corners)
    random = Random(0)
    for _ in range(runs - made):
        yield {each.name: each.draw(random) for each in inputs}


def _certain(results: Sequence[Result]) -> tuple[Caution, ...]:
    if not results:
        return ()
    first, *others = (result.cautions for result in results)
    return tuple(each for each in first if all(each in other for other in others))


def _spread(calculator: Calculator, results: Sequence[Result]) -> Mapping[str, tuple[float, float]]:
    found = {}
    for out in calculator.outputs:
        values = [result.values[out.name] for result in results]
        if out.main and out.kind in {"number", "count"} and values and None not in values:
            found[out.name] = (min(values), max(values))
    return found

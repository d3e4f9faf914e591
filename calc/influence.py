"""What would change this answer: each value that nobody gave, tried over its plausible range.

One value at a time, the others as they stand. That is the right question for someone who asks which
single thing to look up next; what two values do together it does not tell.
"""

from __future__ import annotations

import re
from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from random import Random
from typing import Any

from calc.declare import Calculator, Incomplete, Input, Out, Result
from calc.declare.answers import echo
from calc.errors import InputError

POINTS = 5
"""Values of a number that are tried, both ends included."""

BASES = 8
"""Plausible states from which the order of what is missing is judged."""

GIVEN = frozenset({"given", "job", "equipment"})

_FIGURES = re.compile(r"\d+(?:[.,]\d+)*")


@dataclass(frozen=True, kw_only=True, slots=True)
class Effect:
    """What one value does to the answer.

    ``low`` and ``high`` are the main number at its least and its most, with ``at`` the values tried
    there; ``moves`` is their distance as a share of the number now. ``flips`` says whether the
    verdict, or a stop, becomes another.
    """

    declared: Input
    origin: str
    low: float | None
    high: float | None
    at: tuple[Any, Any]
    moves: float
    flips: bool

    @property
    def matters(self) -> bool:
        """Whether the answer would be another."""
        return self.flips or self.moves > 0


@dataclass(frozen=True, kw_only=True, slots=True)
class Influence:
    """Effects of all values that nobody gave, the gravest first."""

    main: Out | None
    now: float | None
    effects: tuple[Effect, ...]

    @property
    def verdict(self) -> str:
        """Say in a sentence what would change the answer."""
        told = [each.declared.label for each in self.effects if each.matters][:3]
        if not told:
            return "Nothing you have not said would change this."
        return f"This would change it most: {', '.join(told)}."

    def as_dict(self) -> dict[str, Any]:
        """JSON form."""
        return {
            "main": None if self.main is None else self.main.name,
            "now": self.now,
            "verdict": self.verdict,
            "effects": [self._told(each) for each in self.effects],
        }

    def _told(self, effect: Effect) -> dict[str, Any]:
        least, most = (
            echo(effect.declared, value, effect.origin).get("text", "") for value in effect.at
        )
        text = customary = ""
        if self.main is not None and effect.low is not None and effect.high is not None:
            text = self.main.between(effect.low, effect.high)
            customary = self.main.between(effect.low, effect.high, customary=True)
        return {
            "input": effect.declared.name,
            "label": effect.declared.label,
            "origin": effect.origin,
            "low": effect.low,
            "high": effect.high,
            "text": text,
            "customary_text": customary,
            "at": [least, most],
            "moves": effect.moves,
            "flips": effect.flips,
        }


def influence(
    calculator: Calculator,
    given: Mapping[str, object],
    customary: bool = False,
    origins: Mapping[str, str] | None = None,
) -> Influence:
    """Try each value that nobody gave over its plausible range.

    Raises
    ------
    InputError
        for a value that cannot be taken, or for one that an answer needs and that is missing
    """
    now = calculator.run(given, customary, origins)
    main = main_number(now)
    effects = [
        effect
        for each in calculator.inputs
        if now.origins[each.name] not in GIVEN and each.applies(now.inputs)
        if (effect := _effect(calculator, now, each, main)) is not None
    ]
    effects.sort(key=lambda each: (-each.flips, -each.moves))
    return Influence(
        main=main, now=None if main is None else _single(now, main), effects=tuple(effects)
    )


def ordered(incomplete: Incomplete) -> tuple[Input, ...]:
    """Return what is missing, in the order in which it matters over plausible states."""
    score = {each.name: 0.0 for each in incomplete.missing}
    random = Random(2)
    known = {name: value for name, value in incomplete.inputs.items() if value is not None}
    for _ in range(BASES):
        base = known | {each.name: each.draw(random) for each in incomplete.missing}
        for each in incomplete.missing:
            score[each.name] += _moved(incomplete.calculator, base, each)
    return tuple(sorted(incomplete.missing, key=lambda each: -score[each.name]))


def main_number(result: Result) -> Out | None:
    """Return the first main result that is a number or an interval and has a figure here."""
    for out in result.calculator.outputs:
        numeric = out.kind in {"number", "count", "interval"}
        if out.main and numeric and _single(result, out) is not None:
            return out
    return None


def verdict(result: Result) -> tuple[Any, ...]:
    """Return what decides in an answer: its main sentences without figures, and its stops."""
    said = [
        _FIGURES.sub("#", str(result.values[out.name]).partition("\n")[0])
        for out in result.calculator.outputs
        if out.main and out.kind == "text"
    ]
    stops = [_FIGURES.sub("#", each.text) for each in result.cautions if each.level == "stop"]
    return (*said, *sorted(stops))


def _effect(calculator: Calculator, now: Result, each: Input, main: Out | None) -> Effect | None:
    runs = _runs(calculator, dict(now.inputs), each)
    if not runs:
        return None
    flips = any(verdict(result) != verdict(now) for _, result in runs)
    told = [
        (number, value)
        for value, result in runs
        if main is not None and (number := _single(result, main)) is not None
    ]
    low, high = (min(told, key=_first), max(told, key=_first)) if told else ((None,) * 2,) * 2
    base = None if main is None else _single(now, main)
    return Effect(
        declared=each,
        origin=now.origins[each.name],
        low=low[0],
        high=high[0],
        at=(low[1], high[1]) if told else (runs[0][0], runs[-1][0]),
        moves=_share(low[0], high[0], base, main),
        flips=flips,
    )


def _moved(calculator: Calculator, base: Mapping[str, Any], each: Input) -> float:
    results = [result for _, result in _runs(calculator, base, each)]
    if len(results) < 2:
        return 0.0
    flips = len({verdict(result) for result in results}) > 1
    out = main_number(results[0])
    values = [_single(result, out) for result in results] if out else []
    numbers = [value for value in values if value is not None]
    spread = _share(min(numbers), max(numbers), numbers[0], out) if numbers else 0.0
    return flips + min(spread, 1.0)


def _runs(
    calculator: Calculator, base: Mapping[str, Any], each: Input
) -> Sequence[tuple[Any, Result]]:
    made = []
    for value in each.over(POINTS):
        given = {name: one for name, one in base.items() if one is not None} | {each.name: value}
        try:
            made.append((value, calculator.run(_only_known(calculator, given))))
        except InputError:
            continue  # this value does not go with the others
    return made


def _only_known(calculator: Calculator, given: dict[str, Any]) -> dict[str, Any]:
    """Draw what is needed only since another option is tried."""
    random = Random(1)
    for each in calculator.reading(given).missing:
        given[each.name] = each.shown_example if each.shown_example else each.draw(random)
    return given


def _single(result: Result, out: Out) -> float | None:
    value = result.values[out.name]
    if out.kind == "interval":
        value = None if value is None or None in value else sum(value) / 2
    return None if value is None else float(value)


def _share(low: float | None, high: float | None, now: float | None, out: Out | None) -> float:
    """Return how far apart the ends are, in shares of the number now; nothing below its digits."""
    if low is None or high is None or out is None:
        return 0.0
    apart = high - low
    if apart < 10.0**-out.digits / 2:
        return 0.0
    return apart / max(abs(now or 0.0), 10.0**-out.digits)


def _first(pair: tuple[float, Any]) -> float:
    return pair[0]

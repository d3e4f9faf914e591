"""From what was given to plain values, each with its origin: parsed and checked here alone."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from typing import Any

from calc.declare.inputs import Input
from calc.errors import InputError, shown

SAID = ("given", "job", "equipment")
"""Origins that a caller may name for a value it passes."""


@dataclass(frozen=True, kw_only=True, slots=True)
class Reading:
    """What was read: values and origins by name, what is missing, and what cannot be taken."""

    values: Mapping[str, Any]
    origins: Mapping[str, str]
    missing: tuple[Input, ...]
    problems: tuple[InputError, ...]

    def refuse(self) -> None:
        """Raise the first problem, with the others and all that is missing behind it."""
        problems = [*self.problems, *(_missing(each) for each in self.missing)]
        if problems:
            problems[0].others = tuple(problems[1:])
            raise problems[0]


def read(
    title: str,
    inputs: Sequence[Input],
    given: Mapping[str, object],
    customary: bool,
    origins: Mapping[str, str],
) -> Reading:
    """Read every input in the order of the declaration.

    ``customary`` says that bare numbers are meant in the customary unit of each input; ``origins``
    names the origin of given values that are not the person's own, such as ``job``.
    """
    problems = _unknown(title, inputs, given)
    values: dict[str, Any] = dict.fromkeys(each.name for each in inputs)
    sources = dict.fromkeys(values, "not given")
    missing: list[Input] = []
    for each in sorted(inputs, key=lambda each: _depth(each, inputs)):
        if not each.applies(values):
            continue
        value = given.get(each.name)
        if not _blank(value):
            assume = (getattr(each, "customary", "") or None) if customary else None
            try:
                values[each.name] = each.read(value, assume)
                sources[each.name] = origins.get(each.name, "given")
            except InputError as problem:
                problems.append(problem)
        elif each.standing is not None:
            values[each.name], sources[each.name] = each.standing, "usual"
        elif each.needed:
            missing.append(each)
    return Reading(
        values=values,
        origins=sources,
        missing=tuple(each for each in inputs if each in missing),
        problems=tuple(problems),
    )


def _depth(each: Input, inputs: Sequence[Input]) -> int:
    """Return how many choices decide whether this input applies: those are read before it."""
    if each.only_if is None:
        return 0
    above = next((one for one in inputs if one.name == each.only_if[0]), None)
    return 1 if above is None else 1 + _depth(above, inputs)


def _blank(value: object) -> bool:
    return value is None or (isinstance(value, str | list | tuple) and not _text(value))


def _text(value: str | list[Any] | tuple[Any, ...]) -> str | bool:
    return value.strip() if isinstance(value, str) else len(value) > 0


def _missing(each: Input) -> InputError:
    return each.refuse(None, "a value is missing")


def _unknown(title: str, inputs: Sequence[Input], given: Mapping[str, object]) -> list[InputError]:
    known = sorted(each.name for each in inputs)
    allowed = "one of " + ", ".join(known)
    return [
        InputError(
            shown(name),
            value,
            allowed,
            f"“{shown(name)}” is no input of “{title}”; allowed is {allowed}.",
        )
        for name, value in given.items()
        if name not in known
    ]

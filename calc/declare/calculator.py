"""A calculator: its declaration, its core, and the one way to run it."""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass, field, replace
from types import MappingProxyType
from typing import Any, Literal

from calc import EDITION
from calc.declare.answers import Answer, Result
from calc.declare.cautions import LEVELS, Caution
from calc.declare.fields import Given
from calc.declare.incomplete import Incomplete, waiting
from calc.declare.inputs import Input
from calc.declare.numbers import Number
from calc.declare.reading import Reading, read
from calc.declare.results import Out
from calc.sources import Source, source


@dataclass(frozen=True, kw_only=True, slots=True)
class Calculator:
    """One calculator: its declaration and its core.

    ``formula`` holds LaTeX lines, each with what it is and its source key; ``assumptions`` says in
    sentences what must hold and what happens to the answer where it does not.
    """

    name: str
    title: str
    part: Literal["biology", "safety", "method", "clients"]
    purpose: str
    inputs: tuple[Input, ...] = ()
    given: type[Given] | None = None
    outputs: tuple[Out, ...]
    core: Callable[..., Answer]
    sources: tuple[str, ...]
    formula: tuple[tuple[str, str, str], ...] = ()
    assumptions: tuple[str, ...] = ()
    asks: Callable[[Mapping[str, object]], Any] | None = None
    _by_name: Mapping[str, Out] = field(init=False, repr=False, compare=False)

    def __post_init__(self) -> None:
        """Check the declaration once, when it is made."""
        if self.given is not None:
            object.__setattr__(self, "inputs", self.given.declared)
        names = [each.name for each in self.inputs]
        if len(set(names)) != len(names):
            raise ValueError(f"{self.name}: an input name stands twice")
        by_name = {out.name: out for out in self.outputs}
        if len(by_name) != len(self.outputs):
            raise ValueError(f"{self.name}: a result name stands twice")
        object.__setattr__(self, "_by_name", MappingProxyType(by_name))

    def out(self, name: str) -> Out:
        """Return the declaration of a result."""
        return self._by_name[name]

    def __call__(self, **given: object) -> Result:
        """Compute with quantities, numbers in the declared unit, or text with a unit.

        Raises
        ------
        InputError
            for anything the calculator cannot take, or misses; ``problems`` lists every field
        """
        return self.run(given)

    def reading(
        self,
        given: Mapping[str, object],
        customary: bool = False,
        origins: Mapping[str, str] | None = None,
    ) -> Reading:
        """Read a mapping of names to values, without computing."""
        return read(self.title, self.inputs, given, customary, origins or {})

    def run(
        self,
        given: Mapping[str, object],
        customary: bool = False,
        origins: Mapping[str, str] | None = None,
    ) -> Result:
        """Compute from a mapping of names to values.

        ``customary`` says that bare numbers are meant in the customary unit of each input;
        ``origins`` names the origin of values that the person did not give now. Inputs left out
        take their usual value; one that has none, and is needed, is named in the error.
        """
        found = self.reading(given, customary, origins)
        found.refuse()
        return self._computed(found)

    def answer(
        self,
        given: Mapping[str, object],
        customary: bool = False,
        origins: Mapping[str, str] | None = None,
    ) -> Result | Incomplete:
        """Compute if all is there that is needed, else say what is missing and what holds anyway.

        Raises
        ------
        InputError
            for a value that cannot be taken, never for one that is missing
        """
        found = self.reading(given, customary, origins)
        if found.problems or not found.missing:
            replace(found, missing=()).refuse()
            return self._computed(found)
        return waiting(self, found.values, found.origins, found.missing)

    def _computed(self, found: Reading) -> Result:
        inputs = dict(found.values)
        answer = self.core(**inputs) if self.given is None else self.core(self.given(**inputs))
        self._check_names(answer)
        cautions = [*_soft_cautions(self.inputs, inputs), *answer.cautions]
        cautions.sort(key=lambda caution: LEVELS.index(caution.level))
        hidden = {name for each in cautions if each.level == "stop" for name in each.hides}
        values = {
            out.name: None if out.name in hidden else out.finite(answer.values.get(out.name))
            for out in self.outputs
        }
        return Result(
            calculator=self,
            inputs=MappingProxyType(inputs),
            origins=MappingProxyType(dict(found.origins)),
            values=MappingProxyType(values),
            cautions=tuple(cautions),
            charts=tuple(answer.charts),
        )

    def _check_names(self, answer: Answer) -> None:
        """Raise for a value or a cell that no result is declared for: misspelt, it would be lost.

        A core may leave out a result that has no figure; it then shows as such.
        """
        strange = {f"result {name}" for name in answer.values if name not in self._by_name}
        for out in self.outputs:
            if out.kind == "table":
                cells = {column.name for column in out.columns}
                for row in answer.values.get(out.name) or ():
                    strange |= {f"cell {out.name}.{name}" for name in row if name not in cells}
        hides = {name for each in answer.cautions for name in each.hides}
        strange |= {f"hidden {name}" for name in hides if name not in self._by_name}
        if strange:
            raise KeyError(f"{self.name} declares no {', '.join(sorted(strange))}")

    def example(self) -> dict[str, Any]:
        """Return the inputs of the worked example: an example's value, else the usual one."""
        return {
            each.name: each.shown_example for each in self.inputs if each.shown_example is not None
        }

    def cited(self, cautions: Sequence[Caution]) -> tuple[Source, ...]:
        """Return the sources of the calculator and of cautions, each once."""
        keys = [*self.sources, *(caution.source for caution in cautions)]
        return tuple(source(key) for key in dict.fromkeys(keys))

    def describe(self) -> dict[str, Any]:
        """Return the declaration as JSON."""
        cited = [*self.sources]
        for each in self.inputs:
            if isinstance(each, Number):
                cited += [each.source, *(soft.source for soft in each.soft)]
                cited += filter(None, [each.plausible_source])
            cited += filter(None, [each.usual_source])
        cited += [key for _, _, key in self.formula]
        return {
            "name": self.name,
            "title": self.title,
            "part": self.part,
            "purpose": self.purpose,
            "edition": EDITION,
            "inputs": [each.as_dict() for each in self.inputs],
            "results": [out.as_dict() for out in self.outputs],
            "units": sorted(
                {
                    unit
                    for each in (*self.inputs, *self.outputs)
                    for unit in (getattr(each, "unit", ""), getattr(each, "customary", ""))
                    if unit
                }
            ),
            "limits": [
                {
                    "input": each.name,
                    "low": each.low,
                    "high": each.high,
                    "unit": each.unit,
                    "why": each.why,
                    "source": each.source,
                }
                for each in self.inputs
                if isinstance(each, Number)
            ],
            "formula": [
                {"latex": latex, "meaning": meaning, "source": key}
                for latex, meaning, key in self.formula
            ],
            "assumptions": list(self.assumptions),
            "sources": [source(key).as_dict() for key in dict.fromkeys(cited)],
        }


def _soft_cautions(inputs: Sequence[Input], read: Mapping[str, Any]) -> list[Caution]:
    return [
        Caution(level="caution", text=soft.text, reason=soft.reason, source=soft.source)
        for each in inputs
        if isinstance(each, Number) and read.get(each.name) is not None
        for soft in each.soft
        if any(
            not soft.low <= value <= soft.high
            for value in (
                read[each.name] if isinstance(read[each.name], tuple) else (read[each.name],)
            )
        )
    ]

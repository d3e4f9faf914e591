"""What comes back from a call: the frozen result."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from typing import TYPE_CHECKING, Any

from calc import EDITION, units
from calc.declare.cautions import Caution
from calc.declare.charts import Chart
from calc.declare.inputs import Choice, Input
from calc.declare.numbers import Number
from calc.declare.results import told
from calc.sources import Source

if TYPE_CHECKING:
    from calc.declare.calculator import Calculator


NOT_GIVEN = "not given"


@dataclass(frozen=True, kw_only=True, slots=True)
class Answer:
    """What a core returns: plain values by result name, with cautions and charts."""

    values: Mapping[str, Any]
    cautions: Sequence[Caution] = ()
    charts: Sequence[Chart] = ()


@dataclass(frozen=True, kw_only=True, slots=True)
class Result:
    """The frozen result of one call."""

    calculator: Calculator
    inputs: Mapping[str, Any]
    values: Mapping[str, Any]
    origins: Mapping[str, str]
    cautions: tuple[Caution, ...]
    charts: tuple[Chart, ...]
    edition: str = EDITION

    def __getitem__(self, name: str) -> Any:
        """Return a result as a quantity where it is a number with a unit, else as it is."""
        out = self.calculator.out(name)
        value = self.values[name]
        if value is None or not out.unit or out.kind not in {"number", "interval"}:
            return value
        if out.kind == "interval":
            return tuple(None if end is None else _quantity(end, out.unit) for end in value)
        return _quantity(value, out.unit)

    @property
    def sources(self) -> tuple[Source, ...]:
        """Sources of the calculator and of the cautions raised, each once."""
        return self.calculator.cited(self.cautions)

    @property
    def stopped(self) -> bool:
        """Whether a stop withholds a number."""
        return any(caution.level == "stop" for caution in self.cautions)

    def text(self, name: str, customary: bool = False) -> str:
        """Write one result for a reader."""
        return self.calculator.out(name).text(self.values[name], customary)

    def as_dict(self) -> dict[str, Any]:
        """JSON form: everything a page, a document or a script needs."""
        return {
            "calculator": self.calculator.name,
            "title": self.calculator.title,
            "edition": self.edition,
            "complete": True,
            "inputs": {
                each.name: echo(each, self.inputs.get(each.name), self.origins[each.name])
                for each in self.calculator.inputs
                if each.name in self.inputs
            },
            "results": {
                out.name: told(out, self.values.get(out.name)) for out in self.calculator.outputs
            },
            "cautions": [caution.as_dict() for caution in self.cautions],
            "charts": [chart.as_dict() for chart in self.charts],
            "sources": [each.as_dict() for each in self.sources],
        }


def _quantity(value: float, unit: str) -> Any:
    return units.Quantity(value, units.parse_unit(unit))


def echo(each: Input, value: Any, origin: str) -> dict[str, Any]:
    """Return an input as JSON, with its origin."""
    made: dict[str, Any] = {"label": each.label, "value": value, "origin": origin}
    if isinstance(value, tuple):
        made["value"] = list(value)
    if isinstance(each, Choice):
        made["text"] = next((one.label for one in each.options if one.value == value), "")
        return made
    if isinstance(each, Number):
        made["unit"] = each.unit
        for key, unit in (("text", each.unit), ("customary_text", each.customary or each.unit)):
            made[key] = _input_text(each, value, unit)
        return made
    made["text"] = NOT_GIVEN if value is None else str(value)
    return made


def _input_text(each: Number, value: Any, unit: str) -> str:
    if value is None:
        return NOT_GIVEN
    many = value if isinstance(value, tuple) else (value,)
    shown_values = [
        units.show(units.convert(one, each.unit, unit), each.digits_in(unit)) for one in many
    ]
    return f"{', '.join(shown_values)} {units.label(unit)}".strip()

"""The one declaration of a calculator: inputs, results, cautions, sources.

A :class:`Calculator` joins a declaration with a *core*, a pure function of plain numbers in the
declared units. Everything that shows or calls a calculator reads this declaration: the native
caller, ``python -m calc``, the form in the page, the table in the PDF, the reference page, the
tests. Parsing and checking happen here and nowhere else.
"""

from __future__ import annotations

import math
from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass, field, replace
from types import MappingProxyType
from typing import Any, Literal

from calc import EDITION, units
from calc.errors import InputError, shown
from calc.sources import Source, source

SLIP = "beyond it a slip of the finger is likelier"
"""Reason of a limit that only catches slips; a limit with a reason of its own names that."""

LEVELS = ("stop", "caution", "note")
"""Levels of a caution, the gravest first."""

WORDS = {"stop": "STOP", "caution": "CAUTION", "note": "NOTE"}
"""The alert word of each level, the same on screen, on paper and in text that is copied.

In capitals as they stand: they tell the levels apart without colour, and are read as words.
"""


@dataclass(frozen=True, kw_only=True, slots=True)
class Caution:
    """Something the reader must know before or beside a number.

    A ``stop`` withholds the results named in ``hides``.
    """

    level: Literal["stop", "caution", "note"]
    text: str
    reason: str
    source: str
    hides: tuple[str, ...] = ()

    def as_dict(self) -> dict[str, Any]:
        """JSON form."""
        return {
            "level": self.level,
            "text": self.text,
            "reason": self.reason,
            "source": self.source,
            "hides": list(self.hides),
        }


@dataclass(frozen=True, kw_only=True, slots=True)
class Soft:
    """A range inside the hard limits beyond which the answer carries a caution."""

    low: float = -math.inf
    high: float = math.inf
    text: str
    reason: str
    source: str


@dataclass(frozen=True, kw_only=True, slots=True)
class Input:
    """What all inputs share.

    ``label`` is what the form says, ``meaning`` one sentence of help. ``only_if`` names a choice
    and the values of it for which this input is used; otherwise it is ignored and may be left out.
    """

    name: str
    label: str
    meaning: str
    optional: bool = False
    only_if: tuple[str, tuple[str, ...]] | None = None

    @property
    def kind(self) -> str:
        """Word that the form and ``describe`` go by."""
        return type(self).__name__.lower()

    def allowed(self) -> str:
        """Return what is allowed, in words."""
        raise NotImplementedError

    def read(self, value: object, assume: str | None) -> Any:
        """Return the plain value in the declared unit, or raise :class:`InputError`."""
        raise NotImplementedError

    def as_dict(self) -> dict[str, Any]:
        """JSON form."""
        return {
            "name": self.name,
            "kind": self.kind,
            "label": self.label,
            "meaning": self.meaning,
            "optional": self.optional,
            "only_if": None
            if self.only_if is None
            else {"input": self.only_if[0], "values": list(self.only_if[1])},
        }

    def refuse(self, value: object, problem: str) -> InputError:
        """Return the error for a value, with its one sentence."""
        allowed = self.allowed()
        return InputError(
            self.name, value, allowed, f"{self.label}: {problem}; allowed is {allowed}."
        )


@dataclass(frozen=True, kw_only=True, slots=True)
class Number(Input):
    """A number with a unit, in the declared unit inside ``low`` to ``high`` (both included).

    ``why`` says why values beyond are refused (left out, the limit only catches slips),
    ``source`` where that comes from. ``digits`` is the
    number of decimals shown; ``step`` is what a press on plus or minus changes.
    """

    unit: str = ""
    customary: str = ""
    low: float
    high: float
    why: str = SLIP
    source: str
    default: float | None = None
    digits: int = 0
    customary_digits: int | None = None
    step: float | None = None
    soft: tuple[Soft, ...] = ()

    def allowed(self) -> str:
        """Return the range in both unit systems, with its reason."""
        text = self._range(self.unit, self.digits)
        if self.customary and self.customary != self.unit:
            text += f" ({self._range(self.customary, self.digits_in(self.customary))})"
        return f"{text}: {self.why}"

    def digits_in(self, unit: str) -> int:
        """Return the decimals to show in a unit of the declaration."""
        if unit == self.unit or self.customary_digits is None:
            return self.digits
        return self.customary_digits

    def _range(self, unit: str, digits: int) -> str:
        low, high = (units.convert(end, self.unit, unit) for end in (self.low, self.high))
        return (
            f"{units.show(low, digits)} to {units.show(high, digits)} {units.label(unit)}".strip()
        )

    def check(self, value: object, number: float) -> float:
        """Return ``number`` if it lies in the range, else raise."""
        if number < self.low or number > self.high:
            # A typed 45 degC must pass a limit of 45 degC after its way through kelvin.
            near = self.low if number < self.low else self.high
            if math.isclose(number, near, rel_tol=1e-9, abs_tol=1e-9):
                return near
            side = "below the lowest" if number < self.low else "above the highest"
            raise self.refuse(value, f"{_given(value, self.unit)} is {side} value taken")
        return number

    def read(self, value: object, assume: str | None) -> Any:
        """Return the number in the declared unit."""
        return self.check(value, units.plain(value, self.unit, self.label, self.name, assume))

    def as_dict(self) -> dict[str, Any]:
        """JSON form."""
        return Input.as_dict(self) | {
            "unit": self.unit,
            "customary": self.customary or self.unit,
            "low": self.low,
            "high": self.high,
            "why": self.why,
            "source": self.source,
            "default": self.default,
            "digits": self.digits,
            "soft": [
                {
                    "low": None if math.isinf(soft.low) else soft.low,
                    "high": None if math.isinf(soft.high) else soft.high,
                    "text": soft.text,
                    "reason": soft.reason,
                    "source": soft.source,
                }
                for soft in self.soft
            ],
        }


@dataclass(frozen=True, kw_only=True, slots=True)
class Count(Number):
    """A whole number of things, 0 or more."""

    step: float | None = 1

    def read(self, value: object, assume: str | None) -> Any:
        """Return the count as an integer."""
        number = self.check(value, units.plain(value, self.unit, self.label, self.name, assume))
        if number != int(number):
            raise self.refuse(value, f"{_given(value, self.unit)} is not a whole number")
        return int(number)


@dataclass(frozen=True, kw_only=True, slots=True)
class Numbers(Number):
    """A list of numbers, one after another, each inside ``low`` to ``high``.

    Text is split at commas, semicolons, spaces and line ends, so decimals in it need a point.
    ``item`` is what one of them is called in the form, such as ``pass``.
    """

    least: int = 1
    most: int
    item: str
    default: tuple[float, ...] | None = None  # type: ignore[assignment]

    def allowed(self) -> str:
        """Return how many of which range."""
        return f"{self.least} to {self.most} values of {Number.allowed(self)}"

    def read(self, value: object, assume: str | None) -> Any:
        """Return the values as a tuple in the declared unit."""
        items, assume = self._items(value, assume)
        if not self.least <= len(items) <= self.most:
            were = "1 value was" if len(items) == 1 else f"{len(items)} values were"
            raise self.refuse(value, f"{were} given")
        return tuple(self._one(place, item, assume) for place, item in enumerate(items, start=1))

    def _items(self, value: object, assume: str | None) -> tuple[Sequence[object], str | None]:
        if isinstance(value, Mapping):
            if not set(value) <= {"value", "unit"} or "value" not in value:
                raise self.refuse(value, f"“{shown(value)}” is not a list with its unit")
            if value.get("unit") is not None:
                assume = str(value["unit"])
            value = value["value"]
        if isinstance(value, str):
            if len(value) > 2000:
                raise self.refuse(value, "the text is too long")
            text = value.translate(str.maketrans(",;\t\n\r/|", "       "))
            return text.split(), assume
        if isinstance(value, units.registry.Quantity) and isinstance(value.magnitude, list | tuple):
            return [units.Quantity(each, value.units) for each in value.magnitude], assume
        if isinstance(value, list | tuple):
            return value, assume
        if hasattr(value, "tolist"):  # a numpy array, without importing numpy
            return self._items(value.tolist(), assume)
        raise self.refuse(value, f"“{shown(value)}” is not a list of values")

    def _one(self, place: int, item: object, assume: str | None) -> float:
        name = f"{self.label}, {self.item} {place}"
        one = replace(self, label=name)
        return Number.check(one, item, units.plain(item, self.unit, name, self.name, assume))

    def as_dict(self) -> dict[str, Any]:
        """JSON form."""
        return Number.as_dict(self) | {
            "least": self.least,
            "most": self.most,
            "item": self.item,
            "default": None if self.default is None else list(self.default),
        }


@dataclass(frozen=True, kw_only=True, slots=True)
class Counts(Numbers):
    """A list of whole numbers of things, each 0 or more."""

    step: float | None = 1

    def _one(self, place: int, item: object, assume: str | None) -> int:
        number = Numbers._one(self, place, item, assume)
        if number != int(number):
            one = replace(self, label=f"{self.label}, {self.item} {place}")
            raise one.refuse(item, f"{shown(item)} is not a whole number")
        return int(number)


@dataclass(frozen=True, kw_only=True, slots=True)
class Option:
    """One value of a choice."""

    value: str
    label: str
    meaning: str = ""


@dataclass(frozen=True, kw_only=True, slots=True)
class Choice(Input):
    """One of several named options."""

    options: tuple[Option, ...]
    default: str

    def allowed(self) -> str:
        """Return the options' values."""
        return "one of " + ", ".join(option.value for option in self.options)

    def read(self, value: object, assume: str | None) -> Any:
        """Return the option's value."""
        if not isinstance(value, str):
            raise self.refuse(value, f"“{shown(value)}” is not one of the options")
        for option in self.options:
            if value.strip() in {option.value, option.label}:
                return option.value
        raise self.refuse(value, f"“{shown(value)}” is not one of the options")

    def as_dict(self) -> dict[str, Any]:
        """JSON form."""
        return Input.as_dict(self) | {
            "default": self.default,
            "options": [
                {"value": each.value, "label": each.label, "meaning": each.meaning}
                for each in self.options
            ],
        }


@dataclass(frozen=True, kw_only=True, slots=True)
class Out:
    """One result.

    ``kind`` is ``number``, ``count``, ``interval`` (a pair; an upper end of None has no limit),
    ``text`` or ``table`` (rows of the ``columns``). ``digits`` is the number of decimals shown.
    ``main`` marks the answers that stand large at the top.
    """

    name: str
    label: str
    meaning: str
    kind: Literal["number", "count", "interval", "text", "table"] = "number"
    unit: str = ""
    customary: str = ""
    digits: int = 0
    customary_digits: int | None = None
    main: bool = False
    columns: tuple[Out, ...] = ()

    def as_dict(self) -> dict[str, Any]:
        """JSON form."""
        made: dict[str, Any] = {
            "name": self.name,
            "label": self.label,
            "meaning": self.meaning,
            "kind": self.kind,
            "unit": self.unit,
            "customary": self.customary or self.unit,
            "digits": self.digits,
            "main": self.main,
        }
        if self.columns:
            made["columns"] = [column.as_dict() for column in self.columns]
        return made

    def text(self, value: Any, customary: bool = False) -> str:
        """Write a value for a reader, with its unit, in one of the two unit systems."""
        if value is None:
            return "no figure"
        if isinstance(value, str):
            return value
        unit = self.customary if customary and self.customary else self.unit
        digits = self.digits
        if unit != self.unit and self.customary_digits is not None:
            digits = self.customary_digits
        if self.kind == "interval":
            low, high = (
                None if end is None else units.show(units.convert(end, self.unit, unit), digits)
                for end in value
            )
            text = f"{low} or more" if high is None else f"{low} to {high}"
        else:
            text = units.show(units.convert(value, self.unit, unit), digits)
        return f"{text} {units.label(unit)}".strip()

    def finite(self, value: Any) -> Any:
        """Return the value in its JSON form; a number that is not finite is a fault of the core."""
        if value is None:
            return None
        if self.kind == "table":
            return [
                {column.name: column.finite(row.get(column.name)) for column in self.columns}
                for row in value
            ]
        if self.kind == "interval":
            return [None if end is None else _finite(self.name, end) for end in value]
        if self.kind == "text" or isinstance(value, str):
            return str(value)
        if self.kind == "count":
            return int(value)
        return _finite(self.name, value)


@dataclass(frozen=True, kw_only=True, slots=True)
class Series:
    """One line, row of points or band of a chart, in the units of its axes.

    A ``band`` lies between ``y`` and ``y2``. ``source`` stands in the figure's caption.
    """

    label: str
    x: tuple[float, ...]
    y: tuple[float, ...]
    style: Literal["line", "dashed", "points", "band"] = "line"
    y2: tuple[float, ...] = ()


@dataclass(frozen=True, kw_only=True, slots=True)
class Axis:
    """Label and units of one axis; ``low`` and ``high`` fix its ends where given."""

    label: str
    unit: str = ""
    customary: str = ""
    low: float | None = None
    high: float | None = None


@dataclass(frozen=True, kw_only=True, slots=True)
class Chart:
    """A figure as data: it is drawn by whoever shows the result."""

    name: str
    title: str
    alt: str
    x: Axis
    y: Axis
    series: tuple[Series, ...]

    def as_dict(self) -> dict[str, Any]:
        """JSON form."""
        return {
            "name": self.name,
            "title": self.title,
            "alt": self.alt,
            "x": _axis(self.x),
            "y": _axis(self.y),
            "series": [
                {
                    "label": each.label,
                    "style": each.style,
                    "x": [_finite(self.name, value) for value in each.x],
                    "y": [_finite(self.name, value) for value in each.y],
                    "y2": [_finite(self.name, value) for value in each.y2],
                }
                for each in self.series
            ],
        }


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
        keys = [*self.calculator.sources, *(caution.source for caution in self.cautions)]
        return tuple(source(key) for key in dict.fromkeys(keys))

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
            "inputs": {
                each.name: _echo(each, self.inputs.get(each.name))
                for each in self.calculator.inputs
                if each.name in self.inputs
            },
            "results": {
                out.name: _told(out, self.values.get(out.name)) for out in self.calculator.outputs
            },
            "cautions": [caution.as_dict() for caution in self.cautions],
            "charts": [chart.as_dict() for chart in self.charts],
            "sources": [each.as_dict() for each in self.sources],
        }


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
    inputs: tuple[Input, ...]
    outputs: tuple[Out, ...]
    core: Callable[..., Answer]
    sources: tuple[str, ...]
    formula: tuple[tuple[str, str, str], ...] = ()
    assumptions: tuple[str, ...] = ()
    _by_name: Mapping[str, Out] = field(init=False, repr=False, compare=False)

    def __post_init__(self) -> None:
        """Check the declaration once, when it is made."""
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
            for anything the calculator cannot take; ``problems`` lists every field at fault
        """
        return self.run(given)

    def run(self, given: Mapping[str, object], customary: bool = False) -> Result:
        """Compute from a mapping of names to values.

        ``customary`` says that bare numbers are meant in the customary unit of each input.
        Inputs left out take their default.
        """
        inputs = self._read(given, customary)
        answer = self.core(**inputs)
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

    def defaults(self) -> dict[str, Any]:
        """Return the default of every input that has one."""
        return {
            each.name: each.default  # type: ignore[attr-defined]
            for each in self.inputs
            if each.default is not None  # type: ignore[attr-defined]
        }

    def describe(self) -> dict[str, Any]:
        """Return the declaration as JSON."""
        cited = [*self.sources]
        for each in self.inputs:
            if isinstance(each, Number):
                cited += [each.source, *(soft.source for soft in each.soft)]
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

    def _read(self, given: Mapping[str, object], customary: bool) -> dict[str, Any]:
        known = {each.name for each in self.inputs}
        problems = [
            InputError(
                shown(name),
                value,
                "one of " + ", ".join(sorted(known)),
                f"“{shown(name)}” is no input of “{self.title}”; "
                f"allowed is one of {', '.join(sorted(known))}.",
            )
            for name, value in given.items()
            if name not in known
        ]
        read: dict[str, Any] = {}
        for each in self.inputs:
            try:
                read[each.name] = self._read_one(each, given, read, customary)
            except InputError as problem:
                problems.append(problem)
        if problems:
            problems[0].others = tuple(problems[1:])
            raise problems[0]
        return read

    def _read_one(
        self, each: Input, given: Mapping[str, object], read: Mapping[str, Any], customary: bool
    ) -> Any:
        if each.only_if is not None and read.get(each.only_if[0]) not in each.only_if[1]:
            return None
        default: Any = each.default  # type: ignore[attr-defined]
        value = given.get(each.name)
        if value is None or (isinstance(value, str) and not value.strip()):
            if each.optional:
                return None
            if each.name in given or default is None:
                raise each.refuse(value, "a value is missing")
            return default
        assume = (getattr(each, "customary", "") or None) if customary else None
        return each.read(value, assume)


def _given(value: object, unit: str) -> str:
    if isinstance(value, Mapping):
        return f"{shown(value.get('value'))} {shown(value.get('unit') or units.label(unit))}"
    if isinstance(value, int | float):
        return f"{shown(value)} {units.label(unit)}".strip()
    return shown(str(value))


def _finite(name: str, value: Any) -> float:
    number = float(value)
    if not math.isfinite(number):
        raise ArithmeticError(f"result {name} is not finite")
    return number


def _quantity(value: float, unit: str) -> Any:
    return units.Quantity(value, units.parse_unit(unit))


def _axis(axis: Axis) -> dict[str, Any]:
    return {
        "label": axis.label,
        "unit": axis.unit,
        "customary": axis.customary or axis.unit,
        "low": axis.low,
        "high": axis.high,
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


def _echo(each: Input, value: Any) -> dict[str, Any]:
    told: dict[str, Any] = {"label": each.label, "value": value}
    if isinstance(value, tuple):
        told["value"] = list(value)
    if isinstance(each, Choice):
        told["text"] = next((one.label for one in each.options if one.value == value), "")
        return told
    if isinstance(each, Number):
        told["unit"] = each.unit
        for key, unit in (("text", each.unit), ("customary_text", each.customary or each.unit)):
            told[key] = _input_text(each, value, unit)
    return told


def _input_text(each: Number, value: Any, unit: str) -> str:
    if value is None:
        return "not given"
    many = value if isinstance(value, tuple) else (value,)
    shown_values = [
        units.show(units.convert(one, each.unit, unit), each.digits_in(unit)) for one in many
    ]
    return f"{', '.join(shown_values)} {units.label(unit)}".strip()


def _told(out: Out, value: Any) -> dict[str, Any]:
    told: dict[str, Any] = {
        "label": out.label,
        "kind": out.kind,
        "main": out.main,
        "value": value,
        "unit": out.unit,
    }
    if out.kind == "table":
        told["columns"] = [{"name": column.name, "label": column.label} for column in out.columns]
        told["rows"] = [
            [
                {
                    "text": column.text(row[column.name]),
                    "customary_text": column.text(row[column.name], customary=True),
                }
                for column in out.columns
            ]
            for row in value or ()
        ]
        return told
    told["text"] = out.text(value)
    told["customary_text"] = out.text(value, customary=True)
    return told

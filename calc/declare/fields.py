"""The inputs of a calculator as fields of one frozen class, of which its core receives one.

::

    class Inputs(Given):
        wind: float = number("Wind", "At the height of your head.", "m/s", low=0, high=20, ...)

    def core(x: Inputs) -> Answer: ...  # x.wind is a float; a misspelt name fails in mypy
"""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass, field, fields, replace
from typing import Any, ClassVar, dataclass_transform

from calc.declare.inputs import Choice, Input, Option
from calc.declare.moments import Day, Time
from calc.declare.numbers import Count, Counts, Number, Numbers

CUSTOMARY = {
    "degC": "degF",
    "delta_degC": "delta_degF",
    "mm": "inch",
    "cm": "inch",
    "m": "ft",
    "km": "mile",
    "cm**2": "inch**2",
    "m**2": "ft**2",
    "g": "oz",
    "kg": "lb",
    "kg/m**3": "lb/ft**3",
    "m/s": "mph",
    "km/h": "mph",
    "L": "gal",
    "L/s": "cfm",
    "kPa": "inH2O",
    "L/h": "floz/h",
}
"""The customary unit of each unit that has one, where a declaration names none."""


def number(label: str, meaning: str, unit: str = "", **more: Any) -> Any:
    """Declare a number; see :class:`Number` for what else can be said of it."""
    return _declared(Number, label, meaning, unit=unit, **_customary(unit, more))


def count(label: str, meaning: str, **more: Any) -> Any:
    """Declare a whole number of things."""
    return _declared(Count, label, meaning, **more)


def numbers(label: str, meaning: str, unit: str = "", **more: Any) -> Any:
    """Declare a list of numbers."""
    return _declared(Numbers, label, meaning, unit=unit, **_customary(unit, more))


def counts(label: str, meaning: str, **more: Any) -> Any:
    """Declare a list of whole numbers of things."""
    return _declared(Counts, label, meaning, **more)


def choice(
    label: str, meaning: str, options: Iterable[Option | tuple[str, ...]], **more: Any
) -> Any:
    """Declare a choice of options, or of tuples of value, label and perhaps meaning."""
    made = tuple(
        each if isinstance(each, Option) else Option(**dict(zip(_OPTION, each, strict=False)))
        for each in options
    )
    return _declared(Choice, label, meaning, options=made, **more)


def day(label: str, meaning: str, **more: Any) -> Any:
    """Declare a date, as text such as 2026-08-20."""
    return _declared(Day, label, meaning, **more)


def time(label: str, meaning: str, **more: Any) -> Any:
    """Declare a time of day, as text such as 20:30."""
    return _declared(Time, label, meaning, **more)


def shared(declared: Input, **changed: Any) -> Any:
    """Take an input that several calculators share, with what differs here."""
    return field(metadata={"input": replace(declared, **changed)})


_OPTION = ("value", "label", "meaning")


@dataclass_transform(
    frozen_default=True,
    kw_only_default=True,
    field_specifiers=(number, count, numbers, counts, choice, day, time, shared),
)
class Given:
    """Base of a calculator's inputs: each field is declared, and the class is frozen."""

    declared: ClassVar[tuple[Input, ...]] = ()

    def __init_subclass__(cls) -> None:
        """Make a frozen dataclass of the subclass, and name its inputs after their fields."""
        super().__init_subclass__()
        dataclass(frozen=True, kw_only=True)(cls)
        cls.declared = tuple(
            replace(each.metadata["input"], name=each.name)
            for each in fields(cls)  # type: ignore[arg-type]
        )


def _customary(unit: str, more: dict[str, Any]) -> dict[str, Any]:
    return {"customary": CUSTOMARY.get(unit, ""), **more}


def _declared(kind: type[Input], label: str, meaning: str, **more: Any) -> Any:
    return field(metadata={"input": kind(label=label, meaning=meaning, **more)})

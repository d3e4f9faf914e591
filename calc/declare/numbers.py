"""Inputs that are numbers, or lists of numbers, with a unit."""

from __future__ import annotations

import math
from collections.abc import Mapping, Sequence
from dataclasses import dataclass, replace
from random import Random
from typing import Any

from calc import units
from calc.declare.cautions import Soft
from calc.declare.inputs import Input
from calc.errors import shown

SLIP = "beyond it a slip of the finger is likelier"
"""Reason of a limit that only catches slips; a limit with a reason of its own names that."""

SLIP_SOURCE = "own_reasoning"

LONGER = 3
"""Items by which a plausible list is longer than the shortest, at most."""


@dataclass(frozen=True, kw_only=True, slots=True)
class Number(Input):
    """A number with a unit, in the declared unit inside ``low`` to ``high`` (both included).

    ``why`` says why values beyond are refused, ``source`` where that comes from; left out, the
    limits only catch slips of the finger. ``plausible`` is the range met in the field, by
    ``plausible_source``: what is not known is tried over it. ``digits`` is the number of decimals
    shown; ``step`` is what a press on plus or minus changes.
    """

    unit: str = ""
    customary: str = ""
    low: float
    high: float
    why: str = SLIP
    source: str = SLIP_SOURCE
    plausible: tuple[float, float] | None = None
    plausible_source: str = ""
    example: float | None = None
    usual: float | None = None
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

    @property
    def span(self) -> tuple[float, float]:
        """Return the plausible range, or the limits where none is declared."""
        return self.plausible or (self.low, self.high)

    def over(self, count: int) -> Sequence[Any]:
        """Return evenly spaced plausible values."""
        low, high = self.span
        if low == high or count < 2:
            return [low]
        return [low + (high - low) * place / (count - 1) for place in range(count)]

    def draw(self, random: Random) -> Any:
        """Return one plausible value, each as likely."""
        return random.uniform(*self.span)

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
            "plausible": list(self.span),
            "plausible_source": self.plausible_source or self.source,
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

    def over(self, count: int) -> Sequence[Any]:
        """Return plausible whole numbers, each once."""
        return list(dict.fromkeys(round(each) for each in Number.over(self, count)))

    def draw(self, random: Random) -> Any:
        """Return one plausible whole number."""
        low, high = self.span
        return random.randint(math.ceil(low), math.floor(high))

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
    example: tuple[float, ...] | None = None  # type: ignore[assignment]
    usual: tuple[float, ...] | None = None  # type: ignore[assignment]

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

    def over(self, count: int) -> Sequence[Any]:
        """Return lists of plausible values, by a fixed seed."""
        random = Random(0)
        return [self.draw(random) for _ in range(count)]

    def draw(self, random: Random) -> Any:
        """Return a plausible list, not much longer than the shortest taken."""
        length = random.randint(self.least, min(self.most, self.least + LONGER))
        return tuple(self._drawn(random) for _ in range(length))

    def _drawn(self, random: Random) -> float:
        return float(random.uniform(*self.span))

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
        }


@dataclass(frozen=True, kw_only=True, slots=True)
class Counts(Numbers):
    """A list of whole numbers of things, each 0 or more."""

    step: float | None = 1

    def _drawn(self, random: Random) -> int:
        low, high = self.span
        return random.randint(math.ceil(low), math.floor(high))

    def _one(self, place: int, item: object, assume: str | None) -> int:
        number = Numbers._one(self, place, item, assume)
        if number != int(number):
            one = replace(self, label=f"{self.label}, {self.item} {place}")
            raise one.refuse(item, f"{shown(item)} is not a whole number")
        return int(number)


def _given(value: object, unit: str) -> str:
    if isinstance(value, Mapping):
        return f"{shown(value.get('value'))} {shown(value.get('unit') or units.label(unit))}"
    if isinstance(value, int | float):
        return f"{shown(value)} {units.label(unit)}".strip()
    text = str(value).strip()
    return shown(f"{text} {units.label(unit)}".strip() if text and text[-1].isdigit() else text)

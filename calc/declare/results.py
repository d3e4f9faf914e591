"""What a calculator answers: the declaration of a result."""

from __future__ import annotations

import math
from dataclasses import dataclass, replace
from typing import Any, Literal

from calc import units
from calc.declare.fields import CUSTOMARY


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

    def between(self, low: float, high: float, customary: bool = False) -> str:
        """Write a range of a single number for a reader."""
        return replace(self, kind="interval").text((low, high), customary)

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
            return [None if end is None else finite(self.name, end) for end in value]
        if self.kind == "text" or isinstance(value, str):
            return str(value)
        if self.kind == "count":
            return int(value)
        return finite(self.name, value)


def finite(name: str, value: Any) -> float:
    """Return the value as a number; one that is not finite is a fault of the core."""
    number = float(value)
    if not math.isfinite(number):
        raise ArithmeticError(f"result {name} is not finite")
    return number


def told(out: Out, value: Any) -> dict[str, Any]:
    """Return a result with its texts in both unit systems, as JSON."""
    made: dict[str, Any] = {
        "label": out.label,
        "kind": out.kind,
        "main": out.main,
        "value": value,
        "unit": out.unit,
    }
    if out.kind == "table":
        made["columns"] = [{"name": column.name, "label": column.label} for column in out.columns]
        made["rows"] = [
            [
                {
                    "text": column.text(row[column.name]),
                    "customary_text": column.text(row[column.name], customary=True),
                }
                for column in out.columns
            ]
            for row in value or ()
        ]
        return made
    made["text"] = out.text(value)
    made["customary_text"] = out.text(value, customary=True)
    return made


def out(name: str, label: str, meaning: str, unit: str = "", **more: Any) -> Out:
    """Declare a result; the customary unit follows from the unit where none is named."""
    customary = {"customary": CUSTOMARY.get(unit, "")}
    return Out(name=name, label=label, meaning=meaning, unit=unit, **(customary | more))

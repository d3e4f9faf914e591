"""The one unit registry, and the reading and showing of numbers with units."""

from __future__ import annotations

import math
import re
from pathlib import Path
from typing import Any

import pint

from calc.errors import InputError, shown

registry: pint.UnitRegistry[float] = pint.UnitRegistry(
    str(Path(__file__).with_name("units.txt")), cache_folder=None
)
Quantity = registry.Quantity

LABELS = {
    "": "",
    "degC": "°C",
    "degF": "°F",
    "delta_degC": "°C",
    "delta_degF": "°F",
    "percent": "%",
    "degree": "°",
    "inch": "in",
    "inH2O": "in H₂O",
    "m**2": "m²",
    "m**3": "m³",
    "ft**2": "ft²",
    "kg/m**3": "kg/m³",
    "lb/ft**3": "lb/ft³",
    "cm**2": "cm²",
    "inch**2": "in²",
    "W/m**2": "W/m²",
    "floz": "fl oz",
    "floz/h": "fl oz/h",
    "km/h": "km/h",
    "km**-1": "per km",
    "mile**-1": "per mile",
    "day": "days",
    "hour": "h",
}
"""How a unit of the declarations is written for a reader; a unit not listed stands for itself."""

# The longest name above has 23 letters; a unit text beyond this is not a unit.
_LONGEST_UNIT = 40
_NUMBER = re.compile(r"[+-]?(?:\d+(?:[.,]\d*)?|[.,]\d+)(?:[eE][+-]?\d{1,3})?")
_FACTOR = re.compile(r"([A-Za-zµ°_]+[A-Za-z0-9_]*)(?:(?:\*\*|\^)(-?[1-4]))?")
_SIGN = re.compile(r"(?<!\*)[*/](?!\*)")
_WRITTEN = {"%": "percent", "°": "degree", "″": "inch", '"': "inch", "′": "foot", "in H2O": "inH2O"}


class UnitTextError(ValueError):
    """A unit text this handbook does not know."""


class UnclearCommaError(ValueError):
    """A comma that could be a decimal mark or a mark of thousands."""


def label(unit: str) -> str:
    """Return a unit as a reader sees it, such as ``°C`` for ``degC``."""
    return LABELS.get(unit, unit)


def parse_unit(text: str) -> Any:
    """Return the pint unit of a text such as ``m/s`` or ``ft**3/min``.

    The text goes through this small grammar of names, powers, ``*`` and ``/`` before pint sees a
    single name of it, so that no typed text is ever evaluated as an expression.
    """
    text = text.strip()
    text = _WRITTEN.get(text, text)
    for sign, power in (("²", "**2"), ("³", "**3"), ("·", "*"), (" per ", "/"), ("H₂O", "H2O")):
        text = text.replace(sign, power)
    if len(text) > _LONGEST_UNIT:
        raise UnitTextError(text)
    unit = registry.Unit("")
    if not text:
        return unit
    signs = ["*", *re.findall(_SIGN, text)]
    for sign, factor in zip(signs, re.split(_SIGN, text), strict=True):
        match = _FACTOR.fullmatch(factor.strip())
        if match is None:
            raise UnitTextError(text)
        try:
            part = registry.Unit(registry.get_name(match[1]) or match[1]) ** int(match[2] or 1)
        except (pint.UndefinedUnitError, pint.errors.OffsetUnitCalculusError, ValueError) as error:
            raise UnitTextError(text) from error
        unit = unit / part if sign == "/" else unit * part
    return unit


def split_number(text: str) -> tuple[float, str]:
    """Split ``"86 degF"`` into the number and the text of its unit (empty if there is none).

    A decimal comma is read as one; a comma before exactly three digits could be either mark and
    is refused, since a wrong guess is a factor of a thousand.
    """
    text = text.strip().replace("\u2212", "-").replace("\u00a0", " ").replace("\u202f", " ")
    match = _NUMBER.match(text)
    if match is None:
        raise ValueError("not a number")
    number = match[0]
    rest = text[match.end() :].strip()
    if rest[:1] in {".", ",", "'"} or rest[:1].isdigit():
        raise ValueError("not one number")
    if re.fullmatch(r"[+-]?[1-9]\d{0,2},\d{3}", number):
        raise UnclearCommaError("unclear comma")
    return float(number.replace(",", ".")), rest


def plain(value: object, unit: str, field: str, name: str, assume: str | None = None) -> float:
    """Return ``value`` as a plain number in ``unit``.

    Parameters
    ----------
    value : number, text such as ``"86 degF"``, pint quantity, or mapping of ``value`` and ``unit``
    unit : unit of the declaration
    field : label used in the sentence
    name : name of the input, carried by the error
    assume : unit of a bare number; the declared unit if not given

    Raises
    ------
    InputError
        for text that is no number, a unit of another kind, an unknown unit, NaN and infinity
    """
    allowed = f"a number in {label(unit)} or a unit like it" if unit else "a plain number"

    def refuse(problem: str) -> InputError:
        return InputError(
            name, value, allowed, f"{field}: “{shown(value)}” {problem}; allowed is {allowed}."
        )

    given: Any = value
    unit_text = assume if assume is not None else unit
    if isinstance(given, dict):
        if not set(given) <= {"value", "unit"} or "value" not in given:
            raise refuse("is not a value with its unit")
        if given.get("unit") is not None:
            if not isinstance(given["unit"], str):
                raise refuse("has a unit that is not text")
            unit_text = given["unit"]
        given = given["value"]
    if isinstance(given, str):
        if not given.strip():
            raise refuse("is empty")
        if len(given) > 80:
            raise refuse("is too long for a number")
        try:
            given, rest = split_number(given)
        except UnclearCommaError:
            raise refuse(
                "can be read in two ways; write it without the comma or with a point"
            ) from None
        except ValueError:
            raise refuse("is not a number") from None
        unit_text = rest or unit_text
    if isinstance(given, registry.Quantity):
        quantity: Any = given
        if isinstance(quantity.magnitude, bool) or not isinstance(quantity.magnitude, int | float):
            raise refuse("is not a single number")
    elif isinstance(given, bool) or not isinstance(given, int | float):
        raise refuse("is not a number")
    else:
        try:
            parsed = parse_unit(unit_text)
        except UnitTextError:
            raise refuse(f"has the unit “{shown(unit_text)}”, which is not known here") from None
        try:
            quantity = registry.Quantity(float(given), parsed)
        except OverflowError:
            raise refuse("is too large") from None
    try:
        number = float(quantity.to(parse_unit(unit)).magnitude)
    except pint.DimensionalityError:
        raise refuse("has a unit of another kind") from None
    except OverflowError:
        raise refuse("is too large") from None
    if not math.isfinite(number):
        raise refuse("is not a finite number")
    # 12 digits: typed 86 degF must come out as 30 degC, not as 30.000000000000057.
    return float(f"{number:.12g}")


def convert(value: float, unit: str, to: str) -> float:
    """Convert a plain number from one unit of the declarations to another."""
    if unit == to:
        return value
    return float(registry.Quantity(value, parse_unit(unit)).to(parse_unit(to)).magnitude)


def show(value: float, digits: int) -> str:
    """Write a number with that many decimals; negative digits round to tens, hundreds, ..."""
    rounded = round(value, digits) + 0.0  # adding zero turns -0.0 into 0.0
    return f"{rounded:.{max(digits, 0)}f}"

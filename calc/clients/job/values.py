"""The value of one field, checked strictly: one clear sentence for anything it cannot take."""

from __future__ import annotations

import math
import re
from collections.abc import Callable
from datetime import date, datetime
from typing import Any

from calc.clients.job import json_schema
from calc.clients.job.declare import Field
from calc.clients.job.fields import NAME, VERSION
from calc.errors import InputError, shown

LONGEST_WHOLE = 16
"""Signs of the longest whole number: what a page's script holds without loss."""

_ALLOWED = f"a job file of this handbook, version {VERSION}"


def refuse(field: str, value: object, problem: str, allowed: str = _ALLOWED) -> InputError:
    """Return the one error, with its one sentence."""
    return InputError(field, value, allowed, f"{problem}; allowed is {allowed}.")


def check(field: Field, value: object, where: str) -> Any:
    """Return the value of one field in its stored form, or raise :class:`InputError`."""
    return _KINDS[field.kind](field, value, where)


def place(where: str, name: str) -> str:
    """Return where a field stands in the file."""
    return f"{where}.{name}" if where else name


def named(value: object) -> str:
    """Say what a value is, in words."""
    if value is None:
        return "missing or empty"
    if isinstance(value, bool):
        return "yes or no"
    if isinstance(value, dict):
        return "a group of fields"
    if isinstance(value, list):
        return "a list"
    return f"“{shown(value)}”"


def _wrong(field: Field, value: object, where: str) -> InputError:
    return refuse(where, value, f"{field.label} ({where}): {named(value)}", field.allowed())


def _text(field: Field, value: object, where: str) -> str:
    if not isinstance(value, str) or len(value) > field.longest:
        raise _wrong(field, value, where)
    pattern = field.pattern or (json_schema.LINES if field.lines else json_schema.ONE_LINE)
    if not _matches(pattern, value):
        raise _wrong(field, value, where)
    return value


def _matches(pattern: str, value: str) -> bool:
    # Half a surrogate pair is no character, and no file can hold it.
    if any("\ud800" <= sign <= "\udfff" for sign in value):
        return False
    # Python's $ also stands before a last line end; in the schema's language it does not.
    return re.search(pattern.removesuffix("$") + r"\Z", value) is not None


def _number(field: Field, value: object, where: str) -> float | int:
    if isinstance(value, bool) or not isinstance(value, int | float):
        raise _wrong(field, value, where)
    if not field.low <= value <= field.high:  # false for what is no number, too
        raise _wrong(field, value, where)
    return value


def _count(field: Field, value: object, where: str) -> int:
    number = _number(field, value, where)
    if number != int(number):
        raise _wrong(field, value, where)
    return int(number)


def _list_of(one: Callable[[Field, object, str], Any]) -> Callable[[Field, object, str], Any]:
    def read(field: Field, value: object, where: str) -> list[Any]:
        if not isinstance(value, list) or len(value) > field.most:
            raise _wrong(field, value, where)
        return [one(field, each, f"{where}.{number}") for number, each in enumerate(value, start=1)]

    return read


def _choice(field: Field, value: object, where: str) -> str:
    if not isinstance(value, str) or value not in {option for option, _ in field.options}:
        raise _wrong(field, value, where)
    return value


def _date(field: Field, value: object, where: str) -> str:
    if not isinstance(value, str) or not _matches(json_schema.DATE, value):
        raise _wrong(field, value, where)
    try:
        date.fromisoformat(value)
    except ValueError:
        raise _wrong(field, value, where) from None
    return value


def _moment(field: Field, value: object, where: str) -> str:
    if not isinstance(value, str) or not _matches(json_schema.MOMENT, value):
        raise _wrong(field, value, where)
    try:
        datetime.fromisoformat(value)
    except ValueError:
        raise _wrong(field, value, where) from None
    return value


def _values(field: Field, value: object, where: str) -> dict[str, Any]:
    return {
        name: _value(field, each, place(where, name))
        for name, each in _names(field, value, where, field.most).items()
    }


def _typed(field: Field, value: object, where: str) -> dict[str, Any]:
    return {
        name: {
            inner: _plain_text(field, text, f"{where}.{name}.{inner}", field.longest)
            for inner, text in _names(field, each, place(where, name), 100).items()
        }
        for name, each in _names(field, value, where, field.most).items()
    }


def _names(field: Field, value: object, where: str, most: int) -> dict[str, Any]:
    if not isinstance(value, dict) or len(value) > most:
        raise _wrong(field, value, where)
    for name in value:
        if not _matches(NAME, name):
            at = place(where, shown(name))
            raise refuse(at, value[name], f"“{at}” is no name", "small letters, digits and _")
    return value


def _value(field: Field, value: object, where: str) -> Any:
    if isinstance(value, dict):
        if "value" not in value or not set(value) <= {"value", "unit"}:
            raise _wrong(field, value, where)
        unit = _plain_text(field, value.get("unit", ""), where, 40, json_schema.ONE_LINE)
        inner = _listed(field, value["value"], where)
        return {"value": inner} | ({"unit": unit} if "unit" in value else {})
    return _listed(field, value, where)


def _listed(field: Field, value: object, where: str) -> Any:
    if not isinstance(value, list):
        return _plain(field, value, where)
    if len(value) > json_schema.MOST_VALUES:
        raise _wrong(field, value, where)
    return [_plain(field, each, where) for each in value]


def _plain(field: Field, value: object, where: str) -> Any:
    if value is None:
        return None
    if isinstance(value, str):
        return _plain_text(field, value, where, json_schema.LONGEST_VALUE)
    if isinstance(value, bool) or not isinstance(value, int | float):
        raise _wrong(field, value, where)
    if not abs(value) < math.inf or (isinstance(value, int) and abs(value) >= 10**LONGEST_WHOLE):
        raise _wrong(field, value, where)
    return value


def _plain_text(
    field: Field, value: object, where: str, longest: int, pattern: str = json_schema.LINES
) -> str:
    if not isinstance(value, str) or len(value) > longest or not _matches(pattern, value):
        raise _wrong(field, value, where)
    return value


_KINDS: dict[str, Callable[[Field, object, str], Any]] = {
    "text": _text,
    "number": _number,
    "count": _count,
    "numbers": _list_of(_number),
    "counts": _list_of(_count),
    "choice": _choice,
    "date": _date,
    "moment": _moment,
    "texts": _list_of(_text),
    "values": _values,
    "typed": _typed,
}

"""The strict reader of job files: plain Python, one clear sentence for anything it cannot take."""

from __future__ import annotations

import json
import math
import re
from collections import Counter
from collections.abc import Callable
from datetime import date, datetime
from typing import Any

from calc.clients import job_schema
from calc.clients.job_declare import Field, Section
from calc.clients.job_fields import FORMAT, NAME, SECTIONS, VERSION
from calc.clients.job_migrate import lift
from calc.errors import InputError, shown

LARGEST = 2_000_000
"""Signs of the largest file taken."""

DEEPEST = 12
"""Nested brackets taken; a job needs seven."""

LONGEST_WHOLE = 16
"""Signs of the longest whole number: what a page's script holds without loss."""

_ALLOWED = f"a job file of this handbook, version {VERSION}"
_BRACKETS = re.compile(r'"(?:[^"\\]|\\.)*"?|[\[\]{}]', re.DOTALL)
_FIELDS = {section.name: section for section in SECTIONS}


def refuse(field: str, value: object, problem: str, allowed: str = _ALLOWED) -> InputError:
    """Return the one error, with its one sentence."""
    return InputError(field, value, allowed, f"{problem}; allowed is {allowed}.")


def parse(text: str | bytes) -> dict[str, Any]:
    """Return the checked content of a job file of this or an older version.

    Raises
    ------
    InputError
        for a file too large or too deep, for what is no JSON or no job, for a newer version, and
        for every field that holds what it may not hold; ``field`` names the place in the file
    """
    given = _json(_decoded(text))
    if not isinstance(given, dict):
        raise refuse("file", given, f"The file holds {_named(given)}, not a job")
    if given.get("format") != FORMAT:
        raise refuse("format", given.get("format"), "The file does not say that it is a job")
    return checked(lift(_versioned(given)))


def checked(given: dict[str, Any]) -> dict[str, Any]:
    """Return a copy of a job of the present version, checked field by field."""
    made: dict[str, Any] = {"format": FORMAT, "version": VERSION}
    top = {name: value for name, value in given.items() if name not in made}
    known = {each.name for each in _FIELDS[""].fields} | set(_FIELDS)
    _only(top, known, "")
    lone = {name: value for name, value in top.items() if name not in _FIELDS}
    made |= _group(_FIELDS[""], lone, "")
    for section in SECTIONS:
        if section.name in top and section.name:
            made[section.name] = _section(section, top[section.name])
    return made


def check(field: Field, value: object, where: str) -> Any:
    """Return the value of one field in its stored form, or raise :class:`InputError`."""
    return _KINDS[field.kind](field, value, where)


def _decoded(text: str | bytes) -> str:
    if len(text) > LARGEST:
        said = f"The file is larger than {LARGEST // 1_000_000} MB"
        raise refuse("file", f"{len(text)} signs", said)
    if isinstance(text, bytes):
        try:
            text = text.decode("utf-8")
        except UnicodeDecodeError:
            raise refuse("file", "bytes", "The file is no text in UTF-8") from None
    text = text.removeprefix("\ufeff")
    if not text.strip():
        raise refuse("file", "", "The file is empty")
    return text


def _json(text: str) -> Any:
    depth = 0
    for match in _BRACKETS.finditer(text):
        depth += {"{": 1, "[": 1, "}": -1, "]": -1}.get(match[0], 0)
        if depth > DEEPEST:
            said = f"The file nests more than {DEEPEST} brackets"
            raise refuse("file", shown(text), said)
    try:
        return json.loads(
            text,
            object_pairs_hook=_pairs,
            parse_constant=_no_constant,
            parse_float=_finite,
            parse_int=_whole,
        )
    except json.JSONDecodeError as error:
        said = f"The file is no JSON (line {error.lineno}, column {error.colno})"
        raise refuse("file", shown(text), said) from None
    except InputError:
        raise
    except (ValueError, RecursionError):
        said = "The file holds a number that cannot be read"
        raise refuse("file", shown(text), said) from None


def _pairs(pairs: list[tuple[str, Any]]) -> dict[str, Any]:
    made = dict(pairs)
    if len(made) != len(pairs):
        names = Counter(name for name, _ in pairs)
        twice = names.most_common(1)[0][0]
        raise refuse(shown(twice), twice, f"The name “{shown(twice)}” stands twice in the file")
    return made


def _no_constant(text: str) -> float:
    raise refuse("file", text, f"The file holds “{text}”, which is no number")


def _finite(text: str) -> float:
    number = float(text)
    if not math.isfinite(number):
        raise refuse("file", shown(text), f"The number “{shown(text)}” is too large")
    return number


def _whole(text: str) -> int:
    if len(text) > LONGEST_WHOLE:
        raise refuse("file", shown(text), f"The number “{shown(text)}” is too large")
    return int(text)


def _versioned(given: dict[str, Any]) -> dict[str, Any]:
    version = given.get("version")
    if isinstance(version, bool) or not isinstance(version, int) or version < 0:
        raise refuse("version", version, f"The file's version is {_named(version)}")
    if version > VERSION:
        raise refuse(
            "version", version,
            f"The file has version {shown(version)}, made by a newer edition: open it there or "
            "update this one",
        )  # fmt: skip
    return given


def _section(section: Section, value: object) -> Any:
    if not section.most:
        return _group(section, value, section.name)
    if not isinstance(value, list) or len(value) > section.most:
        what = f"{len(value)} entries" if isinstance(value, list) else _named(value)
        allowed = f"a list of up to {section.most} entries"
        raise refuse(section.name, value, f"{section.label}: {what}", allowed)
    return [
        _group(section, each, f"{section.name}.{place}")
        for place, each in enumerate(value, start=1)
    ]


def _group(section: Section, value: object, where: str) -> dict[str, Any]:
    if not isinstance(value, dict):
        raise refuse(where, value, f"{section.label}: {_named(value)}", "a group of named fields")
    _only(value, {each.name for each in section.fields}, where)
    for each in section.fields:
        if each.required and each.name not in value:
            at = _at(where, each.name)
            raise refuse(at, None, f"{each.label} ({at}) is missing", each.allowed())
    return {
        each.name: check(each, value[each.name], _at(where, each.name))
        for each in section.fields
        if each.name in value
    }


def _only(value: dict[str, Any], known: set[str], where: str) -> None:
    for name in value:
        if name not in known or not name:
            at = _at(where, shown(name) or "a field without a name")
            raise refuse(at, value[name], f"“{at}” is no field of a job", "what the schema lists")


def _at(where: str, name: str) -> str:
    return f"{where}.{name}" if where else name


def _named(value: object) -> str:
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
    return refuse(where, value, f"{field.label} ({where}): {_named(value)}", field.allowed())


def _text(field: Field, value: object, where: str) -> str:
    if not isinstance(value, str) or len(value) > field.longest:
        raise _wrong(field, value, where)
    pattern = field.pattern or (job_schema.LINES if field.lines else job_schema.ONE_LINE)
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
        return [one(field, each, f"{where}.{place}") for place, each in enumerate(value, start=1)]

    return read


def _choice(field: Field, value: object, where: str) -> str:
    if not isinstance(value, str) or value not in {option for option, _ in field.options}:
        raise _wrong(field, value, where)
    return value


def _date(field: Field, value: object, where: str) -> str:
    if not isinstance(value, str) or not _matches(job_schema.DATE, value):
        raise _wrong(field, value, where)
    try:
        date.fromisoformat(value)
    except ValueError:
        raise _wrong(field, value, where) from None
    return value


def _moment(field: Field, value: object, where: str) -> str:
    if not isinstance(value, str) or not _matches(job_schema.MOMENT, value):
        raise _wrong(field, value, where)
    try:
        datetime.fromisoformat(value)
    except ValueError:
        raise _wrong(field, value, where) from None
    return value


def _values(field: Field, value: object, where: str) -> dict[str, Any]:
    return {
        name: _value(field, each, _at(where, name))
        for name, each in _names(field, value, where, field.most).items()
    }


def _typed(field: Field, value: object, where: str) -> dict[str, Any]:
    return {
        name: {
            inner: _plain_text(field, text, f"{where}.{name}.{inner}", field.longest)
            for inner, text in _names(field, each, _at(where, name), 100).items()
        }
        for name, each in _names(field, value, where, field.most).items()
    }


def _names(field: Field, value: object, where: str, most: int) -> dict[str, Any]:
    if not isinstance(value, dict) or len(value) > most:
        raise _wrong(field, value, where)
    for name in value:
        if not _matches(NAME, name):
            at = _at(where, shown(name))
            raise refuse(at, value[name], f"“{at}” is no name", "small letters, digits and _")
    return value


def _value(field: Field, value: object, where: str) -> Any:
    if isinstance(value, dict):
        if "value" not in value or not set(value) <= {"value", "unit"}:
            raise _wrong(field, value, where)
        unit = _plain_text(field, value.get("unit", ""), where, 40, job_schema.ONE_LINE)
        inner = _listed(field, value["value"], where)
        return {"value": inner} | ({"unit": unit} if "unit" in value else {})
    return _listed(field, value, where)


def _listed(field: Field, value: object, where: str) -> Any:
    if not isinstance(value, list):
        return _plain(field, value, where)
    if len(value) > job_schema.MOST_VALUES:
        raise _wrong(field, value, where)
    return [_plain(field, each, where) for each in value]


def _plain(field: Field, value: object, where: str) -> Any:
    if value is None:
        return None
    if isinstance(value, str):
        return _plain_text(field, value, where, job_schema.LONGEST_VALUE)
    if isinstance(value, bool) or not isinstance(value, int | float):
        raise _wrong(field, value, where)
    if not abs(value) < math.inf or (isinstance(value, int) and abs(value) >= 10**LONGEST_WHOLE):
        raise _wrong(field, value, where)
    return value


def _plain_text(
    field: Field, value: object, where: str, longest: int, pattern: str = job_schema.LINES
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

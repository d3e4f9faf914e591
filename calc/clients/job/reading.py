"""The strict reader of job files: plain Python, one clear sentence for anything it cannot take."""

from __future__ import annotations

import json
import math
import re
from collections import Counter
from typing import Any

from calc.clients.job.declare import Section
from calc.clients.job.fields import FORMAT, SECTIONS, VERSION
from calc.clients.job.migrate import lift
from calc.clients.job.values import LONGEST_WHOLE, check, named, place, refuse
from calc.errors import InputError, shown

LARGEST = 2_000_000
"""Signs of the largest file taken."""

DEEPEST = 12
"""Nested brackets taken; a job needs seven."""

_BRACKETS = re.compile(r'"(?:[^"\\]|\\.)*"?|[\[\]{}]', re.DOTALL)
_FIELDS = {section.name: section for section in SECTIONS}


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
        raise refuse("file", given, f"The file holds {named(given)}, not a job")
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
        raise refuse("version", version, f"The file's version is {named(version)}")
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
        what = f"{len(value)} entries" if isinstance(value, list) else named(value)
        allowed = f"a list of up to {section.most} entries"
        raise refuse(section.name, value, f"{section.label}: {what}", allowed)
    return [
        _group(section, each, f"{section.name}.{number}")
        for number, each in enumerate(value, start=1)
    ]


def _group(section: Section, value: object, where: str) -> dict[str, Any]:
    if not isinstance(value, dict):
        raise refuse(where, value, f"{section.label}: {named(value)}", "a group of named fields")
    _only(value, {each.name for each in section.fields}, where)
    for each in section.fields:
        if each.required and each.name not in value:
            at = place(where, each.name)
            raise refuse(at, None, f"{each.label} ({at}) is missing", each.allowed())
    return {
        each.name: check(each, value[each.name], place(where, each.name))
        for each in section.fields
        if each.name in value
    }


def _only(value: dict[str, Any], known: set[str], where: str) -> None:
    for name in value:
        if name not in known or not name:
            at = place(where, shown(name) or "a field without a name")
            raise refuse(at, value[name], f"“{at}” is no field of a job", "what the schema lists")

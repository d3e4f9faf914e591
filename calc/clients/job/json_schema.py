"""The JSON Schema of the job record, made from its one declaration."""

from __future__ import annotations

from typing import Any

from calc.clients.job.declare import Field, Section
from calc.clients.job.fields import FORMAT, NAME, SECTIONS, VERSION

DATE = r"^[0-9]{4}-[0-9]{2}-[0-9]{2}$"
MOMENT = (
    r"^[0-9]{4}-[0-9]{2}-[0-9]{2}T[0-9]{2}:[0-9]{2}(:[0-9]{2}(\.[0-9]{1,6})?)?"
    r"(Z|[+-][0-9]{2}:[0-9]{2})$"
)
ONE_LINE = r"^[^\u0000-\u001f\u007f]*$"
LINES = r"^[^\u0000-\u0008\u000b\u000c\u000e-\u001f\u007f]*$"
LONGEST_VALUE = 2000
"""Signs of a text among inputs or results."""

MOST_VALUES = 200
"""Entries of a list among inputs or results."""


def schema() -> dict[str, Any]:
    """Return the JSON Schema (draft 2020-12) of a job file of the present version."""
    properties: dict[str, Any] = {
        "format": {"const": FORMAT, "description": "What the file calls itself."},
        "version": {"const": VERSION, "description": "Version of the file's form."},
    }
    required = ["format", "version"]
    for section in SECTIONS:
        if section.name:
            properties[section.name] = _section(section)
        else:
            properties |= {each.name: _field(each) for each in section.fields}
            required += [each.name for each in section.fields if each.required]
    return {
        "$schema": "https://json-schema.org/draft/2020-12/schema",
        "title": "Job of the field handbook",
        "description": "One job from the first call to the follow-up, in one file.",
        "type": "object",
        "properties": properties,
        "required": required,
        "additionalProperties": False,
        "$defs": {"value": _value()},
    }


def _section(section: Section) -> dict[str, Any]:
    one = {
        "type": "object",
        "properties": {each.name: _field(each) for each in section.fields},
        "required": [each.name for each in section.fields if each.required],
        "additionalProperties": False,
    }
    told = {"title": section.label, "description": section.meaning}
    if section.most:
        return told | {"type": "array", "maxItems": section.most, "items": one}
    return told | one


def _field(field: Field) -> dict[str, Any]:
    told: dict[str, Any] = {"title": field.label, "description": field.meaning}
    told |= _KINDS[field.kind](field)
    if field.unit:
        told["x-unit"] = field.unit
    if field.health:
        told["x-health"] = True
    return told | {"x-share": field.share}


def _text(field: Field) -> dict[str, Any]:
    pattern = field.pattern or (LINES if field.lines else ONE_LINE)
    return {"type": "string", "maxLength": field.longest, "pattern": pattern}


def _number(field: Field) -> dict[str, Any]:
    kind = "integer" if field.kind in {"count", "counts"} else "number"
    return {"type": kind, "minimum": field.low, "maximum": field.high}


def _list(field: Field) -> dict[str, Any]:
    return {"type": "array", "maxItems": field.most, "items": _number(field)}


def _texts(field: Field) -> dict[str, Any]:
    return {"type": "array", "maxItems": field.most, "items": _text(field)}


def _values(field: Field) -> dict[str, Any]:
    return _map(field, {"$ref": "#/$defs/value"})


def _typed(field: Field) -> dict[str, Any]:
    typed = {"type": "string", "maxLength": field.longest, "pattern": LINES}
    return _map(field, _names(typed, 100))


def _map(field: Field, each: dict[str, Any]) -> dict[str, Any]:
    return _names(each, field.most)


def _names(each: dict[str, Any], most: int) -> dict[str, Any]:
    return {
        "type": "object",
        "maxProperties": most,
        "propertyNames": {"pattern": NAME},
        "additionalProperties": each,
    }


_KINDS: dict[str, Any] = {
    "text": _text,
    "number": _number,
    "count": _number,
    "numbers": _list,
    "counts": _list,
    "choice": lambda field: {"enum": [value for value, _ in field.options]},
    "date": lambda field: {"type": "string", "format": "date", "pattern": DATE},
    "moment": lambda field: {"type": "string", "format": "date-time", "pattern": MOMENT},
    "texts": _texts,
    "values": _values,
    "typed": _typed,
}


def _value() -> dict[str, Any]:
    """Return what an input or a result may be."""
    text = {"type": "string", "maxLength": LONGEST_VALUE, "pattern": LINES}
    plain = [{"type": "number"}, {"type": "null"}, text]
    several = {"type": "array", "maxItems": MOST_VALUES, "items": {"anyOf": plain}}
    with_unit = {
        "type": "object",
        "properties": {
            "value": {"anyOf": [*plain, several]},
            "unit": {"type": "string", "maxLength": 40, "pattern": ONE_LINE},
        },
        "required": ["value"],
        "additionalProperties": False,
    }
    return {"anyOf": [*plain, several, with_unit]}

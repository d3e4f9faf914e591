"""The job record: one open file a job. Every function is pure and returns a new job."""

from __future__ import annotations

import copy
import json
from collections.abc import Mapping
from dataclasses import dataclass
from typing import Any

from calc import EDITION, units
from calc.clients.job import reading, values
from calc.clients.job.declare import NUMERIC, Field, Section
from calc.clients.job.fields import FORMAT, SECTIONS, VERSION, form, section
from calc.clients.job.json_schema import schema
from calc.errors import InputError

__all__ = ["Job", "form", "new", "read", "schema", "set_value", "summary", "write"]


@dataclass(frozen=True, slots=True)
class Job:
    """One checked job; ``data`` is its JSON form and is never changed in place."""

    data: Mapping[str, Any]

    def get(self, path: str, default: Any = None) -> Any:
        """Return the value at a path such as ``place.height``, or the default."""
        value: Any = self.data
        for name in path.split("."):
            if not isinstance(value, Mapping) or name not in value:
                return default
            value = value[name]
        return value

    def as_dict(self) -> dict[str, Any]:
        """Return a copy of the JSON form."""
        return copy.deepcopy(dict(self.data))


def read(text: str | bytes) -> Job:
    """Return the job in the text of a file.

    Raises
    ------
    InputError
        with one clear sentence, for anything that is no job file of this or an older version
    """
    return Job(reading.parse(text))


def write(job: Job) -> str:
    """Return the text of a job's file: the same job always gives the same text."""
    return json.dumps(job.data, ensure_ascii=False, indent=1, sort_keys=True) + "\n"


def new(id: str, now: str, title: str = "") -> Job:
    """Return an empty job.

    Parameters
    ----------
    id : job number, small letters, digits and hyphens
    now : date with time and zone, such as ``2026-09-15T18:30Z``
    title : your own short name for it
    """
    made = {"format": FORMAT, "version": VERSION, "id": id, "created": now, "changed": now}
    made |= {"edition": EDITION} | ({"title": title} if title else {})
    return Job(reading.checked(made))


def set_value(job: Job, path: str, value: object, now: str) -> Job:
    """Return the job with one value set; ``None`` or empty text takes the field out.

    Parameters
    ----------
    path : ``title``, ``place.height``, ``steps`` (the whole list) or ``steps.2.minutes``
    value : the stored form, or typed text with a unit for a number, such as ``"12 ft"``
    now : date with time and zone

    Raises
    ------
    InputError
        for a path that is no field and a value that the field does not take
    """
    data = job.as_dict()
    group, field = _target(data, path)
    if field is None:
        group[path] = value
    elif value is None or (isinstance(value, str) and not value.strip()):
        group.pop(field.name, None)
    else:
        group[field.name] = values.check(field, _typed(field, value, path), path)
    data |= {"changed": now, "edition": EDITION}
    return Job(reading.checked(data))


def _target(data: dict[str, Any], path: str) -> tuple[dict[str, Any], Field | None]:
    """Return the group that a path ends in and its field, or no field for a whole section."""
    parts = path.split(".")
    head = section(parts[0]) if parts[0] else None
    if head is not None and len(parts) == 1:
        return data, None
    if head is None:
        return data, _field(SECTIONS[0], path)
    if head.most:
        return _entry(head, data, parts, path), _field(head, parts[2] if len(parts) > 2 else "")
    return data.setdefault(head.name, {}), _field(head, ".".join(parts[1:]))


def _entry(head: Section, data: dict[str, Any], parts: list[str], path: str) -> dict[str, Any]:
    entries = data.get(head.name, [])
    if len(parts) != 3 or not parts[1].isdecimal() or not 1 <= int(parts[1]) <= len(entries):
        said = f"“{path}” is no entry of {head.label}"
        raise values.refuse(path, None, said, f"1 to {len(entries)} with the name of a field")
    entry: dict[str, Any] = entries[int(parts[1]) - 1]
    return entry


def _field(head: Section, name: str) -> Field:
    found = head.field(name)
    if found is None:
        at = f"{head.name}.{name}".strip(".")
        raise values.refuse(at, None, f"“{at}” is no field of a job", "what the schema lists")
    return found


def _typed(field: Field, value: object, path: str) -> object:
    """Return typed text of a number field as plain numbers in its unit."""
    if field.kind not in NUMERIC or not isinstance(value, str | dict):
        return value
    if field.kind in {"number", "count"}:
        return units.plain(value, field.unit, field.label, path)
    if isinstance(value, dict):
        raise InputError(path, value, field.allowed(), f"{field.label}: give {field.allowed()}.")
    items = value.translate(str.maketrans(",;\t\n\r/|", "       ")).split()
    return [units.plain(item, field.unit, field.label, path) for item in items]


def label(path: str, value: object) -> str:
    """Return the words for the stored value of a choice."""
    head, _, name = path.rpartition(".")
    found = section(head)
    field = found.field(name) if found else None
    return dict(field.options).get(str(value), "") if field else ""


def minutes(job: Job) -> float:
    """Return the minutes of all steps, travel included."""
    return float(sum(step.get("minutes", 0) for step in job.get("steps", [])))


def stings(job: Job) -> int:
    """Return the stings to anyone."""
    return sum(each.get("count", 0) for each in job.get("stings", []))


def summary(job: Job) -> dict[str, Any]:
    """Return the job in brief, for a list of jobs: no client, no health."""
    return {
        "id": job.get("id"),
        "title": job.get("title", ""),
        "changed": job.get("changed"),
        "edition": job.get("edition"),
        "date": job.get("visit.date"),
        "place": label("place.kind", job.get("place.kind", "unknown")),
        "species": label("animal.species", job.get("animal.species", "unknown")),
        "outcome": label("result.outcome", job.get("result.outcome", "open")),
        "adults": job.get("result.adults", job.get("shared.adults_caught")),
        "minutes": minutes(job),
        "stings": stings(job),
        "price": job.get("price.final", job.get("price.quoted")),
        "currency": job.get("price.currency"),
        "photos": len(job.get("photos", [])),
        "calculations": [
            {"calculator": each["calculator"], "edition": each["edition"], "time": each["time"]}
            for each in job.get("calculations", [])
        ],
    }

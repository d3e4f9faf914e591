"""Values typed once: from the job into a calculator's form, and from its results back."""

from __future__ import annotations

import math
from collections.abc import Callable, Mapping
from typing import Any

from calc import EDITION, tables, units
from calc.catalogue import find
from calc.clients.job import reading, values
from calc.clients.job.fields import section
from calc.clients.job.record import Job
from calc.declare import Calculator, Choice, Input, Number, Result
from calc.errors import InputError, shown

MONTHS = ("jan", "feb", "mar", "apr", "may", "jun", "jul", "aug", "sep", "oct", "nov", "dec")
_COLUMNS = {
    "catch_chamber": "insect",
    "holding_and_driving": "insect",
    "weigh_the_catch": "insect",
    "keep_away": "group",
    "briefing": "group",
    "follow_up": "when_to_come",
    "client_letter": "when_to_come",
}


def prefill(job: Job, name: str) -> dict[str, Any]:
    """Return the inputs of a calculator that the open job already knows, as it takes them."""
    calculator = find(name)
    made: dict[str, Any] = {}
    for row in tables.rows("shared_inputs"):
        value = job.get(row["path"])
        for each in _inputs(calculator, row):
            filled = None if value is None else _filled(row, value, calculator, each)
            if filled is not None:
                made[each.name] = filled
    return made


def record(
    job: Job,
    name: str,
    given: Mapping[str, object],
    now: str,
    customary: bool = False,
    origins: Mapping[str, str] | None = None,
) -> Job:
    """Compute and return the job with the calculation written into it.

    What was typed in (``given``) and what is fed by a result goes to the shared values, so that
    the next form has it. A calculation of the same calculator and edition is replaced. A value that
    the job fills in has the origin ``job``; ``origins`` names other origins that the caller knows.

    Raises
    ------
    InputError
        for inputs that the calculator does not take; the job is as it was
    """
    said = {**(origins or {}), **_from_job(job, name, given, customary)}
    result = find(name).run(given, customary, said)
    data = job.as_dict()
    entry = calculation(result, now)
    kept = [
        each
        for each in data.get("calculations", [])
        if (each["calculator"], each["edition"]) != (name, EDITION)
    ]
    most = section("calculations")
    data["calculations"] = [*kept, entry][-(most.most if most else 0) :]
    if name == "first_call":
        data["answers"] = {
            key: _plain(value) for key, value in result.inputs.items() if value is not None
        }
    typed = {key for key, value in given.items() if value not in (None, "")}
    for row in tables.rows("shared_inputs"):
        _write_back(data, row, result, typed)
    data |= {"changed": now, "edition": EDITION}
    return Job(reading.checked(data))


def _from_job(job: Job, name: str, given: Mapping[str, object], customary: bool) -> dict[str, str]:
    """Return the origin of the given values that are those of the record."""
    calculator = find(name)
    known = calculator.reading(prefill(job, name)).values
    said = calculator.reading(given, customary).values
    return {each: "job" for each, one in said.items() if one is not None and one == known[each]}


def calculation(result: Result, now: str) -> dict[str, Any]:
    """Return one calculation as it is stored: tables left out, texts cut to what a file takes."""
    by_name = {each.name: each for each in result.calculator.inputs}
    return {
        "calculator": result.calculator.name,
        "edition": result.edition,
        "time": now,
        "inputs": {
            name: _with_unit(_plain(value), getattr(by_name[name], "unit", ""))
            for name, value in result.inputs.items()
            if value is not None
        },
        "origins": {
            name: result.origins[name] for name, value in result.inputs.items() if value is not None
        },
        "results": {
            out.name: _with_unit(_plain(result.values[out.name]), out.unit)
            for out in result.calculator.outputs
            if out.kind != "table"
        },
        "stops": [shown(each.text, 600) for each in result.cautions if each.level == "stop"],
    }


def _inputs(calculator: Calculator, row: Mapping[str, Any]) -> list[Input]:
    names = {
        input_name
        for calculator_name, input_name in _pairs(row.get("feeds", ""))
        if calculator_name == calculator.name
    }
    return [each for each in calculator.inputs if each.name in names]


def _pairs(text: str) -> list[tuple[str, str]]:
    parts = (part.strip().partition(".") for part in text.split(",") if part.strip())
    return [(head, tail) for head, _, tail in parts]


def _filled(row: Mapping[str, Any], value: Any, calculator: Calculator, each: Input) -> Any:
    kind = row["kind"]
    if kind == "species":
        return _species(value, calculator.name)
    if kind in _DERIVED:
        return _DERIVED[kind](value)
    if isinstance(each, Choice):
        return value if value in {option.value for option in each.options} - {"unknown"} else None
    return _number(row, value, each) if isinstance(each, Number) else None


_DERIVED: dict[str, Callable[[Any], Any]] = {
    "month": lambda date: MONTHS[int(date[5:7]) - 1],
    "day": lambda date: int(date[8:10]),
    "date": str,
    "half_of_world": lambda latitude: "south" if latitude < 0 else "north",
}
"""What is read from a date such as 2026-09-15, or from a latitude."""


def _number(row: Mapping[str, Any], value: Any, each: Number) -> Any:
    if each.kind == "count":
        value = math.ceil(value)
    if isinstance(value, list) and not value:
        return None
    return _with_unit(value, row.get("unit", ""))


def _species(key: str, calculator: str) -> str | None:
    if key == "unknown":
        return None
    row = tables.row("job_species", key)
    found = row.get(_column(calculator))
    return None if found is None else str(found)


def _column(calculator: str) -> str:
    """Return the column of the species table that a calculator reads."""
    return _COLUMNS.get(calculator, calculator)


def _with_unit(value: Any, unit: str) -> Any:
    return {"value": value, "unit": unit} if unit and value is not None else value


def _plain(value: Any) -> Any:
    if isinstance(value, tuple):
        return list(value)
    return shown(value, 2000) if isinstance(value, str) else value


def _write_back(
    data: dict[str, Any], row: Mapping[str, Any], result: Result, typed: set[str]
) -> None:
    """Set the shared value of one row from what was typed or computed, if the record takes it."""
    found = None
    for each in _inputs(result.calculator, row):
        if each.name in typed and row["kind"] not in {"species", *_DERIVED}:
            found = result.inputs.get(each.name), getattr(each, "unit", "")
    for name, out_name in _pairs(row.get("fed_by", "")):
        if name == result.calculator.name:
            found = result.values.get(out_name), result.calculator.out(out_name).unit
    if found is None or found[0] is None:
        return
    head, _, field_name = row["path"].partition(".")
    home = section(head)
    field = home.field(field_name) if home else None
    if field is None:
        return
    try:
        value = values.check(field, _stored(row, *found), row["path"])
    except InputError:
        return  # A value beyond what the record takes stays in the calculation alone.
    data.setdefault(head, {})[field_name] = value


def _stored(row: Mapping[str, Any], value: Any, unit: str) -> Any:
    if row["kind"] == "choice":
        return value
    wanted = row.get("unit", "")
    many = isinstance(value, tuple)
    numbers = [
        float(f"{units.convert(each, unit, wanted):.9g}") for each in (value if many else (value,))
    ]
    if row["kind"] in {"count", "counts"}:
        numbers = [math.ceil(each) for each in numbers]
    return numbers if many else numbers[0]

"""An old job computed again under the edition in hand, and what comes out different."""

from __future__ import annotations

from typing import Any

from calc import EDITION, units
from calc.catalogue import CALCULATORS
from calc.clients.job.record import Job
from calc.declare import Calculator, Out
from calc.errors import InputError


def rerun(job: Job) -> list[dict[str, str]]:
    """Compute the newest calculation of each calculator again and return the differences.

    Each difference is a mapping of texts: ``calculator``, ``title``, ``edition_then``,
    ``edition_now``, ``kind`` (``changed``, ``gone``, ``new``, ``stop``, ``refused`` or
    ``wiped``), ``result``, ``label``, ``then`` and ``now``. Values are compared as a reader sees
    them, with their digits. An empty list means that nothing a reader sees has changed.
    """
    newest = {each["calculator"]: each for each in job.get("calculations", [])}
    return [difference for entry in newest.values() for difference in _again(entry)]


def _again(entry: dict[str, Any]) -> list[dict[str, str]]:
    calculator = CALCULATORS.get(entry["calculator"])
    if calculator is None:
        said = "This edition has no calculator of this name."
        return [_told(entry, entry["calculator"], "refused", now=said)]
    if entry.get("wiped"):
        said = "Not calculated again: health facts it needs were deleted."
        return [_told(entry, calculator.title, "wiped", now=said)]
    try:
        result = calculator.run(*_still_asked(entry, calculator))
    except InputError as error:
        return [_told(entry, calculator.title, "refused", now=error.sentence)]
    found = _results(entry, calculator, dict(result.values))
    stops = [each.text for each in result.cautions if each.level == "stop"]
    return [*found, *_stops(entry, calculator, stops)]


def _still_asked(
    entry: dict[str, Any], calculator: Calculator
) -> tuple[dict[str, Any], bool, dict[str, str]]:
    """Return the inputs that this edition has, as ``run`` takes them, without its usual values.

    A usual value stood until replaced, so this edition's own stands now.
    """
    origins = entry.get("origins", {})
    names = {each.name for each in calculator.inputs}
    kept = {
        name: value
        for name, value in entry["inputs"].items()
        if name in names and origins.get(name) != "usual"
    }
    return kept, False, origins


def _results(
    entry: dict[str, Any], calculator: Calculator, values: dict[str, Any]
) -> list[dict[str, str]]:
    old = entry.get("results", {})
    outs = {out.name: out for out in calculator.outputs if out.kind != "table"}
    made = [
        _told(entry, calculator.title, "gone", name, name, then=str(_bare(value)[0]))
        for name, value in old.items()
        if name not in outs
    ]
    for name, out in outs.items():
        now = out.text(values[name])
        if name not in old:
            made.append(_told(entry, calculator.title, "new", name, out.label, now=now))
        elif (then := _text(out, old[name])) != _cut(now):
            made.append(_told(entry, calculator.title, "changed", name, out.label, then, now))
    return made


def _stops(entry: dict[str, Any], calculator: Calculator, now: list[str]) -> list[dict[str, str]]:
    then = entry.get("stops", [])
    cut = [_cut(text, 600) for text in now]
    made = [
        _told(entry, calculator.title, "stop", label="Stop no longer raised", then=text)
        for text in then
        if text not in cut
    ]
    fresh = [text for text in cut if text not in then]
    return made + [
        _told(entry, calculator.title, "stop", label="New stop", now=text) for text in fresh
    ]


def _text(out: Out, stored: Any) -> str:
    """Write a stored result as this edition would."""
    value, unit = _bare(stored)
    try:
        if unit and unit != out.unit and value is not None:
            many = value if isinstance(value, list) else [value]
            turned = [None if one is None else units.convert(one, unit, out.unit) for one in many]
            value = turned if isinstance(value, list) else turned[0]
        return _cut(out.text(value))
    except (ValueError, TypeError, AttributeError):
        return f"{value} {units.label(unit)}".strip()


def _bare(stored: Any) -> tuple[Any, str]:
    if isinstance(stored, dict):
        return stored["value"], stored.get("unit", "")
    return stored, ""


def _cut(text: str, longest: int = 2000) -> str:
    """Cut as the record cuts, so that only a change counts."""
    text = " ".join(text.split())
    return text if len(text) <= longest else text[: longest - 1] + "…"


def _told(
    entry: dict[str, Any],
    title: str,
    kind: str,
    result: str = "",
    label: str = "",
    then: str = "",
    now: str = "",
) -> dict[str, str]:
    return {
        "calculator": entry["calculator"],
        "title": title,
        "edition_then": entry["edition"],
        "edition_now": EDITION,
        "kind": kind,
        "result": result,
        "label": label,
        "then": then,
        "now": now,
    }

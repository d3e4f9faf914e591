"""Lifts job files of older versions to the present one, a version at a time."""

from __future__ import annotations

from collections.abc import Callable
from typing import Any

from calc.clients.job.fields import VERSION


def lift(given: dict[str, Any]) -> dict[str, Any]:
    """Return a job of the present version; what it cannot place stays and is refused later."""
    version = given["version"]
    while version < VERSION:
        given = _STEPS[version](given)
        version += 1
    return given


def _from_0(old: dict[str, Any]) -> dict[str, Any]:
    """Lift the trial form, which had a flat client, one species text and a list of minutes."""
    new = {name: value for name, value in old.items() if name not in _MOVED_0}
    new["version"] = 1
    for name, (section, field) in _MOVED_0.items():
        if name in old:
            new[section] = {**_mapping(new.get(section)), field: old[name]}
    if "minutes" in new:
        minutes = new.pop("minutes")
        if isinstance(minutes, dict):
            new["steps"] = [{"step": step, "minutes": each} for step, each in minutes.items()]
        else:
            new["steps"] = minutes
    return new


def _from_1(old: dict[str, Any]) -> dict[str, Any]:
    """Lift kept calculations: dates and times of day in one value, nothing "unknown" in a call."""
    new = {**old, "version": 2}
    if isinstance(old.get("calculations"), list):
        new["calculations"] = [_renamed(each) for each in old["calculations"]]
    if "answers" in old:
        new["answers"] = _asked(old["answers"])
    return new


def _renamed(entry: Any) -> Any:
    if not isinstance(entry, dict) or not isinstance(entry.get("inputs"), dict):
        return entry
    name, inputs = entry.get("calculator"), dict(entry["inputs"])
    if name in {"when_to_come", "follow_up", "client_letter"}:
        _join(inputs, "date", ("year", "month", "day"), "{:04d}-{:02d}-{:02d}")
    if name == "client_letter":
        for one in ("arrive", "finish"):
            _join(inputs, one, (f"{one}_hour", f"{one}_minute"), "{:02d}:{:02d}")
    if name == "when_to_come":
        inputs.setdefault("forecast", "hours")
    return {**entry, "inputs": _asked(inputs) if name == "first_call" else inputs}


def _join(inputs: dict[str, Any], name: str, parts: tuple[str, ...], form: str) -> None:
    values = [inputs.get(part) for part in parts]
    if all(type(value) is int for value in values):
        for part in parts:
            del inputs[part]
        inputs[name] = form.format(*values)


def _asked(answers: Any) -> Any:
    """Return the answers of a call without those that said that nobody had asked."""
    if not isinstance(answers, dict):
        return answers
    return {name: value for name, value in answers.items() if value not in ("unknown", None)}


def _mapping(value: object) -> dict[str, Any]:
    return dict(value) if isinstance(value, dict) else {}


_MOVED_0 = {
    "client_name": ("client", "name"),
    "client_phone": ("client", "phone"),
    "species": ("animal", "species"),
    "height": ("place", "height"),
    "date": ("visit", "date"),
    "adults": ("result", "adults"),
}

_STEPS: dict[int, Callable[[dict[str, Any]], dict[str, Any]]] = {0: _from_0, 1: _from_1}

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

_STEPS: dict[int, Callable[[dict[str, Any]], dict[str, Any]]] = {0: _from_0}

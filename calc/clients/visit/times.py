"""On site, step by step: what is kept of it in the job, and what the record learns from it."""

from __future__ import annotations

from collections.abc import Mapping
from datetime import datetime, timedelta
from typing import Any

from calc import tables
from calc.clients import job as record
from calc.clients.job import Job
from calc.clients.visit.fields import HOME

LONGEST = timedelta(hours=24)
"""Longest step that is believed: a longer one, or one that ends before it begins, comes from a
clock that was set or a press that was forgotten."""

FILLED = {"visit.arrive": "arrive_begun", "visit.leave": "leave_done"}
"""Fields of the record that the visit fills in, with the press that they come from."""


def took(begun: str | None, done: str | None) -> float | None:
    """Return the minutes between two moments, or None where one is missing or not believed.

    Parameters
    ----------
    begun, done : dates with time and zone

    Returns
    -------
    minutes, 0 to :data:`LONGEST`, rounded to tenths
    """
    if begun is None or done is None:
        return None
    length = datetime.fromisoformat(done) - datetime.fromisoformat(begun)
    if not timedelta() <= length <= LONGEST:
        return None
    return round(length / timedelta(minutes=1), 1)


def measured(job: Job) -> dict[str, dict[str, Any]]:
    """Return what the presses of the visit tell, one entry of ``steps`` for each kind of work.

    Steps of the visit that count as one kind are added up.
    """
    pressed: Mapping[str, Any] = job.get(HOME, {})
    made: dict[str, dict[str, Any]] = {}
    for step in tables.rows("visit_steps"):
        begun = pressed.get(f"{step['key']}_begun")
        minutes = took(begun, pressed.get(f"{step['key']}_done"))
        if minutes is None:
            continue
        entry = made.setdefault(step["kind"], {"step": step["kind"], "minutes": 0.0, "at": begun})
        entry["minutes"] = round(entry["minutes"] + minutes, 1)
        entry["at"] = min(entry["at"], begun, key=datetime.fromisoformat)
    return made


def applied(before: Job, after: Job, now: str) -> Job:
    """Return the job with its steps, arrival and leaving renewed from the visit.

    Only what is empty, or still stands as the visit before this change wrote it, is written;
    what a person typed stays.

    Parameters
    ----------
    before, after : the job without and with the newest presses
    now : date with time and zone
    """
    made = after
    for path, name in FILLED.items():
        old, new = (each.get(f"{HOME}.{name}") for each in (before, after))
        if old != new and after.get(path) in {None, old}:
            made = record.set_value(made, path, new, now)
    return _steps(measured(before), measured(after), made, now)


def _steps(old: Mapping[str, Any], new: Mapping[str, Any], job: Job, now: str) -> Job:
    entries = [dict(each) for each in job.get("steps", [])]
    for kind in {**old, **new}:
        if old.get(kind) == new.get(kind):
            continue
        held = [each for each in entries if each["step"] == kind]
        ours = next((each for each in held if _untouched(each, old.get(kind, {}))), None)
        if ours is None and not held:
            entries.append(ours := {"step": kind})
        if ours is not None:
            ours.pop("minutes", None)
            ours.pop("at", None)
            ours.update(new.get(kind, {}))
    return job if entries == job.get("steps", []) else record.set_value(job, "steps", entries, now)


def _untouched(entry: Mapping[str, Any], written: Mapping[str, Any]) -> bool:
    """Whether an entry holds no times but those that the visit wrote."""
    return all(entry.get(name) == written.get(name) for name in ("minutes", "at"))

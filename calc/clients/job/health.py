"""What tells of a person's health or person, and how it is taken out of a job."""

from __future__ import annotations

from typing import Any

from calc import EDITION
from calc.clients.job import reading
from calc.clients.job.declare import Section
from calc.clients.job.fields import SECTIONS
from calc.clients.job.record import Job

HEALTH_INPUTS: dict[str, tuple[str, ...]] = {
    "acclimatisation_plan": ("state",),
    "briefing": ("reaction", "health", "home_reaction", "home_place", "adrenaline"),
    "first_call": ("hurt", "reaction", "adrenaline"),
    "sting_plan": (
        "reaction",
        "health",
        "home_reaction",
        "home_place",
        "adrenaline",
        "devices",
        "weight",
        "lightest",
    ),
}
"""Inputs of calculators that say something about a person's health."""


def wipe_health(job: Job, now: str) -> Job:
    """Return the job without a word on anyone's health.

    Taken out: the health section, the reactions to stings, and the marked inputs wherever they
    stand. A calculation that used one loses its results and stops too, since they tell of it, and
    says in ``wiped`` which inputs are gone.
    """
    data = without_health(job).as_dict()
    data |= {"changed": now, "edition": EDITION}
    return Job(reading.checked(data))


def without_health(job: Job) -> Job:
    """Return the job as it may be sent on: the same as wiped, with its times untouched."""
    data = job.as_dict()
    for section in SECTIONS:
        _drop(section, data)
    for name, inputs in HEALTH_INPUTS.items():
        _drop_names(data.get("typed", {}).get(name, {}), inputs)
    _drop_names(data.get("answers", {}), HEALTH_INPUTS["first_call"])
    data["calculations"] = [_calculation(each) for each in data.get("calculations", [])]
    if not data["calculations"]:
        del data["calculations"]
    return Job(reading.checked(data))


def for_link(job: Job) -> dict[str, Any]:
    """Return what may stand in a link: fields marked open, no client, no health, no place name."""
    return _shared_with(job, {"open"})


def for_document(job: Job, health: bool = False) -> dict[str, Any]:
    """Return what may stand in a document for the client; health only when it is asked for."""
    made = _shared_with(job, {"open", "client"})
    if health and job.get("health"):
        made["health"] = dict(job.get("health"))
    return made


def _shared_with(job: Job, shares: set[str]) -> dict[str, Any]:
    made: dict[str, Any] = {}
    for section in SECTIONS:
        names = {each.name for each in section.fields if each.share in shares and not each.health}
        held: Any = job.data if not section.name else job.get(section.name)
        if not section.name:
            made |= {name: held[name] for name in names if name in held}
        elif section.most:
            made[section.name] = [_only(each, names) for each in held or []]
        else:
            made[section.name] = _only(held or {}, names)
    return {name: value for name, value in sorted(made.items()) if value not in ({}, [])}


def _only(group: dict[str, Any], names: set[str]) -> dict[str, Any]:
    return {name: value for name, value in sorted(group.items()) if name in names}


def _drop(section: Section, data: dict[str, Any]) -> None:
    names = tuple(each.name for each in section.fields if each.health)
    if not names or section.name not in data:
        return
    if section.most:
        for entry in data[section.name]:
            _drop_names(entry, names)
    elif len(names) == len(section.fields):
        del data[section.name]
    else:
        _drop_names(data[section.name], names)


def _drop_names(group: dict[str, Any], names: tuple[str, ...]) -> None:
    for name in names:
        group.pop(name, None)


def _calculation(entry: dict[str, Any]) -> dict[str, Any]:
    # All of them are named, given or not: which ones were given would tell something too.
    gone = HEALTH_INPUTS.get(entry["calculator"], ())
    if not gone:
        return entry
    kept = {name: value for name, value in entry["inputs"].items() if name not in gone}
    made = {name: each for name, each in entry.items() if name not in {"results", "stops"}}
    if "origins" in made:
        made["origins"] = {name: one for name, one in made["origins"].items() if name not in gone}
    return made | {"inputs": kept, "wiped": sorted(gone)}

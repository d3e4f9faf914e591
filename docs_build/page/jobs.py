"""The job record behind the page: every question about a job, answered from the text given.

Nothing is kept here. The page hands in the job as JSON and keeps what comes back.
"""

from __future__ import annotations

import json
from collections.abc import Callable, Mapping
from typing import Any

from calc import EDITION, units
from calc.catalogue import CALCULATORS, find
from calc.clients import job, letters
from calc.clients.job import Job, health, letter, photos, rerun, shared
from calc.clients.job.declare import Field
from calc.clients.job.fields import SECTIONS, section
from calc.clients.visit.fields import HOME
from calc.clients.visit.times import applied
from calc.declare import Number
from calc.errors import InputError
from docs_build.page import answer, form, job_season, jobs_html

WARM_TIME = "2026-01-01T00:00Z"


def call(asked: Mapping[str, Any]) -> dict[str, Any]:
    """Answer one question about a job.

    Returns
    -------
    ``ok`` with what was asked for; or ``ok`` false with ``sentence``, and nothing has changed
    """
    try:
        return {"ok": True} | _QUESTIONS[asked["do"]](asked)
    except InputError as error:
        return {
            "ok": False,
            "sentence": error.sentence,
            "errors": [[one.field, one.sentence] for one in error.problems],
        }


def warm() -> None:
    """Ask every question once, so that all that is read from files has been read."""
    now = WARM_TIME
    held = job.new("warm-up", now)
    held = job.set_value(held, "place.height", "12 ft", now)
    held = job.set_value(held, "animal.species", "crabro", now)
    held = job.set_value(held, "visit.date", "2026-09-15", now)
    texts = {"do": "keep", "job": held.as_dict(), "name": "first_call", "now": now}
    texts |= {"texts": {"hurt": "no"}}
    kept = call(texts | {"customary": False})
    for question in ("rerun", "wipe", "save", "show"):
        call({"do": question, "job": kept["job"], "now": now, "health": True})
    call({"do": "read", "signs": "{}", "taken": []})
    for language in letters.LANGUAGES:
        asked = {"do": "letter", "kind": "aftercare", "language": language, "today": now[:10]}
        call(asked | {"job": kept["job"], "clocks": {}, "customary": True})
    call({"do": "season", "texts": [json.dumps(kept["job"])]})


def _held(asked: Mapping[str, Any]) -> Job:
    """Return the job that was handed in, or a new one where it has only a number yet."""
    if asked.get("job") is None:
        return job.new(asked["id"], asked["now"])
    return job.read(json.dumps(asked["job"]))


def _told(held: Job) -> dict[str, Any]:
    """Return what the device keeps of a job: the job, its texts, what each form is filled with."""
    return {
        "job": held.as_dict(),
        "texts": texts(held),
        "prefills": prefills(held),
        "calculations": jobs_html.calculations_html(held),
        "edition": EDITION,
    }


def _show(asked: Mapping[str, Any]) -> dict[str, Any]:
    return _told(_held(asked))


def _set(asked: Mapping[str, Any]) -> dict[str, Any]:
    """Set typed texts one by one; what a field does not take is told and stays out."""
    before = held = _held(asked)
    errors = {}
    for path, typed in asked["changes"].items():
        try:
            held = job.set_value(held, path, _typed(path, typed), asked["now"])
        except InputError as error:
            errors[path] = error.sentence
    if before.get(HOME) != held.get(HOME):
        held = applied(before, held, asked["now"])
    return _told(held) | {"errors": errors}


def _typed(path: str, typed: Mapping[str, Any]) -> object:
    """Return typed text as ``set_value`` takes it."""
    text: str = typed["text"]
    field = field_of(path)
    if field is None:
        return text
    if field.kind == "texts":
        return [line.strip() for line in text.splitlines() if line.strip()] or None
    if field.kind in {"number", "count"} and typed["us"] and field.customary:
        text = text.strip()
        return f"{text} {field.customary}" if text and text[-1].isdecimal() else text
    return text if field.kind == "text" and field.lines else text.strip()


def field_of(path: str) -> Field | None:
    """Return the declared field of a path such as ``place.height`` or ``steps.2.minutes``."""
    head, _, name = path.rpartition(".")
    found = section(head.partition(".")[0])
    return found.field(name) if found else None


def _add(asked: Mapping[str, Any]) -> dict[str, Any]:
    """Add an entry at the end of a list, with the first choice where one must stand."""
    held, home = _held(asked), section(asked["section"])
    if home is None or not home.most:
        raise ValueError(f"no list: {asked['section']}")
    entries = held.get(home.name, [])
    entry = {
        each.name: each.options[0][0] if each.options else f"{home.name}-{len(entries) + 1}"
        for each in home.fields
        if each.required
    }
    return _told(job.set_value(held, home.name, [*entries, entry], asked["now"]))


def _drop(asked: Mapping[str, Any]) -> dict[str, Any]:
    held, place = _held(asked), asked["place"]
    entries = [
        each for at, each in enumerate(held.get(asked["section"], []), start=1) if at != place
    ]
    return _told(job.set_value(held, asked["section"], entries, asked["now"]))


def _photo(asked: Mapping[str, Any]) -> dict[str, Any]:
    """Put a picture of the list at a place, or out of it at 0; one with an ``entry`` is new.

    Returns also ``places``: where each entry of the new list stood before, 0 for a new one.
    """
    held, name, new = _held(asked), asked["name"], asked.get("entry")
    entries = held.get("photos", [])
    names = [each["name"] for each in entries]
    before = names.index(name) + 1 if name in names else 0
    places = list(range(1, len(entries) + 1))
    if bool(before) != bool(new):
        places = [place for place in places if place != before]
        if asked["to"]:
            places.insert(asked["to"] - 1, before)
        entries = [entries[place - 1] if place else new for place in places]
        held = job.set_value(held, "photos", entries, asked["now"])
    return _told(held) | {"places": places}


def _read(asked: Mapping[str, Any]) -> dict[str, Any]:
    """Read a file, its bytes given as signs; a number that is taken gets a new ending."""
    held = job.read(asked["signs"].encode("latin-1"))
    number, free, place = str(held.get("id")), str(held.get("id")), 2
    while free in asked["taken"]:
        free = f"{number[:58]}-{place}"
        place += 1
    if free != number:
        held = job.set_value(held, "id", free, held.get("changed"))
    return _told(held) | {"renamed": free != number}


def _keep(asked: Mapping[str, Any]) -> dict[str, Any]:
    _refuse_half(asked)
    given = {name: answer._without_blanks(text) for name, text in asked["texts"].items()}
    customary, origins = asked["customary"], asked.get("origins")
    kept = shared.record(_held(asked), asked["name"], given, asked["now"], customary, origins)
    return _told(kept)


def _wipe(asked: Mapping[str, Any]) -> dict[str, Any]:
    wiped = health.wipe_health(_held(asked), asked["now"])
    return _told(wiped) | {"health_inputs": health.HEALTH_INPUTS}


def _save(asked: Mapping[str, Any]) -> dict[str, Any]:
    """Return the text of the file, with what stands in the forms; health only when asked for."""
    held = _held(asked)
    if asked.get("typed"):
        data = held.as_dict() | {"typed": asked["typed"], "typed_units": asked["typed_units"]}
        held = job.read(json.dumps(data))
    if not asked["health"]:
        held = health.without_health(held)
    return {"text": job.write(held), "name": f"job-{held.get('id')}.json"}


def _rerun(asked: Mapping[str, Any]) -> dict[str, Any]:
    held = _held(asked)
    return {"html": jobs_html.differences_html(held, rerun.rerun(held))}


def _letter(asked: Mapping[str, Any]) -> dict[str, Any]:
    """Write a letter from the job; a stop withholds its text."""
    clocks = {name: str(clock) for name, clock in asked["clocks"].items()}
    kind, language = str(asked["kind"]), str(asked["language"])
    text, cautions = letter.letter(
        kind, language, _held(asked), asked["today"], clocks, bool(asked["customary"])
    )
    told = {"text": text, "html": jobs_html.cautions_html(cautions)}
    if text and kind == "report":
        told["pictures"] = photos.report_photos(_held(asked))
    return told


def _refuse_half(asked: Mapping[str, Any]) -> None:
    """Raise one sentence that names all that an answer still waits for."""
    given = {name: answer._without_blanks(text) for name, text in asked["texts"].items()}
    found = find(asked["name"]).reading(given, asked["customary"])
    if found.missing and not found.problems:
        labels = ", ".join(each.label for each in found.missing)
        raise InputError(found.missing[0].name, None, "a value", f"Still to be given: {labels}.")


def _season(asked: Mapping[str, Any]) -> dict[str, Any]:
    return job_season.told(asked["texts"])


_QUESTIONS: dict[str, Callable[[Mapping[str, Any]], dict[str, Any]]] = {
    "show": _show,
    "set": _set,
    "add": _add,
    "drop": _drop,
    "photo": _photo,
    "read": _read,
    "keep": _keep,
    "wipe": _wipe,
    "save": _save,
    "rerun": _rerun,
    "letter": _letter,
    "season": _season,
}


def texts(held: Job) -> dict[str, Any]:
    """Return every value as it stands in the form: one text, or one for each unit system."""
    made: dict[str, Any] = {}
    for home in SECTIONS:
        group = held.data if not home.name else held.get(home.name, {})
        rows = enumerate(group, start=1) if home.most else [(0, group)]
        for place, row in rows:
            for each in home.fields:
                if each.name in row and each.kind not in jobs_html.UNSEEN:
                    parts = (home.name, str(place or ""), each.name)
                    made[".".join(filter(None, parts))] = _text(each, row[each.name])
    return made


def _text(each: Field, value: Any) -> Any:
    if each.kind == "texts":
        return "\n".join(value)
    if isinstance(value, list):
        return " ".join(f"{one:.10g}" for one in value)
    if isinstance(value, str):
        return value
    if not each.customary or each.customary == each.unit:
        return f"{value:.10g}"
    there = units.convert(value, each.unit, each.customary)
    return {"si": f"{value:.10g}", "us": f"{float(f'{there:.6g}'):.10g}"}


def prefills(held: Job) -> dict[str, Any]:
    """Return what the job fills into each calculator's form, in both unit systems."""
    made = {name: _pairs(name, shared.prefill(held, name)) for name in CALCULATORS}
    return {name: each for name, each in made.items() if each}


def _pairs(name: str, given: Mapping[str, Any]) -> dict[str, Any]:
    made: dict[str, Any] = {}
    for each in find(name).inputs:
        if each.name not in given:
            continue
        value, unit = given[each.name], ""
        if isinstance(value, dict):
            value, unit = value["value"], value["unit"]
        if isinstance(each, Number):
            many = value if isinstance(value, list) else [value]
            made[each.name] = [_pair(each, one, unit or each.unit) for one in many]
        else:
            made[each.name] = str(value)
    return made


def _pair(each: Number, value: float, unit: str) -> dict[str, str]:
    if each.kind in {"count", "counts"}:
        return {"si": f"{value:.0f}", "us": f"{value:.0f}"}
    us = each.customary or each.unit
    return {
        "si": form.written(each, units.convert(value, unit, each.unit), each.unit),
        "us": form.written(each, units.convert(value, unit, us), us),
    }

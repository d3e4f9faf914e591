"""Letters from the open job: what the record knows, as facts of :mod:`calc.clients.letters`."""

from __future__ import annotations

import math
import re
from collections.abc import Mapping
from datetime import date
from typing import Any

from calc import tables
from calc.clients import aftercare, letters
from calc.clients.client_letter.cautions import cautions
from calc.clients.job import photos
from calc.clients.job.record import Job, stings
from calc.declare import Caution

PLANNED = ("quote", "preparation", "neighbours", "tonight")
"""Letters written before the visit: their times are the planned ones."""

_RECORD = {
    "client": "client.name",
    "client_phone": "client.phone",
    "address": "client.address",
    "date": "visit.date",
    "adults": "result.adults",
    "queens": "result.queens",
    "males": "result.males",
    "fate": "result.fate",
    "note": "result.client_words",
    "deposit": "price.deposit",
}
"""Facts that stand in the record as the letter takes them."""

_TYPED = ("comb", "callback", "tiers", "left", "distance", "touched", "half", "total")
"""Facts that a kept calculation of ``client_letter`` adds, as it was typed there."""

_PLACES = {
    "hollow_tree": "tree", "branch": "branch", "roof": "roof", "wall": "wall", "ground": "ground",
    "shed": "shed", "chimney": "other", "box": "other", "other": "other",
}  # fmt: skip
_TREATED = {"no": "no", "yes": "yes"}
_CLOCK = re.compile(r"([01]\d|2[0-3]):[0-5]\d")


def letter(
    kind: str,
    language: str,
    job: Job,
    today: str,
    clocks: Mapping[str, str] | None = None,
    customary: bool = False,
) -> tuple[str, list[Caution]]:
    """Return a letter from a job with its cautions; a stop withholds the text.

    Parameters
    ----------
    kind, language : see :mod:`calc.clients.letters`
    today : date such as 2026-08-20
    clocks : ``arrive`` and ``leave`` of the visit on the device's own clock, such as 20:30; the
        record holds moments with a zone, and only the device knows its own
    customary : lengths in feet

    Raises
    ------
    InputError : as :func:`calc.clients.letters.compose`

    Range: no fact on anyone's health exists for a letter. Names that the record does not hold are
    blanks; a line without its number or date is left out.
    """
    known = facts(kind, job, today, clocks or {}, customary)
    text = letters.compose(kind, language, known)
    told: dict[str, Any] = {
        name: known.get(name) for name in ("distance", "treated", "fate", "animal")
    }
    found = cautions(kind, language, **told)
    if any("letter" in each.hides for each in found):
        text = ""
    return text, found


def facts(
    kind: str, job: Job, today: str, clocks: Mapping[str, str], customary: bool
) -> dict[str, letters.Fact]:
    """Return the facts that a job holds for a letter; see :func:`letter`."""
    typed = _calculated(job, "client_letter", "inputs")
    made: dict[str, Any] = {name: typed[name] for name in _TYPED if name in typed}
    made |= _computed(job)
    made |= {name: job.get(path) for name, path in _RECORD.items()}
    made |= _money(job, made) | _times(kind, job, clocks) | _animal(job) | _dates(job, made)
    made |= {
        "today": today,
        "owner": job.get("client.owner") or _owner(job),
        "adults": job.get("result.adults", job.get("shared.adults_caught")),
        "place": _PLACES.get(job.get("place.kind", "unknown")),
        "treated": _TREATED.get(job.get("animal.treated", "unknown"), "unknown"),
        "fate": None if made["fate"] == "unknown" else made["fate"],
        "measure": "feet" if customary else "metres",
        "captions": "\n".join(each["caption"] for each in photos.report_photos(job)),
        # No entry may mean that none was noted: only what was written down is told.
        "stings": stings(job) if job.get("stings") else None,
    }
    return {name: value for name, value in made.items() if value is not None and str(value).strip()}


def _calculated(job: Job, name: str, part: str) -> dict[str, Any]:
    """Return inputs or results of the newest calculation of a calculator, units taken off."""
    kept = [each for each in job.get("calculations", []) if each["calculator"] == name]
    if not kept or kept[-1].get("stops"):
        return {}
    return {
        key: value["value"] if isinstance(value, dict) else value
        for key, value in kept[-1].get(part, {}).items()
    }


def _computed(job: Job) -> dict[str, Any]:
    """Return the upper end of how many are left, and how far people keep away."""
    made: dict[str, Any] = {}
    ends = _calculated(job, "how_many_left", "results").get("interval_inside")
    if isinstance(ends, list) and len(ends) == 2 and _is_number(ends[1]):
        made["left"] = math.ceil(ends[1])
    distance = _calculated(job, "keep_away", "results").get("outer")
    if _is_number(distance):
        made["distance"] = distance
    return made


def _is_number(value: Any) -> bool:
    return isinstance(value, int | float) and not isinstance(value, bool) and value >= 0


def _money(job: Job, made: Mapping[str, Any]) -> dict[str, Any]:
    """Return what was quoted; where nothing was, what was computed and kept."""
    quoted = job.get("price.quoted", job.get("price.final"))
    results = _calculated(job, "time_and_price", "results")
    computed = results.get("price")
    currency = job.get("price.currency")
    if currency is None:
        said = str(_calculated(job, "time_and_price", "inputs").get("currency", ""))
        currency = said if said.isupper() else None
    sums = {"price": quoted, "currency": currency}
    agree = _is_number(computed) and (quoted is None or abs(quoted - computed) < 0.005)
    if agree:
        names = {"price": "price", "total": "total", "deposit": "deposit_sum"}
        found = {name: results.get(key) for name, key in names.items()}
        sums = {name: value for name, value in found.items() if _is_number(value)} | {
            name: value for name, value in sums.items() if value is not None
        }
    if job.get("price.deposit") is not None:
        sums["deposit"] = job.get("price.deposit")
    return sums


def _times(kind: str, job: Job, clocks: Mapping[str, str]) -> dict[str, Any]:
    """Return arrival and finish: as planned before the visit, as noted after it."""
    noted = {"arrive": clocks.get("arrive"), "finish": clocks.get("leave")}
    if kind in PLANNED:
        planned, asked = (_calculated(job, "when_to_come", part) for part in ("results", "inputs"))
        if asked.get("date") == job.get("visit.date"):
            noted = {name: planned.get(name) or noted[name] for name in noted}
    return {name: value for name, value in noted.items() if value and _CLOCK.fullmatch(str(value))}


def _animal(job: Job) -> dict[str, Any]:
    key = job.get("animal.species", "unknown")
    if key in {"unknown", "bees"}:
        return {"animal": key}
    group = tables.row("job_species", key).get("when_to_come")
    return {"animal": letters.ANIMALS.get(str(group), "unknown")}


def _dates(job: Job, made: Mapping[str, Any]) -> dict[str, Any]:
    """Return the looks that were agreed, else the days of the table, and what else follows."""
    if job.get("visit.date") is None:
        return {}
    day = date.fromisoformat(job.get("visit.date"))
    agreed = sorted(filter(None, map(_day, job.get("visit.follow_up", []))))[:3]
    looks = agreed or [each.isoformat() for each in aftercare.looks(day)]
    key = job.get("animal.species", "unknown")
    group = None if key == "unknown" else tables.row("job_species", key).get("when_to_come")
    half = _half(job, made)
    return {"half": half} | aftercare.facts(day, looks, group, made.get("comb"), half)


def _half(job: Job, made: Mapping[str, Any]) -> Any:
    latitude = job.get("place.latitude")
    if latitude is None:
        return made.get("half")
    return "south" if latitude < 0 else "north"


def _day(text: str) -> str | None:
    """Return a date that stands in a text, if one does."""
    found = re.search(r"\d{4}-\d\d-\d\d", text, re.ASCII)
    try:
        return date.fromisoformat(found[0]).isoformat() if found else None
    except ValueError:
        return None


def _owner(job: Job) -> str | None:
    return job.get("client.name") if job.get("client.role") == "owner" else None

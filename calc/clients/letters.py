"""Letters to clients, neighbours, beekeepers and authorities, from text catalogues.

The words stand in ``calc/clients/words/*.toml``, one catalogue a language, line by line alike.
Facts come from the job. A line that needs a number or a date which is not known is left out, so
that nothing is said that was not counted; a name which is not known becomes a blank to fill in.
"""

from __future__ import annotations

import math
import re
import tomllib
from collections.abc import Mapping
from datetime import date
from functools import cache
from pathlib import Path
from types import MappingProxyType
from typing import Any, NoReturn

from calc.errors import InputError, shown

Fact = str | int | float

LANGUAGES = ("en", "de")
"""Languages with a catalogue, the first one the original."""

KINDS = (
    "quote", "preparation", "neighbours", "tonight", "report", "aftercare", "beekeeper",
    "authority",
)  # fmt: skip
"""Kinds of letter."""

BLANKS = (
    "client", "client_phone", "address", "owner", "practitioner", "phone", "licence", "insurance",
    "receiver",
)  # fmt: skip
"""Facts that become a blank where they are not given."""

TEXTS = ("opened", "other_trade", "captions", "note")
"""Facts in the practitioner's own words; their line is left out where they are not given."""

DATES = ("today", "date", "check_1", "check_2", "check_3", "last_emergence", "spring")
"""Facts that are dates, as text of the form 2026-08-20."""

TIMES = ("arrive", "finish")
"""Facts that are times of day, as text of the form 20:30."""

COUNTS = ("adults", "queens", "males", "left", "tiers", "stings", "limit")
"""Facts that are whole numbers, 0 or more."""

MONEY = ("price", "total", "deposit")
"""Facts that are sums in the currency of the fact ``currency``."""

CHOICES = ("animal", "place", "fate", "comb")
"""Facts whose words stand in the catalogue."""

ANIMALS: Mapping[str, str] = MappingProxyType(
    {
        "vespula": "yellowjackets",
        "dolichovespula": "yellowjackets",
        "crabro": "hornets",
        "velutina": "yellow_legged",
        "polistes": "paper_wasps",
        "bees": "bees",
        "unknown": "unknown",
    }
)
"""Animal groups of the calculators, as the letters call them."""

SWITCHES: Mapping[str, tuple[str, ...]] = MappingProxyType(
    {
        "treated": ("no", "yes", "unknown"),
        "callback": ("no", "yes"),
        "touched": ("no", "yes"),
        "half": ("north", "south"),
        "measure": ("metres", "feet"),
        "currency": (),
    }
)
"""Facts that only steer, with their values; any text for the currency."""

LONGEST = 2000
"""Longest text of one fact, in characters."""

_PLACE = re.compile(r"\{([a-z_0-9]+)\}")
_FOOT = 0.3048
_INCH = 25.4


@cache
def catalogue(language: str) -> Mapping[str, Any]:
    """Return the catalogue of a language; an unknown one raises :class:`InputError`."""
    if language not in LANGUAGES:
        _refuse("language", language, "one of " + ", ".join(LANGUAGES))
    path = Path(__file__).parent / "words" / f"{language}.toml"
    return MappingProxyType(tomllib.loads(path.read_text(encoding="utf-8")))


def compose(kind: str, language: str, facts: Mapping[str, Fact]) -> str:
    """Return a letter as plain text, one line for each paragraph.

    Parameters
    ----------
    kind : one of :data:`KINDS`
    language : one of :data:`LANGUAGES`
    facts : names and values: :data:`BLANKS` and :data:`TEXTS` as text, :data:`DATES` as
        2026-08-20, :data:`TIMES` as 20:30, :data:`COUNTS` and :data:`MONEY` as numbers,
        ``distance`` in m, ``mesh`` in mm, :data:`CHOICES` and :data:`SWITCHES` by value

    Raises
    ------
    InputError : an unknown kind, language or fact, or a value that does not fit it

    Range: no fact about anyone's health exists here, so none can stand in a letter.
    """
    if kind not in KINDS:
        _refuse("kind", kind, "one of " + ", ".join(KINDS))
    words = catalogue(language)
    written = {name: _written(name, value, words, facts) for name, value in facts.items()}
    title = words["titles"][kind]
    lines = [_filled(line, written, words) for line in words[kind]]
    kept = [line for line in lines if line is not None]
    return "\n".join([title, "", *_without_double_gaps(kept)]).rstrip() + "\n"


def left_out(kind: str, language: str, facts: Mapping[str, Fact]) -> int:
    """Return how many lines of a letter are left out for want of a fact."""
    words = catalogue(language)
    written = {name: _written(name, value, words, facts) for name, value in facts.items()}
    return sum(_filled(line, written, words) is None for line in words[kind])


def _filled(
    line: Mapping[str, str], written: Mapping[str, str], words: Mapping[str, Any]
) -> str | None:
    """Return one line with its facts, or ``None`` where it has nothing to say."""
    if not _holds(line.get("if", ""), written):
        return None
    blank = words["about"]["blank"]
    known = {**dict.fromkeys((*BLANKS, "blank"), blank), **written}
    if any(name not in known for name in _PLACE.findall(line["text"])):
        return None
    # One pass, so that braces in a client's name are only letters.
    return _PLACE.sub(lambda found: known[found[1]], line["text"])


def _holds(condition: str, written: Mapping[str, str]) -> bool:
    if not condition:
        return True
    name, _, values = condition.partition("=")
    return name in written and (not values or written[name] in values.split("/"))


def _written(name: str, value: Fact, words: Mapping[str, Any], facts: Mapping[str, Fact]) -> str:
    """Return a fact in the words of the language."""
    about = words["about"]
    if name in BLANKS or name in TEXTS:
        return _text(name, value)
    if name in CHOICES:
        if value not in words[name]:
            _refuse(name, value, "one of " + ", ".join(words[name]))
        return str(words[name][value])
    if name in DATES:
        return _date(name, value, about)
    if name in TIMES:
        if not isinstance(value, str) or not re.fullmatch(r"([01]\d|2[0-3]):[0-5]\d", value):
            _refuse(name, value, "a time such as 20:30")
        return str(value)
    if name in SWITCHES:
        allowed = SWITCHES[name]
        if allowed and value not in allowed:
            _refuse(name, value, "one of " + ", ".join(allowed))
        return _text(name, value)
    return _number(name, value, about, facts)


def _number(name: str, value: Fact, about: Mapping[str, Any], facts: Mapping[str, Fact]) -> str:
    known = name in COUNTS or name in MONEY or name in {"distance", "mesh"}
    if not known:
        _refuse(name, value, "a fact that letters know")
    if isinstance(value, bool) or not isinstance(value, int | float) or not 0 <= value <= 1e9:
        _refuse(name, value, "a number from 0 to 1 000 000 000")
    number = float(value)
    if name in COUNTS:
        if number != math.floor(number):
            _refuse(name, value, "a whole number")
        return f"{number:.0f}"
    if name in MONEY:
        amount = f"{number:.2f}".replace(".", about["decimal"])
        sign = _text("currency", facts.get("currency", ""))
        return str(about["money"].format(currency=sign, amount=amount)).strip()
    return _length(name, number, facts.get("measure") == "feet", about)


def _length(name: str, value: float, feet: bool, about: Mapping[str, Any]) -> str:
    """Return a distance or a mesh; a distance to keep is rounded up, a mesh is not."""
    if name == "distance":
        text = math.ceil(value / _FOOT - 1e-9) if feet else math.ceil(value - 1e-9)
        return str(about["feet" if feet else "metres"].format(value=text))
    text_mm = f"{value / _INCH:.2f} in" if feet else f"{value:g} mm"
    return text_mm.replace(".", about["decimal"])


def _date(name: str, value: Fact, about: Mapping[str, Any]) -> str:
    allowed = "a date such as 2026-08-20"
    if not isinstance(value, str) or not re.fullmatch(r"\d{4}-\d\d-\d\d", value, re.ASCII):
        _refuse(name, value, allowed)
    try:
        day = date.fromisoformat(str(value))
    except ValueError:
        _refuse(name, value, allowed)
    month = about["months"][day.month - 1]
    return str(about["date"].format(day=day.day, month=month, year=day.year))


def _text(name: str, value: Fact) -> str:
    """Return a text without control signs; only captions and the like keep their lines."""
    if not isinstance(value, str):
        _refuse(name, value, "a text")
    if len(str(value)) > LONGEST:
        _refuse(name, value, f"a text of at most {LONGEST} signs")
    lines = [
        " ".join("".join(sign if sign.isprintable() else " " for sign in line).split())
        for line in str(value).splitlines()
    ]
    kept = [line for line in lines if line]
    return ("\n" if name in TEXTS else ", ").join(kept)


def _without_double_gaps(lines: list[str]) -> list[str]:
    kept: list[str] = []
    for line in lines:
        if line or (kept and kept[-1]):
            kept.append(line)
    return kept


def _refuse(name: str, value: object, allowed: str) -> NoReturn:
    raise InputError(
        name, value, allowed, f"Fact {shown(name)}: “{shown(value)}” is not {allowed}."
    )

"""Letters to the client: the calculator around :mod:`calc.clients.letters`."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

from calc import tables
from calc.clients import follow_up_rules as rules
from calc.clients import letters
from calc.clients.client_letter_forms import INPUTS, OUTPUTS
from calc.clients.follow_up import job_date
from calc.clients.readability import measure
from calc.declare import Answer, Calculator, Caution

ANIMALS = {
    "vespula": "yellowjackets",
    "dolichovespula": "yellowjackets",
    "crabro": "hornets",
    "velutina": "yellow_legged",
    "polistes": "paper_wasps",
    "bees": "bees",
    "unknown": "unknown",
}
"""Animal groups, as the letters call them."""
_PLAIN = (
    "place", "fate", "comb", "treated", "touched", "callback", "measure", "currency", "adults",
    "queens", "males", "left", "tiers", "stings", "price", "total", "deposit", "distance",
)  # fmt: skip
"""Inputs that are facts of the letter by the same name."""


def core(*, kind: str, language: str, **given: Any) -> Answer:
    """Write one letter from numbers and choices; names stay blanks to fill in.

    Parameters
    ----------
    kind, language : see :mod:`calc.clients.letters`
    given : the other inputs of the declaration, ``None`` where not asked
    """
    facts: dict[str, letters.Fact] = {
        name: given[name] for name in _PLAIN if given.get(name) is not None
    }
    if given["animal"] is not None:
        facts["animal"] = ANIMALS[given["animal"]]
    facts |= _times(given) | _dates(given)
    text = letters.compose(kind, language, facts)
    measures = measure(text)
    values = {
        "letter": text,
        "grade": measures.grade if language == "en" else None,
        "longest": measures.longest,
        "words": measures.words,
        "left_out": letters.left_out(kind, language, facts),
    }
    return Answer(values=values, cautions=cautions(kind, language, given))


def _times(given: dict[str, Any]) -> dict[str, letters.Fact]:
    made: dict[str, letters.Fact] = {}
    for name in letters.TIMES:
        if given[f"{name}_hour"] is not None:
            made[name] = f"{given[f'{name}_hour']:02d}:{given[f'{name}_minute']:02d}"
    return made


def _dates(given: dict[str, Any]) -> dict[str, letters.Fact]:
    """Return the date of the job and what follows from it."""
    job = job_date(given["year"], given["month"], given["day"])
    made: dict[str, letters.Fact] = {"date": job.isoformat()}
    made |= {name: day.isoformat() for name, day in zip(rules.LOOKS, rules.looks(job), strict=True)}
    made["limit"] = int(tables.row("aftercare", "check_2")["count"])
    made["mesh"] = float(tables.row("sealing", "ours")["opening"])
    animal, half = given["animal"], given["half"]
    if animal in rules.GROUPS:
        if given["comb"] in {"part", "left"}:
            made["last_emergence"] = rules.last_emergence(job, animal).isoformat()
        if half is not None:
            made["half"] = half
            made["spring"] = rules.spring_day(job, animal, half == "south").isoformat()
    return made


def cautions(kind: str, language: str, given: Mapping[str, Any]) -> list[Caution]:
    """Return what to say about a letter; ``given`` holds distance, treated, fate and animal."""
    made = [_READ_FIRST]
    if kind in {"preparation", "neighbours", "tonight"} and given["distance"] is None:
        made.append(_NO_DISTANCE)
    if kind == "quote":
        made.append(_CANCEL)
    if kind == "report" and given["treated"] in {"yes", "unknown"} and given["fate"] == "fed":
        made.append(_POISON)
    if given["animal"] == "bees" and kind not in {"beekeeper", "authority"}:
        made.append(_BEES)
    if language != letters.LANGUAGES[0]:
        made.append(_REVIEW)
    return made


_READ_FIRST = Caution(
    level="caution",
    text="Read it before you send it. It says only what you typed; names and licence are blanks.",
    reason="A line whose number or date is missing is left out.",
    source="counted_only",
)
_NO_DISTANCE = Caution(
    level="caution",
    text="No distance is in it: nobody is told how far to keep away. Work it out in Keeping "
    "people away and type it in.",
    reason="The line is left out, not filled with a guess.",
    source="own_zones",
)
_CANCEL = Caution(
    level="caution",
    text="Hand over the sheet on the right to cancel with it, as your law wants it.",
    reason="Without it a trader in the European Union got nothing for finished work.",
    source="cjeu_c_97_22",
)
_POISON = Caution(
    level="stop",
    text="Do not send this: brood of a nest that was or may have been treated is not fed to any "
    "animal. Change what becomes of the brood.",
    reason="Nobody knows a time after which it is clean.",
    source="pesticide_in_eggs",
    hides=("letter",),
)
_BEES = Caution(
    level="stop",
    text="Bees are never taken out this way. Write to a beekeeper instead.",
    reason="They are another trade, and protected in many places.",
    source="bartschv_2005",
    hides=("letter",),
)
_REVIEW = Caution(
    level="caution",
    text="This language is for review by a native speaker. Let someone read it before it goes out.",
    reason="The English text is the original; its reading grade is measured, this one's is not.",
    source="letters_content",
)

client_letter = Calculator(
    name="client_letter",
    title="Letters to the client",
    part="clients",
    purpose="Quote, notices, report and referrals in plain words, from what was counted.",
    inputs=INPUTS,
    outputs=OUTPUTS,
    core=core,
    sources=(
        "letters_content",
        "counted_only",
        "plain_language_iso",
        "readability_targets",
        "flesch_kincaid",
        "check_days_ours",
    ),
    formula=(
        (
            r"G = 0.39\,\frac{\text{words}}{\text{sentences}} + "
            r"11.8\,\frac{\text{syllables}}{\text{words}} - 15.59",
            "reading grade of the English text; syllables by a rule of thumb",
            "flesch_kincaid",
        ),
    ),
    assumptions=(
        "Names, addresses and licence numbers are not typed here: the letter has blanks for them.",
        "Law on contracts, data and notices differs by place; the letter does not replace it.",
        "Health facts have no place in any letter, so there is no field for them.",
    ),
)

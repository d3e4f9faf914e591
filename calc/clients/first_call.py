"""On the phone with a client: from the answers to a decision, with every rule that spoke."""

from __future__ import annotations

from typing import Any

from calc import rules as book
from calc import tables
from calc.clients.first_call_forms import OUTPUTS, QUESTIONS
from calc.clients.first_call_rules import Rule, deciding, ends, rules, spoken
from calc.declare import Answer, Calculator, Caution
from calc.safety.levels import caution, note, stop
from calc.sources import source

HELD_BACK = ("before",)
"""Withheld by a stop: what would read as leave to go."""


def core(**answers: Any) -> Answer:
    """Judge one call by the rules of the table; answers by the names of the questions."""
    found = spoken(answers)
    first = deciding(found)
    end = ends(first)
    return Answer(
        values={
            "decision": end["decision"],
            "why": f"{first.rule}. {first.reason}",
            "who": end["who"],
            "say": end["say"],
            "rules": [_told(first), *(_told(each) for each in _others(found, first))],
            "before": _before(found),
            "open": [{"question": each} for each in open_questions(answers)],
        },
        cautions=_cautions(answers, found),
    )


def open_questions(answers: dict[str, Any]) -> list[str]:
    """Return the labels of questions that nobody has answered yet."""
    return [
        each.label
        for each in QUESTIONS
        if answers.get(each.name) == "unknown"
        or (each.name == "photo" and answers["photo"] == "no")
        or (each.name == "days" and answers["days"] is None)
    ]


def _others(found: list[Rule], first: Rule) -> list[Rule]:
    # The rule without a test always holds; it says something only where it decides.
    return [each for each in found if each.effect != "adds" and each != first and each.test]


def _told(rule: Rule) -> dict[str, str]:
    return {"rule": f"{rule.rule}. {_why(rule)}", "leads_to": rule.decision}


def _why(rule: Rule) -> str:
    return f"{rule.reason} ({source(rule.source).cited()})"


def _before(found: list[Rule]) -> list[dict[str, str]]:
    return [{"what": each.rule, "reason": _why(each)} for each in found if each.effect == "adds"]


def _cautions(answers: dict[str, Any], found: list[Rule]) -> list[Caution]:
    stops = [
        stop(
            f"{each.rule}: {_lower(ends(each)['who'])}.",
            each.reason,
            each.source,
            HELD_BACK,
        )
        for each in found
        if each.effect == "path"
    ]
    made = [*stops, _FIRST]
    if answers["reaction"] == "plan":
        made.append(_ALLERGY)
    if answers["indoors"] == "yes":
        made.append(_NEVER_SEAL)
    if answers["winters"] == "mild":
        made.append(_MILD)
    return [*made, _LAW, _OURS]


def _lower(text: str) -> str:
    return text[0].lower() + text[1:]


_FIRST = caution(
    book.text("sting_call", "lay", "hang"),
    "It goes before every other question, also late in the call.",
    "ascia_first_aid",
)
_ALLERGY = caution(
    "The person with the plan is away, or in with windows shut, before the suit goes on. Medical "
    "questions go to their doctor.",
    "You give no advice on medicines; their plan leads.",
    "ascia_venom_2020",
)
_NEVER_SEAL = caution(
    "Nobody seals the hole: the colony digs a new way out, possibly into the room.",
    "Close it only when nothing flies any more.",
    "wall_nest_guidance",
)
_MILD = caution(
    "Do not promise that the winter ends it.",
    "About one nest in ten of one species lives through the winter in New Zealand.",
    "mild_winter_colonies",
)
_LAW = note(
    "Which species are protected or to be reported, and who may take nests out for pay, is "
    "local law. Check yours; the authority has the last word.",
    "Rules differ by state, country and species.",
    "nuremberg_hornets",
)
_OURS = note(
    "No published text sets a distance or a number of days at which a nest must go. The two "
    "distances are advice for hornets; the days are ours.",
    "Yellowjackets answer otherwise; keep more.",
    "own_call_rules",
)

first_call = Calculator(
    name="first_call",
    title="On the phone with a client",
    part="clients",
    purpose="Leave and explain, come back after the season, relocate, remove, or send elsewhere: "
    "the answers of one call, and every rule that spoke.",
    inputs=QUESTIONS,
    outputs=OUTPUTS,
    core=core,
    sources=tuple(
        dict.fromkeys(
            [
                *(rule.source for rule in rules()),
                *(row["source"] for row in tables.rows("call_limits")),
                *(row["source"] for row in tables.rows("call_decisions")),
                "epa_ipm_tiers",
            ]
        )
    ),
    assumptions=(
        "The rules are tried from top to bottom. The first that sends the job another way decides; "
        "if none does, the first of the others.",
        "An answer that is missing never counts as harmless: the sheet asks first.",
        "The caller's answers are taken as they are. On site, look again.",
        "The distances are those of local authorities for hornets. The days are a suggestion of "
        "this handbook.",
    ),
)

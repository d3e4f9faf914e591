"""What must be known before the decision of a call."""

from __future__ import annotations

from calc import rules
from calc.clients.first_call.inputs import Inputs
from calc.clients.first_call.rules import Rule, ends
from calc.declare import Caution
from calc.safety.levels import caution, note, stop

HELD_BACK = ("before",)
"""Withheld by a stop: what would read as leave to go."""


def cautions(x: Inputs, found: list[Rule]) -> list[Caution]:
    """Return the stops of the rules that spoke, and what goes with the answers."""
    stops = [
        stop(f"{each.rule}: {_lower(ends(each)['who'])}.", each.reason, each.source, HELD_BACK)
        for each in found
        if each.effect == "path"
    ]
    made = [*stops, _FIRST]
    if x.reaction == "plan":
        made.append(_ALLERGY)
    if x.indoors == "yes":
        made.append(_NEVER_SEAL)
    if x.winters == "mild":
        made.append(_MILD)
    return [*made, _LAW, _OURS]


def _lower(text: str) -> str:
    return text[0].lower() + text[1:]


_FIRST = caution(
    rules.text("sting_call", "lay", "hang"),
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

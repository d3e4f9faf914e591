"""On the phone with a client: from the answers to a decision, with every rule that spoke."""

from __future__ import annotations

from calc import tables
from calc.clients.first_call.asking import asks
from calc.clients.first_call.core import core
from calc.clients.first_call.inputs import Inputs
from calc.clients.first_call.results import RESULTS
from calc.clients.first_call.rules import rules
from calc.declare import Calculator

first_call = Calculator(
    name="first_call",
    title="On the phone with a client",
    part="clients",
    purpose="Leave and explain, come back after the season, relocate, remove, or send elsewhere: "
    "the answers of one call, and every rule that spoke.",
    given=Inputs,
    outputs=RESULTS,
    core=core,
    asks=asks,
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
        "The next question is the one whose answer is expected to decide most, by our guess of "
        "what callers say. The guess sets the order alone: asking ends only when no answer could "
        "change the decision.",
        "The caller's answers are taken as they are. On site, look again.",
        "The distances are those of local authorities for hornets. The days are a suggestion of "
        "this handbook.",
    ),
)

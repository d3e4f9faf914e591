"""Follow-up: looks, stragglers, sealing, next spring, and reminders for a calendar."""

from __future__ import annotations

from calc.clients.follow_up.core import core
from calc.clients.follow_up.inputs import Inputs
from calc.clients.follow_up.results import RESULTS
from calc.declare import Calculator

follow_up = Calculator(
    name="follow_up",
    title="Follow-up",
    part="clients",
    purpose="When to look again, when to come back, when the hole may be closed, and what to do "
    "next spring, with reminders for a calendar.",
    given=Inputs,
    outputs=RESULTS,
    core=core,
    sources=(
        "check_days_ours",
        "callback_ours",
        "velutina_life_tagged",
        "straggler_days_ours",
        "straggler_pages",
        "sealed_ranges",
        "sealing_ours",
        "hornet_trap_holes",
        "never_seal_live",
        "prevention_calendar",
        "site_again",
        "rfc_5545",
    ),
    formula=(
        (
            r"w = -\tau\,\ln(1 - s)",
            "days until the share s of those left out is gone, τ the mean active life",
            "straggler_days_ours",
        ),
        (
            r"w = -\tau\,\ln\left(1 - 0.95^{1/m}\right)",
            "days until all m are gone in 95 of 100 cases",
            "straggler_model",
        ),
        (
            r"n_7 > 10 \;\text{ or }\; n_7 > 0.2\,n_3",
            "call back, n the number that go into the hole in 5 minutes on day 3 and day 7",
            "callback_ours",
        ),
    ),
    assumptions=(
        "Looks are made at noon, in dry and warm weather, for 5 minutes.",
        "The active life of tagged yellow-legged hornets stands in for every species.",
        "Spring is the earliest printed date of any place of the animal; yours may be weeks later.",
        "No wasp going in on two looks is a sign, not a proof.",
    ),
)

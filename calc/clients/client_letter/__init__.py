"""Letters to the client: the calculator around :mod:`calc.clients.letters`."""

from __future__ import annotations

from calc.clients.client_letter.core import core
from calc.clients.client_letter.inputs import Inputs
from calc.clients.client_letter.results import RESULTS
from calc.declare import Calculator

client_letter = Calculator(
    name="client_letter",
    title="Letters to the client",
    part="clients",
    purpose="Quote, notices, report and referrals in plain words, from what was counted.",
    given=Inputs,
    outputs=RESULTS,
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

"""Sting plan: who may work, who calls, how long help takes, what must be in hand."""

from __future__ import annotations

from calc import rules as book
from calc.declare import Calculator
from calc.safety.sting_plan.core import core
from calc.safety.sting_plan.inputs import Inputs
from calc.safety.sting_plan.results import RESULTS

_SOURCES = tuple(
    dict.fromkeys(
        [
            "pumphrey_2000",
            "turner_2017",
            "wao_2020",
            "mell_2017",
            "ascia_first_aid",
            "ascia_faq_50kg",
            "us_injector_label",
            "aap_injector",
            "second_dose_share",
            "rcuk_2021",
            "jtfpp_2020",
            "schmidt_2018",
            "xie_2013",
            "vetter_1999",
            "lovecchio_2007",
            "child_bee_death",
            "own_sting_rule",
            "own_sting_plan",
            "eyewash_ansi",
            "eyewash_wac",
            "hirano_2020",
            "ludman_2015",
            "aaa_insect",
            "german_venom_2023",
            "kidney_gap_2010",
            *(
                key
                for name in ("sting_emergency", "many_stings", "eye_venom")
                for step in book.rule(name).steps
                for key in step.source
            ),
        ]
    )
)

sting_plan = Calculator(
    name="sting_plan",
    title="Sting plan",
    part="safety",
    purpose="Go on, go on only with conditions, or stop: people, reactions, adrenaline, and the "
    "minutes to help against published time courses.",
    given=Inputs,
    outputs=RESULTS,
    core=core,
    sources=_SOURCES,
    formula=(
        (
            r"t_\mathrm{help} = 2 + t_\mathrm{ambulance} + t_\mathrm{walk}",
            "minutes from the sting to help at the person's side",
            "own_sting_plan",
        ),
        (
            r"n = \min(n_\mathrm{own},\; m / m_1)",
            "stings from which our rule says hospital: the person's own number, or one for each "
            "m₁ of body weight if that is fewer; all in the table of our rule",
            "own_sting_rule",
        ),
        (
            r"V = 15\,\mathrm{min} \times 1.5\,\mathrm{L/min}",
            "water for one washing of the eyes",
            "eyewash_wac",
        ),
    ),
    assumptions=(
        "Ambulance times are means of the United States in 2015; ask the local service for yours.",
        "The middle time to arrest is of deaths. It says how fast the worst cases were, not how "
        "often they happen.",
        "Go on, conditions and stop are rules of this handbook, in the spirit of the named texts.",
        "Doses are printed for devices that a doctor prescribed; none is computed here.",
    ),
)

"""Getting used to the heat: minutes in the suit for each day, by the published shares."""

from __future__ import annotations

from calc.declare import Calculator
from calc.safety.acclimatisation_plan.core import core
from calc.safety.acclimatisation_plan.inputs import Inputs
from calc.safety.acclimatisation_plan.results import RESULTS

acclimatisation_plan = Calculator(
    name="acclimatisation_plan",
    title="Getting used to the heat",
    part="safety",
    purpose="How long in heat and suit on each of the first days, by the published shares.",
    given=Inputs,
    outputs=RESULTS,
    core=core,
    sources=(
        "niosh_osha_acclimatization",
        "osha_acclimatizing",
        "acclimatisation_ours",
        "niosh_hydration_2017",
        "niosh_first_aid",
        "acgih_strain_signs",
    ),
    formula=(
        (
            r"t_\mathrm{day} = t_\mathrm{full}\, s_\mathrm{day}",
            "minutes of a day; s is 20, 40, 60, 80, 100 %, also after a week away and in the "
            "first hot spell",
            "osha_acclimatizing",
        ),
        (
            r"n = \lceil t_\mathrm{day} / w \rceil,\qquad T = t_\mathrm{day} + (n-1)(60 - w)",
            "work periods and minutes on site, w being the work minutes in an hour",
            "arithmetic",
        ),
    ),
    assumptions=(
        "The days follow each other; a week away starts the schedule again.",
        "The shares are of time in heat. They do not replace the limit of the hour.",
        "A healthy person; heart trouble, medicines and age ask for a slower schedule.",
    ),
)

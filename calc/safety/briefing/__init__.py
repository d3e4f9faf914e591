"""Before you start: one card from heat, stings, people, noise and ladder."""

from __future__ import annotations

from calc.declare import Calculator
from calc.safety.briefing.core import core
from calc.safety.briefing.inputs import Inputs
from calc.safety.briefing.results import RESULTS

briefing = Calculator(
    name="briefing",
    title="Before you start",
    part="safety",
    purpose="One card to read aloud, print or show, from the other calculators of this part.",
    given=Inputs,
    outputs=RESULTS,
    core=core,
    sources=(
        "niosh_2016",
        "niosh_osha_acclimatization",
        "niosh_hydration_2017",
        "pumphrey_2000",
        "mell_2017",
        "ascia_first_aid",
        "second_dose_share",
        "own_sting_plan",
        "own_sting_rule",
        "belval_2018",
        "own_emergency",
        "usda_bee_attack",
        "own_zones",
        "choi_velutina_people",
        "eyewash_ansi",
    ),
    formula=(),
    assumptions=(
        "What nobody said is a condition on the card, or counts as the worse: not named animals as "
        "hornets, a helper as untrained, a person as new to the heat. No wind given counts as felt "
        "for the zone and as calm for the heat.",
        "Heat is counted only with temperature, humidity and sun.",
        "Everyone counts as rested and well; “Getting used to the heat” asks.",
        "The house counts as beside the nest and people as downwind; “Keeping people away” takes "
        "the true distances.",
        "The vacuum runs as long as the planned work, at a guessed level; without a saw foam "
        "plugs are worn. “Noise of the day” takes your own levels.",
        "A ladder counts as near a line of unknown voltage, with the load of an ordinary person; "
        "“Ladder and power lines” takes yours.",
        "With the minutes of an area two minutes are added for the walk from the road.",
        "If any part stops, the briefing stops with that part's reason.",
    ),
)

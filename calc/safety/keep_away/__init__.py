"""Keeping people away: zones, waiting times, places, and a plan to scale."""

from __future__ import annotations

from calc.declare import Calculator
from calc.safety.keep_away.core import core
from calc.safety.keep_away.inputs import Inputs
from calc.safety.keep_away.results import RESULTS

keep_away = Calculator(
    name="keep_away",
    title="Keeping people away",
    part="safety",
    purpose="How far others stay from the nest, who is told, and where you run.",
    given=Inputs,
    outputs=RESULTS,
    core=core,
    sources=(
        "own_zones",
        "choi_velutina_people",
        "korea_three_hornets",
        "milvus_crabro",
        "rlp_portal",
        "ahrweiler_hornets",
        "neuzelle_hornets",
        "thue_velutina",
        "austria_interview",
        "media_press",
        "yellowjacket_list_2000",
    ),
    formula=(
        (
            r"r_\mathrm{outer} = \max(r_\mathrm{row},\; r_\mathrm{published})",
            "outer zone: our row, never nearer than the farthest published distance",
            "own_zones",
        ),
    ),
    assumptions=(
        "Zones are circles; walls, hedges and height can help or mislead, so they are not counted.",
        "Published distances are for calm nests or for hornets in tests; none is for a nest that "
        "is being taken out.",
        "Large, late or disturbed colonies move one row up, and so does shaking.",
        "No published figure ties wind to distance.",
        "Directions in the plan are schematic, distances are to scale.",
    ),
)

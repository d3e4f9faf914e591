"""Ladder and power lines: how to keep off a line, set the ladder, and what it carries."""

from __future__ import annotations

from calc.declare import Calculator
from calc.safety.ladder_and_lines.core import core
from calc.safety.ladder_and_lines.inputs import Inputs
from calc.safety.ladder_and_lines.results import RESULTS

ladder_and_lines = Calculator(
    name="ladder_and_lines",
    title="Ladder and power lines",
    part="safety",
    purpose=(
        "How far to keep from an overhead line, how to set the ladder, and whether it carries "
        "you and your gear."
    ),
    given=Inputs,
    outputs=RESULTS,
    core=core,
    sources=(
        "osha_1910_333",
        "osha_1926_1408",
        "osha_1926_1409",
        "dguv_38",
        "osha_1926_1053",
        "hse_ladder_angle",
        "ansi_a14",
        "en_131",
        "ladder_angle_band",
        "ladder_reach",
    ),
    formula=(
        (
            r"d = 10 + \tfrac{4}{12}\left\lceil \frac{U - 50}{10} \right\rceil \ \mathrm{ft}",
            "distance for an unqualified person, U in kV above 50; 10 ft up to 50 kV",
            "osha_1910_333",
        ),
        (
            r"L = \frac{H}{\sqrt{1 - (1/4)^2}}, \quad f = \tfrac14 L",
            "working length and foot distance for the height H of the top support",
            "osha_1926_1053",
        ),
        (
            r"\alpha = \arctan\frac{H}{f}",
            "angle of the ladder as it stands",
            "osha_1926_1053",
        ),
    ),
    assumptions=(
        "The line distance is the nearest that you, the ladder or anything you hold could come, "
        "also in a slip or a gust.",
        "An unknown voltage is taken as the highest that a table covers; the wire to a house is "
        "one of them.",
        "Firm and level ground, a firm top support, one person, dry rungs, no wind that moves "
        "branches.",
        "The rating holds for an undamaged ladder; it counts everything that hangs on it.",
    ),
)

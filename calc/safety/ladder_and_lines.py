"""Ladder and power lines: the declaration and the core."""

from __future__ import annotations

from typing import Any

from calc.declare import Answer, Calculator
from calc.safety import ladder_core as ladder
from calc.safety.ladder_cautions import Findings, cautions
from calc.safety.ladder_forms import INPUTS, OUTPUTS

BODIES = {
    "1910.333": "OSHA 1910.333 (1990), USA",
    "1926.1408": "OSHA 1926.1408 (2010), USA",
    "1926.1409": "OSHA 1926.1409 (2010), USA",
    "DGUV 38": "DGUV 38, Germany",
}
"""The rules about lines, with body and country."""


def core(
    *,
    lines: str,
    voltage: float | None,
    line_distance: float | None,
    rails: str,
    support_height: float,
    roof: str,
    nest_height: float,
    rail_length: float | None,
    foot_distance: float | None,
    person: float,
    suit: float,
    carried: float,
    rating: str,
) -> Answer:
    """Set a ladder and keep it off lines; see the declaration for units."""
    above = ladder.rule("above") * ladder.FOOT if roof == "yes" else 0.0
    rail_needed = ladder.working_length(support_height) + above
    feet = ladder.highest_feet(support_height)
    reach = (feet + ladder.rule("hands_low"), feet + ladder.rule("hands_high"))
    clearance = ladder.needed(voltage) if lines != "none" else None
    room = None if clearance is None or line_distance is None else line_distance - clearance
    load_room = ladder.duty_limit(rating) - (person + suit + carried)
    angle_now = None if foot_distance is None else ladder.angle_of(support_height, foot_distance)
    found = Findings(
        lines=lines,
        no_figure=lines != "none" and clearance is None,
        line_room=room,
        metal=rails == "metal",
        load_room=load_room,
        rating=rating,
        angle=angle_now,
        rule_angle=ladder.rule_angle(),
        too_short=rail_length is not None
        and rail_length < ladder.working_length(support_height) - 1e-9,
        short_above=rail_length is not None and rail_length < rail_needed - 1e-9,
        nest_above=nest_height > reach[1],
        nest_below=nest_height < 1.0,
    )
    told = cautions(found)
    values = {
        "verdict": verdict(found, any(each.level == "stop" for each in told)),
        "clearance": clearance,
        "line_room": room,
        "foot_out": ladder.foot_out(support_height),
        "working_length": ladder.working_length(support_height),
        "rail_needed": rail_needed,
        "angle": ladder.rule_angle(),
        "angle_now": angle_now,
        "feet_highest": feet,
        "reach": reach,
        "load": person + suit + carried,
        "load_limit": ladder.duty_limit(rating),
        "load_room": load_room,
        "distances": [] if lines == "none" else _lines(voltage, line_distance or 0.0),
    }
    return Answer(values=values, cautions=told)


def verdict(found: Findings, stopped: bool) -> str:
    """Say how the ladder stands to the published rules."""
    if found.no_figure:
        return "Stop: no published distance covers this line, do not start."
    if found.line_room is not None and found.line_room < -1e-9:
        return "Stop: nearer to the line than a published distance, do not start."
    if stopped:
        return "Outside a published rule or the ladder's rating: do not climb."
    told = "Within the published rules for ladder and load"
    if found.lines == "none":
        return f"{told}; no line was given, so none was checked."
    if found.line_room is not None and found.line_room < 1:
        return f"{told}; at the line less than a metre is left."
    return f"{told}, and outside the published distances to the line."


def _lines(voltage: float | None, distance: float) -> list[dict[str, Any]]:
    return [
        {
            "rule": BODIES[name],
            "distance": metres,
            "kept": "yes" if distance >= metres - 1e-9 else "no",
        }
        for name, metres in ladder.clearances(voltage).items()
    ]


ladder_and_lines = Calculator(
    name="ladder_and_lines",
    title="Ladder and power lines",
    part="safety",
    purpose=(
        "How far to keep from an overhead line, how to set the ladder, and whether it carries "
        "you and your gear."
    ),
    inputs=INPUTS,
    outputs=OUTPUTS,
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

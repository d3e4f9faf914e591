"""The core of "Ladder and power lines": from what was asked to what is answered."""

from __future__ import annotations

from typing import Any

from calc.declare import Answer
from calc.errors import required
from calc.safety.ladder_and_lines import lines, setting
from calc.safety.ladder_and_lines.cautions import Findings, cautions
from calc.safety.ladder_and_lines.inputs import Inputs

BODIES = {
    "1910.333": "OSHA 1910.333 (1990), USA",
    "1926.1408": "OSHA 1926.1408 (2010), USA",
    "1926.1409": "OSHA 1926.1409 (2010), USA",
    "DGUV 38": "DGUV 38, Germany",
}
"""The rules about lines, with body and country."""


def core(x: Inputs) -> Answer:
    """Set a ladder and keep it off lines; see the declaration for units."""
    working = setting.working_length(x.support_height)
    rail_needed = working + (setting.rule("above") * lines.FOOT if x.roof == "yes" else 0.0)
    feet = setting.highest_feet(x.support_height)
    reach = (feet + setting.rule("hands_low"), feet + setting.rule("hands_high"))
    distance = None if x.lines == "none" else required("line_distance", x.line_distance)
    clearance = None if distance is None else lines.needed(x.voltage)
    room = None if clearance is None or distance is None else distance - clearance
    load, limit = x.person + x.suit + x.carried, setting.duty_limit(x.rating)
    foot = x.foot_distance
    angle_now = None if foot is None else setting.angle_of(x.support_height, foot)
    found = Findings(
        lines=x.lines,
        no_figure=distance is not None and clearance is None,
        line_room=room,
        metal=x.rails == "metal",
        load_room=limit - load,
        rating=x.rating,
        angle=angle_now,
        rule_angle=setting.rule_angle(),
        too_short=x.rail_length is not None and x.rail_length < working - 1e-9,
        short_above=x.rail_length is not None and x.rail_length < rail_needed - 1e-9,
        nest_above=x.nest_height > reach[1],
        nest_below=x.nest_height < 1.0,
    )
    told = cautions(found)
    values = {
        "verdict": verdict(found, any(each.level == "stop" for each in told)),
        "clearance": clearance,
        "line_room": room,
        "foot_out": setting.foot_out(x.support_height),
        "working_length": working,
        "rail_needed": rail_needed,
        "angle": setting.rule_angle(),
        "angle_now": angle_now,
        "feet_highest": feet,
        "reach": reach,
        "load": load,
        "load_limit": limit,
        "load_room": limit - load,
        "distances": [] if distance is None else _distances(x.voltage, distance),
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


def _distances(voltage: float | None, distance: float) -> list[dict[str, Any]]:
    return [
        {
            "rule": BODIES[name],
            "distance": metres,
            "kept": "yes" if distance >= metres - 1e-9 else "no",
        }
        for name, metres in lines.clearances(voltage).items()
    ]

"""What a reader must know before the numbers of "Ladder and power lines"."""

from __future__ import annotations

from dataclasses import dataclass

from calc import rules, tables
from calc.declare import Caution
from calc.safety.levels import caution, note, stop

HELD_BACK = ("foot_out", "working_length", "rail_needed", "feet_highest", "reach")
"""Results that a stop withholds: how to set the ladder."""

_NEAR = float(tables.row("ladder_rules", "near")["value"])
_FLAT = float(tables.row("ladder_rules", "flat")["value"])
_STEEP = float(tables.row("ladder_rules", "steep")["value"])


@dataclass(frozen=True, kw_only=True, slots=True)
class Findings:
    """What the core found."""

    lines: str  # none, known, unknown
    no_figure: bool  # a voltage beyond every table
    line_room: float | None  # distance to the line less the distance needed, m
    metal: bool
    load_room: float  # duty rating less load, kg
    rating: str
    angle: float | None  # as it stands, degrees
    rule_angle: float
    too_short: bool  # the rails do not reach the support
    short_above: bool  # they do, but not far enough above a roof
    nest_above: bool  # the nest is above the reach
    nest_below: bool


def cautions(found: Findings) -> list[Caution]:
    """Return the cautions of one run, at least five of them in every run."""
    return [
        *_stops(found),
        *_about_lines(found),
        *_about_setting(found),
        *_about_load(found),
        _NOT_FROM_HERE,
        _TIE,
        _BOTH_WAYS,
        _JURISDICTION,
    ]


def _stops(found: Findings) -> list[Caution]:
    made = []
    if found.no_figure:
        made.append(_NO_FIGURE)
    elif found.line_room is not None and found.line_room < -1e-9:
        made.append(_TOO_NEAR)
    if found.load_room < -1e-9:
        made.append(_OVERLOAD)
    if found.angle is not None and found.angle < _FLAT - 1e-9:
        made.append(_TOO_FLAT)
    if found.angle is not None and found.angle > _STEEP + 1e-9:
        made.append(_TOO_STEEP)
    if found.too_short:
        made.append(_TOO_SHORT)
    return made


def _about_lines(found: Findings) -> list[Caution]:
    if found.lines == "none":
        return [_LOOK_UP]
    made = [_WET]
    if found.metal:
        made.append(_METAL)
    if found.lines == "unknown":
        made.append(_UNKNOWN)
    return made


def _about_setting(found: Findings) -> list[Caution]:
    made = []
    inside = found.angle is not None and _FLAT <= found.angle <= _STEEP
    if inside and found.angle is not None and abs(found.angle - found.rule_angle) > _NEAR:
        made.append(_RESET)
    if found.short_above:
        made.append(_SHORT_ABOVE)
    if found.nest_above:
        made.append(_NEST_ABOVE)
    if found.nest_below:
        made.append(_NEST_BELOW)
    return made


def _about_load(found: Findings) -> list[Caution]:
    return [_NO_MARK] if found.rating == "unknown" else []


_NO_FIGURE = stop(
    "Do not put up a ladder here: no published distance covers this voltage. The utility or an "
    "engineer sets it.",
    "OSHA 1926.1408 table A, United States, ends at 1,000 kV.",
    "osha_1926_1408",
    HELD_BACK,
)
_TOO_NEAR = stop(
    "Do not work here: you, the ladder, the hose or a branch could come nearer to the line than "
    "a published distance. Only the utility or a qualified line-clearance arborist works there.",
    "A line can arc over without touch. The wire to a house can kill too.",
    "osha_1910_333",
    HELD_BACK,
)
_OVERLOAD = stop(
    "Do not climb: you and what you carry weigh more than the ladder's rating.",
    "The rating counts person, suit, tools, hose and comb together.",
    "ansi_a14",
    HELD_BACK,
)
_TOO_FLAT = stop(
    "Do not climb: the foot is too far out, and it slides away under you.",
    f"The ladder stands flatter than {_FLAT:.0f} degrees.",
    "ladder_angle_band",
    HELD_BACK,
)
_TOO_STEEP = stop(
    "Do not climb: the foot is too near the wall, and the ladder tips back with you.",
    f"The ladder stands steeper than {_STEEP:.0f} degrees.",
    "ladder_angle_band",
    HELD_BACK,
)
_TOO_SHORT = stop(
    "Do not climb: the rails end below the place where they must rest.",
    "The ladder as extended is shorter than the working length.",
    "osha_1926_1053",
    HELD_BACK,
)
_LOOK_UP = caution(
    f"{rules.text('power_line', 'look')} Lines hide behind leaves and along eaves, and a ladder "
    "reaches further when it falls.",
    "No line was given, so none was checked.",
    "osha_1910_333",
)
_WET = caution(
    f"{rules.text('power_line', 'look', 'falls')} A wet branch, hose, pole or suit conducts.",
    "The distance is to the nearest part of you and all you hold or lean on, also when it slips.",
    "osha_1910_333",
)
_METAL = caution(
    "Leave the metal ladder on the vehicle: near lines the rails must not conduct.",
    "OSHA 1910.333(c)(7), United States.",
    "osha_1910_333",
)
_UNKNOWN = caution(
    "The voltage is unknown, so the widest published distance is used. Ask the utility; it also "
    "covers or cuts off lines for you.",
    "A line does not show its voltage.",
    "osha_1926_1409",
)
_RESET = caution(
    "Set the foot again: it is off the one-in-four rule.",
    "Foot out by a quarter of the length from foot to top support.",
    "osha_1926_1053",
)
_SHORT_ABOVE = caution(
    "The rails do not stand far enough above the roof: tie the top and fix something to hold, or "
    "take a longer ladder.",
    "OSHA 1926.1053, United States: 3 ft (0.9 m) above the landing.",
    "osha_1926_1053",
)
_NEST_ABOVE = caution(
    "The nest is above what your hands reach. Do not stand higher or lean out: take a longer "
    "ladder, a platform, or a tube on a pole.",
    "Falls come from the top rungs and from leaning.",
    "ladder_reach",
)
_NEST_BELOW = caution(
    "The nest is lower than the ladder puts you: work it from lower rungs or from the ground.",
    "From less height you fall less far.",
    "ladder_reach",
)
_NO_MARK = caution(
    "A ladder without a readable mark counts as the lightest type. Do not use it for work.",
    "The mark says what it may carry.",
    "ansi_a14",
)
_NOT_FROM_HERE = caution(
    f"{rules.text('saw', 'ladder')} {rules.text('ladder')}",
    "A startle on a ladder is a fall.",
    "ladder_ours",
)
_TIE = caution(
    "Tie off the top, or have the second person, in a suit, hold the foot. Three points of "
    "contact, belt buckle between the rails, never in the dark.",
    "Ladder falls kill more workers each year than stings do.",
    "mmwr_ladders_2014",
)
_BOTH_WAYS = note(
    "The angle is for firm, level ground and a firm support. Soft ground, a slope, a round trunk "
    "or a gutter needs a platform or a tied ladder.",
    "The quarter rule says nothing about the ground.",
    "own_reasoning",
)
_JURISDICTION = note(
    "OSHA 1926.1408 (2010), 1926.1053 and 1910.333 (1990) and ANSI A14 are United States rules; "
    "DGUV 38 is German; EN 131 is European. Your own law and the utility's rule may be wider and "
    "then apply. Fall protection rules may forbid the ladder at all.",
    "The widest distance of those lists is used here.",
    "osha_1926_1408",
)

"""The rows of the briefing card: go conditions, limits, stop list, numbers to call."""

from __future__ import annotations

from typing import Any

from calc import rules, tables, units
from calc.declare import Choice, Number, Result
from calc.safety.briefing.inputs import Inputs
from calc.safety.briefing.parts import Parts

Row = dict[str, Any]

_DRINK = "NIOSH 2017, USA"
TWO = "Two trained people"
"""What the rule ``team`` asks for in its step ``second``, short enough for a card of one sheet."""


_UNSAID = {
    "signal": ("Stings", "A call from the spot has worked today. Without one: do not start."),
    "health": (
        "Stings",
        "Each in the suit asked: heart, asthma, mast cells, pregnancy. If yes: a doctor's word.",
    ),
    "group": (
        "People",
        "Animals named: no giant hornets; yellow-legged ones only as the authority says.",
    ),
    "around": ("People", "People and animals told, in, counted; ways in the outer zone closed."),
    "person": ("First days", "Who is new to this heat or suit keeps to the first days' minutes."),
}
"""What nobody said, and the condition that stands in its place."""


def conditions(x: Inputs, parts: Parts) -> list[Row]:
    """Return what must hold before the suit goes on, each with its part."""
    made = [
        {"part": part, "condition": text}
        for name, (part, text) in _UNSAID.items()
        if getattr(x, name) is None
    ]
    made += [
        {"part": "Stings", "condition": row["condition"]}
        for row in parts.stings.values["conditions"] or ()
    ]
    made += _heat_conditions(x, parts)
    if parts.ladder is not None:
        made.append({"part": "Ladder", "condition": f"{TWO}; top tied or foot held; load rated."})
    if x.saw == "used" or x.disturbance == "vibration":
        made.append(
            {
                "part": "Saw",
                "condition": f"{rules.text('saw', 'fly')} {TWO}; cut protection; dry cord.",
            }
        )
    if x.protector != "none":
        made.append({"part": "Noise", "condition": "Ear protection in place before the motor."})
    return made


def _heat_conditions(x: Inputs, parts: Parts) -> list[Row]:
    if parts.heat is None:
        text = "Minutes of work and rest taken from “Heat in the suit”, for this hour's weather."
        return [{"part": "Heat", "condition": text}]
    heat, made = parts.heat.values, []
    minutes = heat["work_minutes"]
    if minutes is None or minutes == 60:
        return []
    if heat["planned_spells"] and heat["planned_spells"] > 1:
        made.append(
            {
                "part": "Heat",
                "condition": f"{heat['planned_spells']} work periods with rests between; "
                f"{heat['planned_time']:.0f} min on site.",
            }
        )
    today = None if parts.days is None else parts.days.values["today_minutes"]
    fits = x.planned_minutes is not None and today is not None and x.planned_minutes <= today
    if x.person != "used" and today is not None and not fits:
        made.append(
            {
                "part": "First days",
                "condition": f"Today {today} min in heat and suit at most; the rest another day.",
            }
        )
    return made


def limits(parts: Parts) -> list[Row]:
    """Return the limits and times to read aloud, each with body, year and place."""
    heat, people, stings = parts.heat, parts.people, parts.stings
    made = []
    if heat is not None:
        made += [
            _row("Work in an hour, at most", heat.text("work_minutes"), "NIOSH 2016, USA"),
            _row("Rest in an hour, at least", heat.text("rest_minutes"), "NIOSH 2016, USA"),
            _row("Drink an hour", _both(heat, "water"), _DRINK),
            _row("Never drink more an hour than", _both(heat, "water_most"), _DRINK),
        ]
    made += [
        _row("Suits only, within", _both(people, "inner"), "our zone"),
        _row("Nobody outdoors, within", _both(people, "downwind"), "our zone"),
        _row("In, and windows shut, before", people.text("shut_from"), "our value"),
        _row("Normal again after", people.text("normal_after"), "our value"),
        _row("If they come, run", f"{_both(people, 'run')} or more", "Korean test"),
        _row("Check-in at least every", stings.text("check_in"), "our value"),
        _row("Help at your side after", stings.text("help_at"), "your area; USA 2015 if not typed"),
        _row("Middle time to arrest", f"{_arrest():.0f} min", "Pumphrey 2000, UK"),
        _row("If no better, adrenaline again", stings.text("second_dose"), "MHRA 2023; label"),
    ]
    if parts.ladder is not None:
        made += [
            _row("Clear of power lines", _both(parts.ladder, "clearance"), "widest rule, OSHA"),
            _row("Ladder foot out", _both(parts.ladder, "foot_out"), "one in four, OSHA"),
        ]
    return made


def _row(what: str, value: str, by: str) -> Row:
    return {"what": what, "value": value, "by": by}


def _both(result: Result, name: str) -> str:
    si, us = result.text(name), result.text(name, customary=True)
    return si if si == us else f"{si} ({us})"


def _arrest() -> float:
    return float(tables.row("time_courses", "venom")["minutes"])


def stop_list(parts: Parts) -> list[Row]:
    """Return what ends the job at once, read aloud in every run."""
    adult, frail = (parts.stings.values[f"hospital_{who}"] for who in ("adult", "frail"))
    made = [
        ("Stung and unwell", rules.text("sting_emergency", "flat", "call")),
        ("Confused in heat or in the suit", rules.text("heat_stroke", "cool")),
        ("Dizzy, sick, headache, cramps", "out, suit open, done for the day"),
        ("Stung in the mouth", rules.text("sting_emergency", "mouth")),
        ("Sting or venom in an eye", rules.text("eye_venom", "wash")),
        (f"{adult} stings or more; old, ill, pregnant: {frail}", "hospital today, even if well"),
        ("Insects inside suit or veil", rules.text("suit_breach", "shut")),
        ("A person or animal in the zone", "bring them out; the vacuum keeps running"),
        ("Missed check-in, phone or watcher gone", "stop, come out"),
        ("Honey bees, bumble bees, bats, nesting birds", "close up, stop, ask"),
        ("Wire, asbestos, droppings, rotten wood", "stop; the licensed trade"),
        ("Thunder, dusk without light, wind that moves the ladder", "stop"),
    ]  # fmt: skip
    return [{"sign": sign, "do": do} for sign, do in made]


def typed(x: Inputs) -> list[Row]:
    """Return what the card goes by, so that a printed one carries its own inputs."""
    made = []
    for each in x.declared:
        value = getattr(x, each.name)
        if value is None:
            continue
        if isinstance(each, Choice):
            label = next(option.label for option in each.options if option.value == value)
            made.append({"asked": each.label, "answer": label})
        elif isinstance(each, Number):
            made.append({"asked": each.label, "answer": _amount(each, value)})
    return made


def _amount(each: Number, value: float) -> str:
    shown = [
        f"{units.show(units.convert(value, each.unit, unit), each.digits_in(unit))} "
        f"{units.label(unit)}".strip()
        for unit in dict.fromkeys((each.unit, each.customary or each.unit))
    ]
    return shown[0] if len(shown) == 1 else f"{shown[0]} ({shown[1]})"


def numbers() -> list[Row]:
    """Return the local numbers, left blank to write in."""
    blank = "____________________"
    return [
        {"who": who, "number": blank}
        for who in (
            "Emergency number here",
            "Hospital, minutes by car",
            "Poison centre",
            "Address, gate, GPS",
            "Meeting point for the ambulance",
            "Watcher; caller",
            "Client",
            "Utility; wildlife authority",
        )
    ]

"""The core of "Sting plan": one site judged by published time courses and our rules."""

from __future__ import annotations

import math
from typing import Any

from calc import rules as book
from calc import tables
from calc.declare import Answer
from calc.safety.levels import stop
from calc.safety.sting_plan import facts
from calc.safety.sting_plan.cautions import HELD_BACK, standing
from calc.safety.sting_plan.charts import help_chart
from calc.safety.sting_plan.inputs import Inputs
from calc.safety.sting_plan.rules import Rule, Site, rules


def core(x: Inputs) -> Answer:
    """Judge one site; see the declaration for units."""
    arrives = facts.ambulance_minutes(x.area) if x.response is None else x.response
    site = Site(
        workers=x.workers,
        helpers=x.helpers,
        household=x.household,
        reaction=x.reaction,
        health=x.health,
        home_reaction=x.home_reaction,
        home_place=x.home_place,
        adrenaline=x.adrenaline,
        devices=x.devices or 0,  # none where there is no adrenaline
        trained=x.trained,
        signal=x.signal,
        help_at=facts.help_minutes(arrives, x.walk_in),
        eye_water=math.inf if x.water == "tap" else x.bottles or 0.0,
    )
    found = rules(site)
    values = {
        "decision": decision(found),
        "help_at": site.help_at,
        "margin": facts.median_arrest("venom") - site.help_at,
        "check_in": tables.row("zone_times", "check_in")["low"],
        "conditions": [
            {"condition": rule.text, "why": rule.reason}
            for rule in found
            if rule.level == "condition"
        ],
        "in_hand": _in_hand(site, x.water),
        "roles": _roles(site),
        "call": CALL,
        "second_dose": (_minutes("second_least"), _minutes("second_most")),
        "printed": _printed(x.weight),
        "observation": _observation(),
        "hospital_adult": facts.adult_count(x.kin),
        "hospital_frail": facts.adult_count(x.kin, frail=True),
        "hospital_lightest": None if x.lightest is None else facts.hospital_from(x.kin, x.lightest),
        "eye_minutes": tables.row("eye_washing", "ansi")["minutes"],
        "eye_litres": facts.eye_litres(),
        "bottle_minutes": None if x.bottles is None else facts.eye_minutes(x.bottles),
        "signs": [
            {"part": row["part"], "signs": row["signs"], "do": row["do"]}
            for row in tables.rows("anaphylaxis_signs")
        ],
    }
    stops = [
        stop(rule.text, rule.reason, rule.source, HELD_BACK)
        for rule in found
        if rule.level == "stop"
    ]
    return Answer(
        values=values,
        cautions=[*stops, *standing(site, x.reaction, x.area)],
        charts=[help_chart(site.help_at, arrives, x.walk_in)],
    )


CALL = (
    "Anaphylaxis, wasp sting, adrenaline given at (time). Street, number, GPS, gate, "
    "where someone waits to wave you in. Wasps are flying: come to the meeting point first, not "
    "to the nest."
)


def decision(found: list[Rule]) -> str:
    """Say the decision in words, never that something is safe."""
    if any(rule.level == "stop" for rule in found):
        return "Stop: do not start."
    if found:
        count = len(found)
        return (
            f"Go on only with conditions: {count} {'is' if count == 1 else 'are'} open, see below."
        )
    return "Go on as planned: nothing this plan asks for is missing."


def _minutes(key: str) -> float:
    return float(tables.row("time_courses", key)["minutes"])


def _in_hand(site: Site, water: str | None) -> list[dict[str, str]]:
    for_eyes = {"tap": "running tap", "bottles": f"{site.eye_water:g} L in bottles"}
    usable = "in date, helper trained" if site.usable else "not usable by the helper as things are"
    return [
        {"item": "Phone, charged, number dialled in", "state": _SIGNAL[site.signal]},
        {"item": "Adrenaline as prescribed", "state": f"{site.devices}, {usable}"},
        {"item": "Water for eyes", "state": for_eyes.get(water or "", "name it now")},
        {"item": "Address and GPS on paper", "state": "write it now"},
        {"item": "Blanket, scissors for the suit, watch", "state": "beside the watcher"},
        {"item": "The person's own action plan", "state": "on top"},
    ]


_SIGNAL = {
    "mobile": "mobile, tried",
    "satellite": "satellite or radio, tried",
    "landline": "landline in the house",
    "none": "no signal",
}


def _roles(site: Site) -> list[dict[str, str]]:
    watcher = "The watcher" if site.helpers else "The named adult"
    made = [
        {"who": "Everyone", "does": book.text("sting_emergency", "out")},
        {"who": watcher, "does": book.text("sting_emergency", "flat", "adrenaline", "suit")},
        {"who": watcher, "does": book.text("sting_emergency", "call", "stay", "second")},
        {"who": "Whoever is strongest", "does": book.text("sting_emergency", "cpr")},
    ]
    if site.helpers > 1 or site.household:
        made.append({"who": "A third adult", "does": "goes to the road, waves the ambulance in"})
    if site.workers > 1:
        made.append({"who": "Other workers", "does": "close the hole, leave, count heads"})
    return made


def _printed(weight: float | None) -> list[dict[str, str]]:
    if weight is None:
        return []
    made = [{"where": where, "device": facts.dose_words(weight, where)} for where in facts.LABELS]
    in_guide = facts.printed_dose(weight, facts.CHILDREN)
    if in_guide is not None and in_guide != facts.printed_dose(weight, facts.LABELS[0]):
        made.append({"where": facts.CHILDREN, "device": facts.dose_words(weight, facts.CHILDREN)})
    return made


def _observation() -> list[dict[str, Any]]:
    cases = (
        ("one dose, quick and full recovery", 1, False, False),
        ("two doses", 2, False, False),
        ("more than two doses", 3, True, False),
        ("one dose, far from care or late at night", 1, False, True),
    )
    return [
        {
            "case": words,
            "rcuk": facts.rcuk_hours(doses, far_or_late=far),
            "ascia": facts.ascia_hours(),
            "jtfpp": facts.jtfpp_hours(doses, severe),
        }
        for words, doses, severe, far in cases
    ]

"""Sting plan: who may work, who calls, how long help takes, what must be in hand."""

from __future__ import annotations

import math
from typing import Any

from calc import rules as book
from calc import tables
from calc.declare import Answer, Axis, Calculator, Chart, Series
from calc.safety import sting_plan_facts as facts
from calc.safety.levels import stop
from calc.safety.sting_plan_cautions import HELD_BACK, standing
from calc.safety.sting_plan_inputs import INPUTS
from calc.safety.sting_plan_outputs import OUTPUTS
from calc.safety.sting_plan_rules import Rule, Site, rules


def core(
    *,
    workers: int,
    helpers: int,
    household: int,
    reaction: str,
    health: str,
    home_reaction: str,
    home_place: str | None,
    adrenaline: str,
    devices: int | None,
    weight: float | None,
    trained: str | None,
    signal: str,
    area: str,
    response: float | None,
    walk_in: float,
    kin: str,
    lightest: float,
    water: str,
    bottles: float | None,
) -> Answer:
    """Judge one site by published time courses and our rules; see the declaration for units."""
    arrives = facts.ambulance_minutes(area) if response is None else response
    site = Site(
        workers=workers,
        helpers=helpers,
        household=household,
        reaction=reaction,
        health=health,
        home_reaction=home_reaction,
        home_place=home_place,
        adrenaline=adrenaline,
        devices=devices or 0,
        trained=trained,
        signal=signal,
        help_at=facts.help_minutes(arrives, walk_in),
        eye_water=math.inf if bottles is None else bottles,
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
        "in_hand": _in_hand(site),
        "roles": _roles(site),
        "call": CALL,
        "second_dose": (_minutes("second_least"), _minutes("second_most")),
        "printed": _printed(weight),
        "observation": _observation(),
        "hospital_adult": facts.adult_count(kin),
        "hospital_frail": facts.adult_count(kin, frail=True),
        "hospital_lightest": facts.hospital_from(kin, lightest),
        "eye_minutes": tables.row("eye_washing", "ansi")["minutes"],
        "eye_litres": facts.eye_litres(),
        "bottle_minutes": None if bottles is None else facts.eye_minutes(bottles),
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
        cautions=[*stops, *standing(site, reaction, area)],
        charts=[_chart(site, arrives, walk_in)],
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


def _in_hand(site: Site) -> list[dict[str, str]]:
    bottles = "running tap" if math.isinf(site.eye_water) else f"{site.eye_water:g} L in bottles"
    usable = "in date, helper trained" if site.usable else "not usable by the helper as things are"
    return [
        {"item": "Phone, charged, number dialled in", "state": _SIGNAL[site.signal]},
        {"item": "Adrenaline as prescribed", "state": f"{site.devices}, {usable}"},
        {"item": "Water for eyes", "state": bottles},
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


def _chart(site: Site, arrives: float, walk_in: float) -> Chart:
    longest = max(30.0, arrives + 5)
    x = tuple(longest * step / 10 for step in range(11))
    limit = facts.median_arrest("venom")
    return Chart(
        name="help",
        title="Sting to help, against the middle time to arrest",
        alt=f"Help is at your side {site.help_at:.0f} minutes after the sting; half of the fatal "
        f"cases had arrested by {limit:.0f} minutes.",
        x=Axis(label="Ambulance at the address after the call", unit="min", low=0, high=longest),
        y=Axis(label="Minutes after the sting", unit="min", low=0),
        series=(
            Series(
                label="help at your side",
                x=x,
                y=tuple(facts.help_minutes(each, walk_in) for each in x),
            ),
            Series(label="middle time to arrest", x=x, y=(limit,) * len(x), style="dashed"),
            Series(label="this job", x=(arrives,), y=(site.help_at,), style="points"),
        ),
    )


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
    inputs=INPUTS,
    outputs=OUTPUTS,
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

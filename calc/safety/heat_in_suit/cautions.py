"""What a reader must know before the numbers of "Heat in the suit"."""

from __future__ import annotations

from dataclasses import dataclass

from calc import rules, tables, units
from calc.declare import Caution
from calc.safety.heat_estimate import CALM
from calc.safety.levels import caution, note, stop

HELD_BACK = (
    "work_minutes",
    "rest_minutes",
    "work_minutes_range",
    "planned_spells",
    "planned_time",
)
"""Results that a stop withholds."""


@dataclass(frozen=True, kw_only=True, slots=True)
class Findings:
    """What the core found, as far as a caution hangs on it."""

    clothing: str
    acclimatised: bool
    limit_name: str
    measured: bool
    in_sun: bool
    covered: bool  # the clothing has an adjustment value
    still_over: bool  # over the limit even sitting still in the closed suit
    rest_over: bool  # over the limit even at the place of rest
    minutes: int
    over: bool  # over the limit for steady work
    rate_crosses: bool  # within, but over if the work is 30 % harder
    wbgt_crosses: bool  # within, but over at the top of the WBGT range
    top_still_over: bool  # not so, but so at the top of the WBGT range
    planned_over: bool
    rest_guessed: bool
    calm: bool  # so little wind that the estimate hangs on it
    wind: float | None  # as typed, m/s
    wind_used: float | None


def cautions(found: Findings) -> list[Caution]:
    """Return the cautions of one run, at least three of them in every run."""
    return [
        *_stops(found),
        _SIGNS,
        *_about_the_limit(found),
        *_about_the_suit(found),
        *_about_the_person(found),
        *_about_the_weather(found),
        _WATER,
        _BODY,
        _JURISDICTION,
    ]


def _stops(found: Findings) -> list[Caution]:
    if not found.covered:
        return [_ENCAPSULATED]
    if found.rest_over:
        return [_REST_OVER]
    if found.still_over:
        return [_STILL_OVER]
    return [_NO_MINUTE] if found.minutes < 1 else []


def _about_the_limit(found: Findings) -> list[Caution]:
    made = []
    if found.covered and found.over and found.minutes >= 1:
        made.append(
            Caution(
                level="caution",
                text=f"Steady work is over the published limit ({found.limit_name}). "
                "Keep to the work and rest minutes, or come back in a cooler hour.",
                reason="The effective WBGT is above the limit for this work rate.",
                source="niosh_2016",
            )
        )
    if found.covered and found.rate_crosses:
        made.append(_RATE_CROSSES)
    if found.covered and found.wbgt_crosses:
        made.append(_WBGT_CROSSES)
    if found.covered and found.minutes >= 1 and found.top_still_over:
        made.append(_TOP_STILL_OVER)
    if found.covered and found.planned_over and found.minutes >= 1:
        made.append(_PLANNED)
    if found.covered and not found.over:
        made.append(_BREAKS)
    return made


def _about_the_suit(found: Findings) -> list[Caution]:
    if found.clothing == "sting_suit":
        return [_UNMEASURED]
    if found.clothing == "vapour_barrier":
        return [_VAPOUR]
    return []


def _about_the_person(found: Findings) -> list[Caution]:
    return [_USED_TO_IT] if found.acclimatised else [_NEW]


def _about_the_weather(found: Findings) -> list[Caution]:
    made = []
    if found.in_sun:
        made.append(_INDEX_IN_SUN)
    if found.rest_guessed:
        made.append(_REST_GUESSED)
    if found.calm:
        made.append(_calm(found))
    if not found.measured:
        made.append(_ESTIMATE)
    return made


def _calm(found: Findings) -> Caution:
    raised = found.wind is not None and found.wind_used is not None and found.wind < found.wind_used
    least = (
        f" Your {found.wind:g} m/s counts as {found.wind_used:g} m/s, the least that the method "
        "takes."
        if raised
        else ""
    )
    return caution(
        f"Calm air: a little less wind makes it much hotter.{least} Plan by the top of the WBGT "
        "range, which is for still air, or measure.",
        f"At {CALM:g} m/s or less the estimate changes fastest with the wind, and the method is "
        "least sure.",
        "heat_calm_ours",
    )


_ENCAPSULATED = stop(
    "No published figure covers a fully closed suit. Do not plan work in one with this page; "
    "ask an occupational hygienist.",
    "The clothing adjustment list leaves fully encapsulating suits out.",
    "acgih_clothing",
    (*HELD_BACK, "effective_wbgt", "clothing_adjustment", "margin", "rest_effective"),
)
_REST_OVER = stop(
    "Do not start: even resting at your place of rest is over the published limit.",
    "Rest there does not cool you, so no share of work meets the limit.",
    "niosh_2016",
    hides=HELD_BACK,
)
_STILL_OVER = stop(
    "Do not suit up: even sitting still in the closed suit is over the published limit. "
    "Wait for a cooler hour, find shade, or wear lighter clothing.",
    "At the rest rate the effective WBGT is above the limit: the body gains heat all the time "
    "the suit is closed.",
    "niosh_2016",
    hides=HELD_BACK,
)
_NO_MINUTE = stop(
    "Do not start: the published limit leaves no whole minute of this work in an hour.",
    "The limit is reached at once; wait for a cooler hour or do lighter work.",
    "niosh_2016",
    hides=HELD_BACK,
)
_SIGNS = caution(
    rules.text("heat_stroke", "signs", "call", "cool") + " Stop at dizziness, nausea, headache, "
    "weakness or cramps: leave the zone, open the suit, cool down, do not stay alone.",
    "Heat stroke kills. No number here replaces watching each other.",
    "belval_2018",
)
_RATE_CROSSES = caution(
    "Within the limit only if the work is no harder than you think: a third harder is over it.",
    "Metabolic rates from tables can be off by 30 percent; at that rate the limit is crossed.",
    "niosh_metabolic_error",
)
_WBGT_CROSSES = caution(
    "Within the limit by less than the estimate of the WBGT can be wrong. Plan as if over it, "
    "or measure.",
    "The upper end of the WBGT range is over the limit.",
    "liljegren_2008",
)
_TOP_STILL_OVER = caution(
    "If the WBGT is at the upper end of its range, even sitting still in the suit is over the "
    "limit. Measure it, or keep the work periods short and open the suit between them.",
    "The estimate can be wrong by more than the room that is left.",
    "liljegren_2008",
)
_PLANNED = caution(
    "The work you plan does not fit in one go: split it, with the rest minutes between.",
    "The planned minutes are more than the work minutes of an hour.",
    "niosh_2016",
)
_BREAKS = caution(
    "Within the limit is no promise: stop to drink and to look at each other every 15 to 20 "
    "minutes all the same.",
    "The limit is for a healthy, rested, watered adult; people differ.",
    "niosh_hydration_2017",
)
_SUIT = tables.row("clothing_adjustment", "sting_suit")["adjustment"]
_MOST = tables.row("water", "most")["amount"]
_FIRST_DAY = tables.row("acclimatization", "day_1")["new"]

_UNMEASURED = caution(
    f"No one has measured what a sting suit with veil adds. The +{_SUIT:.0f} °C here is our "
    "planning value and can be too low.",
    "It adds two woven layers and a hood from the list for work clothing; a veil also cuts wind.",
    "sting_suit_clothing_value",
)
_VAPOUR = caution(
    "In a suit that stops vapour, sweat cannot cool you. The adjustment does not cover taped or "
    "sealed suits; use it for short periods only, with someone watching.",
    "The list's value is for limited-use vapour-barrier coveralls and varies with humidity.",
    "acgih_clothing",
)
_NEW = caution(
    f"New to the heat, or first wearing of the suit: do {_FIRST_DAY:.0f} percent of the usual "
    f"time in heat on the first day and {_FIRST_DAY:.0f} percent more each day.",
    "Nearly half of the deaths from heat at work fall on the first day.",
    "niosh_osha_acclimatization",
)
_USED_TO_IT = caution(
    "Used to heat means a week or more of work in this heat and in this suit. After a week away, "
    "in the first hot spell or in a new suit you count as new.",
    "The higher limit (REL) holds only for acclimatized people.",
    "acclimatisation_ours",
)
_INDEX_IN_SUN = note(
    "The heat index is for shade and light wind: full sun can add up to 15 °F (8 °C) to it.",
    "It leaves out sun, clothing and work; the WBGT has them.",
    "nws_chart_text",
)
_REST_GUESSED = note(
    "No WBGT was given for the place of rest, so the one of the work place is used there, "
    "without the suit.",
    "Measure where you rest to see what shade is worth.",
    "own_reasoning",
)
_ESTIMATE = note(
    "The WBGT is estimated from weather. Walls, roofs, hot ground and attics can make the place "
    "hotter than the weather says: there, measure.",
    "The method is for open ground and clear sky only.",
    "liljegren_2008",
)
_WATER = note(
    f"Drink on schedule, but never more than {_MOST:.0f} fl oz "
    f"({units.convert(_MOST, 'floz', 'L'):.1f} L) in an hour. Eat your meals: they replace the "
    "salt.",
    "Too much water thins the salt in the blood: a medical emergency.",
    "niosh_hydration_2017",
)
_BODY = note(
    "Age over 60, illness, overweight, alcohol in the last 24 hours, pregnancy, earlier heat "
    "illness and medicines (allergy tablets, water tablets, blood pressure, mood) lower what you "
    "can bear: ask your doctor, and stop no tablet on your own.",
    "The limits are for healthy adults.",
    "niosh_risk_factors_2017",
)
_JURISDICTION = note(
    "The limits are NIOSH 2016, a United States recommendation. Your country's law or another "
    "body's limits may differ and then apply.",
    "RAL for people not used to heat, REL for people used to it, both as means over one hour.",
    "niosh_2016",
)

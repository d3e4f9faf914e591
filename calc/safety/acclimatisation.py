"""Getting used to the heat: minutes in the suit for each day, by the published shares."""

from __future__ import annotations

import math
from typing import Any

from calc import rules, tables
from calc.declare import Answer, Axis, Calculator, Chart, Choice, Count, Number, Option, Out, Series
from calc.safety.acclimatisation_cautions import cautions

SCHEDULE = {
    "new_heat": "new",
    "new_suit": "new",
    "hot_spell": "new",
    "back": "new",
    "used": None,
}
"""Which column of the table of shares is taken for whom; None where neither is.

The bodies differ for who comes back and for a hot spell: the lower shares are taken, and a caution
shows the others."""


def share(schedule: str, day: int) -> float:
    """Return the share of the usual time in heat on a day of the schedule.

    Parameters
    ----------
    schedule : ``new`` (20 percent more each day) or ``returning`` (50, 60, 80, 100: printed for
        people who know the job, and not taken here)
    day : 1 for the first day in heat; after the last day of the schedule its share holds on

    Returns
    -------
    percent

    Source: NIOSH and OSHA (key ``niosh_osha_acclimatization``), United States.
    """
    days = tables.rows("acclimatization")
    return float(days[min(max(day, 1), len(days)) - 1][schedule])


def minutes(full: float, percent: float) -> int:
    """Return the minutes of a day, ``full * percent / 100``, rounded down."""
    return math.floor(full * percent / 100 + 1e-9)


def spells(in_suit: int, work: int | None) -> tuple[int | None, int | None]:
    """Return work periods and minutes on site, with the rest of each hour between two.

    ``work`` is the work minutes in an hour; None where nobody gave them, or zero of them.
    """
    if not work:
        return None, None
    count = math.ceil(in_suit / work)
    return count, in_suit + max(count - 1, 0) * (60 - work)


def core(
    *,
    person: str,
    state: str,
    full_minutes: float,
    day: int,
    work_minutes: int | None,
) -> Answer:
    """Spread the usual time in heat over the first days; see the declaration for units."""
    schedule = SCHEDULE[person]
    rows = _rows(schedule, full_minutes, work_minutes)
    percent = 100.0 if schedule is None else share(schedule, day)
    today = minutes(full_minutes, percent)
    count, on_site = spells(today, work_minutes)
    values: dict[str, Any] = {
        "today_minutes": today,
        "today_share": percent,
        "full_from": next(row["day"] for row in rows if row["share"] >= 100),
        "spells": count,
        "on_site": on_site,
        "signs": SIGNS,
        "buddy": BUDDY,
        "cooling": COOLING,
        "plan": rows,
    }
    found = cautions(person, state, no_minutes=work_minutes == 0)
    stopped = any(caution.level == "stop" for caution in found)
    if stopped:
        values["plan"] = []
    return Answer(
        values=values,
        cautions=found,
        charts=() if stopped else (_chart(rows, day, today),),
    )


def _rows(schedule: str | None, full: float, work: int | None) -> list[dict[str, Any]]:
    made = []
    for day in range(1, len(tables.rows("acclimatization")) + 1):
        percent = 100.0 if schedule is None else share(schedule, day)
        in_suit = minutes(full, percent)
        made.append(
            {
                "day": day,
                "share": percent,
                "in_suit": in_suit,
                "in_spells": spells(in_suit, work)[0],
            }
        )
    return made


def _chart(rows: list[dict[str, Any]], day: int, today: int) -> Chart:
    x = tuple(float(row["day"]) for row in rows)
    return Chart(
        name="days",
        title="Minutes in heat, day by day",
        alt=f"Minutes in heat rise over the first days; on day {day} they are {today}.",
        x=Axis(label="Day in heat", low=0, high=max(6, min(day, 14))),
        y=Axis(label="In heat and suit", unit="min", low=0),
        series=(
            Series(label="plan", x=x, y=tuple(float(row["in_suit"]) for row in rows)),
            Series(label="today", x=(float(min(day, 14)),), y=(float(today),), style="points"),
        ),
    )


SIGNS = (
    "Dizzy, sick, headache, cramps, weak: out of the zone, suit open, cool down, done for the "
    "day. " + rules.text("heat_stroke", "signs", "call")
)
BUDDY = (
    "At each drink, every 15 to 20 minutes: name and plan for the next step, clear answer, "
    "steady walk, sweat on the face, and the time called out."
)
COOLING = (
    "Shade, suit open or off, water or ice on the skin and moving air. Heat stroke: "
    + rules.text("heat_stroke", "cool", "until")
)

acclimatisation_plan = Calculator(
    name="acclimatisation_plan",
    title="Getting used to the heat",
    part="safety",
    purpose="How long in heat and suit on each of the first days, by the published shares.",
    inputs=(
        Choice(
            name="person",
            label="Who",
            meaning="If two fit, take the one higher in the list.",
            options=(
                Option(value="new_heat", label="New to work in heat"),
                Option(value="new_suit", label="First days in this suit"),
                Option(value="hot_spell", label="First hot spell of the year"),
                Option(value="back", label="Experienced, back after a week or more"),
                Option(value="used", label="Used to this heat and this suit"),
            ),
            usual="new_suit",
        ),
        Choice(
            name="state",
            label="Today",
            meaning="Ask it each morning, of each person.",
            options=(
                Option(value="well", label="Rested and well"),
                Option(value="low", label="Slept badly, drank alcohol or missed meals"),
                Option(value="ill", label="Ill, fever, vomiting or diarrhoea"),
                Option(value="signs", label="Signs of heat illness yesterday or today"),
            ),
            usual="well",
        ),
        Number(
            name="full_minutes",
            label="Usual time in heat on a full day",
            meaning="Minutes in heat and suit, rests not counted, of someone used to it.",
            unit="min",
            low=10,
            high=480,
            why="more than a working day is no plan",
            source="own_reasoning",
            usual=120,
            step=10,
        ),
        Count(
            name="day",
            label="Which day in the heat",
            meaning="1 is the first day. Count again from 1 after a week away.",
            low=1,
            high=60,
            why="after two months in the heat the first days are over",
            source="own_reasoning",
            usual=1,
        ),
        Count(
            name="work_minutes",
            label="Work in an hour, at most",
            meaning="From “Heat in the suit”, for this person and this weather.",
            optional=True,
            unit="min",
            low=0,
            high=60,
            why="an hour has 60 minutes",
            source="arithmetic",
            usual=None,
        ),
    ),
    outputs=(
        Out(
            name="today_minutes",
            label="Today in heat and suit, at most",
            meaning="Usual time times today's share, rounded down; the heat limit holds as well.",
            kind="count",
            unit="min",
            main=True,
        ),
        Out(
            name="today_share",
            label="Share of the usual time today",
            meaning="From the table of shares.",
            unit="percent",
            main=True,
        ),
        Out(
            name="full_from",
            label="Full time from day",
            meaning="First day with the whole usual time.",
            kind="count",
        ),
        Out(
            name="spells",
            label="Work periods today",
            meaning="Pieces, none longer than the work minutes of an hour.",
            kind="count",
        ),
        Out(
            name="on_site",
            label="Minutes on site today",
            meaning="Work periods with the rests between them.",
            kind="count",
            unit="min",
        ),
        Out(
            name="buddy",
            label="What the second person checks",
            meaning="Each check ends the work period if one answer is wrong.",
            kind="text",
        ),
        Out(
            name="signs",
            label="Stop signs",
            meaning="Any one of them ends the work of the day.",
            kind="text",
        ),
        Out(
            name="cooling",
            label="Cooling",
            meaning="Set it up in the shade before the suit goes on.",
            kind="text",
        ),
        Out(
            name="plan",
            label="Day by day",
            meaning="The first days of the schedule.",
            kind="table",
            columns=(
                Out(name="day", label="Day", meaning="Day in heat.", kind="count"),
                Out(name="share", label="Share", meaning="Of the usual time.", unit="percent"),
                Out(
                    name="in_suit",
                    label="In heat and suit",
                    meaning="Minutes, rounded down.",
                    kind="count",
                    unit="min",
                ),
                Out(
                    name="in_spells",
                    label="Work periods",
                    meaning="By the work minutes of an hour.",
                    kind="count",
                ),
            ),
        ),
    ),
    core=core,
    sources=(
        "niosh_osha_acclimatization",
        "osha_acclimatizing",
        "acclimatisation_ours",
        "niosh_hydration_2017",
        "niosh_first_aid",
        "acgih_strain_signs",
    ),
    formula=(
        (
            r"t_\mathrm{day} = t_\mathrm{full}\, s_\mathrm{day}",
            "minutes of a day; s is 20, 40, 60, 80, 100 %, also after a week away and in the "
            "first hot spell",
            "osha_acclimatizing",
        ),
        (
            r"n = \lceil t_\mathrm{day} / w \rceil,\qquad T = t_\mathrm{day} + (n-1)(60 - w)",
            "work periods and minutes on site, w being the work minutes in an hour",
            "arithmetic",
        ),
    ),
    assumptions=(
        "The days follow each other; a week away starts the schedule again.",
        "The shares are of time in heat. They do not replace the limit of the hour.",
        "A healthy person; heart trouble, medicines and age ask for a slower schedule.",
    ),
)

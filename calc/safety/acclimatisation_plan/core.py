"""The core of "Getting used to the heat": from what was asked to what is answered."""

from __future__ import annotations

from typing import Any

from calc import rules
from calc.declare import Answer, Axis, Chart, Series
from calc.errors import required
from calc.safety.acclimatisation_plan.cautions import cautions
from calc.safety.acclimatisation_plan.inputs import Inputs
from calc.safety.acclimatisation_plan.schedule import SCHEDULE, days, minutes, share, spells

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


def core(x: Inputs) -> Answer:
    """Spread the usual time in heat over the first days; see the declaration for units."""
    schedule = SCHEDULE[x.person]
    rows = days(schedule, x.full_minutes, x.work_minutes)
    # To someone used to the heat all days are alike: nobody asks which it is.
    day = 1 if schedule is None else required("day", x.day)
    percent = 100.0 if schedule is None else share(schedule, day)
    today = minutes(x.full_minutes, percent)
    count, on_site = spells(today, x.work_minutes)
    found = cautions(x.person, x.state, no_minutes=x.work_minutes == 0)
    stopped = any(caution.level == "stop" for caution in found)
    values: dict[str, Any] = {
        "today_minutes": today,
        "today_share": percent,
        "full_from": next(row["day"] for row in rows if row["share"] >= 100),
        "spells": count,
        "on_site": on_site,
        "signs": SIGNS,
        "buddy": BUDDY,
        "cooling": COOLING,
        "plan": [] if stopped else rows,
    }
    return Answer(
        values=values,
        cautions=found,
        charts=() if stopped else (_chart(rows, day, today),),
    )


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

"""The core of "Follow-up": from what was asked to what is answered."""

from __future__ import annotations

from datetime import date, timedelta

from calc import tables
from calc.biology.season_calendar import MONTHS
from calc.clients import aftercare
from calc.clients.follow_up import cautions as say
from calc.clients.follow_up import closing
from calc.clients.follow_up.icalendar_text import Event, icalendar_text
from calc.clients.follow_up.inputs import Inputs
from calc.declare import Answer, Axis, Chart, Series
from calc.method.mesh import holding
from calc.method.stragglers_times import share_home, wait_for_share

_WEEK = ("Mon", "Tue", "Wed", "Thu", "Fri", "Sat", "Sun")


def core(x: Inputs) -> Answer:
    """Compute dates, rules and reminders; see the declaration for units."""
    job = date.fromisoformat(x.date)
    counts = closing.Counts(x.first_count, x.second_count, x.indoors == "yes")
    looks = aftercare.looks(job)
    last = aftercare.last_emergence(job, x.animal)
    found = say.Findings(
        reason=closing.call_back(counts),
        counts=counts,
        may_seal=closing.may_seal(counts),
        hole=x.hole,
        mesh=None if x.mesh is None else holding(x.mesh, aftercare.GROUPS[x.animal][2]),
        comb=x.comb,
        mild=x.mild != "frost",
        last_emergence=day_text(last),
        next_look=day_text(looks[0 if x.first_count is None else 1]),
    )
    spring = aftercare.spring_day(job, x.animal, x.half == "south")
    to_do = _to_do(looks, None if x.comb == "taken" else last, spring)
    life = float(tables.row("aftercare", "life")["days"])
    values = {
        "verdict": say.verdict(found),
        "seal_from": say.seal_text(found),
        "looks": [{"date": day_text(when), "what": what} for when, what in to_do],
        "half_gone": wait_for_share(0.5, life),
        "most_gone": wait_for_share(0.9, life),
        "all_gone": None if x.left_out is None else closing.straggler_days(x.left_out),
        "emergence": None if x.comb == "taken" else aftercare.sealed_days(x.animal),
        "last_emergence": "none expected" if x.comb == "taken" else day_text(last),
        "mesh_words": None if found.mesh is None else say.MESH[found.mesh],
        "spring": day_text(spring),
        "calendar": icalendar_text(
            [Event(day=when, summary=f"Wasp job: {what}") for when, what in to_do], job
        ),
    }
    return Answer(values=values, cautions=say.cautions(found), charts=[_chart(life)])


def day_text(day: date) -> str:
    """Write a date as ``Thu 20 Aug 2026``."""
    return f"{_WEEK[day.weekday()]} {day.day} {MONTHS[day.month - 1]} {day.year}"


def _to_do(
    looks: tuple[date, date, date], last: date | None, spring: date
) -> list[tuple[date, str]]:
    made = [(when, say.LOOK_WORDS[key]) for when, key in zip(looks, aftercare.LOOKS, strict=True)]
    if last is not None:
        made.append((last, "Last brood out about now: take the comb out."))
    made.append(
        (spring - timedelta(days=14), "Close cracks and screen vents before queens search.")
    )
    made.append((spring + timedelta(days=61), "Weekly look under eaves and in the shed begins."))
    return sorted(made)


def _chart(life: float) -> Chart:
    x = tuple(0.5 * each for each in range(61))
    looks = tuple(float(each) for each in aftercare.look_days())

    def still(days: float) -> float:
        return 100 * (1 - share_home(days, life)) if days else 100.0

    at = ", ".join(f"{still(each):.0f} % on day {each:.0f}" for each in looks)
    return Chart(
        name="stragglers",
        title="Those left out",
        alt=f"Share of the adults left out that are still about falls with the days: {at}.",
        x=Axis(label="After the job", unit="day", low=0, high=30),
        y=Axis(label="Still about", unit="percent", low=0, high=100),
        series=(
            Series(label="by tagged hornets' active life", x=x, y=tuple(map(still, x))),
            Series(label="looks", x=looks, y=tuple(map(still, looks)), style="points"),
        ),
    )

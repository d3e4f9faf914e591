"""Follow-up: looks, stragglers, sealing, next spring, and reminders for a calendar."""

from __future__ import annotations

from datetime import date, timedelta

from calc import tables
from calc.biology.season_calendar import MONTHS
from calc.clients import follow_up_rules as rules
from calc.clients import follow_up_words as say
from calc.clients.follow_up_forms import INPUTS, OUTPUTS
from calc.clients.icalendar_text import Event, icalendar_text
from calc.declare import Answer, Axis, Calculator, Chart, Series
from calc.errors import InputError
from calc.method.mesh import holding
from calc.method.stragglers_times import share_home, wait_for_share

_WEEK = ("Mon", "Tue", "Wed", "Thu", "Fri", "Sat", "Sun")


def core(
    *,
    animal: str,
    half: str,
    mild: str,
    year: int,
    month: int,
    day: int,
    comb: str,
    left_out: int | None,
    hole: str,
    mesh: float,
    first_count: int | None,
    second_count: int | None,
    indoors: str,
) -> Answer:
    """Compute dates, rules and reminders; see the declaration for units."""
    job = job_date(year, month, day)
    counts = rules.Counts(first_count, second_count, indoors == "yes")
    looks = rules.looks(job)
    last = rules.last_emergence(job, animal)
    found = say.Findings(
        reason=rules.call_back(counts),
        counts=counts,
        may_seal=rules.may_seal(counts),
        hole=hole,
        mesh=holding(mesh, rules.GROUPS[animal][2]),
        comb=comb,
        mild=mild == "mild",
        last_emergence=day_text(last),
        next_look=day_text(looks[0 if first_count is None else 1]),
    )
    spring = rules.spring_day(job, animal, half == "south")
    to_do = _to_do(looks, last, spring, comb)
    life = float(tables.row("aftercare", "life")["days"])
    values = {
        "verdict": say.verdict(found),
        "seal_from": say.seal_text(found),
        "looks": [{"date": day_text(when), "what": what} for when, what in to_do],
        "half_gone": wait_for_share(0.5, life),
        "most_gone": wait_for_share(0.9, life),
        "all_gone": None if left_out is None else rules.straggler_days(left_out),
        "emergence": None if comb == "taken" else rules.sealed_days(animal),
        "last_emergence": "none expected" if comb == "taken" else day_text(last),
        "mesh_words": say.MESH[found.mesh],
        "spring": day_text(spring),
        "calendar": icalendar_text(
            [Event(day=when, summary=f"Wasp job: {what}") for when, what in to_do], job
        ),
    }
    return Answer(values=values, cautions=say.cautions(found), charts=[_chart(life)])


def job_date(year: int, month: int, day: int) -> date:
    """Return the date, or raise :class:`InputError` for a day that the month has not."""
    try:
        return date(year, month, day)
    except ValueError:
        allowed = "a day that the month has"
        raise InputError(
            "day", day, allowed, f"Day: {month}/{year} has no day {day}; allowed is {allowed}."
        ) from None


def day_text(day: date) -> str:
    """Write a date as ``Thu 20 Aug 2026``."""
    return f"{_WEEK[day.weekday()]} {day.day} {MONTHS[day.month - 1]} {day.year}"


def _to_do(
    looks: tuple[date, date, date], last: date, spring: date, comb: str
) -> list[tuple[date, str]]:
    made = [(when, say.LOOK_WORDS[key]) for when, key in zip(looks, rules.LOOKS, strict=True)]
    if comb != "taken":
        made.append((last, "Last brood out about now: take the comb out."))
    made.append(
        (spring - timedelta(days=14), "Close cracks and screen vents before queens search.")
    )
    made.append((spring + timedelta(days=61), "Weekly look under eaves and in the shed begins."))
    return sorted(made)


def _chart(life: float) -> Chart:
    x = tuple(0.5 * each for each in range(61))
    looks = tuple(float(each) for each in rules.look_days())

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


follow_up = Calculator(
    name="follow_up",
    title="Follow-up",
    part="clients",
    purpose="When to look again, when to come back, when the hole may be closed, and what to do "
    "next spring, with reminders for a calendar.",
    inputs=INPUTS,
    outputs=OUTPUTS,
    core=core,
    sources=(
        "check_days_ours",
        "callback_ours",
        "velutina_life_tagged",
        "straggler_days_ours",
        "straggler_pages",
        "sealed_ranges",
        "sealing_ours",
        "hornet_trap_holes",
        "never_seal_live",
        "prevention_calendar",
        "site_again",
        "rfc_5545",
    ),
    formula=(
        (
            r"w = -\tau\,\ln(1 - s)",
            "days until the share s of those left out is gone, τ the mean active life",
            "straggler_days_ours",
        ),
        (
            r"w = -\tau\,\ln\left(1 - 0.95^{1/m}\right)",
            "days until all m are gone in 95 of 100 cases",
            "straggler_model",
        ),
        (
            r"n_7 > 10 \;\text{ or }\; n_7 > 0.2\,n_3",
            "call back, n the number that go into the hole in 5 minutes on day 3 and day 7",
            "callback_ours",
        ),
    ),
    assumptions=(
        "Looks are made at noon, in dry and warm weather, for 5 minutes.",
        "The active life of tagged yellow-legged hornets stands in for every species.",
        "Spring is the earliest printed date of any place of the animal; yours may be weeks later.",
        "No wasp going in on two looks is a sign, not a proof.",
    ),
)

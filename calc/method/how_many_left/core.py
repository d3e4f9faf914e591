"""The core of "How many are left"."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Any

from calc.declare import Answer
from calc.errors import InputError, shown
from calc.method.how_many_left import cautions as say
from calc.method.how_many_left.charts import catch_chart, total_chart
from calc.method.how_many_left.choice import (
    WITH_EFFORT,
    Fit,
    Job,
    check,
    chosen,
    comparison,
    fitted,
)
from calc.method.how_many_left.fit import FitTest, fit_test
from calc.method.how_many_left.inputs import Inputs
from calc.method.how_many_left.last_passes import SHY, chance_by_last_passes, empty_passes_needed
from calc.method.how_many_left.profile import EqualityTest, equality_test, usable
from calc.method.how_many_left.results import HIDDEN, HIGHEST_CHANCE
from calc.method.removal.stopping import Outlook, chance_at_most, passes_needed


def core(x: Inputs) -> Answer:
    """Compute the number present and left, and what to do next.

    Raises :class:`InputError` for minutes that do not match the passes and for an estimator that
    cannot take them. Units, ranges and sources: the declaration.
    """
    if x.minutes is not None and len(x.minutes) != len(x.catches):
        raise _unmatched(x.minutes, len(x.catches))
    job = Job(catches=x.catches, minutes=x.minutes, weighed=x.estimator in WITH_EFFORT)
    name = chosen(x.estimator, job)
    stop = say.no_estimate(job, name)
    if stop is not None:
        return _stopped(job, stop)
    check(name, job)
    fit = fitted(name, job)
    if fit is None:
        return _stopped(job, say.NO_LINE)
    return _answer(job, name, fit, x)


def _unmatched(minutes: tuple[float, ...], k: int) -> InputError:
    allowed = f"{k} values, one for each pass, or none at all"
    given = ", ".join(f"{each:g}" for each in minutes)
    return InputError(
        "minutes",
        list(minutes),
        allowed,
        f"Minutes per pass: {len(minutes)} given ({shown(given)}) for {k} passes; "
        f"allowed is {allowed}.",
    )


def _stopped(job: Job, stop: say.NoEstimate) -> Answer:
    return Answer(
        values={"next_step": stop.step, "total_caught": job.caught, "estimator": "none used"},
        cautions=[stop.caution(HIDDEN)],
        charts=[catch_chart(job, None, 0)],
    )


def _answer(job: Job, name: str, fit: Fit, x: Inputs) -> Answer:
    auto, most, confidence = x.estimator == "auto", x.most_left, x.confidence
    view = job.outlook
    plan = _plan(job, fit, view, most, confidence / 100)
    test = fit_test(job.catches, job.effort)
    equality = None if job.uneven or not usable(job.catches) else equality_test(job.catches)
    against = [
        *say.about_fit(test, equality),
        *say.about_last(job),
    ]
    cautions = [
        *say.always(),
        *against,
        *say.about_minutes(job, name, auto),
        *say.about_line(fit),
        *say.about_size(job, fit),
    ]
    values = {
        "next_step": _next_step(job, plan, bool(against), most, confidence),
        "passes_needed": plan.passes,
        "empty_passes": plan.empty,
        "chance_none_left": _chance(chance_at_most(0, view)),
        "chance_few_left": _chance(chance_at_most(most, view)),
        "chance_few_shy": _chance(
            chance_by_last_passes(job.catches, job.lengths, SHY * fit.probability, most)
        ),
        "estimator": ("Chosen for you: " if auto else "") + fit.form,
        "comparison": _rows(comparison(job, name, fit)),
        **_numbers(job, fit),
        **_tests(test, equality),
    }
    charts = [catch_chart(job, fit, plan.passes or 0), total_chart(job, fit)]
    return Answer(values=values, cautions=cautions, charts=charts)


@dataclass(frozen=True, kw_only=True, slots=True)
class _Plan:
    """Further passes: by the plain count, empty ones for shy survivors, and the larger of both."""

    plain: int | None
    empty: int | None

    @property
    def passes(self) -> int | None:
        if self.plain is None or self.empty is None:
            return None
        return max(self.plain, self.empty)


def _plan(job: Job, fit: Fit, view: Outlook, most: int, wanted: float) -> _Plan:
    plain = passes_needed(most, wanted, view)
    if plain is not None:
        plain = max(plain, say.FEWEST_PASSES - len(job.catches))
    shy = SHY * fit.probability
    return _Plan(
        plain=plain,
        empty=empty_passes_needed(job.catches, job.lengths, shy, most, wanted),
    )


def _numbers(job: Job, fit: Fit) -> dict[str, Any]:
    inside = None if fit.high is None else fit.high - job.caught
    return {
        "still_inside": fit.number - job.caught,
        "interval_inside": (fit.low - job.caught, inside),
        "adults_at_start": fit.number,
        "interval_at_start": (fit.low, fit.high),
        "total_caught": job.caught,
        "capture_probability": 100 * fit.probability,
        "interval_form": fit.interval_form,
    }


def _chance(chance: float) -> float:
    return min(100 * chance, HIGHEST_CHANCE)


def _tests(test: FitTest | None, equality: EqualityTest | None) -> dict[str, Any]:
    return {
        "fit_chi2": None if test is None else test.chi2,
        "fit_df": None if test is None else test.df,
        "fit_chance": None if test is None else 100 * test.p_value,
        "equal_chance": None if equality is None else 100 * equality.p_value,
    }


def _rows(fits: list[Fit]) -> list[dict[str, Any]]:
    return [
        {"form": each.form, "number": each.number, "interval": (each.low, each.high)}
        for each in fits
    ]


MANY_PASSES = 10
"""Above this many further passes the plan is too uncertain to follow to its end."""

QUIET = 3
"""Empty passes in a row that end the catching where the catch did not fall evenly."""


def _next_step(job: Job, plan: _Plan, against: bool, most: int, confidence: float) -> str:
    needed = plan.passes
    if needed is None:
        return (
            "Stop: more passes alone will not do it. Find what holds the wasps back: a second "
            "entrance, a poor seal, too little air, wasps coming home."
        )
    if needed == 0 and against and any(job.catches[-QUIET:]):
        return (
            f"Go on until {QUIET} passes in a row bring none: the catch does not fall evenly, so "
            "this count alone is no reason to end."
        )
    if needed == 0:
        few = "none" if most == 0 else f"at most {most}"
        return (
            f"Wait for stragglers: {few} left of those you could reach, with a "
            f"chance of at least {confidence:g} % by this count. Treat the nest as live."
        )
    return f"Go on: {_more(job, plan, needed)}"


def _more(job: Job, plan: _Plan, needed: int) -> str:
    length = f" of {sum(job.effort) / len(job.effort):.3g} min" if job.by_minutes else ""
    passes = f"{needed} more {'pass' if needed == 1 else 'passes'}{length}"
    if plan.plain == 0:
        empty = "that brings none" if needed == 1 else "in a row that bring none"
        return f"at least {passes} {empty}. The last wasps are the hardest to catch."
    if needed > MANY_PASSES:
        return f"at least {passes}. Enter all passes again after two or three; it will change."
    return f"at least {passes}. Then enter all passes again."

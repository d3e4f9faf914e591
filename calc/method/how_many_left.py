"""How many are left: the calculator, from the catch of each pass to what to do next."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Any

from calc.declare import Answer, Calculator, Count, Counts, Number, Numbers
from calc.errors import InputError, shown
from calc.method import removal_cautions as say
from calc.method.removal_charts import catch_chart, total_chart
from calc.method.removal_choice import (
    WITH_EFFORT,
    Fit,
    Job,
    check,
    chosen,
    comparison,
    fitted,
)
from calc.method.removal_fit import FitTest, fit_test
from calc.method.removal_last import SHY, chance_by_last_passes, empty_passes_needed
from calc.method.removal_profile import EqualityTest, equality_test, usable
from calc.method.removal_results import ESTIMATORS, HIDDEN, HIGHEST_CHANCE, OUTPUTS
from calc.method.stopping import Outlook, chance_at_most, passes_needed


def core(
    catches: tuple[int, ...],
    minutes: tuple[float, ...] | None,
    estimator: str,
    most_left: int,
    confidence: float,
) -> Answer:
    """Compute the number present and left, and what to do next.

    Parameters
    ----------
    catches : wasps caught on each pass
    minutes : length of each pass in minutes, or ``None`` for equal passes
    estimator : value of the choice
    most_left : number that may be left at the end
    confidence : wanted chance in percent

    Returns the :class:`Answer`. Raises :class:`InputError` for minutes that do not match the
    passes and for an estimator that cannot take them. Range and sources: the declaration below.
    """
    if minutes is not None and len(minutes) != len(catches):
        raise _unmatched(minutes, len(catches))
    job = Job(catches=catches, minutes=minutes, weighed=estimator in WITH_EFFORT)
    name = chosen(estimator, job)
    stop = say.no_estimate(job, name)
    if stop is not None:
        return _stopped(job, stop)
    check(name, job)
    fit = fitted(name, job)
    if fit is None:
        return _stopped(job, say.NO_LINE)
    return _answer(job, name, estimator == "auto", fit, most_left, confidence)


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


def _answer(job: Job, name: str, auto: bool, fit: Fit, most: int, confidence: float) -> Answer:
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
        "fit_chance": None if test is None else 100 * test.chance,
        "equal_chance": None if equality is None else 100 * equality.chance,
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


how_many_left = Calculator(
    name="how_many_left",
    title="How many are left",
    part="method",
    purpose="From the catch of each pass: how many adults were there, how many are still inside, "
    "and whether to make another pass.",
    inputs=(
        Counts(
            name="catches",
            label="Caught on each pass",
            meaning="Wasps caught on pass 1, pass 2 and so on; 0 counts as a pass.",
            item="pass",
            low=0,
            high=100_000,
            why="the count of one catch, with room to spare; two passes or more give an estimate",
            source="arithmetic",
            usual=(60, 35, 20, 11),
            most=30,
        ),
        Numbers(
            name="minutes",
            label="Minutes of each pass",
            meaning="Only if the passes were not equally long; one value for each pass.",
            item="pass",
            unit="min",
            low=0.1,
            high=600,
            why="the length of one pass",
            source="arithmetic",
            most=30,
            digits=1,
            step=1,
            optional=True,
        ),
        ESTIMATORS,
        Count(
            name="most_left",
            label="Leave at most",
            meaning="How many may be left when you make no more passes; 4 means fewer than five.",
            low=0,
            high=100,
            why="more than this is no end of the catching",
            source="own_reasoning",
            usual=4,
        ),
        Number(
            name="confidence",
            label="Wanted chance",
            meaning="How sure you want to be that no more than that are left.",
            unit="percent",
            low=50,
            high=99.9,
            why="below half it is a guess, above it the model is not sure of itself",
            source="own_reasoning",
            usual=95,
            digits=1,
            step=1,
        ),
    ),
    outputs=OUTPUTS,
    core=core,
    sources=(
        "carle_strub_1978",
        "bohlin_1989",
        "removal_posterior",
        "removal_shy",
        "seber_2002",
        "schnute_1983",
        "gould_pollock_1997",
        "leslie_davis_1939",
        "robson_regier_1968",
        "burnham_1987",
        "zippin_1956",
    ),
    formula=(
        (
            r"\frac{n+1}{n-T+1}\prod_{i=1}^{k}\frac{kn-X-T+1+k-i}{kn-X+2+k-i}<1,"
            r"\qquad X=\sum_{i=1}^{k}(k-i)\,c_i",
            "Carle & Strub: the number at the start is the smallest whole n, from the catch T up, "
            "for which this holds",
            "carle_strub_1978",
        ),
        (
            r"p=\frac{T}{kN-X}",
            "Carle & Strub: share caught on one pass",
            "carle_strub_1978",
        ),
        (
            r"\frac{q}{p}-\frac{k\,q^k}{1-q^k}=\frac{\sum (i-1)\,c_i}{T},\qquad N=\frac{T}{1-q^k}",
            "Zippin, binomial-total form, solved for q = 1 - p",
            "bohlin_1989",
        ),
        (
            r"\Pr(N)\propto\frac{1}{N}\,\frac{N!}{(N-T)!}\,"
            r"\frac{\Gamma(kN-X-T+1)}{\Gamma(kN-X+2)}",
            "interval of the default, and the chance that none is left, Pr(N = T)",
            "removal_posterior",
        ),
        (
            r"\Pr(R\le m)=\sum_{r=0}^{m}\binom{C+r}{r}\,(1-Q)^{C+1}\,Q^{r},\qquad "
            r"Q=\left(1-\tfrac{p}{2}\right)^{z}",
            "number R left, judged from the last z passes alone, which caught C, for wasps half as "
            "easy to catch",
            "removal_shy",
        ),
        (
            r"\theta_i=e^{-KE_i}\left(1-e^{-Kf_i}\right),\qquad "
            r"\max_K\sum c_i\ln\frac{\theta_i}{\sum\theta},\qquad N=\frac{T}{1-e^{-KF}}",
            "passes of unequal minutes f: E is the time before a pass, F all of it",
            "gould_pollock_1997",
        ),
        (
            r"\frac{c_i}{f_i}=qN-qK_i",
            "Leslie's line: catch per minute against the catch K before the pass",
            "leslie_davis_1939",
        ),
        (
            r"\chi^2=\sum\frac{(c_i-e_i)^2}{e_i}",
            "test of fit against the expected catches e",
            "zippin_1956",
        ),
    ),
    assumptions=(
        "The nest is closed while you catch. Foragers coming home and new wasps make the estimate "
        "too high, or stop the fall.",
        "Every wasp is as easy to catch as any other. Guards come first and the rest hide, so the "
        "estimate is too low.",
        "Every pass is equally long and done alike, or its minutes are entered. Shorter or gentler "
        "later passes make the estimate too low.",
        "The last wasps are not less than half as easy to catch as the rest. If they are, more "
        "passes are needed than shown.",
    ),
)

"""How many are left: the calculator, from the catch of each pass to what to do next."""

from __future__ import annotations

import math
from typing import Any

from calc.declare import (
    Answer,
    Axis,
    Calculator,
    Caution,
    Chart,
    Choice,
    Count,
    Counts,
    Number,
    Numbers,
    Option,
    Out,
    Series,
)
from calc.errors import InputError, shown
from calc.method import removal_cautions as say
from calc.method.removal_choice import Fit, Job, check, chosen, comparison, fitted
from calc.method.removal_fit import FitTest, expected_catches, fit_test
from calc.method.removal_profile import EqualityTest, equality_test, usable
from calc.method.stopping import MOST_PASSES, chance_at_most, passes_needed

HIGHEST_CHANCE = 99.9
"""No chance is shown above this: the model is not that sure of itself."""

SHOWN_AHEAD = 5
"""Further passes drawn in the chart."""


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
    job = Job(catches=catches, minutes=minutes)
    name = chosen(estimator, job)
    stop = say.no_estimate(job, name, HIDDEN)
    if stop is not None:
        return _stopped(job, stop)
    check(name, job)
    fit = fitted(name, job)
    if fit is None:
        return _stopped(job, say.line_does_not_fall(HIDDEN))
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


def _stopped(job: Job, stop: Caution) -> Answer:
    values = {"next_step": stop.text, "total_caught": job.caught, "estimator": "none used"}
    return Answer(values=values, cautions=[stop], charts=[_catch_chart(job, None, 0)])


def _answer(job: Job, name: str, auto: bool, fit: Fit, most: int, confidence: float) -> Answer:
    view = job.outlook
    needed = passes_needed(most, confidence / 100, view)
    test = fit_test(job.catches, job.effort)
    equality = None if job.uneven or not usable(job.catches) else equality_test(job.catches)
    inside = None if fit.high is None else fit.high - job.caught
    values = {
        "next_step": _next_step(job, needed, most, confidence),
        "still_inside": fit.number - job.caught,
        "interval_inside": (fit.low - job.caught, inside),
        "passes_needed": needed,
        "adults_at_start": fit.number,
        "interval_at_start": (fit.low, fit.high),
        "total_caught": job.caught,
        "capture_probability": 100 * fit.probability,
        "chance_none_left": _chance(chance_at_most(0, view)),
        "chance_few_left": _chance(chance_at_most(most, view)),
        "estimator": ("Chosen for you: " if auto else "") + fit.form,
        "interval_form": fit.interval_form,
        "comparison": _rows(comparison(job, name, fit)),
        **_tests(test, equality),
    }
    cautions = [
        *say.always(),
        *say.about_fit(test, equality),
        *say.about_last(job),
        *say.about_minutes(job, name, auto),
        *say.about_line(fit),
        *say.about_size(job, fit),
    ]
    charts = [_catch_chart(job, fit, needed or 0), _total_chart(job, fit)]
    return Answer(values=values, cautions=cautions, charts=charts)


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


def _next_step(job: Job, needed: int | None, most: int, confidence: float) -> str:
    if needed is None:
        return (
            "More passes alone will not do it. Find what holds the wasps back: a second entrance, "
            "a poor seal, too little air, foragers coming home."
        )
    few = "none" if most == 0 else f"at most {most}"
    if needed == 0:
        return (
            f"Stop catching and wait for stragglers. By this count {few} of those you could reach "
            f"are left, with a chance of at least {confidence:g} %. Treat the nest as live."
        )
    length = f" of {sum(job.effort) / len(job.effort):.3g} min" if job.uneven else " like these"
    passes = "pass" if needed == 1 else "passes"
    return f"Keep catching: at least {needed} more {passes}{length}. Then enter all passes again."


def _catch_chart(job: Job, fit: Fit | None, ahead: int) -> Chart:
    places = tuple(float(place) for place in range(1, len(job.catches) + 1))
    series = [
        Series(
            label="caught", x=places, y=tuple(float(each) for each in job.catches), style="points"
        )
    ]
    if fit is not None:
        series.append(Series(label="expected", x=places, y=fit.expected))
        ahead = min(ahead, SHOWN_AHEAD)
        if ahead:
            series.append(_next_passes(job, fit, ahead))
    return Chart(
        name="catch_per_pass",
        title="Catch per pass",
        alt="Caught on each pass: " + ", ".join(str(each) for each in job.catches) + ".",
        x=Axis(label="pass"),
        y=Axis(label="wasps caught", low=0.0),
        series=tuple(series),
    )


def _next_passes(job: Job, fit: Fit, ahead: int) -> Series:
    """Draw the coming passes of mean length, joined to the last one made."""
    coming = expected_catches(fit.number - job.caught, fit.probability, (1.0,) * ahead)
    k = len(job.catches)
    return Series(
        label="to come, if nothing changes",
        x=tuple(float(k + place) for place in range(ahead + 1)),
        y=(fit.expected[-1], *coming),
        style="dashed",
    )


def _total_chart(job: Job, fit: Fit) -> Chart:
    places = tuple(float(place) for place in range(len(job.catches) + 1))
    ends = (places[0], places[-1])
    series = [
        Series(label="caught so far", x=places, y=_summed(job.catches), style="points"),
        Series(label="expected", x=places, y=_summed(fit.expected)),
        Series(label="estimate", x=ends, y=(fit.number, fit.number), style="dashed"),
    ]
    # A limit far above the estimate would flatten everything else to a line at the bottom.
    if fit.high is not None and fit.high <= 5 * fit.number:
        band = Series(
            label="95 % interval",
            x=ends,
            y=(float(fit.low),) * 2,
            y2=(float(fit.high),) * 2,
            style="band",
        )
        series.insert(0, band)
    return Chart(
        name="total_caught",
        title="Caught so far against the estimate",
        alt=f"{job.caught} caught; estimated at least {math.floor(fit.number)} at the start.",
        x=Axis(label="passes made"),
        y=Axis(label="wasps", low=0.0),
        series=tuple(series),
    )


def _summed(values: tuple[float, ...] | tuple[int, ...]) -> tuple[float, ...]:
    total, sums = 0.0, [0.0]
    for each in values:
        total += each
        sums.append(total)
    return tuple(sums)


_OUTPUTS = (
    Out(
        name="next_step",
        label="What to do next",
        meaning="Goes by the chance that few enough are left, with p left uncertain.",
        kind="text",
        main=True,
    ),
    Out(
        name="still_inside",
        label="Still inside, at least",
        meaning="Estimate less those caught. It leaves out wasps that you cannot reach.",
        main=True,
    ),
    Out(
        name="interval_inside",
        label="Still inside, 95 % interval",
        meaning="Holds if the nest is closed and every pass catches alike; else it is too narrow.",
        kind="interval",
        main=True,
    ),
    Out(
        name="passes_needed",
        label="More passes, at least",
        meaning="Fewest further passes of mean length that leave few enough with the wanted "
        f"chance. No figure if more than {MOST_PASSES}.",
        kind="count",
        main=True,
    ),
    Out(
        name="adults_at_start",
        label="Present at the start, at least",
        meaning="Adults that your air could reach before the first pass.",
    ),
    Out(
        name="interval_at_start",
        label="Present at the start, 95 % interval",
        meaning="Never below the number you caught.",
        kind="interval",
    ),
    Out(
        name="total_caught",
        label="Caught so far",
        meaning="Sum of the passes.",
        kind="count",
    ),
    Out(
        name="capture_probability",
        label="Caught on one pass",
        meaning="Share of those present that one pass of mean length takes.",
        unit="percent",
        digits=1,
    ),
    Out(
        name="chance_none_left",
        label="Chance that none is left",
        meaning=f"Of those you could reach. Never shown above {HIGHEST_CHANCE} %.",
        unit="percent",
        digits=1,
    ),
    Out(
        name="chance_few_left",
        label="Chance that few enough are left",
        meaning="Chance that now at most as many are left as you allow. "
        f"Never shown above {HIGHEST_CHANCE} %.",
        unit="percent",
        digits=1,
    ),
    Out(
        name="estimator",
        label="Estimator used",
        meaning="Exact form; forms with one name differ.",
        kind="text",
    ),
    Out(
        name="interval_form",
        label="Kind of interval",
        meaning="How the 95 % interval was made.",
        kind="text",
    ),
    Out(
        name="fit_chi2",
        label="Fit, chi-square",
        meaning="Large means that the catch falls unevenly. Small passes are pooled.",
        digits=2,
    ),
    Out(
        name="fit_df",
        label="Fit, degrees of freedom",
        meaning="Groups of passes less 2. No figure with too few.",
        kind="count",
    ),
    Out(
        name="fit_chance",
        label="Fit, P value",
        meaning="How often chance alone makes the fall this uneven. Below 5 %: do not trust the "
        "interval. The test is weak with few wasps.",
        unit="percent",
        digits=1,
    ),
    Out(
        name="equal_chance",
        label="First pass like the others, P value",
        meaning="Below 5 %: the first pass caught better or worse than the later ones.",
        unit="percent",
        digits=1,
    ),
    Out(
        name="comparison",
        label="What other estimators say",
        meaning="The first row is the one used.",
        kind="table",
        columns=(
            Out(name="form", label="Estimator", meaning="Exact form.", kind="text"),
            Out(name="number", label="At the start", meaning="Estimate.", digits=1),
            Out(
                name="interval",
                label="95 % interval",
                meaning="Never below the catch.",
                kind="interval",
            ),
        ),
    ),
)

HIDDEN = tuple(
    out.name for out in _OUTPUTS if out.name not in {"next_step", "total_caught", "estimator"}
)
"""Results that a stop withholds: all but the catch and what to do."""

_ESTIMATORS = Choice(
    name="estimator",
    label="Estimator",
    meaning="Leave on automatic unless you compare with other work.",
    options=(
        Option(
            value="auto",
            label="Automatic",
            meaning="Carle & Strub for equal passes; with effort where minutes differ.",
        ),
        Option(
            value="carle_strub",
            label="Carle & Strub",
            meaning="Weighted maximum likelihood; always has an answer.",
        ),
        Option(
            value="zippin",
            label="Zippin",
            meaning="Maximum likelihood, binomial-total form.",
        ),
        Option(value="seber", label="Seber, closed form", meaning="2 or 3 passes."),
        Option(
            value="robson_regier",
            label="Robson & Regier",
            meaning="2 passes, corrected for bias.",
        ),
        Option(
            value="moran_schnute",
            label="Moran & Schnute",
            meaning="Profile-likelihood interval, 3 passes or more.",
        ),
        Option(
            value="leslie",
            label="Leslie, with minutes",
            meaning="Line of the catch per minute, 3 passes or more.",
        ),
        Option(
            value="gould_pollock",
            label="Likelihood with minutes",
            meaning="Gould & Pollock; unequal passes, zero catches allowed.",
        ),
    ),
    default="auto",
)

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
            default=(60, 35, 20, 11),
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
        _ESTIMATORS,
        Count(
            name="most_left",
            label="Leave at most",
            meaning="How many may be left when you stop catching; 4 means fewer than five.",
            low=0,
            high=100,
            why="more than this is no end of the catching",
            source="own_reasoning",
            default=4,
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
            default=95,
            digits=1,
            step=1,
        ),
    ),
    outputs=_OUTPUTS,
    core=core,
    sources=(
        "carle_strub_1978",
        "bohlin_1989",
        "removal_posterior",
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
        "Further passes are as good as those made. Survivors are mostly harder to catch, so more "
        "passes are needed than shown.",
    ),
)

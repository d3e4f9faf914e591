"""Waiting for the stragglers: the calculator, from returns to when to stop."""

from __future__ import annotations

import math
from typing import Any

from calc.declare import Answer, Calculator, Caution
from calc.errors import InputError
from calc.method import stragglers_words as say
from calc.method.stragglers_charts import home_chart, home_rows
from calc.method.stragglers_fit import Fit, Watch, fit, quiet
from calc.method.stragglers_forms import HIDDEN, INPUTS, OUTPUTS
from calc.method.stragglers_times import (
    away_in_traffic,
    quiet_for,
    wait_for_all,
    wait_for_share,
)

_SURE = 0.95
_LONGEST = 100_000.0


def core(
    record: str,
    times: tuple[float, ...] | None,
    waited: float | None,
    returns: tuple[int, ...] | None,
    interval: float | None,
    still_out: int | None,
    share: float,
    weather: str,
    animal: str,
    traffic: float | None,
) -> Answer:
    """Compute the mean trip, the number still out and how long to wait.

    Parameters
    ----------
    record : ``times``, ``counts`` or ``none``
    times : minutes from the start of the watch to each return
    waited : minutes watched in all
    returns : number home in each interval
    interval : minutes of an interval
    still_out : number known to be out, or ``None``
    share : percent of those away that you want home
    weather : ``fair``, ``rain``, ``cold`` or ``dusk``
    animal : value of the choice
    traffic : returns a minute before you began, or ``None``

    Returns the :class:`Answer`. Raises :class:`InputError` for a return after the end of the
    watch. Range and sources: the declaration below.
    """
    watch = _watch(record, times, waited, returns, interval, still_out)
    stop = say.clock_stop(weather, HIDDEN)
    if stop is not None:
        return _stopped(watch, stop)
    found = fit(watch)
    if found is None:
        return _stopped(watch, say.no_thinning_stop(HIDDEN))
    if found.mean is None:
        return _nobody(watch, found)
    return _answer(watch, found, share / 100, animal, traffic)


def _watch(
    record: str,
    times: tuple[float, ...] | None,
    waited: float | None,
    returns: tuple[int, ...] | None,
    interval: float | None,
    still_out: int | None,
) -> Watch:
    if record != "counts":
        assert waited is not None
        late = [time for time in times or () if time > waited]
        if late:
            allowed = f"at most the {waited:g} min you watched"
            raise InputError(
                "times",
                list(times or ()),
                allowed,
                f"Returns: {late[0]:g} min lies after the end of the watch; allowed is {allowed}.",
            )
        return Watch(
            times=times or (), counts=None, interval=1.0, waited=waited, still_out=still_out
        )
    assert returns is not None
    assert interval is not None
    return Watch(
        times=None,
        counts=returns,
        interval=interval,
        waited=interval * len(returns),
        still_out=still_out,
    )


def _stopped(watch: Watch, stop: Caution) -> Answer:
    values = {"next_step": stop.text, "home": watch.home, "waited_in_all": watch.waited}
    return Answer(values=values, cautions=[stop])


def _nobody(watch: Watch, found: Fit) -> Answer:
    if not watch.still_out:
        return _stopped(watch, say.nothing_stop(HIDDEN))
    answer = _stopped(watch, say.nothing_stop([n for n in HIDDEN if n != "mean_trip_interval"]))
    values = {**answer.values, "mean_trip_interval": (found.mean_low, None)}
    return Answer(values=values, cautions=answer.cautions)


def _answer(watch: Watch, found: Fit, share: float, animal: str, traffic: float | None) -> Answer:
    mean, out = found.mean, found.out
    assert mean is not None
    assert out is not None
    spell = quiet(watch, mean, found.mean_high)
    more_all = _more_for_all(mean, out)
    quiet_needed = quiet_for(1, mean)
    need = max(more_all, quiet_needed - watch.quiet) if out else 0.0
    values: dict[str, Any] = {
        "next_step": say.next_step(watch, need),
        "still_out": out,
        "still_out_interval": (found.out_low, found.out_high),
        "more_minutes": _more(wait_for_share(share, mean), watch.waited),
        "more_minutes_interval": _more_interval(share, found, watch.waited),
        "more_for_all": more_all,
        "mean_trip": mean,
        "mean_trip_interval": (found.mean_low, found.mean_high),
        "quiet_minutes": spell.minutes,
        "quiet_needed": quiet_needed,
        "most_out_quiet": spell.most_out,
        "most_out_quiet_slow": spell.most_out_slow,
        "returns_per_hour": spell.per_hour,
        "none_out": None if found.none_out is None else min(99.9, 100 * found.none_out),
        "away_at_start": watch.home + out,
        "away_by_traffic": None if traffic is None else away_in_traffic(traffic, mean),
        "home": watch.home,
        "waited_in_all": watch.waited,
        "home_by": home_rows(mean, found.mean_low or 0.0, found.mean_high),
        "method": found.form,
    }
    cautions = [
        *say.always(animal),
        *say.about_fit(watch, found),
        *say.about_quiet(watch, mean),
    ]
    return Answer(values=values, cautions=cautions, charts=[home_chart(watch, found)])


def _more(by: float, waited: float) -> float:
    return min(_LONGEST, max(0.0, by - waited))


def _more_interval(share: float, found: Fit, waited: float) -> tuple[float, float | None]:
    low = _more(wait_for_share(share, found.mean_low or 0.0), waited)
    if found.mean_high is None:
        return low, None
    return low, _more(wait_for_share(share, found.mean_high), waited)


def _more_for_all(mean: float, out: float) -> float:
    """Return the minutes until all out on ordinary trips are home in 95 of 100 cases."""
    if out >= 1:
        return min(_LONGEST, wait_for_all(_SURE, mean, out))
    # Fewer than one expected: a Poisson number, none left with chance exp(-out).
    least = -math.log(_SURE)
    return mean * math.log(out / least) if out > least else 0.0


waiting_for_stragglers = Calculator(
    name="waiting_for_stragglers",
    title="Waiting for the stragglers",
    part="method",
    purpose="From the returns you see after the catch: how long a trip takes, how many are still "
    "out, and how long to wait.",
    inputs=INPUTS,
    outputs=OUTPUTS,
    core=core,
    sources=(
        "straggler_model",
        "straggler_removal",
        "censored_exponential",
        "garwood_1936",
        "poidatz_2018_trips",
        "trip_shape",
        "residual_trips",
        "absent_shares",
        "gould_pollock_1997",
    ),
    formula=(
        (
            r"\hat\tau=\frac{S}{d},\qquad \frac{2S}{\chi^2_{0.975}(2d+2)}\le\tau\le"
            r"\frac{2S}{\chi^2_{0.025}(2d)}",
            "number out known: S all minutes away together, d those that came home",
            "censored_exponential",
        ),
        (
            r"\frac{\bar t}{w}=\frac{1}{x}-\frac{1}{e^x-1},\quad x=\frac{w}{\tau},\qquad "
            r"m=\frac{d}{1-e^{-w/\tau}}",
            "number out not known: mean return time over the watch w gives the trip time and the "
            "number m away at the start",
            "straggler_removal",
        ),
        (
            r"p=1-e^{-h/\tau}",
            "returns counted in intervals h are a removal series with this share a pass",
            "straggler_removal",
        ),
        (
            r"w=-\tau\ln(1-s)",
            "minutes until the share s of those away is home",
            "straggler_model",
        ),
        (
            r"w=-\tau\ln\left(1-0.95^{1/m}\right)",
            "minutes until all m are home in 95 of 100 cases",
            "straggler_model",
        ),
        (
            r"R=\left\lfloor\frac{2.9957\,\tau}{w}\right\rfloor",
            "most still out after w quiet minutes, at 95 %",
            "garwood_1936",
        ),
        (
            r"G(t)=Q\!\left(a+1,\tfrac{t}{\theta}\right)-\frac{t}{a\theta}\,"
            r"Q\!\left(a,\tfrac{t}{\theta}\right)",
            "share still out for gamma trips of shape a and scale θ, the comparison with hornets",
            "residual_trips",
        ),
        (r"m=\lambda\tau", "away in steady traffic of λ returns a minute", "little_1961"),
    ),
    assumptions=(
        "Nobody leaves after you start. If some do, the returns do not thin out and the number is "
        "too high or missing.",
        "All trips have the same chance of ending each minute. Long trips and nights out break "
        "this: the true wait is longer.",
        "The weather and the light let them fly for the whole watch. Minutes of rain, cold or dusk "
        "make the answer too hopeful.",
        "You see every return. One that slips past you counts as still out.",
    ),
)

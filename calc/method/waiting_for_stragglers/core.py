"""The core of "Waiting for the stragglers"."""

from __future__ import annotations

import math
from typing import Any

from calc.declare import Answer, Caution
from calc.errors import InputError
from calc.method.stragglers_times import (
    away_in_traffic,
    quiet_for,
    wait_for_all,
    wait_for_share,
)
from calc.method.waiting_for_stragglers import cautions as say
from calc.method.waiting_for_stragglers.charts import home_chart, home_rows
from calc.method.waiting_for_stragglers.fit import Fit, Watch, fit, quiet
from calc.method.waiting_for_stragglers.inputs import Inputs
from calc.method.waiting_for_stragglers.results import HIDDEN

_SURE = 0.95
_LONGEST = 100_000.0

LONGEST_INTERVAL = 60.0
"""Minutes of one count; longer ones hide the thinning [own_reasoning]."""


def core(x: Inputs) -> Answer:
    """Compute the mean trip, the number still out and how long to wait.

    Raises :class:`InputError` for a return after the end of the watch, and for counts of more than
    an hour each. Units, ranges and sources: the declaration.
    """
    watch = _watch(x)
    stop = say.clock_stop(x.weather, HIDDEN)
    if stop is not None:
        return _stopped(watch, stop)
    found = fit(watch)
    if found is None:
        return _stopped(watch, say.no_thinning_stop(HIDDEN))
    if found.mean is None:
        return _nobody(watch, found)
    return _answer(watch, found, x)


def _watch(x: Inputs) -> Watch:
    if x.record == "counts" and x.returns is not None:
        interval = x.waited / len(x.returns)
        if interval > LONGEST_INTERVAL:
            raise _refuse(x, "returns", "one count at least for each hour you watched")
        return Watch(
            times=None,
            counts=x.returns,
            interval=interval,
            waited=x.waited,
            still_out=x.still_out,
        )
    times = x.times or ()
    if max(times, default=0.0) > x.waited:
        raise _refuse(x, "times", f"at most the {x.waited:g} min you watched")
    return Watch(times=times, counts=None, interval=1.0, waited=x.waited, still_out=x.still_out)


def _refuse(x: Inputs, field: str, allowed: str) -> InputError:
    given = x.times if field == "times" else x.returns
    problem = (
        f"Returns: {max(x.times or ()):g} min lies after the end of the watch"
        if field == "times"
        else f"Returns: {len(x.returns or ())} counts in {x.waited:g} min are too few"
    )
    return InputError(field, list(given or ()), allowed, f"{problem}; allowed is {allowed}.")


def _stopped(watch: Watch, stop: Caution) -> Answer:
    values = {"next_step": stop.text, "home": watch.home, "waited_in_all": watch.waited}
    return Answer(values=values, cautions=[stop])


def _nobody(watch: Watch, found: Fit) -> Answer:
    if not watch.still_out:
        return _stopped(watch, say.nothing_stop(HIDDEN))
    answer = _stopped(watch, say.nothing_stop([n for n in HIDDEN if n != "mean_trip_interval"]))
    values = {**answer.values, "mean_trip_interval": (found.mean_low, None)}
    return Answer(values=values, cautions=answer.cautions)


def _answer(watch: Watch, found: Fit, x: Inputs) -> Answer:
    share = x.share / 100
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
        "away_by_traffic": None if x.traffic is None else away_in_traffic(x.traffic, mean),
        "home": watch.home,
        "waited_in_all": watch.waited,
        "home_by": home_rows(mean, found.mean_low or 0.0, found.mean_high),
        "method": found.form,
    }
    cautions = [
        *say.always(x.animal),
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

"""What the returns say: mean trip, number still out, the quiet time; each with its limits."""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass

from calc.method.removal import falls
from calc.method.removal.effort import gould_pollock
from calc.method.removal.quantiles import number_quantiles
from calc.method.removal.stopping import Outlook, chance_at_most, outlook
from calc.method.stragglers_times import (
    MeanTime,
    censored_mean,
    grouped_mean,
    most_after_quiet,
    truncated_mean,
)
from calc.numeric.limits import RULE_OF_THREE

_BINS = 24


@dataclass(frozen=True, kw_only=True, slots=True)
class Watch:
    """One watch at the entrance: times or counts of returns, and how many are known to be out."""

    times: tuple[float, ...] | None
    counts: tuple[int, ...] | None
    interval: float
    waited: float
    still_out: int | None

    @property
    def home(self) -> int:
        """Number that came home."""
        return len(self.times) if self.times is not None else sum(self.counts or ())

    @property
    def quiet(self) -> float:
        """Minutes without a return at the end."""
        if self.times is not None:
            return self.waited - max(self.times, default=0.0)
        empty = 0
        for count in reversed(self.counts or ()):
            if count:
                break
            empty += 1
        return empty * self.interval

    @property
    def bins(self) -> tuple[int, ...]:
        """Returns in equal intervals; times of return are laid into narrow ones."""
        if self.times is None:
            return self.counts or ()
        made = [0] * _BINS
        for time in self.times:
            made[min(_BINS - 1, int(time / self.waited * _BINS))] += 1
        return tuple(made)

    @property
    def steps(self) -> list[tuple[float, int]]:
        """Minutes and number home by then, as they were seen."""
        if self.times is not None:
            return [(time, place) for place, time in enumerate(sorted(self.times), start=1)]
        made, total = [], 0
        for place, count in enumerate(self.counts or (), start=1):
            total += count
            made.append((place * self.interval, total))
        return made


@dataclass(frozen=True, kw_only=True, slots=True)
class Fit:
    """Mean trip and number still out, with 95 % limits; ``None`` where there is none."""

    mean: float | None
    mean_low: float | None
    mean_high: float | None
    out: float | None
    out_low: float | None
    out_high: float | None
    none_out: float | None
    form: str


def fit(watch: Watch) -> Fit | None:
    """Return what the returns say, or ``None`` where they do not thin out.

    With the number out known: maximum likelihood with cut-off times. Otherwise the returns are a
    removal series, with the chances of what is left averaged over the trip time.

    Parameters
    ----------
    watch : the watch

    Range: see the calculator. Source: censored_exponential, straggler_removal.
    """
    if watch.still_out is not None and watch.home + watch.still_out > 0:
        return _known(watch, watch.still_out)
    if watch.home == 0:
        return Fit(
            mean=None,
            mean_low=None,
            mean_high=None,
            out=None,
            out_low=None,
            out_high=None,
            none_out=None,
            form="no return, no trip time",
        )
    return _unknown(watch)


def _known(watch: Watch, out: int) -> Fit:
    if watch.times is not None or watch.home == 0:
        found = censored_mean(watch.times or (), (watch.waited,) * out)
        form = "times of return, the rest cut off at the end of the watch"
    else:
        found = grouped_mean(watch.counts or (), out, watch.interval)
        form = "counts per interval, the number out known"
    return _as_fit(found, out, form)


def _as_fit(found: MeanTime, out: int, form: str) -> Fit:
    return Fit(
        mean=found.mean,
        mean_low=found.low,
        mean_high=found.high,
        out=float(out),
        out_low=float(out),
        out_high=float(out),
        none_out=1.0 if out == 0 else 0.0,
        form=form,
    )


def _unknown(watch: Watch) -> Fit | None:
    bins = watch.bins
    if not falls(bins, (1.0,) * len(bins)):
        return None
    view = outlook(bins, (1.0,) * len(bins))
    width = watch.waited / len(bins)
    low, middle, high = (width / each for each in hazard_quantiles(view, (0.975, 0.5, 0.025)))
    mean = _mean(watch, width)
    if mean is None:
        return None
    # Where all came in the first interval, the middle of the likelihood stands for the top of it.
    mean = middle if mean <= 0 else mean
    home = watch.home
    out = home / -math.expm1(-watch.waited / mean) - home
    bottom, top = (
        None if each is None else each - home for each in number_quantiles(bins, (0.025, 0.975))
    )
    return Fit(
        mean=mean,
        mean_low=min(low, mean),
        mean_high=max(high, mean),
        out=out,
        out_low=min(float(bottom or 0), math.floor(out)),
        out_high=None if top is None else max(float(top), math.ceil(out)),
        none_out=chance_at_most(0, view),
        form="returns as a removal series, the number out not known",
    )


def _mean(watch: Watch, width: float) -> float | None:
    if watch.times is not None:
        return truncated_mean(watch.times, watch.waited)
    estimate = gould_pollock(watch.bins, (width,) * len(watch.bins))
    return 0.0 if math.isinf(estimate.hazard) else 1 / estimate.hazard


def hazard_quantiles(view: Outlook, chances: Sequence[float]) -> list[float]:
    """Return points of the density of the hazard that a removal series gives.

    Parameters
    ----------
    view : from :func:`calc.method.removal.stopping.outlook`
    chances : 0 to 1 each

    Returns hazards for one interval. Source: straggler_removal.
    """
    found = []
    for chance in chances:
        total, answer = 0.0, view.hazards[-1]
        for hazard, weight in zip(view.hazards, view.weights, strict=True):
            total += weight
            if total >= chance:
                answer = hazard
                break
        found.append(answer)
    return found


@dataclass(frozen=True, kw_only=True, slots=True)
class Quiet:
    """What the time since the last return says."""

    minutes: float
    per_hour: float | None
    most_out: int | None
    most_out_slow: int | None


def quiet(watch: Watch, mean: float | None, mean_high: float | None) -> Quiet:
    """Return what a quiet time rules out at 95 %.

    Returns an hour: exact Poisson limit for no event, 2.9957 over the quiet time. Number out: the
    largest not ruled out, for the mean trip and for its upper limit.

    Parameters
    ----------
    watch : the watch
    mean, mean_high : minutes, or ``None``

    Range: flying weather. Source: garwood_1936, straggler_model.
    """
    spell = watch.quiet
    if spell <= 0:
        return Quiet(minutes=0.0, per_hour=None, most_out=None, most_out_slow=None)
    return Quiet(
        minutes=spell,
        per_hour=60 * RULE_OF_THREE / spell,
        most_out=None if mean is None else most_after_quiet(spell, mean),
        most_out_slow=None if mean_high is None else most_after_quiet(spell, mean_high),
    )

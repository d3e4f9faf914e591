"""Trip times from returns: mean, limits, share home, and what a quiet time rules out."""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass

from calc.numeric.distributions import chi2_quantile, gammaincc
from calc.numeric.limits import RULE_OF_THREE, clopper_pearson
from calc.numeric.roots import root


@dataclass(frozen=True, kw_only=True, slots=True)
class MeanTime:
    """Mean of exponential times with 95 % limits; ``high`` is ``None`` without an upper limit."""

    mean: float | None
    low: float
    high: float | None
    total: float
    seen: int
    se: float | None


def censored_mean(
    events: Sequence[float],
    waiting: Sequence[float] = (),
    stopped_at_event: bool = False,
    confidence: float = 0.95,
) -> MeanTime:
    r"""Return the mean of exponential times of which some are cut off.

    :math:`\hat\tau = S/d`, S all times together, d the events. Limits
    :math:`2S/\chi^2_{1-a/2}(2d+2)` to :math:`2S/\chi^2_{a/2}(2d)` where the watch ended at a fixed
    clock time, with 2d in both where it ended at the d-th event.

    Parameters
    ----------
    events : times seen to end, any one unit
    waiting : times waited for those not seen to end
    stopped_at_event : the watch ended with the last event
    confidence : two-sided

    Returns a :class:`MeanTime` in the same unit; without an event only the lower limit, which is
    then one-sided, S/2.9957 at 95 %.

    Raises ``ValueError`` if no time has passed. Range: exponential times, cut off by the clock and
    not by what the animals do. Source: censored_exponential.
    """
    total, d = math.fsum(events) + math.fsum(waiting), len(events)
    if total <= 0:
        raise ValueError("no time has passed")
    if d == 0:
        low = total / -math.log(1 - confidence)
        return MeanTime(mean=None, low=low, high=None, total=total, seen=0, se=None)
    tail = (1 - confidence) / 2
    more = 0 if stopped_at_event else 2
    return MeanTime(
        mean=total / d,
        low=2 * total / chi2_quantile(1 - tail, 2 * d + more),
        high=2 * total / chi2_quantile(tail, 2 * d),
        total=total,
        seen=d,
        se=total / d / math.sqrt(d),
    )


def grouped_mean(returns: Sequence[int], still_out: int, interval: float) -> MeanTime:
    r"""Return the mean time from returns counted in equal intervals, the number out known.

    Each animal away comes home in an interval with chance p: :math:`\hat p = d/n`, n the intervals
    lived through by all animals together, :math:`\tau = -h/\ln(1-p)`; limits from the exact limits
    of p.

    Parameters
    ----------
    returns : animals home in each interval, one at least
    still_out : animals known to be away at the end
    interval : h, length of each interval

    Returns a :class:`MeanTime` in the unit of ``interval``. Range: constant p. Source:
    censored_exponential (geometric form), clopper_pearson_1934.
    """
    d = sum(returns)
    lived = sum(place * each for place, each in enumerate(returns, start=1))
    lived += still_out * len(returns)
    low_p, high_p = clopper_pearson(d, lived)
    # All home in the first interval: the middle of it is all that is known.
    mean = interval / 2 if d == lived else -interval / math.log1p(-d / lived)
    return MeanTime(
        mean=mean,
        low=0.0 if high_p >= 1 else -interval / math.log1p(-high_p),
        high=-interval / math.log1p(-low_p),
        total=lived * interval,
        seen=d,
        se=None,
    )


def truncated_mean(times: Sequence[float], waited: float) -> float | None:
    r"""Return the mean trip from the times of those seen home, the number away unknown.

    Maximum likelihood for exponential times cut off at w: with x = w/tau,
    :math:`\bar t/w = 1/x - 1/(e^x-1)`. The number away at the start is then d/(1 - exp(-x)).

    Parameters
    ----------
    times : times of return, each at most ``waited``, one at least
    waited : w, same unit

    Returns the mean, or ``None`` where the returns do not thin out. Range: as
    :func:`censored_mean`. Source: straggler_removal.
    """
    share = math.fsum(times) / len(times) / waited

    def mean_share(x: float) -> float:
        return 1 / x - 1 / math.expm1(x) if x < 700 else 1 / x

    least, most = 0.05, 1e6
    if share >= mean_share(least):
        return None
    if share <= mean_share(most):
        return waited / most
    return waited / math.exp(
        root(lambda log: mean_share(math.exp(log)) - share, math.log(least), math.log(most))
    )


def share_home(minutes: float, mean: float) -> float:
    """Return the share of exponential trips over by then, 1 - exp(-t/tau)."""
    return -math.expm1(-minutes / mean) if mean > 0 else 1.0


def gamma_share_out(minutes: float, mean: float, shape: float) -> float:
    r"""Return the share still out of those away in steady traffic, for gamma trips.

    :math:`G(t) = Q(a+1, t/\theta) - \frac{t}{a\theta} Q(a, t/\theta)` with
    :math:`\theta = \mu/a` and Q the upper regularised incomplete gamma function.

    Parameters
    ----------
    minutes : t, time since you began to catch those coming home
    mean : mu, mean trip
    shape : a; 1 is the exponential

    Range: traffic steady before the start, nobody leaves after it. Source: residual_trips.
    """
    scale = mean / shape
    out = gammaincc(shape + 1, minutes / scale)
    return max(0.0, out - minutes / mean * gammaincc(shape, minutes / scale))


def wait_for_share(share: float, mean: float) -> float:
    """Return the minutes by which this share of those away is home, -tau ln(1 - share)."""
    return -mean * math.log1p(-share)


def chance_all_home(minutes: float, mean: float, away: float) -> float:
    """Return the chance that all of ``away`` animals are home by then, (1 - exp(-t/tau))^m."""
    return math.pow(share_home(minutes, mean), away)


def wait_for_all(chance: float, mean: float, away: float) -> float:
    """Return the minutes until all are home with this chance, -tau ln(1 - P^(1/m)).

    ``away`` is m, above 0; below 1 it counts as 1. Source: straggler_model.
    """
    return -mean * math.log(-math.expm1(math.log(chance) / max(away, 1.0)))


def quiet_for(number: float, mean: float, confidence: float = 0.95) -> float:
    """Return the quiet minutes that rule out this many still away, -ln(1 - conf) tau / R."""
    return -math.log(1 - confidence) * mean / number


def most_after_quiet(quiet: float, mean: float) -> int:
    r"""Return the largest number still away that a quiet time does not rule out at 95 %.

    Largest whole R with :math:`e^{-R w/\tau} \ge 0.05`.

    Parameters
    ----------
    quiet : w, minutes since the last return, above 0
    mean : tau, minutes

    Range: flying weather throughout. Source: straggler_model.
    """
    return math.floor(RULE_OF_THREE * mean / quiet)


def mean_last_home(mean: float, away: int) -> float:
    """Return the mean time until the last of ``away`` is home, tau (1 + 1/2 + ... + 1/m)."""
    return mean * math.fsum(1 / each for each in range(1, away + 1))


def away_in_traffic(per_minute: float, mean: float) -> float:
    """Return the number away in steady traffic, returns per minute times the mean trip.

    Source: little_1961.
    """
    return per_minute * mean

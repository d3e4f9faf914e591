"""Comparing jobs: two rates, repeat counts, two totals, and the timing of a season."""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass

from calc.numeric.distributions import NORMAL_975, chi2_sf
from calc.numeric.limits import clopper_pearson


@dataclass(frozen=True, kw_only=True, slots=True)
class RateRatio:
    """Ratio of two rates: estimate, exact limits, and chances under the ratio asked about."""

    ratio: float | None
    low: float
    high: float | None
    two_sided: float
    one_sided: float


def rate_ratio(
    count_1: int,
    exposure_1: float,
    count_2: int,
    exposure_2: float,
    asked: float = 1.0,
    confidence: float = 0.95,
) -> RateRatio:
    """Compare two counts over their exposures, exactly.

    Given ``n = x1 + x2``, ``x1`` is binomial with the share ``pi = r t1 / (r t1 + t2)``. Limits of
    that share (Clopper and Pearson) give those of the ratio, ``p t2 / ((1 - p) t1)``.

    Parameters
    ----------
    count_1, count_2 : events, not both 0
    exposure_1, exposure_2 : minutes, jobs or any one unit for both, above 0
    asked : ratio r under which the chances are computed
    confidence : of the two-sided central limits

    Returns
    -------
    ratio (None without limit), limits, two-sided chance (sum of the likelihoods no larger than
    that of the outcome) and the chance of ``x1`` or more

    Range: events one by one, at a steady rate while watched; n up to about 1e5. Source: after
    Przyborowski and Wilenski 1940; examples of Gu et al. 2008 (key ``gu_2008``).
    """
    total = count_1 + count_2
    share = asked * exposure_1 / (asked * exposure_1 + exposure_2)
    low, high = clopper_pearson(count_1, total, confidence)
    chances = [_binomial(k, total, share) for k in range(total + 1)]
    # A hair above 1, so that the outcome itself is never lost to the last digit.
    bar = chances[count_1] * (1 + 1e-7)
    return RateRatio(
        ratio=count_1 * exposure_2 / (count_2 * exposure_1) if count_2 else None,
        low=_odds(low) * exposure_2 / exposure_1,
        high=None if high >= 1 else _odds(high) * exposure_2 / exposure_1,
        two_sided=min(1.0, math.fsum(each for each in chances if each <= bar)),
        one_sided=min(1.0, math.fsum(chances[count_1:])),
    )


@dataclass(frozen=True, kw_only=True, slots=True)
class Deviate:
    """A normal deviate and the chance of one as large, one side."""

    z: float
    one_sided: float


def square_root_test(
    count_1: int, exposure_1: float, count_2: int, exposure_2: float, asked: float = 1.0
) -> Deviate:
    """Compare two rates quickly: ``2 (sqrt(x1 + 3/8) - sqrt(d (x2 + 3/8))) / sqrt(1 + d)``.

    ``d = r t1 / t2``. Parameters as for :func:`rate_ratio`. Range: counts above about 5. Source:
    Gu et al. 2008 (key ``gu_2008``).
    """
    d = asked * exposure_1 / exposure_2
    z = 2 * (math.sqrt(count_1 + 0.375) - math.sqrt(d * (count_2 + 0.375))) / math.sqrt(1 + d)
    return Deviate(z=z, one_sided=math.erfc(z / math.sqrt(2)) / 2)


@dataclass(frozen=True, kw_only=True, slots=True)
class Raggedness:
    """Repeat counts against chance alone."""

    mean: float
    ratio: float
    dispersion: float
    df: int
    chance: float
    error: float
    error_by_chance: float


def raggedness(counts: Sequence[float]) -> Raggedness:
    """Ask whether repeat counts differ more than chance makes them: ``D = sum (x - m)^2 / m``.

    Parameters
    ----------
    counts : two or more, their sum above 0

    Returns
    -------
    mean, variance over mean, D, its degrees of freedom, the chance of so large a D, the standard
    error of the mean from the counts, and the one that chance alone would give

    Range: mean above about 1. Source: index of dispersion, chi-square with n - 1 degrees of
    freedom; tested against scipy.
    """
    n = len(counts)
    mean = math.fsum(counts) / n
    squares = math.fsum((each - mean) ** 2 for each in counts)
    variance = squares / (n - 1)
    dispersion = squares / mean
    return Raggedness(
        mean=mean,
        ratio=variance / mean,
        dispersion=dispersion,
        df=n - 1,
        chance=chi2_sf(dispersion, n - 1),
        error=math.sqrt(variance / n),
        error_by_chance=math.sqrt(mean / n),
    )


def ratio_of_totals(
    total_1: float, error_1: float, total_2: float, error_2: float
) -> tuple[float, float, float]:
    """Return the ratio of two totals with 95 % limits, from their standard errors.

    ``(A/B) exp(+-1.96 sqrt((sA/A)^2 + (sB/B)^2))``. Range: relative errors below about 0.3.
    Source: delta method on the logarithm.
    """
    spread = NORMAL_975 * math.hypot(error_1 / total_1, error_2 / total_2)
    ratio = total_1 / total_2
    return ratio, ratio * math.exp(-spread), ratio * math.exp(spread)


@dataclass(frozen=True, kw_only=True, slots=True)
class Timing:
    """When a season came: weeks counted from 0 at the begin of the first."""

    total: float
    early: float
    median: float
    late: float
    mean: float
    spread: float
    shares: tuple[float, ...]


def timing(weekly: Sequence[float]) -> Timing:
    """Return the timing curve of weekly counts.

    The cumulative share at each week's end, read off linearly at 10, 50 and 90 %; mean and
    standard deviation of the weeks' middles, divisor n.

    Parameters
    ----------
    weekly : counts a week, in order, sum above 0; the same effort each week, else divide first

    Range: weeks without a gap. Source: arithmetic of grouped dates.
    """
    total = math.fsum(weekly)
    mean = math.fsum((week + 0.5) * each for week, each in enumerate(weekly)) / total
    squares = math.fsum((week + 0.5 - mean) ** 2 * each for week, each in enumerate(weekly))
    running, shares = 0.0, []
    for each in weekly:
        running += each
        shares.append(running / total)
    return Timing(
        total=total,
        early=_reach(weekly, 0.1 * total),
        median=_reach(weekly, 0.5 * total),
        late=_reach(weekly, 0.9 * total),
        mean=mean,
        spread=math.sqrt(squares / total),
        shares=tuple(shares),
    )


def _reach(weekly: Sequence[float], wanted: float) -> float:
    """Return the week at which the running sum reaches a value."""
    running = 0.0
    for week, each in enumerate(weekly):
        if each and running + each >= wanted - 1e-9:
            return week + (wanted - running) / each
        running += each
    return float(len(weekly))


def _odds(share: float) -> float:
    return share / (1 - share)


def _binomial(k: int, n: int, p: float) -> float:
    log = math.lgamma(n + 1) - math.lgamma(k + 1) - math.lgamma(n - k + 1)
    return math.exp(log + k * math.log(p) + (n - k) * math.log1p(-p))

"""Limits of counts and shares: quantiles of chi-square, beta and Student's t by bisection."""

from __future__ import annotations

import math
from collections.abc import Callable
from functools import lru_cache

from calc.method.distributions import beta_lower, chi2_upper, student_two_sided

NORMAL_95_ONE_SIDED = 1.6448536269514722
"""95 % point of the standard normal distribution, one side."""

RULE_OF_THREE = -math.log(0.05)
"""2.9957: with no event seen, the mean number not ruled out at 95 %, one side."""


def _where(rising: Callable[[float], float], wanted: float, low: float, high: float) -> float:
    """Return where a rising function reaches a value, by bisection to the last digits."""
    for _ in range(200):
        middle = (low + high) / 2
        if middle in {low, high}:
            break
        low, high = (middle, high) if rising(middle) < wanted else (low, middle)
    return (low + high) / 2


def gamma_upper(a: float, z: float) -> float:
    """Return Q(a, z), the upper regularised incomplete gamma function.

    Parameters
    ----------
    a : shape, above 0
    z : lower end of the integral, 0 or more

    Range: a up to about 1e5. Source: :func:`calc.method.distributions.chi2_upper`.
    """
    return chi2_upper(2 * z, 2 * a)


def chi2_quantile(chance: float, df: float) -> float:
    """Return the value that chi-square stays below with this chance.

    Parameters
    ----------
    chance : 0 to 1, both excluded
    df : degrees of freedom, above 0

    Range: df up to about 1e5. Source: inverse of :func:`chi2_upper`.
    """
    high = df + 10.0
    while 1 - chi2_upper(high, df) < chance:
        high *= 2
    if chance < 0.5:
        return _where(lambda x: 1 - chi2_upper(x, df), chance, 0.0, high)
    # Near 1 the upper tail keeps the digits that 1 - Q would lose.
    return _where(lambda x: -chi2_upper(x, df), chance - 1, 0.0, high)


def beta_quantile(chance: float, a: float, b: float) -> float:
    """Return the value that a beta variable stays below with this chance.

    Parameters
    ----------
    chance : 0 to 1, both excluded
    a, b : shapes, above 0

    Range: a and b up to about 1e6. Source: inverse of :func:`beta_lower`.
    """
    return _where(lambda x: beta_lower(a, b, x), chance, 0.0, 1.0)


@lru_cache(maxsize=64)
def student_quantile(two_sided: float, df: float) -> float:
    """Return the t that is passed on either side with the chance ``two_sided``.

    Parameters
    ----------
    two_sided : chance outside, such as 0.05 for 95 % limits
    df : degrees of freedom, 1 or more; need not be whole

    Range: two_sided 1e-6 to 1. Source: inverse of :func:`student_two_sided`.
    """
    return _where(lambda t: -student_two_sided(t, df), -two_sided, 0.0, _most_t(two_sided, df))


def _most_t(two_sided: float, df: float) -> float:
    high = 4.0
    while student_two_sided(high, df) > two_sided:
        high *= 4
    return high


def garwood(count: int, confidence: float = 0.95) -> tuple[float, float]:
    r"""Return exact limits of the mean of a Poisson count.

    :math:`\chi^2_{a/2}(2x)/2` to :math:`\chi^2_{1-a/2}(2x+2)/2`, with 0 below a count of 0.

    Parameters
    ----------
    count : x, 0 or more
    confidence : two-sided, such as 0.95

    Range: counts up to about 5e4. Source: garwood_1936.
    """
    tail = (1 - confidence) / 2
    low = chi2_quantile(tail, 2 * count) / 2 if count else 0.0
    return low, chi2_quantile(1 - tail, 2 * count + 2) / 2


def rate_limits(count: int, exposure: float, confidence: float = 0.95) -> tuple[float, float]:
    """Return exact limits of a rate, the limits of the count over the time watched.

    Parameters
    ----------
    count : events, 0 or more
    exposure : time watched, above 0
    confidence : two-sided

    Returns limits per unit of ``exposure``. Range: as :func:`garwood`. Source: garwood_1936.
    """
    low, high = garwood(count, confidence)
    return low / exposure, high / exposure


def garwood_upper(count: int, confidence: float = 0.95) -> float:
    """Return the one-sided exact upper limit of the mean of a Poisson count.

    Parameters
    ----------
    count : x, 0 or more
    confidence : one-sided

    Range: as :func:`garwood`. Source: garwood_1936.
    """
    return chi2_quantile(confidence, 2 * count + 2) / 2


def clopper_pearson(k: int, n: int, confidence: float = 0.95) -> tuple[float, float]:
    """Return exact limits of a share.

    BetaInv(a/2; k, n - k + 1) to BetaInv(1 - a/2; k + 1, n - k); 0 at k = 0, 1 at k = n.

    Parameters
    ----------
    k : number of the class, 0 to n
    n : number looked at, 1 or more
    confidence : two-sided

    Range: each one picked singly. Source: clopper_pearson_1934.
    """
    tail = (1 - confidence) / 2
    low = beta_quantile(tail, k, n - k + 1) if k else 0.0
    return low, beta_quantile(1 - tail, k + 1, n - k) if k < n else 1.0


def wilson(k: int, n: int, z: float) -> tuple[float, float]:
    r"""Return Wilson's limits of a share.

    :math:`\frac{\hat p + z^2/2n \mp z\sqrt{\hat p(1-\hat p)/n + z^2/4n^2}}{1 + z^2/n}`.

    Parameters
    ----------
    k : number of the class, 0 to n
    n : number looked at, 1 or more
    z : normal quantile, such as 1.96

    Range: each one picked singly. Source: wilson_1927.
    """
    share, extra = k / n, z * z / n
    middle = share + extra / 2
    reach = z * math.sqrt(share * (1 - share) / n + extra / (4 * n))
    return max(0.0, (middle - reach) / (1 + extra)), min(1.0, (middle + reach) / (1 + extra))


@lru_cache(maxsize=64)
def normal_quantile(two_sided: float) -> float:
    """Return the normal deviate that is passed on either side with this chance.

    Parameters
    ----------
    two_sided : chance outside, such as 0.05

    Range: 1e-12 to 1. Source: ``math.erfc``.
    """
    return _where(lambda z: -math.erfc(z / math.sqrt(2)), -two_sided, 0.0, 40.0)

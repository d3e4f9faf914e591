"""Limits of counts, rates and shares."""

from __future__ import annotations

import math

from calc.numeric.distributions import beta_quantile, chi2_quantile

RULE_OF_THREE = -math.log(0.05)
"""2.9957: with no event seen, the mean number not ruled out at 95 %, one side."""


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

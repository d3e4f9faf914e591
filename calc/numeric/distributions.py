"""Tail areas and quantiles of the standard distributions."""

from __future__ import annotations

import math
from functools import lru_cache
from statistics import NormalDist

from calc.numeric.roots import root

NORMAL = NormalDist()
"""The standard normal distribution."""

NORMAL_975 = NORMAL.inv_cdf(0.975)
"""1.96: 97.5 % point of the standard normal distribution."""

NORMAL_95 = NORMAL.inv_cdf(0.95)
"""1.645: 95 % point of the standard normal distribution."""

CHI2_95_1 = NORMAL_975**2
"""3.84: 95 % point of chi-square with one degree of freedom."""

_TINY = 1e-300
_STEPS = 5000


def chi2_sf(x: float, df: float) -> float:
    """Return the chance that chi-square exceeds ``x``.

    Q(df/2, x/2), the upper regularised incomplete gamma function.

    Parameters
    ----------
    x : value of chi-square, 0 or more
    df : degrees of freedom, above 0

    Range: any; relative error about 1e-12. Source: standard series and continued fraction.
    """
    a, z = df / 2, x / 2
    if z <= 0:
        return 1.0
    front = math.exp(-z + a * math.log(z) - math.lgamma(a))
    if z < a + 1:
        return max(0.0, 1 - front * _gamma_series(a, z))
    return front * _gamma_fraction(a, z)


def _gamma_series(a: float, z: float) -> float:
    term = total = 1 / a
    for step in range(1, _STEPS):
        term *= z / (a + step)
        total += term
        if term < total * 1e-16:
            break
    return total


def _gamma_fraction(a: float, z: float) -> float:
    # Lentz's way of running a continued fraction forwards.
    b = z + 1 - a
    c, d = 1 / _TINY, 1 / b
    value = d
    for step in range(1, _STEPS):
        factor = step * (a - step)
        b += 2
        d = 1 / _away_from_zero(factor * d + b)
        c = _away_from_zero(b + factor / c)
        value *= c * d
        if abs(c * d - 1) < 1e-15:
            break
    return value


def betainc(a: float, b: float, x: float) -> float:
    """Return the regularised incomplete beta function I_x(a, b).

    Parameters
    ----------
    a, b : shape parameters, above 0
    x : upper end, 0 to 1

    Range: a and b up to about 1e6; relative error about 1e-11. Source: standard continued fraction.
    """
    if x <= 0 or x >= 1:
        return float(x >= 1)
    if x > (a + 1) / (a + b + 2):
        return 1 - betainc(b, a, 1 - x)
    front = math.exp(
        math.lgamma(a + b) - math.lgamma(a) - math.lgamma(b) + a * math.log(x) + b * math.log1p(-x)
    )
    return front * _beta_fraction(a, b, x) / a


def _beta_fraction(a: float, b: float, x: float) -> float:
    c, d = 1.0, 1 / _away_from_zero(1 - (a + b) * x / (a + 1))
    value = d
    for m in range(1, _STEPS):
        even = m * (b - m) * x / ((a + 2 * m - 1) * (a + 2 * m))
        odd = -(a + m) * (a + b + m) * x / ((a + 2 * m) * (a + 2 * m + 1))
        change = 1.0
        for factor in (even, odd):
            d = 1 / _away_from_zero(1 + factor * d)
            c = _away_from_zero(1 + factor / c)
            change = c * d
            value *= change
        if abs(change - 1) < 1e-15:
            break
    return value


def _away_from_zero(x: float) -> float:
    return x if abs(x) > _TINY else _TINY


def student_p_value(t: float, df: float) -> float:
    """Return the chance that Student's t lies further from 0 than ``t``, on both sides.

    Parameters
    ----------
    t : value of t
    df : degrees of freedom, above 0

    Range: any. Source: I_x(df/2, 1/2) with x = df/(df + t^2).
    """
    return betainc(df / 2, 0.5, df / (df + t * t))


@lru_cache(maxsize=64)
def student_quantile(two_sided: float, df: float) -> float:
    """Return the t that is passed on either side with the chance ``two_sided``.

    Parameters
    ----------
    two_sided : chance outside, such as 0.05 for 95 % limits
    df : degrees of freedom, above 0; need not be whole

    Range: two_sided 1e-6 to 1. Source: inverse of :func:`student_p_value`.
    """
    high = 4.0
    while student_p_value(high, df) > two_sided:
        high *= 4
    return root(lambda t: two_sided - student_p_value(t, df), 0.0, high)


def normal_quantile(two_sided: float) -> float:
    """Return the normal deviate that is passed on either side with this chance.

    Parameters
    ----------
    two_sided : chance outside, such as 0.05

    Range: above 0, to 1. Source: ``statistics.NormalDist``.
    """
    return -NORMAL.inv_cdf(two_sided / 2)


def gammaincc(a: float, z: float) -> float:
    """Return Q(a, z), the upper regularised incomplete gamma function.

    Parameters
    ----------
    a : shape, above 0
    z : lower end of the integral, 0 or more

    Range: a up to about 1e5. Source: :func:`chi2_sf`.
    """
    return chi2_sf(2 * z, 2 * a)


def chi2_quantile(chance: float, df: float) -> float:
    """Return the value that chi-square stays below with this chance.

    Parameters
    ----------
    chance : 0 to 1, both excluded
    df : degrees of freedom, above 0

    Range: df up to about 1e5. Source: inverse of :func:`chi2_sf`.
    """
    high = df + 10.0
    while 1 - chi2_sf(high, df) < chance:
        high *= 2
    if chance < 0.5:
        return root(lambda x: 1 - chi2_sf(x, df) - chance, 0.0, high)
    # Near 1 the upper tail keeps the digits that 1 - Q would lose.
    return root(lambda x: 1 - chance - chi2_sf(x, df), 0.0, high)


def beta_quantile(chance: float, a: float, b: float) -> float:
    """Return the value that a beta variable stays below with this chance.

    Parameters
    ----------
    chance : 0 to 1, both excluded
    a, b : shapes, above 0

    Range: a and b up to about 1e6. Source: inverse of :func:`betainc`.
    """
    return root(lambda x: betainc(a, b, x) - chance, 0.0, 1.0)


def binomial_at_least(x: int, n: int, p: float) -> float:
    """Return the chance of ``x`` or more successes in ``n`` trials.

    Parameters
    ----------
    x : successes, 0 to n
    n : trials
    p : chance of one success, 0 to 1

    Range: n up to about 1e6. Source: I_p(x, n - x + 1).
    """
    if x <= 0 or x > n:
        return float(x <= 0)
    return betainc(x, n - x + 1, p)

"""Tail areas and quantiles of the standard distributions, from :mod:`math` alone."""

from __future__ import annotations

import math

NORMAL_975 = 1.959963984540054
"""97.5 % point of the standard normal distribution."""

CHI2_95_1 = 3.841458820694124
"""95 % point of chi-square with one degree of freedom."""

_TINY = 1e-300
_STEPS = 5000


def chi2_upper(x: float, df: float) -> float:
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


def beta_lower(a: float, b: float, x: float) -> float:
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
        return 1 - beta_lower(b, a, 1 - x)
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


def student_two_sided(t: float, df: float) -> float:
    """Return the chance that Student's t lies further from 0 than ``t``, on both sides.

    Parameters
    ----------
    t : value of t
    df : degrees of freedom, above 0

    Range: any. Source: I_x(df/2, 1/2) with x = df/(df + t^2).
    """
    return beta_lower(df / 2, 0.5, df / (df + t * t))


def binomial_upper_half(x: int, n: int) -> float:
    """Return the chance of ``x`` or more heads in ``n`` fair throws.

    Parameters
    ----------
    x : heads, 0 to n
    n : throws

    Range: n up to about 1e6. Source: I_(1/2)(x, n - x + 1).
    """
    return 1.0 if x <= 0 else beta_lower(x, n - x + 1, 0.5)

"""Removal with passes of unequal length: Leslie's regression and the likelihood with effort."""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass

from calc.method.removal import falls
from calc.numeric.distributions import student_p_value, student_quantile
from calc.numeric.roots import root


@dataclass(frozen=True, kw_only=True, slots=True)
class Leslie:
    """Regression of the catch per effort on the catch made before."""

    form: str
    number: float
    catchability: float
    number_se: float
    catchability_se: float
    wald: tuple[float, float]
    wald_catchability: tuple[float, float]
    fieller: tuple[float, float | None] | None
    slope_chance: float
    r_squared: float


def leslie(catches: Sequence[float], effort: Sequence[float], ricker: bool = False) -> Leslie:
    """Estimate N from the catch per effort, which falls along a line (Leslie and Davis 1939).

    Least squares of c_i/f_i = q N - q K_i with K_i the catch before pass i; q = -slope,
    N = intercept/q; SE(N) = (s/q) sqrt(1/n + (N - mean K)^2/SS_K); limits N +/- t(n - 2) SE.
    Fieller's limits are mean K + d with the roots d of
    (q^2 - t^2 s^2/SS) d^2 - 2 q ybar d + ybar^2 - t^2 s^2/n = 0.

    Parameters
    ----------
    catches : catch on each pass, 3 passes or more
    effort : effort of each pass, above 0, such as minutes
    ricker : take K_i + c_i/2 instead, Ricker's correction for large catches

    Returns a :class:`Leslie`, q in parts per unit of effort; ``fieller`` has no upper end where the
    slope is not surely below zero, and is ``None`` where there is no limit at all.

    Raises ``ValueError`` for fewer than 3 passes or a slope not below zero. Range: effort known,
    catch in proportion to effort. Source: seber_2002 p. 298 and 299; ricker_1975.
    """
    n = len(catches)
    if n < 3:
        raise ValueError("three passes or more are needed")
    rate = [catch / length for catch, length in zip(catches, effort, strict=True)]
    before = [sum(catches[:place]) + (catches[place] / 2 if ricker else 0) for place in range(n)]
    mean_x, mean_y = sum(before) / n, sum(rate) / n
    ss = sum((x - mean_x) ** 2 for x in before)
    if ss <= 0:
        raise ValueError("the catch does not fall")
    slope = sum((x - mean_x) * (y - mean_y) for x, y in zip(before, rate, strict=True)) / ss
    if slope >= 0:
        raise ValueError("the catch per effort does not fall")
    q, residual = -slope, _residual(before, rate, mean_x, mean_y, slope)
    number = mean_x + mean_y / q
    s, t = math.sqrt(residual / (n - 2)), student_quantile(0.05, n - 2)
    number_se = s / q * math.sqrt(1 / n + (number - mean_x) ** 2 / ss)
    q_se = s / math.sqrt(ss)
    around = sum((y - mean_y) ** 2 for y in rate)
    return Leslie(
        form="Leslie & Davis 1939, line of catch per effort",
        number=number,
        catchability=q,
        number_se=number_se,
        catchability_se=q_se,
        wald=(number - t * number_se, number + t * number_se),
        wald_catchability=(q - t * q_se, q + t * q_se),
        fieller=_fieller(q, mean_x, mean_y, (t * s) ** 2 / n, (t * q_se) ** 2),
        slope_chance=student_p_value(q / q_se, n - 2) if q_se > 0 else 0.0,
        r_squared=1 - residual / around,
    )


def _residual(
    x: Sequence[float], y: Sequence[float], mean_x: float, mean_y: float, slope: float
) -> float:
    return sum((b - mean_y - slope * (a - mean_x)) ** 2 for a, b in zip(x, y, strict=True))


def _fieller(
    q: float, mean_x: float, mean_y: float, mean_part: float, slope_part: float
) -> tuple[float, float | None] | None:
    a, b, c = q * q - slope_part, q * mean_y, mean_y * mean_y - mean_part
    inner = b * b - a * c
    if inner < 0:
        return None
    root = math.sqrt(inner)
    if a <= 0:
        # The slope may be zero: only the nearer root bounds N, from below.
        return (mean_x + c / (b + root), None) if c > 0 else None
    return mean_x + (b - root) / a, mean_x + (b + root) / a


@dataclass(frozen=True, kw_only=True, slots=True)
class EffortEstimate:
    """Maximum-likelihood estimate with effort; ``hazard`` per unit of effort."""

    form: str
    number: float
    hazard: float
    number_se: float | None
    caught: float


def gould_pollock(catches: Sequence[int], effort: Sequence[float]) -> EffortEstimate:
    """Estimate N by maximum likelihood where passes differ in length (Gould and Pollock 1997).

    E_i effort before pass i, F all effort; th_i = exp(-K E_i)(1 - exp(-K f_i)); K maximises
    sum c_i ln(th_i / sum th); caught = 1 - exp(-K F); N = T/caught;
    Var(N) = N (1 - caught)/caught + (dN/dK)^2 Var(K), dN/dK = -T F exp(-K F)/caught^2,
    Var(K) = -1/(second derivative of the log likelihood).

    Parameters
    ----------
    catches : catch on each pass, 2 passes or more
    effort : effort of each pass, above 0, such as minutes

    Returns an :class:`EffortEstimate`, K per unit of effort; K is infinite and the error ``None``
    where all were caught on the first pass.

    Raises ``ValueError`` if the catch does not fall. Range: K the same for every minute.
    Source: gould_pollock_1997 (model); variance derived here, equal to seber_2002 eq. 7.23 at
    equal effort.
    """
    if not falls(catches, effort):
        raise ValueError("the catch does not fall")
    form = "Gould & Pollock 1997, likelihood with minutes"
    total, whole = sum(catches), sum(effort)
    if total == catches[0]:
        return EffortEstimate(form=form, number=total, hazard=math.inf, number_se=None, caught=1.0)
    hazard = math.exp(
        root(
            lambda k: log_likelihood_slope(math.exp(k), catches, effort),
            math.log(1e-9 / whole),
            math.log(1e4 / whole),
        )
    )
    caught = -math.expm1(-hazard * whole)
    number = total / caught
    curvature = _curvature(hazard, catches, effort)
    change = total * whole * math.exp(-hazard * whole) / caught**2
    variance = number * (1 - caught) / caught + change**2 / curvature if curvature > 0 else None
    return EffortEstimate(
        form=form,
        number=number,
        hazard=hazard,
        number_se=None if variance is None else math.sqrt(variance),
        caught=caught,
    )


def log_likelihood(hazard: float, catches: Sequence[int], effort: Sequence[float]) -> float:
    """Return sum c_i ln(th_i / sum th), the log likelihood of the hazard given the total caught.

    Parameters
    ----------
    hazard : K, per unit of effort, above 0
    catches, effort : as :func:`gould_pollock`

    Source: gould_pollock_1997.
    """
    spent = value = 0.0
    for catch, length in zip(catches, effort, strict=True):
        if catch:
            value += catch * (math.log(-math.expm1(-hazard * length)) - hazard * spent)
        spent += length
    return value - sum(catches) * math.log(-math.expm1(-hazard * spent))


def log_likelihood_slope(hazard: float, catches: Sequence[int], effort: Sequence[float]) -> float:
    """Return the first derivative of :func:`log_likelihood` in the hazard."""
    spent = value = 0.0
    for catch, length in zip(catches, effort, strict=True):
        value += catch * (_pull(hazard, length) - spent)
        spent += length
    return value - sum(catches) * _pull(hazard, spent)


def _pull(hazard: float, length: float) -> float:
    exponent = hazard * length
    return 0.0 if exponent > 700 else length / math.expm1(exponent)


def _curvature(hazard: float, catches: Sequence[int], effort: Sequence[float]) -> float:
    """Return minus the second derivative of the log likelihood."""

    def part(length: float) -> float:
        half = hazard * length / 2
        return 0.0 if half > 350 else (length / 2 / math.sinh(half)) ** 2

    pieces = sum(catch * part(length) for catch, length in zip(catches, effort, strict=True))
    return pieces - sum(catches) * part(sum(effort))

"""Does the catch fall as it should: expected catches and the chi-square test of fit."""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass

from calc.method.removal.effort import gould_pollock
from calc.numeric.distributions import binomial_at_least, chi2_sf

SMALLEST_EXPECTED = 5.0
"""Passes with a smaller expected catch are pooled with their neighbour before the test."""


@dataclass(frozen=True, kw_only=True, slots=True)
class FitTest:
    """Chi-square with its degrees of freedom and the chance of a larger one."""

    chi2: float
    df: int
    p_value: float


def expected_catches(number: float, p: float, lengths: Sequence[float]) -> tuple[float, ...]:
    """Return the catch to expect on each pass.

    e_i = N (1 - p)^(E_i) (1 - (1 - p)^(f_i)), E_i the length of the passes before.

    Parameters
    ----------
    number : N
    p : capture probability of a pass of length 1, 0 to 1
    lengths : length of each pass, above 0; 1 for equal passes

    Range: closed nest, constant p. Source: bohlin_1989 (equal passes), gould_pollock_1997.
    """
    expected, here = [], number
    for length in lengths:
        left = here * (1 - p) ** length
        expected.append(here - left)
        here = left
    return tuple(expected)


def fit_test(catches: Sequence[int], effort: Sequence[float]) -> FitTest | None:
    """Test whether the catches fall as equal chances on every pass would make them.

    chi2 = sum (c_i - e_i)^2/e_i with e_i from maximum likelihood; degrees of freedom are the
    groups less 2, after passes with e_i below 5 are pooled with a neighbour.

    Parameters
    ----------
    catches : catch on each pass, falling
    effort : minutes of each pass, or 1 for each

    Returns a :class:`FitTest`, ``None`` where fewer than 3 groups remain. Raises ``ValueError`` if
    the catch does not fall. Range: weak below about 200 animals. Source: zippin_1956.
    """
    fit = gould_pollock(catches, effort)
    if fit.number_se is None:
        return None
    observed, expected = _pooled(catches, _by_hazard(fit.number, fit.hazard, effort))
    df = len(observed) - 2
    if df < 1:
        return None
    chi2 = sum((c - e) ** 2 / e for c, e in zip(observed, expected, strict=True))
    return FitTest(chi2=chi2, df=df, p_value=chi2_sf(chi2, df))


def _by_hazard(number: float, hazard: float, effort: Sequence[float]) -> tuple[float, ...]:
    mean = sum(effort) / len(effort)
    return expected_catches(number, -math.expm1(-hazard * mean), [each / mean for each in effort])


def _pooled(catches: Sequence[int], expected: Sequence[float]) -> tuple[list[float], list[float]]:
    """Return observed and expected catches, small passes pooled from the last one backwards."""
    observed_groups: list[float] = []
    expected_groups: list[float] = []
    c_sum = e_sum = 0.0
    for c, e in zip(reversed(catches), reversed(expected), strict=True):
        c_sum, e_sum = c_sum + c, e_sum + e
        if e_sum >= SMALLEST_EXPECTED:
            observed_groups.append(c_sum)
            expected_groups.append(e_sum)
            c_sum = e_sum = 0.0
    if e_sum > 0 and expected_groups:
        observed_groups[-1] += c_sum
        expected_groups[-1] += e_sum
    return observed_groups, expected_groups


def last_rise_chance(catches: Sequence[int]) -> float:
    """Return how often chance alone lifts the last catch so far above the one before.

    The chance of c_k or more heads in c_k + c_(k-1) fair throws; generous, since the last catch
    should be the smaller one.

    Parameters
    ----------
    catches : catch on each of 2 equal passes or more

    Source: removal_thresholds.
    """
    before, last = catches[-2], catches[-1]
    return binomial_at_least(last, before + last, 0.5)

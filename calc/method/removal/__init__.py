"""Removal estimators for equal passes: how many were there before the first pass.

Symbols, after the sources: ``c_i`` catch on pass ``i`` of ``k``; ``T`` total caught;
``X = sum (k - i) c_i``; ``N`` number present and catchable before pass 1; ``p`` chance that one of
them is caught on one pass; ``q = 1 - p``.
"""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass

from calc.numeric.distributions import NORMAL_975
from calc.numeric.roots import first_whole, root


@dataclass(frozen=True, kw_only=True, slots=True)
class Estimate:
    """An estimate with its standard errors; ``None`` where the formula gives none."""

    form: str
    number: float
    probability: float
    number_se: float | None = None
    probability_se: float | None = None

    @property
    def wald(self) -> tuple[float, float] | None:
        """N - 1.96 SE and N + 1.96 SE, as the sources print them, not raised to the catch."""
        if self.number_se is None:
            return None
        half = NORMAL_975 * self.number_se
        return self.number - half, self.number + half

    @property
    def wald_probability(self) -> tuple[float, float] | None:
        """Limits of p, made the same way."""
        if self.probability_se is None:
            return None
        half = NORMAL_975 * self.probability_se
        return self.probability - half, self.probability + half


def weighted_sum(catches: Sequence[int]) -> int:
    """Return X = sum of (k - i) c_i, the catch already made when each later pass began."""
    k = len(catches)
    return sum((k - place) * catch for place, catch in enumerate(catches, start=1))


def falls(catches: Sequence[int], effort: Sequence[float]) -> bool:
    """Return whether the catch falls enough for a maximum of the likelihood to exist.

    The mean of the effort spent before each catch, taken at the middle of its pass, must lie below
    half of the whole effort; with equal passes this is X > T (k - 1)/2.

    Parameters
    ----------
    catches : catch on each pass
    effort : minutes, or 1, for each pass

    Source: gould_pollock_1997 (slope of the likelihood at zero hazard, our derivation).
    """
    spent = moment = 0.0
    for catch, length in zip(catches, effort, strict=True):
        moment += catch * (spent + length / 2)
        spent += length
    # Equal passes must give an exact tie for 5, 5, 5; rounding of minutes must not break it.
    return moment < sum(catches) * spent / 2 * (1 - 1e-12)


def standard_errors(number: float, p: float, k: int) -> tuple[float | None, float | None]:
    """Return the standard errors of N and of p.

    Var(N) = N (1 - q^k) q^k / D and Var(p) = (q p)^2 (1 - q^k) / (N q D), with
    D = (1 - q^k)^2 - (k p)^2 q^(k - 1).

    Parameters
    ----------
    number : N
    p : capture probability of one pass, 0 to 1
    k : passes, 2 or more

    Returns a pair; ``None`` for both where the formula is 0/0 (p = 1) or lost in rounding (p near
    0). Range: large N; for N below about 50 the errors are too small. Source: seber_2002, eq. 7.23.
    """
    q = 1 - p
    if q <= 0 or p <= 0:
        return None, None
    caught = -math.expm1(k * math.log1p(-p))
    spread = caught**2 - (k * p) ** 2 * q ** (k - 1)
    if spread <= 1e-9 * caught**2:
        return None, None
    number_var = number * caught * q**k / spread
    probability_var = (q * p) ** 2 * caught / (number * q * spread)
    return math.sqrt(number_var), math.sqrt(probability_var)


def carle_strub(catches: Sequence[int]) -> Estimate:
    """Estimate N by Carle and Strub's weighted maximum likelihood, even weights.

    N is the smallest whole n >= T with (n + 1)/(n - T + 1) x product over i of
    (kn - X - T + 1 + k - i)/(kn - X + 2 + k - i) < 1; p = T/(kN - X).

    Parameters
    ----------
    catches : catch on each pass, with at least one caught

    Raises ``ValueError`` if none was caught. Range: it returns a number even where the catch does
    not fall, and then the number comes from the weights alone. Source: carle_strub_1978, eq. 7.
    """
    k, total, x = len(catches), sum(catches), weighted_sum(catches)
    if total < 1:
        raise ValueError("none was caught")

    def past_the_top(n: int) -> bool:
        # Whole numbers of any size: exact, where a product of floats would round.
        top = math.prod(k * n - x - total + 1 + k - i for i in range(1, k + 1))
        bottom = math.prod(k * n - x + 2 + k - i for i in range(1, k + 1))
        return (n + 1) * top < (n - total + 1) * bottom

    number = first_whole(past_the_top, total)
    assert number is not None
    p = total / (k * number - x)
    number_se, probability_se = standard_errors(number, p, k)
    return Estimate(
        form="Carle & Strub 1978, equation 7, even weights",
        number=number,
        probability=p,
        number_se=number_se,
        probability_se=probability_se,
    )


def zippin(catches: Sequence[int]) -> Estimate:
    """Estimate N by maximum likelihood in the binomial-total form (Moran 1951, Zippin 1956).

    Solve q/p - k q^k/(1 - q^k) = sum (i - 1) c_i / T for q; N = T/(1 - q^k).

    Parameters
    ----------
    catches : catch on each pass

    Raises ``ValueError`` if the catch does not fall. Range: 2 passes or more, X > T (k - 1)/2.
    Source: bohlin_1989, eq. 6-7.
    """
    k, total = len(catches), sum(catches)
    if not falls(catches, [1.0] * k):
        raise ValueError("the catch does not fall")
    wanted = sum(place * catch for place, catch in enumerate(catches)) / total
    q = _quotient_with_mean(wanted, k)
    p = 1 - q
    number = total / (1 - q**k)
    number_se, probability_se = standard_errors(number, p, k)
    return Estimate(
        form="Zippin 1956, binomial-total form",
        number=number,
        probability=p,
        number_se=number_se,
        probability_se=probability_se,
    )


def _quotient_with_mean(wanted: float, k: int) -> float:
    # The left side of Zippin's equation is the mean of 0..k-1 under weights q^0..q^(k-1), which
    # keeps its digits near q = 1, where the printed form is a difference of two large numbers.
    def mean(q: float) -> float:
        weights = [q**place for place in range(k)]
        return sum(place * weight for place, weight in enumerate(weights)) / sum(weights)

    return root(lambda q: mean(q) - wanted, 0.0, 1.0)


def seber_three_pass(catches: Sequence[int]) -> Estimate:
    """Estimate N from three passes in closed form.

    X = 2 c1 + c2; r = sqrt(T^2 + 6 X T - 3 X^2); N = (6 X^2 - 3 X T - T^2 + T r)/(18 (X - T));
    p = (3 X - T - r)/(2 X).

    Parameters
    ----------
    catches : catch on each of three passes

    Raises ``ValueError`` unless c1 > c3. Range: trustworthy errors from about 50 animals.
    Source: seber_2002, eq. 7.24.
    """
    total, x = sum(catches), weighted_sum(catches)
    if len(catches) != 3 or catches[0] <= catches[2]:
        raise ValueError("three passes, the last below the first, are needed")
    root = math.sqrt(total * total + 6 * x * total - 3 * x * x)
    number = (6 * x * x - 3 * x * total - total * total + total * root) / (18 * (x - total))
    p = min(1.0, (3 * x - total - root) / (2 * x))
    number_se, probability_se = standard_errors(number, p, 3)
    return Estimate(
        form="Seber 2002, closed form for three passes",
        number=number,
        probability=p,
        number_se=number_se,
        probability_se=probability_se,
    )


def seber_two_pass(catches: Sequence[int]) -> Estimate:
    """Estimate N from two passes in closed form (Seber and Le Cren 1967).

    N = c1^2/(c1 - c2); p = 1 - c2/c1; Var(N) = c1^2 c2^2 (c1 + c2)/(c1 - c2)^4;
    Var(p) = c2 (c1 + c2)/c1^3.

    Parameters
    ----------
    catches : catch on each of two passes

    Raises ``ValueError`` unless c1 > c2. Range: trustworthy errors from about 200 animals.
    Source: seber_2002, eq. 7.30-7.31.
    """
    first, second = _two(catches)
    number_se, probability_se = _two_pass_errors(first, second)
    return Estimate(
        form="Seber & Le Cren 1967, two passes",
        number=first * first / (first - second),
        probability=1 - second / first,
        number_se=number_se,
        probability_se=probability_se,
    )


def robson_regier(catches: Sequence[int]) -> Estimate:
    """Estimate N from two passes with Robson and Regier's correction for bias.

    N = (c1^2 - c2)/(c1 - c2); p = 1 - c2/(c1 + 1); variances as for :func:`seber_two_pass`.

    Parameters
    ----------
    catches : catch on each of two passes

    Raises ``ValueError`` unless c1 > c2. Range: as :func:`seber_two_pass`.
    Source: robson_regier_1968.
    """
    first, second = _two(catches)
    number_se, probability_se = _two_pass_errors(first, second)
    return Estimate(
        form="Robson & Regier 1968, two passes",
        number=(first * first - second) / (first - second),
        probability=1 - second / (first + 1),
        number_se=number_se,
        probability_se=probability_se,
    )


def _two(catches: Sequence[int]) -> tuple[int, int]:
    if len(catches) != 2 or catches[0] <= catches[1]:
        raise ValueError("two passes, the second below the first, are needed")
    return catches[0], catches[1]


def _two_pass_errors(first: int, second: int) -> tuple[float | None, float | None]:
    if second == 0:
        return None, None
    both = first + second
    number_var = first**2 * second**2 * both / (first - second) ** 4
    return math.sqrt(number_var), math.sqrt(second * both / first**3)

"""Moran's likelihood as Schnute wrote it: profile interval of N and the test of an equal p.

N is continuous and p is profiled out. One form holds p equal on all passes, the other lets the
first pass differ.
"""

from __future__ import annotations

import math
from collections.abc import Callable, Sequence
from dataclasses import dataclass

from calc.method.removal import weighted_sum
from calc.numeric.distributions import CHI2_95_1, chi2_sf
from calc.numeric.minimise import minimum
from calc.numeric.roots import root

# Beyond this many times the catch the likelihood is flat: the limit is called infinite.
_FURTHEST = 1e5


@dataclass(frozen=True, kw_only=True, slots=True)
class Profile:
    """Fit of one form: N, p, their minus log likelihood and the limits; ``high`` may be None."""

    form: str
    number: float
    probability: float
    first_probability: float
    minus_log_likelihood: float
    low: float
    high: float | None


@dataclass(frozen=True, kw_only=True, slots=True)
class EqualityTest:
    """Likelihood-ratio test that the first pass caught as well as the later ones."""

    chi2: float
    p_value: float
    first_probability: float
    later_probability: float


def usable(catches: Sequence[int]) -> bool:
    """Return whether there is a maximum to find: 3 passes, and not three with a last 0."""
    return len(catches) >= 3 and not (len(catches) == 3 and catches[2] == 0)


def moran_schnute(catches: Sequence[int]) -> Profile:
    """Estimate N with an equal p and its profile-likelihood interval.

    p(N) = T/(kN - X); e_i = N p q^(i-1); minus log L = N ln N - T ln T - (N - T) ln(N - E)
    - ln C(N, T) + sum c_i ln(c_i/e_i), E = sum e_i. Limits: all N >= T whose minus log L is at
    most 1.92 above the least.

    Parameters
    ----------
    catches : catch on each pass, 3 or more

    Raises ``ValueError`` if :func:`usable` is false. Range: where the catch falls; the upper limit
    is ``None`` where no N is too large. Source: schnute_1983, eq. 1.8, 2.6, 3.2.
    """
    return _fit(catches, _equal, "Moran 1951 in Schnute's 1983 form, equal p")


def schnute_first_pass(catches: Sequence[int]) -> Profile:
    """Estimate N with a first pass that catches better or worse than the later ones.

    p1 = c1/N; p = (T - c1)/((k - 1)(N - c1) - (X - (k - 1) c1)); e_1 = c1,
    e_i = N (1 - p1) p (1 - p)^(i - 2); likelihood and limits as :func:`moran_schnute`.

    Parameters
    ----------
    catches : catch on each pass, 3 or more

    Raises ``ValueError`` if :func:`usable` is false. Range: as :func:`moran_schnute`.
    Source: schnute_1983, eq. 1.12, 3.7-3.8.
    """
    return _fit(catches, _first_differs, "Schnute 1983, first pass differs")


def equality_test(catches: Sequence[int]) -> EqualityTest:
    """Test whether the first pass caught as well as the later ones.

    chi2 = 2 (minus log L of the equal form - that of the other form), one degree of freedom.

    Parameters
    ----------
    catches : catch on each pass, 3 or more

    Raises ``ValueError`` if :func:`usable` is false. Range: weak below about 200 animals.
    Source: schnute_1983.
    """
    _require(catches)
    equal, differs = _Likelihood(catches, _equal), _Likelihood(catches, _first_differs)
    number, least = differs.best()
    first, later, _ = differs.parts(number)
    chi2 = max(0.0, 2 * (equal.best()[1] - least))
    return EqualityTest(
        chi2=chi2,
        p_value=chi2_sf(chi2, 1),
        first_probability=first,
        later_probability=later,
    )


@dataclass(frozen=True, kw_only=True, slots=True)
class _Sums:
    """What the likelihood needs of the catches."""

    k: int
    total: int
    first: int
    weighted: int
    later: int


# What a form gives for N: p1, p, and sum c_i ln(e_i).
_Form = Callable[[_Sums, float], tuple[float, float, float]]


def _equal(sums: _Sums, number: float) -> tuple[float, float, float]:
    p = min(1.0, sums.total / (sums.k * number - sums.weighted))
    return p, p, sums.total * math.log(number * p) + _times_log(sums.later, 1 - p)


def _first_differs(sums: _Sums, number: float) -> tuple[float, float, float]:
    rest, later_passes = sums.total - sums.first, sums.k - 1
    exposed = later_passes * number - sums.weighted
    p = min(1.0, rest / exposed) if rest else 0.0
    logs = _times_log(sums.first, sums.first) + _times_log(rest, (number - sums.first) * p)
    return sums.first / number, p, logs + _times_log(sums.later - rest, 1 - p)


def _times_log(times: float, x: float) -> float:
    return times * math.log(x) if times else 0.0


class _Likelihood:
    """Minus log likelihood of N in one form, its least value and where it stays near that."""

    def __init__(self, catches: Sequence[int], form: _Form) -> None:
        self.form = form
        self.sums = _Sums(
            k=len(catches),
            total=sum(catches),
            first=catches[0],
            weighted=weighted_sum(catches),
            later=sum(place * catch for place, catch in enumerate(catches)),
        )
        total = self.sums.total
        self.constant = sum(_times_log(catch, catch) for catch in catches)
        self.constant += math.lgamma(total + 1) - total * math.log(total)

    def parts(self, number: float) -> tuple[float, float, float]:
        """Return p1, p and the sum of the logarithms."""
        return self.form(self.sums, number)

    def __call__(self, number: float) -> float:
        """Return minus the log likelihood of N."""
        first, p, logs = self.parts(number)
        beyond = number - self.sums.total
        left = (1 - first) * (1 - p) ** (self.sums.k - 1)
        if beyond > 0 and left <= 0:
            return math.inf
        return (
            self.constant
            + number * math.log(number)
            - _times_log(beyond, number * left)
            - math.lgamma(number + 1)
            + math.lgamma(beyond + 1)
            - logs
        )

    def best(self) -> tuple[float, float]:
        """Return N at the least value, and that value; the curve has one valley."""
        total = self.sums.total
        steps = math.ceil(math.log(_FURTHEST * total / 1e-3) / math.log(3)) + 1
        grid = [0.0, *(1e-3 * 3.0**step for step in range(steps))]
        costs = [self(total + each) for each in grid]
        at = costs.index(min(costs))
        low, high = grid[max(0, at - 1)], grid[min(len(grid) - 1, at + 1)]
        beyond, least = minimum(lambda each: self(total + each), low, high)
        return (float(total), costs[0]) if costs[0] <= least else (total + beyond, least)


def _require(catches: Sequence[int]) -> None:
    if not usable(catches):
        raise ValueError("three passes or more, and not three with none on the last, are needed")


def _fit(catches: Sequence[int], form: _Form, name: str) -> Profile:
    _require(catches)
    total, likelihood = sum(catches), _Likelihood(catches, form)
    number, least = likelihood.best()
    limit = least + CHI2_95_1 / 2

    def above(candidate: float) -> float:
        return likelihood(candidate) - limit

    furthest = total * (1 + _FURTHEST)
    low = float(total) if above(total) <= 0 else root(above, total, number)
    high = None if above(furthest) <= 0 else root(above, number, furthest)
    first, p, _ = likelihood.parts(number)
    return Profile(
        form=name,
        number=number,
        probability=p,
        first_probability=first,
        minus_log_likelihood=least,
        low=low,
        high=high,
    )

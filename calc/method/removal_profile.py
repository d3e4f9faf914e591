"""Moran's likelihood as Schnute wrote it: profile interval of N and the test of an equal p.

N is continuous and p is profiled out. One form holds p equal on all passes, the other lets the
first pass differ.
"""

from __future__ import annotations

import math
from collections.abc import Callable, Sequence
from dataclasses import dataclass

from calc.method.distributions import CHI2_95_1, chi2_upper
from calc.method.removal import weighted_sum

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
    chance: float
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
    return _fit(catches, _equal, "Moran 1951 in Schnute's 1983 form, N continuous, p equal")


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
    other = schnute_first_pass(catches)
    gain = _least(catches, _equal)[1] - other.minus_log_likelihood
    chi2 = max(0.0, 2 * gain)
    return EqualityTest(
        chi2=chi2,
        chance=chi2_upper(chi2, 1),
        first_probability=other.first_probability,
        later_probability=other.probability,
    )


_Form = Callable[[Sequence[int], float], tuple[float, float, float, float]]


def _equal(catches: Sequence[int], number: float) -> tuple[float, float, float, float]:
    """Return p1, p, the share left after all passes, and sum c_i ln(e_i)."""
    k, total = len(catches), sum(catches)
    p = min(1.0, total / (k * number - weighted_sum(catches)))
    later = sum(place * catch for place, catch in enumerate(catches))
    logs = total * math.log(number * p) + _times_log(later, 1 - p)
    return p, p, (1 - p) ** k, logs


def _first_differs(catches: Sequence[int], number: float) -> tuple[float, float, float, float]:
    k, total, first = len(catches), sum(catches), catches[0]
    rest = total - first
    exposed = (k - 1) * (number - first) - (weighted_sum(catches) - (k - 1) * first)
    p = min(1.0, rest / exposed) if rest else 0.0
    later = sum(place * catch for place, catch in enumerate(catches[1:]))
    logs = _times_log(first, first) + _times_log(rest, (number - first) * p)
    logs += _times_log(later, 1 - p)
    left = (1 - first / number) * (1 - p) ** (k - 1)
    return first / number, p, left, logs


def _times_log(times: float, x: float) -> float:
    return times * math.log(x) if times else 0.0


def _minus_log_likelihood(catches: Sequence[int], form: _Form, number: float) -> float:
    total = sum(catches)
    left, logs = form(catches, number)[2:]
    beyond = number - total
    if beyond > 0 and left <= 0:
        return math.inf
    chosen = math.lgamma(number + 1) - math.lgamma(total + 1) - math.lgamma(beyond + 1)
    return (
        number * math.log(number)
        - total * math.log(total)
        - _times_log(beyond, number * left)
        - chosen
        + sum(_times_log(catch, catch) for catch in catches)
        - logs
    )


def _least(catches: Sequence[int], form: _Form) -> tuple[float, float]:
    """Return N at the least minus log L, and that value."""
    total = sum(catches)

    def cost(beyond: float) -> float:
        return _minus_log_likelihood(catches, form, total + beyond)

    # Steps of a fifth from a thousandth of an animal up: coarse, but the curve has one valley.
    grid = [0.0, *(1e-3 * 1.2**step for step in range(_grid_steps(total)))]
    costs = [cost(each) for each in grid]
    best = costs.index(min(costs))
    low, high = grid[max(0, best - 1)], grid[min(len(grid) - 1, best + 1)]
    ratio = (math.sqrt(5) - 1) / 2
    for _ in range(60):
        third = ratio * (high - low)
        if cost(high - third) <= cost(low + third):
            high = low + third
        else:
            low = high - third
    middle = (low + high) / 2
    if costs[0] <= cost(middle):
        middle = 0.0
    return total + middle, cost(middle)


def _grid_steps(total: int) -> int:
    return math.ceil(math.log(_FURTHEST * total / 1e-3) / math.log(1.2)) + 1


def _fit(catches: Sequence[int], form: _Form, name: str) -> Profile:
    if not usable(catches):
        raise ValueError("three passes or more, and not three with none on the last, are needed")
    total = sum(catches)
    number, least = _least(catches, form)
    limit = least + CHI2_95_1 / 2

    def inside(candidate: float) -> bool:
        return _minus_log_likelihood(catches, form, candidate) <= limit

    low = float(total) if inside(total) else _edge(inside, number, total)
    furthest = total * (1 + _FURTHEST)
    high = None if inside(furthest) else _edge(inside, number, furthest)
    first, p, _, _ = form(catches, number)
    return Profile(
        form=name,
        number=number,
        probability=p,
        first_probability=first,
        minus_log_likelihood=least,
        low=low,
        high=high,
    )


def _edge(inside: Callable[[float], bool], within: float, beyond: float) -> float:
    """Return where ``inside`` turns false between two numbers, to about 1e-9 of it."""
    for _ in range(70):
        middle = (within + beyond) / 2
        if inside(middle):
            within = middle
        else:
            beyond = middle
        if abs(beyond - within) <= 1e-9 * within:
            break
    return within

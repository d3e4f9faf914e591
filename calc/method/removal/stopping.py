"""What is left, and how many more passes: probabilities that keep p uncertain.

With Carle and Strub's even weight on p and the weight 1/N on the number, the number left after the
passes, given p, is negative binomial of size T, and p itself has a density that the catches give.
Everything here is an average over that density. ``h = -ln(1 - p)`` is the hazard of one pass of
mean length.
"""

from __future__ import annotations

import math
from collections.abc import Callable, Sequence
from dataclasses import dataclass

from calc.method.removal.effort import log_likelihood
from calc.numeric.distributions import NORMAL_975, betainc
from calc.numeric.minimise import minimum
from calc.numeric.roots import first_whole

MOST_PASSES = 200
"""Further passes looked ahead; beyond this the answer is that the catches do not tell."""

_NODES = 200
_NEGLIGIBLE = 25.0  # exp(-25) of the peak adds nothing to the digits shown


@dataclass(frozen=True, kw_only=True, slots=True)
class Outlook:
    """Density of the hazard after the catches: nodes, weights that sum to 1, and T."""

    caught: int
    passes: int
    hazards: tuple[float, ...]
    weights: tuple[float, ...]


def outlook(catches: Sequence[int], effort: Sequence[float]) -> Outlook:
    """Return how likely each capture probability is, given the catches.

    Density of h: exp(log likelihood(h)) exp(-h), the second factor being an even weight on p.

    Parameters
    ----------
    catches : catch on each pass, at least one caught
    effort : minutes of each pass, or 1 for each

    Returns an :class:`Outlook` with h for one pass of mean length. Range: any catches; where they
    do not fall the answer is mostly the weight. Source: removal_posterior.
    """
    mean = sum(effort) / len(effort)
    lengths = [each / mean for each in effort]

    def height(log_hazard: float) -> float:
        # The density of ln h, so one factor h more than the density of h.
        hazard = math.exp(log_hazard)
        return log_likelihood(hazard, catches, lengths) - hazard + log_hazard

    top, _ = minimum(lambda each: -height(each), -30.0, 6.0, absolute=1e-6)
    floor = height(top) - _NEGLIGIBLE
    low = _where_below(height, floor, top, -1.0)
    high = _where_below(height, floor, top, 1.0)
    step = (high - low) / (_NODES - 1)
    nodes = [low + place * step for place in range(_NODES)]
    raw = [math.exp(height(node) - height(top)) for node in nodes]
    whole = sum(raw)
    kept = [(math.exp(node), each / whole) for node, each in zip(nodes, raw, strict=True)]
    return Outlook(
        caught=sum(catches),
        passes=len(catches),
        hazards=tuple(hazard for hazard, _ in kept),
        weights=tuple(weight for _, weight in kept),
    )


def _where_below(
    height: Callable[[float], float], floor: float, top: float, direction: float
) -> float:
    step = 1e-3
    while height(top + direction * step) > floor and step < 60:
        step *= 1.5
    return top + direction * step


def chance_at_most(most: int, view: Outlook, further: int = 0) -> float:
    """Return the chance that at most ``most`` are left after ``further`` more mean passes.

    Given h the number left is negative binomial of size T and mean T exp(-h j) Q/(1 - Q), with
    Q = exp(-h k) the share missed so far; the chance is averaged over the density of h.

    Parameters
    ----------
    most : number that may be left, 0 or more
    view : from :func:`outlook`
    further : passes of mean length still to be made, j

    Returns a chance, 0 to 1. Range: closed nest, same p for all and on every pass; too high where
    the survivors are harder to catch. Source: removal_posterior.
    """
    total = sum(
        weight * _at_most(most, view, hazard, further)
        for hazard, weight in zip(view.hazards, view.weights, strict=True)
    )
    return min(1.0, total)


def _at_most(most: int, view: Outlook, hazard: float, further: int) -> float:
    whole = hazard * view.passes
    # Negative binomial, summed from 0 up; odds = mean number left / T.
    log_odds = -hazard * further - (whole if whole > 700 else math.log(math.expm1(whole)))
    odds = math.exp(min(log_odds, 700.0))
    start = -view.caught * math.log1p(odds)
    if start < -740:
        return 0.0
    term = chance = math.exp(start)
    share = odds / (1 + odds)
    for left in range(most):
        term *= (view.caught + left) / (left + 1) * share
        chance += term
        if term < chance * 1e-16:
            break
    return chance


def passes_needed(most: int, wanted: float, view: Outlook) -> int | None:
    """Return how many more mean passes leave at most ``most`` with the wanted chance.

    The smallest j with :func:`chance_at_most` (most, view, j) >= wanted.

    Parameters
    ----------
    most : number that may be left
    wanted : chance, 0 to 1
    view : from :func:`outlook`

    Returns a number of passes, ``None`` beyond :data:`MOST_PASSES`. Range: as
    :func:`chance_at_most`; it plans before the passes are made, so calculate again after each.
    Source: removal_posterior.
    """
    return first_whole(lambda j: chance_at_most(most, view, j) >= wanted, 0, MOST_PASSES)


def log_normal_interval(caught: float, number: float, number_se: float) -> tuple[float, float]:
    """Return 95 % limits of N that cannot fall below the catch.

    f = N - T; C = exp(1.96 sqrt(ln(1 + SE^2/f^2))); limits T + f/C and T + f C.

    Parameters
    ----------
    caught : T
    number : N, above T
    number_se : SE of N

    Range: f above 0. Source: burnham_1987.
    """
    beyond = number - caught
    factor = math.exp(NORMAL_975 * math.sqrt(math.log1p((number_se / beyond) ** 2)))
    return caught + beyond / factor, caught + beyond * factor


def passes_from_start(number: int, p: float, most: int, wanted: float) -> int | None:
    """Return how many passes leave at most ``most`` of a known number, for planning.

    The smallest k with the binomial chance of at most ``most`` left among N, each left with chance
    q^k, at or above ``wanted``.

    Parameters
    ----------
    number : N, 1 or more
    p : capture probability of a pass, above 0 and up to 1
    most : number that may be left
    wanted : chance, 0 to 1

    Returns a number of passes, ``None`` beyond :data:`MOST_PASSES`. Range: N and p known and p
    constant; with p uncertain more are needed. Source: own_reasoning (binomial distribution).
    """
    if most >= number:
        return 0
    for passes in range(1, MOST_PASSES + 1):
        left = (1 - p) ** passes
        # The chance of at most m among N is I_(1 - left)(N - m, m + 1).
        if betainc(number - most, most + 1, 1 - left) >= wanted:
            return passes
    return None

"""How many were there, with p left uncertain: quantiles of N from the removal likelihood.

The sums run over whole numbers from the catch up to thousands of millions, so they are taken over
blocks that widen away from the top of the curve.
"""

from __future__ import annotations

import math
from collections.abc import Callable, Sequence

from calc.method.removal import weighted_sum
from calc.method.removal.stopping import Outlook, outlook
from calc.numeric.minimise import top_whole
from calc.numeric.roots import first_whole

_FURTHEST = 2**50


def number_quantiles(
    catches: Sequence[int], chances: Sequence[float], effort: Sequence[float] | None = None
) -> tuple[int | None, ...]:
    """Return the numbers present at the start that are not exceeded with the given chances.

    With equal passes Pr(N) is proportional to
    (1/N) N!/(N - T)! x Gamma(kN - X - T + 1)/Gamma(kN - X + 2), N = T, T + 1, ...; summed exactly
    near the top and over blocks that widen away from it. With unequal passes the last two factors
    give way to the average of p^T (1 - p)^(N - T) over :func:`~.stopping.outlook`.

    Parameters
    ----------
    catches : catch on each pass, at least one caught
    chances : rising, each 0 to 1
    effort : minutes of each pass; left out or all alike for equal passes

    Returns whole numbers, ``None`` for one beyond reach. Range: as :func:`outlook`; the upper
    quantiles are long where the catch hardly falls. Source: removal_posterior.
    """
    equal = effort is None or max(effort) == min(effort)
    height = _equal_passes(catches) if equal else _by_outlook(outlook(catches, effort or ()))
    curve = _Curve(height, sum(catches))
    return tuple(curve.quantile(chance) for chance in chances)


def _equal_passes(catches: Sequence[int]) -> Callable[[float], float]:
    k, total, x = len(catches), sum(catches), weighted_sum(catches)

    def height(left: float) -> float:
        n = total + left
        return (
            math.lgamma(n)
            - math.lgamma(left + 1)
            + math.lgamma(k * n - x - total + 1)
            - math.lgamma(k * n - x + 2)
        )

    return height


def _by_outlook(view: Outlook) -> Callable[[float], float]:
    missed = [-hazard * view.passes for hazard in view.hazards]  # log of the share missed so far
    caught = [
        math.log(weight) + view.caught * math.log(-math.expm1(log))
        for log, weight in zip(missed, view.weights, strict=True)
    ]

    def height(left: float) -> float:
        logs = [one + left * log for one, log in zip(caught, missed, strict=True)]
        top = max(logs)
        mean = top + math.log(math.fsum(math.exp(each - top) for each in logs))
        return math.lgamma(view.caught + left) - math.lgamma(left + 1) + mean

    return height


class _Curve:
    """Sums over whole numbers 0, 1, 2, ... of exp(height), a curve with one top."""

    def __init__(self, height: Callable[[float], float], total: int) -> None:
        self.height = height
        self.total = total
        self.top = top_whole(height, _FURTHEST)
        self.peak = height(self.top)
        self.least = self._narrowest()
        self.blocks = self._left()
        self._add_right()
        # Pr(N) falls as 1/N^2 in the end, so what lies beyond n weighs n times its last height.
        last = self.blocks[-1][1]
        self.whole = sum(block[2] for block in self.blocks) + self._at(last) * (total + last)

    def _at(self, left: float) -> float:
        return math.exp(self.height(left) - self.peak)

    def _narrowest(self) -> int:
        width = 1
        while self.height(self.top + width) > self.peak - 0.5 and width < _FURTHEST:
            width *= 2
        return max(1, width // 8)

    def _width(self, edge: int) -> int:
        return max(self.least, abs(edge - self.top) // 20)

    def mass(self, first: int, last: int) -> float:
        """Return the sum from ``first`` to ``last``, by Simpson's rule over a wide block."""
        if last - first < 3:
            return sum(self._at(each) for each in range(first, last + 1))
        low, high = max(0.0, first - 0.5), last + 0.5
        middle = self._at((low + high) / 2)
        return (last - first + 1) * (self._at(low) + 4 * middle + self._at(high)) / 6

    def _left(self) -> list[tuple[int, int, float]]:
        blocks = []
        edge = self.top - 1
        while edge >= 0 and self.height(edge) > self.peak - 40:
            first = max(0, edge - self._width(edge) + 1)
            blocks.append((first, edge, self.mass(first, edge)))
            edge = first - 1
        return blocks[::-1]

    def _add_right(self) -> None:
        edge, found = self.top, sum(block[2] for block in self.blocks)
        while edge < _FURTHEST:
            last = edge + self._width(edge) - 1
            self.blocks.append((edge, last, self.mass(edge, last)))
            found += self.blocks[-1][2]
            edge = last + 1
            if self._at(last) * (self.total + last) < 1e-5 * found:
                break

    def _reached(self, first: int, last: int, mass: float) -> int:
        at = first_whole(lambda end: self.mass(first, end) >= mass, first, last)
        return last if at is None else at

    def quantile(self, chance: float) -> int | None:
        """Return T plus the first whole number at which the chance is reached."""
        wanted, found = chance * self.whole, 0.0
        for first, last, mass in self.blocks:
            if found + mass >= wanted:
                return self.total + self._reached(first, last, wanted - found)
            found += mass
        return None

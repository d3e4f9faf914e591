"""Three-point times, and prediction from past jobs: plain formulas."""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass

from calc.numeric.distributions import normal_quantile, student_quantile


@dataclass(frozen=True, slots=True)
class Spread:
    """A mean time with its standard deviation, in the unit of what went in."""

    mean: float
    deviation: float

    def by_chance(self, chance: float) -> float:
        """Return the time not exceeded with this chance, 0.5 to 1 (exclusive), not below 0."""
        return max(0.0, self.mean + normal_quantile(2 * (1 - chance)) * self.deviation)

    def interval(self, chance: float) -> tuple[float, float]:
        """Return the central interval that holds with this chance, not below 0."""
        z = normal_quantile(1 - chance)
        return max(0.0, self.mean - z * self.deviation), self.mean + z * self.deviation


def expected(low: float, likely: float, high: float) -> float:
    """Return the mean (a + 4m + b)/6 of a three-point time. Source: pert_1959."""
    return (low + 4 * likely + high) / 6


def variance(low: float, high: float) -> float:
    """Return the variance ((b - a)/6)^2 of a three-point time. Source: pert_1959.

    a and b are the ends, beyond which no time lies (pert_ends). Times that are passed once in a
    hundred on either side lie only about 4.65 standard deviations of a normal time apart, so
    dividing those by 6 makes the spread too small.
    """
    return ((high - low) / 6) ** 2


def path(low: Sequence[float], likely: Sequence[float], high: Sequence[float]) -> Spread:
    """Return mean and deviation of steps done one after another.

    Parameters
    ----------
    low, likely, high : a, m, b of each step, in one unit of time

    Range: independent steps; means and variances add. Source: pert_1959.
    """
    mean = math.fsum(map(expected, low, likely, high))
    return Spread(mean, math.sqrt(math.fsum(map(variance, low, high))))


def chance_within(mean: float, deviation: float, time: float) -> float:
    """Return the chance that a normal time is not longer than ``time``, 0 to 1.

    Source: pert_1959 (normal by the central limit theorem).
    """
    if deviation == 0:
        return float(time >= mean)
    return 0.5 * math.erfc((mean - time) / (deviation * math.sqrt(2)))


@dataclass(frozen=True, slots=True)
class Past:
    """Mean of past jobs, and the factor on its spread for one more job like them."""

    mean: float
    deviation: float
    count: int

    def by_chance(self, chance: float) -> float:
        """Return the time the next job does not exceed with this chance, 0.5 to 1, not below 0."""
        return max(0.0, self.mean + student_quantile(2 * (1 - chance), self.count - 1) * self._wide)

    def interval(self, chance: float) -> tuple[float, float]:
        """Return the prediction interval of the next job, not below 0."""
        half = student_quantile(1 - chance, self.count - 1) * self._wide
        return max(0.0, self.mean - half), self.mean + half

    @property
    def _wide(self) -> float:
        return self.deviation * math.sqrt(1 + 1 / self.count)


def past(minutes: Sequence[float]) -> Past:
    r"""Return mean and standard deviation of past times, for ``mean ± t s √(1 + 1/n)``.

    Parameters
    ----------
    minutes : two or more past times

    Range: jobs alike and independent. Source: prediction_interval.
    """
    count = len(minutes)
    mean = math.fsum(minutes) / count
    squares = math.fsum((each - mean) ** 2 for each in minutes)
    return Past(mean, math.sqrt(squares / (count - 1)), count)


def prediction_interval(minutes: Sequence[float], chance: float) -> tuple[float, float]:
    """Return the interval that holds the next time with this chance, not below 0."""
    return past(minutes).interval(chance)

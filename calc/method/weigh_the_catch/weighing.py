"""Counting by weight: errors of the scale, of the mean mass and of the bodies, and the limits."""

from __future__ import annotations

import math
from collections.abc import Iterable, Sequence
from dataclasses import dataclass

from calc.method.comb_sample import ratio_of_sums
from calc.numeric.distributions import normal_quantile, student_quantile
from calc.tables import row, rows

OUTSIDE = 0.05
"""Chance left outside the limits: 95 % limits."""


def step_error(step: float, readings: int = 1) -> float:
    r"""Return the standard error that a scale's smallest step leaves in a sum of readings.

    :math:`u=\sqrt{k}\,d/\sqrt{12}`: each reading may lie anywhere within half a step.

    Parameters
    ----------
    step : smallest step d of the display, any unit of mass, above 0
    readings : k, readings added or taken from each other, 1 or more

    Returns the error in the same unit. Errors of calibration, wind and slope are not in it.
    Source: gum_resolution.
    """
    return step * math.sqrt(readings / 12)


def range_error(low: float, high: float) -> float:
    """Return the standard error of a value that may lie anywhere in a range.

    (high - low)/sqrt(12). Source: gum_resolution.
    """
    return (high - low) / math.sqrt(12)


def combined(errors: Iterable[float]) -> float:
    """Return the root of the sum of squares of independent standard errors, in their unit.

    Source: tartu_weighing.
    """
    return math.hypot(*errors)


def effective_df(parts: Sequence[tuple[float, float]]) -> float:
    r"""Return the degrees of freedom of combined errors.

    Welch and Satterthwaite: :math:`\nu=u^4/\sum(u_i^4/\nu_i)`.

    Parameters
    ----------
    parts : pairs of a standard error and its degrees of freedom (``math.inf`` where it is known)

    Returns ``math.inf`` where no part was estimated. Source: tartu_weighing.
    """
    below = math.fsum(error**4 / df for error, df in parts)
    return combined(error for error, _ in parts) ** 4 / below if below > 0 else math.inf


@dataclass(frozen=True, kw_only=True, slots=True)
class Mean:
    """The mean mass of one animal with its standard error, both mg.

    ``spread`` is the standard deviation between animals, mg; ``df`` of the error.
    """

    mass: float
    error: float
    spread: float
    df: float = math.inf


def sampled(counts: Sequence[int], masses: Sequence[float], spread: float, step: float) -> Mean:
    r"""Return the mean mass from handfuls that were counted and weighed.

    :math:`m=\sum M/\sum n`. Its error is the larger of two: that of the bodies and the scale,
    :math:`\sqrt{(vm)^2/\sum n+k\,d^2/6/(\sum n)^2}`, and, from three handfuls on, that of the
    ratio over handfuls, which also sees that handfuls differ.

    Parameters
    ----------
    counts : animals n of each handful, 1 or more
    masses : mass M of each handful without its jar, mg
    spread : v, standard deviation between animals over their mean
    step : smallest step d of the scale, mg; each mass is the difference of two readings

    Range: animals picked blindly from the catch. Source: own_reasoning for the larger of the two,
    cochran_1977 for the ratio, gum_resolution for the scale.
    """
    number, k = sum(counts), len(counts)
    mass = math.fsum(masses) / number
    bodies = combined((spread * mass / math.sqrt(number), step_error(step, 2 * k) / number))
    if k < FEWEST_HANDFULS:
        return Mean(mass=mass, error=bodies, spread=spread * mass)
    between = ratio_of_sums(masses, counts).se
    if between <= bodies:
        return Mean(mass=mass, error=bodies, spread=spread * mass)
    return Mean(mass=mass, error=between, spread=spread * mass, df=k - 1.0)


FEWEST_HANDFULS = 3
"""From this many handfuls on, how they differ is looked at: two tell next to nothing."""


def mixed(first: Mean, second: Mean, share: float) -> Mean:
    r"""Return the mean mass of a catch of two kinds.

    :math:`m=(1-q)m_1+qm_2`; the share q is a guess and may lie anywhere from 0 to 2q, so its error
    is :math:`q/\sqrt3`. The spread holds that of each kind and the distance between them.

    Parameters
    ----------
    first, second : the two kinds
    share : q, share of the second by number, 0 to 0.5

    Source: own_reasoning (mean and variance of a mixture).
    """
    q = share
    mass = (1 - q) * first.mass + q * second.mass
    apart = second.mass - first.mass
    square = (1 - q) * (first.spread**2 + first.mass**2) + q * (second.spread**2 + second.mass**2)
    return Mean(
        mass=mass,
        error=combined(((1 - q) * first.error, q * second.error, apart * q / math.sqrt(3))),
        spread=math.sqrt(max(0.0, square - mass**2)),
    )


def _widest() -> float:
    """Return the largest printed spread between animals, over their mean."""
    return max(float(each["mass_spread"]) / float(each["mass"]) for each in rows("insect_bodies"))


def known(key: str, mass: float | None) -> Mean:
    """Return what is known of one kind before anything is weighed: mass, error and spread in mg.

    The mean of one nest may lie as far from the printed mean as one animal does, or anywhere in
    the printed range. A typed mass gets the widest printed spread.

    Parameters
    ----------
    key : row of ``insect_bodies`` or ``caught_animals``, or ``typed``
    mass : mg, for ``typed``

    Source: weigh_cautions; the tables name theirs.
    """
    if key == "typed":
        assert mass is not None
        return Mean(mass=mass, error=_widest() * mass, spread=_widest() * mass)
    for each in rows("insect_bodies"):
        if each["key"] == key:
            spread = float(each["mass_spread"])
            return Mean(mass=float(each["mass"]), error=spread, spread=spread)
    each = row("caught_animals", key)
    error = range_error(*each["range"])
    return Mean(mass=float(each["mass"]), error=error, spread=error)


@dataclass(frozen=True, kw_only=True, slots=True)
class Count:
    """A count from a weight: ``high`` is ``None`` where the mean mass is too uncertain for one.

    ``scale``, ``bodies`` and ``mean`` are standard errors in animals.
    """

    number: float
    low: float
    high: float | None
    scale: float
    bodies: float
    mean: float


def count_by_weight(net: float, scale_error: float, mean: Mean) -> Count:
    r"""Return how many animals a mass is, with 95 % limits.

    :math:`N=W/m`. The limits are all N that the weight does not rule out,
    :math:`(W-Nm)^2\le t^2(u_W^2+Ns^2+N^2u_m^2)`: the scale, the spread s of N bodies, and the
    mean mass. Solved for N, as Fieller does for a ratio.

    Parameters
    ----------
    net : W, mg, 0 or more
    scale_error : u_W, mg
    mean : mean mass, error and spread, mg

    Returns the :class:`Count`; the lower limit is never below 0. Range: W above a few u_W.
    Source: fieller_1954; steiner_mackay for the three parts.
    """
    number = net / mean.mass
    bodies = math.sqrt(number) * mean.spread / mean.mass
    parts = scale_error / mean.mass, bodies, number * mean.error / mean.mass
    df = effective_df([(parts[0], math.inf), (parts[1], math.inf), (parts[2], mean.df)])
    t = normal_quantile(OUTSIDE) if math.isinf(df) else student_quantile(OUTSIDE, max(df, 1.0))
    low, high = _limits(net, scale_error, mean, t * t)
    return Count(number=number, low=low, high=high, scale=parts[0], bodies=parts[1], mean=parts[2])


def _limits(net: float, error: float, mean: Mean, t2: float) -> tuple[float, float | None]:
    """Solve a N^2 - 2 b N + c <= 0 for N of 0 or more."""
    a = mean.mass**2 - t2 * mean.error**2
    b = net * mean.mass + t2 * mean.spread**2 / 2
    c = net**2 - t2 * error**2
    root = math.sqrt(max(0.0, b * b - a * c))
    # c/(b + root) is the smaller root without the loss of digits of (b - root)/a.
    return max(0.0, c / (b + root)), (b + root) / a if a > 0 else None


def sample_needed(spread: float, wanted: float) -> int:
    """Return how many animals to weigh so that the mean is known to a wanted share.

    (t v/wanted)^2, rounded up.

    Parameters
    ----------
    spread : v, standard deviation between animals over their mean
    wanted : half-width of the 95 % limits of the mean over the mean, above 0

    Range: bodies alone, the scale left out. Source: cochran_1977.
    """
    return math.ceil((normal_quantile(OUTSIDE) * spread / wanted) ** 2 - 1e-9)

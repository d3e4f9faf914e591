"""Workers at home from traffic at the entrance, with its interval."""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass
from statistics import fmean, variance

from calc.numeric.distributions import NORMAL_975
from calc.numeric.limits import garwood
from calc.tables import row

BAND = 1.6
"""Factor of the band of one traffic count, down and up [traffic_band]."""


@dataclass(frozen=True, kw_only=True, slots=True)
class Rate:
    """Wasps a minute in one direction, with 95 % limits; ``ragged`` where counts vary too much."""

    mean: float
    low: float
    high: float
    ragged: bool


@dataclass(frozen=True, kw_only=True, slots=True)
class Workers:
    """Workers by traffic: middle, the other reading of the rule, limits over both."""

    number: float
    other: float | None
    low: float
    high: float


def rate(counts: Sequence[int], minutes: float, both: bool) -> Rate:
    r"""Return traffic in one direction from counts of equal length.

    The limits are Garwood's for the whole count; where counts vary more than chance, they are
    :math:`\bar x\,e^{\pm 1.96\,s/(\bar x\sqrt n)}` if that is wider.

    Parameters
    ----------
    counts : wasps in each count, the sum above 0
    minutes : length of each count
    both : in and out were added

    Returns a :class:`Rate` a minute. Range: one undisturbed spell. Source: garwood_1936.
    """
    total, n = sum(counts), len(counts)
    watched = n * minutes * (2 if both else 1)
    low, high = (each / watched for each in garwood(total))
    mean = total / watched
    ragged = False
    if n > 1:
        spread = math.sqrt(variance(counts) / n) / fmean(counts)
        ragged = variance(counts) > 2 * fmean(counts)
        factor = math.exp(NORMAL_975 * spread)
        low, high = min(low, mean / factor), max(high, mean * factor)
    return Rate(mean=mean, low=low, high=high, ragged=ragged)


def workers_by_traffic(per_minute: float, model: str = "vespula") -> float:
    """Return workers, the factor of the model times the wasps a minute.

    Parameters
    ----------
    per_minute : wasps entering or leaving a minute
    model : row of the table of traffic models

    Range: grown colonies by day. Source: malham_1991, perrard_2009_counts.
    """
    return float(row("traffic_models", model)["factor"]) * per_minute


def workers(found: Rate, model: str) -> Workers:
    """Return workers with an interval over the count, the band and both readings of the rule.

    The rule for yellowjackets may mean one direction or both added, which doubles the answer; that
    for hornets was counted one way. The band and the limits of the count are joined as independent
    factors.

    Parameters
    ----------
    found : traffic in one direction
    model : row of the table of traffic models

    Source: malham_1991, perrard_2009_counts, traffic_band.
    """
    middle = workers_by_traffic(found.mean, model)
    other = 2 * middle if model == "vespula" else None
    down = _joined(found.mean / found.low if found.low > 0 else math.inf)
    up = _joined(found.high / found.mean)
    return Workers(
        number=middle,
        other=other,
        low=0.0 if math.isinf(down) else middle / down,
        high=(other or middle) * up,
    )


def _joined(factor: float) -> float:
    if math.isinf(factor):
        return factor
    return math.exp(math.hypot(math.log(BAND), math.log(factor)))

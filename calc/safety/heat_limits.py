"""Published heat limits of NIOSH 2016 and the work minutes they leave in an hour.

Plain numbers: metabolic rates in W, WBGT in degC. The limits are means over one hour for a
healthy person of 70 kg and 1.8 m2; they are a United States recommendation.
"""

from __future__ import annotations

import math
from dataclasses import dataclass

from calc.safety.heat_estimate import Heat

REST_RATE = 115.0
"""Metabolic rate at rest, W (ISO 7243 class 0), and the left end of the curves."""

HIGHEST_RATE = 580.0
"""Right end of the published curves, W."""

RATE_ERROR = 0.3
"""Share by which a metabolic rate read from a table can be off (ISO, in NIOSH 2016)."""


def exposure_limit(rate: float) -> float:
    """Recommended exposure limit (REL), for people used to heat: ``56.7 - 11.5 log10 M``.

    Parameters
    ----------
    rate : one-hour mean of the metabolic rate, W, 115 to 580

    Returns
    -------
    degC WBGT

    Raises
    ------
    ValueError : outside the published curves

    Source: NIOSH 2016, section 8.1 (key ``niosh_2016``).
    """
    return 56.7 - 11.5 * math.log10(_on_the_curve(rate))


def alert_limit(rate: float) -> float:
    """Recommended alert limit (RAL), for people not used to heat: ``59.9 - 14.1 log10 M``.

    Parameters, returns, raises and source as for :func:`exposure_limit`.
    """
    return 59.9 - 14.1 * math.log10(_on_the_curve(rate))


def limit(rate: float, acclimatised: bool) -> float:
    """Return the limit that applies, REL or RAL, degC WBGT."""
    return exposure_limit(rate) if acclimatised else alert_limit(rate)


def off_by(rate: float, share: float) -> float:
    """Return ``rate (1 + share)``, kept on the published curves."""
    return min(max(rate * (1 + share), REST_RATE), HIGHEST_RATE)


def work_share(work: float, rest: float, rate: float, acclimatised: bool) -> float:
    """Largest share of an hour at work for which the hour's means meet the limit, 0 to 1.

    With share f the means are ``M = f M_work + (1 - f) 115 W`` and
    ``WBGT = f W_work + (1 - f) W_rest``; f is the root of ``limit(M) = WBGT``.

    Parameters
    ----------
    work, rest : effective WBGT (clothing adjustment included) at work and at the place of rest
    rate : metabolic rate at work, W, 115 to 580
    acclimatised : whether the REL applies, else the RAL

    Source: time-weighting and limits of NIOSH 2016 (key ``niosh_2016``).
    """

    def spare(share: float) -> float:
        mean_rate = share * rate + (1 - share) * REST_RATE
        return limit(mean_rate, acclimatised) - (share * work + (1 - share) * rest)

    if spare(1.0) >= 0:
        return 1.0
    if spare(0.0) < 0:
        return 0.0
    # The limit is convex in M, so between a good 0 and a bad 1 there is one crossing only.
    low, high = 0.0, 1.0
    for _ in range(24):
        middle = (low + high) / 2
        if spare(middle) >= 0:
            low = middle
        else:
            high = middle
    return low


def work_minutes(work: float, rest: float, rate: float, acclimatised: bool) -> int:
    """Whole minutes of work in an hour within the limit, rounded down.

    0 where even sitting still in the closed suit, or at the place of rest, is over the limit:
    then the body gains heat through all that time, and no mean over the hour makes that good.
    """
    if max(work, rest) > limit(REST_RATE, acclimatised):
        return 0
    # A hair is added so that 30 minutes do not come out as 29 from the halving.
    return math.floor(60 * work_share(work, rest, rate, acclimatised) + 1e-4)


def _on_the_curve(rate: float) -> float:
    if not REST_RATE <= rate <= HIGHEST_RATE:
        raise ValueError(f"{rate} W is off the published curves")
    return rate


@dataclass(frozen=True, kw_only=True, slots=True)
class Job:
    """One job in one heat: what is compared with the limit, in W and degC."""

    heat: Heat
    rate: float
    added: float | None  # clothing adjustment; None where no published value covers it
    at_rest: float
    acclimatised: bool

    @property
    def effective(self) -> float:
        """Effective WBGT at work, clothing included as far as a value covers it."""
        return self.heat.wbgt + (self.added or 0.0)

    def limit(self, off: float = 0.0) -> float:
        """Return the limit that applies, with the work rate off by a share."""
        return limit(off_by(self.rate, off), self.acclimatised)

    def minutes(self, off: float = 0.0) -> int:
        """Return the work minutes in an hour, with the work rate off by a share."""
        rate = off_by(self.rate, off)
        return work_minutes(self.effective, self.at_rest, rate, self.acclimatised)

    @property
    def over(self) -> bool:
        """Whether steady work is over the limit."""
        return self.effective > self.limit()

    @property
    def stopped(self) -> bool:
        """Whether no work minutes may be shown."""
        return self.added is None or self.minutes() < 1

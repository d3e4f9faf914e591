"""How many moved workers find home."""

from __future__ import annotations

from itertools import pairwise

from calc.numeric.distributions import NORMAL_975
from calc.numeric.interpolate import linear
from calc.numeric.limits import wilson
from calc.tables import rows


def percent_returned(returned: int, released: int) -> float:
    """Return the share that came back in percent."""
    return 100 * returned / released


def returned_limits(returned: int, released: int) -> tuple[float, float]:
    """Return the 95 % limits of a share in percent, after Wilson."""
    low, high = wilson(returned, released, NORMAL_975)
    return 100 * low, 100 * high


def homing(km: float) -> tuple[float | None, tuple[float, float]]:
    """Return the share of displaced workers that come back, and limits, in percent.

    On a straight line between the distances of the trial; the limits are the widest of the two
    neighbouring distances, since the trial's shares do not fall evenly.

    Parameters
    ----------
    km : distance moved, 0 or more

    Returns
    -------
    share (None beyond the trial's 5 km) and its limits

    Notes
    -----
    One trial, with yellow-legged hornets. Source: poidatz_2018_homing.
    """
    trial = rows("homing_returns")
    for near, far in pairwise(trial):
        if km <= far["km"]:
            share = linear(km, *zip(*((at["km"], at["percent"]) for at in trial), strict=True))
            limits = [returned_limits(each["returned"], each["released"]) for each in (near, far)]
            if km == far["km"]:
                limits = limits[1:]
            return share, (min(low for low, _ in limits), max(high for _, high in limits))
    last = trial[-1]
    return None, (0.0, returned_limits(last["returned"], last["released"])[1])

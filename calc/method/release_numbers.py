"""Numbers for release, relocate or feed: homing of moved workers, brood as feed, sugar water."""

from __future__ import annotations

import math
from itertools import pairwise

from calc.numeric.distributions import normal_quantile
from calc.numeric.limits import wilson
from calc.tables import row, rows


def condition(key: str) -> float:
    """Return a value of the table ``release_conditions`` in the unit printed there."""
    return float(row("release_conditions", key)["value"])


def flock(key: str) -> float:
    """Return a value of the table ``flock`` in the unit printed there."""
    return float(row("flock", key)["value"])


def percent_returned(returned: int, released: int) -> float:
    """Return the share that came back in percent."""
    return 100 * returned / released


def returned_limits(returned: int, released: int) -> tuple[float, float]:
    """Return the 95 % limits of a share in percent, after Wilson."""
    low, high = wilson(returned, released, normal_quantile(0.05))
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
            part = (km - near["km"]) / (far["km"] - near["km"])
            share = near["percent"] + part * (far["percent"] - near["percent"])
            limits = [returned_limits(each["returned"], each["released"]) for each in (near, far)]
            if km == far["km"]:
                limits = limits[1:]
            return share, (min(low for low, _ in limits), max(high for _, high in limits))
    last = trial[-1]
    return None, (0.0, returned_limits(last["returned"], last["released"])[1])


def survivors(start: float, losses: tuple[float, ...]) -> float:
    """Return how many are left of ``start`` after losses in percent, one after another.

    Source: wespenschutz_mortality for the losses.
    """
    return start * math.prod(1 - loss / 100 for loss in losses)


def new_nests(queens: int) -> tuple[float, float]:
    """Return the nests of next year from young queens let go, from few to most.

    The low end takes all three printed losses, the high end none over winter, where the sources
    disagree. Source: wespenschutz_mortality, landcare_queens.
    """
    spring, founding = condition("loss_spring"), condition("loss_founding")
    return (
        survivors(queens, (condition("loss_winter"), spring, founding)),
        survivors(queens, (spring, founding)),
    )


def portion(hens: int, feed: float, share: float) -> float:
    """Return the brood for a flock in g a day: hens times feed (g) times share (percent)."""
    return hens * feed * share / 100


def nutrient(feed: float, percent: float) -> float:
    """Return the grams of a nutrient in ``feed`` grams at ``percent``."""
    return feed * percent / 100


def nutrient_share(grams: float, feed: float) -> float:
    """Return the percentage that ``grams`` of a nutrient are of ``feed`` grams."""
    return 100 * grams / feed


def diet_protein(feed_protein: float, treat_protein: float, treat_share: float) -> float:
    """Return the protein of the whole diet in percent when treats replace a share of feed.

    Parameters
    ----------
    feed_protein, treat_protein : percent, as fed
    treat_share : percent of what the bird eats

    Notes
    -----
    Source: protein_dilution_page.
    """
    part = treat_share / 100
    return (1 - part) * feed_protein + part * treat_protein


def energy(protein: float, fat: float, carbohydrate: float) -> float:
    """Return the energy in kcal of grams of protein, fat and carbohydrate. Source: atwater."""
    return 4 * protein + 9 * fat + 4 * carbohydrate


def days_of_feed(brood: float, daily: float) -> int:
    """Return the days, the last one begun, that ``brood`` g last at ``daily`` g."""
    return math.ceil(brood / daily)

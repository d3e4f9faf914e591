"""Portions of brood for a flock, and what is in them."""

from __future__ import annotations

import math

from calc.tables import row


def flock(key: str) -> float:
    """Return a value of the table ``flock`` in the unit printed there."""
    return float(row("flock", key)["value"])


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

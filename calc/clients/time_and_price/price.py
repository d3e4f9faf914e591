"""Price from cost, and the reserve for what may go wrong: plain formulas."""

from __future__ import annotations

import math
from collections.abc import Sequence


def price_from_margin(cost: float, margin: float) -> float:
    """Return the price C/(1 - g) that leaves the share g of the price. Source: margin_pages."""
    return cost / (1 - margin)


def price_from_markup(cost: float, markup: float) -> float:
    """Return the price C(1 + k) with the share k of the cost put on top. Source: markup_pages."""
    return cost * (1 + markup)


def margin_of_markup(markup: float) -> float:
    """Return g = k/(1 + k). Source: markup_pages."""
    return markup / (1 + markup)


def markup_of_margin(margin: float) -> float:
    """Return k = g/(1 - g). Source: margin_pages."""
    return margin / (1 - margin)


def reserve(chances: Sequence[float], costs: Sequence[float]) -> float:
    """Return the expected cost of what may go wrong, the sum of chance times cost."""
    return math.fsum(chance * cost for chance, cost in zip(chances, costs, strict=True))

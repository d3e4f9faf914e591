"""Where a curve with one valley is least."""

from __future__ import annotations

import math
from collections.abc import Callable

GOLDEN = (math.sqrt(5) - 1) / 2

MOST_STEPS = 200


def minimum(
    cost: Callable[[float], float], low: float, high: float, *, absolute: float = 1e-9
) -> tuple[float, float]:
    """Return where a curve with one valley is least, by golden section, and the value there.

    Parameters
    ----------
    cost : falls, then rises, between the ends; may be infinite
    low, high : the ends
    absolute : width of the bracket at which the search ends

    Range: a place is found no closer than about 1e-8 of the valley's width. Source: golden section.
    """
    a, b = high - GOLDEN * (high - low), low + GOLDEN * (high - low)
    at_a, at_b = cost(a), cost(b)
    for _ in range(MOST_STEPS):
        if high - low <= absolute:
            break
        if at_a <= at_b:
            high, b, at_b = b, a, at_a
            a = high - GOLDEN * (high - low)
            at_a = cost(a)
        else:
            low, a, at_a = a, b, at_b
            b = low + GOLDEN * (high - low)
            at_b = cost(b)
    return (a, at_a) if at_a <= at_b else (b, at_b)


def top_whole(height: Callable[[float], float], furthest: int) -> int:
    """Return the whole number from 0 at which a curve with one top is highest, or one beside it.

    Parameters
    ----------
    height : rises, then falls; also asked between whole numbers
    furthest : where the search upwards ends

    Source: ternary search.
    """
    step = 1
    while height(step) > height(step / 2) and step < furthest:
        step *= 2
    low, high = 0, step
    while high - low > 2:
        third = (high - low) // 3
        a, b = low + third, high - third
        low, high = (a, high) if height(a) < height(b) else (low, b)
    return max(range(low, high + 1), key=height)

"""Between the points of a table."""

from __future__ import annotations

from bisect import bisect_right
from collections.abc import Sequence


def linear(x: float, places: Sequence[float], values: Sequence[float]) -> float:
    """Return the value at ``x`` on straight lines between points, and the end values beyond them.

    Parameters
    ----------
    x : place
    places : places of the points, rising
    values : their values, as many

    Raises ``ValueError`` without points, or with unequal numbers of them. Source: arithmetic.
    """
    if not places or len(places) != len(values):
        raise ValueError("as many values as places are needed, and one at least")
    at = bisect_right(places, x)
    if at == 0 or at == len(places):
        return values[min(at, len(places) - 1)]
    share = (x - places[at - 1]) / (places[at] - places[at - 1])
    return values[at - 1] + share * (values[at] - values[at - 1])

"""What the last passes alone say, if the wasps that are left are harder to catch than the rest."""

from __future__ import annotations

from collections.abc import Sequence

from calc.method.removal.stopping import MOST_PASSES
from calc.numeric.roots import first_whole

SHY = 0.5
"""Capture probability of the last wasps over that of the whole nest. Source: removal_shy."""


def chance_by_last_passes(
    catches: Sequence[int], lengths: Sequence[float], p: float, most: int, empty: int = 0
) -> float:
    """Return the chance that at most ``most`` are left, judged from the last passes alone.

    With z last passes that caught C, and an even weight on the number before them, the number left
    is negative binomial of size C + 1 and mean (C + 1) Q/(1 - Q), Q = (1 - p)^z. The chance is the
    largest over z: old passes, full of the easy wasps, then do not count.

    Parameters
    ----------
    catches : catch on each pass
    lengths : length of each pass as a share of the mean pass
    p : capture probability of one that is left, on a mean pass, above 0 and below 1
    most : number that may be left
    empty : further mean passes thought of as made, with no catch

    Returns a chance, 0 to 1. Range: p taken as known. Source: removal_shy.
    """
    caught, missed = 0, (1 - p) ** empty
    best = _at_most(most, 0, missed) if empty else 0.0
    for catch, length in zip(reversed(catches), reversed(lengths), strict=True):
        caught += catch
        missed *= (1 - p) ** length
        best = max(best, _at_most(most, caught, missed))
    return best


def _at_most(most: int, caught: int, missed: float) -> float:
    term = chance = (1 - missed) ** (caught + 1)
    for left in range(most):
        term *= (caught + 1 + left) / (left + 1) * missed
        chance += term
    return min(1.0, chance)


def empty_passes_needed(
    catches: Sequence[int], lengths: Sequence[float], p: float, most: int, wanted: float
) -> int | None:
    """Return how many more passes, all of them empty, would show that few enough are left.

    The smallest number for which :func:`chance_by_last_passes` comes up to ``wanted``.

    Parameters
    ----------
    catches, lengths, p, most : as :func:`chance_by_last_passes`
    wanted : chance, 0 to 1

    Returns a number of passes, ``None`` beyond :data:`MOST_PASSES`. Range and source: as there.
    """

    def enough(empty: int) -> bool:
        return chance_by_last_passes(catches, lengths, p, most, empty) >= wanted

    return first_whole(enough, 0, MOST_PASSES)

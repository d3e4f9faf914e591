"""Nests of next year from young queens let go."""

from __future__ import annotations

import math

from calc.method.passing_on import condition


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

"""What "Moving a nest" asks for."""

from __future__ import annotations

from calc.declare import Given, count, number
from calc.method.passing_on import status


class Inputs(Given):
    """Status of the species, and how far its nest is moved."""

    status: str = status()
    km: float = number(
        "Distance moved",
        "As the hornet flies, from the old place to the new.",
        "km",
        low=0,
        high=100,
        plausible=(1, 20),
        example=5,
        digits=1,
        step=0.5,
    )
    workers: int = count(
        "Workers moved",
        "Alive, with the nest.",
        low=0,
        high=20000,
        plausible=(20, 1000),
        example=200,
        step=10,
    )

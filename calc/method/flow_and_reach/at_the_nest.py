"""What "Flow and reach of the nozzle" asks for at the nest."""

from __future__ import annotations

from typing import Any

from calc.declare import Given, choice, number
from calc.tables import rows

LIMIT = "limits_of_flow_tool"
_FREE = ("nozzle", ("round", "flanged_round", "slot", "flanged_slot"))
_COLLAR = ("nozzle", ("collar",))


def width(label: str, meaning: str, limits: tuple[float, float], **more: Any) -> Any:
    """Declare a width in mm."""
    low, high = limits
    return number(
        label, meaning, "mm", low=low, high=high, source=LIMIT, customary_digits=1, **more
    )


class AtTheNest(Given):
    """The nozzle, where it is held, and what flies there."""

    nozzle: str = choice(
        "Nozzle",
        "Shape of the nozzle where the animals go in.",
        [
            ("round", "round, free"),
            ("flanged_round", "round, in a plate"),
            ("slot", "slot, free"),
            ("flanged_slot", "slot, in a plate"),
            ("collar", "collar over the hole"),
        ],
        example="round",
    )
    distance: float | None = number(
        "Distance to the animals",
        "From the nozzle to where they take wing.",
        "cm",
        low=0,
        high=100,
        source=LIMIT,
        plausible=(0.5, 10),
        example=3,
        digits=1,
        step=0.5,
        only_if=_FREE,
    )
    animal: str = choice(
        "What they do",
        "Flight speed the air must beat, from the table of flight speeds.",
        [
            (each["key"], each["animal"], each["method"])
            for each in rows("flight_speeds")
            if "speed" in each
        ],
        example="leaving",
    )
    hole: float | None = width(
        "Entrance hole",
        "Width of the nest's entrance hole under the collar.",
        (5, 300),
        plausible=(15, 60),
        example=30,
        step=1,
        only_if=_COLLAR,
    )
    gaps: float | None = number(
        "Gaps round the collar",
        "Area of all gaps through which air slips in beside the hole.",
        "cm**2",
        low=0,
        high=1000,
        source=LIMIT,
        plausible=(0, 20),
        example=5,
        digits=1,
        step=1,
        only_if=_COLLAR,
    )

"""What "Holding and driving" asks for."""

from __future__ import annotations

from typing import Any

from calc.declare import Given, choice, count, shared
from calc.declare import number as quantity
from calc.method.bodies import ANIMAL, MASS
from calc.tables import rows

_OPEN = ("air", ("lid", "two"))
_TWO = ("air", ("two",))


def _side(label: str, example: float) -> Any:
    return quantity(
        label,
        "Inside of the box that holds the animals.",
        "cm",
        low=3,
        high=200,
        origin="equipment",
        plausible=(15, 60),
        example=example,
        digits=0,
        customary_digits=1,
        step=5,
    )


class Inputs(Given):
    """Animals, box and ride."""

    number: int = count(
        "Animals in the box",
        "All that are in it, counted or estimated high.",
        low=1,
        high=50000,
        plausible=(20, 2000),
        example=300,
        step=50,
    )
    temperature: float = quantity(
        "Air round the box",
        "On the way, where the box rides.",
        "degC",
        low=-10,
        high=50,
        why="weather to drive in",
        source="own_reasoning",
        plausible=(10, 32),
        example=22,
        step=1,
    )
    ride: float = quantity(
        "Time in the box",
        "From closing it to opening it, the ride included.",
        "min",
        low=1,
        high=1440,
        why="at most a day; then they need a cage, not a box",
        source="own_reasoning",
        plausible=(15, 180),
        example=60,
        step=10,
    )
    animal: str = shared(ANIMAL)
    place: str = choice(
        "Where it rides",
        "Apart from the driver is the rule.",
        [
            ("load", "load space, shut off from the driver"),
            ("bed", "open bed, in the shade"),
            ("cab", "in the cab, inside a second closed box"),
            ("loose", "in the cab, no second box"),
        ],
        example="load",
    )
    length: float = _side("Box length", 40)
    width: float = _side("Box width", 25)
    height: float = _side("Box height", 30)
    walls: str = choice(
        "Walls",
        "A thick foam box keeps the sun out and their own heat in.",
        [
            ("thin_wall", "thin: plastic, plywood, metal"),
            ("insulated_wall", "insulated: foam, cool box"),
        ],
        origin="equipment",
        example="thin_wall",
    )
    air: str = choice(
        "Air",
        "How air gets in. Only wire mesh holds them.",
        [
            ("two", "mesh low and mesh high"),
            ("lid", "one mesh, in the lid"),
            ("tight", "shut tight"),
        ],
        origin="equipment",
        example="two",
    )
    mesh_area: float | None = quantity(
        "Mesh area",
        "With its wires; of each one where there are two.",
        "cm**2",
        low=0.5,
        high=20000,
        origin="equipment",
        plausible=(20, 400),
        example=110,
        digits=0,
        step=10,
        only_if=_OPEN,
    )
    mesh_share: float | None = quantity(
        "Open share",
        "Share of the mesh that is open; halve it when bodies sit on half of it.",
        "percent",
        low=2,
        high=95,
        why="wire mesh lies between",
        source="own_reasoning",
        origin="equipment",
        plausible=(20, 60),
        example=40,
        step=5,
        only_if=_OPEN,
    )
    apart: float | None = quantity(
        "Low to high mesh",
        "Height from the middle of one to the middle of the other.",
        "cm",
        low=1,
        high=200,
        origin="equipment",
        plausible=(10, 40),
        example=25,
        digits=0,
        customary_digits=1,
        step=5,
        only_if=_TWO,
    )
    state: str = choice(
        "Mood",
        "Darkness and cool air calm them; knocks and light rouse them.",
        [(each["key"], each["state"]) for each in rows("holding_levels")],
        origin="usual",
        usual="restless",
        usual_source="agitation_levels_ours",
    )
    parked: float = quantity(
        "Parked in the sun meanwhile",
        "Minutes with the engine off and the box in the car. Plan for none.",
        "min",
        low=0,
        high=240,
        origin="usual",
        usual=0,
        usual_source="own_reasoning",
        plausible=(0, 60),
        step=5,
    )
    mass: float | None = shared(MASS)

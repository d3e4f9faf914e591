"""Inputs of holding and driving."""

from __future__ import annotations

from calc.declare import Choice, Count, Input, Number, Option
from calc.method.catch_chamber_inputs import ANIMAL
from calc.tables import rows

_OWN = "own_reasoning"
OPEN = ("air", ("lid", "two"))
TWO = ("air", ("two",))


def _side(name: str, label: str, default: float) -> Number:
    return Number(
        name=name,
        label=label,
        meaning="Inside of the box that holds the animals.",
        unit="cm",
        customary="inch",
        low=3,
        high=200,
        source=_OWN,
        usual=default,
        digits=0,
        customary_digits=1,
        step=5,
    )


ANIMALS: tuple[Input, ...] = (
    *ANIMAL,
    Count(
        name="number",
        label="Animals in the box",
        meaning="All that are in it, counted or estimated high.",
        low=1,
        high=50000,
        source=_OWN,
        usual=300,
        step=50,
    ),
    Choice(
        name="state",
        label="Mood",
        meaning="Darkness and cool air calm them; knocks and light rouse them.",
        options=tuple(
            Option(value=each["key"], label=each["state"]) for each in rows("holding_levels")
        ),
        usual="restless",
    ),
)

BOX: tuple[Input, ...] = (
    _side("length", "Box length", 40),
    _side("width", "Box width", 25),
    _side("height", "Box height", 30),
    Choice(
        name="walls",
        label="Walls",
        meaning="A thick foam box keeps the sun out and their own heat in.",
        options=(
            Option(value="thin_wall", label="thin: plastic, plywood, metal"),
            Option(value="insulated_wall", label="insulated: foam, cool box"),
        ),
        usual="thin_wall",
    ),
    Choice(
        name="air",
        label="Air",
        meaning="How air gets in. Only wire mesh holds them.",
        options=(
            Option(value="two", label="mesh low and mesh high"),
            Option(value="lid", label="one mesh, in the lid"),
            Option(value="tight", label="shut tight"),
        ),
        usual="two",
    ),
    Number(
        name="mesh_area",
        label="Mesh area",
        meaning="With its wires; of each one where there are two.",
        unit="cm**2",
        customary="inch**2",
        low=0.5,
        high=20000,
        source=_OWN,
        usual=110,
        digits=0,
        step=10,
        only_if=OPEN,
    ),
    Number(
        name="mesh_share",
        label="Open share",
        meaning="Share of the mesh that is open; halve it when bodies sit on half of it.",
        unit="percent",
        low=2,
        high=95,
        why="wire mesh lies between",
        source=_OWN,
        usual=40,
        step=5,
        only_if=OPEN,
    ),
    Number(
        name="apart",
        label="Low to high mesh",
        meaning="Height from the middle of one to the middle of the other.",
        unit="cm",
        customary="inch",
        low=1,
        high=200,
        source=_OWN,
        usual=25,
        digits=0,
        customary_digits=1,
        step=5,
        only_if=TWO,
    ),
)

RIDE: tuple[Input, ...] = (
    Number(
        name="temperature",
        label="Air round the box",
        meaning="On the way, where the box rides.",
        unit="degC",
        customary="degF",
        low=-10,
        high=50,
        why="weather to drive in",
        source=_OWN,
        usual=22,
        step=1,
    ),
    Number(
        name="ride",
        label="Time in the box",
        meaning="From closing it to opening it, the ride included.",
        unit="min",
        low=1,
        high=1440,
        why="at most a day; then they need a cage, not a box",
        source=_OWN,
        usual=60,
        step=10,
    ),
    Number(
        name="parked",
        label="Parked in the sun meanwhile",
        meaning="Minutes with the engine off and the box in the car. Plan for none.",
        unit="min",
        low=0,
        high=240,
        source=_OWN,
        usual=0,
        step=5,
    ),
    Choice(
        name="place",
        label="Where it rides",
        meaning="Apart from the driver is the rule.",
        options=(
            Option(value="load", label="load space, shut off from the driver"),
            Option(value="bed", label="open bed, in the shade"),
            Option(value="cab", label="in the cab, inside a second closed box"),
            Option(value="loose", label="in the cab, no second box"),
        ),
        usual="load",
    ),
)

INPUTS = (*ANIMALS, *BOX, *RIDE)

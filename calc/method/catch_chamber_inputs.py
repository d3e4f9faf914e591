"""Inputs of the catch chamber."""

from __future__ import annotations

from typing import Any

from calc.common_inputs import ALTITUDE
from calc.declare import Choice, Count, Input, Number, Option
from calc.tables import rows

_LIMIT = "limits_of_flow_tool"
TWO = ("compare", ("yes",))
BATTERY = ("power", ("battery",))


def animal_options() -> tuple[Option, ...]:
    """Return the animals of the two tables of bodies, and a mass of one's own."""
    known = [*rows("insect_bodies"), *rows("caught_animals")]
    return (
        *(Option(value=each["key"], label=each["animal"]) for each in known),
        Option(value="typed", label="my own mass"),
    )


ANIMAL: tuple[Input, ...] = (
    Choice(
        name="animal",
        label="Animal",
        meaning="The heaviest kind you expect in numbers.",
        options=animal_options(),
        usual="germanica",
    ),
    Number(
        name="mass",
        label="Mass of one animal",
        meaning="Weigh a boxed sample of thirty and divide.",
        unit="mg",
        low=10,
        high=3000,
        why="from the smallest social wasp to the largest hornet queen",
        source="own_reasoning",
        usual=200,
        step=10,
        only_if=("animal", ("typed",)),
    ),
)

STATE = Choice(
    name="state",
    label="Mood of the animals",
    meaning="Freshly caught animals use many times the air of calm ones.",
    options=tuple(
        Option(value=each["key"], label=each["state"]) for each in rows("holding_levels")
    ),
    usual="caught",
)


def _setup(which: str, flow: float, bore: float, length: float) -> tuple[Input, ...]:
    shared: dict[str, Any] = {"only_if": TWO} if which == "b" else {}
    name = which.upper()
    return (
        Number(
            name=f"flow_{which}",
            label=f"Flow, set-up {name}",
            meaning="Flow through the hose, from “Flow and reach of the nozzle” or measured.",
            unit="L/s",
            customary="cfm",
            low=1,
            high=300,
            source=_LIMIT,
            usual=flow,
            digits=0,
            step=1,
            **shared,
        ),
        Number(
            name=f"bore_{which}",
            label=f"Hose bore, set-up {name}",
            meaning="Inside width of the hose.",
            unit="mm",
            customary="inch",
            low=15,
            high=200,
            source=_LIMIT,
            usual=bore,
            digits=0,
            customary_digits=1,
            step=1,
            **shared,
        ),
        Number(
            name=f"length_{which}",
            label=f"Hose length, set-up {name}",
            meaning="From the nozzle to the chamber; the animal gathers speed all the way.",
            unit="m",
            customary="ft",
            low=0.2,
            high=20,
            source=_LIMIT,
            usual=length,
            digits=1,
            step=0.5,
            **shared,
        ),
    )


SETUPS: tuple[Input, ...] = (
    *_setup("a", 34, 38, 3),
    Choice(
        name="compare",
        label="Compare with a second set-up",
        meaning="Shows both side by side.",
        options=(Option(value="yes", label="yes"), Option(value="no", label="no")),
        usual="yes",
    ),
    *_setup("b", 44, 63, 3),
)

LANDING: tuple[Input, ...] = (
    Number(
        name="gap",
        label="Hose end to the catch",
        meaning="How far they fly on in the chamber before they meet net or wall.",
        unit="cm",
        customary="inch",
        low=0,
        high=300,
        source=_LIMIT,
        usual=30,
        step=5,
    ),
    Number(
        name="give",
        label="Give of the catch",
        meaning="How far the net or cloth yields when something flies into it; a hard wall "
        "has about 1 mm.",
        unit="mm",
        customary="inch",
        low=1,
        high=1000,
        source=_LIMIT,
        usual=100,
        digits=0,
        customary_digits=2,
        step=10,
    ),
)

CHAMBER: tuple[Input, ...] = (
    Count(
        name="adults",
        label="Adults expected",
        meaning="Plan for the upper end of your estimate.",
        low=1,
        high=50000,
        source="own_reasoning",
        usual=300,
        step=50,
    ),
    STATE,
    Number(
        name="volume",
        label="Chamber volume",
        meaning="Inside of the chamber that holds the animals.",
        unit="L",
        customary="gal",
        low=1,
        high=1000,
        source=_LIMIT,
        usual=20,
        digits=0,
        customary_digits=1,
        step=5,
    ),
    Number(
        name="mesh_opening",
        label="Mesh opening",
        meaning="Clear width between two wires of the square mesh before the motor.",
        unit="mm",
        customary="inch",
        low=0.3,
        high=20,
        source=_LIMIT,
        usual=2.5,
        digits=1,
        customary_digits=3,
        step=0.1,
    ),
    Number(
        name="mesh_wire",
        label="Wire thickness",
        meaning="Thickness of one wire.",
        unit="mm",
        customary="inch",
        low=0.05,
        high=5,
        source=_LIMIT,
        usual=0.7,
        digits=2,
        customary_digits=3,
        step=0.1,
    ),
    Number(
        name="mesh_area",
        label="Mesh area",
        meaning="Whole area of the mesh that the air can pass.",
        unit="cm**2",
        customary="inch**2",
        low=5,
        high=20000,
        source=_LIMIT,
        usual=400,
        digits=0,
        step=50,
    ),
    Number(
        name="temperature",
        label="Air temperature",
        meaning="Of the air that the vacuum draws in, at the chamber.",
        unit="degC",
        customary="degF",
        low=-10,
        high=50,
        why="weather to work in",
        source=_LIMIT,
        usual=22,
        step=1,
    ),
    ALTITUDE,
)

POWER: tuple[Input, ...] = (
    Choice(
        name="power",
        label="Power",
        meaning="What drives the vacuum.",
        options=(
            Option(value="battery", label="battery"),
            Option(value="mains", label="mains or generator"),
        ),
        usual="battery",
    ),
    Number(
        name="battery",
        label="Battery energy",
        meaning="Volts times ampere-hours, all batteries you bring.",
        unit="Wh",
        low=5,
        high=20000,
        source="own_reasoning",
        usual=180,
        step=10,
        only_if=BATTERY,
    ),
    Number(
        name="motor",
        label="Motor draws",
        meaning="Electrical power at the setting you use; the plate gives the most.",
        unit="W",
        low=10,
        high=5000,
        source="own_reasoning",
        usual=300,
        step=50,
        only_if=BATTERY,
    ),
)

INPUTS = (*ANIMAL, *SETUPS, *LANDING, *CHAMBER, *POWER)

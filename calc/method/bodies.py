"""Animals of the two tables of bodies: mass, area, head, and how they are asked for."""

from __future__ import annotations

import math
from dataclasses import dataclass

from calc.declare import Choice, Number, Option
from calc.tables import row, rows


@dataclass(frozen=True, slots=True)
class Animal:
    """One animal: mass in mg, its range, tumbling area in mm2, and its row of ``head_widths``."""

    name: str
    mass: float
    area: float
    head: str | None
    invader: bool = False


def area_of(mass: float) -> float:
    """Return the tumbling area in mm2 of a body of ``mass`` mg, scaled from the hornet worker.

    Area goes with mass to two thirds where bodies are alike. Source: body_areas.
    """
    known = row("insect_bodies", "crabro")
    return float(known["tumbling"]) * math.pow(mass / float(known["mass"]), 2 / 3)


def animal(key: str, typed_mass: float | None = None) -> Animal:
    """Return the animal of a key: a row of ``insect_bodies`` or ``caught_animals``, or ``typed``.

    Parameters
    ----------
    key : row key, or ``typed``
    typed_mass : mg, used for ``typed``
    """
    if key == "typed":
        assert typed_mass is not None
        return Animal("animals of your mass", typed_mass, area_of(typed_mass), None)
    for each in rows("insect_bodies"):
        if each["key"] == key:
            head = "crabro" if key == "crabro" else "vespula"
            return Animal(each["animal"], float(each["mass"]), float(each["tumbling"]), head)
    each = row("caught_animals", key)
    mass = float(each["mass"])
    return Animal(each["animal"], mass, area_of(mass), key, each.get("invader") == "yes")


def animal_options() -> tuple[Option, ...]:
    """Return the animals of the two tables of bodies, and a mass of one's own."""
    known = [*rows("insect_bodies"), *rows("caught_animals")]
    return (
        *(Option(value=each["key"], label=each["animal"]) for each in known),
        Option(value="typed", label="my own mass"),
    )


ANIMAL = Choice(
    label="Animal",
    meaning="The heaviest kind you expect in numbers.",
    options=animal_options(),
    example="germanica",
)

MASS = Number(
    label="Mass of one animal",
    meaning="Weigh a boxed sample of thirty and divide.",
    unit="mg",
    low=10,
    high=3000,
    why="from the smallest social wasp to the largest hornet queen",
    source="own_reasoning",
    origin="extra",
    plausible=(50, 1000),
    example=200,
    step=10,
    only_if=("animal", ("typed",)),
)

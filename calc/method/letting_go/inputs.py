"""What "Letting queens and males go" asks for."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Any

from calc.declare import Given, Option, choice, count, number
from calc.method.passing_on import both, condition, status
from calc.tables import rows


def _weather() -> Iterator[Option]:
    warm = both(condition("temperature"), "degC", "degF")
    calm = both(condition("wind"), "m/s", "mph")
    hours = f"{condition('daylight'):.0f} h"
    yield Option(
        value="fit",
        label=f"dry, {warm} or more, wind at most {calm}, {hours} of daylight left or more",
    )
    yield Option(value="cold", label=f"colder than {warm}")
    yield Option(value="windy", label=f"more wind than {calm}")
    yield Option(value="wet", label="rain or soon rain")
    yield Option(value="late", label=f"less than {hours} of daylight left")


def _kinds() -> Iterator[Option]:
    for each in rows("caught_animals"):
        if each["key"].endswith(("queen", "male")):
            yield Option(value=each["key"], label=each["animal"])
    yield Option(value="typed", label="my own mass")


def _animals(label: str, meaning: str, example: int) -> Any:
    return count(
        label,
        meaning,
        low=0,
        high=5000,
        plausible=(0, 500),
        origin="extra",
        optional=True,
        example=example,
        step=10,
    )


class Inputs(Given):
    """Status, place, weather and state of the animals."""

    status: str = status()
    distance: float = number(
        "To the client, neighbours, schools, hives",
        "The nearest of them.",
        "m",
        low=0,
        high=100000,
        plausible=(50, 3000),
        example=1500,
        digits=-1,
        step=100,
    )
    weather: str = choice(
        "Weather at the place",
        "Now and for the next hours; the first below that is not right.",
        _weather(),
        example="fit",
    )
    age: float = number(
        "Days since the youngest queen came out",
        "Of her cell; until she flies she stays in the cage. Caught in flight: type 7.",
        "day",
        low=0,
        high=90,
        plausible=(0, 14),
        example=7,
        step=1,
    )
    flying: str = choice(
        "They fly by themselves",
        "Tried in the cage, in the light.",
        [("yes", "yes"), ("no", "no")],
        example="yes",
    )
    agreed: str = choice(
        "Client and landowner agree",
        "Told beforehand what happens to the animals, and where.",
        [("yes", "yes"), ("no", "no or not asked")],
        origin="usual",
        usual="no",
        usual_source="own_reasoning",
        example="yes",
    )
    queens: int | None = _animals("Young queens", "Alive and ready to go.", 60)
    males: int | None = _animals("Males", "Alive.", 40)
    animal: str = choice(
        "Kind of queen",
        "For the sugar water they need.",
        _kinds(),
        origin="extra",
        usual="vespula_queen",
        usual_source="own_reasoning",
    )
    mass: float | None = number(
        "Mass of one animal",
        "Weigh a boxed sample and divide.",
        "mg",
        low=10,
        high=3000,
        why="from the smallest social wasp to the largest hornet queen",
        plausible=(50, 1000),
        origin="extra",
        example=500,
        step=10,
        only_if=("animal", ("typed",)),
    )

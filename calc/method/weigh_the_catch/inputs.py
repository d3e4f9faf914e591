"""What "Count by weight" asks for."""

from __future__ import annotations

from typing import Any

from calc.declare import Given, choice, counts, number, numbers, shared
from calc.method.bodies import ANIMAL, MASS, animal_options

_TABLE = ("mean_from", ("table",))
_SAMPLE = ("mean_from", ("sample",))
_SECONDS = [("none", "none")] + [
    (each.value, each.label) for each in animal_options() if each.value != "typed"
]


def _chamber(label: str, meaning: str, **more: Any) -> Any:
    return number(label, meaning, "g", low=0, high=100_000, digits=1, customary_digits=2, **more)


class Inputs(Given):
    """Two weighings of the chamber, and what one animal weighs."""

    full: float = _chamber(
        "Chamber with the catch",
        "The closed chamber after the pass, on the same scale as before it.",
        plausible=(645, 700),
        example=671,
    )
    empty: float = _chamber(
        "Chamber, empty",
        "The closed chamber before the pass; 0 if the scale was set to zero with the chamber on "
        "it.",
        plausible=(600, 645),
        example=640,
    )
    sample_counts: tuple[int, ...] | None = counts(
        "Animals in each handful",
        "Picked blindly from this catch and counted one by one.",
        item="handful",
        low=1,
        high=5000,
        most=20,
        plausible=(20, 60),
        example=(150,),
        only_if=_SAMPLE,
    )
    sample_masses: tuple[float, ...] | None = numbers(
        "Mass of each handful",
        "Without its jar, in the same order.",
        "g",
        item="handful",
        low=0.01,
        high=10_000,
        most=20,
        plausible=(1, 6),
        example=(11.5,),
        digits=1,
        customary_digits=2,
        only_if=_SAMPLE,
    )
    animal: str = shared(ANIMAL)
    step: float = number(
        "Smallest step of the scale",
        "By how much the last digit jumps.",
        "g",
        low=0.001,
        high=1000,
        why="from a fine pocket scale to a coarse hanging scale",
        source="own_reasoning",
        origin="equipment",
        plausible=(0.1, 5),
        example=1,
        digits=1,
        customary_digits=3,
    )
    mean_from: str = choice(
        "Mass of one animal from",
        "A sample of this catch is far better.",
        [("sample", "a sample I weighed"), ("table", "the table of this book")],
        origin="usual",
        usual="sample",
        usual_source="weigh_cautions",
    )
    mass: float | None = shared(MASS)
    second: str | None = choice(
        "Second kind in the chamber",
        "Another caste or species, unsorted.",
        _SECONDS,
        origin="extra",
        usual="none",
        usual_source="own_reasoning",
        only_if=_TABLE,
    )
    share: float | None = number(
        "Share of the second kind",
        "By number, as you guess; the truth may be anywhere from 0 to twice that.",
        "percent",
        low=0,
        high=50,
        why="a kind of more than half is the first one",
        source="own_reasoning",
        origin="extra",
        plausible=(0, 20),
        example=5,
        step=1,
        only_if=("second", tuple(value for value, _ in _SECONDS[1:])),
    )

"""What "Fogging" asks for."""

from __future__ import annotations

from collections.abc import Iterator

from calc import tables
from calc.declare import Given, choice, number
from calc.declare.inputs import Option

_OWN = ("shares", ("own",))
_ESTIMATED = ("shares", ("estimated",))


def _habits(*keys: str) -> Iterator[Option]:
    for key in keys:
        yield Option(value=key, label=str(tables.row("fog_habits", key)["what"]))


def _eyewear() -> Iterator[Option]:
    for row in tables.rows("fog_eyewear"):
        told = f"stops a spray: {row['splash']}"
        yield Option(value=row["key"], label=row["eyewear"], meaning=told)


class Inputs(Given):
    """Weather, eyewear and how it is worn."""

    air_temperature: float = number(
        "Air temperature",
        "Where you work.",
        "degC",
        low=-10,
        high=45,
        why="wasps do not fly below, and nobody works above",
        plausible=(10, 35),
        example=18,
        digits=1,
        customary_digits=0,
        step=1,
    )
    humidity: float = number(
        "Relative humidity",
        "From the weather report for this hour.",
        "percent",
        low=5,
        high=100,
        why="drier air is not met, and air holds no more",
        plausible=(30, 95),
        example=75,
        step=5,
    )
    sweat: str | None = choice(
        "Your face",
        "After ten minutes of work in the suit.",
        _habits("damp", "dry", "wet"),
        only_if=_ESTIMATED,
        example="wet",
    )
    breath: str | None = choice(
        "Where the breath goes",
        "The nose bridge of goggle and mask decides.",
        _habits("normal", "down", "mask"),
        only_if=_ESTIMATED,
        example="normal",
    )
    eyewear: str = choice(
        "Eyewear",
        "What is in front of your eyes under the veil.",
        _eyewear(),
        origin="equipment",
        example="indirect",
    )
    fan: str = choice(
        "Fan",
        "A small fan that moves air behind the lens or through the hood.",
        [("no", "None"), ("yes", "Runs")],
        origin="usual",
        usual="no",
        usual_source="common_practice",
    )
    wind: str = choice(
        "Air over the lens",
        "Wind and your own movement cool the lens.",
        _habits("light", "calm", "wind"),
        origin="usual",
        usual="light",
        usual_source="fog_model",
    )
    shares: str = choice(
        "Breath and sweat",
        "Estimate them from how you work, or give your own figures.",
        [("estimated", "Estimate them"), ("own", "I give the shares")],
        origin="extra",
        usual="estimated",
        usual_source="fog_model",
    )
    breath_share: float | None = number(
        "Breath behind the lens",
        "Share of exhaled air in the air there.",
        "percent",
        low=0,
        high=100,
        why="a share",
        source="arithmetic",
        origin="extra",
        only_if=_OWN,
        plausible=(0, 30),
        example=10,
        step=1,
    )
    sweat_share: float | None = number(
        "Skin moisture behind it",
        "Share of air straight off wet skin.",
        "percent",
        low=0,
        high=100,
        why="a share",
        source="arithmetic",
        origin="extra",
        only_if=_OWN,
        plausible=(0, 50),
        example=20,
        step=1,
    )
    stored: float | None = number(
        "Lens was kept at",
        "In a cooled vehicle, a cold box, a pocket; leave empty if it is warm by now.",
        "degC",
        low=-20,
        high=60,
        why="nothing on a vehicle is colder or hotter for long",
        origin="extra",
        optional=True,
        plausible=(5, 30),
        step=1,
    )
    worn: float | None = number(
        "Worn for",
        "Minutes since you put it on.",
        "min",
        low=0,
        high=120,
        why="by then it has long settled",
        origin="extra",
        optional=True,
        plausible=(0, 10),
        digits=1,
        step=0.5,
    )

"""What "Opening the cavity" asks for."""

from __future__ import annotations

from typing import Any

from calc.declare import Given, Option, choice, count, number
from calc.tables import rows

_BUILT = ("wall", ("stud_wall", "soffit", "shed", "chimney"))


def _length(label: str, meaning: str, low: float, high: float, **more: Any) -> Any:
    return number(label, meaning, "cm", low=low, high=high, digits=1, step=1, **more)


class Inputs(Given):
    """What is opened, what is ruled out, and what the peep hole shows."""

    wall: str = choice(
        "Cavity",
        "What has to be opened.",
        [Option(value=each["key"], label=each["wall"]) for each in rows("wall_types")],
        example="stud_wall",
    )
    hazard: str = choice(
        "What lies in the way",
        "In a building wires, asbestos, load-bearing parts, flues; in a trunk wires and the tree; "
        "in the ground buried lines.",
        [
            ("clear", "nothing: all ruled out, or cleared by its trade"),
            ("unknown", "not all is checked"),
            ("wires", "live wires, or it looks like it"),
            ("asbestos", "vermiculite, old board, pipe wrap, cement sheet"),
            ("load", "stud, joist, rafter, lintel or pier in the window"),
            ("flue", "flue, chimney or vent of a boiler, stove, fire or dryer"),
            ("tree", "a tree on which no arborist has said where and how big"),
            ("buried", "buried cable, gas or water"),
        ],
        example="clear",
    )
    tiers: int = count(
        "Tiers in view",
        "Combs you can count through the peep hole, a mirror or an endoscope.",
        low=1,
        high=40,
        plausible=(1, 8),
        example=3,
    )
    lowest: float = _length(
        "Lowest tier above the entrance",
        "From the hole up to the lowest cells; minus if they hang below it.",
        -300,
        300,
        plausible=(-20, 60),
        example=10,
    )
    comb: float = _length(
        "Widest tier",
        "Across the widest comb, as far as you can see.",
        1,
        150,
        plausible=(10, 40),
        example=28,
    )
    animal: str = choice(
        "Animal",
        "For the usual distance from tier to tier.",
        [
            *(Option(value=each["key"], label=each["animal"]) for each in rows("tiers")),
            Option(value="unknown", label="Not known", meaning="Takes the greatest distance."),
        ],
        origin="usual",
        usual="unknown",
        usual_source="opening_rules_ours",
        example="vespula",
    )
    paint: str | None = choice(
        "Lead paint",
        "Old layers; in US homes before 1978 taken as lead.",
        [("clear", "none"), ("unknown", "not known"), ("yes", "yes, or it looks like it")],
        origin="usual",
        usual="unknown",
        usual_source="own_reasoning",
        example="clear",
        only_if=_BUILT,
    )
    side: str | None = choice(
        "Cut from",
        "For the lead-paint areas.",
        [("inside", "inside"), ("outside", "outside")],
        origin="usual",
        usual="inside",
        usual_source="lead_rule_areas",
        only_if=_BUILT,
    )
    spacing: float | None = number(
        "From tier to tier",
        "From one roof to the next, measured; left empty, the table's range is taken.",
        "cm",
        low=1,
        high=12,
        plausible=(2.5, 6),
        plausible_source="tier_spacing_memory",
        origin="extra",
        optional=True,
        digits=1,
        step=0.1,
    )
    bay: float | None = _length(
        "Clear width of the cavity",
        "Between studs, rafters or the sides of the hollow.",
        3,
        300,
        plausible=(20, 60),
        origin="extra",
        optional=True,
        example=36.8,
    )
    trunk: float | None = _length(
        "Trunk across",
        "Thickness of the trunk where the window goes.",
        8,
        400,
        plausible=(30, 120),
        origin="extra",
        optional=True,
        example=60,
        only_if=("wall", ("hollow_trunk",)),
    )
    left: int | None = count(
        "Adults still inside",
        "From “How many are left”; take the upper end.",
        low=0,
        high=20000,
        plausible=(0, 50),
        origin="extra",
        optional=True,
        example=15,
        step=5,
    )

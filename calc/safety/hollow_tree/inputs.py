"""What "Hollow or dead tree" asks for."""

from __future__ import annotations

from calc.declare import Given, choice, number

_CUT = ("cut", ("yes",))


class Inputs(Given):
    """The stem, what ails it, and the window that is planned."""

    diameter: float = number(
        "Stem diameter",
        "Where the hollow is, without the bark. Insects in it: guess from outside the zone, by "
        "ruler or photo.",
        "cm",
        low=8,
        high=300,
        why="thinner stems are branches",
        plausible=(25, 120),
        example=50,
        digits=1,
        step=1,
    )
    wall: float = number(
        "Sound wood, thinnest",
        "Between bark and hollow; the thinnest you fear, or find after the catch.",
        "cm",
        low=0,
        high=150,
        why="half of the thickest stem",
        plausible=(1, 40),
        example=12,
        digits=1,
        step=1,
    )
    opening: float = number(
        "Opening there is, across",
        "Width along the girth, all holes at that height together.",
        "cm",
        low=0,
        high=900,
        why="the girth of the thickest stem",
        plausible=(0, 40),
        example=6,
        digits=1,
        step=1,
    )
    dead: str = choice(
        "Dead for",
        "A tree with no live crown.",
        [
            ("alive", "Alive, leaves in the crown"),
            ("recent", "Dead for up to a year"),
            ("long", "Dead for longer"),
            ("unknown", "Not known"),
        ],
        example="unknown",
    )
    signs: str = choice(
        "Signs on the tree",
        "Fungus, cracks, bulges, loose bark, dead crown, lifted soil.",
        [
            ("not_looked", "Not looked yet"),
            ("none", "Looked all round: none"),
            ("some", "One or more"),
        ],
        example="not_looked",
    )
    cut: str = choice(
        "A window to be cut",
        "Any wood you would take out of the stem.",
        [("no", "No, work through the hole"), ("yes", "Yes")],
        origin="usual",
        usual="no",
        usual_source="tree_rule",
    )
    window: float | None = number(
        "Window, across",
        "Width along the girth, added to the opening.",
        "cm",
        low=0.5,
        high=900,
        why="the girth of the thickest stem",
        origin="extra",
        only_if=_CUT,
        plausible=(5, 40),
        example=15,
        digits=1,
        step=1,
    )
    height: str | None = choice(
        "Where the cut is",
        "From where you stand.",
        [
            ("chest", "Chest high or lower, feet on the ground"),
            ("above", "Above the chest, or from a stand"),
            ("ladder", "From a ladder"),
        ],
        origin="extra",
        only_if=_CUT,
        example="chest",
    )
    ash: str | None = choice(
        "Ash where the borer is",
        "The emerald ash borer: crown thins from the top, D-shaped holes in the bark.",
        [("no", "No"), ("yes", "Yes, or cannot tell")],
        origin="extra",
        optional=True,
        example="no",
    )
    lean: float | None = number(
        "Lean",
        "Degrees from upright. Not looked at counts as leaning.",
        "degree",
        low=0,
        high=60,
        why="beyond it the tree lies",
        origin="extra",
        optional=True,
        plausible=(0, 20),
        example=3,
        step=1,
    )

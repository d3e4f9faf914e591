"""Inputs of opening the cavity."""

from __future__ import annotations

from calc.declare import Choice, Count, Input, Number, Option
from calc.tables import rows

_OWN = "own_reasoning"


def _length(
    name: str, label: str, meaning: str, low: float, high: float, default: float, **kept: object
) -> Number:
    return Number(
        name=name,
        label=label,
        meaning=meaning,
        unit="cm",
        customary="inch",
        low=low,
        high=high,
        source=_OWN,
        usual=default,
        digits=1,
        step=1,
        **kept,  # type: ignore[arg-type]
    )


def _hazard(
    name: str, label: str, meaning: str, clear: str, walls: tuple[str, ...] | None = None
) -> Choice:
    return Choice(
        name=name,
        label=label,
        meaning=meaning,
        options=(
            Option(value="clear", label=clear),
            Option(value="unknown", label="not known"),
            Option(value="yes", label="yes, or it looks like it"),
        ),
        usual="clear",
        only_if=None if walls is None else ("wall", walls),
    )


COMB: tuple[Input, ...] = (
    Choice(
        name="wall",
        label="Cavity",
        meaning="What has to be opened.",
        options=tuple(Option(value=each["key"], label=each["wall"]) for each in rows("wall_types")),
        usual="stud_wall",
    ),
    Choice(
        name="animal",
        label="Animal",
        meaning="For the usual distance from tier to tier.",
        options=tuple(Option(value=each["key"], label=each["animal"]) for each in rows("tiers")),
        usual="vespula",
    ),
    Count(
        name="tiers",
        label="Tiers in view",
        meaning="Combs you can count through the peep hole, a mirror or an endoscope.",
        low=1,
        high=40,
        source=_OWN,
        usual=3,
    ),
    Number(
        name="spacing",
        label="From tier to tier",
        meaning="From one roof to the next, measured; left empty, the table's range is taken.",
        unit="cm",
        customary="inch",
        low=1,
        high=12,
        source=_OWN,
        optional=True,
        digits=1,
        step=0.1,
    ),
    _length(
        "comb",
        "Widest tier",
        "Across the widest comb, as far as you can see.",
        1,
        150,
        28,
    ),
    _length(
        "lowest",
        "Lowest tier above the entrance",
        "From the hole up to the lowest cells; minus if they hang below it.",
        -300,
        300,
        10,
    ),
)

CAVITY: tuple[Input, ...] = (
    _length(
        "bay",
        "Clear width of the cavity",
        "Between studs, rafters or the sides of the hollow.",
        3,
        300,
        36.8,
    ),
    _length(
        "trunk",
        "Trunk across",
        "Thickness of the trunk where the window goes.",
        8,
        400,
        60,
        only_if=("wall", ("hollow_trunk",)),
    ),
    Count(
        name="left",
        label="Adults still inside",
        meaning="From “How many are left”; take the upper end.",
        low=0,
        high=20000,
        source=_OWN,
        usual=15,
        step=5,
    ),
)

_BUILT = ("stud_wall", "soffit", "shed", "chimney")

HAZARDS: tuple[Input, ...] = (
    _hazard(
        "wires",
        "Live wires",
        "In or behind what is cut.",
        "none, or switched off and tested",
        (*_BUILT, "hollow_trunk"),
    ),
    _hazard(
        "asbestos",
        "Asbestos",
        "Vermiculite, old board, pipe wrap, cement sheet.",
        "excluded by someone who can tell",
        _BUILT,
    ),
    _hazard(
        "load",
        "Load-bearing member in the window",
        "Stud, joist, rafter, lintel, pier.",
        "none: the window lies between them",
        _BUILT,
    ),
    _hazard(
        "flue",
        "Gas flue, chimney or vent",
        "Of a boiler, stove, fire or dryer.",
        "none, or out of use and cleared by the trade",
        _BUILT,
    ),
    _hazard(
        "paint",
        "Lead paint",
        "Old layers; in US homes before 1978 taken as lead.",
        "none",
        _BUILT,
    ),
    Choice(
        name="side",
        label="Cut from",
        meaning="For the lead-paint areas.",
        options=(
            Option(value="inside", label="inside"),
            Option(value="outside", label="outside"),
        ),
        usual="inside",
        only_if=("wall", _BUILT),
    ),
    _hazard(
        "tree",
        "The tree may fail",
        "Whether a window may be cut here is the arborist's word, not a number's.",
        "arborist has said where and how big",
        ("hollow_trunk",),
    ),
    _hazard(
        "buried",
        "Buried lines",
        "Cable, gas, water.",
        "located and marked",
        ("ground",),
    ),
)

INPUTS = (*COMB, *CAVITY, *HAZARDS)

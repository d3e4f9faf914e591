"""Inputs and results of "Fogging"."""

from __future__ import annotations

from calc import tables
from calc.declare import Choice, Input, Number, Option, Out


def _habits(*keys: str) -> tuple[Option, ...]:
    return tuple(
        Option(value=key, label=str(tables.row("fog_habits", key)["what"])) for key in keys
    )


_OWN = ("shares", ("own",))
_ESTIMATED = ("shares", ("estimated",))


def _share(name: str, label: str, meaning: str, default: float) -> Number:
    return Number(
        name=name,
        label=label,
        meaning=meaning,
        only_if=_OWN,
        unit="percent",
        low=0,
        high=100,
        why="a share",
        source="arithmetic",
        usual=default,
        step=1,
    )


INPUTS: tuple[Input, ...] = (
    Number(
        name="air_temperature",
        label="Air temperature",
        meaning="Where you work.",
        unit="degC",
        customary="degF",
        low=-10,
        high=45,
        why="wasps do not fly below, and nobody works above",
        source="own_reasoning",
        usual=18,
        digits=1,
        customary_digits=0,
        step=1,
    ),
    Number(
        name="humidity",
        label="Relative humidity",
        meaning="From the weather report for this hour.",
        unit="percent",
        low=5,
        high=100,
        why="drier air is not met, and air holds no more",
        source="own_reasoning",
        usual=75,
        step=5,
    ),
    Choice(
        name="eyewear",
        label="Eyewear",
        meaning="What is in front of your eyes under the veil.",
        options=tuple(
            Option(
                value=row["key"], label=row["eyewear"], meaning=f"stops a spray: {row['splash']}"
            )
            for row in tables.rows("fog_eyewear")
        ),
        usual="indirect",
    ),
    Choice(
        name="shares",
        label="Breath and sweat",
        meaning="Estimate them from how you work, or give your own figures.",
        options=(
            Option(value="estimated", label="Estimate them"),
            Option(value="own", label="I give the shares"),
        ),
        usual="estimated",
    ),
    Choice(
        name="breath",
        label="Where the breath goes",
        meaning="The nose bridge of goggle and mask decides.",
        only_if=_ESTIMATED,
        options=_habits("normal", "down", "mask"),
        usual="normal",
    ),
    Choice(
        name="sweat",
        label="Your face",
        meaning="After ten minutes of work in the suit.",
        only_if=_ESTIMATED,
        options=_habits("damp", "dry", "wet"),
        usual="wet",
    ),
    _share("breath_share", "Breath behind the lens", "Share of exhaled air in the air there.", 10),
    _share("sweat_share", "Skin moisture behind it", "Share of air straight off wet skin.", 20),
    Choice(
        name="fan",
        label="Fan",
        meaning="A small fan that moves air behind the lens or through the hood.",
        options=(Option(value="no", label="None"), Option(value="yes", label="Runs")),
        usual="no",
    ),
    Choice(
        name="wind",
        label="Air over the lens",
        meaning="Wind and your own movement cool the lens.",
        options=_habits("light", "calm", "wind"),
        usual="light",
    ),
    Number(
        name="stored",
        label="Lens was kept at",
        meaning="In a cooled vehicle, a cold box, a pocket; leave empty if it is warm by now.",
        optional=True,
        unit="degC",
        customary="degF",
        low=-20,
        high=60,
        why="nothing on a vehicle is colder or hotter for long",
        source="own_reasoning",
        digits=0,
        step=1,
    ),
    Number(
        name="worn",
        label="Worn for",
        meaning="Minutes since you put it on.",
        optional=True,
        unit="min",
        low=0,
        high=120,
        why="by then it has long settled",
        source="own_reasoning",
        digits=1,
        step=0.5,
    ),
)
"""What the reader gives, in the order of the form."""


def _degrees(name: str, label: str, meaning: str, main: bool = False) -> Out:
    return Out(
        name=name, label=label, meaning=meaning, unit="degC", customary="degF", digits=1, main=main
    )


def _gap(name: str, label: str, meaning: str, main: bool = False) -> Out:
    return Out(
        name=name,
        label=label,
        meaning=meaning,
        unit="delta_degC",
        customary="delta_degF",
        digits=1,
        main=main,
    )


OUTPUTS: tuple[Out, ...] = (
    Out(
        name="verdict",
        label="Will it fog",
        meaning="By our model; never a promise.",
        kind="text",
        main=True,
    ),
    _gap("margin", "Room to the dew point", "Lens less dew point; below zero it fogs.", True),
    Out(
        name="best",
        label="Helps most",
        meaning="The change below that gains most.",
        kind="text",
        main=True,
    ),
    Out(
        name="options",
        label="What would change it",
        meaning="Each one by itself, away from the nest.",
        kind="table",
        columns=(
            Out(name="change", label="Change", meaning="One at a time.", kind="text"),
            _gap("margin", "Room then", "Lens less dew point."),
            _gap("gain", "Gained", "Against now."),
        ),
    ),
    _degrees("lens", "Inner face of the lens", "Now."),
    _degrees("lens_settled", "The same when settled", "After some minutes."),
    _degrees("dew_point", "Dew point behind the lens", "Air, breath and sweat together."),
    _degrees("air_dew_point", "Dew point of the air", "Without you."),
    Out(
        name="clear_after",
        label="A cold lens is warm enough after",
        meaning="Minutes from putting it on; no figure if it never is, or was not cold.",
        unit="min",
        digits=1,
    ),
    Out(
        name="breath_behind",
        label="Share of breath behind it",
        meaning="In the air between lens and face.",
        unit="percent",
        digits=1,
    ),
    Out(
        name="sweat_behind",
        label="Share of skin moisture behind it",
        meaning="In the air between lens and face.",
        unit="percent",
        digits=1,
    ),
)
"""What the reader gets, the main answers first."""

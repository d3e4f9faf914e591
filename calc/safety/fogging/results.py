"""What "Fogging" answers, the main answers first."""

from __future__ import annotations

from calc.declare import Out


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


RESULTS: tuple[Out, ...] = (
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

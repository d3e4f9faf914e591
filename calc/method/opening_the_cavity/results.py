"""What "Opening the cavity" answers, the main answers first."""

from __future__ import annotations

from typing import Any

from calc.declare import Out

_CM: dict[str, Any] = {"unit": "cm", "customary": "inch", "digits": 0}

RESULTS = (
    Out(name="verdict", label="What it means", meaning="The answer in words.", kind="text"),
    Out(
        name="height",
        label="Window height",
        meaning="From below the lowest tier to a hand above the planned ones.",
        main=True,
        **_CM,
    ),
    Out(
        name="width",
        label="Window width",
        meaning="The comb and a hand on each side, no wider than the cavity.",
        main=True,
        **_CM,
    ),
    Out(
        name="bottom",
        label="Lower edge above the entrance",
        meaning="Minus lies below it.",
        main=True,
        **_CM,
    ),
    Out(
        name="top",
        label="Upper edge above the entrance",
        meaning="Minus lies below it.",
        main=True,
        **_CM,
    ),
    Out(
        name="planned",
        label="Tiers planned for",
        meaning="One more than in view; half as many again from five on.",
        kind="count",
    ),
    Out(
        name="tiers_range",
        label="Tiers there may be",
        meaning="From those in view to the most in print for the animal, or more.",
        kind="interval",
    ),
    Out(
        name="stack",
        label="Height of the comb",
        meaning="From the tiers seen at the least spacing to the tiers planned at the greatest.",
        kind="interval",
        **_CM,
    ),
    Out(
        name="area",
        label="Area of the window",
        meaning="For the lead-paint rule and for the client.",
        unit="m**2",
        customary="ft**2",
        digits=2,
        customary_digits=1,
    ),
    Out(
        name="arc",
        label="Width along the bark",
        meaning="What a tape round the trunk shows for this window.",
        **_CM,
    ),
    Out(name="tools", label="Tools", meaning="For this kind of cavity.", kind="text"),
    Out(name="other", label="Another trade first", meaning="Before any cut.", kind="text"),
    Out(
        name="order",
        label="Order of the cuts",
        meaning="For this kind of cavity.",
        kind="table",
        columns=(Out(name="do", label="Do", meaning="In this order.", kind="text"),),
    ),
    Out(
        name="trades",
        label="Never opened without another trade",
        meaning="The signs of each are on the page.",
        kind="table",
        columns=(
            Out(name="hazard", label="What", meaning="Hazard.", kind="text"),
            Out(name="trade", label="Who", meaning="Clears it.", kind="text"),
        ),
    ),
)

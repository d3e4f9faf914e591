"""What "The catch chamber" answers."""

from __future__ import annotations

from typing import Any

from calc.declare import Out

_SPEED: dict[str, Any] = {"unit": "m/s", "customary": "mph", "digits": 0}
_MINUTES: dict[str, Any] = {"unit": "min", "digits": 0}

RESULTS: tuple[Out, ...] = (
    Out(name="verdict", label="What it means", meaning="The answer in words.", kind="text"),
    Out(
        name="arrival_a",
        label="Arrival speed, set-up A",
        meaning="Speed at the end of the hose for a tumbling animal.",
        main=True,
        **_SPEED,
    ),
    Out(
        name="arrival_b",
        label="Arrival speed, set-up B",
        meaning="The same in the second hose.",
        main=True,
        **_SPEED,
    ),
    Out(
        name="minutes_planned",
        label="Closed tight: minutes to the planned limit",
        meaning="Motor off, vents shut, until carbon dioxide is at what we plan for.",
        main=True,
        **_MINUTES,
    ),
    Out(
        name="battery_minutes",
        label="Battery lasts",
        meaning="Minutes of suction from all batteries, with the usable share.",
        main=True,
        **_MINUTES,
    ),
    Out(
        name="comparison",
        label="The two set-ups side by side",
        meaning="In the order of the animal's way. The range is for head-on and side-on, with "
        "assumed areas; lift below 1 leaves limp animals in a rising hose; the fall is one that "
        "would hit as hard.",
        kind="table",
        columns=(
            Out(name="what", label="", meaning="What is compared.", kind="text"),
            Out(name="a", label="A", meaning="First set-up.", kind="text"),
            Out(name="b", label="B", meaning="Second set-up.", kind="text"),
        ),
    ),
    Out(name="mesh", label="The mesh", meaning="What the opening does.", kind="text"),
    Out(
        name="open_share",
        label="Open share of the mesh",
        meaning="Part of its area that is hole.",
        unit="percent",
        digits=0,
    ),
    Out(
        name="live_mass",
        label="All animals weigh",
        meaning="Adults times mass.",
        unit="g",
        customary="oz",
        digits=0,
        customary_digits=1,
    ),
    Out(
        name="volume_needed",
        label="Room wanted",
        meaning="From twice the space of package bees to a roomy box; nobody has measured it.",
        kind="interval",
        unit="L",
        customary="gal",
        digits=1,
        customary_digits=1,
    ),
    Out(
        name="minutes_end",
        label="Closed tight: minutes to the end",
        meaning="Motor off, vents shut, until carbon dioxide is at the end of our limits.",
        **_MINUTES,
    ),
    Out(
        name="minutes_hot",
        label="Closed tight: minutes to heat",
        meaning="Until the chamber itself is at the end of our limits; no figure means that its "
        "walls keep it below.",
        **_MINUTES,
    ),
)

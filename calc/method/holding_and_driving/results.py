"""What "Holding and driving" answers."""

from __future__ import annotations

from typing import Any

from calc.declare import Out

_DEG: dict[str, Any] = {"unit": "degC", "customary": "degF", "digits": 0}
_MIN: dict[str, Any] = {"unit": "min", "digits": 0}
_CM2: dict[str, Any] = {"unit": "cm**2", "customary": "inch**2", "digits": 0}

RESULTS: tuple[Out, ...] = (
    Out(name="verdict", label="What it means", meaning="The answer in words.", kind="text"),
    Out(
        name="inside",
        label="The box settles at",
        meaning="Temperature with your openings and this mood; no figure means it runs away.",
        main=True,
        **_DEG,
    ),
    Out(
        name="share",
        label="Carbon dioxide settles at",
        meaning="No figure means that it never settles.",
        unit="percent",
        digits=1,
        main=True,
    ),
    Out(
        name="minutes_tight",
        label="Shut tight: minutes to the planned limit",
        meaning="If the mesh is covered or the box is shut, until carbon dioxide is at the plan.",
        main=True,
        **_MIN,
    ),
    Out(
        name="minutes_end",
        label="Minutes to the end of the limits",
        meaning="With your openings, by gas or heat; no figure means not reached.",
        **_MIN,
    ),
    Out(
        name="minutes_spare",
        label="Minutes to spare after the ride",
        meaning="No figure means that no limit is reached.",
        **_MIN,
    ),
    Out(
        name="moods",
        label="Calm, restless, just caught",
        meaning="The same animals in each mood: breath, minutes shut tight to the planned limit, "
        "and how warm and how stale your box settles.",
        kind="table",
        columns=(
            Out(name="mood", label="Mood", meaning="Of all of them.", kind="text"),
            Out(
                name="carbon_dioxide",
                label="Breath",
                meaning="Carbon dioxide.",
                unit="mL/h",
                digits=-1,
            ),
            Out(name="planned", label="Tight", meaning="Minutes to the plan.", **_MIN),
            Out(
                name="rise",
                label="Warmer by",
                meaning="With your openings.",
                unit="delta_degC",
                customary="delta_degF",
                digits=1,
            ),
            Out(
                name="share",
                label="Settles at",
                meaning="Carbon dioxide.",
                unit="percent",
                digits=1,
            ),
        ),
    ),
    Out(name="heat", label="Heat they make", meaning="In the settled box.", unit="W", digits=1),
    Out(
        name="carbon_dioxide",
        label="Carbon dioxide they give off",
        meaning="In the settled box.",
        unit="mL/h",
        digits=-1,
    ),
    Out(
        name="air_needed",
        label="Fresh air wanted",
        meaning="To keep carbon dioxide at the plan.",
        unit="L/min",
        customary="cfm",
        digits=1,
        customary_digits=3,
    ),
    Out(
        name="air_moved",
        label="Fresh air your mesh lets in",
        meaning="By warmth and diffusion, without wind.",
        unit="L/min",
        customary="cfm",
        digits=1,
        customary_digits=3,
    ),
    Out(
        name="meshes",
        label="Mesh for free ventilation",
        meaning="Area with its wires that keeps carbon dioxide at the plan.",
        kind="table",
        columns=(
            Out(name="way", label="Way", meaning="How the mesh lies.", kind="text"),
            Out(name="wanted", label="Wanted", meaning="Area.", **_CM2),
            Out(name="yours", label="Yours", meaning="Area.", **_CM2),
        ),
    ),
    Out(
        name="live_mass",
        label="They weigh",
        meaning="Number times mass.",
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
    ),
    Out(
        name="sugar",
        label="Sugar they burn",
        meaning="In the whole time, at this mood.",
        unit="g",
        customary="oz",
        digits=1,
        customary_digits=2,
    ),
    Out(
        name="syrup",
        label="Sugar water to give",
        meaning="Half sugar, half water by mass, on a pad or wick; no open liquid.",
        unit="g",
        customary="oz",
        digits=1,
        customary_digits=2,
    ),
    Out(
        name="water",
        label="Water they may lose",
        meaning="From honey bees in flight at 25 and 37 °C, so high; a wet sponge covers it.",
        kind="interval",
        unit="g",
        customary="oz",
        digits=0,
        customary_digits=1,
    ),
    Out(
        name="car",
        label="Air in the car after parking",
        meaning="Average clear day, closed car in the sun, from the air round the box.",
        **_DEG,
    ),
    Out(
        name="car_minutes",
        label="Parked car: minutes to the end",
        meaning="Until the air of a car in the sun is at the end of the limits.",
        **_MIN,
    ),
)

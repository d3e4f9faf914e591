"""What "Flow and reach of the nozzle" asks for."""

from __future__ import annotations

from collections.abc import Callable
from typing import Any

from calc.common_inputs import ALTITUDE
from calc.declare import Soft, choice, count, number, numbers, shared
from calc.method.flow_and_reach.at_the_nest import LIMIT, AtTheNest, width

_ROUND = ("nozzle", ("round", "flanged_round"))
_SLOT = ("nozzle", ("slot", "flanged_slot"))
_TWO_FIGURES = ("vacuum", ("linear", "quadratic"))
_POINTS = ("vacuum", ("points",))


def _machine(kind: Callable[..., Any], label: str, meaning: str, unit: str, **more: Any) -> Any:
    return kind(
        label,
        meaning,
        unit,
        why="what portable machines and hoses cover",
        source=LIMIT,
        origin="equipment",
        **more,
    )


class Inputs(AtTheNest):
    """What is asked at the nest, then the machine, its hose and its nozzles, and the weather."""

    nozzle_bore: float | None = width(
        "Nozzle width",
        "Inside width of the round nozzle.",
        (5, 300),
        plausible=(25, 80),
        example=38,
        step=1,
        origin="equipment",
        only_if=_ROUND,
    )
    slot_length: float | None = width(
        "Slot length",
        "Long side of the slot.",
        (5, 1000),
        plausible=(50, 300),
        example=100,
        step=5,
        origin="equipment",
        only_if=_SLOT,
    )
    slot_width: float | None = width(
        "Slot width",
        "Short side of the slot.",
        (2, 300),
        plausible=(6, 40),
        example=12,
        step=1,
        origin="equipment",
        only_if=_SLOT,
    )
    vacuum: str = choice(
        "What you know of the vacuum",
        "Two figures, or better three or more measured points.",
        [
            (
                "linear",
                "two figures, household or wet/dry vacuum",
                "Suction falls on a straight line as the flow rises.",
            ),
            ("quadratic", "two figures, blower", "Suction falls on a parabola."),
            ("points", "measured points", "Straight lines through your points."),
        ],
        origin="equipment",
        example="linear",
    )
    sealed: float | None = _machine(
        number,
        "Sealed suction",
        "Suction at the machine with its inlet closed, read on a gauge or water tube.",
        "kPa",
        low=0.1,
        high=40,
        plausible=(5, 25),
        example=20,
        digits=1,
        customary_digits=0,
        step=1,
        only_if=_TWO_FIGURES,
    )
    open_flow: float | None = _machine(
        number,
        "Open flow",
        "Flow at the machine with its inlet open, without hose.",
        "L/s",
        low=1,
        high=500,
        plausible=(20, 80),
        example=45,
        step=5,
        only_if=_TWO_FIGURES,
    )
    point_flows: tuple[float, ...] | None = _machine(
        numbers,
        "Measured flows",
        "Flow of each measured point, at the machine.",
        "L/s",
        low=0,
        high=500,
        example=(0, 15, 30, 40),
        digits=1,
        customary_digits=0,
        least=3,
        most=12,
        item="point",
        only_if=_POINTS,
    )
    point_suctions: tuple[float, ...] | None = _machine(
        numbers,
        "Measured suctions",
        "Suction of each measured point, in the same order.",
        "kPa",
        low=0,
        high=40,
        example=(20, 15, 8, 2.5),
        digits=1,
        customary_digits=0,
        least=3,
        most=12,
        item="point",
        only_if=_POINTS,
    )
    figures_from: str = choice(
        "Figures from",
        "Where the vacuum's figures come from; label figures are corrected for thin air.",
        [("measured", "measured here"), ("label", "label or data sheet")],
        origin="equipment",
        example="measured",
    )
    hose_length: float = _machine(
        number,
        "Hose length",
        "All the hose from the nozzle to the machine.",
        "m",
        low=0.1,
        high=30,
        plausible=(1.5, 8),
        example=3,
        digits=1,
        step=0.5,
    )
    hose_bore: float = _machine(
        number,
        "Hose bore",
        "Inside width of the hose at its narrowest.",
        "mm",
        low=10,
        high=150,
        plausible=(32, 75),
        example=38,
        customary_digits=1,
        step=1,
        soft=(
            Soft(
                low=37.9,
                text="A hornet that arrives broadside may wedge in so narrow a hose.",
                reason="A bore of one and a half body lengths lets it through.",
                source="hose_bore_advice",
            ),
        ),
    )
    hose_wall: str = choice(
        "Hose wall",
        "Smooth inside, or ribs you can feel with a finger.",
        [
            ("smooth", "smooth inside"),
            ("corrugated", "corrugated inside"),
            ("rough", "known roughness"),
        ],
        origin="equipment",
        example="corrugated",
    )
    pitch: float | None = _machine(
        number,
        "From rib to rib",
        "Distance from one rib to the next with the hose stretched.",
        "mm",
        low=1,
        high=30,
        plausible=(3, 12),
        example=5,
        digits=1,
        customary_digits=2,
        step=1,
        only_if=("hose_wall", ("corrugated",)),
    )
    roughness: float | None = number(
        "Roughness",
        "Roughness of the wall, from the table of walls.",
        "mm",
        low=0,
        high=1,
        why="the friction formula ends at a twentieth of the bore",
        source="colebrook_1939",
        origin="equipment",
        plausible=(0, 0.9),
        example=0.01,
        digits=3,
        customary_digits=4,
        step=0.01,
        only_if=("hose_wall", ("rough",)),
    )
    chamber: float = number(
        "Catch chamber, side",
        "Side of the square chamber across the air.",
        "cm",
        low=5,
        high=200,
        source=LIMIT,
        origin="equipment",
        plausible=(15, 60),
        example=25,
        customary_digits=1,
        step=5,
    )
    bends: int = count(
        "Bends of 90°",
        "Number of quarter turns in the hose as you hold it.",
        low=0,
        high=20,
        source=LIMIT,
        origin="usual",
        usual=2,
        usual_source="own_reasoning",
        plausible=(0, 4),
    )
    bend: str = choice(
        "Kind of bend",
        "How sharp the turns are.",
        [
            ("gentle_bend", "gentle", "Radius over one bore."),
            ("tight_bend", "tight", "Radius under one bore."),
            ("sharp_bend", "sharp elbow"),
        ],
        origin="usual",
        usual="gentle_bend",
        usual_source="own_reasoning",
    )
    temperature: float = number(
        "Air temperature",
        "In the shade.",
        "degC",
        low=-20,
        high=50,
        why="weather to work in",
        source=LIMIT,
        origin="usual",
        usual=20,
        usual_source="own_reasoning",
        plausible=(5, 35),
        step=1,
    )
    altitude: float = shared(
        ALTITUDE, origin="usual", usual_source="own_reasoning", plausible=(0, 2000)
    )

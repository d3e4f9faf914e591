"""What a reader must know before the numbers of "Flow and reach of the nozzle"."""

from __future__ import annotations

from collections.abc import Iterator

from calc import rules
from calc.declare import Caution
from calc.method.duct import LAMINAR_END, TURBULENT_START
from calc.method.flow_and_reach.words import Findings
from calc.method.suction import FORMULA_DIAMETERS
from calc.method.told import speed

COMPRESSIBLE_SHARE = 0.10
FAST_AIR = 100.0
ARRIVAL_TARGET = 8.0
WITHHELD = (
    "verdict",
    "reach",
    "speed_there",
    "mouth_speed",
    "flow",
    "suction",
    "flow_needed",
    "reaches",
    "animals",
    "budget",
    "hose_speed",
    "gauge",
    "air_power",
    "reynolds",
    "friction",
)
"""Results that a stop withholds: all that come from the flow."""


def cautions(found: Findings) -> list[Caution]:
    """Return the cautions of an answer."""
    return [*_speed_cautions(found), *_formula_cautions(found), *_setup_cautions(found)]


def _speed_cautions(found: Findings) -> Iterator[Caution]:
    if found.too_fast:
        yield Caution(
            level="stop",
            text="No figures are given: the air would near the speed of sound, or the suction "
            "the air's own pressure.",
            reason="The formulas take air as incompressible; the true flow is lower. "
            "Check the vacuum's figures or take a wider nozzle and hose.",
            source="compressible_limits",
            hides=WITHHELD,
        )
        return
    if found.fastest > FAST_AIR:
        yield Caution(
            level="caution",
            text="The air is so fast that it is squeezed and stretched; read the speeds as rough.",
            reason=f"Above about {FAST_AIR:.0f} m/s formulas for incompressible air begin to fail.",
            source="compressible_limits",
        )
    if found.suction_share > COMPRESSIBLE_SHARE:
        yield Caution(
            level="caution",
            text="The suction is more than a tenth of the air's pressure; the flow is rough.",
            reason="The formulas take air as incompressible.",
            source="compressible_limits",
        )
    if found.arrival > ARRIVAL_TARGET:
        yield Caution(
            level="caution",
            text=f"Animals reach the chamber at up to about {speed(found.arrival)}. "
            "Catch them in a hanging net or cloth with give, never on a hard wall.",
            reason="A heavy insect flies on through still air; a wide chamber does not slow it. "
            "A wider hose slows it and keeps the reach.",
            source="arrival_target",
        )
    if found.drag_over_hold >= 0.5:
        yield Caution(
            level="note",
            text="The pull at the nozzle nears the hold of sitters; do not press it on them.",
            reason="The hold is an estimate from ants, good to an order of magnitude.",
            source="federle_2000",
        )


def _formula_cautions(found: Findings) -> Iterator[Caution]:
    farthest = max(found.distance or 0.0, found.reach[1] if found.reach else 0.0)
    if not found.collar and farthest > FORMULA_DIAMETERS * found.diameter:
        yield Caution(
            level="caution",
            text="The distance is beyond one and a half nozzle diameters; the air speed is rough.",
            reason="The formulas were fitted closer in. A slot counts as a circle of its area.",
            source="dalla_valle_range",
        )
    if found.one_formula:
        yield Caution(
            level="note",
            text="Only one formula speaks for so long a slot, so no spread is shown.",
            reason="The second formula was fitted up to sides of 1 to 16.",
            source="fletcher_1977",
        )
    if LAMINAR_END < found.reynolds < TURBULENT_START:
        yield Caution(
            level="note",
            text="The hose flow is between smooth and turbulent; its loss can change by itself.",
            reason="Between the two laws the friction is taken on a straight line.",
            source="pipe_flow_text",
        )
    if found.from_label:
        yield Caution(
            level="caution",
            text="Figures from a label are optimistic; measure with your own hose and chamber.",
            reason="Labels give the machine alone, new and with a clean filter.",
            source="air_watts_page",
        )
    if found.outside_points:
        yield Caution(
            level="caution",
            text="The operating point lies outside your measured points; add one near it.",
            reason="Beyond the ends the lines are simply drawn on.",
            source="own_reasoning",
        )


def _setup_cautions(found: Findings) -> Iterator[Caution]:
    if found.collar:
        yield Caution(
            level="caution" if found.gaps == 0 else "note",
            text="A sealed collar on a tight cavity moves no air: leave a gap the animals "
            "cannot pass.",
            reason="The flow counts the whole hole as open, as if air came freely from inside.",
            source="own_reasoning",
        )
    if found.corrugated:
        yield Caution(
            level="note",
            text="Keep the hose stretched. A slack one loses four to ten times as much.",
            reason="Measured on ducts of 150 to 250 mm; none was found for vacuum hose.",
            source="abushakra_2004",
        )
    yield Caution(
        level="note",
        text=rules.text("never_draw", "what"),
        reason=f"{rules.text('never_draw', 'why')} See the safety pages.",
        source="vacuum_never_list",
    )

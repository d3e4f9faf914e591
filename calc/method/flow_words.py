"""What the flow calculator says: the verdict in words, and its cautions."""

from __future__ import annotations

import math
from collections.abc import Iterator
from dataclasses import dataclass

from calc import rules, units
from calc.declare import Caution
from calc.method.duct import LAMINAR_END, TURBULENT_START
from calc.method.suction import FORMULA_DIAMETERS

COMPRESSIBLE_SHARE = 0.10
FAST_AIR = 100.0
STOP_SPEED = 200.0
STOP_SHARE = 0.5
ARRIVAL_TARGET = 8.0
SCREEN_HOSE_AREAS = 20.0
WEDGING_OPENING = 3.0
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


@dataclass(frozen=True, slots=True)
class Findings:
    """What the verdict and the cautions are made from; SI units, reach in m."""

    animal: str
    animal_speed: float
    collar: bool
    gaps: float
    mouth_speed: float
    hose_speed: float
    reynolds: float
    suction_share: float
    reach: tuple[float, float] | None
    distance: float | None
    speed_there: tuple[float, float] | None
    diameter: float
    one_formula: bool
    drag_over_hold: float
    arrival: float
    corrugated: bool
    from_label: bool
    outside_points: bool
    screen_areas: float | None
    mesh_opening: float | None

    @property
    def fastest(self) -> float:
        """Greatest mean air speed, m/s."""
        return max(self.mouth_speed, self.hose_speed)

    @property
    def too_fast(self) -> bool:
        """Whether the formulas for incompressible air say nothing any more."""
        return self.fastest > STOP_SPEED or self.suction_share > STOP_SHARE


def outward(reach: tuple[float, float]) -> tuple[float, float]:
    """Return a reach in m as cm, its ends moved outward to half centimetres.

    The formulas do not bear a finer figure; past 10 cm not even that.
    """
    step = 0.5 if reach[1] < 0.10 else 1.0
    low, high = 100 * reach[0] / step, 100 * reach[1] / step
    return math.floor(low) * step, math.ceil(high) * step


def about(metres: float) -> str:
    """Write a distance no finer than the formulas allow, in both systems of units."""
    cm, inches = 100 * metres, metres / 0.0254
    if cm < 1:
        return "less than 1 cm (less than ½ in)"
    cm = round(2 * cm) / 2 if cm < 5 else round(cm)
    return f"about {cm:g} cm (about {round(2 * inches) / 2:g} in)"


def speed(value: float) -> str:
    """Write a speed in both systems of units."""
    return f"{value:.0f} m/s ({units.convert(value, 'm/s', 'mph'):.0f} mph)"


def verdict(found: Findings) -> str:
    """Return the answer in plain words."""
    first = _collar(found) if found.collar else _free(found)
    return f"{first} {_seated(found)}"


def _collar(found: Findings) -> str:
    begin = (
        f"All the air enters through the hole and the gaps, at about {speed(found.mouth_speed)}."
    )
    if found.mouth_speed > found.animal_speed:
        return f"{begin} That outruns {found.animal}: what takes wing in the hole goes in."
    return (
        f"{begin} That is slower than {found.animal} fly: close the gaps, "
        "take a smaller collar hole or a stronger vacuum."
    )


def _free(found: Findings) -> str:
    assert found.reach is not None
    if found.reach[1] == 0:
        return (
            f"Even in the nozzle the air, {speed(found.mouth_speed)}, is slower than "
            f"{found.animal} fly: this set-up catches none of them on the wing."
        )
    middle = (found.reach[0] + found.reach[1]) / 2
    return (
        f"The air outruns {found.animal} only within {about(middle)} of the nozzle. "
        f"{_at_distance(found)} Put the nozzle at the hole, or enclose the hole with a collar."
    )


def _at_distance(found: Findings) -> str:
    assert found.reach is not None
    assert found.distance is not None
    low, high = outward(found.reach)  # judged as shown, or the words would contradict the figure
    if 100 * found.distance <= low:
        return "Your animals are within it."
    if 100 * found.distance <= high:
        return "Your animals are at the edge of it."
    return "Your animals are beyond it and fly off."


def _seated(found: Findings) -> str:
    tail = "Tap, and let them walk or fly in."
    if not found.collar:
        tail = (
            "Hold the nozzle off-centre and at an angle: the way out stays open, and those that "
            "take wing pass the nozzle."
        )
    if found.drag_over_hold < 0.5:
        return f"Animals that sit on rough bark or wood hold on, even at the nozzle. {tail}"
    return (
        "Animals that sit on rough bark or wood mostly hold on; at the nozzle itself some may be "
        f"torn off and lose a foot. {tail}"
    )


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
    if found.screen_areas is not None and found.screen_areas < SCREEN_HOSE_AREAS:
        yield Caution(
            level="caution",
            text=f"The mesh is under {SCREEN_HOSE_AREAS:.0f} hose areas; bodies soon choke it.",
            reason="Covering half of a mesh raises its loss about sixfold.",
            source="mesh_advice",
        )
    if found.mesh_opening is not None and found.mesh_opening > WEDGING_OPENING:
        yield Caution(
            level="caution",
            text="Yellowjackets may wedge in or pass this mesh; 2.5 mm holds all.",
            reason="Their heads are about 3 to 4 mm wide, a figure from memory.",
            source="mesh_advice",
        )
    yield Caution(
        level="note",
        text=rules.text("never_draw", "what"),
        reason=f"{rules.text('never_draw', 'why')} See the safety pages.",
        source="vacuum_never_list",
    )

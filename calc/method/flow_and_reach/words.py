"""What "Flow and reach of the nozzle" says in words."""

from __future__ import annotations

import math
from dataclasses import dataclass

from calc.method.told import speed

STOP_SPEED = 200.0
STOP_SHARE = 0.5


@dataclass(frozen=True, slots=True)
class Findings:
    """What the verdict and the cautions are made from; SI units, reach in m."""

    animal: str
    animal_speed: float
    collar: bool
    gaps: float | None
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

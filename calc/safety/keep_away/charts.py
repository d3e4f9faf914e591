"""The plan of "Keeping people away", to scale."""

from __future__ import annotations

import math

from calc.declare import Axis, Chart, Series
from calc.safety.keep_away.cautions import Around
from calc.safety.keep_away.zones import Zone

ASPECT = 1.5
"""Width of the drawn plot over its height, so that circles come out round."""

_POINTS = 48
_DOOR_ANGLE = math.radians(-60)


def plan_chart(around: Around, zone: Zone) -> Chart:
    """Draw nest, zones and places to scale, seen from above; directions are not to scale.

    The house lies to the right, the way to the left, the neighbour above, the closed door below.
    A place beyond 1.6 outer zones is left out.
    """
    farthest = 1.6 * zone.outer
    reach = max(
        each
        for each in (
            zone.outer,
            *(d for d in _distances(around) if d is not None and d <= farthest),
        )
    )
    half = math.ceil(1.15 * reach)
    house, neighbour = around.house, around.neighbour_distance
    series = [
        Series(label="inner zone: suits only", x=_ring(zone.inner)[0], y=_ring(zone.inner)[1]),
        Series(label="outer zone: nobody else", x=_ring(zone.outer)[0], y=_ring(zone.outer)[1]),
        *_way(around, half, farthest),
        *_door(around, farthest),
        Series(label="nest", x=(0.0,), y=(0.0,), style="points"),
    ]
    if house is not None and house <= farthest:
        series.append(Series(label="house", x=(house,), y=(0.0,), style="points"))
    if neighbour is not None and neighbour <= farthest:
        series.append(Series(label="neighbour", x=(0.0,), y=(neighbour,), style="points"))
    house_told = "" if house is None else f", house at {house:g} m"
    return Chart(
        name="plan",
        title="The zones to scale",
        alt=(
            f"Nest in the middle, inner zone {zone.inner:.0f} m, outer zone {zone.outer:.0f} m"
            f"{house_told}. Directions are schematic."
        ),
        x=Axis(
            label="From the nest", unit="m", customary="ft", low=-ASPECT * half, high=ASPECT * half
        ),
        y=Axis(label="From the nest", unit="m", customary="ft", low=-half, high=half),
        series=tuple(series),
    )


def _distances(around: Around) -> tuple[float | None, ...]:
    # The plot is wider than high: what lies left and right may be farther by that ratio.
    return (
        _times(around.house, 1 / ASPECT),
        _times(around.way_distance, 1 / ASPECT),
        around.neighbour_distance,
        _times(around.door, math.sin(-_DOOR_ANGLE)),
    )


def _times(distance: float | None, share: float) -> float | None:
    return None if distance is None else distance * share


def _ring(radius: float) -> tuple[tuple[float, ...], tuple[float, ...]]:
    turns = [2 * math.pi * step / _POINTS for step in range(_POINTS + 1)]
    return (
        tuple(radius * math.cos(turn) for turn in turns),
        tuple(radius * math.sin(turn) for turn in turns),
    )


def _way(around: Around, half: float, farthest: float) -> list[Series]:
    if around.way_distance is None or around.way_distance > farthest:
        return []
    x = -around.way_distance
    return [Series(label="way or road", x=(x, x), y=(-float(half), float(half)), style="dashed")]


def _door(around: Around, farthest: float) -> list[Series]:
    if around.door is None or around.door > farthest:
        return []
    end = around.door * math.cos(_DOOR_ANGLE), around.door * math.sin(_DOOR_ANGLE)
    return [
        Series(label="run to the closed door", x=(0.0, end[0]), y=(0.0, end[1]), style="dashed")
    ]

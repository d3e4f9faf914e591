"""Air speed on the axis in front of a suction opening, and how far it reaches.

Every formula gives the mean face speed times a share that falls with distance. None gives more
than the face speed: close to the face the empirical ones would.
"""

from __future__ import annotations

import math
from collections.abc import Callable
from dataclasses import dataclass

FORMULA_DIAMETERS = 1.5
"""Distance in diameters up to which the formulas were fitted [dalla_valle_range]."""

SLOT_SHARE = 0.2
"""Width over length from which an opening is no longer a slot [acgih_hoods_2001]."""

FLETCHER_LONGEST = 16.0
"""Longest side over shortest for Fletcher's formula [fletcher_1977]."""


def dalla_valle(flow: float, area: float, distance: float) -> float:
    """Return V = Q/(10 x^2 + A), plain round or nearly square opening.

    Parameters
    ----------
    flow : m3/s
    area : area of the opening, m2
    distance : distance from the face on the axis, m

    Returns
    -------
    air speed, m/s

    Notes
    -----
    Free-standing, no cross-draught, x up to about 1.5 diameters. Any consistent units will do.
    Source: acgih_hoods_2001.
    """
    return flow / (10 * distance * distance + area)


def dalla_valle_flow(speed: float, area: float, distance: float) -> float:
    """Return the flow Q = V (10 x^2 + A) that gives a speed at a distance.

    Units as in :func:`dalla_valle`. Source: acgih_hoods_2001.
    """
    return speed * (10 * distance * distance + area)


def dalla_valle_flanged(flow: float, area: float, distance: float) -> float:
    """Return V = Q/(0.75 (10 x^2 + A)), flanged opening, never above the face speed.

    Units as in :func:`dalla_valle`. Source: acgih_hoods_2001.
    """
    return min(flow / area, dalla_valle(flow, area, distance) / 0.75)


def silverman(flow: float, length: float, width: float, distance: float) -> float:
    """Return V = Q/(3.7 L x), plain slot, never above the face speed.

    Beyond about a third of its length a slot acts like any other opening, so the result is
    also never above :func:`dalla_valle`.

    Parameters
    ----------
    flow : m3/s
    length, width : sides of the slot, m
    distance : m

    Notes
    -----
    Width at most 0.2 of the length. Source: acgih_hoods_2001; the two limits are own_reasoning.
    """
    return _slot(3.7, flow, length, width, distance, dalla_valle)


def silverman_flanged(flow: float, length: float, width: float, distance: float) -> float:
    """Return V = Q/(2.6 L x), flanged slot; units and limits as in :func:`silverman`.

    Source: acgih_hoods_2001.
    """
    return _slot(2.6, flow, length, width, distance, dalla_valle_flanged)


def _slot(
    number: float,
    flow: float,
    length: float,
    width: float,
    distance: float,
    far: Callable[[float, float, float], float],
) -> float:
    limit = far(flow, length * width, distance)
    if distance <= 0:
        return limit
    return min(limit, flow / (length * width), flow / (number * length * distance))


def fletcher(flow: float, length: float, width: float, distance: float) -> float:
    r"""Return Fletcher's speed in front of a plain rectangle of sides L >= W.

    :math:`V/V_0 = 1/(0.93 + 8.58 a^2)`, :math:`a = r (L/W)^b`, :math:`b = 0.2 r^{-1/3}`,
    :math:`r = x/\sqrt A`

    Parameters
    ----------
    flow : m3/s
    length, width : sides, m; equal for a square or a circle of the same area
    distance : m

    Notes
    -----
    Sides up to about 1:16. Very close to a long slot the formula turns round; there its lowest a
    is kept, and never more than the face speed is returned. Source: fletcher_1977.
    """
    area = length * width
    aspect = length / width
    r = distance / math.sqrt(area)
    r = max(r, (0.2 * math.log(aspect) / 3) ** 3)  # where d(ln a)/d(ln r) = 0
    a = 0.0 if r == 0 else r * math.pow(aspect, 0.2 * math.pow(r, -1 / 3))
    return flow / area * min(1.0, 1 / (0.93 + 8.58 * a * a))


def garrison(flow: float, diameter: float, distance: float) -> float:
    """Return Garrison's speed in front of a plain round small nozzle.

    V/V0 = 1.10 (0.06)^X for X = x/D up to 0.5, 0.08 X^-1.7 beyond; at most 1.

    Parameters
    ----------
    flow : m3/s
    diameter, distance : m

    Notes
    -----
    X up to about 1.5. Source: garrison_1983.
    """
    x = distance / diameter
    share = 1.10 * math.pow(0.06, x) if x <= 0.5 else 0.08 * math.pow(x, -1.7)
    return 4 * flow / (math.pi * diameter * diameter) * min(1.0, share)


def garrison_flanged(flow: float, diameter: float, distance: float) -> float:
    """Return Garrison's speed in front of a flanged round small nozzle.

    V/V0 = 1.10 (0.07)^X for X up to 0.5, 0.10 X^-1.6 beyond; at most 1.

    Notes
    -----
    At X = 0.5 the two printed branches do not meet: the second starts 4 % above the end of the
    first. It is held at that end until it has fallen below it (X = 0.513), so that the speed never
    rises with distance. Units and range as in :func:`garrison`. Source: garrison_1983; the hold is
    own_reasoning.
    """
    x = distance / diameter
    share = 1.10 * math.pow(0.07, min(x, 0.5))
    if x > 0.5:
        share = min(share, 0.10 * math.pow(x, -1.6))
    return 4 * flow / (math.pi * diameter * diameter) * min(1.0, share)


def line_sink_in_wall(flow: float, length: float, width: float, distance: float) -> float:
    r"""Return the ideal speed in front of a slot in a wide flat plate.

    :math:`V = Q/(2 \pi x \sqrt{x^2 + L^2/4})`, never above the face speed.

    Units as in :func:`silverman`. Source: own_reasoning (potential flow).
    """
    face = flow / (length * width)
    if distance <= 0:
        return face
    root = math.sqrt(distance * distance + length * length / 4)
    return min(face, flow / (2 * math.pi * distance * root))


Formula = Callable[[float, float], float]
"""Air speed in m/s from flow in m3/s and distance in m."""


@dataclass(frozen=True, slots=True)
class Opening:
    """An opening: its free area in m2, the formulas that speak for it, and ``design``.

    ``design`` returns the flow in m3/s for a speed in m/s at a distance in m, by the formula
    hoods are designed with.
    """

    area: float
    formulas: tuple[Formula, ...]
    design: Callable[[float, float], float]

    @property
    def diameter(self) -> float:
        """Diameter in m of the circle of the same area."""
        return math.sqrt(4 * self.area / math.pi)

    def speeds(self, flow: float, distance: float) -> tuple[float, float]:
        """Return the lowest and the highest speed in m/s that the formulas give."""
        found = [formula(flow, distance) for formula in self.formulas]
        return min(found), max(found)

    def reach(self, flow: float, speed: float) -> tuple[float, float]:
        """Return the least and the greatest distance in m at which the air has ``speed``.

        Zero where the air is slower than that even in the face.
        """
        found = [farthest(formula, flow, speed, self.diameter) for formula in self.formulas]
        return min(found), max(found)


def farthest(formula: Formula, flow: float, speed: float, scale: float) -> float:
    """Return the greatest distance in m at which a formula gives at least ``speed`` (m/s).

    ``scale`` is a length in m to begin the search with. No formula here rises with distance, so
    doubling and halving cannot miss.
    """
    if formula(flow, 0.0) < speed:
        return 0.0
    low, high = 0.0, scale
    while formula(flow, high) >= speed and high < 1e3:
        low, high = high, 2 * high
    while high - low > 1e-7:
        middle = (low + high) / 2
        if formula(flow, middle) >= speed:
            low = middle
        else:
            high = middle
    return low


def plain_round(diameter: float) -> Opening:
    """Return a round hose end of this diameter in m, standing free."""
    area = math.pi * diameter * diameter / 4
    side = math.sqrt(area)
    return Opening(
        area,
        (
            lambda flow, x: dalla_valle(flow, area, x),
            lambda flow, x: fletcher(flow, side, side, x),
            lambda flow, x: garrison(flow, diameter, x),
        ),
        lambda speed, x: dalla_valle_flow(speed, area, x),
    )


def flanged_round(diameter: float) -> Opening:
    """Return a round opening of this diameter in m, flush in a plate."""
    area = math.pi * diameter * diameter / 4
    return Opening(
        area,
        (
            lambda flow, x: dalla_valle_flanged(flow, area, x),
            lambda flow, x: garrison_flanged(flow, diameter, x),
        ),
        lambda speed, x: 0.75 * dalla_valle_flow(speed, area, x),
    )


def plain_slot(length: float, width: float) -> Opening:
    """Return a flat nozzle with sides in m, standing free; nearly square ones included."""
    area = length * width
    formulas: list[Formula] = []
    if width > SLOT_SHARE * length:
        formulas.append(lambda flow, x: dalla_valle(flow, area, x))
    else:
        formulas.append(lambda flow, x: silverman(flow, length, width, x))
    if length <= FLETCHER_LONGEST * width:
        formulas.append(lambda flow, x: fletcher(flow, length, width, x))
    return Opening(area, tuple(formulas), _slot_design(3.7, 1.0, length, width))


def flanged_slot(length: float, width: float) -> Opening:
    """Return a slot with sides in m, flush in a plate; nearly square ones included."""
    area = length * width
    first: Formula = lambda flow, x: silverman_flanged(flow, length, width, x)  # noqa: E731
    if width > SLOT_SHARE * length:
        first = lambda flow, x: dalla_valle_flanged(flow, area, x)  # noqa: E731
    return Opening(
        area,
        (first, lambda flow, x: line_sink_in_wall(flow, length, width, x)),
        _slot_design(2.6, 0.75, length, width),
    )


def _slot_design(
    number: float, plate: float, length: float, width: float
) -> Callable[[float, float], float]:
    area = length * width

    def design(speed: float, x: float) -> float:
        like_any = plate * dalla_valle_flow(speed, area, x)
        if width > SLOT_SHARE * length:
            return like_any
        return max(like_any, speed * area, number * length * speed * x)

    return design

"""Suction of a vacuum against its flow, and where it meets the system."""

from __future__ import annotations

from collections.abc import Callable, Sequence

Curve = Callable[[float], float]
"""Pressure in Pa at a flow in m3/s."""


def linear(flow: float, sealed: float, open_flow: float) -> float:
    """Return the suction P0 (1 - Q/Qmax) of a straight-line fan.

    Parameters
    ----------
    flow : m3/s
    sealed : suction at no flow, Pa
    open_flow : flow at no suction, m3/s

    Returns
    -------
    suction, Pa; below 0 beyond ``open_flow``

    Notes
    -----
    Near the curve of multi-stage vacuums with a universal motor. Source: fan_curve_shapes.
    """
    return sealed * (1 - flow / open_flow)


def quadratic(flow: float, sealed: float, open_flow: float) -> float:
    """Return the suction P0 (1 - (Q/Qmax)^2); parameters as in :func:`linear`.

    Nearer the curve of single-stage blowers at constant speed. Source: fan_curve_shapes.
    """
    share = flow / open_flow
    return sealed * (1 - share * share)


def through_points(flow: float, points: Sequence[tuple[float, float]]) -> float:
    """Return the suction on straight lines through measured points.

    Parameters
    ----------
    flow : m3/s
    points : at least two pairs of flow (m3/s) and suction (Pa), flow rising, suction falling

    Notes
    -----
    Beyond the first and the last point the end lines go on. Source: own_reasoning.
    """
    place = 1
    while place < len(points) - 1 and flow > points[place][0]:
        place += 1
    (x0, y0), (x1, y1) = points[place - 1], points[place]
    return y0 + (y1 - y0) * (flow - x0) / (x1 - x0)


def open_flow_of(points: Sequence[tuple[float, float]]) -> float:
    """Return the flow in m3/s at which the line through the last two points meets zero suction."""
    (x0, y0), (x1, y1) = points[-2], points[-1]
    return max(x1, x1 + y1 * (x1 - x0) / (y0 - y1))


def air_power(flow: float, suction: float) -> float:
    """Return the power of the air stream Q dp in W, from m3/s and Pa.

    Source: air_power_standards.
    """
    return flow * suction


def operating_flow(fan: Curve, system: Curve, open_flow: float) -> float:
    """Return the flow in m3/s at which the fan's suction equals the system's loss.

    The fan's curve falls to 0 at ``open_flow`` and the system's rises from 0 at no flow, so
    there is exactly one such flow and halving the bracket cannot miss it.

    Parameters
    ----------
    fan, system : pressure in Pa at a flow in m3/s
    open_flow : flow at which the fan's suction is 0, m3/s
    """
    low, high = 0.0, open_flow
    for _ in range(200):
        middle = (low + high) / 2
        if high - low <= 1e-13 * high or middle in {low, high}:
            break
        if fan(middle) > system(middle):
            low = middle
        else:
            high = middle
    return (low + high) / 2

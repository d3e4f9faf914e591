"""Cells on a comb from its size: the geometry of hexagons."""

from __future__ import annotations

import math

_MM2_PER_CM2 = 100.0


def cell_area(pitch: float) -> float:
    r"""Return the area of one cell in mm2, :math:`\sqrt3 p^2/2`, from the pitch in mm.

    The pitch is the distance of neighbours middle to middle, one wall included.
    Source: hexagon_geometry.
    """
    return math.sqrt(3) / 2 * pitch * pitch


def cells_per_cm2(pitch: float) -> float:
    r"""Return cells on one cm2 of one face, :math:`2/(\sqrt3 p^2)`, from the pitch in mm.

    Source: hexagon_geometry.
    """
    return _MM2_PER_CM2 / cell_area(pitch)


def cells_per_dm2_both_faces(pitch: float) -> float:
    """Return cells on one dm2 of a comb with cells on both faces, as honey bees build it."""
    return 2 * 100 * cells_per_cm2(pitch)


def oval_area(long_axis: float, short_axis: float) -> float:
    r"""Return :math:`\pi a b/4` of an oval comb in cm2 from its two diameters in cm."""
    return math.pi * long_axis * short_axis / 4


def cells_on(area: float, pitch: float) -> float:
    """Return the cells whose middle lies inside an outline.

    Parameters
    ----------
    area : cm2
    pitch : mm

    Range: regular comb of one cell size. Source: hexagon_geometry.
    """
    return area * cells_per_cm2(pitch)


def pitch_of(cells: float, area: float) -> float:
    r"""Return the mean pitch in mm, :math:`\sqrt{2A/(\sqrt3 N)}`.

    Parameters
    ----------
    cells : N
    area : A in cm2

    Source: hexagon_geometry.
    """
    return math.sqrt(2 * area * _MM2_PER_CM2 / (math.sqrt(3) * cells))


def whole_cells_in_circle(radius: float, pitch: float) -> float:
    r"""Return the whole cells inside a circle, :math:`\pi(R-0.55p)^2` over the cell area.

    Parameters
    ----------
    radius : R in cm
    pitch : p in mm

    Range: R above about five pitches; fitted to drawn lattices. Source: hexagon_geometry.
    """
    inner = max(0.0, 10 * radius - 0.55 * pitch)
    return math.pi * inner * inner / cell_area(pitch)

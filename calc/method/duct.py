"""Pressure losses of hose, bends, steps in size, dump and mesh."""

from __future__ import annotations

import math
from itertools import pairwise

from calc.tables import rows

LAMINAR_END = 2100.0
"""Reynolds number up to which hose flow is taken as laminar [pipe_flow_text]."""

TURBULENT_START = 4000.0
"""Reynolds number from which hose flow is taken as turbulent [pipe_flow_text]."""


def circle(diameter: float) -> float:
    """Return the area of a circle; any unit of length."""
    return math.pi * diameter * diameter / 4


def velocity_pressure(density: float, speed: float) -> float:
    r"""Return the velocity pressure :math:`q = \rho V^2/2` in Pa, from kg/m3 and m/s."""
    return density * speed * speed / 2


def minor_loss(coefficient: float, density: float, speed: float) -> float:
    r"""Return :math:`\Delta p = K \rho V^2/2` in Pa, from K, kg/m3 and m/s."""
    return coefficient * velocity_pressure(density, speed)


def hood_static_pressure(velocity_pressure: float, entry_loss: float) -> float:
    r"""Return the suction just behind an opening, :math:`SP_h = (1 + F_h)\,VP`.

    Parameters
    ----------
    velocity_pressure : velocity pressure in the hose, any unit of pressure
    entry_loss : entry loss coefficient F_h

    Notes
    -----
    Source: acgih_hoods_2001.
    """
    return (1 + entry_loss) * velocity_pressure


def reynolds(density: float, speed: float, diameter: float, viscosity: float) -> float:
    r"""Return :math:`Re = \rho V D/\mu` from kg/m3, m/s, m and Pa s."""
    return density * speed * diameter / viscosity


def haaland(reynolds: float, relative_roughness: float) -> float:
    """Return Haaland's explicit friction factor; within about 2 % of Colebrook, Re > 4000.

    Source: haaland_1983.
    """
    term = (relative_roughness / 3.7) ** 1.11 + 6.9 / reynolds
    return (-1.8 * math.log10(term)) ** -2


def colebrook(reynolds: float, relative_roughness: float) -> float:
    r"""Return the Darcy friction factor of turbulent flow.

    :math:`1/\sqrt f = -2 \log_{10}\left(\frac{e/D}{3.7} + \frac{2.51}{Re\sqrt f}\right)`

    Parameters
    ----------
    reynolds : Reynolds number, above about 4000
    relative_roughness : e/D, below about 0.05

    Notes
    -----
    Solved for x = 1/sqrt(f) by Newton's method from Haaland's value. The left side less the right
    side rises and is concave in x: after its first step Newton lies at or below the root and climbs
    to it. Source: colebrook_1939.
    """
    rough = relative_roughness / 3.7
    slope = 2.51 / reynolds
    x = 1 / math.sqrt(haaland(reynolds, relative_roughness))
    for _ in range(20):
        inside = rough + slope * x
        miss = x + 2 * math.log10(inside)
        step = miss / (1 + 2 * slope / (inside * math.log(10)))
        x -= step
        if abs(step) < 1e-13 * x:
            break
    return 1 / (x * x)


def friction_factor(reynolds: float, relative_roughness: float = 0.0) -> float:
    """Return the Darcy friction factor f at any Reynolds number above 0.

    64/Re up to Re 2100, Colebrook from Re 4000, and a straight line in Re between the two: in
    that range a real hose does now one, now the other, and a straight line keeps the loss rising
    with the flow, so that there is exactly one operating point.

    Source: pipe_flow_text, colebrook_1939; the straight line is own_reasoning.
    """
    if reynolds <= LAMINAR_END:
        return 64 / reynolds
    if reynolds >= TURBULENT_START:
        return colebrook(reynolds, relative_roughness)
    share = (reynolds - LAMINAR_END) / (TURBULENT_START - LAMINAR_END)
    low, high = 64 / LAMINAR_END, colebrook(TURBULENT_START, relative_roughness)
    return low + share * (high - low)


def hawthorne(diameter: float, pitch: float) -> float:
    r"""Return the Darcy friction factor of a corrugated hose.

    :math:`f = \frac{D}{s}\left[1 - \left(\frac{D}{D + 0.438 s}\right)^2\right]^2`: each
    corrugation acts as a sudden widening.

    Parameters
    ----------
    diameter : bore, any unit of length
    pitch : distance from one corrugation to the next, the same unit

    Notes
    -----
    For a stretched hose; the depth of the groove does not enter. Source: hawthorne_1963.
    """
    narrow = diameter / (diameter + 0.438 * pitch)
    return diameter / pitch * (1 - narrow * narrow) ** 2


def friction_loss(
    factor: float, length: float, diameter: float, density: float, speed: float
) -> float:
    r"""Return the friction loss :math:`\Delta p = f \frac{L}{D}\frac{\rho V^2}{2}` in Pa.

    Parameters
    ----------
    factor : Darcy friction factor
    length, diameter : m
    density : kg/m3
    speed : mean speed in the hose, m/s

    Notes
    -----
    Air taken as incompressible: pressure change below about 10 %. Source: pipe_flow_text.
    """
    return minor_loss(factor * length / diameter, density, speed)


def sudden_expansion(small: float, large: float) -> float:
    """Return K of a sudden widening on the speed in the small area: (1 - A1/A2)^2.

    Source: toolbox_minor_losses.
    """
    return (1 - small / large) ** 2


def sudden_contraction(small: float, large: float) -> float:
    """Return K of a sudden narrowing on the speed in the small area: 0.5 (1 - A1/A2).

    Source: crane_410.
    """
    return 0.5 * (1 - small / large)


def mesh_open_share(opening: float, wire: float) -> float:
    """Return the open share of a square mesh, (w/(w + d))^2, from opening and wire thickness.

    Source: woven_wire_reference.
    """
    return (opening / (opening + wire)) ** 2


def mesh_open_share_counted(
    count: float, wire: float, cross_count: float, cross_wire: float
) -> float:
    """Return the open share (1 - N d)(1 - n d') of a mesh from wires per length and thickness.

    Source: woven_wire_reference.
    """
    return (1 - count * wire) * (1 - cross_count * cross_wire)


def screen_loss(open_share: float, reynolds: float) -> float:
    r"""Return K of a screen of round wires on the speed in front of it.

    :math:`K = \beta\,(1 - a^2)/a^2` with :math:`\beta` from the table ``screen_loss``.

    Parameters
    ----------
    open_share : open share a of the area, above 0 to 1
    reynolds : Reynolds number of the opening between two wires

    Notes
    -----
    Clean screen, square to the flow; beta is held beyond the ends of the table.
    Source: blevins_1984.
    """
    squared = open_share * open_share
    return _beta(reynolds) * (1 - squared) / squared


def _beta(reynolds: float) -> float:
    points = [(float(row["reynolds"]), float(row["beta"])) for row in rows("screen_loss")]
    if reynolds <= points[0][0]:
        return points[0][1]
    for (low, at_low), (high, at_high) in pairwise(points):
        if reynolds <= high:
            return at_low + (at_high - at_low) * (reynolds - low) / (high - low)
    return points[-1][1]

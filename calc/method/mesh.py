"""Wire mesh: what it costs the air, and which animals it holds."""

from __future__ import annotations

from calc.method import duct
from calc.tables import row


def opening_from_count(count: float, wire: float) -> float:
    """Return the clear opening of a mesh, 1/N - d, from wires to the unit of length and wire.

    Source: wire_mesh_glossary.
    """
    return 1 / count - wire


def mesh_loss(flow: float, area: float, share: float, opening: float, density: float,
              viscosity: float) -> float:  # fmt: skip
    """Return the pressure in Pa that a mesh costs.

    Parameters
    ----------
    flow : m3/s
    area : whole area of the mesh, m2
    share : open share, part of one
    opening : clear width between wires, m
    density, viscosity : of the air, kg/m3 and Pa s

    Notes
    -----
    Source: blevins_1984 through :func:`calc.method.duct.screen_loss`.
    """
    speed = flow / area
    reynolds = duct.reynolds(density, speed, opening, viscosity)
    return duct.minor_loss(duct.screen_loss(share, reynolds), density, speed)


def holding(opening: float, head: str | None) -> str:
    """Return what a mesh opening in mm does: holds, likely, unknown or passes.

    ``likely`` means held by a figure in print for this animal, yet smaller ones of the colony,
    legs and feelers may go through.
    """
    if opening <= float(row("head_widths", "all")["holds"]):
        return "holds"
    if head is None:
        return "unknown"
    known = row("head_widths", head)
    if "passes" in known and opening >= float(known["passes"]):
        return "passes"
    if "holds" in known and opening <= float(known["holds"]):
        return "likely"
    return "unknown"

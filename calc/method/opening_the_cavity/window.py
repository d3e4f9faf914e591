"""The window into a cavity: where the comb lies, and how high and wide to cut."""

from __future__ import annotations

import math
from dataclasses import dataclass
from functools import cache

from calc.tables import row


@cache
def rule(key: str) -> float:
    """Return a value of the table ``opening_rules`` in the unit printed there."""
    return float(row("opening_rules", key)["value"])


def planned_tiers(seen: int) -> int:
    """Return the tiers to plan for when ``seen`` are in view.

    Half as many again, so at least one more. Counts in print do not change it: nests pass what
    was printed.

    Notes
    -----
    Source: tiers_hidden, opening_rules_ours.
    """
    return seen + math.ceil(rule("more_share") * seen)


def tiers_range(seen: int, most: int | None) -> tuple[int, int]:
    """Return the tiers that may be there: from those seen to the planned or the most in print."""
    return seen, max(planned_tiers(seen), most or 0)


def stack_height(tiers: float, spacing: float) -> float:
    """Return the height of a stack of combs, from the first roof to the last cells.

    Parameters
    ----------
    tiers : number of combs
    spacing : from tier to tier, any unit of length; returned in the same
    """
    return tiers * spacing


def clear_bay(on_centre: float, stud: float) -> float:
    """Return the clear width between two studs, any unit of length.

    Source: stud_spacing_page.
    """
    return on_centre - stud


def arc(chord: float, diameter: float) -> float:
    """Return the length along the bark of a window as wide as ``chord``, any unit of length.

    Half the girth where the chord is as wide as the trunk.
    """
    return diameter * math.asin(min(chord / diameter, 1.0))


@dataclass(frozen=True, slots=True)
class Window:
    """A window: lower and upper edge above the entrance (below is negative) and width, cm."""

    bottom: float
    top: float
    width: float

    @property
    def height(self) -> float:
        """Height in cm."""
        return self.top - self.bottom

    @property
    def area(self) -> float:
        """Area in m2."""
        return self.height * self.width / 1e4


def window(lowest: float, tiers: float, spacing: float, comb: float, room: float | None) -> Window:
    """Return the window that takes the comb whole.

    Parameters
    ----------
    lowest : underside of the lowest tier above the entrance, cm
    tiers : tiers planned for
    spacing : from tier to tier, cm
    comb : width of the widest tier, cm
    room : clear width of the cavity, cm, which the window does not pass; None if not measured

    Notes
    -----
    Room for the hand above, below and beside. Source: opening_rules_ours.
    """
    top = lowest + stack_height(tiers, spacing) + rule("above")
    width = comb + 2 * rule("beside")
    return Window(lowest - rule("below"), top, width if room is None else min(width, room))

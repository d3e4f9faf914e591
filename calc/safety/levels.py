"""Short ways to write a caution of each level."""

from __future__ import annotations

from calc.declare import Caution


def stop(text: str, reason: str, source: str, hides: tuple[str, ...] = ()) -> Caution:
    """Return a caution that forbids, and withholds the results named in ``hides``."""
    return Caution(level="stop", text=text, reason=reason, source=source, hides=hides)


def caution(text: str, reason: str, source: str) -> Caution:
    """Return a caution to read before the number."""
    return Caution(level="caution", text=text, reason=reason, source=source)


def note(text: str, reason: str, source: str) -> Caution:
    """Return a caution to read beside the number."""
    return Caution(level="note", text=text, reason=reason, source=source)

"""What a reader must know before or beside a number."""

from __future__ import annotations

import math
from dataclasses import dataclass
from typing import Any, Literal

LEVELS = ("stop", "caution", "note")
"""Levels of a caution, the gravest first."""

WORDS = {"stop": "STOP", "caution": "CAUTION", "note": "NOTE"}
"""The alert word of each level, the same on screen, on paper and in text that is copied.

In capitals as they stand: they tell the levels apart without colour, and are read as words.
"""


@dataclass(frozen=True, kw_only=True, slots=True)
class Caution:
    """Something the reader must know before or beside a number.

    A ``stop`` withholds the results named in ``hides``.
    """

    level: Literal["stop", "caution", "note"]
    text: str
    reason: str
    source: str
    hides: tuple[str, ...] = ()

    def as_dict(self) -> dict[str, Any]:
        """JSON form."""
        return {
            "level": self.level,
            "text": self.text,
            "reason": self.reason,
            "source": self.source,
            "hides": list(self.hides),
        }


@dataclass(frozen=True, kw_only=True, slots=True)
class Soft:
    """A range inside the hard limits beyond which the answer carries a caution."""

    low: float = -math.inf
    high: float = math.inf
    text: str
    reason: str
    source: str

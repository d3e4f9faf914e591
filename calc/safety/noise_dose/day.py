"""A day's noise: the spells of its tools, and what of them reaches the ear."""

from __future__ import annotations

import math
from dataclasses import dataclass

from calc.safety.noise_dose.dose import Spell, dose_of


@dataclass(frozen=True, kw_only=True, slots=True)
class Day:
    """A day's noise: level (dBA) and minutes by tool, and what reaches the ear."""

    spells: dict[str, Spell]
    attenuation: float  # dB, the weaker of the two published estimates
    worn: float  # share of the time the protector is worn, 0 to 1

    def dose(self, body: str, vacuum: float | None = None) -> float:
        """Return the dose at the ear in percent, with other vacuum minutes where given."""
        spells = dict(self.spells)
        if vacuum is not None:
            spells["vacuum"] = (spells["vacuum"][0], vacuum)
        bare = dose_of(*_columns(spells, 0.0), body)
        under = dose_of(*_columns(spells, self.attenuation), body)
        return (1 - self.worn) * bare + self.worn * under

    def bare(self, body: str) -> float:
        """Return the dose without any protection, percent."""
        return dose_of(*_columns(self.spells, 0.0), body)

    def vacuum_left(self, body: str) -> int:
        """Return the whole minutes of vacuum until the dose at the ear is 100 percent."""
        per_minute = self.dose(body, 1.0) - self.dose(body, 0.0)
        return math.floor(min(max(0.0, 100 - self.dose(body)) / per_minute, 720.0) + 1e-9)

    @property
    def loudest(self) -> float:
        """Loudest level that reaches the ear unprotected or through the protector, dBA."""
        through = self.attenuation if self.worn >= 1 else 0.0
        return max((level - through for level, minutes in self.spells.values() if minutes > 0),
                   default=0.0)  # fmt: skip


def _columns(spells: dict[str, Spell], less: float) -> tuple[list[float], list[float]]:
    return [level - less for level, _ in spells.values()], [each for _, each in spells.values()]

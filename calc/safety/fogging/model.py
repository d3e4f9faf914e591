"""When a lens fogs: its inner face against the dew point behind it.

Plain numbers: temperatures in degC, humidity and shares in percent, vapour pressure in hPa.
"""

from __future__ import annotations

import math
from dataclasses import dataclass

from calc import tables
from calc.safety import humidity


def habit(key: str) -> float:
    """Return a figure of the table ``fog_habits``."""
    return float(tables.row("fog_habits", key)["factor"])


def _lens(column: str) -> float:
    return float(tables.row("fog_lens", "polycarbonate")[column])


def dew_point_of(vapour: float) -> float:
    """Temperature at which a vapour pressure in hPa saturates, degC (Magnus, Sonntag 1990)."""
    near = 30.0
    share = 100 * vapour / humidity.saturation_vapour_pressure(near)
    return humidity.dew_point(near, share)


def vapour_behind(air: float, rh: float, breath: float, sweat: float) -> float:
    """Vapour pressure behind the lens, ``e + f (e_b - e) + s (e_s - e)``, hPa.

    Parameters
    ----------
    air, rh : air temperature, degC, and relative humidity, percent
    breath, sweat : shares of exhaled air and of air at wet skin, 0 to 1, together at most 1

    Air more humid than breath or skin is not dried by them here, to the cautious side.
    Source: mixing of the key ``fog_model``; breath of the key ``breath_design``.
    """
    outside = humidity.vapour_pressure(air, rh)
    exhaled = humidity.vapour_pressure(habit("breath_temperature"), habit("breath_humidity"))
    skin = humidity.saturation_vapour_pressure(habit("skin_temperature"))
    return outside + breath * max(0.0, exhaled - outside) + sweat * max(0.0, skin - outside)


def mixed_dew_point(air: float, rh: float, breath: float) -> float:
    """Return the dew point of air with a share of exhaled air, degC."""
    return dew_point_of(vapour_behind(air, rh, breath, 0.0))


def lens_temperature(air: float, behind: float, outside: float) -> float:
    """Inner face of the lens when settled, ``T_in - U (T_in - T_a) / h_i``, degC.

    ``1/U = 1/h_i + t/k + 1/h_o``: still air, lens and outer air in series.

    Parameters
    ----------
    air : outer air, degC
    behind : air behind the lens, degC
    outside : heat transfer on the outer face, W/(m2 K)
    """
    inner = habit("inside")
    resistance = 1 / inner + _lens("resistance") + 1 / outside
    return behind - (behind - air) / resistance / inner


def settling(outside: float) -> float:
    """Time in minutes in which a lens closes 63 percent of a gap in temperature."""
    return _lens("heat") / (habit("inside") + outside) / 60


def lens_after(minutes: float, start: float, settled: float, outside: float) -> float:
    """Inner face some minutes after a lens of another temperature is put on, degC."""
    return settled + (start - settled) * math.exp(-minutes / settling(outside))


def minutes_to(dew: float, start: float, settled: float, outside: float) -> float | None:
    """Minutes until a cold lens passes the dew point; 0 if it has, None if it never does."""
    if start >= dew:
        return 0.0
    if settled <= dew:
        return None
    return settling(outside) * math.log((settled - start) / (settled - dew))


@dataclass(frozen=True, kw_only=True, slots=True)
class Setup:
    """One way of wearing one piece of eyewear in one weather."""

    air: float
    rh: float
    eyewear: str
    breath: str  # a habit: down, normal, mask
    sweat: str  # dry, damp, wet
    fan: bool
    wind: str  # calm, light, wind
    stored: float | None = None  # temperature the lens was kept at, degC
    worn: float = 0.0  # minutes since it was put on
    own_breath: float | None = None  # shares given by the reader, 0 to 1
    own_sweat: float | None = None

    @property
    def shares(self) -> tuple[float, float]:
        """Shares of breath and of skin moisture behind the lens, together at most 1."""
        row = tables.row("fog_eyewear", self.eyewear)
        less = habit("fan") if self.fan else 1.0
        if self.own_breath is None or self.own_sweat is None:
            breath = float(row["breath"]) / 100 * habit(self.breath) * less
            sweat = float(row["sweat"]) / 100 * habit(self.sweat) * less
        else:
            breath, sweat = self.own_breath * less, self.own_sweat * less
        breath = min(breath, 1.0)
        return breath, min(sweat, 1.0 - breath)

    @property
    def dew_point(self) -> float:
        """Dew point behind the lens, degC."""
        return dew_point_of(vapour_behind(self.air, self.rh, *self.shares))

    @property
    def outside(self) -> float:
        """Heat transfer on the outer face, W/(m2 K)."""
        return habit(self.wind)

    @property
    def settled(self) -> float:
        """Inner face of the lens once it has settled, degC."""
        warm = float(tables.row("fog_eyewear", self.eyewear)["warm"]) / 100
        behind = self.air + warm * (habit("face") - self.air)
        return lens_temperature(self.air, behind, self.outside)

    @property
    def lens(self) -> float:
        """Inner face now, degC; a lens put on warm counts as settled."""
        if self.stored is None:
            return self.settled
        now = lens_after(self.worn, self.stored, self.settled, self.outside)
        return min(now, self.settled)

    @property
    def margin(self) -> float:
        """Lens less dew point, K; below zero the lens fogs."""
        return self.lens - self.dew_point

    @property
    def clear_after(self) -> float | None:
        """Minutes after putting it on until the lens is warmer than the dew point."""
        if self.stored is None:
            return None
        return minutes_to(self.dew_point, self.stored, self.settled, self.outside)

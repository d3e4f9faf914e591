"""One day at one nest: where the animals are, light, forecast and heat, quarter by quarter."""

from __future__ import annotations

import math
from collections.abc import Mapping
from dataclasses import dataclass
from functools import cached_property
from typing import Any

from calc import tables
from calc.clients.when_to_come.sun import SunTimes
from calc.safety.heat_estimate import CALM, sun_on_level, weather_heat
from calc.safety.heat_limits import Job

STEP = 15
"""Minutes between two starts that are tried."""

CORE = 180.0
"""Half of the middle of the day, min before and after true noon (wing_core_ours)."""

_DAY = 1440.0
_HEAT_FROM = 5.0
"""Below this air temperature heat is not the question and the heat method does not hold, degC."""


@dataclass(frozen=True, slots=True)
class Suit:
    """What decides the heat limit besides the weather."""

    work: str
    clothing: str
    acclimatised: bool
    sky: str


@dataclass(frozen=True, slots=True)
class Forecast:
    """Blocks of equal length from ``first`` on: degC, percent, m/s at head height.

    ``doubt`` is how far a temperature may be off where a model made it, K.
    """

    first: float
    block: float
    temperatures: tuple[float, ...]
    humidities: tuple[float, ...]
    winds: tuple[float, ...]
    doubt: float = 0.0

    @property
    def end(self) -> float:
        """Minute at which the forecast ends."""
        return self.first + self.block * len(self.temperatures)

    def place(self, minute: float) -> int:
        """Return the block of a minute; beyond the ends the nearest block."""
        return min(max(int((minute - self.first) // self.block), 0), len(self.temperatures) - 1)


@dataclass(frozen=True)
class Day:
    """Sun, species and forecast of one date; all times in minutes after local midnight."""

    sun: SunTimes
    habits: Mapping[str, Any]
    forecast: Forecast
    suit: Suit

    def shines(self, minute: float) -> bool:
        """Whether the sun is up; on a date without rise and set, whether it is up at noon."""
        rise, sets = self.sun.sunrise, self.sun.sunset
        if rise is None or sets is None:
            return False
        return any(rise <= minute + turn <= sets for turn in (-_DAY, 0.0, _DAY))

    def dim(self, minute: float) -> bool:
        """Whether it is civil twilight or brighter."""
        dawn, dusk = self.sun.dawn, self.sun.dusk
        if dawn is None or dusk is None:
            return self.shines(minute)
        return any(dawn <= minute + turn <= dusk for turn in (-_DAY, 0.0, _DAY))

    def flying_hours(self, minute: float) -> bool:
        """Whether the hour is one in which the species flies, by the table and the sun."""
        if "after" not in self.habits:
            return True
        rise, sets = self.sun.sunrise, self.sun.sunset
        if rise is None or sets is None:
            return True
        out, home = rise - self.habits["before"], sets + self.habits["after"]
        return any(out < minute + turn < home for turn in (-_DAY, 0.0, _DAY))

    def cool(self, minute: float) -> bool:
        """Whether the forecast is surely below the temperature at which few fly."""
        few = self.habits.get("few")
        return few is not None and self.temperature(minute) + self.forecast.doubt < few

    def temperature(self, minute: float) -> float:
        """Return the forecast temperature, degC."""
        return self.forecast.temperatures[self.forecast.place(minute)]

    @property
    def calm_in_sun(self) -> bool:
        """Whether a block of the heat limit, with the sun up at its middle, has calm air."""
        given = self.forecast
        return any(
            air >= _HEAT_FROM
            and wind <= CALM
            and self.shines(given.first + given.block * (place + 0.5))
            for place, (air, wind) in enumerate(zip(given.temperatures, given.winds, strict=True))
        )

    def where(self, minute: float) -> str:
        """Return ``night``, ``cool``, ``most_out`` or ``flying``."""
        if not self.flying_hours(minute):
            return "night"
        if self.cool(minute):
            return "cool"
        middle = abs((minute - self.sun.noon + _DAY / 2) % _DAY - _DAY / 2) <= CORE
        return "most_out" if middle and self.shines(minute) else "flying"

    def minutes_in_hour(self, minute: float) -> int:
        """Return the work minutes in an hour that the published heat limit leaves."""
        key = (self.forecast.place(minute), self.shines(minute))
        if key not in self._heat:
            self._heat[key] = _work_minutes(self.forecast, key[0], self.suit, key[1])
        return self._heat[key]

    @cached_property
    def _heat(self) -> dict[tuple[int, bool], int]:
        return {}


def _work_minutes(forecast: Forecast, place: int, suit: Suit, shines: bool) -> int:
    air = forecast.temperatures[place]
    if air < _HEAT_FROM:
        return 60
    sun = sun_on_level(suit.sky, None) if shines else 0.0
    heat = weather_heat(air, forecast.humidities[place], forecast.winds[place], sun)
    added = float(tables.row("clothing_adjustment", suit.clothing)["adjustment"])
    assert heat.shade is not None
    job = Job(
        heat=heat,
        rate=float(tables.row("metabolic_rates", suit.work)["rate"]),
        added=added,
        at_rest=heat.shade + min(added, 0.0),
        acclimatised=suit.acclimatised,
    )
    return job.minutes()


@dataclass(frozen=True, slots=True)
class Plan:
    """One arrival with what follows from it, minutes after midnight."""

    arrive: float
    begin: float  # first catch, after setting up
    finish: float
    least: int  # least work minutes in an hour
    where: str  # where the animals are at the first catch


def plan(day: Day, arrive: float, setup: float, work: float) -> Plan:
    """Return the plan for one arrival: the work is stretched by the rests that heat asks for.

    Parameters
    ----------
    day : the day
    arrive : minutes after midnight
    setup, work : minutes; ``work`` is after setting up

    Rests: as many as whole work periods need, each the rest of the hour; see the heat calculator.
    """
    begin = arrive + setup
    finish = begin + work
    least = _least(day, begin, finish)
    if 0 < least < 60:
        finish += (math.ceil(work / least - 1e-9) - 1) * (60 - least)
        least = _least(day, begin, finish)
    return Plan(arrive, begin, finish, least, day.where(begin))


def _least(day: Day, begin: float, finish: float) -> int:
    return min(day.minutes_in_hour(minute) for minute in _quarters(begin, finish))


def _quarters(begin: float, finish: float) -> list[float]:
    count = max(1, math.ceil((finish - begin) / STEP))
    return [begin + STEP * each for each in range(count)] + [finish - 1e-6]


def suits_method(day: Day, found: Plan, method: str) -> bool:
    """Whether the animals are where the method wants them, from first catch to finish."""
    wanted = {"home": ("night", "cool"), "wing": ("most_out",)}[method]
    return all(day.where(minute) in wanted for minute in _quarters(found.begin, found.finish))


def has_light(day: Day, found: Plan) -> bool:
    """Whether the sun is up from arrival to finish."""
    return all(day.shines(minute) for minute in _quarters(found.arrive, found.finish))


def plans(day: Day, setup: float, work: float) -> list[Plan]:
    """Return the plan for every quarter-hour of arrival on the date that the forecast covers."""
    low = math.ceil(max(0.0, day.forecast.first) / STEP)
    high = math.floor((min(_DAY, day.forecast.end) - 1e-6) / STEP)
    return [plan(day, STEP * each, setup, work) for each in range(low, high + 1)]


def runs(fitting: list[Plan]) -> list[list[Plan]]:
    """Split plans into unbroken runs of arrivals in one state of the animals."""
    found: list[list[Plan]] = []
    for each in fitting:
        last = found[-1][-1] if found else None
        if last and each.arrive - last.arrive <= STEP and each.where == last.where:
            found[-1].append(each)
        else:
            found.append([each])
    return found

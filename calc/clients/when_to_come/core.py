"""The core of "When to come": from what was asked to what is answered."""

from __future__ import annotations

from datetime import date
from typing import Any

from calc import tables
from calc.clients.when_to_come import cautions as say
from calc.clients.when_to_come import course
from calc.clients.when_to_come.chart import day_strip
from calc.clients.when_to_come.day import (
    Day,
    Forecast,
    Plan,
    Suit,
    has_light,
    plans,
    runs,
    suits_method,
)
from calc.clients.when_to_come.inputs import Inputs
from calc.clients.when_to_come.sun import SunTimes, clock, sun_times
from calc.declare import Answer
from calc.errors import InputError

_SMALL_HOURS = 240.0
"""Arrivals before this minute are offered only if they leave more work time."""


def core(x: Inputs) -> Answer:
    """Compute the day and the window; see the declaration for units."""
    sun = _sun(x)
    forecast, short = _forecast(x, sun)
    found = Day(
        sun=sun,
        habits=tables.row("activity_windows", x.animal),
        forecast=forecast,
        suit=Suit(x.effort, x.clothing, x.acclimatised == "yes", x.sky),
    )
    tried = plans(found, x.setup, x.work)
    need_light = x.height == "height"
    fitting = [
        each
        for each in tried
        if each.least > 0
        and suits_method(found, each, x.method)
        and (not need_light or has_light(found, each))
    ]
    fitting_runs = runs(fitting)
    best_run = _best(found, fitting_runs)
    best = best_run[0] if best_run else None
    told = say.Findings(
        animal=x.animal,
        method=x.method,
        height=need_light,
        clock_off=abs((x.utc_offset - x.longitude / 15 + 12) % 24 - 12),
        sun_missing=sun.sunrise is None or sun.sunset is None,
        why_not="" if best else _why_not(found, tried, x.method, need_light),
        best=best,
        dim=best is None or found.dim(best.finish),
        forecast_end=found.forecast.end,
        by_model=x.temperatures is None,
        short=short,
        calm=found.calm_in_sun,
    )
    return Answer(
        values={
            "verdict": say.verdict(told),
            **_best_values(best_run),
            **_sun_values(found),
            "windows": [_window_row(found, run) for run in fitting_runs],
            "hours": _hours(found),
        },
        cautions=say.cautions(told),
        charts=[day_strip(found, best)],
    )


def _forecast(x: Inputs, sun: SunTimes) -> tuple[Forecast, bool]:
    """Return the blocks of the day, and whether some lists are shorter than the temperatures."""
    if x.temperatures is None:
        assert x.lowest is not None
        assert x.highest is not None
        assert x.humidity is not None
        assert x.wind is not None
        if x.lowest > x.highest:
            allowed = "not below the lowest temperature of the day"
            raise InputError(
                "highest",
                x.highest,
                allowed,
                f"Highest temperature of the day: {x.highest:g} °C is below the lowest, "
                f"{x.lowest:g} °C; allowed is {allowed}.",
            )
        return course.forecast(sun, x.lowest, x.highest, x.humidity, x.wind), False
    assert x.first_hour is not None
    assert x.block is not None
    assert x.humidities is not None
    assert x.winds is not None
    blocks = len(x.temperatures)
    made = Forecast(
        60.0 * x.first_hour,
        60.0 * x.block,
        x.temperatures,
        _for_each("humidities", "Relative humidity", x.humidities, blocks),
        _for_each("winds", "Wind where you stand, by blocks", x.winds, blocks),
    )
    return made, any(1 < len(given) < blocks for given in (x.humidities, x.winds))


def _for_each(name: str, label: str, given: tuple[float, ...], blocks: int) -> tuple[float, ...]:
    """Return one value for each block; where there are fewer, the last one holds on."""
    if len(given) > blocks:
        allowed = f"1 to {blocks} values, as many as temperatures at most"
        raise InputError(
            name,
            list(given),
            allowed,
            f"{label}: {len(given)} given for {blocks} blocks; allowed is {allowed}.",
        )
    return given + given[-1:] * (blocks - len(given))


def _sun(x: Inputs) -> SunTimes:
    day = date.fromisoformat(x.date)
    return sun_times(x.latitude, x.longitude, day.year, day.month, day.day, x.utc_offset)


def _best(day: Day, found: list[list[Plan]]) -> list[Plan] | None:
    """Return the best run: most work minutes, no start in the small hours, light, earliest."""

    def rank(run: list[Plan]) -> tuple[int, bool, bool, float]:
        first = run[0]
        small_hours = first.arrive < _SMALL_HOURS
        return (-min(first.least, 60), small_hours, not day.dim(first.finish), first.arrive)

    return min(found, key=rank) if found else None


def _why_not(day: Day, tried: list[Plan], method: str, need_light: bool) -> str:
    there = [each for each in tried if suits_method(day, each, method)]
    if not there:
        whole = day.forecast.first <= 0 and day.forecast.end >= 1440
        return "method" if whole or method == "wing" or "after" not in day.habits else "hours"
    lit = [each for each in there if not need_light or has_light(day, each)]
    return "heat" if lit else "light"


def _best_values(run: list[Plan] | None) -> dict[str, Any]:
    if run is None:
        return {}
    best = run[0]
    return {
        "arrive": clock(best.arrive),
        "begin": clock(best.begin),
        "finish": clock(best.finish),
        "latest": clock(run[-1].arrive),
        "least_minutes": best.least,
    }


def _clock(minutes: float | None, nothing: str) -> str:
    return nothing if minutes is None else clock(minutes)


def _sun_values(day: Day) -> dict[str, Any]:
    sun, habits = day.sun, day.habits
    both = sun.sunset is not None and sun.dusk is not None
    flies = "after" in habits
    return {
        "dawn": _clock(sun.dawn, "none on this date"),
        "sunrise": _clock(sun.sunrise, "none on this date"),
        "noon": clock(sun.noon),
        "sunset": _clock(sun.sunset, "none on this date"),
        "dusk": _clock(sun.dusk, "none on this date"),
        "twilight": (sun.dusk or 0.0) - (sun.sunset or 0.0) if both else None,
        "last_home": clock(sun.sunset + habits["after"])
        if flies and sun.sunset is not None
        else "no hour: some fly all night",
        "first_out": clock(sun.sunrise - habits["before"])
        if flies and sun.sunrise is not None
        else "no hour: some fly all night",
    }


def _window_row(day: Day, run: list[Plan]) -> dict[str, Any]:
    first = run[0]
    return {
        "from": clock(first.arrive),
        "to": clock(run[-1].arrive),
        "done": clock(first.finish),
        "why": say.SHORT[first.where],
        "temperature": day.temperature(first.begin),
        "minutes": first.least,
    }


def _hours(day: Day) -> list[dict[str, Any]]:
    """Return the blocks of the day; of a model's hours every other one."""
    blocks = range(len(day.forecast.temperatures))
    if day.forecast.doubt:
        blocks = range(0, 24, 2)
    made = []
    for place in blocks:
        start = day.forecast.first + place * day.forecast.block
        middle = start + day.forecast.block / 2
        light = "day" if day.shines(middle) else "twilight" if day.dim(middle) else "dark"
        made.append(
            {
                "from": clock(start),
                "temperature": day.forecast.temperatures[place],
                "light": light,
                "where": say.SHORT[day.where(middle)],
                "minutes": day.minutes_in_hour(middle),
            }
        )
    return made

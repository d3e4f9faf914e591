"""When to come: sun times, where the animals are, heat and light, joined into a window."""

from __future__ import annotations

from typing import Any

from calc import tables
from calc.clients import when_to_come_words as say
from calc.clients.sun import SunTimes, clock, sun_times
from calc.clients.when_to_come_chart import day_strip
from calc.clients.when_to_come_day import (
    Day,
    Forecast,
    Plan,
    Suit,
    has_light,
    plans,
    runs,
    suits_method,
)
from calc.clients.when_to_come_forms import INPUTS, OUTPUTS
from calc.declare import Answer, Calculator
from calc.errors import InputError

_SMALL_HOURS = 240.0
"""Arrivals before this minute are offered only if they leave more work time."""


def core(
    *,
    latitude: float,
    longitude: float,
    year: int,
    month: int,
    day: int,
    utc_offset: float,
    animal: str,
    method: str,
    height: str,
    setup: float,
    work: float,
    first_hour: int,
    block: int,
    temperatures: tuple[float, ...],
    humidities: tuple[float, ...],
    winds: tuple[float, ...],
    rain: str,
    sky: str,
    effort: str,
    clothing: str,
    acclimatised: str,
) -> Answer:
    """Compute the day and the window; see the declaration for units."""
    blocks = len(temperatures)
    short = any(1 < len(given) < blocks for given in (humidities, winds))
    humidities = _for_each("humidities", "Relative humidity", humidities, blocks)
    winds = _for_each("winds", "Wind where you stand", winds, blocks)
    sun = _sun(latitude, longitude, year, month, day, utc_offset)
    found = Day(
        sun=sun,
        habits=tables.row("activity_windows", animal),
        forecast=Forecast(60.0 * first_hour, 60.0 * block, temperatures, humidities, winds),
        suit=Suit(effort, clothing, acclimatised == "yes", sky),
    )
    tried = plans(found, setup, work)
    need_light = height == "height"
    fitting = [
        each
        for each in tried
        if each.least > 0
        and suits_method(found, each, method)
        and (not need_light or has_light(found, each))
    ]
    fitting_runs = runs(fitting)
    best_run = _best(found, fitting_runs)
    best = best_run[0] if best_run else None
    told = say.Findings(
        animal=animal,
        method=method,
        height=need_light,
        rain=rain,
        clock_off=abs((utc_offset - longitude / 15 + 12) % 24 - 12),
        sun_missing=sun.sunrise is None or sun.sunset is None,
        why_not="" if best else _why_not(found, tried, method, need_light),
        best=best,
        dim=best is None or found.dim(best.finish),
        forecast_end=found.forecast.end,
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


def _sun(
    latitude: float, longitude: float, year: int, month: int, day: int, utc_offset: float
) -> SunTimes:
    try:
        return sun_times(latitude, longitude, year, month, day, utc_offset)
    except ValueError:
        allowed = "a day that the month has"
        raise InputError(
            "day", day, allowed, f"Day: {month}/{year} has no day {day}; allowed is {allowed}."
        ) from None


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
    made = []
    for place, temperature in enumerate(day.forecast.temperatures):
        start = day.forecast.first + place * day.forecast.block
        middle = start + day.forecast.block / 2
        light = "day" if day.shines(middle) else "twilight" if day.dim(middle) else "dark"
        made.append(
            {
                "from": clock(start),
                "temperature": temperature,
                "light": light,
                "where": say.SHORT[day.where(middle)],
                "minutes": day.minutes_in_hour(middle),
            }
        )
    return made


when_to_come = Calculator(
    name="when_to_come",
    title="When to come",
    part="clients",
    purpose="Place, date and forecast: when the animals are where your method wants them, with "
    "the light and within the heat limit.",
    inputs=INPUTS,
    outputs=OUTPUTS,
    core=core,
    sources=(
        "noaa_solar_equations",
        "usno_rise_set",
        "kasper_symmetric",
        "aerial_dawn_dusk",
        "dusk_velutina",
        "heinrich_cold",
        "hard_to_fly_cool",
        "wade_velutina",
        "kovac_stabentheiner_2012",
        "wing_core_ours",
        "niosh_2016",
        "failing_light",
    ),
    formula=(
        (
            r"\cos H = \frac{\cos z}{\cos\varphi\cos\delta} - \tan\varphi\tan\delta",
            "hour angle of the sun at zenith angle z: 90°50′ at rise and set, 96° at the ends of "
            "civil twilight",
            "usno_rise_set",
        ),
        (
            r"t = 720 - 4\lambda \mp 4H - E + 60\,u",
            "clock minute of rise and set; E the equation of time in minutes, u the clock's hours "
            "ahead of UTC, east plus",
            "noaa_solar_equations",
        ),
        (
            r"t_\mathrm{out} = t_\mathrm{rise} - a,\qquad t_\mathrm{home} = t_\mathrm{set} + b",
            "flying hours, a and b from the table of the animal",
            "kasper_symmetric",
        ),
        (
            r"T = w + \left(\left\lceil\tfrac{w}{m}\right\rceil - 1\right)(60 - m)",
            "work w with the rests that m work minutes in an hour ask for",
            "niosh_2016",
        ),
    ),
    assumptions=(
        "A level horizon at sea level and average air; a hill moves the real light by minutes.",
        "The forecast of a block holds for the whole block.",
        "The table's minutes hold for every day and colony; only the yellowjacket's are measured, "
        "and they are means.",
        "For ladder, roof and saw work the sun must be up from arrival to finish.",
        "Heat by day is with the sun you chose, as if it stood high; that errs to the hot side.",
    ),
)

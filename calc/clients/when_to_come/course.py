"""The day's course of temperature and humidity, from three values of a forecast."""

from __future__ import annotations

import math

from calc.clients.when_to_come.day import Forecast
from calc.clients.when_to_come.sun import SunTimes
from calc.safety.humidity import dew_point, saturation_vapour_pressure

DOUBT = 2.0
"""Root-mean-square error of the model, K (cesaraccio_2001)."""

SHARE = 0.39
"""Share of the day's range by which the air has cooled at sunset (cesaraccio_2001)."""

PEAK = 4.0
"""Hours from the warmest moment to sunset (cesaraccio_2001)."""

HOURS = 36
"""Hours that the model is run for: work begun in the evening ends after midnight."""

_DRIEST, _DAMPEST = 5.0, 99.0
"""Ends of the wet-bulb formula that the heat limit goes by, percent (stull_2011)."""


def temperature(
    hour: float,
    sunrise: float,
    sunset: float,
    lowest: float,
    highest: float,
    next_lowest: float,
) -> float:
    """Return the air temperature of an hour, degC.

    A sine from the lowest at sunrise to the highest four hours before sunset, another sine down to
    sunset, and a square root of the time from there to the next sunrise.

    Parameters
    ----------
    hour, sunrise, sunset : hours of one clock; ``sunset`` less than 24 after ``sunrise``
    lowest, highest, next_lowest : degC, of the day and of the following dawn

    Range: clear or even days; root-mean-square error below 2 K at five stations in California. On
    days shorter than eight hours the highest is put at their middle. Source: cesaraccio_2001.
    """
    hour = sunrise + (hour - sunrise) % 24
    peak = max(sunset - PEAK, (sunrise + sunset) / 2)
    at_sunset = highest - SHARE * (highest - next_lowest)
    if hour <= peak:
        rise = math.sin(math.pi / 2 * (hour - sunrise) / (peak - sunrise))
        return lowest + (highest - lowest) * rise
    if hour < sunset:
        fall = math.sin(math.pi / 2 * (1 + (hour - peak) / (sunset - peak)))
        return at_sunset + (highest - at_sunset) * fall
    gone = (hour - sunset) / (sunrise + 24 - sunset)
    return at_sunset + (next_lowest - at_sunset) * math.sqrt(gone)


def humidity(air: float, dew: float) -> float:
    """Return the relative humidity of air with a dew point, percent, 100 at most.

    Source: sonntag_1990; that the dew point stays all day is our assumption (steady_dew_point).
    """
    return min(100.0, 100 * saturation_vapour_pressure(dew) / saturation_vapour_pressure(air))


def forecast(sun: SunTimes, lowest: float, highest: float, damp: float, wind: float) -> Forecast:
    """Return the hours of a day from its lowest, its highest and the humidity at the highest.

    Where the sun does not both rise and set, the highest stands for all hours: that errs to the
    hot side.
    """
    air = [highest] * HOURS
    if sun.sunrise is not None and sun.sunset is not None:
        rise, sets = sun.sunrise / 60, sun.sunset / 60
        air = [
            temperature(hour + 0.5, rise, sets, lowest, highest, lowest) for hour in range(HOURS)
        ]
    dew = dew_point(highest, damp)
    return Forecast(
        first=0.0,
        block=60.0,
        temperatures=tuple(air),
        humidities=tuple(min(max(humidity(each, dew), _DRIEST), _DAMPEST) for each in air),
        winds=(wind,) * HOURS,
        doubt=DOUBT,
    )

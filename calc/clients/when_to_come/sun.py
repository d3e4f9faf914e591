"""Sun times of one day at one place, from the low-precision solar equations, as plain numbers.

Written out here, not taken from a library, because the page on the phone loads every package it
needs: these are some sixty lines of :mod:`math`. The tests compare them with printed almanac
times and with a library.
"""

from __future__ import annotations

import math
from dataclasses import dataclass
from datetime import date

RISE_ZENITH = 90 + 50 / 60
"""Zenith angle of the sun's centre at rise and set: 34' refraction and 16' half a disc, degrees."""

CIVIL_ZENITH = 96.0
"""Zenith angle at the ends of civil twilight, degrees."""

_DAY = 1440.0
_JULIAN_OF_ORDINAL = 1721424.5


@dataclass(frozen=True, kw_only=True, slots=True)
class SunTimes:
    """Minutes after local midnight; below 0 is the day before, above 1440 the day after.

    ``None`` where the sun does not reach that height on the date.
    """

    dawn: float | None
    sunrise: float | None
    noon: float
    sunset: float | None
    dusk: float | None


def century(julian: float) -> float:
    """Return Julian centuries since noon of 1 January 2000."""
    return (julian - 2451545.0) / 36525


def declination_and_equation(t: float) -> tuple[float, float]:
    """Return the sun's declination in degrees and the equation of time in minutes.

    Parameters
    ----------
    t : Julian centuries since J2000

    Range: years 1900 to 2100 to about 0.01 degree. Source: noaa_solar_equations.
    """
    mean_longitude = math.radians((280.46646 + t * (36000.76983 + 0.0003032 * t)) % 360)
    anomaly = math.radians((357.52911 + t * (35999.05029 - 0.0001537 * t)) % 360)
    eccentricity = 0.016708634 - t * (0.000042037 + 0.0000001267 * t)
    node = math.radians(125.04 - 1934.136 * t)
    longitude = mean_longitude + math.radians(
        _centre(anomaly, t) - 0.00569 - 0.00478 * math.sin(node)
    )
    tilt = math.radians(_mean_tilt(t) + 0.00256 * math.cos(node))
    declination = math.degrees(math.asin(math.sin(tilt) * math.sin(longitude)))
    y = math.tan(tilt / 2) ** 2
    equation = 4 * math.degrees(
        y * math.sin(2 * mean_longitude)
        - 2 * eccentricity * math.sin(anomaly)
        + 4 * eccentricity * y * math.sin(anomaly) * math.cos(2 * mean_longitude)
        - y * y / 2 * math.sin(4 * mean_longitude)
        - 1.25 * eccentricity * eccentricity * math.sin(2 * anomaly)
    )
    return declination, equation


def _centre(anomaly: float, t: float) -> float:
    """Return the equation of the centre, degrees."""
    return (
        (1.914602 - t * (0.004817 + 0.000014 * t)) * math.sin(anomaly)
        + (0.019993 - 0.000101 * t) * math.sin(2 * anomaly)
        + 0.000289 * math.sin(3 * anomaly)
    )


def _mean_tilt(t: float) -> float:
    """Return the mean obliquity of the ecliptic, degrees."""
    seconds = 21.448 - t * (46.815 + t * (0.00059 - 0.001813 * t))
    return 23 + (26 + seconds / 60) / 60


def declination(centuries: float) -> float:
    """Return the sun's declination, degrees; see :func:`declination_and_equation`."""
    return declination_and_equation(centuries)[0]


def equation_of_time(centuries: float) -> float:
    """Return the equation of time, minutes; see :func:`declination_and_equation`."""
    return declination_and_equation(centuries)[1]


def hour_angle(latitude: float, sun: float, zenith: float) -> float | None:
    """Return the hour angle at which the sun stands at a zenith angle, degrees.

    ``cos H = cos z / (cos lat cos dec) - tan lat tan dec``.

    Parameters
    ----------
    latitude : degrees, north positive, below 90 either way
    sun : declination, degrees
    zenith : degrees

    Returns ``None`` where the sun never stands there on that day. Source: usno_rise_set.
    """
    lat, dec = math.radians(latitude), math.radians(sun)
    cosine = math.cos(math.radians(zenith)) / (math.cos(lat) * math.cos(dec))
    cosine -= math.tan(lat) * math.tan(dec)
    return math.degrees(math.acos(cosine)) if -1 <= cosine <= 1 else None


def sun_times(
    latitude: float, longitude: float, year: int, month: int, day: int, utc_offset: float
) -> SunTimes:
    """Return dawn, sunrise, noon, sunset and dusk of a local date, minutes after local midnight.

    Each event is found from the sun's place at the event itself, in four rounds.

    Parameters
    ----------
    latitude, longitude : degrees, north and east positive, latitude below 90 either way
    year, month, day : local date
    utc_offset : local clock less UTC, hours, summer time included

    Raises
    ------
    ValueError : a date that does not exist

    Range: about 1 minute below 66 degrees of latitude, flat horizon at sea level, standard
    refraction, years 1900 to 2100. Source: noaa_solar_equations, usno_rise_set.
    """
    midnight = date(year, month, day).toordinal() + _JULIAN_OF_ORDINAL - utc_offset / 24
    middle = _noon(midnight, longitude, utc_offset)

    def event(zenith: float, side: int) -> float | None:
        minutes = middle
        for _ in range(4):
            dec, equation = declination_and_equation(century(midnight + minutes / _DAY))
            angle = hour_angle(latitude, dec, zenith)
            if angle is None:
                return None
            minutes = _clock_noon(longitude, utc_offset, equation, middle) + side * 4 * angle
        return minutes

    return SunTimes(
        dawn=event(CIVIL_ZENITH, -1),
        sunrise=event(RISE_ZENITH, -1),
        noon=middle,
        sunset=event(RISE_ZENITH, 1),
        dusk=event(CIVIL_ZENITH, 1),
    )


def _noon(midnight: float, longitude: float, utc_offset: float) -> float:
    minutes = 720.0
    for _ in range(3):
        equation = equation_of_time(century(midnight + minutes / _DAY))
        minutes = _clock_noon(longitude, utc_offset, equation, 720.0)
    return minutes


def _clock_noon(longitude: float, utc_offset: float, equation: float, near: float) -> float:
    """Return the clock minute of true noon that lies nearest to ``near``."""
    noon = 720 - 4 * longitude - equation + 60 * utc_offset
    return noon + _DAY * round((near - noon) / _DAY)


def clock(minutes: float) -> str:
    """Write minutes after midnight as a 24-hour clock time, with the day where it is another.

    >>> clock(1205.6)
    '20:06'
    >>> clock(1442)
    '00:02 next day'
    """
    whole = math.floor(minutes + 0.5)
    days, rest = divmod(whole, 1440)
    text = f"{rest // 60:02d}:{rest % 60:02d}"
    if days == 0:
        return text
    return f"{text} {'next day' if days == 1 else 'the day before'}"

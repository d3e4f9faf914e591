"""Moist air: vapour pressure, dew point, absolute humidity, wet bulb.

Plain numbers: temperatures in degC, relative humidity in percent, pressures in hPa.
"""

from __future__ import annotations

import math

# Magnus constants over water of Sonntag 1990, as used by the WMO (-45 to 60 degC).
_MAGNUS_A = 17.62
_MAGNUS_B = 243.12
_MAGNUS_ES = 6.112


def saturation_vapour_pressure(temperature: float) -> float:
    """Saturation vapour pressure over water, ``6.112 exp(17.62 T / (243.12 + T))``.

    Parameters
    ----------
    temperature : degC, valid -45 to 60

    Returns
    -------
    hPa

    Source: Sonntag 1990 (key ``sonntag_1990``).
    """
    return _MAGNUS_ES * math.exp(_MAGNUS_A * temperature / (_MAGNUS_B + temperature))


def vapour_pressure(temperature: float, humidity: float) -> float:
    """Vapour pressure of air, hPa, from degC and relative humidity in percent."""
    return humidity / 100 * saturation_vapour_pressure(temperature)


def dew_point(temperature: float, humidity: float) -> float:
    """Temperature at which the air's own vapour saturates it, the Magnus form turned round.

    Parameters
    ----------
    temperature : degC, valid -45 to 60
    humidity : percent, above 0

    Returns
    -------
    degC

    Source: Sonntag 1990 (key ``sonntag_1990``).
    """
    g = math.log(humidity / 100) + _MAGNUS_A * temperature / (_MAGNUS_B + temperature)
    return _MAGNUS_B * g / (_MAGNUS_A - g)


def absolute_humidity(temperature: float, humidity: float) -> float:
    """Mass of water vapour in a volume of air, ``e / (R_v T)``, in g/m3.

    ``R_v`` = 461.5 J/(kg K) is the gas constant of water vapour.
    """
    return 1e5 * vapour_pressure(temperature, humidity) / (461.5 * (temperature + 273.15))


def wet_bulb_stull(temperature: float, humidity: float) -> float:
    """Psychrometric wet bulb at sea level from air temperature and humidity alone.

    ``Tw = T atan(0.151977 (RH + 8.313659)^0.5) + atan(T + RH) - atan(RH - 1.676331)
    + 0.00391838 RH^1.5 atan(0.023101 RH) - 4.686035`` with the arctangents in radians.

    Parameters
    ----------
    temperature : degC, valid -20 to 50
    humidity : percent (50, not 0.5), valid 5 to 99

    Returns
    -------
    degC; printed error -1 to +0.65 degC, mean below 0.3 degC

    Source: Stull 2011 (key ``stull_2011``).
    """
    return (
        temperature * math.atan(0.151977 * math.sqrt(humidity + 8.313659))
        + math.atan(temperature + humidity)
        - math.atan(humidity - 1.676331)
        + 0.00391838 * math.pow(humidity, 1.5) * math.atan(0.023101 * humidity)
        - 4.686035
    )

"""Density, viscosity and pressure of dry air."""

from __future__ import annotations

import math

GAS_CONSTANT = 287.05287
"""Specific gas constant of dry air, J/(kg K) [us_standard_atmosphere_1976]."""

ZERO_CELSIUS = 273.15
SEA_LEVEL_PRESSURE = 101_325.0
STANDARD_DENSITY = 1.2041
"""Density of dry air at 20 degC and sea level, kg/m3: the air a label's figures are taken for."""

_EARTH_RADIUS = 6_356_766.0
_SEA_LEVEL_TEMPERATURE = 288.15
_LAPSE = 0.0065
_EXPONENT = 5.255880


def density(temperature: float, pressure: float) -> float:
    r"""Return the density of dry air, :math:`\rho = P/(R T)`.

    Parameters
    ----------
    temperature : air temperature, degC
    pressure : air pressure, Pa

    Returns
    -------
    density, kg/m3

    Notes
    -----
    Ideal gas; good to about 0.1 % for outdoor air. Moist air is up to about 1 % lighter.
    Source: us_standard_atmosphere_1976.
    """
    return pressure / (GAS_CONSTANT * (temperature + ZERO_CELSIUS))


def viscosity(temperature: float) -> float:
    r"""Return the dynamic viscosity of air by Sutherland's formula.

    :math:`\mu = 1.716\cdot10^{-5}\,(T/273.15)^{1.5}\,(273.15 + 110.4)/(T + 110.4)`

    Parameters
    ----------
    temperature : air temperature, degC

    Returns
    -------
    dynamic viscosity, Pa s

    Notes
    -----
    Range: about -50 to 200 degC. Source: air_table_online; equal to the form of
    us_standard_atmosphere_1976.
    """
    kelvin = temperature + ZERO_CELSIUS
    return (
        1.716e-5 * math.pow(kelvin / ZERO_CELSIUS, 1.5) * (ZERO_CELSIUS + 110.4) / (kelvin + 110.4)
    )


def kinematic_viscosity(temperature: float, pressure: float) -> float:
    r"""Return :math:`\nu = \mu/\rho` in m2/s from degC and Pa."""
    return viscosity(temperature) / density(temperature, pressure)


def geopotential_height(altitude: float) -> float:
    """Return the geopotential height in m of a geometric altitude in m above sea level."""
    return _EARTH_RADIUS * altitude / (_EARTH_RADIUS + altitude)


def standard_temperature(altitude: float) -> float:
    """Return the temperature of the standard atmosphere, K.

    Parameters
    ----------
    altitude : geometric altitude above sea level, m, below 11 000

    Notes
    -----
    Source: us_standard_atmosphere_1976.
    """
    return _SEA_LEVEL_TEMPERATURE - _LAPSE * geopotential_height(altitude)


def standard_pressure(altitude: float) -> float:
    r"""Return the pressure of the standard atmosphere.

    :math:`P = 101325\,(T/288.15)^{5.25588}` with :math:`T = 288.15 - 0.0065 H`

    Parameters
    ----------
    altitude : geometric altitude above sea level, m, below 11 000

    Returns
    -------
    pressure, Pa

    Notes
    -----
    Weather moves the true pressure by about 3 %. Source: us_standard_atmosphere_1976.
    """
    ratio = standard_temperature(altitude) / _SEA_LEVEL_TEMPERATURE
    return SEA_LEVEL_PRESSURE * math.pow(ratio, _EXPONENT)


def standard_density(altitude: float) -> float:
    """Return the density of the standard atmosphere in kg/m3 at an altitude in m."""
    return density(standard_temperature(altitude) - ZERO_CELSIUS, standard_pressure(altitude))

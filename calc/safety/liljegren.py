"""WBGT in the sun from weather data: the energy balance of Liljegren and others 2008.

Two sensors are balanced, the black globe and the wet wick of the natural wet bulb. Each gains
short-wave and long-wave radiation and exchanges heat with the wind; the wick also evaporates.
Each balance falls steadily with the sensor's temperature, so halving an interval finds its root
whatever the weather. Inside this module temperatures are in kelvin, pressures in hPa.

Source of the constants: Liljegren 2008 and its reference program (key ``liljegren_2008``).
"""

from __future__ import annotations

import math
from collections.abc import Callable

from calc.safety.wbgt import wbgt_sun

_SIGMA = 5.6696e-8  # Stefan-Boltzmann constant, W/(m2 K4), digits of the reference program
_CP = 1003.5  # heat capacity of dry air, J/(kg K)
_M_AIR, _M_WATER = 28.97, 18.015  # molar masses, g/mol
_R_AIR = 8314.34 / _M_AIR  # gas constant of air, J/(kg K)
_PRANDTL = _CP / (_CP + 1.25 * _R_AIR)
_EMISSIVITY = 0.95  # of globe and of wick
_GLOBE_ALBEDO, _WICK_ALBEDO = 0.05, 0.4
_WICK_DIAMETER, _WICK_LENGTH = 0.007, 0.0254  # m
_GROUND_ALBEDO, _GROUND_EMISSIVITY = 0.45, 0.999

LEAST_WIND = 0.13
"""Least wind that the reference program computes with, m/s; less counts as this."""

GLOBE_DIAMETER = 0.0508
"""Globe of the published method, m; the standard globe of the WBGT has 0.15 m."""

HIGH_SUN = 0.85
"""Cosine of the sun's distance from the zenith that stands for a high summer sun."""

_SOLAR_CONSTANT = 1367.0  # W/m2
_CLEAREST = 0.85  # share of the sun above the air that the clearest sky lets through


def direct_fraction(radiation: float, cos_zenith: float = HIGH_SUN) -> float:
    """Share of the sun's radiation that comes straight from the sun's disc, 0 to 0.9.

    ``exp(3 - 1.34 S* - 1.65 / S*)`` with S* the radiation over that above the air.

    Source: Liljegren 2008 (key ``liljegren_2008``).
    """
    share = min(radiation / (_SOLAR_CONSTANT * cos_zenith), _CLEAREST)
    if share < 0.01:  # the exponential is below 1e-70 here, and 1/share would overflow at 0
        return 0.0
    return min(math.exp(3 - 1.34 * share - 1.65 / share), 0.9)


def wbgt_liljegren(
    air: float,
    humidity: float,
    wind: float,
    radiation: float,
    *,
    direct: float | None = None,
    cos_zenith: float = HIGH_SUN,
    pressure: float = 1013.25,
    globe_diameter: float = GLOBE_DIAMETER,
) -> float:
    """WBGT outdoors, ``0.7 Tnw + 0.2 Tg + 0.1 Ta``, with both sensors from their energy balance.

    Parameters
    ----------
    air : air temperature, degC; the heat of evaporation is stated for 10 to 40
    humidity : relative humidity, percent, above 0
    wind : wind at 2 m, m/s; less than 0.13 counts as 0.13
    radiation : sun on a level surface, W/m2
    direct : share of it straight from the sun, 0 to 1; estimated if not given
    cos_zenith : cosine of the sun's distance from the zenith, above 0.00873
    pressure : air pressure, hPa
    globe_diameter : m

    Returns
    -------
    degC; published accuracy better than 1 degC

    Source: Liljegren 2008 (key ``liljegren_2008``).
    """
    share = direct_fraction(radiation, cos_zenith) if direct is None else direct
    kelvin = air + 273.15
    weather = (kelvin, humidity / 100, wind, radiation, share, cos_zenith, pressure)
    globe = _globe(*weather, globe_diameter)
    wick = _natural_wet_bulb(*weather)
    return wbgt_sun(wick - 273.15, globe - 273.15, air)


def _globe(
    air: float,
    humidity: float,
    wind: float,
    radiation: float,
    direct: float,
    cos_zenith: float,
    pressure: float,
    diameter: float,
) -> float:
    """Return the black globe's temperature."""
    # A sphere shows the sun a quarter of its surface, a level plate all of it.
    beam = direct * (1 / (2 * cos_zenith) - 1)
    sun = radiation / 2 * (1 - _GLOBE_ALBEDO) * (beam + 1 + _GROUND_ALBEDO)
    gain = _EMISSIVITY * _longwave(air, humidity) + sun

    def surplus(globe: float) -> float:
        film = (globe + air) / 2
        root = math.sqrt(_reynolds(film, pressure, wind, diameter))
        exchange = (2 + 0.6 * root * math.pow(_PRANDTL, 0.3333)) * _conductivity(film) / diameter
        return gain - _EMISSIVITY * _SIGMA * math.pow(globe, 4) - exchange * (globe - air)

    return _root(surplus, air - 30, air + 90)


def _natural_wet_bulb(
    air: float,
    humidity: float,
    wind: float,
    radiation: float,
    direct: float,
    cos_zenith: float,
    pressure: float,
) -> float:
    """Return the temperature of the wet wick under sun and wind."""
    end = 0.25 * _WICK_DIAMETER / _WICK_LENGTH
    side = math.tan(math.acos(cos_zenith)) / math.pi
    seen = (1 - direct) * (1 + end) + direct * (side + end) + _GROUND_ALBEDO
    gain = _EMISSIVITY * _longwave(air, humidity) + (1 - _WICK_ALBEDO) * radiation * seen
    vapour = humidity * _saturation(air)

    def surplus(wick: float) -> float:
        film = (wick + air) / 2
        nusselt = (
            0.281
            * math.pow(_reynolds(film, pressure, wind, _WICK_DIAMETER), 0.6)
            * math.pow(_PRANDTL, 0.44)
        )
        exchange = nusselt * _conductivity(film) / _WICK_DIAMETER
        density = pressure * 100 / (_R_AIR * film)
        schmidt = _viscosity(film) / (density * _diffusivity(film, pressure))
        wet = _saturation(wick)
        evaporation = _heat_of_evaporation(film) * _M_WATER / (_CP * _M_AIR)
        evaporation *= (wet - vapour) / (pressure - wet) * math.pow(_PRANDTL / schmidt, 0.56)
        radiated = (gain - _EMISSIVITY * _SIGMA * math.pow(wick, 4)) / exchange
        return air - wick - evaporation + radiated

    return _root(surplus, air - 50, air + 40)


def _root(falling: Callable[[float], float], low: float, high: float) -> float:
    """Return the root of a falling function, to about a millionth of a kelvin."""
    for _ in range(27):
        middle = (low + high) / 2
        if falling(middle) > 0:
            low = middle
        else:
            high = middle
    return (low + high) / 2


def _longwave(air: float, humidity: float) -> float:
    """Mean heat radiation from clear sky and ground, W/m2; the ground is as warm as the air."""
    sky = 0.575 * math.pow(humidity * _saturation(air), 0.143)
    return 0.5 * _SIGMA * math.pow(air, 4) * (sky + _GROUND_EMISSIVITY)


def _saturation(kelvin: float) -> float:
    """Vapour pressure over water, hPa (Buck 1981, with its factor for moist air)."""
    return 1.004 * 6.1121 * math.exp(17.502 * (kelvin - 273.15) / (kelvin - 32.18))


def _viscosity(kelvin: float) -> float:
    """Viscosity of air, kg/(m s)."""
    omega = (kelvin / 97.0 - 2.9) / 0.4 * -0.034 + 1.048
    return 2.6693e-6 * math.sqrt(_M_AIR * kelvin) / (3.617**2 * omega)


def _conductivity(kelvin: float) -> float:
    """Heat conductivity of air, W/(m K)."""
    return (_CP + 1.25 * _R_AIR) * _viscosity(kelvin)


def _diffusivity(kelvin: float, pressure: float) -> float:
    """Diffusivity of water vapour in air, m2/s."""
    critical = math.pow(36.4 * 218.0, 1 / 3) * math.pow(132.0 * 647.3, 5 / 12)
    masses = math.sqrt(1 / _M_AIR + 1 / _M_WATER)
    reduced = math.pow(kelvin / math.sqrt(132.0 * 647.3), 2.334)
    return 3.640e-8 * reduced * critical * masses / (pressure / 1013.25)


def _heat_of_evaporation(kelvin: float) -> float:
    """Heat of evaporation of water, J/kg, stated for 283 to 313 K."""
    return (313.15 - kelvin) / 30 * -71100.0 + 2.4073e6


def _reynolds(film: float, pressure: float, wind: float, diameter: float) -> float:
    density = pressure * 100 / (_R_AIR * film)
    return max(wind, LEAST_WIND) * density * diameter / _viscosity(film)

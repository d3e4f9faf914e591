"""The weather service's heat index: how hot shade feels in light wind.

Inside this module temperatures are in degF, as the regression was published.
"""

from __future__ import annotations

import math

from calc import tables

CHART_TOP = 137.0
"""Highest heat index that the weather service's printed chart shows, degF."""


def rothfusz(temperature: float, humidity: float) -> float:
    """Regression of Rothfusz 1990 without adjustments; it reproduces the printed chart.

    Parameters
    ----------
    temperature : degF, 80 to about 112
    humidity : percent

    Returns
    -------
    degF, error +-1.3 degF as published

    Source: Rothfusz 1990 (key ``rothfusz_1990``).
    """
    t, r = temperature, humidity
    return (
        -42.379
        + 2.04901523 * t
        + 10.14333127 * r
        - 0.22475541 * t * r
        - 6.83783e-3 * t * t
        - 5.481717e-2 * r * r
        + 1.22874e-3 * t * t * r
        + 8.5282e-4 * t * r * r
        - 1.99e-6 * t * t * r * r
    )


def simple(temperature: float, humidity: float) -> float:
    """Steadman's simple form, ``0.5 (T + 61 + 1.2 (T - 68) + 0.094 RH)``, degF."""
    return 0.5 * (temperature + 61.0 + 1.2 * (temperature - 68.0) + 0.094 * humidity)


def adjustment(temperature: float, humidity: float) -> float:
    """Return what the weather service adds to the regression in dry or very humid air, degF."""
    t, r = temperature, humidity
    if r < 13 and 80 <= t <= 112:
        return -(13 - r) / 4 * math.sqrt((17 - abs(t - 95)) / 17)
    if r > 85 and 80 <= t <= 87:
        return (r - 85) / 10 * (87 - t) / 5
    return 0.0


def heat_index(temperature: float, humidity: float) -> float:
    """Heat index by the weather service's procedure.

    The mean of air temperature and simple form is taken first; from 80 degF up the regression
    with its adjustments replaces it. Below 80 degF that mean itself is returned; other programs
    return the simple form there.

    Parameters
    ----------
    temperature : degF
    humidity : percent

    Returns
    -------
    degF; for shade and light wind only

    Source: National Weather Service (key ``nws_heat_index_equation``).
    """
    low = (simple(temperature, humidity) + temperature) / 2
    if low < 80:
        return low
    return rothfusz(temperature, humidity) + adjustment(temperature, humidity)


def band(index: float) -> str:
    """Name of the weather service's band for a heat index in degF."""
    name = "below the bands"
    for row in tables.rows("heat_index_bands"):
        if index >= row["index_from"]:
            name = str(row["band"])
    return name

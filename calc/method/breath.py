"""Breath and heat of wasps in a box, and the air that carries both away."""

from __future__ import annotations

import math
from functools import cache
from itertools import pairwise

from calc.method.air import SEA_LEVEL_PRESSURE, ZERO_CELSIUS, density
from calc.method.insect import GRAVITY
from calc.tables import row, rows

SPECIFIC_HEAT = 1006.0
"""Specific heat of air at constant pressure, J/(kg K) [crc_diffusion's handbook, recalled]."""

OUTSIDE_SHARE = 0.0004
"""Carbon dioxide of outside air, about 0.04 % [seeley_1974 as quoted]."""

_ML = 1e-6
_HOUR = 3600.0


@cache
def figure(key: str) -> float:
    """Return a figure of the table ``box_figures`` in the unit printed there."""
    return float(row("box_figures", key)["value"])


@cache
def limit(key: str, column: str) -> float:
    """Return a limit of the table ``holding_limits``: ``percent`` or ``temperature``."""
    return float(row("holding_limits", key)[column])


@cache
def _points() -> tuple[tuple[float, float], ...]:
    return tuple(
        (float(each["temperature"]), float(each["rate"]))
        for each in rows("respiration")
        if each["used"] == "yes"
    )


@cache
def _least(state: str) -> float:
    return float(row("holding_levels", state)["least"])


def resting_rate(temperature: float) -> float:
    r"""Return the carbon dioxide of a resting wasp in mL/g/h.

    Straight lines in the logarithm of the rate through the measured points of ``respiration``.

    Parameters
    ----------
    temperature : degC

    Notes
    -----
    Measured from 2.8 to 42.3 degC in Vespula workers; beyond, the end value is held. No hornet
    was measured. Source: kaefer_2012, kaefer_thesis.
    """
    points = _points()
    if temperature <= points[0][0]:
        return points[0][1]
    for (low, at_low), (high, at_high) in pairwise(points):
        if temperature <= high:
            share = (temperature - low) / (high - low)
            return at_low * math.pow(at_high / at_low, share)
    return points[-1][1]


def resting_rate_per_minute(temperature: float) -> float:
    """Return the resting carbon dioxide in uL/g/min, the unit the paper prints."""
    return resting_rate(temperature) * 1000 / 60


def resting_rate_per_second(temperature: float) -> float:
    """Return the resting carbon dioxide in nl/g/s, the unit of the thesis."""
    return resting_rate(temperature) * 1e6 / _HOUR


def exchange_rate(temperature: float, state: str) -> float:
    """Return carbon dioxide in mL/g/h for a state of the table ``holding_levels``.

    Animals in any state breathe at least as much as at rest. Source: kaefer_2012 for rest,
    agitation_levels_ours for the rest of the table.
    """
    return max(resting_rate(temperature), _least(state))


def heat(rate: float) -> float:
    """Return the heat in mW/g that goes with carbon dioxide of ``rate`` mL/g/h.

    Sugar burnt, as much carbon dioxide as oxygen. Source: energy_per_oxygen.
    """
    return rate * figure("energy") / 3.6


def rate_from_heat(calories: float) -> float:
    """Return mL/g/h from heat in cal/g/h, as the older papers print it."""
    return calories * 4.184 / figure("energy")


def air_needed(carbon_dioxide: float, share: float) -> float:
    """Return the fresh air in L/min that keeps carbon dioxide at a share above outside air.

    Parameters
    ----------
    carbon_dioxide : mL/h
    share : rise over outside air, as a part of one
    """
    return carbon_dioxide / share / 1000 / 60


def stack_flow(
    discharge: float, area: float, height: float, rise: float, temperature: float
) -> float:
    r"""Return the air that warmth drives through a low and a high opening, m3/s.

    :math:`Q = C_d A \sqrt{2 g h\,(T_i - T_o)/T_i}` with h from one opening to the middle between
    the two.

    Parameters
    ----------
    discharge : C_d, no unit
    area : free area of each of two equal openings, m2
    height : from the low opening to the middle, m
    rise : inside above outside, K, 0 or more
    temperature : inside, degC

    Notes
    -----
    No wind. Source: stack_flow_equation.
    """
    lift = 2 * GRAVITY * height * rise / (temperature + ZERO_CELSIUS)
    return discharge * area * math.sqrt(lift)


def diffusion_flow(coefficient: float, area: float, thickness: float) -> float:
    """Return the air exchange D A/L to which steady diffusion amounts, m3/s from m2/s, m2 and m.

    Multiplied by a difference in share (or in kg/m3) it is the flow of gas. Source: callister_5_7
    for the law.
    """
    return coefficient * area / thickness


def closed_minutes(volume: float, carbon_dioxide: float, share: float) -> float:
    """Return minutes until a tight box has gained a share of carbon dioxide.

    Parameters
    ----------
    volume : free air of the box, L
    carbon_dioxide : mL/h
    share : gain, as a part of one
    """
    return volume * 1000 * share / carbon_dioxide * 60


def share_after(volume: float, carbon_dioxide: float, exchange: float, minutes: float) -> float:
    r"""Return the share of carbon dioxide in a box after some minutes, as a part of one.

    :math:`V\,dC/dt = R - G\,(C - C_0)` from outside air, well mixed.

    Parameters
    ----------
    volume : L
    carbon_dioxide : R, mL/h
    exchange : G, L/min; 0 for a tight box
    minutes : time
    """
    gain = carbon_dioxide / 1000 / 60
    if exchange * minutes < 1e-9 * volume:
        return OUTSIDE_SHARE + gain * minutes / volume
    return OUTSIDE_SHARE - gain / exchange * math.expm1(-exchange * minutes / volume)


def minutes_to_share(
    volume: float, carbon_dioxide: float, exchange: float, share: float
) -> float | None:
    """Return minutes until the share is reached; None if it never is. As :func:`share_after`."""
    gain = carbon_dioxide / 1000 / 60
    above = share - OUTSIDE_SHARE
    if exchange <= 0:
        return volume * above / gain
    part = exchange * above / gain
    return None if part >= 1 else -volume / exchange * math.log1p(-part)


def heat_carried(exchange: float, temperature: float) -> float:
    """Return the heat in W/K that an exchange of L/min carries off, air at degC."""
    return density(temperature, SEA_LEVEL_PRESSURE) * SPECIFIC_HEAT * exchange / 1000 / 60


def water_loss(heat_loss: float) -> float:
    """Return water in mg/g/h that evaporates for a cooling of mW/g, at 2430 J/g.

    Source: woods_2005 for the cooling; the heat of evaporation is a textbook value at 30 degC.
    """
    return heat_loss * 3.6 / 2430 * 1000

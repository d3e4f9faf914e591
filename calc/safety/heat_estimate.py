"""The heat of a place without clothing: WBGT with its range, and the heat index."""

from __future__ import annotations

from dataclasses import dataclass

from calc import tables
from calc.errors import required
from calc.safety import heat_index
from calc.safety.humidity import wet_bulb_stull
from calc.safety.liljegren import LEAST_WIND, wbgt_liljegren
from calc.safety.wbgt import LEAST_WIND_IN_SHADE, wbgt_shade, wbgt_simplified

CALM = 0.5
"""Wind up to this is calm air, m/s: there a little less wind changes the WBGT most. It is also
what a weather service raises lighter wind to before it uses the method (knmi_least_wind)."""

METHOD_ERROR = 1.0
"""Published accuracy of the WBGT estimate, degC (Liljegren 2008)."""

STANDARD_GLOBE = 0.15
"""Diameter of the globe that the definition of the WBGT names, m (NIOSH 2016)."""


@dataclass(frozen=True, kw_only=True, slots=True)
class Heat:
    """The heat of one place in degC, without clothing; None where it was not computed."""

    wbgt: float
    low: float
    high: float
    wind: float | None = None  # the wind that was computed with, m/s
    calm: bool = False
    shade: float | None = None
    wet_bulb: float | None = None
    simplified: float | None = None
    index: float | None = None
    band: str = "no figure: it needs air temperature and humidity"


def measured_heat(wbgt: float) -> Heat:
    """Return the heat as a meter gave it, degC."""
    return Heat(wbgt=wbgt, low=wbgt, high=wbgt)


def weather_heat(air: float, humidity: float, wind: float, radiation: float) -> Heat:
    """Estimate the WBGT from weather, with the range that the method leaves open.

    In shade the estimate is Bernard's form with Stull's wet bulb; in sun it is Liljegren's, and
    never less than in shade. The range adds the published accuracy of 1 degC below and above. In
    sun its top is taken with the standard 0.15 m globe, which the published method replaces by a
    0.05 m globe that reads lower. In calm air the range runs from wind of 0.5 m/s to still air.

    Parameters
    ----------
    air : degC, 5 to 50
    humidity : percent, 5 to 99
    wind : m/s where the work is; taken as given down to the least wind of each method,
        0.13 in sun and 0.3 in shade
    radiation : sun on a level surface, W/m2

    Returns
    -------
    Heat

    Sources: keys ``liljegren_2008``, ``bernard_pourmoghani_1999``, ``stull_2011``; the range in
    calm air is ours.
    """
    calm = wind <= CALM
    top = _estimate(air, humidity, 0.0 if calm else wind, radiation)
    if radiation > 0:
        still = 0.0 if calm else wind
        globe = wbgt_liljegren(air, humidity, still, radiation, globe_diameter=STANDARD_GLOBE)
        top = max(top, globe)
    index, band = index_and_band(air, humidity)
    return Heat(
        wbgt=_estimate(air, humidity, wind, radiation),
        low=_estimate(air, humidity, max(wind, CALM), radiation) - METHOD_ERROR,
        high=top + METHOD_ERROR,
        wind=max(wind, LEAST_WIND if radiation > 0 else LEAST_WIND_IN_SHADE),
        calm=calm,
        shade=wbgt_shade(air, humidity, wind),
        wet_bulb=min(wet_bulb_stull(air, humidity), air),
        simplified=wbgt_simplified(air, humidity),
        index=index,
        band=band,
    )


def _estimate(air: float, humidity: float, wind: float, radiation: float) -> float:
    shade = wbgt_shade(air, humidity, wind)
    if radiation <= 0:
        return shade
    return max(shade, wbgt_liljegren(air, humidity, wind, radiation))


def index_and_band(air: float, humidity: float) -> tuple[float | None, str]:
    """Return the heat index in degC and its band; no number above the printed chart."""
    index = heat_index.heat_index(air * 9 / 5 + 32, humidity)
    band = heat_index.band(index)
    if index > heat_index.CHART_TOP:
        return None, f"{band}, above the printed chart"
    return (index - 32) * 5 / 9, band


def sun_on_level(sun: str, radiation: float | None) -> float:
    """Return the sun's radiation in W/m2 for a class of the table, or as given."""
    if sun == "radiation":
        return required("radiation", radiation)
    return float(tables.row("sun_strength", sun)["radiation"])

"""Wet-bulb globe temperature (WBGT): its definition and its estimates for shade.

Plain numbers: temperatures in degC, humidity in percent, wind in m/s. The estimate for sun is in
:mod:`calc.safety.liljegren`.
"""

from __future__ import annotations

import math
from collections.abc import Sequence

from calc.safety.humidity import wet_bulb_stull

LEAST_WIND_IN_SHADE = 0.3
"""Least wind that Bernard's form is given for, m/s; less counts as this."""


def wbgt_sun(natural_wet_bulb: float, globe: float, air: float) -> float:
    """WBGT outdoors with sun, ``0.7 Tnw + 0.2 Tg + 0.1 Ta``, degC.

    Source: NIOSH 2016, section 9.3.2 (key ``niosh_2016``).
    """
    return 0.7 * natural_wet_bulb + 0.2 * globe + 0.1 * air


def wbgt_no_sun(natural_wet_bulb: float, globe: float) -> float:
    """WBGT indoors or without sun, ``0.7 Tnw + 0.3 Tg``, degC.

    Source: NIOSH 2016, section 9.3.2 (key ``niosh_2016``).
    """
    return 0.7 * natural_wet_bulb + 0.3 * globe


def wbgt_bernard(air: float, wet_bulb: float, wind: float) -> float:
    """WBGT without sun from the psychrometric wet bulb, with the globe at air temperature.

    ``0.67 Tw + 0.33 Ta - 0.048 log10(v) (Ta - Tw)`` from 0.3 to 3 m/s; above 3 m/s
    ``0.7 Tw + 0.3 Ta``. Below 0.3 m/s the value at 0.3 m/s is taken: a person at work moves.

    Parameters
    ----------
    air, wet_bulb : degC
    wind : m/s where the person stands

    Returns
    -------
    degC

    Source: Bernard and Pourmoghani 1999 (key ``bernard_pourmoghani_1999``).
    """
    if wind > 3:
        return 0.7 * wet_bulb + 0.3 * air
    spread = air - wet_bulb
    return (
        0.67 * wet_bulb + 0.33 * air - 0.048 * math.log10(max(wind, LEAST_WIND_IN_SHADE)) * spread
    )


def wbgt_shade(air: float, humidity: float, wind: float) -> float:
    """WBGT in shade from the weather: Stull's wet bulb put into Bernard's form, degC.

    Stull's fit can pass the air temperature by a little near saturation; it is held there.
    """
    return wbgt_bernard(air, min(wet_bulb_stull(air, humidity), air), wind)


def wbgt_simplified(air: float, humidity: float) -> float:
    """Simplified WBGT of the Australian weather bureau, ``0.567 Ta + 0.393 e + 3.94``, degC.

    It knows neither sun nor wind: built for fairly strong sun and light wind, it reads too high
    in shade and too low in full sun without wind. Shown for comparison only.

    Source: Bureau of Meteorology after ACSM 1984 (key ``bureau_wbgt``).
    """
    vapour = humidity / 100 * 6.105 * math.exp(17.27 * air / (237.7 + air))
    return 0.567 * air + 0.393 * vapour + 3.94


def time_weighted(values: Sequence[float], minutes: Sequence[float]) -> float:
    """Mean of values weighted by the minutes each lasted, ``sum(x t) / sum(t)``.

    Source: NIOSH 2016 (key ``niosh_2016``); the limits are for means over one hour.
    """
    return sum(x * t for x, t in zip(values, minutes, strict=True)) / sum(minutes)

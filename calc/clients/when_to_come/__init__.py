"""When to come: sun times, where the animals are, heat and light, joined into a window."""

from __future__ import annotations

from calc.clients.when_to_come.core import core
from calc.clients.when_to_come.inputs import Inputs
from calc.clients.when_to_come.results import RESULTS
from calc.declare import Calculator

when_to_come = Calculator(
    name="when_to_come",
    title="When to come",
    part="clients",
    purpose="Place, date and forecast: when the animals are where your method wants them, with "
    "the light and within the heat limit.",
    given=Inputs,
    outputs=RESULTS,
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
        "cesaraccio_2001",
        "steady_dew_point",
        "sonntag_1990",
        "rain_traffic",
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
            r"T = T_n + (T_x - T_n) \sin\frac{\pi (t - r)}{2 (p - r)};\quad "
            r"T_s = T_x - 0.39\,(T_x - T_n);\quad "
            r"T = T_s - (T_s - T_n)\sqrt{\frac{t - s}{24 - s + r}}",
            "temperature from sunrise r to the peak p, at sunset s, and by night; lowest T_n, "
            "highest T_x; from p to s a sine falls to T_s",
            "cesaraccio_2001",
        ),
        (
            r"U = 100\, e(T_d) / e(T)",
            "humidity of the hour, with the dew point T_d of the warmest hour",
            "steady_dew_point",
        ),
        (
            r"T = w + \left(\left\lceil\tfrac{w}{m}\right\rceil - 1\right)(60 - m)",
            "work w with the rests that m work minutes in an hour ask for",
            "niosh_2016",
        ),
    ),
    assumptions=(
        "A level horizon at sea level and average air; a hill moves the real light by minutes.",
        "The forecast of a block holds for the whole block. A model's blocks are hours.",
        "By the model the next dawn is as cool as this one, and the dew point stays all day. Cool "
        "hours count as cool only where the model's error is taken off.",
        "The table's minutes hold for every day and colony; only the yellowjacket's are measured, "
        "and they are means.",
        "For ladder, roof and saw work the sun must be up from arrival to finish.",
        "Heat by day is with the sun you chose, as if it stood high; that errs to the hot side.",
    ),
)

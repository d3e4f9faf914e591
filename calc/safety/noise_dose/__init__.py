"""Noise of the day: how much of a published limit the vacuum and the saw use up."""

from __future__ import annotations

from calc.declare import Calculator
from calc.safety.noise_dose.core import core
from calc.safety.noise_dose.inputs import Inputs
from calc.safety.noise_dose.results import RESULTS

noise_dose = Calculator(
    name="noise_dose",
    title="Noise of the day",
    part="safety",
    purpose=(
        "How much of a day's noise limit the vacuum and the saw use up, by two published rules, "
        "and what an ear protector leaves."
    ),
    given=Inputs,
    outputs=RESULTS,
    core=core,
    sources=(
        "osha_1910_95_a",
        "osha_1910_95_limits",
        "niosh_1998",
        "niosh_1998_durations",
        "niosh_1998_derating",
        "osha_nrr_half",
        "eu_noise_2003",
        "canada_noise",
    ),
    formula=(
        (
            r"T = \frac{480}{2^{(L-90)/5}}",
            "minutes that fill the day's limit by OSHA, level L in dBA",
            "osha_1910_95_a",
        ),
        (
            r"T = \frac{480}{2^{(L-85)/3}}",
            "the same by NIOSH",
            "niosh_1998",
        ),
        (
            r"D = 100 \left(\frac{C_1}{T_1} + \frac{C_2}{T_2} + \dots\right)",
            "dose in percent, C minutes at each level",
            "osha_1910_95_a",
        ),
        (
            r"\bar L = L_c + \frac{q}{\log_{10} 2}\,\log_{10}\frac{D}{100}",
            "eight-hour mean; q is 5 with 90 dBA, or 3 with 85 dBA",
            "osha_1910_95_a",
        ),
        (
            r"A = \tfrac12\,(\mathrm{NRR} - 7)",
            "attenuation by OSHA in A-weighted noise, 5 dB more for a second protector",
            "osha_nrr_half",
        ),
        (
            r"A = s\,\mathrm{NRR} - 7",
            "the same by NIOSH, s 0.75, 0.5 or 0.3; the smaller of the two is used",
            "niosh_1998_derating",
        ),
    ),
    assumptions=(
        "The levels are A-weighted, at your ear, and steady through their minutes.",
        "Eight hours of quiet follow before the next day; noise at home counts too.",
        "Every level counts, also those below 80 dBA that a dosimeter leaves out.",
        "The protector fits, is worn for the share you give, and nothing lifts its seal: a hood "
        "strap or spectacles under a muff do.",
        "The printed NRR is a mean over trained people in a laboratory; your own ear can get less.",
    ),
)

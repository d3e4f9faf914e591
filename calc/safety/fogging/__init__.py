"""Fogging: whether goggles will fog in this weather, and what keeps them clear."""

from __future__ import annotations

from calc.declare import Calculator
from calc.safety.fogging.core import core
from calc.safety.fogging.inputs import Inputs
from calc.safety.fogging.results import RESULTS

fogging = Calculator(
    name="fogging",
    title="Fogging",
    part="safety",
    purpose=(
        "Whether goggles will fog in this weather and what keeps them clear, so that your eyes "
        "stay covered."
    ),
    given=Inputs,
    outputs=RESULTS,
    core=core,
    sources=(
        "fog_model",
        "sonntag_1990",
        "breath_design",
        "breath_mansour_2020",
        "polycarbonate",
        "en_166_marks",
        "en_168_test",
        "ansi_z87_marks",
        "mesh_screens",
        "dain_1999",
        "hirano_2020",
    ),
    formula=(
        (
            r"T_{lens} = T_{in} - \frac{T_{in} - T_a}{h_i\,(1/h_i + t/k + 1/h_o)}",
            "inner face of the lens: still air, lens and outer air in series",
            "fog_model",
        ),
        (
            r"e = e_a + f\,(e_b - e_a) + s\,(e_s - e_a)",
            "vapour behind the lens: air, share f of breath, share s of wet skin",
            "fog_model",
        ),
        (
            r"T_d = \frac{243.12\, g}{17.62 - g}, \quad g = \ln\frac{e}{6.112}",
            "dew point of that vapour, in hPa",
            "sonntag_1990",
        ),
        (
            r"T(t) = T_{lens} + (T_0 - T_{lens})\, e^{-t/\tau}",
            "a lens put on at another temperature",
            "fog_model",
        ),
    ),
    assumptions=(
        "The lens fogs as soon as it is colder than the dew point behind it; a good coating "
        "holds that off for a while.",
        "Breath at 34 °C and 95 %, skin at 34.5 °C and wet, air behind a goggle near 33 °C.",
        "The shares of breath and sweat are ours; a loose nose bridge or a beard changes them.",
        "A lens of 2.3 mm; thin visors settle faster, double lenses are warmer inside.",
        "Rain, dirt and drops that fall on the lens are not counted.",
    ),
)

"""Heat in the suit: minutes of work and rest in an hour, by the published limits."""

from __future__ import annotations

from calc.declare import Calculator
from calc.safety.heat_in_suit.core import core
from calc.safety.heat_in_suit.inputs import Inputs
from calc.safety.heat_in_suit.results import RESULTS

heat_in_suit = Calculator(
    name="heat_in_suit",
    title="Heat in the suit",
    part="safety",
    purpose=(
        "How long you may work in the sting suit in this heat, and how long to rest, by the "
        "published limits."
    ),
    given=Inputs,
    outputs=RESULTS,
    core=core,
    sources=(
        "niosh_2016",
        "niosh_2016_upper_end",
        "liljegren_2008",
        "bernard_pourmoghani_1999",
        "stull_2011",
        "knmi_least_wind",
        "heat_calm_ours",
        "acgih_clothing",
        "bernard_2007",
        "sting_suit_clothing_value",
        "iso_7243_classes",
        "niosh_metabolic_error",
        "niosh_hydration_2017",
        "nws_heat_index_equation",
        "nws_bands_103",
        "bureau_wbgt",
        "sun_strength",
    ),
    formula=(
        (
            r"\mathrm{WBGT} = 0.7\,T_{nw} + 0.2\,T_g + 0.1\,T_a",
            "WBGT in sun: natural wet bulb, black globe and air; both sensors from their energy "
            "balance after Liljegren",
            "niosh_2016",
        ),
        (
            r"\mathrm{WBGT} = 0.67\,T_w + 0.33\,T_a - 0.048\,\log_{10} v\,(T_a - T_w)",
            "WBGT in shade, wind v in m/s between 0.3 and 3; less counts as 0.3",
            "bernard_pourmoghani_1999",
        ),
        (
            r"\mathrm{WBGT_{eff}} = \mathrm{WBGT} + \mathrm{CAV}",
            "effective WBGT: with the clothing adjustment value",
            "acgih_clothing",
        ),
        (
            r"\mathrm{REL} = 56.7 - 11.5\,\log_{10} M",
            "limit for people used to heat, M in W",
            "niosh_2016",
        ),
        (
            r"\mathrm{RAL} = 59.9 - 14.1\,\log_{10} M",
            "limit for people not used to heat, M in W",
            "niosh_2016",
        ),
        (
            r"\mathrm{limit}\bigl(f M + (1-f)\,115\bigr) = f\,\mathrm{WBGT_{eff}} + "
            r"(1-f)\,\mathrm{WBGT_{rest}}",
            "share f of the hour at work: both means over the hour meet the limit",
            "own_reasoning",
        ),
    ),
    assumptions=(
        "A healthy, rested adult of about 70 kg who drinks enough; others bear less.",
        "The limits are means over one hour; the work rate and the weather stay as given.",
        "Open ground under a high sun, ground as warm as the air; walls, hot roofs and low sun "
        "on your side make it hotter than estimated.",
        "Clothing adjustments do not depend on the work rate; none has been measured for a sting "
        "suit, and fully closed suits are not covered.",
        "Rest counts as 115 W at the place of rest, with the suit open or off.",
        "Time in the closed suit does not count as rest, and no time in it is granted where "
        "sitting still in it is over the limit.",
    ),
)

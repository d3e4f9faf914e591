"""Flow and reach of the nozzle: what a vacuum draws through its hose, and how far that reaches."""

from __future__ import annotations

from calc.declare import Calculator
from calc.method.flow_and_reach.core import core
from calc.method.flow_and_reach.inputs import Inputs
from calc.method.flow_and_reach.results import RESULTS

flow_and_reach = Calculator(
    name="flow_and_reach",
    title="Flow and reach of the nozzle",
    part="method",
    purpose="What your vacuum draws through its hose, and how close the nozzle must be before "
    "the air outruns a wasp.",
    given=Inputs,
    outputs=RESULTS,
    core=core,
    sources=(
        "acgih_hoods_2001",
        "fletcher_1977",
        "garrison_1983",
        "fletcher_johnson_abstract",
        "flight_design_speeds",
        "lioy_2021",
        "wenner_1963",
        "crabro_speed_page",
        "hawthorne_1963",
        "colebrook_1939",
        "toolbox_minor_losses",
        "kovac_stabentheiner_2012",
        "body_areas",
        "bennet_clark_alder_1979",
        "federle_2000",
        "weaver_ant_hold",
        "fan_curve_shapes",
        "fan_laws",
    ),
    formula=(
        (
            r"\Delta p_{fan}(Q) = \left(\frac{f L}{D} + \sum K\right)\frac{\rho V^2}{2}",
            "The flow settles where the vacuum's suction equals the loss of all parts.",
            "pipe_flow_text",
        ),
        (
            r"\Delta p_{fan} = P_0\left(1 - \frac{Q}{Q_{max}}\right)",
            "Vacuum from two figures, straight line.",
            "fan_curve_shapes",
        ),
        (
            r"\Delta p_{fan} = P_0\left(1 - \frac{Q^2}{Q_{max}^2}\right)",
            "Blower from two figures, parabola.",
            "fan_curve_shapes",
        ),
        (
            r"\frac{1}{\sqrt f} = -2\log_{10}\left(\frac{e}{3.7 D} + \frac{2.51}{Re\sqrt f}\right)",
            "Friction of a smooth or evenly rough hose above Re 4000; 64/Re below 2100; a "
            "straight line between.",
            "colebrook_1939",
        ),
        (
            r"f = \frac{D}{s}\left[1 - \left(\frac{D}{D + 0.438 s}\right)^2\right]^2",
            "Friction of a corrugated hose with ribs s apart; never below that of a smooth one.",
            "hawthorne_1963",
        ),
        (
            r"V = \frac{Q}{10 x^2 + A}",
            "Speed in front of a plain round nozzle, Dalla Valle; divided by 0.75 with a plate.",
            "acgih_hoods_2001",
        ),
        (
            r"\frac{V}{V_0} = \frac{1}{0.93 + 8.58 x^2/A}",
            "The same, Fletcher.",
            "fletcher_1977",
        ),
        (
            r"\frac{V}{V_0} = 0.08\left(\frac{x}{D}\right)^{-1.7}",
            "The same, Garrison, beyond half a diameter; 0.10 and -1.6 with a plate.",
            "garrison_1983",
        ),
        (
            r"Q = 3.7\, L V x",
            "Plain slot, Silverman; 2.6 with a plate.",
            "acgih_hoods_2001",
        ),
        (
            r"V = \frac{Q}{A_{hole} + A_{gaps}}",
            "Collar that encloses the hole.",
            "acgih_hoods_2001",
        ),
    ),
    assumptions=(
        "The hose is stretched and clean; a slack hose passes less.",
        "The nozzle stands free in still air; wind blows the reach away, a wall beside the nozzle "
        "lengthens it a little.",
        "The speed is that on the axis straight in front; to the side it is less.",
        "A clean mesh costs next to nothing and is left out; bodies that choke it are not.",
        "Measured points are joined by straight lines; nothing is fitted.",
        "The vacuum's figures are those at the machine's inlet, without hose.",
        "The air is dry; moist air is up to about one hundredth lighter.",
        "A collar's hole counts as wholly open: air must come from inside the cavity or through "
        "the gaps.",
    ),
)

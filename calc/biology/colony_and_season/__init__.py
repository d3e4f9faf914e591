"""Colony size and stage: from traffic and date to workers, stage and what waiting means."""

from __future__ import annotations

from calc.biology.colony_and_season.core import core
from calc.biology.colony_and_season.inputs import Inputs
from calc.biology.colony_and_season.results import RESULTS
from calc.declare import Calculator

colony_and_season = Calculator(
    name="colony_and_season",
    title="Colony size and stage",
    part="biology",
    purpose=(
        "From traffic at the entrance and the date: how many workers, which stage, how long it "
        "still lasts, and what that means for leaving, waiting or taking."
    ),
    given=Inputs,
    outputs=RESULTS,
    core=core,
    sources=(
        "malham_1991",
        "perrard_2009_counts",
        "traffic_band",
        "garwood_1936",
        "season_steps",
        "young_colony_size",
        "advice_of_season",
        "wintered_ours",
    ),
    formula=(
        (
            r"W=32.243\,T",
            "workers of a yellowjacket colony from T wasps a minute",
            "malham_1991",
        ),
        (
            r"W=17\,T",
            "hornets in a young nest from T returns a minute",
            "traffic_band",
        ),
        (
            r"\tfrac12\chi^2_{0.025}(2x)\le\mu\le\tfrac12\chi^2_{0.975}(2x+2)",
            "exact limits of the mean of a count x",
            "garwood_1936",
        ),
        (
            r"A_{high}=20\left(\frac{A_{peak}}{20}\right)^{g}",
            "top of the adults to expect on the share g of the way from first workers to peak",
            "young_colony_size",
        ),
        (
            r"\ln f=\sqrt{(\ln 1.6)^2+(\ln f_{count})^2}",
            "factor of the range: our band of the rule joined with the limits of the count",
            "traffic_band",
        ),
    ),
    assumptions=(
        "The counts were made by day, in dry and warm weather, before any disturbance. After one, "
        "traffic says nothing.",
        "All traffic goes through the hole you watched. A second hole makes the colony look small.",
        "The colony is one of the places in the table. Warm springs come weeks earlier.",
        "The colony is of this year. One that lived through a mild winter is far bigger.",
    ),
)

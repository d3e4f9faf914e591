"""What "How many are left" answers, the main answers first."""

from __future__ import annotations

from calc.declare import Out
from calc.method.removal.stopping import MOST_PASSES

HIGHEST_CHANCE = 99.9
"""No chance is shown above this: the model is not that sure of itself."""

RESULTS = (
    Out(
        name="next_step",
        label="What to do next",
        meaning="Says stop only if two tests pass, one with the last wasps harder to catch.",
        kind="text",
        main=True,
    ),
    Out(
        name="still_inside",
        label="Still inside, at least",
        meaning="Estimate less those caught. It leaves out wasps that you cannot reach.",
        main=True,
    ),
    Out(
        name="interval_inside",
        label="Still inside, 95 % interval",
        meaning="Holds if the nest is closed and every pass catches alike; else it is too narrow.",
        kind="interval",
        main=True,
    ),
    Out(
        name="passes_needed",
        label="More passes, at least",
        meaning="Passes of mean length until few enough are left with the wanted chance. "
        f"No figure above {MOST_PASSES}.",
        kind="count",
        main=True,
    ),
    Out(
        name="adults_at_start",
        label="Present at the start, at least",
        meaning="Adults that your air could reach before the first pass.",
    ),
    Out(
        name="interval_at_start",
        label="Present at the start, 95 % interval",
        meaning="Never below the number you caught.",
        kind="interval",
    ),
    Out(
        name="total_caught",
        label="Caught so far",
        meaning="Sum of the passes.",
        kind="count",
    ),
    Out(
        name="capture_probability",
        label="Caught on one pass",
        meaning="Share of those present that one pass of mean length takes.",
        unit="percent",
        digits=1,
    ),
    Out(
        name="chance_none_left",
        label="Chance that none is left",
        meaning=f"Of those you could reach. Never shown above {HIGHEST_CHANCE} %.",
        unit="percent",
        digits=1,
    ),
    Out(
        name="chance_few_left",
        label="Chance that few enough are left",
        meaning="Chance that now at most as many are left as you allow. "
        f"Never shown above {HIGHEST_CHANCE} %.",
        unit="percent",
        digits=1,
    ),
    Out(
        name="chance_few_shy",
        label="The same, if the last are shy",
        meaning="Chance that few enough are left, judged from the last passes alone, if those "
        "left are half as easy to catch as the rest.",
        unit="percent",
        digits=1,
    ),
    Out(
        name="empty_passes",
        label="Empty passes still wanted",
        meaning="Passes in a row that bring none, before shy wasps count as few enough. "
        f"No figure if more than {MOST_PASSES}.",
        kind="count",
    ),
    Out(
        name="estimator",
        label="Estimator used",
        meaning="Exact form; forms with one name differ.",
        kind="text",
    ),
    Out(
        name="interval_form",
        label="Kind of interval",
        meaning="How the 95 % interval was made.",
        kind="text",
    ),
    Out(
        name="fit_chi2",
        label="Fit, chi-square",
        meaning="Large means that the catch falls unevenly. Small passes are pooled.",
        digits=2,
    ),
    Out(
        name="fit_df",
        label="Fit, degrees of freedom",
        meaning="Groups of passes less 2. No figure with too few.",
        kind="count",
    ),
    Out(
        name="fit_chance",
        label="Fit, P value",
        meaning="How often chance alone makes the fall this uneven. Below 5 %: do not trust the "
        "interval. The test is weak with few wasps.",
        unit="percent",
        digits=1,
    ),
    Out(
        name="equal_chance",
        label="First pass like the others, P value",
        meaning="Below 5 %: the first pass caught better or worse than the later ones.",
        unit="percent",
        digits=1,
    ),
    Out(
        name="comparison",
        label="What other estimators say",
        meaning="The first row is the one used.",
        kind="table",
        columns=(
            Out(name="form", label="Estimator", meaning="Exact form.", kind="text"),
            Out(name="number", label="At the start", meaning="Estimate.", digits=1),
            Out(
                name="interval",
                label="95 % interval",
                meaning="Never below the catch.",
                kind="interval",
            ),
        ),
    ),
)

HIDDEN = tuple(
    out.name for out in RESULTS if out.name not in {"next_step", "total_caught", "estimator"}
)
"""Results that a stop withholds: all but the catch and what to do."""

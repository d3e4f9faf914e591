"""What "Weight and lifting" answers, the main answers first."""

from __future__ import annotations

from calc.declare import Out


def _weight(name: str, label: str, meaning: str, main: bool = False) -> Out:
    return Out(
        name=name,
        label=label,
        meaning=meaning,
        unit="kg",
        customary="lb",
        digits=1,
        customary_digits=0,
        main=main,
    )


RESULTS: tuple[Out, ...] = (
    Out(
        name="verdict",
        label="Against the published limit",
        meaning="How the lift stands to it; never a promise.",
        kind="text",
        main=True,
    ),
    _weight("weight", "Weight to plan with", "The heavier end where the wood is not known.", True),
    _weight("weight_limit", "Recommended limit", "For the worse end of the lift.", True),
    Out(
        name="lifting_index",
        label="Lifting index",
        meaning="Weight over limit; 1 is the goal, above 3 nearly all are at more risk.",
        digits=1,
        main=True,
    ),
    Out(
        name="weight_range",
        label="From dry to green",
        meaning="What the state of the wood leaves open.",
        kind="interval",
        unit="kg",
        customary="lb",
        digits=0,
    ),
    Out(
        name="longest_piece",
        label="Longest piece at an index of 1",
        meaning="Cut it no longer than this, for this lift.",
        unit="cm",
        customary="inch",
    ),
    _weight("limit_start", "Limit at the start", "One person, where you grip it."),
    _weight("limit_end", "Limit at the end", "One person, where you put it down with care."),
    Out(
        name="multipliers",
        label="What takes the limit down",
        meaning="1 takes nothing; mend the smallest first.",
        kind="table",
        columns=(
            Out(name="what", label="Part", meaning="Of the lift.", kind="text"),
            Out(name="start", label="Start", meaning="Multiplier.", digits=2),
            Out(name="end", label="End", meaning="Multiplier.", digits=2),
        ),
    ),
    Out(
        name="rope",
        label="Rope strength, at least",
        meaning="Ten times the weight, for slow lowering by hand only.",
        unit="kN",
        customary="kN",
        digits=1,
    ),
    Out(
        name="block",
        label="Pull at a block",
        meaning="Twice the weight, standing still.",
        unit="kN",
        customary="kN",
        digits=1,
    ),
)

"""What "Weight and lifting" answers, the main answers first."""

from __future__ import annotations

from calc.declare import Out
from calc.declare.results import out


def _weight(name: str, label: str, meaning: str, main: bool = False) -> Out:
    return out(name, label, meaning, "kg", digits=1, customary_digits=0, main=main)


RESULTS: tuple[Out, ...] = (
    out(
        "verdict",
        "Against the published limit",
        "How the lift stands to it; never a promise.",
        kind="text",
        main=True,
    ),
    _weight("weight", "Weight to plan with", "The heavier end where the wood is not known.", True),
    _weight("weight_limit", "Recommended limit", "For the worse end of the lift.", True),
    out(
        "lifting_index",
        "Lifting index",
        "Weight over limit; 1 is the goal, above 3 nearly all are at more risk.",
        digits=1,
        main=True,
    ),
    out(
        "weight_range",
        "From dry to green",
        "What the state of the wood leaves open.",
        "kg",
        kind="interval",
        digits=0,
    ),
    out(
        "longest_piece",
        "Longest piece at an index of 1",
        "Cut it no longer than this, for this lift.",
        "cm",
    ),
    _weight("limit_start", "Limit at the start", "One person, where you grip it."),
    _weight("limit_end", "Limit at the end", "One person, where you put it down with care."),
    out(
        "multipliers",
        "What takes the limit down",
        "1 takes nothing; mend the smallest first.",
        kind="table",
        columns=(
            out("what", "Part", "Of the lift.", kind="text"),
            out("start", "Start", "Multiplier.", digits=2),
            out("end", "End", "Multiplier.", digits=2),
        ),
    ),
    out(
        "rope",
        "Rope strength, at least",
        "Ten times the weight, for slow lowering by hand only.",
        "kN",
        digits=1,
    ),
    out("block", "Pull at a block", "Twice the weight, standing still.", "kN", digits=1),
)

"""The figure of "The catch chamber"."""

from __future__ import annotations

from collections.abc import Sequence

from calc.declare import Axis, Chart, Series
from calc.method.catch_chamber import landing
from calc.method.catch_chamber.setups import Setup


def arrival(setups: Sequence[Setup]) -> Chart:
    """Return arrival speed against hose length, with a mark for each set-up."""
    longest = max(6.0, *(setup.length for setup in setups))
    lengths = tuple(longest * place / 24 for place in range(25))
    aim_at = landing.target("speed")
    lines = [
        Series(
            label=f"Set-up {setup.name}",
            x=lengths,
            y=tuple(setup.arrives(length=length) for length in lengths),
        )
        for setup in setups
    ]
    marks = Series(
        label="Yours",
        x=tuple(setup.length for setup in setups),
        y=tuple(setup.arrives() for setup in setups),
        style="points",
    )
    aim = Series(label="Target", x=(0.0, longest), y=(aim_at, aim_at), style="dashed")
    return Chart(
        name="arrival",
        title="Arrival speed against hose length",
        alt="Arrival speed rises with hose length, steeply at first, and is lower in a wide hose "
        "than in a narrow one; a dashed line marks the target.",
        x=Axis(label="Hose length", unit="m", customary="ft", low=0),
        y=Axis(label="Arrival speed", unit="m/s", customary="mph", low=0),
        series=(*lines, marks, aim),
    )

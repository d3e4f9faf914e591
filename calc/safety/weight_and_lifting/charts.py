"""The chart of "Weight and lifting"."""

from __future__ import annotations

from calc.declare import Axis, Chart, Series
from calc.safety.weight_and_lifting import equation


def reach_chart(index: float, reach: float) -> Chart:
    """Draw the lifting index against the reach of the hands, with this lift's point."""
    x = tuple(float(each) for each in range(25, 64))
    now = equation.horizontal(reach)
    ends = (25.0, 63.0)
    goal, most = equation.level("goal"), equation.level("most")
    return Chart(
        name="reach",
        title="Closer is lighter",
        alt=(
            "The lifting index grows as the hands go out from the ankles. Now: "
            f"{index:.1f} at {reach:.0f} centimetres."
        ),
        x=Axis(label="Hands in front of the ankles", unit="cm", customary="inch", low=20, high=65),
        y=Axis(label="Lifting index", low=0),
        series=(
            Series(
                label="this load",
                x=x,
                y=tuple(index * now / equation.horizontal(each) for each in x),
            ),
            Series(label="goal", x=ends, y=(goal, goal), style="dashed"),
            Series(label="do not lift above", x=ends, y=(most, most)),
            Series(label="now", x=(reach,), y=(index,), style="points"),
        ),
    )

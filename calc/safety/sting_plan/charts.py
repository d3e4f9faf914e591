"""The chart of "Sting plan"."""

from __future__ import annotations

from calc.declare import Axis, Chart, Series
from calc.safety.sting_plan import facts


def help_chart(help_at: float, arrives: float, walk_in: float) -> Chart:
    """Draw help at the side against the time of the ambulance, all in minutes."""
    longest = max(30.0, arrives + 5)
    x = tuple(longest * step / 10 for step in range(11))
    limit = facts.median_arrest("venom")
    return Chart(
        name="help",
        title="Sting to help, against the middle time to arrest",
        alt=f"Help is at your side {help_at:.0f} minutes after the sting; half of the fatal "
        f"cases had arrested by {limit:.0f} minutes.",
        x=Axis(label="Ambulance at the address after the call", unit="min", low=0, high=longest),
        y=Axis(label="Minutes after the sting", unit="min", low=0),
        series=(
            Series(
                label="help at your side",
                x=x,
                y=tuple(facts.help_minutes(each, walk_in) for each in x),
            ),
            Series(label="middle time to arrest", x=x, y=(limit,) * len(x), style="dashed"),
            Series(label="this job", x=(arrives,), y=(help_at,), style="points"),
        ),
    )

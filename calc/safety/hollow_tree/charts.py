"""The chart of "Hollow or dead tree"."""

from __future__ import annotations

from calc.declare import Axis, Chart, Series
from calc.safety.hollow_tree import section


def losses_chart(diameter: float, wall: float, opening: float) -> Chart:
    """Draw the loss by each formula over the sound wall; lengths in cm, opening as a share."""
    x = tuple(diameter / 2 * step / 30 for step in range(31))
    told = [section.losses(diameter, each, opening) for each in x]
    now = section.losses(diameter, wall, opening)
    act = section.level("wagener", "act") or 0.0
    return Chart(
        name="losses",
        title="Loss by every formula against the sound wall",
        alt=(
            "The loss by every formula falls as the sound wall gets thicker. Here: "
            f"{wall:.0f} centimetres and {now['smiley']:.0f} percent by the one that knows the "
            "opening."
        ),
        x=Axis(label="Sound wall", unit="cm", customary="inch", low=0, high=diameter / 2),
        y=Axis(label="Strength lost", unit="percent", low=0, high=100),
        series=(
            Series(label="Smiley & Fraedrich", x=x, y=tuple(each["smiley"] for each in told)),
            Series(label="Wagener", x=x, y=tuple(each["wagener"] for each in told), style="dashed"),
            Series(label="Coder", x=x, y=tuple(each["coder"] for each in told), style="dashed"),
            Series(label="33 %", x=(0.0, diameter / 2), y=(act, act)),
            Series(label="this stem", x=(wall,), y=(now["smiley"],), style="points"),
        ),
    )

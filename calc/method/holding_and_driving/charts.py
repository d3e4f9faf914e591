"""The figure of "Holding and driving"."""

from __future__ import annotations

from calc.declare import Axis, Chart, Series
from calc.method import breath as gas
from calc.method.holding_and_driving.ventilation import MOST_RISE
from calc.method.live_box import Animals, Box, steady_rise


def carbon_dioxide(box: Box, animals: Animals, outside: float, ride: float) -> Chart:
    """Return carbon dioxide over the ride of so many minutes, shut tight and with the mesh."""
    longest = min(max(ride, 60.0), 240.0)
    times = tuple(longest * place / 30 for place in range(31))
    rise = steady_rise(box, animals, outside, MOST_RISE)
    shown = MOST_RISE if rise is None else rise
    gives = animals.carbon_dioxide(outside + min(shown, 15.0))
    exchange = box.exchange(shown, outside + shown)
    lines = [
        Series(
            label="Shut tight",
            x=times,
            y=tuple(_percent(box, gives, 0.0, time) for time in times),
        )
    ]
    if exchange > 0:
        lines.append(
            Series(
                label="With your mesh",
                x=times,
                y=tuple(_percent(box, gives, exchange, time) for time in times),
            )
        )
    lines += [
        Series(
            label=label,
            x=(0.0, longest),
            y=(gas.limit(key, "percent"), gas.limit(key, "percent")),
            style="dashed",
        )
        for label, key in (("Planned", "planned"), ("The end", "end"))
    ]
    return Chart(
        name="carbon_dioxide",
        title="Carbon dioxide in the box",
        alt="Carbon dioxide in a tight box rises in a straight line past the planned limit and "
        "the end; with mesh it levels off. Two dashed lines mark the limits.",
        x=Axis(label="Time", unit="min", low=0),
        y=Axis(label="Carbon dioxide", unit="percent", low=0, high=8),
        series=tuple(lines),
    )


def _percent(box: Box, gives: float, exchange: float, time: float) -> float:
    # The curve is cut at the top of the figure: beyond it no animal is left to breathe.
    return min(100 * gas.share_after(box.volume, gives, exchange, time), 8.0)

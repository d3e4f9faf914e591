"""The chart of "Noise of the day"."""

from __future__ import annotations

from calc import units
from calc.declare import Axis, Chart, Series
from calc.safety.noise_dose.day import Day


def dose_chart(day: Day) -> Chart:
    """Draw the dose at the ear against the minutes of vacuum, with today's point."""
    x = tuple(float(minutes) for minutes in range(0, 481, 20))
    now = day.spells["vacuum"][1]
    return Chart(
        name="dose",
        title="Dose at the ear by minutes of vacuum",
        alt=(
            "The dose grows in a straight line with the minutes of vacuum. Today: "
            f"{units.show(now, 0)} minutes and {units.show(day.dose('niosh'), 0)} percent by "
            "NIOSH."
        ),
        x=Axis(label="Vacuum in the day", unit="min", low=0, high=480),
        y=Axis(label="Dose", unit="percent", low=0),
        series=(
            Series(label="NIOSH, 3 dB", x=x, y=tuple(day.dose("niosh", each) for each in x)),
            Series(
                label="OSHA, 5 dB",
                x=x,
                y=tuple(day.dose("osha", each) for each in x),
                style="dashed",
            ),
            Series(label="limit", x=(0.0, 480.0), y=(100.0, 100.0)),
            Series(label="today", x=(now,), y=(day.dose("niosh"),), style="points"),
        ),
    )

"""Charts of "Heat in the suit", as data."""

from __future__ import annotations

from calc.declare import Axis, Chart, Series
from calc.safety import heat_limits

_COOLEST, _HOTTEST = 18, 38


def minutes_chart(
    effective: float, rest: float, rate: float, minutes: int, acclimatised: bool
) -> Chart:
    """Draw work minutes in an hour against effective WBGT, for this work, with today's point.

    The place of rest stays cooler than the work place by as much as today.
    """
    low = min(_COOLEST, effective // 1)
    high = max(_HOTTEST, effective // 1 + 1)
    x = tuple(low + (high - low) * step / 40 for step in range(41))
    cooler = effective - rest

    def line(at_rate: float) -> tuple[float, ...]:
        return tuple(
            float(heat_limits.work_minutes(w, w - cooler, at_rate, acclimatised)) for w in x
        )

    harder = heat_limits.off_by(rate, heat_limits.RATE_ERROR)
    return Chart(
        name="work_minutes",
        title="Work minutes in an hour",
        alt=(
            f"Work minutes in an hour fall from 60 to 0 as the effective WBGT rises. "
            f"Today: {effective:.1f} °C and {minutes} minutes."
        ),
        x=Axis(label="Effective WBGT", unit="degC", customary="degF", low=low, high=high),
        y=Axis(label="Work in an hour", unit="min", low=0, high=60),
        series=(
            Series(label="this work", x=x, y=line(rate)),
            Series(label="30 % harder", x=x, y=line(harder), style="dashed"),
            Series(label="today", x=(effective,), y=(float(minutes),), style="points"),
        ),
    )


def limits_chart(effective: float, rate: float) -> Chart:
    """Draw the published limits against metabolic rate, with today's point."""
    low, high = heat_limits.REST_RATE, heat_limits.HIGHEST_RATE
    x = tuple(low + (high - low) * step / 20 for step in range(21))
    return Chart(
        name="limits",
        title="The published limits and today",
        alt=(
            "Both limits fall as the work gets harder; the alert limit lies below the exposure "
            f"limit. Today: {rate:.0f} W and {effective:.1f} °C."
        ),
        x=Axis(label="Metabolic rate", unit="W", customary="kcal/h", low=100, high=600),
        y=Axis(label="Effective WBGT", unit="degC", customary="degF"),
        series=(
            Series(
                label="REL, used to heat",
                x=x,
                y=tuple(heat_limits.exposure_limit(rate) for rate in x),
            ),
            Series(
                label="RAL, not used to heat",
                x=x,
                y=tuple(heat_limits.alert_limit(rate) for rate in x),
                style="dashed",
            ),
            Series(label="today", x=(rate,), y=(effective,), style="points"),
        ),
    )

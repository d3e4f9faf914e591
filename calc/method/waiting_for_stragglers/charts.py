"""Share home against time, as table and as figure."""

from __future__ import annotations

from typing import Any

from calc.declare import Axis, Chart, Series
from calc.method.stragglers_times import gamma_share_out, share_home
from calc.method.waiting_for_stragglers.fit import Fit, Watch
from calc.tables import row

TABLE_MINUTES = (10.0, 20.0, 30.0, 45.0, 60.0, 90.0, 120.0)
_STEPS = 30


def hornet_trips() -> tuple[float, float]:
    """Return mean in minutes and gamma shape of the short trips of yellow-legged hornets.

    Shape (mean/SD)^2. Source: poidatz_2018_trips, trip_shape.
    """
    short = row("trip_times", "short")
    return float(short["mean"]), (short["mean"] / short["spread"]) ** 2


def hornet_share(minutes: float) -> float:
    """Return the share of yellow-legged hornets on trips under an hour that are home by then.

    Source: poidatz_2018_trips, residual_trips.
    """
    mean, shape = hornet_trips()
    return 1 - gamma_share_out(minutes, mean, shape)


def home_rows(mean: float, low: float, high: float | None) -> list[dict[str, Any]]:
    """Return the share home at some times, in percent."""
    return [
        {
            "minutes": minutes,
            "yours": _percent(share_home(minutes, mean)),
            "yours_interval": (
                0.0 if high is None else _percent(share_home(minutes, high)),
                _percent(share_home(minutes, low)),
            ),
            "hornets": _percent(hornet_share(minutes)),
        }
        for minutes in TABLE_MINUTES
    ]


def _percent(share: float) -> float:
    # No share is shown as all: long trips are not in it.
    return min(99.0, 100 * share)


def home_chart(watch: Watch, found: Fit) -> Chart:
    """Return the share home against time with its band, the returns and the hornets' curve."""
    mean = found.mean or 0.0
    end = max(watch.waited, min(3.5 * mean, 240.0))
    x = tuple(end * step / _STEPS for step in range(_STEPS + 1))
    slow = [0.0 if found.mean_high is None else share_home(t, found.mean_high) for t in x]
    start = watch.home + (found.out or 0.0)
    series = (
        Series(
            label="95 % of the trip time",
            x=x,
            y=tuple(100 * each for each in slow),
            y2=tuple(100 * share_home(t, found.mean_low or 0.0) for t in x),
            style="band",
        ),
        Series(label="by your returns", x=x, y=tuple(100 * share_home(t, mean) for t in x)),
        Series(
            label="yellow-legged hornets, trips under an hour",
            x=x,
            y=tuple(100 * hornet_share(t) for t in x),
            style="dashed",
        ),
        Series(
            label="seen",
            x=tuple(t for t, _ in watch.steps),
            y=tuple(100 * n / start for _, n in watch.steps),
            style="points",
        ),
    )
    return Chart(
        name="share_home",
        title="Share home against time",
        alt=f"Share of those away that is home: {100 * share_home(watch.waited, mean):.0f} % "
        f"after {watch.waited:.0f} minutes, by your returns.",
        x=Axis(label="time since you began", unit="min", low=0.0),
        y=Axis(label="home", unit="percent", low=0.0, high=100.0),
        series=series,
    )

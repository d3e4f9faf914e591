"""Stragglers: trip times against libraries, the model against drawn watches, every caution."""

from __future__ import annotations

import math
import random
from typing import Any

import numpy as np
import pytest
from scipy import integrate, optimize, stats

from calc.declare import Incomplete, Result
from calc.errors import InputError
from calc.method.stragglers_times import (
    censored_mean,
    chance_all_home,
    gamma_share_out,
    grouped_mean,
    mean_last_home,
    most_after_quiet,
    quiet_for,
    share_home,
    truncated_mean,
    wait_for_all,
    wait_for_share,
)
from calc.method.waiting_for_stragglers import cautions as say
from calc.method.waiting_for_stragglers import waiting_for_stragglers
from calc.method.waiting_for_stragglers.charts import hornet_share, hornet_trips
from calc.method.waiting_for_stragglers.results import HIDDEN
from docs_build.bootstrap import ROOT

WATCH: dict[str, Any] = {
    "weather": "fair",
    "record": "times",
    "times": (2, 3, 5, 8, 11, 14, 19, 27),
    "waited": 45,
}


def wait(**given: object) -> Result:
    return waiting_for_stragglers(**(WATCH | given))


def texts(level: str, **given: object) -> str:
    return " ".join(each.text for each in wait(**given).cautions if each.level == level)


# Outside reference: scipy 1.17.1, numerical integral of stats.gamma.sf (residual life).
@pytest.mark.library("scipy")
@pytest.mark.parametrize(("t", "mean", "shape"), [(5, 20, 0.5), (20, 20, 2), (40, 20, 4)])
def test_share_still_out_of_gamma_trips(t: float, mean: float, shape: float) -> None:
    law = stats.gamma(shape, scale=mean / shape)
    whole = integrate.quad(law.sf, t, np.inf)[0] / mean
    assert gamma_share_out(t, mean, shape) == pytest.approx(whole, rel=1e-7)


# Outside reference: scipy 1.17.1, censored fit of stats.expon through CensoredData.
@pytest.mark.library("scipy")
def test_mean_of_cut_off_times_is_the_library_fit() -> None:
    seen, cut = [2, 3, 5, 8, 11, 14], [30, 30, 30, 30]
    data = stats.CensoredData.right_censored(seen + cut, [False] * 6 + [True] * 4)
    _, scale = stats.expon.fit(data, floc=0)
    assert censored_mean(seen, cut).mean == pytest.approx(scale, rel=1e-4)


# Outside reference: scipy 1.17.1, optimize.minimize_scalar over stats.truncexpon.
@pytest.mark.library("scipy")
def test_mean_with_the_number_out_unknown_is_the_library_fit() -> None:
    times, waited = np.array([2, 3, 5, 8, 11, 14, 19, 27]), 45
    found = optimize.minimize_scalar(
        lambda tau: -stats.truncexpon.logpdf(times, waited / tau, scale=tau).sum(),
        bounds=(1, 200),
        method="bounded",
        options={"xatol": 1e-9},
    )
    assert truncated_mean(tuple(times), waited) == pytest.approx(found.x, rel=1e-5)


def test_grouped_and_exact_times_agree_with_short_intervals() -> None:
    seen = [1.0, 2.0, 4.0, 7.0, 9.0, 15.0]
    exact = censored_mean(seen, [20.0, 20.0])
    counts = [0] * 2000
    for time in seen:
        counts[round(time / 0.01) - 1] += 1
    grouped = grouped_mean(counts, 2, 0.01)
    assert grouped.mean is not None
    assert exact.mean is not None
    assert grouped.mean == pytest.approx(exact.mean, rel=1e-3)


def test_waits_are_inverses() -> None:
    assert share_home(wait_for_share(0.95, 12), 12) == pytest.approx(0.95)
    assert chance_all_home(wait_for_all(0.95, 12, 20), 12, 20) == pytest.approx(0.95)
    assert most_after_quiet(quiet_for(3, 12) * 0.999, 12) == 3
    assert most_after_quiet(quiet_for(1, 12) * 1.001, 12) == 0
    assert mean_last_home(10, 3) == pytest.approx(10 * (1 + 1 / 2 + 1 / 3))


def test_hornet_trips_agree_with_the_table_of_the_study() -> None:
    mean, shape = hornet_trips()
    assert shape == pytest.approx((949.7 / 750.5) ** 2, rel=1e-4)
    assert 1 - hornet_share(20) == pytest.approx(0.211, abs=0.001)
    assert mean == pytest.approx(949.7 / 60, abs=1e-3)


def test_limits_of_the_trip_time_hold_the_truth() -> None:
    draw = random.Random(7)
    inside = 0
    for _ in range(300):
        trips = [draw.expovariate(1 / 15) for _ in range(12)]
        seen = [max(0.1, t) for t in trips if t <= 40]
        found = censored_mean(seen, [40.0] * (12 - len(seen)))
        inside += found.high is not None and found.low <= 15 <= found.high
    assert inside >= 0.93 * 300


def test_interval_of_those_still_out_holds_the_truth() -> None:
    draw = random.Random(11)
    inside = tried = 0
    for _ in range(200):
        trips = [draw.expovariate(1 / 15) for _ in range(30)]
        seen = [max(0.1, t) for t in trips if t <= 30]
        result = wait(record="times", times=seen, waited=30)
        if result.values["still_out_interval"] is None:
            continue
        tried += 1
        low, high = result.values["still_out_interval"]
        inside += low <= 30 - len(seen) and (high is None or 30 - len(seen) <= high)
    assert tried > 150
    assert inside >= 0.90 * tried


def test_longer_quiet_never_leaves_more_out() -> None:
    times = [2, 3, 5, 8, 11, 14]
    outs = [wait(times=times, waited=w).values["still_out"] for w in (30, 45, 60, 120)]
    assert outs == sorted(outs, reverse=True)
    quiet = [wait(times=times, waited=w).values["most_out_quiet"] for w in (30, 60, 120)]
    assert quiet == sorted(quiet, reverse=True)


def test_a_known_number_out_is_given_back() -> None:
    result = wait(times=[2, 3, 5, 8, 11, 14], waited=30, still_out=4)
    assert result.values["still_out"] == 4
    assert result.values["mean_trip"] == pytest.approx(163 / 6)
    counts = wait(record="counts", returns=[38, 26, 12], waited=15, still_out=19)
    assert counts.values["mean_trip"] == pytest.approx(9.317, abs=0.001)


def test_counts_are_a_removal_series() -> None:
    result = wait(record="counts", returns=[38, 26, 12], waited=15)
    assert result.values["mean_trip"] == pytest.approx(-5 / math.log1p(-0.415805), abs=1e-4)
    assert result.values["away_at_start"] == pytest.approx(94.926, abs=0.001)


@pytest.mark.parametrize("weather", ["rain", "cold", "dusk"])
def test_minutes_without_flight_stop_the_clock(weather: str) -> None:
    result = wait(weather=weather)
    assert result.stopped
    assert all(result.values[name] is None for name in HIDDEN)
    assert not result.charts
    assert "do not count" in result.values["next_step"]


def test_an_empty_watch_stops() -> None:
    assert wait(record="none").stopped
    known = wait(record="none", waited=30, still_out=5)
    assert known.values["mean_trip"] is None
    assert known.values["mean_trip_interval"][0] == pytest.approx(150 / 2.995732, rel=1e-6)
    assert wait(record="none", still_out=0).stopped


def test_returns_that_do_not_thin_out_stop() -> None:
    result = wait(record="counts", returns=[5, 5, 5], waited=30)
    assert result.stopped
    assert "do not thin out" in result.values["next_step"]


def test_cautions() -> None:
    assert "Wait outside the zone, suit open" in texts("caution")
    assert "suited" not in texts("caution")
    assert "overnight" in texts("caution")
    assert "no hour at which all are home" in texts("caution", animal="crabro")
    assert "no trip times of your species" in texts("note", animal="other")
    assert "no trip times of your species" not in texts("note", animal="velutina")
    assert "Only 2 came home" in texts("caution", times=[2, 5])
    assert "too little to say" in texts("caution", times=[2, 8, 15, 20], waited=45)
    assert "Twenty quiet minutes" in texts("note")
    slow = {"times": [10, 60, 130, 240, 300], "waited": 700}
    assert "longer than an hour" in texts("caution", **slow)


def test_the_next_step_turns_with_the_quiet() -> None:
    assert wait().values["next_step"].startswith("Wait about")
    assert wait(times=[2, 3, 5, 8], waited=90).values["next_step"].startswith("Go on: it was quiet")
    slow = wait(times=[10, 60, 130, 240, 300], waited=700, still_out=3)
    assert slow.values["next_step"].startswith("Stop: do not stand")
    assert say.next_step(None, 12).startswith("Wait about 15")  # type: ignore[arg-type]


def test_a_return_after_the_end_is_refused() -> None:
    with pytest.raises(InputError, match="after the end of the watch") as caught:
        wait(times=[5, 50], waited=45)
    assert caught.value.field == "times"
    with pytest.raises(InputError, match="too few") as caught:
        wait(record="counts", returns=[9, 4], waited=121)
    assert caught.value.field == "returns"


def test_rain_stops_the_clock_before_any_number_is_given() -> None:
    told = waiting_for_stragglers.answer({"weather": "rain"})
    assert isinstance(told, Incomplete)
    assert told.stopped
    assert "Stop the clock" in told.cautions[0].text
    dry = waiting_for_stragglers.answer({"weather": "fair"})
    assert isinstance(dry, Incomplete)
    assert not dry.stopped


def test_traffic_times_trip_is_the_number_away() -> None:
    result = wait(traffic=12, times=[2, 3, 5, 8, 11, 14], waited=30, still_out=4)
    assert result.values["away_by_traffic"] == pytest.approx(12 * 163 / 6)


PAGE = ROOT / "handbook" / "method" / "waiting_for_stragglers.md"


def test_answers_of_the_page_are_those_of_the_calculator() -> None:
    page = PAGE.read_text(encoding="utf-8")
    counts = wait(record="counts", returns=[18, 11, 7, 4, 2, 1], waited=60)
    assert f"The mean trip is {counts.values['mean_trip']:.1f} minutes" in page
    low, high = counts.values["still_out_interval"]
    out = f"{counts.values['still_out']:.0f}"
    assert f"About {out} are still out, and {low:.0f} to {high:.0f}" in page
    assert "about 70 more minutes" in counts.values["next_step"]
    assert f"{counts.values['quiet_needed']:.0f} quiet minutes" in page
    known = wait(times=[2, 3, 5, 8, 11, 14], waited=30, still_out=4)
    low, high = known.values["mean_trip_interval"]
    assert f"It is {known.values['mean_trip']:.0f} minutes, from {low:.0f} to {high:.0f}" in page
    missed = 100 * math.exp(-20 / hornet_trips()[0])
    assert f"in {missed:.0f} of 100 cases" in page

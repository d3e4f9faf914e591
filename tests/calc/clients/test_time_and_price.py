"""Time and price: formulas against a library, lines that add up, every caution."""

from __future__ import annotations

import math
import statistics
from typing import Any

import pytest
import scipy.stats
from hypothesis import given, settings
from hypothesis import strategies as st

from calc.clients.time_and_price import price, times
from calc.clients.time_and_price import time_and_price as calculator
from calc.clients.time_and_price.inputs import Inputs
from calc.declare import Incomplete, Result
from calc.errors import InputError

JOBS = [95.0, 120.0, 175.0, 140.0, 165.0, 235.0, 170.0, 150.0, 250.0, 130.0]


def time_and_price(**changed: Any) -> Result:
    """Run the worked example with some values changed."""
    return calculator.run(calculator.example() | changed)


def levels(result: Any, level: str) -> str:
    return " ".join(each.text for each in result.cautions if each.level == level)


@pytest.mark.library("scipy")
@pytest.mark.parametrize("chance", [0.5, 0.8, 0.9, 0.95])
@pytest.mark.parametrize("count", [2, 5, 10])
def test_prediction_interval_against_a_library(chance: float, count: int) -> None:
    # scipy 1.17.1, scipy.stats.t.interval with the standard error of prediction
    jobs = JOBS[:count]
    scale = statistics.stdev(jobs) * (1 + 1 / count) ** 0.5
    theirs = scipy.stats.t.interval(chance, count - 1, loc=statistics.fmean(jobs), scale=scale)
    low, high = times.prediction_interval(jobs, chance)
    assert high == pytest.approx(theirs[1], rel=1e-9)
    assert low == pytest.approx(max(0, theirs[0]), rel=1e-9)


@pytest.mark.library("scipy")
@pytest.mark.parametrize("time", [200.0, 237.5, 260.0, 290.0])
def test_chance_and_its_inverse_against_a_library(time: float) -> None:
    # scipy 1.17.1, scipy.stats.norm.cdf and ppf
    chance = times.chance_within(237.5, 23.79, time)
    assert chance == pytest.approx(scipy.stats.norm.cdf(time, 237.5, 23.79), rel=1e-12)
    if chance > 0.5:
        back = times.Spread(237.5, 23.79).by_chance(chance)
        assert back == pytest.approx(scipy.stats.norm.ppf(chance, 237.5, 23.79), rel=1e-9)


def test_a_time_without_spread_is_certain() -> None:
    assert times.chance_within(10, 0, 9.9) == 0
    assert times.chance_within(10, 0, 10) == 1


@given(st.floats(1, 1e5), st.floats(0, 0.9))
def test_margin_and_markup_are_one_another(cost: float, margin: float) -> None:
    markup = price.markup_of_margin(margin)
    assert price.margin_of_markup(markup) == pytest.approx(margin, abs=1e-12)
    quoted = price.price_from_margin(cost, margin)
    assert quoted == pytest.approx(price.price_from_markup(cost, markup), rel=1e-12)
    assert quoted - cost == pytest.approx(margin * quoted, rel=1e-9, abs=1e-9)


@settings(max_examples=100, deadline=None)
@given(st.integers(1, 5), st.floats(0, 50), st.floats(0, 30))
def test_sums_add_up(people: int, tax: float, deposit: float) -> None:
    values = time_and_price(people=people, tax=tax, deposit=deposit).values
    assert sum(line["amount"] for line in values["lines"]) == pytest.approx(values["cost"])
    assert values["cost"] + values["profit"] == pytest.approx(values["price"])
    assert values["price"] + values["tax_sum"] == pytest.approx(values["total"])
    assert values["deposit_sum"] <= values["total"]


def test_hours_by_hand() -> None:
    # wall: te 22.5, 55, 36.67, 22.5, 67.5, 33.33 = 237.5 min; one person, one visit, no drive
    values = time_and_price(people=1, visits=1, drive=0, basis="mean").values
    assert values["site_hours"] * 60 == pytest.approx(237.5)
    assert values["deviation"] == pytest.approx(23.79, abs=0.005)
    assert values["plan_hours"] * 60 == pytest.approx(268.0, abs=0.05)
    assert values["charged_hours"] * 60 == pytest.approx(237.5)


def test_a_job_worked_by_hand() -> None:
    # 3.5 h on site and 1.2 h of driving at 40 and 12, 46 miles at 0.725, 28 of materials and a
    # reserve of 44 make 349.75; a quarter of the price on it makes 466.33
    values = time_and_price(
        times_from="own",
        at_best=[210],
        most_likely=[210],
        at_worst=[210],
        people=1,
        visits=1,
        drive=36,
        distance="23 mile",
        distance_rate="0.725 mile**-1",
        hourly=40,
        overhead=12,
        materials=28,
        pricing="margin",
        margin=25,
        tax=6.25,
        deposit=100 / 3,
    ).values
    assert values["cost"] == pytest.approx(349.75, abs=0.005)
    assert values["price"] == pytest.approx(466.33, abs=0.005)
    assert values["total"] == pytest.approx(495.48, abs=0.005)
    assert values["deposit_sum"] == pytest.approx(165.16, abs=0.005)


def test_past_jobs_take_over() -> None:
    values = time_and_price(times_from="past", past=JOBS).values
    assert values["site_hours"] * 60 == pytest.approx(statistics.fmean(JOBS))
    theirs = times.prediction_interval(JOBS, 0.8)
    assert [60 * each for each in values["site_interval"]] == pytest.approx(theirs)


def test_more_past_jobs_narrow_the_interval() -> None:
    few = time_and_price(times_from="past", past=JOBS[:3]).values["site_interval"]
    many = time_and_price(times_from="past", past=JOBS[:3] * 4).values["site_interval"]
    assert many[1] - many[0] < few[1] - few[0]


@pytest.mark.parametrize(
    ("change", "words"),
    [
        ({}, "Never cut the rests"),
        ({}, "our guess, not measured"),
        ({"times_from": "past", "past": JOBS[:7]}, "past jobs are few"),
        ({"drive": 240}, "Split the job"),
        ({"margin": 0}, "leaves nothing"),
        ({"pricing": "markup", "markup": 0}, "leaves nothing"),
        ({"risk_chances": None, "risk_costs": None}, "Nothing is set aside"),
        ({"deposit": 11}, "a tenth at most"),
        ({"deposit": 34}, "More than a third"),
    ],
)
def test_each_caution(change: dict[str, Any], words: str) -> None:
    assert words in levels(time_and_price(**change), "caution")


def test_cautions_stay_away() -> None:
    told = levels(time_and_price(times_from="past", past=JOBS[:8], deposit=10), "caution")
    for words in ("few", "guess", "Split", "nothing", "Nothing", "tenth", "third"):
        assert words not in told


def test_the_other_reading_of_the_percent() -> None:
    values = time_and_price(pricing="markup", markup=100).values
    assert values["other_price"] is None
    assert values["as_margin"] == pytest.approx(50)


@pytest.mark.parametrize(
    ("change", "field"),
    [
        ({"times_from": "past", "past": [60]}, "past"),
        ({"times_from": "own", "at_worst": [1]}, "at_worst"),
        ({"times_from": "own", "at_best": [50, 30, 10, 10, 45, 20]}, "at_best"),
        ({"times_from": "own", "at_worst": [40, 100, 90, 45, 120, 10]}, "at_worst"),
        ({"times_from": "own", "most_likely": [20, 50, 95, 20, 60, 30]}, "most_likely"),
        ({"times_from": "own", "most_likely": [20, 50, 5, 20, 60, 30]}, "most_likely"),
        ({"risk_costs": [1, 2]}, "risk_costs"),
        ({"margin": 100}, "margin"),
        ({"currency": "gold"}, "currency"),
    ],
)
def test_what_does_not_fit_is_refused(change: dict[str, Any], field: str) -> None:
    with pytest.raises(InputError, match="allowed is") as caught:
        time_and_price(**change)
    assert caught.value.field == field


def test_chart_rises() -> None:
    line = time_and_price().charts[0].series[0]
    assert list(line.x) == sorted(line.x)
    assert list(line.y) == sorted(line.y)


def test_empty_names_what_is_missing_and_gives_no_sum() -> None:
    answer = calculator.answer({})
    assert isinstance(answer, Incomplete)
    names = [each.name for each in answer.missing]
    assert names[:4] == ["nest", "drive", "distance", "visits"]
    assert {"hourly", "people", "pricing"} <= set(names)
    assert not answer.ranges
    assert "Never cut the rests" in " ".join(each.text for each in answer.cautions)


def test_own_times_and_past_jobs_are_asked_for_where_they_are_chosen() -> None:
    for chosen, wanted in (("own", {"at_best", "most_likely", "at_worst"}), ("past", {"past"})):
        answer = calculator.answer({"times_from": chosen})
        assert isinstance(answer, Incomplete)
        names = {each.name for each in answer.missing}
        assert wanted <= names
        assert "nest" not in names


def test_a_price_waits_for_the_rates_of_the_firm() -> None:
    given = calculator.example()
    del given["hourly"]
    answer = calculator.answer(given)
    assert isinstance(answer, Incomplete)
    assert [each.name for each in answer.missing] == ["hourly"]
    low, high = answer.ranges["price"]
    assert low < time_and_price().values["price"] < high


@pytest.mark.library("scipy")
@pytest.mark.parametrize("alpha", [4.0, 3 + math.sqrt(2), 3 - math.sqrt(2)])
def test_a_sixth_of_the_range_is_right_where_the_outer_times_are_the_ends(alpha: float) -> None:
    # Reference: scipy.stats.beta, the three betas for which both formulas hold exactly.
    beta = 8 - alpha if alpha == 4 else 6 - alpha
    law, mode = scipy.stats.beta(alpha, beta), (alpha - 1) / (alpha + beta - 2)
    assert times.expected(0, mode, 1) == pytest.approx(law.mean())
    assert times.variance(0, 1) == pytest.approx(law.var())


@pytest.mark.library("scipy")
def test_help_and_divisor_agree() -> None:
    # Reference: scipy.stats.norm: times passed once in a hundred lie 4.65 deviations apart, not 6.
    once = scipy.stats.norm.ppf(0.99) - scipy.stats.norm.ppf(0.01)
    assert math.sqrt(times.variance(0, once)) < 0.8
    told = [each.meaning for each in calculator.inputs if each.name in {"at_best", "at_worst"}]
    assert not any("hundred" in each for each in (*told, *calculator.assumptions))
    assert "shortest" in told[0]
    assert "longest" in told[1]


@pytest.mark.parametrize("pricing", ["margin", "markup"])
def test_a_price_without_its_share_is_refused(pricing: str) -> None:
    given = dict(calculator.reading(calculator.example() | {"pricing": pricing}).values)
    with pytest.raises(InputError, match="a value is missing"):
        calculator.core(Inputs(**given | {"margin": None, "markup": None}))

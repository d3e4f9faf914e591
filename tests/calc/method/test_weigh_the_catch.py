"""Counting by weight: against scipy and simulated weighings, every caution, the page's numbers."""

from __future__ import annotations

import math
from typing import Any

import numpy as np
import pytest
from scipy import optimize, stats

from calc.catalogue import find
from calc.declare import Incomplete
from calc.errors import InputError
from calc.method.bodies import animal_options
from calc.method.weigh_the_catch import cautions as module
from calc.method.weigh_the_catch.weighing import (
    Mean,
    count_by_weight,
    effective_df,
    mixed,
    range_error,
    sample_needed,
    sampled,
    step_error,
)
from tests.calc.method import caution_cover

weigh = find("weigh_the_catch")
EXERCISE = {
    "animal": "germanica",
    "empty": 640,
    "full": 662.4,
    "step": 0.1,
    "sample_counts": [40],
    "sample_masses": [3.2],
}
TRIALS = 4000


@pytest.mark.library("scipy")
@pytest.mark.parametrize(("net", "error", "df"), [(22_400, 41, math.inf), (310_000, 2000, 4.0)])
def test_limits_are_where_the_weight_just_rules_a_number_out(
    net: float, error: float, df: float
) -> None:
    mean = Mean(mass=84.1, error=4.0, spread=19.0, df=df)
    found = count_by_weight(net, error, mean)
    free = effective_df([(found.scale, math.inf), (found.bodies, math.inf), (found.mean, mean.df)])
    t = stats.norm.ppf(0.975) if math.isinf(free) else stats.t.ppf(0.975, free)

    def off(n: float) -> float:
        spread = math.sqrt(error**2 + n * mean.spread**2 + (n * mean.error) ** 2)
        return float(abs(net - n * mean.mass) - t * spread)

    number = net / mean.mass
    assert found.low == pytest.approx(optimize.brentq(off, 0, number), rel=1e-6)
    assert found.high == pytest.approx(optimize.brentq(off, number, 3 * number), rel=1e-6)


@pytest.mark.library("scipy")
def test_a_step_is_an_even_spread() -> None:
    assert step_error(1) == pytest.approx(stats.uniform(-0.5, 1).std())
    assert range_error(624, 721) == pytest.approx(stats.uniform(624, 97).std())


@pytest.mark.parametrize(
    ("number", "step", "handfuls"),
    [(280, 0.1, (40,)), (1500, 1.0, (60, 60)), (65, 1.0, (30,)), (600, 0.1, (10, 10, 10, 10))],
)
def test_the_interval_holds_the_truth_in_simulated_weighings(
    number: int, step: float, handfuls: tuple[int, ...]
) -> None:
    """Bodies are drawn, chamber and jar are rounded as a scale does, a blind sample is taken."""
    random = np.random.default_rng(7)
    mass, spread = 0.0841, 0.0190

    def net(animals: int, tare: float) -> float:
        bodies = random.gamma((mass / spread) ** 2, spread**2 / mass, animals).sum()
        return float((np.round((tare + bodies) / step) - np.round(tare / step)) * step)

    held = 0
    for _ in range(TRIALS):
        # Not always the same number: else the roundings of full and empty jar would go together.
        counts = [int(random.integers(n - n // 5, n + n // 5 + 1)) for n in handfuls]
        grams = [net(n, random.uniform(20, 21)) for n in counts]
        mean = sampled(counts, [1000 * g for g in grams], 19.0 / 84.1, 1000 * step)
        full = net(number, random.uniform(600, 601))
        found = count_by_weight(1000 * full, 1000 * step_error(step, 2), mean)
        held += found.low <= number and (found.high is None or number <= found.high)
    assert 0.94 <= held / TRIALS <= 0.98


def test_three_handfuls_that_differ_widen_the_error() -> None:
    alike = sampled((20, 20, 20), (1680, 1682, 1684), 0.2, 0.0)
    apart = sampled((20, 20, 20), (1000, 1682, 2364), 0.2, 0.0)
    counts, masses = np.array([20, 20, 20]), np.array([1000, 1682, 2364])
    ratio = masses.sum() / counts.sum()
    error = np.sqrt(((masses - ratio * counts) ** 2).sum() / 2 / 3) / counts.mean()
    assert apart.error == pytest.approx(error)
    assert (alike.df, apart.df) == (math.inf, 2)


def test_a_mixture_has_the_mean_and_spread_of_its_draws() -> None:
    random = np.random.default_rng(3)
    one, two = Mean(mass=84.1, error=0, spread=19), Mean(mass=250, error=0, spread=29)
    both = mixed(one, two, 0.1)
    second = random.random(400_000) < 0.1
    drawn = np.where(
        second, random.normal(250, 29, second.size), random.normal(84.1, 19, second.size)
    )
    assert both.mass == pytest.approx(drawn.mean(), rel=0.005)
    assert both.spread == pytest.approx(drawn.std(), rel=0.01)
    assert both.error == pytest.approx(0.1 / math.sqrt(3) * (250 - 84.1))


@pytest.mark.library("scipy")
def test_the_sample_needed_is_that_of_the_normal_law() -> None:
    n = sample_needed(0.226, 0.05)
    assert stats.norm.ppf(0.975) * 0.226 / math.sqrt(n) <= 0.05
    assert stats.norm.ppf(0.975) * 0.226 / math.sqrt(n - 1) > 0.05


def test_the_exercises_of_the_page() -> None:
    told = weigh.run(EXERCISE)
    assert (told.text("count"), told.text("interval")) == ("280", "266 to 295")
    table = weigh.run(EXERCISE | {"mean_from": "table"})
    assert (table.text("count"), table.text("interval")) == ("302", "240 to 406")
    coarse = weigh.run(EXERCISE | {"full": 660, "step": 5})
    assert coarse.values["interval"][1] is None


CAUTIONS: list[tuple[dict[str, Any], str, str]] = [
    ({}, "caution", "bees, leaves"),
    ({"step": 5}, "caution", "too coarse"),
    ({"mean_from": "table"}, "caution", "from print"),
    ({"sample_counts": [12], "sample_masses": [0.9]}, "caution", "sample is small"),
    ({"sample_masses": [19]}, "caution", "Check count, unit and jar"),
    ({"step": 5, "full": 660}, "caution", "too unsure for an upper end"),
    ({}, "note", "live and dry"),
    ({}, "note", "queen or a male"),
]


@pytest.mark.parametrize(("inputs", "level", "part"), CAUTIONS)
def test_cautions(inputs: dict[str, Any], level: str, part: str) -> None:
    caution_cover.check(weigh, EXERCISE | inputs, level, part)


def test_every_caution_that_is_written_is_raised_above() -> None:
    found: set[tuple[str, str]] = set()
    for inputs, _, _ in CAUTIONS:
        found |= caution_cover.raised(weigh.run(EXERCISE | inputs))
    assert len(found) == caution_cover.written(module)


def test_grams_kilograms_and_ounces_are_one() -> None:
    base = weigh.run(EXERCISE).values
    for empty, full in (("0.64 kg", "0.6624 kg"), ("22.575336 oz", "23.365473 oz")):
        told = weigh.run(EXERCISE | {"empty": empty, "full": full}).values
        assert told["count"] == base["count"]
        assert told["interval"] == base["interval"]


@pytest.mark.parametrize(
    ("inputs", "field"),
    [
        ({"full": 600}, "full"),
        ({"sample_counts": [40, 30]}, "sample_masses"),
        ({"step": 0}, "step"),
        ({"sample_counts": [0]}, "sample_counts"),
    ],
)
def test_bad_input_is_one_sentence(inputs: dict[str, Any], field: str) -> None:
    with pytest.raises(InputError) as caught:
        weigh.run(EXERCISE | inputs)
    assert caught.value.field == field
    assert "allowed is" in caught.value.sentence


def test_without_a_sample_no_count_is_told() -> None:
    told = weigh.answer({"full": 662.4, "empty": 640, "step": 0.1, "animal": "germanica"})
    assert isinstance(told, Incomplete)
    assert {each.name for each in told.missing} == {"sample_counts", "sample_masses"}
    assert any("bees, leaves" in each.text for each in told.cautions)


def test_a_second_kind_waits_for_its_share() -> None:
    given = {name: value for name, value in EXERCISE.items() if not name.startswith("sample")}
    given |= {"mean_from": "table", "second": "vespula_queen"}
    told = weigh.answer(given)
    assert isinstance(told, Incomplete)
    assert [each.name for each in told.missing] == ["share"]
    assert weigh.run(given | {"share": 10}).values["count"] < 302


def test_an_empty_bin_is_none_with_room_above() -> None:
    told = weigh.run(EXERCISE | {"full": 640}).values
    assert told["count"] == 0
    assert told["interval"][0] == 0
    assert told["interval"][1] >= 1


def test_every_row_of_the_tables_of_bodies_is_taken() -> None:
    for option in animal_options():
        told = weigh.run(EXERCISE | {"animal": option.value, "mean_from": "table", "mass": 90})
        assert told.values["count"] > 0
        assert told.values["interval"][0] < told.values["count"]

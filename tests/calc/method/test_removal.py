"""Estimators and stopping: properties, edges and speed of hostile input."""

from __future__ import annotations

import math
import time

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from calc import tables
from calc.method.how_many_left import how_many_left
from calc.method.how_many_left.fit import fit_test
from calc.method.how_many_left.profile import equality_test, moran_schnute, usable
from calc.method.removal import (
    carle_strub,
    falls,
    robson_regier,
    seber_three_pass,
    seber_two_pass,
    standard_errors,
    zippin,
)
from calc.method.removal.effort import gould_pollock, leslie
from calc.method.removal.stopping import (
    MOST_PASSES,
    chance_at_most,
    outlook,
    passes_from_start,
    passes_needed,
)


@st.composite
def falling(draw: st.DrawFn) -> tuple[int, ...]:
    """Draw catches that fall by and large, small and large, with and without noise."""
    k = draw(st.integers(2, 12))
    start = draw(st.integers(1, 2000))
    q = draw(st.floats(0.05, 0.98))
    noise = draw(st.lists(st.floats(0.6, 1.4), min_size=k, max_size=k))
    catches = tuple(round(start * q**place * noise[place]) for place in range(k))
    return catches if sum(catches) and falls(catches, (1.0,) * k) else (start, *(0,) * (k - 1))


@settings(max_examples=150, deadline=None, derandomize=True, database=None)
@given(falling(), st.sampled_from(["auto", "zippin", "carle_strub", "leslie", "moran_schnute"]))
def test_interval_holds_the_estimate_and_never_falls_below_the_catch(
    catches: tuple[int, ...], estimator: str
) -> None:
    if estimator in {"leslie", "moran_schnute"} and not usable(catches):
        estimator = "auto"
    values = how_many_left(catches=catches, estimator=estimator).values
    if values["adults_at_start"] is None:
        assert estimator == "leslie"
        return
    low, high = values["interval_at_start"]
    assert sum(catches) <= low <= values["adults_at_start"]
    assert high is None or values["adults_at_start"] <= high
    assert high is None or high >= sum(catches) + 1
    assert values["still_inside"] == pytest.approx(values["adults_at_start"] - sum(catches))
    assert 0 < values["capture_probability"] <= 100
    assert 0 <= values["chance_none_left"] <= values["chance_few_left"] <= 99.9
    for row in values["comparison"]:
        assert row["number"] >= sum(catches)


@settings(max_examples=100, deadline=None, derandomize=True, database=None)
@given(falling())
def test_an_empty_pass_never_lowers_the_chance_that_none_is_left(catches: tuple[int, ...]) -> None:
    k = len(catches)
    before = outlook(catches, (1.0,) * k)
    after = outlook((*catches, 0), (1.0,) * (k + 1))
    for most in (0, 4):
        assert chance_at_most(most, after) >= chance_at_most(most, before) - 1e-9


@settings(max_examples=60, deadline=None, derandomize=True, database=None)
@given(falling(), st.integers(0, 20), st.floats(0.5, 0.99))
def test_passes_needed_is_the_first_that_is_enough(
    catches: tuple[int, ...], most: int, wanted: float
) -> None:
    view = outlook(catches, (1.0,) * len(catches))
    needed = passes_needed(most, wanted, view)
    if needed is None:
        assert chance_at_most(most, view, MOST_PASSES) < wanted
        return
    assert chance_at_most(most, view, needed) >= wanted
    assert needed == 0 or chance_at_most(most, view, needed - 1) < wanted


@settings(max_examples=60, deadline=None, derandomize=True, database=None)
@given(falling(), st.floats(0.5, 60))
def test_the_unit_of_effort_does_not_matter(catches: tuple[int, ...], minutes: float) -> None:
    k = len(catches)
    one, other = gould_pollock(catches, (1.0,) * k), gould_pollock(catches, (minutes,) * k)
    assert one.number == pytest.approx(other.number, rel=1e-6)
    assert one.number == pytest.approx(zippin(catches).number, rel=1e-6)


def test_more_of_everything_narrows_the_interval() -> None:
    spans = []
    for scale in (1, 4, 16):
        low, high = how_many_left(catches=[c * scale for c in (38, 26, 12)]).values[
            "interval_at_start"
        ]
        spans.append((high - low) / scale)
    assert spans[0] > spans[1] > spans[2]


def test_closed_forms_are_zippin_at_two_and_three_passes() -> None:
    assert seber_two_pass((77, 37)).number == pytest.approx(zippin((77, 37)).number)
    assert seber_three_pass((72, 56, 46)).number == pytest.approx(zippin((72, 56, 46)).number)
    three, other = seber_three_pass((72, 56, 46)), zippin((72, 56, 46))
    assert three.number_se == pytest.approx(other.number_se)


def test_all_on_the_first_pass() -> None:
    for fit in (
        carle_strub((120, 0)),
        zippin((120, 0)),
        seber_two_pass((120, 0)),
        robson_regier((120, 0)),
        seber_three_pass((40, 0, 0)),
    ):
        assert fit.probability == 1
        assert fit.number_se is None
        assert fit.wald is None
        assert fit.wald_probability is None
    effort = gould_pollock((120, 0), (5.0, 10.0))
    assert effort.number == 120
    assert effort.number_se is None
    assert math.isinf(effort.hazard)
    assert fit_test((120, 0, 0), (1.0,) * 3) is None


def test_no_standard_error_where_rounding_eats_it() -> None:
    assert standard_errors(1e12, 1e-7, 5) == (None, None)
    assert standard_errors(100, 0.0, 5) == (None, None)


@pytest.mark.parametrize(
    ("call", "catches"),
    [
        (carle_strub, (0, 0, 0)),
        (zippin, (5, 5, 5)),
        (seber_three_pass, (5, 7, 8)),
        (seber_three_pass, (5, 4)),
        (seber_two_pass, (5, 5)),
        (robson_regier, (5, 4, 3)),
        (moran_schnute, (5, 4)),
        (equality_test, (5, 4, 0)),
    ],
)
def test_estimators_refuse_what_they_cannot_take(call: object, catches: tuple[int, ...]) -> None:
    assert callable(call)
    with pytest.raises(ValueError, match=r"needed|fall|caught"):
        call(catches)


def test_effort_estimators_refuse() -> None:
    with pytest.raises(ValueError, match="three passes"):
        leslie((5, 4), (1.0, 1.0))
    with pytest.raises(ValueError, match="does not fall"):
        leslie((5, 5, 5), (1.0,) * 3)
    with pytest.raises(ValueError, match="does not fall"):
        leslie((0, 0, 0), (1.0,) * 3)
    with pytest.raises(ValueError, match="does not fall"):
        gould_pollock((5, 5, 5), (1.0,) * 3)


def test_fieller_has_no_upper_end_for_a_slope_that_may_be_flat() -> None:
    fit = leslie((117, 75, 87, 67, 58, 67, 42), (5.0, 7.0, 5.0, 5.0, 4.0, 6.0, 5.0))
    assert fit.slope_chance > 0.05
    assert fit.fieller is not None
    assert fit.fieller[1] is None
    assert fit.fieller[0] < fit.number


def test_a_perfect_line_has_no_error() -> None:
    fit = leslie((50, 25, 13, 6, 3), (1.0, 1.0, 1.04, 6 / 6, 1.0))
    assert fit.number_se >= 0
    exact = leslie((40, 20, 10), (1.0, 1.0, 1.0))
    assert exact.number == pytest.approx(80)
    assert exact.number_se == pytest.approx(0, abs=1e-6)


def test_planning_table_is_what_the_function_gives() -> None:
    for row in tables.rows("passes_needed"):
        for name, most in (("few", 4), ("none", 0)):
            for number in (100, 1000):
                found = passes_from_start(number, row["p"] / 100, most, 0.95)
                assert found == row[f"{name}_{number}"]
    assert passes_from_start(3, 0.5, 4, 0.95) == 0
    assert passes_from_start(1000, 0.001, 0, 0.95) is None


@pytest.mark.parametrize(
    "catches",
    [
        [100_000] * 30,
        [100_000 - place for place in range(30)],
        [100_000, *[0] * 29],
        [100_000, *[50_000] * 29],
        [1, *[0] * 29],
    ],
)
@pytest.mark.parametrize("uneven", [False, True])
def test_hostile_sizes_answer_soon(catches: list[int], uneven: bool) -> None:
    given = {"catches": catches, "most_left": 100, "confidence": 99.9}
    if uneven:
        given["minutes"] = [600.0, *[0.1] * 29]
    start = time.perf_counter()
    told = how_many_left.run(given).as_dict()
    # Far above the 50 ms it takes at most on a slow desk machine, so that load does not break it.
    assert time.perf_counter() - start < 2
    assert told["results"]["next_step"]["value"]


def test_the_darters_of_the_page_were_more_than_the_line_allows() -> None:
    # Mahon 1980: seven passes, then all fish were counted: 1151.
    fit = leslie((180, 115, 94, 84, 75, 58, 60), (1.0,) * 7)
    assert fit.wald[1] < 1151

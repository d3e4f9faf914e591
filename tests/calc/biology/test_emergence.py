"""Emergence: laws against libraries, drawn brood, nests in print, every caution and stop."""

from __future__ import annotations

import random
from itertools import pairwise

import pytest
from scipy import stats

from calc import tables
from calc.biology.still_to_emerge import still_to_emerge
from calc.biology.still_to_emerge.brood import LOOKS
from calc.biology.still_to_emerge.model import (
    band,
    by_look,
    cases,
    days_left,
    even_ages,
    even_ages_test,
)
from calc.biology.still_to_emerge.results import SCHEDULE
from calc.declare import Incomplete, Result
from calc.errors import InputError
from docs_build.bootstrap import ROOT

UNOPENED = dict.fromkeys(LOOKS)


def emerge(**given: object) -> Result:
    """Run the worked example with some values changed."""
    return still_to_emerge(**still_to_emerge.example() | given)


def texts(level: str, **given: object) -> str:
    return " ".join(each.text for each in emerge(**given).cautions if each.level == level)


# Outside reference: scipy 1.17.1, stats.binom mean and std.
@pytest.mark.library("scipy")
@pytest.mark.parametrize(("cells", "days", "day"), [(400, 12, 3), (250, 14, 5), (400, 13, 10)])
def test_even_ages_are_binomial(cells: int, days: float, day: float) -> None:
    law = stats.binom(cells, day / days)
    found = even_ages(cells, days, day)
    assert found.number == pytest.approx(law.mean(), rel=1e-12)
    assert found.total == pytest.approx(law.std(), rel=1e-12)


# Outside reference: scipy 1.17.1, stats.chisquare.
@pytest.mark.library("scipy")
def test_test_of_even_ages() -> None:
    counts, lengths = [30, 45, 25], [4, 5, 4]
    expected = [100 * each / 13 for each in lengths]
    chi2, df, chance = even_ages_test(counts, lengths)
    there = stats.chisquare(counts, expected)
    assert (chi2, df) == (pytest.approx(there.statistic), 2)
    assert chance == pytest.approx(there.pvalue)


# Outside reference: scipy 1.17.1, stats.uniform.cdf: ages even over the classes are even ages.
@pytest.mark.library("scipy")
@pytest.mark.parametrize("day", [0.5, 4, 9.2, 13])
def test_looks_in_proportion_to_their_length_are_even_ages(day: float) -> None:
    counts, spans = [4, 5, 4], [(9, 13), (4, 9), (0, 4)]
    found = by_look(1000, counts, spans, day)
    assert found.number == pytest.approx(1000 * stats.uniform.cdf(day, 0, 13), rel=1e-9)


# Budge et al. 2017: 331 of 840 sealed cells held prepupae. The second scale was made from it, so
# this is no outside check.
def test_prepupae_of_a_nest_in_print_lie_between_the_scales() -> None:
    found = tables.row("pupal_colours", "prepupa")
    assert found["first"][1] <= 100 * 331 / 840 <= found["second"][1]


# Outside value: agency briefings 2020: 76 of 184 queen cells gave queens within five days.
@pytest.mark.published("mandarinia_briefings")
def test_a_nest_in_print_lies_in_the_band() -> None:
    result = emerge(species="other", worker_cells=0, queen_cells=184, **UNOPENED)
    five = next(each for each in result.values["schedule"] if each["day"] == 5)
    assert five["interval"][0] <= 76 <= five["interval"][1]
    assert result.values["last_queen"][1] > 5


# COLOSS BeeBook: honey bee workers are sealed for 288 hours; every range used here holds them.
def test_ranges_hold_the_twelve_days_of_the_bee() -> None:
    assert tables.row("development", "honey_bee")["sealed"] == pytest.approx(288 / 24)
    for name in ("vespula", "crabro", "velutina", "other"):
        low, high = tables.row("development", name)["sealed"]
        assert low <= 288 / 24 <= high


def test_ranges_hold_the_printed_rows() -> None:
    for name, keys in {
        "vespula": ("nz_indoors", "nz_general", "victoria"),
        "crabro": ("hornet_pages",),
        "velutina": ("yunnan", "review"),
        "other": ("nz_general", "victoria", "yunnan", "kunming", "review"),
    }.items():
        low, high = tables.row("development", name)["sealed"]
        for key in keys:
            sealed = tables.row("development", key)["sealed"]
            ends = sealed if isinstance(sealed, list) else [sealed, sealed]
            assert low <= ends[0] <= ends[1] <= high, key


def test_scales_follow_one_another_without_gaps() -> None:
    for scale in ("first", "second"):
        ends = [tables.row("pupal_colours", key)[scale] for key in LOOKS]
        assert ends[0][0] == 0
        assert ends[-1][1] == 100
        assert all(a[1] == b[0] for a, b in pairwise(ends))


def test_by_look_against_drawn_brood() -> None:
    draw = random.Random(2)
    spans, true = [(9.0, 13.0), (4.0, 9.0), (0.0, 4.0)], (0.25, 0.45, 0.30)
    inside = 0
    for _ in range(300):
        classes = draw.choices(range(3), true, k=400)
        counts = [draw.sample(classes, 60).count(each) for each in range(3)]
        out = sum(draw.uniform(*spans[each]) <= 7 for each in classes)
        found = by_look(400, counts, spans, 7)
        inside += abs(found.number - out) <= 1.96 * found.total
    assert inside >= 0.92 * 300


def test_days_left() -> None:
    assert days_left(12, 0.75, 0.9) == pytest.approx((1.2, 3.0))


def test_the_band_holds_every_reading() -> None:
    outer = cases([8, 12], [[(0, 0.5), (0.5, 1)]])
    low, high = band(outer, 100, [10, 10], 3)
    for case in outer:
        assert low <= case.out(100, [10, 10], 3).number <= high
    assert band(outer, 100, [10, 10], 0) == (0, 0)
    assert band(outer, 100, [10, 10], 99) == (100, 100)


def test_more_come_out_day_by_day_and_all_in_the_end() -> None:
    for opened in ({}, UNOPENED):
        rows = emerge(**opened).values["schedule"]
        numbers = [each["all"] for each in rows]
        assert numbers == sorted(numbers)
        assert numbers[-1] == pytest.approx(460)
        assert all(each["interval"][0] <= each["all"] <= each["interval"][1] for each in rows)
        assert all(each["workers"] + each["queens"] == pytest.approx(each["all"]) for each in rows)


def test_older_looks_come_out_sooner() -> None:
    none = dict.fromkeys(LOOKS, 0)
    days = [emerge(**none | {look: 30}).values["days_95"] for look in LOOKS]
    assert days == sorted(days, reverse=True)


def test_queens_take_longer_and_hold_the_comb() -> None:
    workers = emerge(species="crabro", queen_cells=0)
    assert workers.values["last_queen"] is None
    assert workers.values["all_out"] == 20
    queens = emerge(species="crabro", worker_cells=0, queen_cells=60)
    assert queens.values["all_out"] == 25
    assert queens.values["days_95"] > workers.values["days_95"]
    assert queens.values["last_queen"][1] == 25


def test_cool_brood() -> None:
    cool = emerge(temperature=15)
    assert cool.values["days_95"] is None
    assert cool.values["days_95_range"][1] is None
    assert cool.values["last_queen"][1] is None
    known = emerge(temperature=15, species="velutina")
    assert known.values["sealed_days"] == [15, 20]
    assert known.values["days_95"] is not None


def test_dead_cold_stops() -> None:
    result = emerge(temperature=4)
    assert result.stopped
    assert all(result.values[name] is None for name in SCHEDULE)
    assert not result.charts
    assert result.values["holding"]


def test_cautions() -> None:
    assert emerge().cautions[0].text.startswith("Keep the comb in a closed box")
    assert "last young queen is due" in texts("caution")
    assert "last young queen is due" not in texts("caution", queen_cells=0)
    assert "no late end" in texts("caution", temperature=15)
    assert "long end of the range" in texts("caution", temperature=15, species="velutina")
    assert "Cooler than a nest" in texts("caution", temperature=24)
    assert "Warmer than a nest" in texts("caution", temperature=36)
    assert "No colour table for wasps" in texts("caution")
    few = dict.fromkeys(LOOKS, 1)
    assert "Only 6 cells opened" in texts("caution", **few)
    assert "looks are not" in texts("note", **dict.fromkeys(LOOKS, 0) | {"full": 40})
    assert "Without opened cells" in texts("note", **UNOPENED)
    assert "Open larvae are not in it" in texts("note")
    assert "Do not raise this hornet" in texts("caution", species="velutina")


@pytest.mark.parametrize(
    "given",
    [
        {"worker_cells": 0, "queen_cells": 0},
        {"worker_cells": 5, "queen_cells": 0},
        dict.fromkeys(LOOKS, 0),
    ],
)
def test_impossible_counts_are_refused(given: dict[str, object]) -> None:
    with pytest.raises(InputError):
        emerge(**given)


def test_a_stop_and_a_duty_do_not_wait_for_the_count() -> None:
    told = still_to_emerge.answer({"temperature": 4})
    assert isinstance(told, Incomplete)
    assert told.stopped
    assert "Too cold" in told.cautions[0].text + told.cautions[1].text
    invader = still_to_emerge.answer({"species": "velutina"})
    assert any("Do not raise this hornet" in each.text for each in invader.cautions)


def test_a_look_left_empty_counts_none_where_another_was_seen() -> None:
    some = UNOPENED | {"dark": 12, "full": 3}
    zeros = dict.fromkeys(LOOKS, 0) | {"dark": 12, "full": 3}
    assert emerge(**some).values == emerge(**zeros).values


def test_answers_of_the_page_are_those_of_the_calculator() -> None:
    page = (ROOT / "handbook" / "method" / "still_to_emerge.md").read_text(encoding="utf-8")
    even = emerge(species="vespula", worker_cells=400, queen_cells=0, **UNOPENED)
    seven = next(each for each in even.values["schedule"] if each["day"] == 7)
    low, high = seven["interval"]
    assert f"About {seven['all']:.0f} by the middle of the range, {low:.0f} or more" in page
    assert high == 400
    assert f"by day {even.values['all_out']:.0f}." in page
    looks = dict.fromkeys(LOOKS, 0) | {"dark": 12, "colouring": 5, "full": 3}
    dark = emerge(species="crabro", worker_cells=0, queen_cells=40, **looks)
    low, high = dark.values["days_95_range"]
    assert f"within {low:.0f} to {high:.0f} days" in page
    low, high = dark.values["last_queen"]
    assert f"due by day {low:.0f} at the earliest" in page
    assert f"ends on day {high:.0f}" in page

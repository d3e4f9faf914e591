"""Colony size and season: nests in print, the calendar, every caution and stop."""

from __future__ import annotations

import pytest

from calc import rules, tables
from calc.biology import season_calendar as calendar
from calc.biology.colony_and_season import colony_and_season
from calc.biology.colony_and_season.results import WORKER_RESULTS
from calc.biology.colony_and_season.size import adults_expected, peak_size
from calc.biology.colony_and_season.traffic import rate, workers
from calc.declare import Incomplete, Result
from calc.errors import InputError
from docs_build.bootstrap import ROOT


def colony(**given: object) -> Result:
    """Run the worked example, 23 August in the north with hard frosts, with values changed."""
    return colony_and_season(**colony_and_season.example() | given)


def texts(level: str, **given: object) -> str:
    return " ".join(each.text for each in colony(**given).cautions if each.level == level)


GROUPS = [option.value for option in colony_and_season.inputs[0].options]  # type: ignore[attr-defined]


# Outside values: Perrard et al. 2009, table 1: returns in 10 minutes and population by eye.
@pytest.mark.published("perrard_2009_counts")
@pytest.mark.parametrize(("returns", "hornets"), [(10, 15), (42, 100), (25, 40), (84, 120)])
def test_hornet_nests_in_print_lie_in_the_range(returns: int, hornets: int) -> None:
    result = colony(species="velutina", month="jul", counted="in", counts=[returns], minutes=10)
    low, high = result.values["workers_range"]
    assert low <= hornets <= high


# Outside values: counted nests with young queens or males on a printed date: Budge et al. 2017
# (30 September, 13 males), agency briefings (29 October, 76 queens), Ratnieks et al. 1996
# (2 November, 70 new queens and 685 males).
@pytest.mark.published("mandarinia_briefings")
@pytest.mark.parametrize(
    ("species", "month", "day"),
    [("velutina", "sep", 30), ("mandarinia", "oct", 29), ("pensylvanica", "nov", 2)],
)
def test_nests_in_print_had_queens_or_males_when_the_calendar_says_so(
    species: str, month: str, day: int
) -> None:
    result = colony(species=species, month=month, day=day, counted="none")
    assert result.values["sexuals"] in {"likely inside", "possible", "may still be inside"}
    assert "caged" in result.values["if_taken"] or species in {"velutina", "mandarinia"}


# Outside values: Perrard et al. 2009, table 1: four hornet nests of 15 to 120 workers in July.
@pytest.mark.published("perrard_2009_counts")
@pytest.mark.parametrize("workers", [15, 40, 100, 120])
def test_hornet_nests_of_july_lie_in_the_range_of_the_date(workers: int) -> None:
    low, high = colony(species="velutina", month="jul", day=23).values["adults_expected"]
    assert low <= workers + 1 <= high


# Outside value: news report, Guernsey, August 2021: queen and 17 workers in a 10 cm nest.
@pytest.mark.published("guernsey_2021")
def test_a_small_nest_in_august_lies_in_the_range() -> None:
    low, high = colony(species="velutina", month="aug").values["adults_expected"]
    assert low <= 18 <= high


# Outside values: NZ J. Zool. 1996: Vespula vulgaris colonies alive in December and January after
# a winter; Feas Sanchez & Charles 2019: live winter nests in Galicia.
@pytest.mark.published("galicia_winter_nests")
def test_mild_winters_leave_the_end_open() -> None:
    spain = colony(species="velutina", month="jan", winters="mild")
    assert spain.values["days_to_end"] == [0, None]
    assert spain.values["adults_expected"][1] >= 430
    zealand = colony(species="vulgaris", month="aug", hemisphere="south", winters="mild")
    assert zealand.values["days_to_end"][1] is None


# The row of the survey is in the table, so this tests the shift of dates and is no outside check.
def test_april_in_the_south_is_the_peak() -> None:
    south = colony(species="germanica", month="apr", day=23, hemisphere="south")
    assert "peak" in south.values["stage"]
    assert "peak" not in colony(species="germanica", month="apr", day=23).values["stage"]


def test_half_months_and_days() -> None:
    assert calendar.half_month(1, late=False) == 1
    assert calendar.half_month(12, late=True) == 24
    assert [calendar.of_day(d) for d in (1, 15, 16, 31, 32, 365, 366)] == [1, 1, 2, 2, 3, 24, 24]
    assert calendar.span("early Aug to late Sep") == (15, 18)
    assert calendar.span("late Nov") == (22, 22)
    assert calendar.shift(calendar.shift(7)) == 7
    assert calendar.shift(1) == 13
    assert calendar.last_day(24) == 365
    days = [(1, 1), (2, 29), (3, 1), (7, 21), (12, 31)]
    assert [calendar.day_of_year(*each) for each in days] == [1, 60, 60, 202, 365]


def test_a_day_that_the_month_lacks_is_refused() -> None:
    with pytest.raises(InputError, match="February has no more days"):
        colony(month="feb", day=30)
    assert colony(month="feb", day=29).values["stage"]


def test_what_holds_without_traffic_and_place_is_said() -> None:
    told = colony_and_season.answer({"species": "velutina"})
    assert isinstance(told, Incomplete)
    assert any("Report this hornet first" in each.text for each in told.cautions)
    assert not told.ranges
    nobody = colony_and_season.answer({"counted": "in", "counts": [0, 0, 0]})
    assert isinstance(nobody, Incomplete)
    assert nobody.stopped


def test_every_cell_of_the_calendar_can_be_read() -> None:
    for row in tables.rows("season_calendar"):
        assert row["group"] in GROUPS
        assert row["half"] in {"north", "south"}
        for name in ("queen", "workers", "peak", "sexuals", "end"):
            if name in row:
                low, high = calendar.span(row[name])
                assert 1 <= low <= high <= 24


@pytest.mark.parametrize("group", GROUPS)
def test_every_group_has_a_stage_all_year_and_an_order(group: str) -> None:
    found = calendar.year(group)
    order = list(calendar.STAGES)
    firsts = {}
    for half in range(1, 25):
        on = calendar.stages(half, found)
        assert on
        low, high = adults_expected(on, group, False, calendar.growth(half, found))
        assert 0 <= low <= high <= max(20, peak_size(group)[1])
        for stage in on:
            firsts.setdefault(stage, half)
    seen = [firsts[stage] for stage in order if stage in firsts and stage != "over"]
    assert seen[0] == min(seen)
    assert firsts["over"] == 1


def test_days_to_the_end_fall_by_the_day() -> None:
    days = [
        colony(species="crabro", month=month, day=day).values["days_to_end"]
        for month, day in (("jul", 19), ("jul", 29), ("sep", 7))
    ]
    assert days[0][0] - days[1][0] == 10
    assert days[0][1] - days[2][1] == 50
    assert colony(species="crabro", month="jan").values["days_to_end"] == [0, 0]
    assert colony(species="mandarinia", month="aug").values["days_to_end"] is None


def test_the_same_day_half_a_year_on_is_the_same_in_the_south() -> None:
    north = colony(species="crabro", month="sep", day=8)
    south = colony(species="crabro", month="mar", day=8, hemisphere="south")
    assert north.values["stage"] == south.values["stage"]


def test_a_colony_grows_towards_its_peak() -> None:
    tops = [
        colony(species="velutina", month=month, day=8).values["adults_expected"][1]
        for month in ("may", "jun", "jul", "aug", "sep", "oct")
    ]
    assert tops == sorted(tops)
    assert tops[0] == 20
    assert tops[-1] == peak_size("velutina")[1]


def test_ragged_counts_widen_the_interval() -> None:
    even, uneven = rate([10] * 5, 1, False), rate([1, 2, 30, 15, 2], 1, False)
    assert even.mean == uneven.mean == 10
    assert not even.ragged
    assert uneven.ragged
    assert uneven.high > even.high
    assert workers(uneven, "vespula").high > workers(even, "vespula").high


def test_both_readings_of_the_rule_are_inside() -> None:
    told = workers(rate([20] * 5, 1, False), "vespula")
    assert told.other == 2 * told.number
    assert told.low < told.number < told.other < told.high
    assert workers(rate([20], 1, False), "hornet").other is None


def test_stops_withhold_the_workers() -> None:
    for given in ({"counts": [0, 0, 0]}, {"species": "polistes"}):
        result = colony(**given)
        assert result.stopped
        assert all(result.values[name] is None for name in WORKER_RESULTS)
        assert result.values["stage"]


def test_cautions() -> None:
    assert "No count makes it safe" in texts("caution")
    assert "Do not count on frost" in texts("caution", winters="mild")
    assert "first frost does not end" in texts("note", species="crabro", month="nov", day=8)
    assert "Report this hornet first" in texts("caution", species="velutina")
    assert "male in early summer" in texts("note", species="velutina", month="jun")
    assert "Protected in Germany" in texts("note", species="crabro")
    assert "Borrowed from relatives" in texts("note", species="squamosa")
    assert "four young nests" in texts("caution", species="crabro")
    assert "one way or both" in texts("caution")
    assert "ground yellowjackets" in texts("caution", species="maculata")
    assert "In spring" in texts("caution", month="may")
    assert "In spring" not in texts("caution", month="aug")
    assert "In spring" in texts("caution", month="nov", hemisphere="south")
    assert "five times a minute" in texts("note", counts=[12])
    assert "more than chance" in texts("note", counts=[1, 2, 30, 15, 2])


def test_the_choice_is_told_for_every_month() -> None:
    for group in GROUPS:
        for month in calendar.MONTHS:
            result = colony(species=group, month=month.lower(), counted="none")
            for name in ("if_left", "if_wait", "if_taken", "stage"):
                assert result.values[name].endswith((".", "inside.", "opens."))
            assert "workers" not in result.values or result.values["workers"] is None
    assert "authority" in colony(species="velutina").values["if_left"]
    assert "small job" in colony(species="crabro", month="apr").values["if_taken"]


# Outside values: the Alabama extension service (June 2019, as the press quotes it): more than
# 10 000 workers in June in nests that had wintered, 4000 to 5000 at a normal peak.
@pytest.mark.published("perennial_alabama")
@pytest.mark.parametrize("month", ["mar", "may", "jun"])
@pytest.mark.parametrize("workers_in", [10_000, 4_000])
def test_a_wintered_nest_is_handed_over(month: str, workers_in: int) -> None:
    per_minute = round(workers_in / tables.row("traffic_models", "vespula")["factor"])
    given = {"species": "squamosa", "counted": "in", "minutes": 1, "counts": [per_minute] * 5}
    spring = colony(month=month, day=23, **given)
    assert "hand it over" in texts("stop", month=month, day=23, **given)
    assert spring.values.get("days_to_end") is None
    assert spring.values.get("if_left") is None
    assert spring.values["workers"] > 0
    assert "hand it over" not in texts("stop", month="aug", **given)


@pytest.mark.parametrize("hemisphere", ["north", "south"])
def test_the_line_of_a_wintered_nest(hemisphere: str) -> None:
    month = {"north": "may", "south": "nov"}[hemisphere]
    for rate_in, stops in ((19, False), (20, True)):
        told = texts("stop", species="germanica", month=month, hemisphere=hemisphere,
                     counted="in", minutes=1, counts=[rate_in] * 5)  # fmt: skip
        assert ("hand it over" in told) is stops, rate_in
    both = texts("stop", species="germanica", month=month, hemisphere=hemisphere, counted="both",
                 minutes=1, counts=[38] * 5)  # fmt: skip
    assert "hand it over" not in both


def test_the_visit_stops_in_the_words_of_the_rules() -> None:
    stop = tables.row("visit_stops", "look_wintered")
    assert stop["do"] == rules.text("wintered_nest", "do")
    assert tables.row("visit_stops", "look_notifiable")["do"] == rules.text("invader")
    assert tables.row("visit_stops", "look_protected")["do"] == rules.text("protected", "ask")


def test_answers_of_the_page_are_those_of_the_calculator() -> None:
    page = (ROOT / "handbook" / "biology" / "colony_and_season.md").read_text(encoding="utf-8")
    result = colony(species="vulgaris", month="aug", counted="both", counts=[40, 36, 44, 42, 38])
    low, high = result.values["workers_range"]
    assert f"the rule gives {result.values['workers']:.0f} workers" in page
    assert f"it gives {result.values['workers_other']:.0f}" in page
    assert f"the range is {low:.0f} to {high:.0f}" in page
    late = colony(species="crabro", month="oct", day=23, counted="none")
    assert late.values["days_to_end"][0] == 0
    assert f"now and {late.values['days_to_end'][1]:.0f} days from now" in page

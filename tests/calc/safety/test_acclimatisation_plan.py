"""Getting used to the heat: the schedule's edges, stops and cautions."""

from __future__ import annotations

import tomllib
from itertools import pairwise
from pathlib import Path
from typing import Any

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from calc.declare import Incomplete, Result
from calc.safety.acclimatisation_plan import acclimatisation_plan
from calc.safety.acclimatisation_plan.cautions import HELD_BACK
from calc.safety.acclimatisation_plan.schedule import minutes, share, spells

PEOPLE = ["new_heat", "new_suit", "hot_spell", "back", "used"]
QUICK = settings(max_examples=150, deadline=None, derandomize=True, database=None)


def run(**inputs: Any) -> Result:
    return acclimatisation_plan.run(acclimatisation_plan.example() | inputs)


def texts(result: Result, level: str) -> str:
    return " ".join(each.text for each in result.cautions if each.level == level)


@pytest.mark.parametrize("schedule", ["new", "returning"])
def test_days_never_fall_and_end_at_the_whole(schedule: str) -> None:
    shares = [share(schedule, day) for day in range(1, 20)]
    assert all(a <= b for a, b in pairwise(shares))
    assert shares[-1] == 100


@QUICK
@given(st.floats(10, 480), st.integers(1, 60))
def test_new_people_never_get_more_than_experienced_ones(full: float, day: int) -> None:
    today = [
        run(person=person, full_minutes=full, day=day).values["today_minutes"]
        for person in ("new_heat", "back", "used")
    ]
    assert today == sorted(today)
    assert today[-1] <= full + 1e-6


@QUICK
@given(st.integers(1, 480), st.integers(1, 60))
def test_spells_hold_the_minutes_and_no_spell_is_too_long(in_suit: int, work: int) -> None:
    count, on_site = spells(in_suit, work)
    assert count is not None
    assert on_site is not None
    assert (count - 1) * work < in_suit <= count * work
    assert on_site == in_suit + (count - 1) * (60 - work)


def test_rounding_is_down() -> None:
    assert minutes(119, 20) == 23
    assert minutes(50, 20) == 10


def test_spells_of_a_plan() -> None:
    result = run(person="used", full_minutes=60, work_minutes=20)
    assert result.values["spells"] == 3
    assert result.values["on_site"] == 60 + 2 * 40


@pytest.mark.parametrize(
    ("inputs", "words"),
    [
        ({"state": "ill"}, "Do not work in heat today"),
        ({"state": "signs"}, "See a doctor first"),
        ({"work_minutes": 0}, "no work minutes"),
    ],
)
def test_stops_withhold_the_minutes(inputs: dict[str, Any], words: str) -> None:
    result = run(**inputs)
    assert words in texts(result, "stop")
    assert not result.charts
    for name in set(HELD_BACK) - {"plan"}:
        assert result.values[name] is None
    assert not result.values["plan"]
    assert result.values["signs"]
    assert result.values["cooling"]


@pytest.mark.parametrize(
    ("inputs", "words"),
    [
        ({"state": "low"}, "lightest work"),
        ({"person": "used"}, "count as new again"),
        ({"person": "new_heat"}, "Nobody works alone"),
        ({}, "the shorter one wins"),
    ],
)
def test_cautions(inputs: dict[str, Any], words: str) -> None:
    assert words in texts(run(**inputs), "caution")


@pytest.mark.parametrize(
    ("inputs", "words"), [({}, "NIOSH and OSHA"), ({"person": "new_suit"}, "at home first")]
)
def test_notes(inputs: dict[str, Any], words: str) -> None:
    assert words in texts(run(**inputs), "note")


@pytest.mark.parametrize("person", PEOPLE)
def test_chart_shows_today(person: str) -> None:
    result = run(person=person, day=2)
    today = result.charts[0].series[-1]
    assert today.y == (result.values["today_minutes"],)


HIGHER = "50, 60, 80, 100 percent"


@pytest.mark.parametrize("person", ["back", "hot_spell"])
def test_where_the_bodies_differ_the_lower_start_is_taken_and_both_are_shown(person: str) -> None:
    days = [run(person=person, full_minutes=100, day=day).values for day in range(1, 6)]
    assert [each["today_minutes"] for each in days] == [20, 40, 60, 80, 100]
    told = texts(run(person=person), "caution")
    assert HIGHER in told
    assert "20" in told
    # 20 % for someone experienced in a hot spell is in print nowhere: it must be told as ours.
    assert ("our choice" in told) == (person == "hot_spell")


@pytest.mark.parametrize("person", ["new_heat", "new_suit", "used"])
def test_no_second_schedule_where_none_is_printed(person: str) -> None:
    assert HIGHER not in texts(run(person=person), "caution")


def test_our_own_start_of_a_hot_spell_is_no_printed_check() -> None:
    path = Path(__file__).parents[2] / "published" / "stings.toml"
    checks = tomllib.loads(path.read_text(encoding="utf-8"))["check"]
    assert not [each for each in checks if each.get("inputs", {}).get("person") == "hot_spell"]


@pytest.mark.parametrize("state", ["ill", "signs"])
def test_who_is_ill_is_stopped_before_the_plan_is_known(state: str) -> None:
    told = acclimatisation_plan.answer({"state": state})
    assert isinstance(told, Incomplete)
    assert told.stopped
    assert not acclimatisation_plan.answer({"state": "well"}).stopped


def test_who_is_used_to_it_is_not_asked_for_the_day() -> None:
    given = {"state": "well", "person": "used", "full_minutes": 120}
    assert acclimatisation_plan.run(given).values["today_minutes"] == 120
    told = acclimatisation_plan.answer(given | {"person": "back"})
    assert isinstance(told, Incomplete)
    assert [each.name for each in told.missing] == ["day"]

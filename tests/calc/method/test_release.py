"""Release, relocate or feed: every stop and caution, and what must hold whatever is typed."""

from __future__ import annotations

from typing import Any

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from calc.method import release_cautions
from calc.method import release_numbers as numbers
from calc.method.passing_life_on import passing_life_on
from tests.calc.method.caution_cover import check, written

MOVE, FEED = {"purpose": "move"}, {"purpose": "feed"}
STOPS: list[tuple[dict[str, Any], str]] = [
    ({"status": "invader"}, "Never let it go or move it alive"),
    ({"status": "introduced"}, "introduced species unless"),
    ({"status": "unknown"}, "Find out first"),
    ({"status": "protected"}, "only under a permit"),
    ({"distance": 200}, "Not here"),
    (FEED | {"status": "invader"}, "belong to the authority"),
    (FEED | {"history": "unknown"}, "nobody can say"),
    (FEED | {"history": "treated"}, "Do not feed it to any animal"),
    (FEED | {"brood_state": "bad"}, "mouldy brood"),
    (FEED | {"brood_state": "dirty"}, "paint dust on it"),
]
CAUTIONS: list[tuple[dict[str, Any], str, str]] = [
    ({"status": "protected_permit"}, "note", "The permit says"),
    ({"agreed": "no"}, "caution", "Ask first"),
    ({"temperature": 9}, "caution", "Wait: too cold"),
    ({}, "caution", "Open the cage"),
    ({}, "note", "factor of ten"),
    (MOVE | {"km": 2}, "caution", "Too near"),
    (MOVE, "caution", "stand-in"),
    (MOVE, "caution", "Catch foragers"),
    (MOVE, "note", "fly much farther"),
    (FEED | {"eggs": "sold"}, "caution", "food business"),
    (FEED, "caution", "in flat bags"),
    (FEED, "note", "Thaw it in a closed tub"),
    (FEED, "note", "band from few studies"),
]


def figure(inputs: dict[str, Any], what: str) -> str:
    lines = passing_life_on.run(inputs).values["figures"]
    found = [line["answer"] for line in lines if what in line["what"]]
    assert len(found) == 1
    return str(found[0])


@pytest.mark.parametrize(("inputs", "part"), STOPS)
def test_stop_hides_the_answer(inputs: dict[str, Any], part: str) -> None:
    result = check(passing_life_on, inputs, "stop", part)
    assert result.values["verdict"] is None


@pytest.mark.parametrize("status", ["invader", "introduced", "unknown", "protected"])
def test_the_same_species_may_not_be_moved_either(status: str) -> None:
    result = passing_life_on.run(MOVE | {"status": status})
    assert result.stopped
    assert result.values["figures"] is None
    assert not result.charts


@pytest.mark.parametrize(("inputs", "level", "part"), CAUTIONS)
def test_caution(inputs: dict[str, Any], level: str, part: str) -> None:
    check(passing_life_on, inputs, level, part)


def test_every_caution_is_tested() -> None:
    # One call writes both wordings of a nest with poison.
    told = {p for _, _, p in CAUTIONS} | {p for _, p in STOPS}
    assert written(release_cautions) == len(told) - 1


def test_doubt_about_poison_hides_every_figure() -> None:
    for history in ("unknown", "treated"):
        result = passing_life_on.run(FEED | {"history": history})
        assert result.values["verdict"] is None
        assert result.values["figures"] is None
        assert not result.charts


@pytest.mark.parametrize(
    ("inputs", "word"),
    [
        ({"temperature": 10}, "too cold"),
        ({"wind": 9}, "too windy"),
        ({"sky": "rain"}, "wet"),
        ({"daylight": 1}, "too late"),
        ({"age": 3}, "cannot fly yet"),
        ({"flying": "no"}, "do not fly"),
    ],
)
def test_each_condition_holds_them_back(inputs: dict[str, Any], word: str) -> None:
    result = passing_life_on.run(inputs)
    assert word in result.values["verdict"]
    answers = [line["answer"] for line in result.values["figures"]]
    assert sum(answer.endswith("not met") for answer in answers) == 1


def test_all_conditions_met_lets_them_go() -> None:
    result = passing_life_on.run({})
    answers = [line["answer"] for line in result.values["figures"]]
    assert sum(answer.endswith(": met") for answer in answers) == 6
    assert not any("not met" in answer for answer in answers)
    assert not result.stopped


def test_portion_and_days_of_a_worked_flock() -> None:
    assert figure(FEED, "Brood a day") == "69 g (2.4 oz)"
    assert figure(FEED, "Bags") == "13"
    assert figure(FEED | {"share": 5}, "Bags") == "25"


@settings(max_examples=60, deadline=None, derandomize=True)
@given(km=st.floats(0, 12))
def test_homing_stays_inside_its_limits(km: float) -> None:
    share, (low, high) = numbers.homing(km)
    assert 0 <= low < high <= 100
    if share is None:
        assert km > 5
        assert low == 0
    else:
        assert low <= share <= high


def test_five_kilometres_lose_most_and_two_do_not() -> None:
    assert numbers.homing(5)[1][1] < 15
    assert numbers.homing(2)[1][0] > 30


def test_nests_next_year_span_the_disagreement() -> None:
    low, high = numbers.new_nests(500)
    assert low == pytest.approx(0.4)
    assert high == pytest.approx(20)

"""Letting go, moving, feeding: every stop and caution, and what must hold whatever is typed."""

from __future__ import annotations

from typing import Any

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from calc.declare import Calculator, Incomplete
from calc.method import passing_on
from calc.method.feeding_brood import cautions as feeding_cautions
from calc.method.feeding_brood import feeding_brood
from calc.method.letting_go import cautions as release_cautions
from calc.method.letting_go import letting_go
from calc.method.letting_go.nests import new_nests
from calc.method.moving_a_nest import cautions as moving_cautions
from calc.method.moving_a_nest import moving_a_nest
from calc.method.moving_a_nest.homing import homing
from tests.calc.method.caution_cover import check, written

GO, MOVE, FEED = letting_go, moving_a_nest, feeding_brood
Case = tuple[Calculator, dict[str, Any], str]
STOPS: list[Case] = [
    (GO, {"status": "invader"}, "Never let it go or move it alive"),
    (GO, {"status": "introduced"}, "introduced species unless"),
    (GO, {"status": "unknown"}, "Find out first"),
    (GO, {"status": "protected"}, "only under a permit"),
    (GO, {"distance": 200}, "Not here"),
    (FEED, {"status": "invader"}, "belong to the authority"),
    (FEED, {"history": "unknown"}, "nobody can say"),
    (FEED, {"history": "treated"}, "Do not feed it to any animal"),
    (FEED, {"brood_state": "bad"}, "mouldy brood"),
    (FEED, {"brood_state": "dirty"}, "paint dust on it"),
]
CAUTIONS: list[tuple[Calculator, dict[str, Any], str, str]] = [
    (GO, {"status": "protected_permit"}, "note", "The permit says"),
    (GO, {"agreed": "no"}, "caution", "Ask first"),
    (GO, {"weather": "cold"}, "caution", "Wait: too cold"),
    (GO, {}, "caution", "Open the cage"),
    (GO, {}, "note", "factor of ten"),
    (MOVE, {"km": 2}, "caution", "Too near"),
    (MOVE, {}, "caution", "stand-in"),
    (MOVE, {}, "caution", "Catch foragers"),
    (MOVE, {}, "note", "fly much farther"),
    (FEED, {"eggs": "sold"}, "caution", "food business"),
    (FEED, {}, "caution", "in flat bags"),
    (FEED, {}, "note", "Thaw it in a closed tub"),
    (FEED, {}, "note", "band from few studies"),
]


def run(calculator: Calculator, inputs: dict[str, Any]) -> Any:
    return calculator.run(calculator.example() | inputs)


def figure(inputs: dict[str, Any], what: str) -> str:
    lines = run(FEED, inputs).values["figures"]
    found = [line["answer"] for line in lines if what in line["what"]]
    assert len(found) == 1
    return str(found[0])


@pytest.mark.parametrize(("calculator", "inputs", "part"), STOPS)
def test_stop_hides_the_answer(calculator: Calculator, inputs: dict[str, Any], part: str) -> None:
    result = check(calculator, calculator.example() | inputs, "stop", part)
    assert result.values["verdict"] is None


@pytest.mark.parametrize(("calculator", "inputs", "part"), STOPS)
def test_a_stop_does_not_wait_for_the_rest(
    calculator: Calculator, inputs: dict[str, Any], part: str
) -> None:
    told = calculator.answer(inputs)
    assert isinstance(told, Incomplete)
    assert any(each.level == "stop" and part in each.text for each in told.cautions)
    assert not told.ranges


@pytest.mark.parametrize("status", ["invader", "introduced", "unknown", "protected"])
def test_the_same_species_may_not_be_moved_either(status: str) -> None:
    result = run(MOVE, {"status": status})
    assert result.stopped
    assert result.values["figures"] is None
    assert not result.charts


@pytest.mark.parametrize(("calculator", "inputs", "level", "part"), CAUTIONS)
def test_caution(calculator: Calculator, inputs: dict[str, Any], level: str, part: str) -> None:
    check(calculator, calculator.example() | inputs, level, part)


def test_every_caution_is_tested() -> None:
    # One call writes both wordings of a nest with poison.
    told = {p for _, _, _, p in CAUTIONS} | {p for _, _, p in STOPS}
    modules = (passing_on, release_cautions, moving_cautions, feeding_cautions)
    assert sum(map(written, modules)) == len(told) - 1


def test_doubt_about_poison_hides_every_figure() -> None:
    for history in ("unknown", "treated"):
        result = run(FEED, {"history": history})
        assert result.values["verdict"] is None
        assert result.values["figures"] is None
        assert not result.charts


@pytest.mark.parametrize(
    ("inputs", "word"),
    [
        ({"weather": "cold"}, "too cold"),
        ({"weather": "windy"}, "too windy"),
        ({"weather": "wet"}, "wet"),
        ({"weather": "late"}, "too late"),
        ({"age": 3}, "cannot fly yet"),
        ({"flying": "no"}, "do not fly"),
    ],
)
def test_each_condition_holds_them_back(inputs: dict[str, Any], word: str) -> None:
    result = run(GO, inputs)
    assert word in result.values["verdict"]
    answers = [line["answer"] for line in result.values["figures"]]
    assert answers.count("not met") == 1


def test_all_conditions_met_lets_them_go() -> None:
    result = run(GO, {})
    answers = [line["answer"] for line in result.values["figures"]]
    assert answers.count("met") == 6
    assert "not met" not in answers
    assert not result.stopped


def test_no_number_of_animals_is_made_up() -> None:
    bare = {key: GO.example()[key] for key in ("status", "distance", "weather", "age", "flying")}
    result = GO.run(bare)
    assert result.values["verdict"] == "Let them go now."
    assert [line["answer"] for line in result.values["figures"]] == ["met"] * 6
    assert any("Ask first" in each.text for each in result.cautions)


def test_portion_and_days_of_a_worked_flock() -> None:
    assert figure({}, "Brood a day") == "69 g (2.4 oz)"
    assert figure({}, "Bags") == "13"
    assert figure({"share": 5}, "Bags") == "25"


@settings(max_examples=60, deadline=None, derandomize=True)
@given(km=st.floats(0, 12))
def test_homing_stays_inside_its_limits(km: float) -> None:
    share, (low, high) = homing(km)
    assert 0 <= low < high <= 100
    if share is None:
        assert km > 5
        assert low == 0
    else:
        assert low <= share <= high


def test_five_kilometres_lose_most_and_two_do_not() -> None:
    assert homing(5)[1][1] < 15
    assert homing(2)[1][0] > 30


def test_nests_next_year_span_the_disagreement() -> None:
    low, high = new_nests(500)
    assert low == pytest.approx(0.4)
    assert high == pytest.approx(20)

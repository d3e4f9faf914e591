"""Keeping people away: zones, stops, and what must never be judged better."""

from __future__ import annotations

import re
from itertools import pairwise
from typing import Any

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from calc import tables
from calc.declare import Incomplete, Result
from calc.safety.keep_away import keep_away
from calc.safety.keep_away.cautions import HELD_BACK
from calc.safety.keep_away.zones import (
    Zone,
    attackers,
    place,
    published_range,
    row_of,
    zone,
)
from docs_build.page import chart

GROUPS = ["yellowjacket", "aerial", "hornet", "yellow_legged", "giant", "paper_wasp"]
WORK = ["passive", "working", "vibration"]
QUICK = settings(max_examples=200, deadline=None, derandomize=True, database=None)

nests = st.fixed_dictionaries(
    {
        "group": st.sampled_from(GROUPS),
        "disturbance": st.sampled_from(WORK),
        "raised": st.booleans(),
        "wind": st.floats(0, 30),
        "downwind": st.booleans(),
    }
)


def run(**inputs: Any) -> Result:
    """Run the example with hornets, where the lines lie at 10 and 30 m, unless told otherwise."""
    return keep_away.run(keep_away.example() | {"group": "hornet"} | inputs)


def said(result: Result, level: str) -> str:
    return " ".join(each.text for each in result.cautions if each.level == level)


def sizes(found: Zone) -> tuple[float, ...]:
    return found.inner, found.outer, found.machines, found.downwind


def no_smaller(worse: Zone, than: Zone) -> bool:
    return all(a >= b for a, b in zip(sizes(worse), sizes(than), strict=True))


@pytest.mark.parametrize(
    ("group", "disturbance", "raised", "row"),
    [
        ("yellowjacket", "working", False, "yellowjacket"),
        ("paper_wasp", "working", False, "yellowjacket"),
        ("yellowjacket", "working", True, "hornet"),
        ("yellowjacket", "vibration", False, "hornet"),
        ("yellowjacket", "vibration", True, "angry"),
        ("hornet", "working", False, "hornet"),
        ("aerial", "working", True, "angry"),
        ("hornet", "vibration", False, "angry"),
        ("hornet", "passive", False, "passive"),
        ("hornet", "passive", True, "raised"),
    ],
)
def test_which_row(group: str, disturbance: str, raised: bool, row: str) -> None:
    assert row_of(group, disturbance, raised) == row


def test_rows_of_the_table_grow() -> None:
    rows = tables.rows("zones")
    for column in ("inner", "outer", "machines"):
        assert all(a[column] <= b[column] for a, b in pairwise(rows))
    assert all(row["inner"] < row["outer"] <= row["machines"] for row in rows)


@QUICK
@given(nests)
def test_more_disturbed_is_never_nearer(nest: dict[str, Any]) -> None:
    found = [zone(**(nest | {"disturbance": each})) for each in WORK]
    assert all(no_smaller(b, a) for a, b in pairwise(found))
    assert no_smaller(zone(**(nest | {"raised": True})), zone(**(nest | {"raised": False})))


@QUICK
@given(nests, st.floats(0, 20))
def test_more_wind_is_never_nearer(nest: dict[str, Any], more: float) -> None:
    assert no_smaller(zone(**(nest | {"wind": nest["wind"] + more})), zone(**nest))
    assert no_smaller(zone(**(nest | {"downwind": True})), zone(**(nest | {"downwind": False})))


@QUICK
@given(nests)
def test_hornets_are_never_nearer_than_yellowjackets(nest: dict[str, Any]) -> None:
    wasp = zone(**(nest | {"group": "yellowjacket"}))
    for group in ("hornet", "yellow_legged", "giant"):
        assert no_smaller(zone(**(nest | {"group": group})), wasp)


@QUICK
@given(nests)
def test_outer_zone_is_never_nearer_than_the_published_distance(nest: dict[str, Any]) -> None:
    alone = nest["disturbance"] == "passive"
    assert zone(**nest).outer >= published_range(nest["group"], alone=alone)[1]


@pytest.mark.parametrize(
    ("distance", "expected"),
    [(9.99, "inner"), (10.0, "inner"), (10.01, "outer"), (30.0, "outer"), (30.01, "beyond")],
)
def test_just_under_at_and_over_a_line(distance: float, expected: str) -> None:
    found = zone("hornet", "working", False, 0.0, False)
    assert (found.inner, found.outer) == (10.0, 30.0)
    assert place(distance, found) == expected


@pytest.mark.parametrize(("wind", "wider"), [(1.99, 30.0), (2.0, 50.0), (2.01, 50.0)])
def test_felt_wind_moves_the_downwind_line(wind: float, wider: float) -> None:
    found = zone("hornet", "working", False, wind, True)
    assert (found.outer, found.downwind) == (30.0, wider)


ORDER = ["inner", "outer", "beyond"]


@QUICK
@given(nests, st.floats(0, 80), st.floats(0, 80))
def test_nearer_is_never_judged_farther(nest: dict[str, Any], a: float, b: float) -> None:
    found, (near, far) = zone(**nest), sorted((a, b))
    assert ORDER.index(place(near, found)) <= ORDER.index(place(far, found))


@pytest.mark.parametrize(
    ("inputs", "words"),
    [
        ({"group": "giant"}, "Giant hornets"),
        ({"group": "yellow_legged"}, "ask the authority"),
        ({"loose": "loose"}, "Children or animals"),
        ({"way_closed": "no"}, "walk into the outer zone"),
        ({"way": "road", "way_closed": "no", "way_distance": 10}, "An open road lies in the inner"),
        ({"neighbour": "not_told"}, "A neighbour within"),
    ],
)
def test_stops(inputs: dict[str, Any], words: str) -> None:
    result = run(**inputs)
    assert words in said(result, "stop")
    assert all(result.values[name] is None for name in HELD_BACK)
    # The distances stay: they keep people away.
    assert result.values["inner"]
    assert result.values["outer"]
    assert result.charts


@pytest.mark.parametrize(
    "inputs",
    [
        {},
        {"group": "giant", "disturbance": "passive"},
        {"way_closed": "no", "way_distance": 30.1},
        {"way_closed": "no", "disturbance": "passive"},
        {"neighbour": "not_told", "neighbour_distance": 30.1},
        {"way": "none"},
        {"way": "road", "way_closed": "no", "way_distance": 10.1},
        {"neighbour": "none"},
    ],
)
def test_no_stop_without_cause(inputs: dict[str, Any]) -> None:
    assert not run(**inputs).stopped


def test_way_on_the_line_stops() -> None:
    assert run(way_closed="no", way_distance=30).stopped
    assert not run(way_closed="no", way_distance=40).stopped
    assert run(way_closed="no", way_distance=40, wind=3, downwind="yes").stopped


@pytest.mark.parametrize(
    ("inputs", "words"),
    [
        ({}, "Run. Straight. Now."),
        ({}, "Our zones for work are a suggestion"),
        ({}, "Light clothes, covered hair"),
        ({"house": 10}, "within the inner zone"),
        ({"house": 10.1}, "within the outer zone"),
        ({"door": 30.1}, "beyond the outer zone"),
        ({"group": "giant", "disturbance": "passive"}, "Report this species"),
        ({"disturbance": "vibration"}, "No saw while insects fly"),
        ({"wind": 2}, "upwind"),
        ({"way": "road", "way_closed": "no", "way_distance": 30}, "a person at the kerb"),
    ],
)
def test_cautions(inputs: dict[str, Any], words: str) -> None:
    assert words in said(run(**inputs), "caution")


@pytest.mark.parametrize(
    ("inputs", "words"),
    [
        ({"house": 30.1}, "The house lies"),
        ({"door": 30}, "beyond the outer zone"),
        ({"wind": 1.9}, "upwind"),
        ({"way": "road", "way_closed": "no", "way_distance": 30.1}, "at the kerb"),
        ({"way": "road", "way_closed": "yes", "way_distance": 5}, "at the kerb"),
    ],
)
def test_cautions_not_said_without_cause(inputs: dict[str, Any], words: str) -> None:
    assert words not in said(run(**inputs), "caution")


def test_note_names_the_countries() -> None:
    assert "local and comes first" in said(run(), "note")


def test_walking_away_is_never_told_better_than_running() -> None:
    assert attackers("walk", 4.9) == "no figure"
    assert attackers("walk", 10) != attackers("run", 10)


def test_table_holds_only_places_that_exist() -> None:
    few = run(way="none", neighbour="none").values["places"]
    assert [row["place"] for row in few] == ["Door or window", "Closed door for the run"]
    assert len(run().values["places"]) == 4


@pytest.mark.parametrize("customary", [False, True])
@pytest.mark.parametrize(
    "inputs", [{}, {"group": "hornet", "disturbance": "passive"}, {"house": 45, "colony": "large"}]
)
def test_the_plan_is_to_scale(inputs: dict[str, Any], customary: bool) -> None:
    """Circles come out round, and all points lie inside the drawn field."""
    drawn = run(**inputs).charts[0]
    svg = chart.draw(drawn.as_dict(), customary)
    paths = [re.findall(r"(-?[\d.]+),(-?[\d.]+)", path) for path in re.findall(r' d="(.*?)"', svg)]
    rings = [path for path in paths if len(path) > 40]
    assert len(rings) == 2
    for ring in rings:
        x, y = ([float(pair[axis]) for pair in ring] for axis in (0, 1))
        assert (max(x) - min(x)) / (max(y) - min(y)) == pytest.approx(1, abs=0.01)
    wide, high = drawn.x.high, drawn.y.high
    assert wide is not None
    assert high is not None
    for series in drawn.series:
        assert all(abs(each) <= wide for each in series.x)
        assert all(abs(each) <= high for each in series.y)


SAID = {"group": "hornet", "disturbance": "working", "colony": "small", "loose": "in"}


def test_what_nobody_said_is_judged_by_the_worse() -> None:
    """Not known is no better than the worse of the answers, for the zones and for the stops."""
    unsaid = keep_away.run(SAID | {"neighbour": "told"})
    worst = keep_away.run(
        SAID | {"neighbour": "told", "disturbed_before": "yes", "wind": 5, "downwind": "yes"}
    )
    for name in ("inner", "outer", "downwind", "machines"):
        assert unsaid.values[name] == worst.values[name]
    assert "Pace it out" in said(unsaid, "caution")
    assert "Pace it out" not in said(run(), "caution")
    assert unsaid.values["places"] == []
    assert "A neighbour within" in said(keep_away.run(SAID | {"neighbour": "not_told"}), "stop")


@pytest.mark.parametrize(
    ("given", "words"),
    [
        ({"loose": "loose"}, "Children or animals"),
        ({"group": "giant", "disturbance": "working"}, "Giant hornets"),
        ({"neighbour": "not_told", "disturbance": "vibration"}, "A neighbour within"),
    ],
)
def test_a_certain_stop_does_not_wait(given: dict[str, str], words: str) -> None:
    told = keep_away.answer(given)
    assert isinstance(told, Incomplete)
    assert any(words in each.text for each in told.cautions if each.level == "stop")

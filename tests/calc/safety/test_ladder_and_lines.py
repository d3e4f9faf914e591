"""Ladder and power lines: nearer, heavier and flatter is never judged better; edges."""

from __future__ import annotations

import math
from typing import Any

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from calc.declare import Incomplete, Result
from calc.safety.ladder_and_lines import ladder_and_lines, lines, setting
from calc.safety.ladder_and_lines.cautions import HELD_BACK

QUICK = settings(max_examples=150, deadline=None, derandomize=True, database=None)
FOOT = 0.3048

sites = st.fixed_dictionaries(
    {
        "lines": st.sampled_from(["known", "unknown"]),
        "voltage": st.floats(0.1, 1400),
        "line_distance": st.floats(0, 60),
        "support_height": st.floats(1, 12),
        "nest_height": st.floats(0.3, 15),
        "person": st.floats(30, 200),
        "carried": st.floats(0, 90),
        "rating": st.sampled_from(["IAA", "IA", "I", "II", "III", "en131", "unknown"]),
    }
)


def run(**inputs: Any) -> Result:
    return ladder_and_lines.run(ladder_and_lines.example() | inputs)


def near(kilovolts: float, distance: float, **more: Any) -> Result:
    return run(lines="known", voltage=kilovolts, line_distance=distance, **more)


def stops(result: Result) -> int:
    return sum(each.level == "stop" for each in result.cautions)


def room(result: Result, name: str) -> float:
    value = result.values[name]
    return -math.inf if value is None else value


@QUICK
@given(sites, st.floats(0.01, 20))
def test_nearer_is_never_better(site: dict[str, Any], less: float) -> None:
    nearer = site | {"line_distance": max(site["line_distance"] - less, 0)}
    assert room(run(**nearer), "line_room") <= room(run(**site), "line_room")
    assert stops(run(**nearer)) >= stops(run(**site))


@QUICK
@given(sites, st.floats(0.1, 300))
def test_more_voltage_is_never_better(site: dict[str, Any], more: float) -> None:
    known = site | {"lines": "known"}
    higher = known | {"voltage": min(site["voltage"] + more, 1500)}
    assert room(run(**higher), "line_room") <= room(run(**known), "line_room")
    assert stops(run(**higher)) >= stops(run(**known))


@QUICK
@given(sites)
def test_an_unknown_voltage_is_never_better(site: dict[str, Any]) -> None:
    known = site | {"lines": "known", "voltage": min(site["voltage"], 1000)}
    unknown = site | {"lines": "unknown"}
    assert room(run(**unknown), "line_room") <= room(run(**known), "line_room")


@QUICK
@given(sites, st.floats(0.1, 50))
def test_heavier_is_never_better(site: dict[str, Any], more: float) -> None:
    heavier = site | {"person": site["person"] + more}
    assert run(**heavier).values["load_room"] < run(**site).values["load_room"]
    assert stops(run(**heavier)) >= stops(run(**site))


@QUICK
@given(sites)
def test_every_run_has_cautions_sources_and_no_promise(site: dict[str, Any]) -> None:
    result = run(**site)
    assert sum(each.level == "caution" for each in result.cautions) >= 2
    assert all(each.source for each in result.cautions)
    assert result.sources
    assert "safe" not in str(result.as_dict()).lower().replace("safety", "")


@pytest.mark.parametrize(
    ("kilovolts", "feet"), [(12, 10), (50, 10), (138, 15), (230, 20), (400, 50), (1000, 50)]
)
def test_under_at_and_over_the_distance_to_a_line(kilovolts: float, feet: float) -> None:
    at = feet * FOOT
    assert near(kilovolts, at).values["clearance"] == pytest.approx(at)
    assert not near(kilovolts, at + 0.001).stopped
    assert not near(kilovolts, at).stopped
    inside = near(kilovolts, at - 0.001)
    assert inside.stopped
    assert all(inside.values[name] is None for name in HELD_BACK)
    assert "do not start" in inside.values["verdict"]


def test_a_voltage_beyond_the_tables_has_no_distance() -> None:
    assert not near(1000, 60).stopped
    beyond = near(1001, 100)
    assert beyond.stopped
    assert beyond.values["clearance"] is None


def test_part_steps_of_ten_kilovolts_count_whole() -> None:
    assert lines.clearance_unqualified(50.1) == pytest.approx(10 + 4 / 12)
    assert lines.clearance_unqualified(60) == pytest.approx(10 + 4 / 12)
    assert lines.clearance_unqualified(60.1) == pytest.approx(10 + 8 / 12)


@pytest.mark.parametrize("rating", ["IAA", "IA", "I", "II", "III", "en131"])
def test_under_at_and_over_the_rating(rating: str) -> None:
    limit = setting.duty_limit(rating)
    far = {"lines": "none", "suit": 0, "carried": 0, "rating": rating}
    assert not run(person=limit - 0.01, **far).stopped
    assert not run(person=limit, **far).stopped
    assert run(person=limit + 0.01, **far).stopped


def test_a_ladder_without_a_mark_counts_as_the_lightest() -> None:
    assert setting.duty_limit("unknown") == setting.duty_limit("III")


@pytest.mark.parametrize(
    ("angle", "stopped"), [(64.9, True), (65.0, False), (80.0, False), (80.1, True)]
)
def test_under_at_and_over_the_angles(angle: float, stopped: bool) -> None:
    foot = 4 / math.tan(math.radians(angle))
    assert run(lines="none", support_height=4, foot_distance=foot).stopped is stopped


@pytest.mark.parametrize(("off", "told"), [(2.4, False), (2.6, True), (-2.4, False), (-2.6, True)])
def test_the_band_around_the_rule(off: float, told: bool) -> None:
    foot = 4 / math.tan(math.radians(setting.rule_angle() + off))
    result = run(lines="none", support_height=4, foot_distance=foot)
    assert any("Set the foot again" in each.text for each in result.cautions) is told


def test_the_set_ladder_is_a_right_triangle() -> None:
    for height in (1.0, 3.0, 6.5):
        length, foot = setting.working_length(height), setting.foot_out(height)
        assert math.hypot(height, foot) == pytest.approx(length)
        assert setting.angle_of(height, foot) == pytest.approx(setting.rule_angle())


def test_rails_too_short_stop_and_a_short_stand_above_the_roof_is_told() -> None:
    length = setting.working_length(4)
    assert run(lines="none", rail_length=length - 0.01).stopped
    short = run(lines="none", rail_length=length + 0.5, roof="yes")
    assert not short.stopped
    assert any("above the roof" in each.text for each in short.cautions)
    assert not any("above the roof" in each.text for each in run(lines="none").cautions)


def test_metal_rails_near_a_line_are_told() -> None:
    assert any("metal ladder" in each.text for each in near(12, 30, rails="metal").cautions)
    assert not any("metal ladder" in each.text for each in near(12, 30).cautions)


def test_too_near_a_line_stops_before_the_ladder_is_known() -> None:
    told = ladder_and_lines.answer({"lines": "unknown", "line_distance": 2})
    assert isinstance(told, Incomplete)
    assert told.stopped
    assert "support_height" in {each.name for each in told.missing}


def test_a_distance_nobody_gave_stops_nothing_and_sets_nothing() -> None:
    given = ladder_and_lines.example()
    del given["line_distance"]
    told = ladder_and_lines.answer(given)
    assert isinstance(told, Incomplete)
    assert not told.stopped
    assert "foot_out" not in told.ranges


def test_without_a_line_its_distance_is_not_asked() -> None:
    missing = ladder_and_lines.reading({"lines": "none"}).missing
    assert not {"line_distance", "voltage"} & {each.name for each in missing}

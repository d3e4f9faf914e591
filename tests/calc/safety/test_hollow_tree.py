"""Hollow or dead tree: less wood is never judged better; edges of every rule."""

from __future__ import annotations

import math
from typing import Any

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from scipy import integrate

from calc import rules
from calc.declare import Incomplete, Result
from calc.errors import InputError
from calc.safety.hollow_tree import hollow_tree, section

QUICK = settings(max_examples=150, deadline=None, derandomize=True, database=None)
LOSSES = ["wagener", "coder", "smiley_before", "opening_before", "ring_before"]

stems = st.fixed_dictionaries(
    {
        "diameter": st.floats(10, 200),
        "share": st.floats(0, 0.5),
        "opening": st.floats(0, 10),
        "cut": st.sampled_from(["no", "yes"]),
        "window": st.floats(0.5, 15),
        "height": st.sampled_from(["chest", "above", "ladder"]),
        "dead": st.sampled_from(["alive", "recent", "long", "unknown"]),
        "ash": st.sampled_from(["no", "yes"]),
        "lean": st.floats(0, 60),
        "signs": st.sampled_from(["none", "some", "not_looked"]),
    }
)


def run(**inputs: Any) -> Result:
    share = inputs.pop("share", None)
    if share is not None:
        inputs["wall"] = share * inputs["diameter"]
    return hollow_tree.run(hollow_tree.example() | inputs)


def calm(diameter: float, wall: float, **more: Any) -> Result:
    plain = {"opening": 0, "dead": "alive", "lean": 0, "signs": "none"}
    return run(**(plain | {"diameter": diameter, "wall": wall} | more))


def stops(result: Result) -> int:
    return sum(each.level == "stop" for each in result.cautions)


def not_better(worse: Result, than: Result) -> bool:
    more = all(worse.values[name] >= than.values[name] - 1e-6 for name in [*LOSSES, "rules_before"])
    return more and worse.stopped >= than.stopped


@QUICK
@given(stems, st.floats(0, 1))
def test_a_thinner_wall_is_never_better(stem: dict[str, Any], part: float) -> None:
    assert not_better(run(**(stem | {"share": stem["share"] * part})), run(**stem))


@QUICK
@given(stems, st.floats(0, 5))
def test_a_wider_opening_is_never_better(stem: dict[str, Any], more: float) -> None:
    assert not_better(run(**(stem | {"opening": stem["opening"] + more})), run(**stem))


@QUICK
@given(stems)
def test_a_window_is_never_better_than_none(stem: dict[str, Any]) -> None:
    shut, cut = run(**(stem | {"cut": "no"})), run(**(stem | {"cut": "yes"}))
    assert cut.values["rules_after"] >= cut.values["rules_before"] == shut.values["rules_before"]
    assert cut.values["smiley_after"] >= cut.values["smiley_before"] - 1e-9
    assert cut.values["ring_after"] >= cut.values["ring_before"] - 1e-9
    assert stops(cut) >= stops(shut)


@QUICK
@given(stems)
def test_dead_leaning_or_marked_is_never_better(stem: dict[str, Any]) -> None:
    for worse in ({"dead": "long"}, {"signs": "some"}, {"lean": 60}, {"height": "ladder"}):
        assert run(**(stem | worse)).stopped >= run(**stem).stopped


@QUICK
@given(stems)
def test_every_run_has_cautions_sources_and_no_clearance(stem: dict[str, Any]) -> None:
    result = run(**stem)
    assert sum(each.level == "caution" for each in result.cautions) >= 2
    assert all(each.source for each in result.cautions)
    assert any("qualified arborist" in each.text for each in result.cautions)
    told = str(result.as_dict()).lower()
    assert "safe" not in told.replace("safety", "")
    assert "will hold" not in told


WALLS = {
    "wagener": [(33.0, "act"), (32.99, "below")],
    "coder": [(44.0, "act"), (43.99, "caution"), (20.0, "caution"), (19.99, "below")],
    "smiley": [(33.0, "act"), (32.99, "caution"), (20.0, "caution"), (19.99, "below")],
    "shell": [(0.30, "act"), (0.301, "caution"), (0.35, "caution"), (0.351, "below")],
    "opening": [(120.0, "act"), (119.99, "below")],
}


@pytest.mark.parametrize(
    ("rule", "value", "grade"), [(rule, *edge) for rule, edges in WALLS.items() for edge in edges]
)
def test_under_and_at_every_level(rule: str, value: float, grade: str) -> None:
    assert section.grade(rule, value) == grade


def test_a_stem_at_and_over_the_first_level_it_meets() -> None:
    # On a closed hollow Wagener acts first, at a wall of 0.309 of the radius.
    wall = 50 * (1 - 0.33 ** (1 / 3))
    assert not calm(100, wall + 0.01).stopped
    assert calm(100, wall).stopped
    assert calm(100, wall - 0.01).stopped


def test_a_window_that_passes_a_level_is_stopped_before_it_is_cut() -> None:
    girth = math.pi * 50
    fits, passes = 0.30 * girth, 0.35 * girth
    assert not calm(50, 25, cut="yes", window=fits, height="chest").stopped
    result = calm(50, 25, cut="yes", window=passes, height="chest")
    assert result.values["rules_before"] == 0 < result.values["rules_after"]
    assert any("Do not cut this window" in each.text for each in result.cautions)


@pytest.mark.parametrize(
    ("more", "word"),
    [
        ({"height": "ladder"}, "from a ladder"),
        ({"height": "above"}, "above your chest"),
        ({"dead": "recent"}, "dead, leaning"),
        ({"signs": "some"}, "dead, leaning"),
        ({"lean": 10}, "dead, leaning"),
    ],
)
def test_cuts_that_are_not_yours(more: dict[str, Any], word: str) -> None:
    window = {"cut": "yes", "window": 1, "height": "chest"}
    assert not calm(60, 30, **window).stopped
    result = calm(60, 30, **(window | more))
    assert any(each.level == "stop" and word in each.text for each in result.cautions)
    assert not calm(
        60, 30, **({"cut": "no"} | {k: v for k, v in more.items() if k != "height"})
    ).stopped


@pytest.mark.parametrize(("lean", "told"), [(9.9, False), (10.0, True), (10.1, True)])
def test_the_lean_that_counts(lean: float, told: bool) -> None:
    assert any("leaning stem" in each.text for each in calm(60, 30, lean=lean).cautions) is told


def test_dead_ash_states_both_the_tests_and_the_lore() -> None:
    keys = [each.source for each in calm(60, 30, dead="long", ash="yes").cautions]
    assert "persad_2013" in keys
    assert "persad_tobin_2015" in keys
    assert "persad_2013" not in [each.source for each in calm(60, 30, ash="yes").cautions]


def test_an_impossible_stem_is_refused() -> None:
    with pytest.raises(InputError, match="more than half"):
        calm(40, 21)
    with pytest.raises(InputError, match="wider than the girth"):
        calm(10, 5, opening=32)


@pytest.mark.library("scipy")
@pytest.mark.parametrize("share", [0.0, 0.3, 0.6, 0.9])
@pytest.mark.parametrize("opening", [0.0, 0.1, 1 / 3, 0.6])
def test_open_ring_is_scipys_integral(share: float, opening: float) -> None:
    # scipy 1.17, integrate.dblquad over the rest of the ring, second moment by definition
    half = math.pi * (1 - opening)

    def over(f: Any) -> float:
        return float(integrate.dblquad(lambda r, a: f(r * math.cos(a), r * math.sin(a)) * r,
                                       -half, half, share, 1.0)[0])  # fmt: skip

    area = over(lambda x, y: 1.0)
    middle = over(lambda x, y: x) / area
    across, along = over(lambda x, y: y * y), over(lambda x, y: (x - middle) ** 2)
    reference = 100 * (1 - min(across, along) / (math.pi / 4))
    assert section.open_ring_loss(share, 1.0, opening) == pytest.approx(reference, abs=1e-6)


def test_a_closed_ring_is_coder() -> None:
    for share in (0.2, 0.5, 0.8):
        ring = section.open_ring_loss(share, 1.0, 0.0)
        assert ring == pytest.approx(section.coder(share, 1.0))


@pytest.mark.parametrize("stem", [{}, {"cut": "yes"}, {"dead": "alive", "signs": "none"}])
def test_nobody_is_sent_to_a_trunk_with_a_live_nest(stem: dict[str, Any]) -> None:
    """The keep-off stands in every run, and no field asks for a tape or a knock before it."""
    told = [each.text for each in run(**stem).cautions if each.level != "note"]
    assert rules.text("tree", "live") in told
    asked = {each.name: each.meaning for each in hollow_tree.inputs}
    assert "outside the zone" in asked["diameter"]
    assert "after the catch" in asked["wall"]


STEM = {"diameter": 60, "wall": 30, "opening": 0, "dead": "alive", "signs": "none"}
WINDOW = {"cut": "yes", "window": 1, "height": "chest"}


def test_what_nobody_said_is_judged_by_the_worse() -> None:
    """A lean that nobody looked at counts, and a dead tree that nobody named may be an ash."""
    assert hollow_tree.run(STEM | WINDOW).stopped
    assert not hollow_tree.run(STEM | WINDOW | {"lean": 0}).stopped
    assert not hollow_tree.run(STEM).stopped
    keys = [each.source for each in hollow_tree.run(STEM | {"dead": "long"}).cautions]
    assert "persad_tobin_2015" in keys


@pytest.mark.parametrize(
    ("given", "words"),
    [
        ({"cut": "yes", "height": "ladder"}, "from a ladder"),
        ({"cut": "yes", "signs": "some"}, "dead, leaning"),
        ({"diameter": 60, "wall": 5, "opening": 10}, "Keep off this tree"),
    ],
)
def test_a_certain_stop_does_not_wait(given: dict[str, Any], words: str) -> None:
    told = hollow_tree.answer(given)
    assert isinstance(told, Incomplete)
    assert any(words in each.text for each in told.cautions if each.level == "stop")

"""Weight and lifting: heavier, farther and lower is never judged better; edges of the limits."""

from __future__ import annotations

import math
from typing import Any

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from calc import tables
from calc.declare import Incomplete, Result
from calc.errors import InputError
from calc.safety.weight_and_lifting import equation, weight_and_lifting, wood
from calc.safety.weight_and_lifting.cautions import HELD_BACK
from calc.safety.weight_and_lifting.inputs import Inputs

QUICK = settings(max_examples=150, deadline=None, derandomize=True, database=None)
WOODS = [row["key"] for row in tables.rows("wood_density")]

pieces = st.fixed_dictionaries(
    {
        "species": st.sampled_from(WOODS),
        "state": st.sampled_from(["dead", "green", "dry"]),
        "diameter": st.floats(8, 120),
        "length": st.floats(5, 290),
        "reach": st.floats(15, 60),
        "start": st.floats(0, 170),
        "end": st.floats(0, 170),
        "angle": st.floats(0, 130),
        "lifts": st.floats(0, 5),
        "grip": st.sampled_from(["good", "fair", "poor"]),
        "duration": st.sampled_from(["hour", "two_hours", "day"]),
        "people": st.sampled_from(["1", "2"]),
    }
)


def run(**inputs: Any) -> Result:
    return weight_and_lifting.run(weight_and_lifting.example() | inputs)


def box(mass: float, **more: Any) -> Result:
    easy = {"reach": 25, "start": 75, "end": 75, "angle": 0, "grip": "good"}
    return run(**({"load": "weighed", "mass": mass} | easy | more))


def index(result: Result) -> float:
    value = result.values["lifting_index"]
    return math.inf if value is None else value


def not_better(worse: Result, than: Result) -> bool:
    tiny = 1e-9 * max(1, index(than) if math.isfinite(index(than)) else 1)
    return index(worse) >= index(than) - tiny and worse.stopped >= than.stopped


@QUICK
@given(pieces, st.floats(0.1, 60))
def test_heavier_is_never_better(piece: dict[str, Any], more: float) -> None:
    thicker = piece | {"diameter": min(piece["diameter"] + more, 150)}
    longer = piece | {"length": min(piece["length"] + more, 300)}
    for worse in (thicker, longer, piece | {"extra": 10}, piece | {"state": "green"}):
        assert not_better(run(**worse), run(**piece))


@QUICK
@given(pieces, st.floats(0.1, 30))
def test_farther_turned_and_oftener_is_never_better(piece: dict[str, Any], more: float) -> None:
    for name, high in (("reach", 90.0), ("angle", 180.0), ("lifts", 5.0)):
        worse = piece | {name: min(piece[name] + more, high)}
        assert not_better(run(**worse), run(**piece))
    assert not_better(run(**(piece | {"grip": "poor"})), run(**piece))
    assert not_better(run(**(piece | {"duration": "day"})), run(**piece))
    assert not_better(run(**(piece | {"people": "1"})), run(**piece))


@QUICK
@given(pieces, st.floats(0, 0.95))
def test_a_hollow_piece_is_lighter(piece: dict[str, Any], share: float) -> None:
    hollow = piece | {"hollow": share * piece["diameter"]}
    assert run(**hollow).values["weight"] <= run(**piece).values["weight"]


@QUICK
@given(pieces)
def test_every_run_has_cautions_sources_and_no_promise(piece: dict[str, Any]) -> None:
    result = run(**piece)
    assert any(each.level in {"stop", "caution"} for each in result.cautions)
    assert all(each.source for each in result.cautions)
    assert result.sources
    assert "NIOSH" in result.values["verdict"]
    told = str(result.as_dict()).lower()
    assert "safe" not in told.replace("safety", "")


@pytest.mark.parametrize(("mass", "over"), [(22.99, False), (23.0, False), (23.01, True)])
def test_under_at_and_over_an_index_of_one(mass: float, over: bool) -> None:
    result = box(mass)
    assert not result.stopped
    assert ("Over the published limit" in result.values["verdict"]) is over
    assert any("Over the recommended limit" in each.text for each in result.cautions) is over


@pytest.mark.parametrize(("mass", "stopped"), [(68.99, False), (69.0, False), (69.01, True)])
def test_under_at_and_over_an_index_of_three(mass: float, stopped: bool) -> None:
    assert box(mass).stopped is stopped


@pytest.mark.parametrize(
    ("name", "inside", "outside"), [("reach", 63, 63.1), ("end", 175, 175.1), ("angle", 135, 135.1)]
)
def test_under_and_over_the_limits_of_the_method(name: str, inside: float, outside: float) -> None:
    assert not box(0.5, **{name: inside}).stopped
    result = box(0.5, **{name: outside})
    assert result.stopped
    assert result.values["lifting_index"] is None
    assert not result.charts


def test_a_ladder_withholds_every_limit() -> None:
    result = box(2, place="ladder")
    assert result.stopped
    assert all(result.values[name] is None for name in HELD_BACK)
    assert not result.charts


def test_the_longest_piece_has_an_index_of_one() -> None:
    longest = run(length=50).values["longest_piece"]
    assert index(run(length=longest)) == pytest.approx(1)


def test_dead_wood_plans_with_the_heavier_end() -> None:
    low, high = run(state="dead").values["weight_range"]
    assert low < high == run(state="dead").values["weight"]
    assert high == run(state="green").values["weight"]
    no_figure = run(species="elm", state="dry")
    assert no_figure.values["weight"] == run(species="elm", state="green").values["weight"]
    assert any("Dead wood" in each.text for each in no_figure.cautions)


def test_a_hollow_as_wide_as_the_trunk_is_refused() -> None:
    with pytest.raises(InputError, match="as wide as the trunk"):
        run(diameter=30, hollow=30)


@pytest.mark.published("fia_species")
@pytest.mark.parametrize("key", WOODS)
def test_green_density_from_printed_gravity_and_moisture(key: str) -> None:
    # Table REF_SPECIES: green specific gravity and moisture content of the wood, percent.
    printed = {
        "white_ash": (0.55, 46), "green_ash": (0.53, 57), "white_oak": (0.60, 68),
        "red_oak": (0.56, 83), "sugar_maple": (0.56, 57), "red_maple": (0.49, 64),
        "silver_maple": (0.44, 68), "white_pine": (0.34, 65), "loblolly_pine": (0.47, 81),
        "red_pine": (0.41, 64), "beech": (0.56, 55), "elm": (0.46, 94), "basswood": (0.32, 105),
    }  # fmt: skip
    gravity, moisture = printed[key]
    green = tables.row("wood_density", key)["green"]
    assert abs(wood.green_density(gravity, moisture) - green) <= 0.5


def test_beyond_five_lifts_a_minute_has_no_row() -> None:
    with pytest.raises(ValueError, match="beyond the rows"):
        equation.frequency(5.1, "hour")


@pytest.mark.parametrize(
    "left_out", [{"load": "weighed", "mass": None}, {"load": "trunk", "diameter": None}]
)
def test_a_load_that_is_not_given_weighs_not_nothing(left_out: dict[str, Any]) -> None:
    names = [each.name for each in weight_and_lifting.inputs]
    given = dict.fromkeys(names) | weight_and_lifting.example() | left_out
    with pytest.raises(InputError, match="a value is missing"):
        weight_and_lifting.core(Inputs(**given))


def test_a_ladder_is_stopped_before_the_load_is_known() -> None:
    told = weight_and_lifting.answer({"place": "ladder"})
    assert isinstance(told, Incomplete)
    assert told.stopped
    assert "lifting_index" not in told.ranges


def test_wood_that_nobody_named_weighs_most() -> None:
    given = weight_and_lifting.example()
    for name in ("species", "state", "hollow"):
        del given[name]
    unnamed = weight_and_lifting.run(given)
    for species in WOODS:
        for state in ("dead", "green", "dry"):
            named = run(species=species, state=state, hollow=10)
            assert named.values["weight"] <= unnamed.values["weight"]

"""Noise of the day: louder and longer is never judged better; edges of the limits."""

from __future__ import annotations

from typing import Any

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from calc.declare import Incomplete, Result
from calc.safety.noise_dose import noise_dose, protection
from calc.safety.noise_dose.cautions import HELD_BACK

QUICK = settings(max_examples=150, deadline=None, derandomize=True, database=None)
PROTECTORS = ["none", "foam", "plugs", "muffs", "both"]

days = st.fixed_dictionaries(
    {
        "vacuum_level": st.floats(60, 129),
        "vacuum_minutes": st.floats(0, 700),
        "saw_level": st.floats(60, 129),
        "saw_minutes": st.floats(0, 120),
        "protector": st.sampled_from(PROTECTORS),
        "nrr": st.floats(0, 33),
        "second_nrr": st.floats(0, 33),
        "worn": st.floats(0, 100),
    }
)


def run(**inputs: Any) -> Result:
    return noise_dose.run(noise_dose.example() | inputs)


def bare(level: float, minutes: float, **more: Any) -> Result:
    inputs = {"vacuum_level": level, "vacuum_minutes": minutes, "saw_minutes": 0}
    return run(**(inputs | {"protector": "none"} | more))


def judged(result: Result) -> tuple[float, float, float]:
    """Return minutes left (-1 if withheld) and doses turned round: more is better."""
    left = result.values["vacuum_left"]
    doses = (-result.values["niosh_dose"], -result.values["osha_dose"])
    return (-1 if left is None else left, *doses)


def not_better(worse: Result, than: Result) -> bool:
    pairs = zip(judged(worse), judged(than), strict=True)
    return all(a <= b + 1e-9 * max(1, abs(b)) for a, b in pairs)


@QUICK
@given(days, st.floats(0.01, 30))
def test_louder_is_never_better(day: dict[str, Any], more: float) -> None:
    louder = day | {"vacuum_level": min(day["vacuum_level"] + more, 130)}
    assert not_better(run(**louder), run(**day))
    louder = day | {"saw_level": min(day["saw_level"] + more, 130)}
    assert not_better(run(**louder), run(**day))


@QUICK
@given(days, st.floats(0.01, 300))
def test_longer_is_never_better(day: dict[str, Any], more: float) -> None:
    for name in ("vacuum_minutes", "saw_minutes"):
        longer = day | {name: min(day[name] + more, 720)}
        assert not_better(run(**longer), run(**day))


@QUICK
@given(days, st.floats(0, 33))
def test_a_weaker_protector_is_never_better(day: dict[str, Any], nrr: float) -> None:
    weaker = day | {"nrr": min(nrr, day["nrr"])}
    assert not_better(run(**weaker), run(**day))
    assert not_better(run(**(day | {"worn": 0})), run(**day))
    assert not_better(run(**(day | {"protector": "none"})), run(**day))


@QUICK
@given(days)
def test_every_run_has_cautions_sources_and_no_promise(day: dict[str, Any]) -> None:
    result = run(**day)
    assert any(each.level == "caution" for each in result.cautions)
    assert all(each.source for each in result.cautions)
    assert {"osha_1910_95_a", "niosh_1998"} <= {each.key for each in result.sources}
    assert "safe" not in str(result.as_dict()).lower().replace("safety", "")


@pytest.mark.parametrize(("minutes", "over"), [(151.1, False), (151.1905259, False), (151.3, True)])
def test_under_at_and_over_the_niosh_limit(minutes: float, over: bool) -> None:
    result = bare(90, minutes)
    assert result.stopped is over
    assert ("Over" in result.values["verdict"]) is over
    assert all((result.values[name] is None) is over for name in HELD_BACK)
    assert bool(result.charts) is not over


@pytest.mark.parametrize(("level", "stopped"), [(114.9, False), (115.0, False), (115.1, True)])
def test_the_end_of_table_g16(level: float, stopped: bool) -> None:
    result = bare(level, 0.1)
    assert result.stopped is stopped
    assert any("115 dBA" in each.text for each in result.cautions) is stopped


def test_a_level_without_minutes_does_not_count() -> None:
    assert not bare(85, 60, saw_level=130, saw_minutes=0).stopped
    assert bare(85, 0).values["niosh_mean"] is None


@pytest.mark.parametrize(("mean", "two"), [(99.9, False), (100.0, True), (100.1, True)])
def test_two_protectors_from_a_daily_mean_of_100(mean: float, two: bool) -> None:
    result = bare(mean, 480)
    assert any("plugs and muffs together" in each.text for each in result.cautions) is two


def test_the_protection_counted_is_the_weaker_estimate() -> None:
    for kind in ("foam", "plugs", "muffs"):
        values = run(protector=kind, nrr=25).values
        both = (values["attenuation_niosh"], values["attenuation_osha"])
        assert values["attenuation"] == min(both)
    assert protection.attenuation_niosh([("muffs", 5.0)]) == 0.0
    assert protection.attenuation_osha([("muffs", 5.0)]) == 0.0


def test_minutes_left_fill_the_day() -> None:
    left = bare(90, 60).values["vacuum_left"]
    assert bare(90, 60 + left).values["niosh_dose"] <= 100
    assert bare(90, 61 + left).values["niosh_dose"] > 100


def test_the_stricter_rule_decides() -> None:
    result = bare(92, 200)
    assert result.values["osha_dose"] < 100 < result.values["niosh_dose"]
    assert result.stopped


def test_european_values_as_words() -> None:
    assert "Under the lower" in bare(79.9, 480).values["eu"]
    assert "Lower action value (80)" in bare(80, 480).values["eu"]
    assert "Upper action value (85)" in bare(85, 480).values["eu"]
    assert "within the limit (87)" in bare(87, 479).values["eu"]
    assert "over the limit (87)" in bare(87.1, 480).values["eu"]


def test_a_level_over_the_table_stops_before_the_minutes_are_known() -> None:
    told = noise_dose.answer({"vacuum_level": 118, "protector": "none"})
    assert isinstance(told, Incomplete)
    assert told.stopped
    assert "vacuum_minutes" in {each.name for each in told.missing}


def test_a_day_without_a_saw_asks_nothing_about_it() -> None:
    asked = noise_dose.reading({"tools": "vacuum", "protector": "none"}).missing
    assert {each.name for each in asked} == {"vacuum_minutes", "vacuum_level"}


def test_no_minutes_left_while_a_level_is_missing() -> None:
    given = noise_dose.example()
    del given["saw_level"]
    told = noise_dose.answer(given)
    assert isinstance(told, Incomplete)
    assert [each.name for each in told.missing] == ["saw_level"]
    assert "results" not in told.as_dict()

"""Heat in the suit: edges of the limits, cautions, and what must never be judged better."""

from __future__ import annotations

import json
from itertools import pairwise
from pathlib import Path
from typing import Any

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from thermofeel import liljegren

from calc import tables
from calc.declare import Incomplete, Result
from calc.errors import InputError
from calc.safety import heat_limits
from calc.safety.heat_estimate import measured_heat, weather_heat
from calc.safety.heat_in_suit import heat_in_suit
from calc.safety.heat_in_suit.cautions import HELD_BACK
from calc.safety.heat_in_suit.inputs import Inputs
from calc.safety.heat_limits import Job
from calc.safety.liljegren import HIGH_SUN, direct_fraction, wbgt_liljegren

RATES = [180.0, 300.0, 415.0, 520.0]
CLOTHING = ["short_sleeves", "work_clothes", "double_woven", "sting_suit", "vapour_barrier"]
QUICK = settings(max_examples=120, deadline=None, derandomize=True, database=None)


def run(**inputs: Any) -> Result:
    return heat_in_suit.run(heat_in_suit.example() | inputs)


def measured(wbgt: float, **inputs: Any) -> Result:
    return run(heat_known="measured", measured_wbgt=wbgt, **inputs)


def texts(result: Result, level: str) -> list[str]:
    return [caution.text for caution in result.cautions if caution.level == level]


def judged(result: Result) -> tuple[float, float]:
    """Return work minutes (-1 where a stop withholds them) and margin: more is better."""
    minutes = result.values["work_minutes"]
    return (-1 if minutes is None else minutes, result.values["margin"])


def not_better(worse: Result, than: Result) -> bool:
    return all(a <= b + 1e-9 for a, b in zip(judged(worse), judged(than), strict=True))


weather = {
    "air_temperature": st.floats(5, 49),
    "humidity": st.floats(5, 98),
    "wind": st.floats(0, 15),
    "sun": st.sampled_from(["full_sun", "light_cloud", "shade"]),
    "work": st.sampled_from(["low", "moderate", "high", "very_high"]),
    "clothing": st.sampled_from(CLOTHING),
    "acclimatised": st.sampled_from(["yes", "no"]),
    "rest": st.sampled_from(["shade", "same"]),
}
any_weather = st.fixed_dictionaries(weather)


@QUICK
@given(any_weather, st.floats(0.01, 20))
def test_hotter_is_never_better(day: dict[str, Any], more: float) -> None:
    hotter = day | {"air_temperature": min(day["air_temperature"] + more, 50)}
    assert not_better(run(**hotter), run(**day))


@QUICK
@given(any_weather, st.floats(0.01, 60))
def test_more_humid_is_never_better(day: dict[str, Any], more: float) -> None:
    humid = day | {"humidity": min(day["humidity"] + more, 99)}
    assert not_better(run(**humid), run(**day))


@QUICK
@given(any_weather)
def test_sunnier_is_never_better(day: dict[str, Any]) -> None:
    skies = [run(**(day | {"sun": sky})) for sky in ("shade", "light_cloud", "full_sun")]
    assert not_better(skies[1], skies[0])
    assert not_better(skies[2], skies[1])


@QUICK
@given(any_weather, st.floats(0, 1100), st.floats(0, 500))
def test_more_radiation_is_never_better(day: dict[str, Any], sun: float, more: float) -> None:
    given_sun = day | {"sun": "radiation", "radiation": sun}
    sunnier = given_sun | {"radiation": min(sun + more, 1100)}
    assert not_better(run(**sunnier), run(**given_sun))


@QUICK
@given(any_weather, st.floats(115, 580), st.floats(0, 465))
def test_harder_work_is_never_better(day: dict[str, Any], rate: float, more: float) -> None:
    easier = day | {"work": "own", "metabolic_rate": rate}
    harder = easier | {"metabolic_rate": min(rate + more, 580)}
    assert not_better(run(**harder), run(**easier))


@QUICK
@given(any_weather)
def test_heavier_clothing_is_never_better(day: dict[str, Any]) -> None:
    worn = [run(**(day | {"clothing": clothing})) for clothing in CLOTHING]
    for lighter, heavier in pairwise(worn):
        assert not_better(heavier, lighter)


@QUICK
@given(any_weather)
def test_not_used_to_heat_and_resting_in_the_suit_are_never_better(day: dict[str, Any]) -> None:
    assert not_better(run(**(day | {"acclimatised": "no"})), run(**(day | {"acclimatised": "yes"})))
    light = day | {"clothing": "sting_suit"}
    assert not_better(run(**(light | {"rest": "same"})), run(**(light | {"rest": "shade"})))


@QUICK
@given(any_weather, st.sampled_from([None, 5.0, 240.0]))
def test_every_run_has_a_caution_a_source_and_no_promise(
    day: dict[str, Any], planned: float | None
) -> None:
    result = run(**day, planned_minutes=planned)
    assert texts(result, "caution")
    assert any("heat stroke" in text for text in texts(result, "caution"))
    assert result.sources
    told = str(result.as_dict()).lower()
    assert "safe" not in told.replace("safety", "")
    assert "limit" in result.values["verdict"]


def job(wbgt: float, rate: float, used: bool) -> Job:
    return Job(heat=measured_heat(wbgt), rate=rate, added=0.0, at_rest=0.0, acclimatised=used)


@pytest.mark.parametrize("rate", RATES)
@pytest.mark.parametrize("used", [True, False])
def test_under_at_and_over_the_limit(rate: float, used: bool) -> None:
    bound = heat_limits.limit(rate, used)
    assert not job(bound - 0.001, rate, used).over
    assert not job(bound, rate, used).over
    assert job(bound, rate, used).minutes() == 60
    assert job(bound + 0.001, rate, used).over
    assert job(bound + 0.1, rate, used).minutes() < 60


@pytest.mark.parametrize(("used", "name"), [("yes", "REL"), ("no", "RAL")])
def test_the_limit_that_applies(used: str, name: str) -> None:
    result = measured(20, acclimatised=used)
    key = "exposure_limit" if used == "yes" else "alert_limit"
    assert result.values["limit"] == result.values[key]
    assert result.values["limit_name"].endswith(name)
    assert "NIOSH 2016" in result.values["verdict"]
    assert any("United States" in text for text in texts(result, "note"))


@pytest.mark.parametrize("rate", [115.0, 300.0, 580.0])
def test_exposure_limit_is_above_the_alert_limit(rate: float) -> None:
    assert heat_limits.exposure_limit(rate) > heat_limits.alert_limit(rate)


@pytest.mark.parametrize("rate", [0.0, 114.9, 580.1, 1e9])
def test_limits_are_not_stretched_beyond_their_curves(rate: float) -> None:
    with pytest.raises(ValueError, match="off the published curves"):
        heat_limits.alert_limit(rate)


@pytest.mark.parametrize("rate", [114, 581])
def test_metabolic_rate_off_the_curves_is_refused(rate: float) -> None:
    with pytest.raises(InputError) as caught:
        run(work="own", metabolic_rate=rate)
    assert caught.value.field == "metabolic_rate"


@pytest.mark.parametrize("used", [True, False])
@pytest.mark.parametrize("rate", RATES)
@pytest.mark.parametrize("wbgt", [25.0, 27.0, 28.0, 29.0, 30.0, 30.5])
def test_work_share_in_one_place_is_the_closed_form(wbgt: float, rate: float, used: bool) -> None:
    # In one and the same heat the hour's mean rate is the rate whose limit that heat is.
    a, b = (56.7, 11.5) if used else (59.9, 14.1)
    share = (10 ** ((a - wbgt) / b) - 115) / (rate - 115)
    found = heat_limits.work_share(wbgt, wbgt, rate, used)
    assert found == pytest.approx(min(max(share, 0), 1), abs=1e-6)


def test_two_places_meet_the_limit_in_the_mean() -> None:
    share = heat_limits.work_share(31.0, 24.0, 415.0, acclimatised=True)
    mean_rate = share * 415 + (1 - share) * 115
    mean_heat = share * 31 + (1 - share) * 24
    assert 0 < share < 1
    assert heat_limits.exposure_limit(mean_rate) == pytest.approx(mean_heat, abs=1e-5)


@pytest.mark.parametrize(("used", "bound"), [("no", 30.84), ("yes", 33.0)])
def test_stop_when_sitting_still_in_the_suit_is_over(used: str, bound: float) -> None:
    just_under = measured(bound - 0.1 - 4, acclimatised=used, rest_wbgt=20)
    just_over = measured(bound + 0.1 - 4, acclimatised=used, rest_wbgt=20)
    assert not just_under.stopped
    assert just_under.values["work_minutes"] >= 1
    assert any(text.startswith("Do not suit up") for text in texts(just_over, "stop"))
    for name in HELD_BACK:
        assert just_over.values[name] is None
    assert "do not start" in just_over.values["verdict"]
    assert [chart.name for chart in just_over.charts] == ["limits"]


def test_stop_when_the_place_of_rest_is_over() -> None:
    result = measured(22, rest_wbgt=32)
    assert any("even resting" in text for text in texts(result, "stop"))
    assert result.values["work_minutes"] is None


def test_stop_when_no_whole_minute_is_left() -> None:
    result = measured(26.8, work="very_high", rest="same")
    assert any("no whole minute" in text for text in texts(result, "stop"))
    assert result.values["rest_minutes"] is None


def test_stop_for_a_fully_closed_suit() -> None:
    result = run(clothing="encapsulating", planned_minutes=30)
    assert any("fully closed" in text for text in texts(result, "stop"))
    for name in ("effective_wbgt", "margin", "work_minutes", "clothing_adjustment"):
        assert result.values[name] is None
    assert not result.charts
    assert "No published limit" in result.values["verdict"]


def test_caution_over_the_limit_for_steady_work() -> None:
    result = measured(25)
    assert any("Steady work is over" in text for text in texts(result, "caution"))
    assert "Over the published limit" in result.values["verdict"]


def test_caution_when_the_rate_error_crosses_the_limit() -> None:
    bound = heat_limits.alert_limit(300)
    harder = heat_limits.alert_limit(300 * 1.3)
    between = measured((bound + harder) / 2, clothing="work_clothes")
    under = measured(harder - 0.1, clothing="work_clothes")
    assert any("a third harder" in text for text in texts(between, "caution"))
    assert not any("a third harder" in text for text in texts(under, "caution"))
    assert "only just" in between.values["verdict"]


def test_caution_when_the_estimate_crosses_the_limit() -> None:
    day = {"humidity": 50, "sun": "shade", "clothing": "work_clothes", "work": "low"}
    near = run(air_temperature=33.5, **day)
    assert near.values["margin"] > 0
    assert any("estimate of the WBGT" in text for text in texts(near, "caution"))
    cool = run(air_temperature=20, **day)
    assert not any("estimate of the WBGT" in text for text in texts(cool, "caution"))


@pytest.mark.parametrize(
    ("inputs", "level", "part"),
    [
        ({"clothing": "sting_suit"}, "caution", "The +4 °C"),
        ({"clothing": "vapour_barrier", "air_temperature": 12}, "caution", "stops vapour"),
        ({"acclimatised": "no"}, "caution", "20 percent"),
        ({"acclimatised": "yes"}, "caution", "you count as new"),
        ({"sun": "full_sun"}, "note", "heat index is for shade"),
        ({"planned_minutes": 300}, "caution", "does not fit"),
        ({}, "caution", "upper end of its range"),
        ({"air_temperature": 15, "sun": "shade"}, "caution", "is no promise"),
        ({"air_temperature": 45, "humidity": 10}, "caution", "Above 40 °C"),
        ({}, "note", "never more than 48 fl oz (1.4 L)"),
        ({}, "note", "pregnancy"),
        ({}, "note", "estimated from weather"),
        ({"heat_known": "measured"}, "note", "place of rest"),
    ],
)
def test_each_caution_is_raised(inputs: dict[str, Any], level: str, part: str) -> None:
    assert any(part in text for text in texts(run(**inputs), level))


@pytest.mark.parametrize(
    ("inputs", "part"),
    [
        ({"clothing": "work_clothes"}, "No one has measured"),
        ({"sun": "shade"}, "heat index is for shade"),
        ({"planned_minutes": 10}, "does not fit"),
        ({"air_temperature": 20}, "upper end of its range"),
        ({"air_temperature": 40, "humidity": 10}, "Above 40 °C"),
        ({"heat_known": "measured", "measured_wbgt": 26.7}, "upper end of its range"),
        ({"air_temperature": 15, "sun": "shade", "planned_minutes": 90}, "does not fit"),
        ({"heat_known": "measured", "rest_wbgt": 20}, "place of rest, so"),
        ({"heat_known": "measured"}, "estimated from weather"),
        ({}, "is no promise"),
    ],
)
def test_cautions_stay_away_where_they_do_not_belong(inputs: dict[str, Any], part: str) -> None:
    assert not any(part in caution.text for caution in run(**inputs).cautions)


def test_planned_work_is_split_with_rests() -> None:
    result = measured(25, planned_minutes=100)
    minutes = result.values["work_minutes"]
    assert 0 < minutes < 60
    spells = result.values["planned_spells"]
    assert (spells - 1) * minutes < 100 <= spells * minutes
    assert result.values["planned_time"] == 100 + (spells - 1) * (60 - minutes)
    steady = measured(15, planned_minutes=100, acclimatised="yes")
    assert (steady.values["planned_spells"], steady.values["planned_time"]) == (1, 100)


def test_range_of_minutes_holds_the_minutes() -> None:
    values = run().values
    low, high = values["work_minutes_range"]
    assert low <= values["work_minutes"] <= high
    low, high = values["limit_range"]
    assert low < values["limit"] < high
    low, high = values["wbgt_range"]
    assert low < values["wbgt"] < high


def test_measured_heat_gives_no_weather_figures() -> None:
    values = measured(24).values
    assert values["index"] is None
    assert values["wet_bulb"] is None
    assert "no figure" in values["index_band"]


def test_heat_index_above_the_printed_chart_has_no_number() -> None:
    values = run(air_temperature=48, humidity=80).values
    assert values["index"] is None
    assert "above the printed chart" in values["index_band"]


@pytest.mark.parametrize("wind", [0.0, 0.13, 0.2, 0.3, 0.4, 0.5, 1.0])
def test_wind_is_computed_as_typed(wind: float) -> None:
    # thermofeel 2.3.0, liljegren.wbgt: the reference program's method, which holds the wind at
    # 0.13 m/s and no higher
    sun = 900.0
    reference = liljegren.wbgt(
        np.array([303.15]), 50.0, 1013.25, wind, sun, direct_fraction(sun), HIGH_SUN
    )
    heat = weather_heat(30, 50, wind, sun)
    assert heat.wbgt == pytest.approx(float(reference[0]) - 273.15, abs=0.03)
    assert heat.wind == max(wind, liljegren.MIN_SPEED)


def test_the_page_tells_what_calm_air_does() -> None:
    text = (Path(__file__).parents[3] / "handbook/reference/how_sure_safety.md").read_text("utf-8")
    sun = tables.row("sun_strength", "full_sun")["radiation"]
    breath, still = (weather_heat(30, 50, wind, sun).wbgt for wind in (0.5, 0.0))
    assert f"it is {breath:.1f} °C with wind of 0.5 m/s, and {still:.1f} °C in still air" in text


def test_in_calm_air_the_range_is_wider_and_a_caution_says_which_wind_was_used() -> None:
    day = {"air_temperature": 30, "humidity": 50, "sun": "full_sun"}
    still, calm, moved = (run(**day, wind=wind) for wind in (0, 0.5, 0.6))
    for result in (still, calm):
        low, high = result.values["wbgt_range"]
        assert low <= weather_heat(30, 50, 0.5, 900).wbgt - 1 + 1e-9
        assert high >= weather_heat(30, 50, 0.13, 900).wbgt + 1
        assert any(text.startswith("Calm air") for text in texts(result, "caution"))
    assert still.values["wind_used"] == 0.13
    assert any("0 m/s counts as 0.13 m/s" in text for text in texts(still, "caution"))
    assert calm.values["wind_used"] == 0.5
    assert not any("counts as" in text for text in texts(calm, "caution"))
    assert not any(text.startswith("Calm air") for text in texts(moved, "caution"))


@pytest.mark.parametrize("sun", [0.0, 20.0, 300.0, 900.0, 1100.0])
@pytest.mark.parametrize("air", [10.0, 25.0, 40.0])
def test_less_wind_is_never_cooler_in_the_sun_of_work(air: float, sun: float) -> None:
    heats = [weather_heat(air, 50, wind, sun) for wind in (0.0, 0.2, 0.5, 0.51, 1.0, 3.0)]
    for heat in heats:
        assert heat.low <= heat.wbgt <= heat.high
    for less, more in pairwise(heats):
        assert less.wbgt >= more.wbgt - 1e-9


def test_shade_floor() -> None:
    # A breath of sun is never cooler than shade.
    assert weather_heat(26, 55, 1, 1).wbgt >= weather_heat(26, 55, 1, 0).wbgt


def test_customary_input_gives_the_same_answer() -> None:
    typed = {"air_temperature": 77, "wind": "2.23693629 mph"}
    one = heat_in_suit.run(heat_in_suit.example() | typed, customary=True)
    two = run(air_temperature=25, wind=1)
    assert one.values["effective_wbgt"] == pytest.approx(two.values["effective_wbgt"], abs=1e-6)


def test_charts_show_today() -> None:
    result = run()
    assert [chart.name for chart in result.charts] == ["work_minutes", "limits"]
    minutes, limits = result.charts
    assert minutes.series[-1].x == (result.values["effective_wbgt"],)
    assert minutes.series[-1].y == (float(result.values["work_minutes"]),)
    line = minutes.series[0].y
    assert list(line) == sorted(line, reverse=True)
    assert limits.series[-1].x == (300.0,)


def test_sting_suit_value_is_the_sum_it_says() -> None:
    double = tables.row("clothing_adjustment", "double_woven")["adjustment"]
    assert tables.row("clothing_adjustment", "sting_suit")["adjustment"] == double + 1


@pytest.mark.parametrize("row", tables.rows("wbgt_spread"), ids=lambda row: row["key"])
def test_table_of_the_methods_is_what_the_methods_give(row: dict[str, Any]) -> None:
    sun = tables.row("sun_strength", row["key"])["radiation"]
    heat = weather_heat(30, 50, 1, sun)
    assert heat.wbgt == pytest.approx(row["estimate"], abs=0.051)
    assert heat.simplified == pytest.approx(row["simplified"], abs=0.051)
    if sun:
        globe = wbgt_liljegren(30, 50, 1, sun, globe_diameter=0.15)
        assert globe == pytest.approx(row["standard_globe"], abs=0.051)


def test_demo_case_runs() -> None:
    path = Path(__file__).parents[3] / "demo_cases" / "soffit_yellowjackets" / "case.json"
    case = json.loads(path.read_text(encoding="utf-8"))
    result = heat_in_suit.run(case["inputs"]["heat_in_suit"])
    assert not result.stopped
    assert result.values["planned_spells"] == 2


def test_answers_of_the_exercises() -> None:
    meter = measured(22)
    assert meter.text("effective_wbgt") == "26.0 °C"
    assert meter.text("limit") == "25.0 °C"
    assert meter.text("margin") == "-1.0 °C"
    noon = {"air_temperature": "90 degF", "humidity": 50, "wind": "1 mph"}
    assert run(**noon, sun="full_sun").stopped
    shade = run(**noon, sun="shade")
    assert shade.stopped
    assert shade.values["effective_wbgt"] - heat_limits.alert_limit(115) < 0.3
    assert not run(air_temperature="70 degF", humidity=75, wind="1 mph", sun="shade").stopped
    path = Path(__file__).parents[3] / "demo_cases" / "soffit_yellowjackets" / "case.json"
    case = json.loads(path.read_text(encoding="utf-8"))["inputs"]["heat_in_suit"]
    assert case["planned_minutes"] == 40
    assert run(**case).values["planned_time"] == 78


@pytest.mark.parametrize(
    "left_out",
    [
        {"heat_known": "measured", "measured_wbgt": None},
        {"sun": "radiation", "radiation": None},
        {"wind": None},
        {"humidity": None},
    ],
)
def test_heat_that_is_not_given_is_no_cool_day(left_out: dict[str, Any]) -> None:
    names = [each.name for each in heat_in_suit.inputs]
    given_heat = dict.fromkeys(names) | heat_in_suit.example() | left_out
    with pytest.raises(InputError, match="a value is missing"):
        heat_in_suit.core(Inputs(**given_heat))


def test_a_day_too_hot_in_any_suit_is_stopped_before_all_is_known() -> None:
    told = heat_in_suit.answer({"air_temperature": 49, "humidity": 90, "clothing": "sting_suit"})
    assert isinstance(told, Incomplete)
    assert told.stopped
    assert {each.name for each in told.missing} == {"sun", "work", "wind"}


@pytest.mark.parametrize("name", ["air_temperature", "humidity", "sun", "wind", "work", "clothing"])
def test_no_minutes_without_what_they_hang_on(name: str) -> None:
    given_heat = heat_in_suit.example()
    del given_heat[name]
    told = heat_in_suit.answer(given_heat)
    assert isinstance(told, Incomplete)
    assert [each.name for each in told.missing] == [name]
    low, high = told.ranges.get("work_minutes", (0, 60))
    assert low < high


def test_a_meter_stands_for_the_weather() -> None:
    missing = heat_in_suit.reading({"heat_known": "measured"}).missing
    assert {each.name for each in missing} == {"measured_wbgt", "work", "clothing"}

"""Fogging: damper, colder and sweatier is never judged better; edges; moist air by a library."""

from __future__ import annotations

import math
from typing import Any

import psychrolib
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from calc import tables
from calc.declare import Result
from calc.safety import humidity
from calc.safety.fogging import fogging, model

psychrolib.SetUnitSystem(psychrolib.SI)
QUICK = settings(max_examples=100, deadline=None, derandomize=True, database=None)
LENSES = ["indirect", "sealed", "direct", "shield", "spectacles"]
SEA_LEVEL = 101325.0

days = st.fixed_dictionaries(
    {
        "air_temperature": st.floats(-10, 45),
        "humidity": st.floats(5, 100),
        "eyewear": st.sampled_from(LENSES),
        "breath": st.sampled_from(["down", "normal", "mask"]),
        "sweat": st.sampled_from(["dry", "damp", "wet"]),
        "fan": st.sampled_from(["no", "yes"]),
        "wind": st.sampled_from(["calm", "light", "wind"]),
    }
)


def run(**inputs: Any) -> Result:
    return fogging.run(fogging.example() | inputs)


def margin(**inputs: Any) -> float:
    value = run(**inputs).values["margin"]
    assert value is not None
    return float(value)


@QUICK
@given(days, st.floats(0.01, 60))
def test_more_humid_is_never_better(day: dict[str, Any], more: float) -> None:
    damper = day | {"humidity": min(day["humidity"] + more, 100)}
    assert margin(**damper) <= margin(**day) + 1e-9
    assert run(**damper).stopped >= run(**day).stopped


@QUICK
@given(days)
def test_more_breath_more_sweat_and_no_fan_is_never_better(day: dict[str, Any]) -> None:
    for name, better, worse in (
        ("breath", "down", "normal"),
        ("breath", "normal", "mask"),
        ("sweat", "dry", "damp"),
        ("sweat", "damp", "wet"),
        ("fan", "yes", "no"),
    ):
        assert margin(**(day | {name: worse})) <= margin(**(day | {name: better})) + 1e-9


@QUICK
@given(days)
def test_wind_on_the_lens_is_never_better_in_cool_air(day: dict[str, Any]) -> None:
    cool = day | {"air_temperature": min(day["air_temperature"], 33.0)}
    winds = [margin(**(cool | {"wind": wind})) for wind in ("calm", "light", "wind")]
    assert winds == sorted(winds, reverse=True)


@QUICK
@given(days, st.floats(-20, 60), st.floats(0, 30))
def test_a_lens_kept_colder_is_never_better(
    day: dict[str, Any], stored: float, less: float
) -> None:
    kept = day | {"stored": stored, "worn": 1}
    colder = kept | {"stored": max(stored - less, -20)}
    assert margin(**colder) <= margin(**kept) + 1e-9
    assert margin(**kept) <= margin(**day) + 1e-9


@QUICK
@given(days, st.floats(0, 100), st.floats(0, 100), st.floats(0, 50))
def test_larger_shares_typed_in_are_never_better(
    day: dict[str, Any], breath: float, sweat: float, more: float
) -> None:
    own = day | {"shares": "own", "breath_share": breath / 2, "sweat_share": sweat / 2}
    assert margin(**(own | {"breath_share": min(breath / 2 + more, 50)})) <= margin(**own) + 1e-9
    assert margin(**(own | {"sweat_share": min(sweat / 2 + more, 50)})) <= margin(**own) + 1e-9


@QUICK
@given(days)
def test_every_run_keeps_the_eyes_covered(day: dict[str, Any]) -> None:
    result = run(**day)
    told = [each.text for each in result.cautions if each.level == "caution"]
    assert any("Never take eye protection off" in text for text in told)
    assert all(each.source for each in result.cautions)
    text = str(result.as_dict()).lower()
    assert "safe" not in text.replace("safety", "")
    assert "take off" not in text


def humidity_for(wanted: float) -> float:
    """Return the humidity at which the margin of the default setup is ``wanted``."""
    low, high = 5.0, 100.0
    for _ in range(40):
        middle = (low + high) / 2
        low, high = (middle, high) if margin(humidity=middle) > wanted else (low, middle)
    return low


@pytest.mark.parametrize(("room", "stopped"), [(0.01, False), (-0.01, True)])
def test_under_and_over_the_dew_point(room: float, stopped: bool) -> None:
    result = run(humidity=humidity_for(room))
    assert result.stopped is stopped
    assert ("Expected to fog" in result.values["verdict"]) is stopped


@pytest.mark.parametrize(("room", "close"), [(1.99, True), (2.01, False)])
def test_the_error_of_the_estimate(room: float, close: bool) -> None:
    result = run(humidity=humidity_for(room))
    assert ("May fog" in result.values["verdict"]) is close
    assert any("may fog all the same" in each.text for each in result.cautions) is close


def test_mesh_alone_is_stopped() -> None:
    result = run(eyewear="mesh")
    assert result.stopped
    assert result.values["margin"] is None
    assert not result.charts
    assert "stops no spray" in next(e.text for e in result.cautions if e.level == "stop")


@pytest.mark.parametrize("eyewear", LENSES)
def test_only_splash_goggles_escape_the_spray_caution(eyewear: str) -> None:
    told = any("made for droplets" in each.reason for each in run(eyewear=eyewear).cautions)
    assert told is (tables.row("fog_eyewear", eyewear)["splash"] != "yes")


def test_a_cold_lens_is_clear_when_the_minutes_say_so() -> None:
    day = {"air_temperature": 29, "humidity": 62, "stored": 15}
    after = run(**day).values["clear_after"]
    assert after > 0
    assert margin(**day, worn=after) == pytest.approx(0, abs=1e-6)
    assert margin(**day, worn=after - 0.1) < 0 < margin(**day, worn=after + 0.1)
    assert run(**day, eyewear="shield", breath="mask").values["clear_after"] is None
    assert run(air_temperature=29, humidity=62, stored=40).values["clear_after"] == 0


def test_options_are_what_a_run_gives() -> None:
    options = {each["change"].split(" (")[0]: each for each in run().values["options"]}
    assert options["run a fan"]["margin"] == pytest.approx(margin(fan="yes"))
    assert options["dry the face, wear a sweat band"]["margin"] == pytest.approx(
        margin(sweat="dry")
    )
    assert options["mesh visor instead"]["margin"] is None
    best = max((each for each in options.values() if each["gain"]), key=lambda each: each["gain"])
    assert best["change"].split(" (")[0].capitalize() in run().values["best"]


def test_the_lens_lies_between_its_two_airs() -> None:
    for air in (-5.0, 10.0, 25.0, 40.0):
        for outside in (8.0, 15.0, 25.0):
            lens = model.lens_temperature(air, 33.0, outside)
            assert min(air, 33.0) < lens < max(air, 33.0)


@pytest.mark.parametrize(("air", "outside"), [(10.0, 8.0), (20.0, 15.0), (30.0, 25.0), (40.0, 8.0)])
def test_the_lens_balances_the_heat_through_it(air: float, outside: float) -> None:
    # What flows in at the inner face goes through the lens and off the outer face; the outer
    # face is found from that, and both other flows must then be the same.
    through = tables.row("fog_lens", "polycarbonate")["resistance"]
    inner = model.lens_temperature(air, 33.0, outside)
    flow = model.habit("inside") * (33.0 - inner)
    outer = inner - flow * through
    assert outside * (outer - air) == pytest.approx(flow)


def test_a_lens_settles_as_its_equation_says() -> None:
    # Steps of a hundredth of a minute through c dT/dt = h_i (T_in - T) + h_o (T_a - T), the
    # differential equation behind the exponential, with the lens's own resistance left out.
    step, outside, start, air, behind = 0.01, 15.0, 5.0, 20.0, 33.0
    inner, heat = model.habit("inside"), tables.row("fog_lens", "polycarbonate")["heat"]
    settled = (inner * behind + outside * air) / (inner + outside)
    lens = start
    for _ in range(300):
        lens += step * 60 / heat * (inner * (behind - lens) + outside * (air - lens))
    assert lens == pytest.approx(model.lens_after(3.0, start, settled, outside), abs=0.02)


MIXES = [(10, 80, 0.1), (15, 70, 0.05), (20, 60, 0.05), (20, 60, 0.1), (20, 60, 0.2),
         (20, 60, 0.3), (20, 60, 0.5), (20, 60, 1.0), (25, 50, 0.2), (30, 50, 0.1),
         (30, 80, 0.3), (35, 40, 0.5)]  # fmt: skip


@pytest.mark.library("psychrolib")
@pytest.mark.parametrize(("air", "rh", "share"), MIXES)
def test_mixed_dew_point_is_psychrolibs(air: float, rh: float, share: float) -> None:
    # psychrolib 2.5.0: mix by mass of dry air, GetHumRatioFromRelHum and GetTDewPointFromHumRatio.
    # Mixing by volume, as here, differs by less than 0.2 K.
    outside = psychrolib.GetHumRatioFromRelHum(air, rh / 100, SEA_LEVEL)
    breath = psychrolib.GetHumRatioFromRelHum(34, 0.95, SEA_LEVEL)
    ratio = (1 - share) * outside + share * breath
    reference = psychrolib.GetTDewPointFromHumRatio(34, ratio, SEA_LEVEL)
    assert model.mixed_dew_point(air, rh, share) == pytest.approx(reference, abs=0.2)


@pytest.mark.library("psychrolib")
@pytest.mark.parametrize("vapour", [2.0, 6.0, 12.0, 20.0, 31.0, 45.0, 53.0])
def test_dew_point_of_vapour_is_psychrolibs(vapour: float) -> None:
    # psychrolib 2.5.0, GetTDewPointFromVapPres, Pa
    reference = psychrolib.GetTDewPointFromVapPres(35.0, vapour * 100)
    # The Magnus form is within 0.06 K of the library up to 53 hPa.
    tolerance = 0.06 if reference > 0 else 1.6  # below freezing the library means frost point
    assert model.dew_point_of(vapour) == pytest.approx(reference, abs=tolerance)


def test_dew_point_of_the_comfort_limit() -> None:
    # ASHRAE Standard 55-2013: a humidity ratio of 0.012 kg/kg is printed as a dew point of
    # 16.8 degC at standard pressure (read as the ASHRAE Handbook quotes it). The Magnus form
    # adds up to 0.05 K to the half digit.
    vapour = 0.012 * SEA_LEVEL / (0.62198 + 0.012) / 100
    assert model.dew_point_of(vapour) == pytest.approx(16.8, abs=0.1)


def test_dew_point_round_trip() -> None:
    for air in (-5.0, 12.0, 30.0, 45.0):
        vapour = humidity.saturation_vapour_pressure(air)
        assert model.dew_point_of(vapour) == pytest.approx(air)
        assert math.isfinite(vapour)

"""When to come: sun times against a library, windows, every caution and stop."""

from __future__ import annotations

import datetime
from typing import Any

import pytest
from astral import Observer
from astral.sun import elevation, sun
from hypothesis import given, settings
from hypothesis import strategies as st

from calc.clients.when_to_come import course, when_to_come
from calc.clients.when_to_come.sun import clock, sun_times
from calc.declare import Incomplete
from calc.errors import InputError

PLACES = [
    ("Berlin", 52.52, 13.405, 2),
    ("Washington", 38.9072, -77.0369, -4),
    ("Minneapolis", 44.9778, -93.265, -5),
    ("Madrid", 40.4168, -3.7038, 2),
    ("Sydney", -33.8688, 151.2093, 10),
    ("Quito", -0.1807, -78.4678, -5),
    ("Tokyo", 35.68, 139.69, 9),
    ("Cape Town", -33.92, 18.42, 2),
]
DATES = [(2026, 5, 1), (2025, 8, 15), (2024, 9, 22), (2026, 10, 20)]
DAYS = st.dates(datetime.date(2000, 1, 1), datetime.date(2090, 1, 1))
WARM = {"temperatures": [18.0] * 8, "humidities": [60] * 8, "winds": [1] * 8}
WHOLE = {"first_hour": 0, "block": 3}


HOURS = {"forecast": "hours", "setup": 25, "work": 120}


def run(**changed: Any) -> Any:
    """Run a forecast hour by hour, with some values changed."""
    return when_to_come.run(when_to_come.example() | HOURS | changed)


def by_three(**changed: Any) -> Any:
    """Run the worked example, which has three values of a forecast."""
    return when_to_come.run(when_to_come.example() | changed)


def levels(result: Any, level: str) -> str:
    return " ".join(each.text for each in result.cautions if each.level == level)


@pytest.mark.library("astral")
@pytest.mark.parametrize("date", DATES)
@pytest.mark.parametrize("place", PLACES, ids=[each[0] for each in PLACES])
def test_sun_times_against_a_library(
    place: tuple[str, float, float, float], date: tuple[int, int, int]
) -> None:
    # astral 3.2, astral.sun.sun; it handles refraction in its own way, so within a minute
    _, latitude, longitude, offset = place
    zone = datetime.timezone(datetime.timedelta(hours=offset))
    theirs = sun(Observer(latitude, longitude), datetime.date(*date), tzinfo=zone)
    ours = sun_times(latitude, longitude, *date, offset)
    for name in ("dawn", "sunrise", "noon", "sunset", "dusk"):
        at = theirs[name]
        assert getattr(ours, name) == pytest.approx(
            at.hour * 60 + at.minute + at.second / 60, abs=1.0
        ), name


@pytest.mark.library("astral")
@settings(max_examples=60, deadline=None, derandomize=True)
@given(st.floats(-60, 60), st.floats(-180, 180), DAYS)
def test_the_sun_stands_on_the_horizon_at_sunset(
    latitude: float, longitude: float, day: datetime.date
) -> None:
    # astral 3.2, astral.sun.elevation without refraction: the centre stands at -50'
    found = sun_times(latitude, longitude, day.year, day.month, day.day, 0)
    assert found.sunset is not None
    start = datetime.datetime(day.year, day.month, day.day, tzinfo=datetime.UTC)
    at = start + datetime.timedelta(minutes=found.sunset)
    height = elevation(Observer(latitude, longitude), at, with_refraction=False)
    assert height == pytest.approx(-50 / 60, abs=0.1)


def test_library_needs_no_zone_data() -> None:
    # the fixed zones above are all this test needs; the book itself imports neither
    import sys

    import calc.clients.when_to_come

    assert calc.clients.when_to_come
    source = sys.modules["calc.clients.when_to_come.sun"].__file__
    assert source is not None
    with open(source, encoding="utf-8") as file:
        text = file.read()
    assert "zoneinfo" not in text
    assert "import astral" not in text


@settings(max_examples=200, deadline=None, derandomize=True)
@given(st.floats(-89, 89), st.floats(-180, 180), st.floats(-12, 14), st.integers(1, 12))
def test_events_come_in_order(latitude: float, longitude: float, off: float, month: int) -> None:
    found = sun_times(latitude, longitude, 2026, month, 20, off)
    assert 0 <= found.noon <= 1440
    if found.sunrise is not None and found.sunset is not None:
        assert found.sunrise <= found.noon + 10
        assert found.sunset >= found.noon - 10
        if found.dawn is not None and found.dusk is not None:
            assert found.dawn < found.sunrise
            assert found.dusk > found.sunset


def test_midnight_sun_and_polar_night() -> None:
    for month in (6, 12):
        found = sun_times(70, 20, 2026, month, 21, 1)
        assert (found.sunrise, found.sunset) == (None, None)
    told = run(latitude=70, date="2026-06-21", method="home")
    assert told.values["sunset"] == "none on this date"
    assert "does not both rise and set" in levels(told, "caution")


@pytest.mark.parametrize(
    ("minutes", "text"),
    [
        (0, "00:00"),
        (719.6, "12:00"),
        (1439.4, "23:59"),
        (1440, "00:00 next day"),
        (-2, "23:58 the day before"),
    ],
)
def test_clock(minutes: float, text: str) -> None:
    assert clock(minutes) == text


def test_yellowjackets_are_home_eleven_minutes_after_sunset() -> None:
    found = run()
    values = found.values
    assert values["sunset"] == "20:34"
    assert values["last_home"] == "20:45"
    assert values["first_out"] == "06:01"
    assert values["begin"] >= values["last_home"]


def test_the_method_decides_the_hours() -> None:
    assert run(method="home").values["arrive"] > "20:00"
    wing = run(method="wing").values
    assert "09:30" < wing["arrive"] < "13:00"
    # middle of the day: true noon 13:23 plus three hours at the latest
    assert wing["finish"] < "16:24"


def test_the_first_catch_never_falls_into_flying_hours() -> None:
    values = run(**WARM, **WHOLE, method="home", date="2026-06-01").values
    for row in values["windows"]:
        assert row["why"].startswith("at home")


def test_daylight_work_ends_before_sunset() -> None:
    cool = {"temperatures": [6.0] * 8, "humidities": [90] * 8, "winds": [1] * 8}
    values = run(**cool, **WHOLE, height="height", method="home").values
    assert values["sunrise"] < values["arrive"]
    assert all(row["done"] < values["sunset"] for row in values["windows"])


def test_heat_stretches_the_job() -> None:
    hot = run(temperatures=[26.0] * 6, humidities=[60] * 6, winds=[1] * 6, method="wing", work=60)
    mild = run(temperatures=[15.0] * 6, humidities=[60] * 6, winds=[1] * 6, method="wing", work=60)
    assert mild.values["least_minutes"] == 60
    assert 0 < hot.values["least_minutes"] < 60
    assert "Steady work is over" in levels(hot, "caution")
    assert "Steady work is over" not in levels(mild, "caution")


def test_rests_by_hand() -> None:
    # 40 minutes of work at 22 in the hour: two work periods with one rest of 38 between, 78 in all
    values = run(
        temperatures=["84 degF"] * 6,
        humidities=[62],
        winds=["2 mph"],
        sky="shade",
        effort="high",
        method="wing",
        setup=25,
        work=40,
    ).values
    assert values["least_minutes"] == 22
    begin, finish = (
        int(values[name][:2]) * 60 + int(values[name][3:]) for name in ("begin", "finish")
    )
    assert finish - begin == 78


def test_the_evening_comes_before_the_small_hours() -> None:
    values = run(**WARM, **WHOLE, method="home").values
    assert values["windows"][0]["from"] == "00:00"
    assert values["arrive"] > "18:00"


def test_heat_agrees_with_the_heat_calculator() -> None:
    from calc.safety.heat_in_suit import heat_in_suit

    ours = run(
        temperatures=[27.0] * 6, humidities=[50] * 6, winds=[1] * 6, method="wing", work=30
    ).values
    weather = {"air_temperature": 27, "humidity": 50, "wind": 1, "sun": "light_cloud"}
    theirs = heat_in_suit(**weather, work="moderate", clothing="sting_suit").values
    assert ours["least_minutes"] == theirs["work_minutes"]


def hidden(result: Any) -> bool:
    return all(result.values[name] is None for name in ("arrive", "begin", "finish", "latest"))


def test_stop_for_heat() -> None:
    found = run(
        temperatures=[38.0] * 6, humidities=[70] * 6, winds=[0.5] * 6, method="wing", sky="full_sun"
    )
    assert "Do not go on this date" in levels(found, "stop")
    assert hidden(found)


def test_stop_for_light() -> None:
    found = run(height="height", method="home")
    assert "failing light" in levels(found, "stop")
    assert hidden(found)


def test_stop_for_hornets_at_dark() -> None:
    found = run(**WARM, **WHOLE, animal="crabro", method="home")
    assert "Dark does not keep European hornets in" in levels(found, "stop")
    assert hidden(found)


def test_calm_air_by_day_is_said_and_makes_it_hotter() -> None:
    hot = {"temperatures": [14, 20, 25, 24, 18, 14], "humidities": [50], "sky": "full_sun"}
    calm, moved = run(**hot, winds=[0.2]), run(**hot, winds=[0.6])
    assert "Calm air in the forecast" in levels(calm, "caution")
    assert "Calm air" not in levels(moved, "caution")
    rows = zip(calm.values["hours"], moved.values["hours"], strict=True)
    pairs = [(one["minutes"], other["minutes"]) for one, other in rows]
    assert all(less <= more for less, more in pairs)
    assert any(less < more for less, more in pairs)
    by_night = run(**hot, winds=[0.2, 1, 1, 1, 1, 1], first_hour=0)
    assert "Calm air" not in levels(by_night, "caution")


def test_stop_for_a_short_forecast() -> None:
    found = run(first_hour=10, block=1, temperatures=[20, 20], humidities=[50, 50], winds=[1, 1])
    assert "Type the forecast for the whole day" in levels(found, "stop")
    assert hidden(found)


def test_stop_for_a_job_longer_than_the_window() -> None:
    found = run(**WARM, **WHOLE, method="wing", work=600)
    assert "Choose another day" in levels(found, "stop")
    assert hidden(found)


@pytest.mark.parametrize(
    ("change", "words"),
    [
        ({}, "Cold and dark do not disarm"),
        ({}, "dark before you are done"),
        ({}, "Rain is no quiet window"),
        ({"longitude": -75}, "Clock and longitude do not match"),
        ({"latitude": 67, "date": "2026-04-20"}, "sun times can be off"),
        ({"animal": "crabro", "method": "wing"}, "fly in the dark"),
        (
            {"temperatures": [6.0] * 6, "height": "height"},
            "because it is cool, and they are awake",
        ),
        ({"work": 400}, "past the forecast"),
        ({"winds": [1, 2]}, "the last one holds"),
    ],
)
def test_each_caution(change: dict[str, Any], words: str) -> None:
    assert words in levels(run(**change), "caution")


def test_cautions_stay_away_where_nothing_is_wrong() -> None:
    told = levels(run(method="wing"), "caution")
    for words in (
        "last one holds",
        "Clock and",
        "dark before",
        "past the forecast",
        "fly in the dark",
    ):
        assert words not in told


def test_threshold_of_the_clock() -> None:
    assert "Clock and" not in levels(run(longitude=10, utc_offset=4), "caution")
    assert "Clock and" in levels(run(longitude=10, utc_offset=4.5), "caution")


@pytest.mark.parametrize(
    ("change", "field"),
    [
        ({"date": "2026-02-30"}, "date"),
        ({"forecast": "day", "highest": 12, "lowest": 13}, "highest"),
        ({"winds": [1] * 7}, "winds"),
        ({"humidities": [50] * 7}, "humidities"),
    ],
)
def test_what_does_not_fit_is_refused(change: dict[str, Any], field: str) -> None:
    with pytest.raises(InputError, match="allowed is") as caught:
        run(**change)
    assert caught.value.field == field


def test_one_value_holds_for_the_day() -> None:
    six = run(humidities=[60] * 6, winds=[1] * 6).values
    assert run(humidities=[60], winds=[1]).values == six
    assert "last one holds" not in levels(run(humidities=[60], winds=[1]), "caution")


def test_day_strip_shows_light_and_visit() -> None:
    chart = run().charts[0]
    labels = [series.label for series in chart.series]
    assert {"dark", "twilight", "most at home", "you on the site"} <= set(labels)
    assert "Sunrise 06:12" in chart.alt


@pytest.mark.library("psychrolib")
@pytest.mark.parametrize(("air", "dew"), [(15.0, 10.0), (25.0, 10.0), (28.0, 12.0), (5.0, 10.0)])
def test_humidity_against_a_library(air: float, dew: float) -> None:
    # psychrolib 2.5, GetRelHumFromTDewPoint: another vapour formula, so within half a percent point
    import psychrolib

    psychrolib.SetUnitSystem(psychrolib.SI)
    theirs = 100 * psychrolib.GetRelHumFromTDewPoint(air, dew) if air >= dew else 100.0
    assert course.humidity(air, dew) == pytest.approx(theirs, abs=0.5)


@given(st.floats(4, 8), st.floats(16, 20.5), st.floats(-5, 15), st.floats(0, 20))
def test_the_course_keeps_its_ends(
    sunrise: float, sunset: float, lowest: float, span: float
) -> None:
    def air(hour: float) -> float:
        return course.temperature(hour, sunrise, sunset, lowest, lowest + span, lowest)

    assert air(sunrise) == pytest.approx(lowest)
    assert air(sunrise + 24 - 1e-9) == pytest.approx(lowest, abs=1e-3)
    assert air(sunset - 4) == pytest.approx(lowest + span)
    assert air(sunset) == pytest.approx(air(sunset - 1e-9), abs=1e-6)
    for step in range(96):
        assert lowest - 1e-9 <= air(step / 4) <= lowest + span + 1e-9
        assert abs(air(step / 4 + 0.25) - air(step / 4)) <= 0.12 * span + 0.01


def test_a_short_day_has_its_highest_in_the_middle() -> None:
    assert course.temperature(12, 10, 14, -5, 3, -5) == pytest.approx(3)


def test_three_values_name_themselves_a_model() -> None:
    found = by_three()
    assert "The hours are a model's" in levels(found, "caution")
    assert "The hours are a model's" not in levels(run(), "caution")
    assert "temperature by a model" in [each.label for each in found.charts[0].series]
    assert found.values["begin"] >= found.values["last_home"]
    warmest = max(row["temperature"] for row in found.values["hours"])
    assert warmest == pytest.approx(27, abs=0.5)


def test_the_error_of_the_model_is_taken_off_a_cool_morning() -> None:
    # few fly below 10 degC; by the model a morning at 9 may be one at 11
    cool = by_three(lowest=6, highest=7.9, height="height", work=30)
    assert any(row["where"] == "at home, cool" for row in cool.values["hours"])
    unsure = by_three(lowest=8.1, highest=9.5, height="height", work=30)
    assert all(row["where"] != "at home, cool" for row in unsure.values["hours"])


def test_heat_by_three_values_stops_as_typed_hours_do() -> None:
    found = by_three(lowest=30, highest=40, humidity=60, method="wing", sky="full_sun")
    assert "Do not go on this date" in levels(found, "stop")
    assert hidden(found)


def test_no_sun_on_the_date_takes_the_hot_side() -> None:
    found = by_three(latitude=70, date="2026-06-21", lowest=5, highest=20)
    assert {row["temperature"] for row in found.values["hours"]} == {20}


def test_empty_names_what_is_missing_in_order() -> None:
    answer = when_to_come.answer({})
    assert isinstance(answer, Incomplete)
    assert [each.name for each in answer.missing] == [
        "date", "animal", "highest", "lowest", "humidity", "latitude", "longitude", "utc_offset",
    ]  # fmt: skip
    assert "Cold and dark do not disarm" in " ".join(each.text for each in answer.cautions)


def test_a_certain_stop_waits_for_nothing() -> None:
    # by night they fly, whatever the place and the weather; none of the days tried is cool
    known = {"animal": "crabro", "method": "home", "highest": 30, "lowest": 20, "humidity": 30}
    answer = when_to_come.answer(known | {"latitude": 50, "longitude": 10, "utc_offset": 2})
    assert isinstance(answer, Incomplete)
    assert [each.name for each in answer.missing] == ["date"]
    assert answer.stopped


def test_hours_are_asked_for_where_they_are_chosen() -> None:
    answer = when_to_come.answer({"forecast": "hours"})
    assert isinstance(answer, Incomplete)
    names = {each.name for each in answer.missing}
    assert {"first_hour", "block", "temperatures", "humidities", "winds"} <= names
    assert not names & {"highest", "lowest", "humidity"}

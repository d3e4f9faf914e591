"""What "When to come" asks for."""

from __future__ import annotations

from collections.abc import Iterator

from calc import tables
from calc.clients.common_inputs import VISIT
from calc.declare import Given, Option, Soft, choice, count, number, numbers, shared

_DAY = ("forecast", ("day",))
_HOURS = ("forecast", ("hours",))
_STEPS = [tables.row("step_times", f"wall_{step}") for step in range(1, 7)]
_SETUP, *_WORK = (float(row["likely"]) for row in _STEPS)
_FORMULA = "the wet-bulb formula holds from 5 to 99 %"
_HOT = "above 50 °C the wet-bulb formula ends; below -30 °C nothing flies"


def _options(table: str, text: str, *leave_out: str) -> Iterator[Option]:
    for row in tables.rows(table):
        if row["key"] not in leave_out:
            yield Option(value=row["key"], label=row[text])


def _classes() -> Iterator[Option]:
    for row in tables.rows("metabolic_rates"):
        if row["key"] != "rest":
            yield Option(value=row["key"], label=f"{row['class']}: {row['examples']}")


class Inputs(Given):
    """Date, animal and forecast; then place, suit and way of working."""

    date: str = shared(VISIT)
    animal: str = choice(
        "Animal",
        "Decides when they are home.",
        _options("activity_windows", "animal"),
        example="vespula",
    )
    highest: float | None = number(
        "Highest temperature of the day",
        "From the forecast, in the shade.",
        "degC",
        low=-30,
        high=50,
        why=_HOT,
        source="stull_2011",
        only_if=_DAY,
        plausible=(12, 35),
        example=27,
        customary_digits=0,
        step=1,
    )
    lowest: float | None = number(
        "Lowest temperature of the day",
        "From the forecast; it comes about sunrise.",
        "degC",
        low=-30,
        high=50,
        why=_HOT,
        source="stull_2011",
        only_if=_DAY,
        plausible=(0, 12),
        example=13,
        customary_digits=0,
        step=1,
    )
    humidity: float | None = number(
        "Humidity in the afternoon",
        "At the warmest hour. A mean of the whole day is higher; the heat then comes out too hot.",
        "percent",
        low=5,
        high=99,
        why=_FORMULA,
        source="stull_2011",
        only_if=_DAY,
        plausible=(25, 80),
        example=50,
        step=5,
    )
    latitude: float = number(
        "Latitude",
        "North is plus, south is minus; a map on the phone shows it.",
        "degree",
        low=-89,
        high=89,
        why="at the poles there is no rise and set by day",
        source="arithmetic",
        origin="equipment",
        plausible=(-45, 60),
        example=52,
        digits=2,
        step=0.5,
        soft=(
            Soft(
                low=-66,
                high=66,
                text="This far from the equator the sun times can be off by more than a minute.",
                reason="The sun's path is flat to the horizon there.",
                source="noaa_solar_equations",
            ),
        ),
    )
    longitude: float = number(
        "Longitude",
        "East is plus, west is minus.",
        "degree",
        low=-180,
        high=180,
        origin="equipment",
        example=10,
        digits=2,
        step=0.5,
    )
    utc_offset: float = number(
        "Clock ahead of UTC",
        "Summer time included: 2 in Berlin in summer, -4 in New York in summer.",
        "hour",
        low=-12,
        high=14,
        why="clocks in use lie between these",
        source="arithmetic",
        origin="equipment",
        example=2,
        digits=2,
        step=1,
    )
    clothing: str = choice(
        "What you wear",
        "Its adjustment is added to the heat.",
        _options("clothing_adjustment", "clothing", "encapsulating"),
        origin="equipment",
        usual="sting_suit",
        usual_source="sting_suit_clothing_value",
    )
    work: float = number(
        "Work after setting up",
        "Until you leave, rests for heat not counted.",
        "min",
        low=5,
        high=720,
        origin="usual",
        usual=sum(_WORK),
        usual_source="step_times_ours",
        plausible=(45, 300),
        step=15,
    )
    setup: float = number(
        "Setting up",
        "From arrival to the first catch.",
        "min",
        low=0,
        high=180,
        origin="usual",
        usual=_SETUP,
        usual_source="step_times_ours",
        plausible=(10, 40),
        step=5,
    )
    method: str = choice(
        "Where you want them",
        "At home for one catch at the nest; out for a quiet entrance and a box for those that "
        "return.",
        [("home", "Most at home"), ("wing", "Most out foraging")],
        origin="usual",
        usual="home",
        usual_source="own_reasoning",
    )
    height: str = choice(
        "Work",
        "Ladder, roof, saw and knife work needs daylight to the end.",
        [
            ("ground", "From the ground, with a lamp if need be"),
            ("height", "With a ladder, on a roof or with a saw"),
        ],
        origin="usual",
        usual="ground",
        usual_source="own_reasoning",
    )
    effort: str = choice(
        "How hard the work is",
        "Take the harder class when in doubt.",
        _classes(),
        origin="usual",
        usual="moderate",
        usual_source="own_reasoning",
    )
    acclimatised: str = choice(
        "Used to this heat and this suit",
        "A week or more of work in both, without a week's break since.",
        [("no", "No, or not sure"), ("yes", "Yes")],
        origin="usual",
        usual="no",
        usual_source="own_reasoning",
    )
    sky: str = choice(
        "Sun on you by day",
        "For the heat limit; before sunrise and after sunset it is shade.",
        _options("sun_strength", "sky"),
        origin="usual",
        usual="light_cloud",
        usual_source="own_reasoning",
    )
    wind: float | None = number(
        "Wind where you stand",
        "Behind a house it is much less than in the forecast.",
        "m/s",
        low=0,
        high=15,
        origin="usual",
        only_if=_DAY,
        usual=1,
        usual_source="own_reasoning",
        plausible=(0.5, 5),
        digits=1,
        step=0.5,
    )
    forecast: str = choice(
        "Forecast",
        "Three values give the day's course by a model; hours are better.",
        [("day", "Lowest, highest and humidity"), ("hours", "Hour by hour")],
        origin="extra",
        usual="day",
        usual_source="cesaraccio_2001",
    )
    first_hour: int | None = count(
        "First hour of the forecast",
        "Hour of the day at which the first block begins.",
        unit="hour",
        low=0,
        high=23,
        why="hours of the day",
        source="arithmetic",
        origin="extra",
        only_if=_HOURS,
        plausible=(0, 8),
        example=6,
    )
    block: int | None = count(
        "Length of a block",
        "Forecasts come by 1, 3 or 6 hours.",
        unit="hour",
        low=1,
        high=12,
        origin="extra",
        only_if=_HOURS,
        plausible=(1, 6),
        example=3,
    )
    temperatures: tuple[float, ...] | None = numbers(
        "Temperature",
        "Air in the shade, block by block.",
        "degC",
        item="block",
        low=-30,
        high=50,
        why=_HOT,
        source="stull_2011",
        most=24,
        origin="extra",
        only_if=_HOURS,
        plausible=(5, 35),
        example=(14, 19, 25, 27, 24, 18),
        digits=1,
        customary_digits=0,
        step=1,
    )
    humidities: tuple[float, ...] | None = numbers(
        "Relative humidity",
        "One for each block; the last one holds for the rest.",
        "percent",
        item="block",
        low=5,
        high=99,
        why=_FORMULA,
        source="stull_2011",
        most=24,
        origin="extra",
        only_if=_HOURS,
        plausible=(25, 95),
        example=(90, 75, 55, 50, 60, 80),
        step=5,
    )
    winds: tuple[float, ...] | None = numbers(
        "Wind where you stand, by blocks",
        "One for each block, the last one holds on; behind a house it is much less.",
        "m/s",
        item="block",
        low=0,
        high=15,
        most=24,
        origin="extra",
        only_if=_HOURS,
        plausible=(0.5, 5),
        example=(1, 1, 2, 2, 1, 1),
        digits=1,
        step=0.5,
    )

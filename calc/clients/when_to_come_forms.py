"""Inputs and results of "When to come"."""

from __future__ import annotations

from calc import tables
from calc.common_inputs import DAY, MONTH
from calc.declare import Choice, Count, Input, Number, Numbers, Option, Out, Soft

HIDDEN = ("arrive", "begin", "finish", "latest")
"""Results that a stop withholds."""


def _options(table: str, text: str, leave_out: tuple[str, ...] = ()) -> tuple[Option, ...]:
    return tuple(
        Option(value=row["key"], label=row[text])
        for row in tables.rows(table)
        if row["key"] not in leave_out
    )


INPUTS: tuple[Input, ...] = (
    Number(
        name="latitude",
        label="Latitude",
        meaning="North is plus, south is minus; a map on the phone shows it.",
        unit="degree",
        low=-89,
        high=89,
        why="at the poles there is no rise and set by day",
        source="arithmetic",
        usual=52.0,
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
    ),
    Number(
        name="longitude",
        label="Longitude",
        meaning="East is plus, west is minus.",
        unit="degree",
        low=-180,
        high=180,
        why="once round the world",
        source="arithmetic",
        usual=10.0,
        digits=2,
        step=0.5,
    ),
    Count(
        name="year",
        label="Year",
        meaning="Of the visit.",
        low=1950,
        high=2100,
        why="the equations hold from 1900 to 2100",
        source="noaa_solar_equations",
        usual=2026,
    ),
    MONTH,
    DAY,
    Number(
        name="utc_offset",
        label="Clock ahead of UTC",
        meaning="Summer time included: 2 in Berlin in summer, -4 in New York in summer.",
        unit="hour",
        low=-12,
        high=14,
        why="clocks in use lie between these",
        source="arithmetic",
        usual=2,
        digits=2,
        step=1,
    ),
    Choice(
        name="animal",
        label="Animal",
        meaning="Decides when they are home.",
        options=_options("activity_windows", "animal"),
        usual="vespula",
    ),
    Choice(
        name="method",
        label="Where you want them",
        meaning="At home for one catch at the nest; out for a quiet entrance and a box for "
        "those that return.",
        options=(
            Option(value="home", label="Most at home"),
            Option(value="wing", label="Most out foraging"),
        ),
        usual="home",
    ),
    Choice(
        name="height",
        label="Work",
        meaning="Ladder, roof, saw and knife work needs daylight to the end.",
        options=(
            Option(value="ground", label="From the ground, with a lamp if need be"),
            Option(value="height", label="With a ladder, on a roof or with a saw"),
        ),
        usual="ground",
    ),
    Number(
        name="setup",
        label="Setting up",
        meaning="From arrival to the first catch.",
        unit="min",
        low=0,
        high=180,
        why="more is another visit",
        source="own_reasoning",
        usual=25,
        step=5,
    ),
    Number(
        name="work",
        label="Work after that",
        meaning="Until you leave, rests for heat not counted.",
        unit="min",
        low=5,
        high=720,
        why="one working day",
        source="own_reasoning",
        usual=120,
        step=15,
    ),
    Count(
        name="first_hour",
        label="First hour of the forecast",
        meaning="Hour of the day at which the first block begins.",
        unit="hour",
        low=0,
        high=23,
        why="hours of the day",
        source="arithmetic",
        usual=6,
    ),
    Count(
        name="block",
        label="Length of a block",
        meaning="Forecasts come by 1, 3 or 6 hours.",
        unit="hour",
        low=1,
        high=12,
        why="longer blocks hide evening and morning",
        source="own_reasoning",
        usual=3,
    ),
    Numbers(
        name="temperatures",
        label="Temperature",
        meaning="Air in the shade, block by block.",
        item="block",
        unit="degC",
        customary="degF",
        low=-30,
        high=50,
        why="above 50 °C the wet-bulb formula ends; below -30 °C nothing flies",
        source="stull_2011",
        most=24,
        usual=(14.0, 19.0, 25.0, 27.0, 24.0, 18.0),
        digits=1,
        customary_digits=0,
        step=1,
    ),
    Numbers(
        name="humidities",
        label="Relative humidity",
        meaning="One for each block; the last one holds for the rest.",
        item="block",
        unit="percent",
        low=5,
        high=99,
        why="the wet-bulb formula holds from 5 to 99 %",
        source="stull_2011",
        most=24,
        usual=(90.0, 75.0, 55.0, 50.0, 60.0, 80.0),
        step=5,
    ),
    Numbers(
        name="winds",
        label="Wind where you stand",
        meaning="One for each block, the last one holds on; behind a house it is much less.",
        item="block",
        unit="m/s",
        customary="mph",
        low=0,
        high=15,
        why="no one works on a nest in more wind than this",
        source="own_reasoning",
        most=24,
        usual=(1.0, 1.0, 2.0, 2.0, 1.0, 1.0),
        digits=1,
        step=0.5,
    ),
    Choice(
        name="rain",
        label="Rain",
        meaning="On that day.",
        options=(
            Option(value="dry", label="Dry"),
            Option(value="showers", label="Showers"),
            Option(value="steady", label="Steady rain"),
        ),
        usual="dry",
    ),
    Choice(
        name="sky",
        label="Sun on you by day",
        meaning="For the heat limit; before sunrise and after sunset it is shade.",
        options=_options("sun_strength", "sky"),
        usual="light_cloud",
    ),
    Choice(
        name="effort",
        label="How hard the work is",
        meaning="Take the harder class when in doubt.",
        options=tuple(
            Option(value=row["key"], label=f"{row['class']}: {row['examples']}")
            for row in tables.rows("metabolic_rates")
            if row["key"] != "rest"
        ),
        usual="moderate",
    ),
    Choice(
        name="clothing",
        label="What you wear",
        meaning="Its adjustment is added to the heat.",
        options=_options("clothing_adjustment", "clothing", leave_out=("encapsulating",)),
        usual="sting_suit",
    ),
    Choice(
        name="acclimatised",
        label="Used to this heat and this suit",
        meaning="A week or more of work in both, without a week's break since.",
        options=(
            Option(value="no", label="No, or not sure"),
            Option(value="yes", label="Yes"),
        ),
        usual="no",
    ),
)

_TEMPERATURE = Out(
    name="temperature",
    label="Air",
    meaning="Forecast.",
    unit="degC",
    customary="degF",
)
_MINUTES = Out(
    name="minutes",
    label="Work in an hour",
    meaning="Most that the heat limit leaves, least over the time.",
    kind="count",
    unit="min",
)

OUTPUTS = (
    Out(
        name="verdict",
        label="When to come",
        meaning="The time that fits method, light and heat; never a promise.",
        kind="text",
        main=True,
    ),
    Out(
        name="arrive",
        label="Arrive at",
        meaning="Earliest of the window.",
        kind="text",
        main=True,
    ),
    Out(
        name="finish",
        label="Done by",
        meaning="With the rests that the heat limit asks for.",
        kind="text",
        main=True,
    ),
    Out(
        name="begin",
        label="First catch at",
        meaning="After setting up.",
        kind="text",
    ),
    Out(name="latest", label="Arrive no later than", meaning="End of the window.", kind="text"),
    Out(
        name="least_minutes",
        label="Work in an hour, at most",
        meaning="By the heat limit, least over the planned time.",
        kind="count",
        unit="min",
    ),
    Out(name="dawn", label="Civil dawn", meaning="Sun 6° below the horizon.", kind="text"),
    Out(name="sunrise", label="Sunrise", meaning="Level horizon.", kind="text"),
    Out(name="noon", label="True noon", meaning="Sun highest.", kind="text"),
    Out(name="sunset", label="Sunset", meaning="Level horizon.", kind="text"),
    Out(name="dusk", label="Civil dusk", meaning="Sun 6° below the horizon.", kind="text"),
    Out(
        name="twilight",
        label="Evening twilight lasts",
        meaning="From sunset to civil dusk.",
        unit="min",
    ),
    Out(
        name="last_home",
        label="Last foragers home about",
        meaning="By the table; some stay out overnight.",
        kind="text",
    ),
    Out(
        name="first_out",
        label="First foragers out about",
        meaning="By the table, if it is warm enough.",
        kind="text",
    ),
    Out(
        name="windows",
        label="All times that fit",
        meaning="Each run of arrivals.",
        kind="table",
        columns=(
            Out(name="from", label="Arrive from", meaning="Earliest.", kind="text"),
            Out(name="to", label="to", meaning="Latest.", kind="text"),
            Out(name="done", label="Done by", meaning="For the earliest.", kind="text"),
            Out(name="why", label="They are", meaning="At the first catch.", kind="text"),
            _TEMPERATURE,
            _MINUTES,
        ),
    ),
    Out(
        name="hours",
        label="The day",
        meaning="Middle of each block.",
        kind="table",
        columns=(
            Out(name="from", label="From", meaning="Start of the block.", kind="text"),
            _TEMPERATURE,
            Out(name="light", label="Light", meaning="At its middle.", kind="text"),
            Out(name="where", label="They are", meaning="At its middle.", kind="text"),
            _MINUTES,
        ),
    ),
)

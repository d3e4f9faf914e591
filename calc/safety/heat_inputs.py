"""Inputs of "Heat in the suit"."""

from __future__ import annotations

from calc import tables
from calc.declare import Choice, Input, Number, Option, Soft
from calc.safety import heat_limits


def _options(table: str, text: str, *, extra: str = "") -> tuple[Option, ...]:
    return tuple(
        Option(value=row["key"], label=row[text], meaning=str(row.get(extra, "")))
        for row in tables.rows(table)
    )


_WEATHER = ("heat_known", ("weather",))
_MEASURED = ("heat_known", ("measured",))

INPUTS: tuple[Input, ...] = (
    Choice(
        name="heat_known",
        label="How the heat is known",
        meaning="Estimate it from the weather, or give the reading of a WBGT meter.",
        options=(
            Option(value="weather", label="Estimate from the weather"),
            Option(value="measured", label="WBGT measured on the spot"),
        ),
        usual="weather",
    ),
    Number(
        name="air_temperature",
        label="Air temperature",
        meaning="In the shade, where you work; from a thermometer or the weather report.",
        only_if=_WEATHER,
        unit="degC",
        customary="degF",
        low=5,
        high=50,
        why="above 50 °C the wet-bulb formula ends; below 5 °C heat is not the question",
        source="stull_2011",
        usual=26,
        digits=1,
        customary_digits=0,
        step=1,
        soft=(
            Soft(
                high=40,
                text="Above 40 °C the WBGT estimate leans on figures beyond their stated range: "
                "measure if you can.",
                reason="The heat of evaporation in the method is stated up to 313 K.",
                source="liljegren_2008",
            ),
        ),
    ),
    Number(
        name="humidity",
        label="Relative humidity",
        meaning="From the weather report for this hour, not for the morning.",
        only_if=_WEATHER,
        unit="percent",
        low=5,
        high=99,
        why="the wet-bulb formula holds from 5 to 99 %",
        source="stull_2011",
        usual=55,
        step=5,
    ),
    Choice(
        name="sun",
        label="Sun",
        meaning="The sun that falls on you at work. For an attic or under a hot roof, "
        "measure the WBGT instead.",
        only_if=_WEATHER,
        options=(
            *_options("sun_strength", "sky"),
            Option(
                value="radiation",
                label="I know the radiation",
                meaning="From a weather station, in W/m² on a level surface.",
            ),
        ),
        usual="light_cloud",
    ),
    Number(
        name="radiation",
        label="Solar radiation",
        meaning="On a level surface, from a weather station near you.",
        only_if=("sun", ("radiation",)),
        unit="W/m**2",
        low=0,
        high=1100,
        why="more than this does not reach the ground for long",
        source="sun_strength",
        usual=700,
        step=50,
    ),
    Number(
        name="wind",
        label="Wind where you stand",
        meaning="The forecast gives the wind in the open at 10 m. At head height take about "
        "0.7 of it, behind a house or hedge much less.",
        only_if=_WEATHER,
        unit="m/s",
        customary="mph",
        low=0,
        high=15,
        why="no one works on a nest in more wind than this",
        source="own_reasoning",
        usual=1,
        digits=1,
        step=0.5,
    ),
    Number(
        name="measured_wbgt",
        label="WBGT at the work place",
        meaning="Reading of the meter where you will work, after it has settled.",
        only_if=_MEASURED,
        unit="degC",
        customary="degF",
        low=0,
        high=50,
        why="meters read no further, and nobody can work there",
        source="own_reasoning",
        usual=24,
        digits=1,
        step=0.5,
    ),
    Number(
        name="rest_wbgt",
        label="WBGT at the place of rest",
        meaning="Reading of the meter where you will rest; leave empty if not measured.",
        only_if=_MEASURED,
        optional=True,
        unit="degC",
        customary="degF",
        low=0,
        high=50,
        why="meters read no further",
        source="own_reasoning",
        digits=1,
        step=0.5,
    ),
    Choice(
        name="work",
        label="How hard the work is",
        meaning="Take the harder class when in doubt: tables of work rates can be off by 30 %.",
        options=(
            *(
                Option(
                    value=row["key"],
                    label=f"{row['class']}: {row['examples']}",
                    meaning=f"{row['rate']:.0f} W; range of the class {row['range']} W",
                )
                for row in tables.rows("metabolic_rates")
                if row["key"] != "rest"
            ),
            Option(value="own", label="I know the metabolic rate"),
        ),
        usual="moderate",
    ),
    Number(
        name="metabolic_rate",
        label="Metabolic rate",
        meaning="Mean heat your body makes at this work.",
        only_if=("work", ("own",)),
        unit="W",
        customary="kcal/h",
        low=heat_limits.REST_RATE,
        high=heat_limits.HIGHEST_RATE,
        why="the published limit curves run between these two",
        source="niosh_2016_upper_end",
        usual=300,
        step=10,
    ),
    Choice(
        name="clothing",
        label="What you wear",
        meaning="Its adjustment is added to the WBGT.",
        options=_options("clothing_adjustment", "clothing", extra="note"),
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
    Choice(
        name="rest",
        label="Where you rest",
        meaning="Rest counts only away from the nest, with the suit open or off.",
        options=(
            Option(value="shade", label="In shade, away from the nest, suit open or off"),
            Option(value="same", label="On the spot, suit closed"),
        ),
        usual="shade",
    ),
    Number(
        name="planned_minutes",
        label="Planned work in the suit",
        meaning="Minutes of work you expect; leave empty if you do not know.",
        optional=True,
        unit="min",
        low=1,
        high=480,
        why="one working day",
        source="own_reasoning",
        step=5,
    ),
)
"""What the reader gives, in the order of the form."""

"""What "Heat in the suit" asks for."""

from __future__ import annotations

from typing import Any

from calc import tables
from calc.declare import Given, Soft, choice, number
from calc.declare.inputs import Option
from calc.safety import heat_limits

_WEATHER = ("heat_known", ("weather",))
_MEASURED = ("heat_known", ("measured",))


def _options(table: str, text: str, *, extra: str = "") -> tuple[Option, ...]:
    return tuple(
        Option(value=row["key"], label=row[text], meaning=str(row.get(extra, "")))
        for row in tables.rows(table)
    )


def _work() -> list[Option]:
    classes = [
        Option(
            value=row["key"],
            label=f"{row['class']}: {row['examples']}",
            meaning=f"{row['rate']:.0f} W; range of the class {row['range']} W",
        )
        for row in tables.rows("metabolic_rates")
        if row["key"] != "rest"
    ]
    return [*classes, Option(value="own", label="I know the metabolic rate")]


def _meter(label: str, meaning: str, **more: Any) -> Any:
    return number(
        label, meaning, "degC", low=0, high=50,
        why="meters read no further, and nobody can work there",
        origin="extra", only_if=_MEASURED, digits=1, step=0.5, **more,
    )  # fmt: skip


class Inputs(Given):
    """Weather, work and suit; or a WBGT meter's reading in place of the weather."""

    air_temperature: float | None = number(
        "Air temperature",
        "In the shade, where you work; from a thermometer or the weather report.",
        "degC",
        low=5,
        high=50,
        why="above 50 °C the wet-bulb formula ends; below 5 °C heat is not the question",
        source="stull_2011",
        only_if=_WEATHER,
        plausible=(10, 38),
        example=26,
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
    )
    humidity: float | None = number(
        "Relative humidity",
        "From the weather report for this hour, not for the morning.",
        "percent",
        low=5,
        high=99,
        why="the wet-bulb formula holds from 5 to 99 %",
        source="stull_2011",
        only_if=_WEATHER,
        plausible=(20, 95),
        example=55,
        step=5,
    )
    sun: str | None = choice(
        "Sun",
        "The sun that falls on you at work. For an attic or under a hot roof, measure the WBGT "
        "instead.",
        [
            *_options("sun_strength", "sky"),
            (
                "radiation",
                "I know the radiation",
                "From a weather station, in W/m² on a level surface.",
            ),
        ],
        only_if=_WEATHER,
        example="light_cloud",
    )
    work: str = choice(
        "How hard the work is",
        "Take the harder class when in doubt: tables of work rates can be off by 30 %.",
        _work(),
        example="moderate",
    )
    wind: float | None = number(
        "Wind where you stand",
        "The forecast gives the wind in the open at 10 m. At head height take about 0.7 of it, "
        "behind a house or hedge much less.",
        "m/s",
        low=0,
        high=15,
        why="no one works on a nest in more wind than this",
        only_if=_WEATHER,
        plausible=(0, 6),
        example=1,
        digits=1,
        step=0.5,
    )
    clothing: str = choice(
        "What you wear",
        "Its adjustment is added to the WBGT.",
        _options("clothing_adjustment", "clothing", extra="note"),
        origin="equipment",
        example="sting_suit",
    )
    acclimatised: str = choice(
        "Used to this heat and this suit",
        "A week or more of work in both, without a week's break since.",
        [("no", "No, or not sure"), ("yes", "Yes")],
        origin="equipment",
        usual="no",
        usual_source="acclimatisation_ours",
    )
    rest: str = choice(
        "Where you rest",
        "Rest counts only away from the nest, with the suit open or off.",
        [
            ("shade", "In shade, away from the nest, suit open or off"),
            ("same", "On the spot, suit closed"),
        ],
        origin="usual",
        usual="shade",
        usual_source="own_reasoning",
    )
    planned_minutes: float | None = number(
        "Planned work in the suit",
        "Minutes of work you expect; leave empty if you do not know.",
        "min",
        low=1,
        high=480,
        why="one working day",
        origin="extra",
        optional=True,
        plausible=(10, 180),
        step=5,
    )
    heat_known: str = choice(
        "How the heat is known",
        "Estimate it from the weather, or give the reading of a WBGT meter.",
        [("weather", "Estimate from the weather"), ("measured", "WBGT measured on the spot")],
        origin="extra",
        usual="weather",
        usual_source="own_reasoning",
    )
    measured_wbgt: float | None = _meter(
        "WBGT at the work place",
        "Reading of the meter where you will work, after it has settled.",
        plausible=(15, 33),
        example=24,
    )
    rest_wbgt: float | None = _meter(
        "WBGT at the place of rest",
        "Reading of the meter where you will rest; leave empty if not measured.",
        plausible=(14, 31),
        optional=True,
    )
    radiation: float | None = number(
        "Solar radiation",
        "On a level surface, from a weather station near you.",
        "W/m**2",
        low=0,
        high=1100,
        why="more than this does not reach the ground for long",
        source="sun_strength",
        origin="extra",
        only_if=("sun", ("radiation",)),
        plausible=(100, 1000),
        plausible_source="sun_strength",
        example=700,
        step=50,
    )
    metabolic_rate: float | None = number(
        "Metabolic rate",
        "Mean heat your body makes at this work.",
        "W",
        customary="kcal/h",
        low=heat_limits.REST_RATE,
        high=heat_limits.HIGHEST_RATE,
        why="the published limit curves run between these two",
        source="niosh_2016_upper_end",
        origin="extra",
        only_if=("work", ("own",)),
        plausible=(180, 520),
        plausible_source="iso_7243_classes",
        example=300,
        step=10,
    )

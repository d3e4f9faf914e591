"""What "Heat in the suit" answers, the main answers first."""

from __future__ import annotations

from typing import Any

from calc.declare import Out


def _degrees(name: str, label: str, meaning: str, **more: Any) -> Out:
    return Out(
        name=name, label=label, meaning=meaning, unit="degC", customary="degF", digits=1, **more
    )


RESULTS: tuple[Out, ...] = (
    Out(
        name="verdict",
        label="Against the published limit",
        meaning="How an hour of this work stands to the limit; never a promise.",
        kind="text",
        main=True,
    ),
    Out(
        name="work_minutes",
        label="Work in an hour, at most",
        meaning="Minutes of this work in any one hour within the limit, rounded down.",
        kind="count",
        unit="min",
        main=True,
    ),
    Out(
        name="rest_minutes",
        label="Rest in an hour, at least",
        meaning="The other minutes of the hour, at the place of rest.",
        kind="count",
        unit="min",
        main=True,
    ),
    _degrees(
        "effective_wbgt",
        "Effective WBGT in the suit",
        "WBGT plus the clothing adjustment; this is compared with the limit.",
        main=True,
    ),
    _degrees("limit", "Limit that applies", "For this work rate, as a mean over one hour."),
    Out(
        name="limit_name",
        label="Which limit",
        meaning="REL for people used to heat, RAL for others; United States recommendation.",
        kind="text",
    ),
    Out(
        name="margin",
        label="Margin to the limit",
        meaning="Limit less effective WBGT for steady work; below zero is over the limit.",
        unit="delta_degC",
        customary="delta_degF",
        digits=1,
    ),
    Out(
        name="work_minutes_range",
        label="Work in an hour if the work rate is 30 % off",
        meaning="From a third harder to a third easier than the class says.",
        kind="interval",
        unit="min",
    ),
    Out(
        name="planned_spells",
        label="Work periods for the planned work",
        meaning="Pieces into which the planned work must be split.",
        kind="count",
    ),
    Out(
        name="planned_time",
        label="Time for the planned work with rests",
        meaning="Planned minutes plus the rests between the work periods.",
        unit="min",
    ),
    Out(
        name="water",
        label="Water to drink",
        meaning="In small drinks every 15 to 20 minutes. A published rate, not computed from the "
        "weather. The same for every job.",
        kind="interval",
        unit="L/h",
        customary="floz/h",
        digits=2,
        customary_digits=0,
    ),
    Out(
        name="water_most",
        label="Never drink more than",
        meaning="Above this the salt in the blood gets too thin. The same for every job.",
        unit="L/h",
        customary="floz/h",
        digits=2,
        customary_digits=0,
    ),
    _degrees(
        "wbgt",
        "WBGT at the work place",
        "Heat of air, humidity, sun and wind in one figure, before clothing.",
    ),
    _degrees(
        "wbgt_range",
        "Range of the WBGT",
        "What the estimate leaves open: its published accuracy, the globe's size, and "
        "in calm air the wind.",
        kind="interval",
    ),
    Out(
        name="wind_used",
        label="Wind used for the WBGT",
        meaning="What you typed, or the least wind that the method takes.",
        unit="m/s",
        customary="mph",
        digits=2,
        customary_digits=1,
    ),
    Out(
        name="clothing_adjustment",
        label="Added by clothing",
        meaning="Clothing adjustment value, in degrees WBGT.",
        unit="delta_degC",
        customary="delta_degF",
        digits=1,
    ),
    _degrees(
        "rest_effective",
        "Effective WBGT where you rest",
        "With the suit open or off, or as at work if you rest on the spot.",
    ),
    Out(
        name="rate",
        label="Metabolic rate",
        meaning="Heat your body makes at this work.",
        unit="W",
        customary="kcal/h",
    ),
    _degrees(
        "exposure_limit",
        "REL, used to heat",
        "NIOSH 2016 recommended exposure limit for this work rate.",
    ),
    _degrees(
        "alert_limit",
        "RAL, not used to heat",
        "NIOSH 2016 recommended alert limit for this work rate.",
    ),
    _degrees(
        "limit_range",
        "Limit if the work rate is 30 % off",
        "From a third harder to a third easier than the class says.",
        kind="interval",
    ),
    Out(
        name="index",
        label="Heat index (shade)",
        meaning="National Weather Service; without sun, suit or work.",
        unit="degC",
        customary="degF",
        digits=0,
    ),
    Out(
        name="index_band",
        label="Heat index band",
        meaning="Name in the weather service's version with danger from 103 °F.",
        kind="text",
    ),
    _degrees("wet_bulb", "Wet bulb", "Psychrometric, in shade, after Stull 2011."),
    _degrees(
        "simplified",
        "Simplified WBGT, for comparison",
        "Australian weather bureau: knows no sun and no wind; too high in shade.",
    ),
)

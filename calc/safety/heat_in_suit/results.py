"""What "Heat in the suit" answers, the main answers first."""

from __future__ import annotations

from typing import Any

from calc.declare import Out
from calc.declare.results import out


def _degrees(name: str, label: str, meaning: str, **more: Any) -> Out:
    return out(name, label, meaning, "degC", digits=1, **more)


RESULTS: tuple[Out, ...] = (
    out(
        "verdict",
        "Against the published limit",
        "How an hour of this work stands to the limit; never a promise.",
        kind="text",
        main=True,
    ),
    out(
        "work_minutes",
        "Work in an hour, at most",
        "Minutes of this work in any one hour within the limit, rounded down.",
        "min",
        kind="count",
        main=True,
    ),
    out(
        "rest_minutes",
        "Rest in an hour, at least",
        "The other minutes of the hour, at the place of rest.",
        "min",
        kind="count",
        main=True,
    ),
    _degrees(
        "effective_wbgt",
        "Effective WBGT in the suit",
        "WBGT plus the clothing adjustment; this is compared with the limit.",
        main=True,
    ),
    _degrees("limit", "Limit that applies", "For this work rate, as a mean over one hour."),
    out(
        "limit_name",
        "Which limit",
        "REL for people used to heat, RAL for others; United States recommendation.",
        kind="text",
    ),
    out(
        "margin",
        "Margin to the limit",
        "Limit less effective WBGT for steady work; below zero is over the limit.",
        "delta_degC",
        digits=1,
    ),
    out(
        "work_minutes_range",
        "Work in an hour if the work rate is 30 % off",
        "From a third harder to a third easier than the class says.",
        "min",
        kind="interval",
    ),
    out(
        "planned_spells",
        "Work periods for the planned work",
        "Pieces into which the planned work must be split.",
        kind="count",
    ),
    out(
        "planned_time",
        "Time for the planned work with rests",
        "Planned minutes plus the rests between the work periods.",
        "min",
    ),
    out(
        "water",
        "Water to drink",
        "In small drinks every 15 to 20 minutes. A published rate, not computed from the "
        "weather. The same for every job.",
        "L/h",
        kind="interval",
        digits=2,
        customary_digits=0,
    ),
    out(
        "water_most",
        "Never drink more than",
        "Above this the salt in the blood gets too thin. The same for every job.",
        "L/h",
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
    out(
        "wind_used",
        "Wind used for the WBGT",
        "What you typed, or the least wind that the method takes.",
        "m/s",
        digits=2,
        customary_digits=1,
    ),
    out(
        "clothing_adjustment",
        "Added by clothing",
        "Clothing adjustment value, in degrees WBGT.",
        "delta_degC",
        digits=1,
    ),
    _degrees(
        "rest_effective",
        "Effective WBGT where you rest",
        "With the suit open or off, or as at work if you rest on the spot.",
    ),
    out("rate", "Metabolic rate", "Heat your body makes at this work.", "W", customary="kcal/h"),
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
    out(
        "index",
        "Heat index (shade)",
        "National Weather Service; without sun, suit or work.",
        "degC",
        digits=0,
    ),
    out(
        "index_band",
        "Heat index band",
        "Name in the weather service's version with danger from 103 °F.",
        kind="text",
    ),
    _degrees("wet_bulb", "Wet bulb", "Psychrometric, in shade, after Stull 2011."),
    _degrees(
        "simplified",
        "Simplified WBGT, for comparison",
        "Australian weather bureau: knows no sun and no wind; too high in shade.",
    ),
)

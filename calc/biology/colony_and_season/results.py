"""What "Colony size and stage" answers, the main answers first."""

from __future__ import annotations

from calc.declare import Out

RESULTS = (
    Out(
        name="stage",
        label="Stage of the colony",
        meaning="All stages that some printed calendar has on this date.",
        kind="text",
        main=True,
    ),
    Out(
        name="workers_range",
        label="Workers by traffic, range",
        meaning="Over the count, the scatter of the rule and both readings of it.",
        kind="interval",
        main=True,
    ),
    Out(
        name="adults_expected",
        label="Adults to expect by the date",
        meaning="From printed colony sizes; plan for the top.",
        kind="interval",
        main=True,
    ),
    Out(
        name="days_to_end",
        label="Days to the usual end",
        meaning="From the earliest to the latest printed end; open where winters are mild.",
        kind="interval",
        unit="day",
        main=True,
    ),
    Out(
        name="workers",
        label="Workers by traffic, one-way reading",
        meaning="The rule read as wasps in one direction.",
    ),
    Out(
        name="workers_other",
        label="Workers by traffic, two-way reading",
        meaning="The rule read as in and out added. No figure for hornets.",
    ),
    Out(
        name="traffic",
        label="Wasps a minute, one way",
        meaning="Mean of your counts; half of in and out added.",
        digits=1,
    ),
    Out(
        name="traffic_interval",
        label="Wasps a minute, 95 % interval",
        meaning="Exact limits of the count, wider where counts are ragged.",
        kind="interval",
        digits=1,
    ),
    Out(
        name="sexuals",
        label="Young queens and males",
        meaning="Whether they are inside on this date.",
        kind="text",
    ),
    Out(
        name="if_left",
        label="If you leave it",
        meaning="The law and the people on site come first.",
        kind="text",
    ),
    Out(
        name="if_wait",
        label="If you wait some weeks",
        meaning="What changes meanwhile.",
        kind="text",
    ),
    Out(
        name="if_taken",
        label="If you take it now",
        meaning="What to be ready for.",
        kind="text",
    ),
)

WORKER_RESULTS = ("workers_range", "workers", "workers_other")
"""Results that a stop about the traffic withholds."""

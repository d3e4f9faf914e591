"""Inputs and results of the colony calculator."""

from __future__ import annotations

from calc.declare import Choice, Count, Counts, Input, Number, Option, Out

_MONTH_NAMES = (
    "January", "February", "March", "April", "May", "June",
    "July", "August", "September", "October", "November", "December",
)  # fmt: skip

INPUTS: tuple[Input, ...] = (
    Choice(
        name="species",
        label="Animal",
        meaning="Take the group if you do not know the species.",
        options=(
            Option(value="crabro", label="European hornet"),
            Option(value="velutina", label="Yellow-legged hornet"),
            Option(value="mandarinia", label="Northern giant hornet"),
            Option(value="vespula", label="Yellowjacket, species not known"),
            Option(value="vulgaris", label="Common yellowjacket"),
            Option(value="germanica", label="German yellowjacket"),
            Option(value="maculifrons", label="Eastern yellowjacket"),
            Option(value="pensylvanica", label="Western yellowjacket"),
            Option(value="squamosa", label="Southern yellowjacket"),
            Option(value="maculata", label="Bald-faced hornet"),
            Option(value="arenaria", label="Aerial yellowjacket"),
            Option(value="saxonica", label="Saxon or Norwegian wasp"),
            Option(value="media", label="Median wasp"),
            Option(value="polistes", label="European paper wasp"),
        ),
        usual="vespula",
    ),
    Choice(
        name="date_as",
        label="Date",
        meaning="A half-month is as fine as the printed calendars are.",
        options=(
            Option(value="half_month", label="Month and half"),
            Option(value="day", label="Day of the year"),
        ),
        usual="half_month",
    ),
    Choice(
        name="month",
        label="Month",
        meaning="Month of the count or of the job.",
        options=tuple(Option(value=name[:3].lower(), label=name) for name in _MONTH_NAMES),
        usual="aug",
        only_if=("date_as", ("half_month",)),
    ),
    Choice(
        name="half",
        label="Half of the month",
        meaning="The first half ends with the 15th.",
        options=(
            Option(value="first", label="First half"),
            Option(value="second", label="Second half"),
        ),
        usual="second",
        only_if=("date_as", ("half_month",)),
    ),
    Count(
        name="day",
        label="Day of the year",
        meaning="1 January is 1.",
        low=1,
        high=366,
        why="the days of a year",
        source="arithmetic",
        usual=235,
        only_if=("date_as", ("day",)),
    ),
    Choice(
        name="hemisphere",
        label="Hemisphere",
        meaning="In the south all dates move by half a year.",
        options=(
            Option(value="north", label="Northern"),
            Option(value="south", label="Southern"),
        ),
        usual="north",
    ),
    Choice(
        name="winters",
        label="Winters",
        meaning="Mild means years without hard frost.",
        options=(
            Option(value="cold", label="Hard frosts"),
            Option(value="mild", label="Mild"),
        ),
        usual="cold",
    ),
    Choice(
        name="counted",
        label="Traffic counted",
        meaning="What you counted at the entrance, from a distance, before any disturbance.",
        options=(
            Option(value="in", label="Those flying in"),
            Option(value="out", label="Those flying out"),
            Option(value="both", label="In and out added"),
            Option(value="none", label="Not counted"),
        ),
        usual="in",
    ),
    Counts(
        name="counts",
        label="Wasps in each count",
        meaning="One number for each count; five counts of one minute are good.",
        item="count",
        low=0,
        high=5000,
        why="far above any entrance in print",
        source="hawaii_pensylvanica",
        most=30,
        usual=(14, 11, 16, 12, 15),
        only_if=("counted", ("in", "out", "both")),
    ),
    Number(
        name="minutes",
        label="Length of each count",
        meaning="All counts must be equally long.",
        unit="min",
        low=0.5,
        high=60,
        why="shorter is chance, longer is another time of the day",
        source="light_rain_note",
        usual=1,
        digits=1,
        step=1,
        only_if=("counted", ("in", "out", "both")),
    ),
)

OUTPUTS = (
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

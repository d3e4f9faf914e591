"""Inputs and results of "Follow-up"."""

from __future__ import annotations

from calc import tables
from calc.common_inputs import DAY, MONTH
from calc.declare import Choice, Count, Input, Number, Option, Out

HIDDEN = ("seal_from",)
"""Results that a stop withholds."""

YES_NO = (Option(value="no", label="No"), Option(value="yes", label="Yes"))

INPUTS: tuple[Input, ...] = (
    Choice(
        name="animal",
        label="Animal",
        meaning="Decides sealed days, mesh and spring.",
        options=tuple(
            Option(value=row["key"], label=row["animal"]) for row in tables.rows("activity_windows")
        ),
        usual="vespula",
    ),
    Choice(
        name="half",
        label="Hemisphere",
        meaning="Decides when spring is.",
        options=(
            Option(value="north", label="North of the equator"),
            Option(value="south", label="South of the equator"),
        ),
        usual="north",
    ),
    Choice(
        name="mild",
        label="Winters",
        meaning="Where frost kills, the colony's year ends for sure.",
        options=(
            Option(value="frost", label="Hard frosts every winter"),
            Option(value="mild", label="Mild, or not sure"),
        ),
        usual="frost",
    ),
    Count(
        name="year",
        label="Year",
        meaning="Of the job.",
        low=1950,
        high=2100,
        why="calendar years of this book",
        source="arithmetic",
        usual=2026,
    ),
    MONTH,
    DAY,
    Choice(
        name="comb",
        label="The comb",
        meaning="Sealed brood that stays behind goes on hatching.",
        options=(
            Option(value="taken", label="All taken out"),
            Option(value="part", label="Part of it left"),
            Option(value="left", label="Left inside"),
        ),
        usual="taken",
    ),
    Count(
        name="left_out",
        label="Still out when you left",
        meaning="From Waiting for the stragglers; leave empty if you do not know.",
        low=0,
        high=5000,
        why="more than this is no clean end of a job",
        source="own_reasoning",
        optional=True,
    ),
    Choice(
        name="hole",
        label="What is to be closed",
        meaning="The old entrance.",
        options=(
            Option(value="crack", label="A crack or a hole"),
            Option(value="vent", label="A vent that must breathe"),
            Option(value="flue", label="A flue, a gas vent or a dryer vent"),
        ),
        usual="crack",
    ),
    Number(
        name="mesh",
        label="Opening of the mesh",
        meaning="Clear width between two wires.",
        unit="mm",
        customary="inch",
        low=0.2,
        high=30,
        why="finer is cloth, wider holds nothing of this book",
        source="own_reasoning",
        usual=2.5,
        digits=1,
        customary_digits=3,
        step=0.5,
    ),
    Count(
        name="first_count",
        label="Into the hole in 5 minutes, first look",
        meaning="Only those that go in; leave empty before the look.",
        low=0,
        high=2000,
        why="far above any entrance in print",
        source="hawaii_pensylvanica",
        optional=True,
    ),
    Count(
        name="second_count",
        label="Into the hole in 5 minutes, second look",
        meaning="At noon, in dry and warm weather.",
        low=0,
        high=2000,
        why="far above any entrance in print",
        source="hawaii_pensylvanica",
        optional=True,
    ),
    Choice(
        name="indoors",
        label="Wasps indoors since the first look",
        meaning="From the treated wall or roof.",
        options=YES_NO,
        usual="no",
    ),
)

OUTPUTS = (
    Out(
        name="verdict",
        label="What to do",
        meaning="By date and by what was seen.",
        kind="text",
        main=True,
    ),
    Out(
        name="seal_from",
        label="Close the hole",
        meaning="Only after two looks without a wasp going in.",
        kind="text",
        main=True,
    ),
    Out(
        name="looks",
        label="Looks",
        meaning="With the reminders below.",
        kind="table",
        columns=(
            Out(name="date", label="Day", meaning="Date.", kind="text"),
            Out(name="what", label="What", meaning="To do.", kind="text"),
        ),
    ),
    Out(
        name="half_gone",
        label="Half of those left out are gone after",
        meaning="By the active life of tagged hornets; general pages say hours to a few days. "
        "The same for every job.",
        unit="day",
        digits=1,
    ),
    Out(
        name="most_gone",
        label="9 of 10 are gone after",
        meaning="By the same law. The same for every job.",
        unit="day",
        digits=1,
    ),
    Out(
        name="all_gone",
        label="All are gone after",
        meaning="In 95 of 100 cases, from the number you gave.",
        unit="day",
        digits=1,
    ),
    Out(
        name="emergence",
        label="Brood left behind hatches for",
        meaning="From the least to the longest sealed time in print.",
        kind="interval",
        unit="day",
    ),
    Out(
        name="last_emergence",
        label="Until about",
        meaning="Last of the sealed brood, if any was left.",
        kind="text",
    ),
    Out(name="mesh_words", label="This mesh", meaning="Against this animal.", kind="text"),
    Out(
        name="spring",
        label="Close cracks before",
        meaning="Earliest printed day on which queens of this animal are out.",
        kind="text",
    ),
    Out(
        name="calendar",
        label="Reminders for your calendar",
        meaning="An iCalendar text; save it as a file that ends in .ics and open it.",
        kind="text",
    ),
)

"""What "Follow-up" answers, the main answers first."""

from __future__ import annotations

from calc.declare import Out

RESULTS: tuple[Out, ...] = (
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
        meaning="By the active life of tagged hornets; general pages say hours to a few days.",
        unit="day",
        digits=1,
    ),
    Out(
        name="most_gone",
        label="9 of 10 are gone after",
        meaning="By the same law.",
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

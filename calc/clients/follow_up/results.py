"""What "Follow-up" answers, the main answers first."""

from __future__ import annotations

from calc.declare import Out


def _text(name: str, label: str, meaning: str, main: bool = False) -> Out:
    return Out(name=name, label=label, meaning=meaning, kind="text", main=main)


RESULTS: tuple[Out, ...] = (
    _text("verdict", "What to do", "By date and by what was seen.", main=True),
    _text(
        "seal_from", "Close the hole", "Only after two looks without a wasp going in.", main=True
    ),
    Out(
        name="looks",
        label="Looks",
        meaning="With the reminders below.",
        kind="table",
        columns=(
            _text("date", "Day", "Date."),
            _text("what", "What", "To do."),
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
    _text("last_emergence", "Until about", "Last of the sealed brood, if any was left."),
    _text("mesh_words", "This mesh", "Against this animal."),
    _text(
        "spring",
        "Close cracks before",
        "Earliest printed day on which queens of this animal are out.",
    ),
    _text(
        "calendar",
        "Reminders for your calendar",
        "An iCalendar text; save it as a file that ends in .ics and open it.",
    ),
)

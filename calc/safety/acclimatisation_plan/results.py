"""What "Getting used to the heat" answers, the main answers first."""

from __future__ import annotations

from calc.declare import Out
from calc.declare.results import out

RESULTS: tuple[Out, ...] = (
    out(
        "today_minutes",
        "Today in heat and suit, at most",
        "Usual time times today's share, rounded down; the heat limit holds as well.",
        "min",
        kind="count",
        main=True,
    ),
    out(
        "today_share",
        "Share of the usual time today",
        "From the table of shares.",
        "percent",
        main=True,
    ),
    out("full_from", "Full time from day", "First day with the whole usual time.", kind="count"),
    out(
        "spells",
        "Work periods today",
        "Pieces, none longer than the work minutes of an hour.",
        kind="count",
    ),
    out(
        "on_site",
        "Minutes on site today",
        "Work periods with the rests between them.",
        "min",
        kind="count",
    ),
    out(
        "buddy",
        "What the second person checks",
        "Each check ends the work period if one answer is wrong.",
        kind="text",
    ),
    out("signs", "Stop signs", "Any one of them ends the work of the day.", kind="text"),
    out("cooling", "Cooling", "Set it up in the shade before the suit goes on.", kind="text"),
    out(
        "plan",
        "Day by day",
        "The first days of the schedule.",
        kind="table",
        columns=(
            out("day", "Day", "Day in heat.", kind="count"),
            out("share", "Share", "Of the usual time.", "percent"),
            out("in_suit", "In heat and suit", "Minutes, rounded down.", "min", kind="count"),
            out("in_spells", "Work periods", "By the work minutes of an hour.", kind="count"),
        ),
    ),
)

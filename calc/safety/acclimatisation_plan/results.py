"""What "Getting used to the heat" answers, the main answers first."""

from __future__ import annotations

from calc.declare import Out

RESULTS: tuple[Out, ...] = (
    Out(
        name="today_minutes",
        label="Today in heat and suit, at most",
        meaning="Usual time times today's share, rounded down; the heat limit holds as well.",
        kind="count",
        unit="min",
        main=True,
    ),
    Out(
        name="today_share",
        label="Share of the usual time today",
        meaning="From the table of shares.",
        unit="percent",
        main=True,
    ),
    Out(
        name="full_from",
        label="Full time from day",
        meaning="First day with the whole usual time.",
        kind="count",
    ),
    Out(
        name="spells",
        label="Work periods today",
        meaning="Pieces, none longer than the work minutes of an hour.",
        kind="count",
    ),
    Out(
        name="on_site",
        label="Minutes on site today",
        meaning="Work periods with the rests between them.",
        kind="count",
        unit="min",
    ),
    Out(
        name="buddy",
        label="What the second person checks",
        meaning="Each check ends the work period if one answer is wrong.",
        kind="text",
    ),
    Out(
        name="signs",
        label="Stop signs",
        meaning="Any one of them ends the work of the day.",
        kind="text",
    ),
    Out(
        name="cooling",
        label="Cooling",
        meaning="Set it up in the shade before the suit goes on.",
        kind="text",
    ),
    Out(
        name="plan",
        label="Day by day",
        meaning="The first days of the schedule.",
        kind="table",
        columns=(
            Out(name="day", label="Day", meaning="Day in heat.", kind="count"),
            Out(name="share", label="Share", meaning="Of the usual time.", unit="percent"),
            Out(
                name="in_suit",
                label="In heat and suit",
                meaning="Minutes, rounded down.",
                kind="count",
                unit="min",
            ),
            Out(
                name="in_spells",
                label="Work periods",
                meaning="By the work minutes of an hour.",
                kind="count",
            ),
        ),
    ),
)

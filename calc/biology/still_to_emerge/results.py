"""What "What will still emerge" answers, the main answers first."""

from __future__ import annotations

from calc.declare import Out

RESULTS = (
    Out(
        name="days_95",
        label="95 % are out after",
        meaning="Workers and queens together, by the middle of the range.",
        unit="day",
        main=True,
    ),
    Out(
        name="days_95_range",
        label="95 % are out, range",
        meaning="Over sealed days and both colour scales.",
        kind="interval",
        unit="day",
        main=True,
    ),
    Out(
        name="last_queen",
        label="Last young queen due, range",
        meaning="No figure without queen cells. Plan for the late end.",
        kind="interval",
        unit="day",
        main=True,
    ),
    Out(
        name="holding",
        label="What holding needs",
        meaning="Details on the page about holding.",
        kind="text",
    ),
    Out(
        name="schedule",
        label="Out by day",
        meaning="Day 0 is the day on which the cells were counted.",
        kind="table",
        columns=(
            Out(name="day", label="Day", meaning="From the count.", kind="count"),
            Out(name="all", label="All", meaning="Expected."),
            Out(
                name="interval",
                label="95 % range",
                meaning="Over all readings.",
                kind="interval",
            ),
            Out(name="workers", label="From worker cells", meaning="Expected."),
            Out(name="queens", label="From queen cells", meaning="Expected."),
        ),
    ),
    Out(
        name="sealed_days",
        label="Sealed days used",
        meaning="Worker cells; queen cells take 2 to 5 days more.",
        kind="interval",
        unit="day",
        digits=1,
    ),
    Out(
        name="all_out",
        label="Every cell out or dead by",
        meaning="The longest reading. No figure for cool brood without data.",
        unit="day",
    ),
    Out(
        name="looks",
        label="Looks of the opened cells",
        meaning="Share of each look with its own 95 % interval, and the days left.",
        kind="table",
        columns=(
            Out(name="look", label="Look", meaning="Under the cap.", kind="text"),
            Out(name="opened", label="Opened", meaning="Cells of this look.", kind="count"),
            Out(
                name="share",
                label="Share",
                meaning="Wilson's 95 % interval.",
                kind="interval",
                unit="percent",
            ),
            Out(
                name="left",
                label="Days left",
                meaning="Over sealed days and both scales.",
                kind="interval",
                unit="day",
                digits=1,
            ),
        ),
    ),
    Out(
        name="even_chance",
        label="Ages even, P value",
        meaning="Below 5 %: sealing was not steady.",
        unit="percent",
        digits=1,
    ),
)

SCHEDULE = tuple(out.name for out in RESULTS if out.name not in {"holding", "looks", "even_chance"})
"""Results that a stop withholds."""

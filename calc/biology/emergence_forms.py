"""Inputs and results of the emergence calculator."""

from __future__ import annotations

from calc.declare import Choice, Count, Input, Number, Option, Out

LOOKS = ("prepupa", "white", "pink", "dark", "colouring", "full")
"""Keys of the table of looks, youngest first, in the order of the form."""


def _look(key: str, label: str, meaning: str, default: int) -> Count:
    return Count(
        name=key,
        label=label,
        meaning=meaning,
        low=0,
        high=500,
        why="nobody opens more cells of one look",
        source="own_reasoning",
        usual=default,
        only_if=("sampled", ("yes",)),
    )


INPUTS: tuple[Input, ...] = (
    Choice(
        name="species",
        label="Animal",
        meaning="Sets the range of sealed days.",
        options=(
            Option(value="crabro", label="European hornet"),
            Option(value="vespula", label="Yellowjacket"),
            Option(value="dolichovespula", label="Aerial yellowjacket, bald-faced hornet"),
            Option(value="velutina", label="Yellow-legged hornet"),
            Option(value="other", label="Other or not known"),
        ),
        usual="vespula",
    ),
    Count(
        name="worker_cells",
        label="Sealed worker cells",
        meaning="From the comb count.",
        low=0,
        high=100_000,
        why="more than any nest in print",
        source="ratnieks_1996",
        usual=400,
    ),
    Count(
        name="queen_cells",
        label="Sealed queen cells",
        meaning="Sealed large cells; 0 if there are none.",
        low=0,
        high=100_000,
        why="more than any nest in print",
        source="ratnieks_1996",
        usual=60,
    ),
    Choice(
        name="sampled",
        label="Cells opened",
        meaning="Whether you opened some sealed cells and noted how the brood looks.",
        options=(Option(value="yes", label="Yes"), Option(value="no", label="No")),
        usual="yes",
    ),
    _look("prepupa", "Larva or prepupa", "No legs or wings to be seen.", 9),
    _look("white", "White, white eyes", "A pupa with legs, all white.", 5),
    _look("pink", "White, pink to red eyes", "Only the eyes have colour.", 4),
    _look("dark", "Pale, dark eyes", "Eyes dark, body still pale.", 5),
    _look("colouring", "Body colouring", "Thorax tan or darkening, pattern starting.", 4),
    _look("full", "Full colour or moving", "Looks like an adult with wing pads.", 3),
    Number(
        name="temperature",
        label="Warmth of the brood",
        meaning="Measured beside the comb where you keep it.",
        unit="degC",
        customary="degF",
        low=-5,
        high=45,
        why="beyond this nothing is raised",
        source="own_reasoning",
        usual=30,
        step=1,
    ),
)

OUTPUTS = (
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

SCHEDULE = tuple(out.name for out in OUTPUTS if out.name not in {"holding", "looks", "even_chance"})
"""Results that a stop withholds."""

"""What "When to come" answers, the main answers first."""

from __future__ import annotations

from calc.declare import Out

_TEMPERATURE = Out(
    name="temperature",
    label="Air",
    meaning="By the forecast.",
    unit="degC",
    customary="degF",
)
_MINUTES = Out(
    name="minutes",
    label="Work in an hour",
    meaning="Most that the heat limit leaves, least over the time.",
    kind="count",
    unit="min",
)

RESULTS: tuple[Out, ...] = (
    Out(
        name="verdict",
        label="When to come",
        meaning="The time that fits method, light and heat; never a promise.",
        kind="text",
        main=True,
    ),
    Out(
        name="arrive",
        label="Arrive at",
        meaning="Earliest of the window.",
        kind="text",
        main=True,
    ),
    Out(
        name="finish",
        label="Done by",
        meaning="With the rests that the heat limit asks for.",
        kind="text",
        main=True,
    ),
    Out(
        name="begin",
        label="First catch at",
        meaning="After setting up.",
        kind="text",
    ),
    Out(name="latest", label="Arrive no later than", meaning="End of the window.", kind="text"),
    Out(
        name="least_minutes",
        label="Work in an hour, at most",
        meaning="By the heat limit, least over the planned time.",
        kind="count",
        unit="min",
    ),
    Out(name="dawn", label="Civil dawn", meaning="Sun 6° below the horizon.", kind="text"),
    Out(name="sunrise", label="Sunrise", meaning="Level horizon.", kind="text"),
    Out(name="noon", label="True noon", meaning="Sun highest.", kind="text"),
    Out(name="sunset", label="Sunset", meaning="Level horizon.", kind="text"),
    Out(name="dusk", label="Civil dusk", meaning="Sun 6° below the horizon.", kind="text"),
    Out(
        name="twilight",
        label="Evening twilight lasts",
        meaning="From sunset to civil dusk.",
        unit="min",
    ),
    Out(
        name="last_home",
        label="Last foragers home about",
        meaning="By the table; some stay out overnight.",
        kind="text",
    ),
    Out(
        name="first_out",
        label="First foragers out about",
        meaning="By the table, if it is warm enough.",
        kind="text",
    ),
    Out(
        name="windows",
        label="All times that fit",
        meaning="Each run of arrivals.",
        kind="table",
        columns=(
            Out(name="from", label="Arrive from", meaning="Earliest.", kind="text"),
            Out(name="to", label="to", meaning="Latest.", kind="text"),
            Out(name="done", label="Done by", meaning="For the earliest.", kind="text"),
            Out(name="why", label="They are", meaning="At the first catch.", kind="text"),
            _TEMPERATURE,
            _MINUTES,
        ),
    ),
    Out(
        name="hours",
        label="The day",
        meaning="Block by block.",
        kind="table",
        columns=(
            Out(name="from", label="From", meaning="Start of the block.", kind="text"),
            _TEMPERATURE,
            Out(name="light", label="Light", meaning="At its middle.", kind="text"),
            Out(name="where", label="They are", meaning="At its middle.", kind="text"),
            _MINUTES,
        ),
    ),
)

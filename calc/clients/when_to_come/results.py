"""What "When to come" answers, the main answers first."""

from __future__ import annotations

from calc.declare import Out


def _text(name: str, label: str, meaning: str, main: bool = False) -> Out:
    return Out(name=name, label=label, meaning=meaning, kind="text", main=main)


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
    _text(
        "verdict",
        "When to come",
        "The time that fits method, light and heat; never a promise.",
        main=True,
    ),
    _text("arrive", "Arrive at", "Earliest of the window.", main=True),
    _text("finish", "Done by", "With the rests that the heat limit asks for.", main=True),
    _text("begin", "First catch at", "After setting up."),
    _text("latest", "Arrive no later than", "End of the window."),
    Out(
        name="least_minutes",
        label="Work in an hour, at most",
        meaning="By the heat limit, least over the planned time.",
        kind="count",
        unit="min",
    ),
    _text("dawn", "Civil dawn", "Sun 6° below the horizon."),
    _text("sunrise", "Sunrise", "Level horizon."),
    _text("noon", "True noon", "Sun highest."),
    _text("sunset", "Sunset", "Level horizon."),
    _text("dusk", "Civil dusk", "Sun 6° below the horizon."),
    Out(
        name="twilight",
        label="Evening twilight lasts",
        meaning="From sunset to civil dusk.",
        unit="min",
    ),
    _text("last_home", "Last foragers home about", "By the table; some stay out overnight."),
    _text("first_out", "First foragers out about", "By the table, if it is warm enough."),
    Out(
        name="windows",
        label="All times that fit",
        meaning="Each run of arrivals.",
        kind="table",
        columns=(
            _text("from", "Arrive from", "Earliest."),
            _text("to", "to", "Latest."),
            _text("done", "Done by", "For the earliest."),
            _text("why", "They are", "At the first catch."),
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
            _text("from", "From", "Start of the block."),
            _TEMPERATURE,
            _text("light", "Light", "At its middle."),
            _text("where", "They are", "At its middle."),
            _MINUTES,
        ),
    ),
)

"""What "Which animal is it?" answers, the main answers first."""

from __future__ import annotations

from calc.declare import Out

RESULTS: tuple[Out, ...] = (
    Out(
        name="duty",
        label="What to do",
        meaning="The duty that follows, the gravest that is not ruled out.",
        kind="text",
        main=True,
    ),
    Out(
        name="animal",
        label="Animal",
        meaning="The first candidate if it reaches the chance needed for a name.",
        kind="text",
        main=True,
    ),
    Out(
        name="bee_chance",
        label="Chance of any bee",
        meaning="All bees together; never nothing, since people misread and photos deceive.",
        kind="text",
        main=True,
    ),
    Out(
        name="law",
        label="Law for the first candidate",
        meaning="Whose law the duty of the first candidate follows.",
        kind="text",
    ),
    Out(
        name="seen",
        label="Things seen",
        meaning="How many of the things asked were seen.",
        kind="count",
    ),
    Out(
        name="candidates",
        label="Candidates",
        meaning="Ranked; the likeliest bee and the unknown always stand in the list.",
        kind="table",
        columns=(
            Out(name="animal", label="Animal", meaning="Candidate.", kind="text"),
            Out(name="chance", label="Chance", meaning="After what was seen.", kind="text"),
            Out(name="short", label="Duty", meaning="In short.", kind="text"),
        ),
    ),
    Out(
        name="ask_next",
        label="Ask or look next",
        meaning="What would do most for the duty, not for the name.",
        kind="text",
    ),
)

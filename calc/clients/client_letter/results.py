"""What "Letters to the client" answers."""

from __future__ import annotations

from calc.declare import Out

RESULTS: tuple[Out, ...] = (
    Out(
        name="letter",
        label="The letter",
        meaning="Copy it, fill the blanks, read it once more.",
        kind="text",
        main=True,
    ),
    Out(
        name="grade",
        label="Reading grade",
        meaning="School year that can read it; English only, by a rule of thumb.",
        digits=1,
    ),
    Out(
        name="longest",
        label="Longest sentence",
        meaning="In words.",
        kind="count",
    ),
    Out(name="words", label="Words", meaning="In all.", kind="count"),
    Out(
        name="left_out",
        label="Lines left out",
        meaning="For want of a number or a date.",
        kind="count",
    ),
)

"""The fields of the job record that keep what was pressed on the pages of the visit."""

from __future__ import annotations

from calc import tables
from calc.clients.job.declare import Field

HOME = "progress"
"""Section of the job record."""

MOST_TICKS = 60
"""Lines of the longest card, with room to grow."""


def stops(step: str, health: bool) -> list[str]:
    """Return the keys of a step's stops that do, or do not, say something about a person."""
    rows = tables.rows("visit_stops")
    return [
        row["key"] for row in rows if row["step"] == step and row.get("health", False) == health
    ]


def fields() -> tuple[Field, ...]:
    """Return the fields of every step: its times, its ticks, the stops that were pressed."""
    return tuple(
        each for row in tables.rows("visit_steps") for each in _of(row["key"], row["name"])
    )


def _of(step: str, name: str) -> list[Field]:
    moments = {
        "begun": "When the step was begun.",
        "done": "When it was done.",
        "looked": "When the list of stops was looked through and none was there.",
        "rings": "When the alarm rings.",
    }
    made = [
        Field(name=f"{step}_{key}", label=f"{name}: {key}", kind="moment", meaning=meaning)
        for key, meaning in moments.items()
    ]
    made.append(
        Field(name=f"{step}_ticks", label=f"{name}: ticked", kind="texts", most=MOST_TICKS,
              longest=4, meaning="Lines of the card that were ticked, by place.")
    )  # fmt: skip
    for key, health in (("stops", False), ("health", True)):
        if found := stops(step, health):
            made.append(
                Field(name=f"{step}_{key}", label=f"{name}: stopped by", kind="texts",
                      most=len(found) + 10, longest=40, health=health,
                      meaning="Stops that were pressed.")
            )  # fmt: skip
    return made

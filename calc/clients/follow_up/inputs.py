"""What "Follow-up" asks for."""

from __future__ import annotations

from calc import tables
from calc.clients.common_inputs import COMB, HALF, VISIT
from calc.declare import Given, Option, choice, count, number, shared


class Inputs(Given):
    """The job, what was left behind, and what was seen afterwards."""

    date: str = shared(VISIT, meaning="Of the job.")
    animal: str = choice(
        "Animal",
        "Decides sealed days, mesh and spring.",
        [Option(value=row["key"], label=row["animal"]) for row in tables.rows("activity_windows")],
        example="vespula",
    )
    comb: str = shared(COMB, meaning="Sealed brood that stays behind goes on hatching.")
    hole: str = choice(
        "What is to be closed",
        "The old entrance.",
        [
            ("crack", "A crack or a hole"),
            ("vent", "A vent that must breathe"),
            ("flue", "A flue, a gas vent or a dryer vent"),
        ],
        example="crack",
    )
    indoors: str = choice(
        "Wasps indoors since the job",
        "From the treated wall or roof.",
        [("no", "No"), ("yes", "Yes")],
        example="no",
    )
    half: str = shared(HALF)
    mild: str | None = choice(
        "Winters",
        "Where frost kills, the colony's year ends for sure.",
        [("frost", "Hard frosts every winter"), ("mild", "Mild, or not sure")],
        origin="equipment",
        optional=True,
        example="frost",
    )
    mesh: float | None = number(
        "Opening of the mesh",
        "Clear width between two wires.",
        "mm",
        low=0.2,
        high=30,
        why="finer is cloth, wider holds nothing of this book",
        origin="equipment",
        optional=True,
        plausible=(1, 10),
        example=2.5,
        digits=1,
        customary_digits=3,
        step=0.5,
    )
    first_count: int | None = count(
        "Into the hole in 5 minutes, first look",
        "Only those that go in; leave empty before the look.",
        low=0,
        high=2000,
        why="far above any entrance in print",
        source="hawaii_pensylvanica",
        origin="extra",
        optional=True,
        plausible=(0, 60),
    )
    second_count: int | None = count(
        "Into the hole in 5 minutes, second look",
        "At noon, in dry and warm weather.",
        low=0,
        high=2000,
        why="far above any entrance in print",
        source="hawaii_pensylvanica",
        origin="extra",
        optional=True,
        plausible=(0, 60),
    )
    left_out: int | None = count(
        "Still out when you left",
        "From Waiting for the stragglers; leave empty if you do not know.",
        low=0,
        high=5000,
        why="more than this is no clean end of a job",
        origin="extra",
        optional=True,
        plausible=(0, 50),
    )

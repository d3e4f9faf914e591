"""What "Keeping people away" answers, the zones first."""

from __future__ import annotations

from calc.declare import Out


def _metres(name: str, label: str, meaning: str, main: bool = False) -> Out:
    return Out(name=name, label=label, meaning=meaning, unit="m", customary="ft", main=main)


def _column(name: str, label: str) -> Out:
    return Out(name=name, label=label, meaning=label + ".", kind="text")


RESULTS: tuple[Out, ...] = (
    _metres("inner", "Suited people only, within", "Our zone; reasoned, not measured.", True),
    _metres("outer", "Nobody else outdoors, within", "Never below the published spread.", True),
    _metres("downwind", "The same on the downwind side", "One row wider in wind that is felt."),
    _metres("machines", "No machine of others within", "Mower, trimmer, hammer, saw."),
    Out(
        name="published",
        label="Published distances of defence",
        meaning="Least and farthest for these animals; mostly calm nests, some tests.",
        kind="interval",
        unit="m",
        customary="ft",
        digits=1,
        customary_digits=0,
    ),
    Out(
        name="state",
        label="Which row of our zones",
        meaning="From animals, work, colony and earlier disturbance.",
        kind="text",
    ),
    Out(
        name="shut_from",
        label="People in and windows shut before the start",
        meaning="Minutes before the first contact; our value. The same for every job.",
        unit="min",
        main=True,
    ),
    Out(
        name="normal_after",
        label="Until it is normal again, after the last contact",
        meaning="Our value; go by the flight, not by the clock. The same for every job.",
        kind="interval",
        unit="min",
        main=True,
    ),
    _metres(
        "run",
        "Run at least",
        "The least; then on into the vehicle or shed. The same for every job.",
    ),
    Out(
        name="places",
        label="Places around",
        meaning="Each with its distance and what to do there.",
        kind="table",
        columns=(
            _column("place", "Place"),
            Out(name="distance", label="Distance", meaning="m.", unit="m", customary="ft"),
            _column("zone", "Lies"),
            _column("do", "What to do"),
        ),
    ),
    Out(
        name="warn",
        label="Who is told, and what",
        meaning="Spoken, before the first contact.",
        kind="table",
        columns=(_column("who", "Who"), _column("say", "What")),
    ),
)

"""What "Keeping people away" answers, the zones first."""

from __future__ import annotations

from calc.declare import Out
from calc.declare.results import out


def _metres(name: str, label: str, meaning: str, main: bool = False) -> Out:
    return out(name, label, meaning, unit="m", main=main)


def _column(name: str, label: str) -> Out:
    return out(name, label, label + ".", kind="text")


RESULTS: tuple[Out, ...] = (
    _metres("inner", "Suited people only, within", "Our zone; reasoned, not measured.", True),
    _metres("outer", "Nobody else outdoors, within", "Never below the published spread.", True),
    _metres("downwind", "The same on the downwind side", "One row wider in wind that is felt."),
    _metres("machines", "No machine of others within", "Mower, trimmer, hammer, saw."),
    out(
        "published",
        "Published distances of defence",
        "Least and farthest for these animals; mostly calm nests, some tests.",
        kind="interval",
        unit="m",
        digits=1,
        customary_digits=0,
    ),
    out(
        "state",
        "Which row of our zones",
        "From animals, work, colony and earlier disturbance.",
        kind="text",
    ),
    out(
        "shut_from",
        "People in and windows shut before the start",
        "Minutes before the first contact; our value. The same for every job.",
        unit="min",
        main=True,
    ),
    out(
        "normal_after",
        "Until it is normal again, after the last contact",
        "Our value; go by the flight, not by the clock. The same for every job.",
        kind="interval",
        unit="min",
        main=True,
    ),
    _metres(
        "run",
        "Run at least",
        "The least; then on into the vehicle or shed. The same for every job.",
    ),
    out(
        "places",
        "Places around",
        "Each with its distance and what to do there.",
        kind="table",
        columns=(
            _column("place", "Place"),
            out("distance", "Distance", "m.", unit="m"),
            _column("zone", "Lies"),
            _column("do", "What to do"),
        ),
    ),
    out(
        "warn",
        "Who is told, and what",
        "Spoken, before the first contact.",
        kind="table",
        columns=(_column("who", "Who"), _column("say", "What")),
    ),
)

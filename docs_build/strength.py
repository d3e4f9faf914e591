"""How strong the book's sources are: counted from the tables, told after a build."""

from __future__ import annotations

import tomllib
from collections.abc import Iterable, Mapping
from typing import Any

from calc.sources import KINDS, READ, bibliography, source
from calc.tables import rows
from docs_build.bootstrap import ROOT

RESTS_ON = {
    "read": "in a text that was read",
    "second-hand": "read second-hand",
    "library": "by a library",
    "memory": "recalled, which proves nothing alone",
}
"""What a check can rest on, the strongest first."""

DECIDING = frozenset({"bee", "notifiable", "authority", "protected"})
"""Where an animal has one of these duties, its marks decide whether a nest may be touched."""


def told() -> str:
    """Return what a build says about its sources."""
    kinds = [each.kind for each in bibliography().values()]
    counts = "; ".join(f"{mark} {kinds.count(kind)}" for kind, mark in KINDS.items())
    memory = ", ".join(f"{few} of {many} {what}" for what, few, many in from_memory())
    checks = counted(published_checks())
    return (
        f"Sources: {counts}.\nPrinted values checked: {checks}.\n"
        f"From memory, wholly or in part: {memory}."
    )


def published_checks() -> list[dict[str, Any]]:
    """Return all check values printed outside the project, from ``tests/published``."""
    return [
        check
        for path in sorted((ROOT / "tests" / "published").rglob("*.toml"))
        for check in tomllib.loads(path.read_text(encoding="utf-8"))["check"]
    ]


def counted(checks: Iterable[Mapping[str, Any]]) -> str:
    """Return how many check values rest on what, in words; empty for none."""
    kinds = [of_check(check["source"]) for check in checks]
    return ", ".join(
        f"{kinds.count(kind)} {words}" for kind, words in RESTS_ON.items() if kind in kinds
    )


def of_check(key: str) -> str:
    """Return what a check value of this source rests on: ``read``, ``second-hand`` or ``memory``.

    Raises
    ------
    LookupError
        for a source that no value can be checked against, such as our own reasoning
    """
    kind = source(key).kind
    if kind in READ:
        return "read"
    if kind == "from-memory":
        return "memory"
    if kind == "second-hand":
        return kind
    raise LookupError(f"source {key!r} is {KINDS[kind]}: no value from outside to check against")


def from_memory() -> list[tuple[str, int, int]]:
    """Return what leans on memory, how many rows of it do, and of how many."""
    return [
        ("species laws", *_recalled(rows("duties"))),
        ("cell pitches", *_recalled(rows("cell_pitch"))),
        ("trait rows that decide a duty", *_recalled(deciding_traits())),
    ]


def deciding_traits() -> list[Mapping[str, Any]]:
    """Return the trait rows of animals that are a stop, reported or asked for in some region."""
    animals = {row["animal"] for row in rows("duties") if row["status"] in DECIDING}
    return [row for row in rows("traits") if row["animal"] in animals]


def _recalled(some: Iterable[Mapping[str, Any]]) -> tuple[int, int]:
    every = list(some)
    return sum("from-memory" in _kinds(row) for row in every), len(every)


def _kinds(row: Mapping[str, Any]) -> set[str]:
    keys = row["source"] if isinstance(row["source"], list) else [row["source"]]
    return {source(key).kind for key in keys}

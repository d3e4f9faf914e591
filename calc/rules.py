"""Rules of the book that stand on more than one page: one wording each, with its sources.

The data stand in ``calc/tables/rules/*.toml``, one file a rule: ``title``, ``level`` (``stop``,
``caution`` or ``note``), a list ``step``, each with ``key``, ``text`` and ``source`` (a key of the
bibliography or several), and ``only_here``: patterns of words that no other text of the book may
use, and ``nowhere``: patterns that no text uses, so that a second wording is found by a test.

A text may hold ``**bold**`` words and numbers of a table as ``{num}`table key column```.
"""

from __future__ import annotations

import re
import tomllib
from dataclasses import dataclass
from functools import cache
from typing import Any

from calc import tables

LEVELS = ("stop", "caution", "note")
_NUMBER = re.compile(r"\{num\}`(\S+) (\S+) (\S+)`")


@dataclass(frozen=True, slots=True)
class Step:
    """One thing to do, or one thing to know, in the words of the book."""

    key: str
    text: str
    source: tuple[str, ...]

    @property
    def plain(self) -> str:
        """The text as a calculator or a message shows it: numbers filled in, no bold."""
        return _NUMBER.sub(_cell, self.text).replace("**", "")


@dataclass(frozen=True, slots=True)
class Rule:
    """A rule with its steps in order."""

    name: str
    title: str
    level: str
    steps: tuple[Step, ...]
    only_here: tuple[str, ...]
    nowhere: tuple[str, ...]

    def step(self, key: str) -> Step:
        """Return the step with this key.

        Raises
        ------
        LookupError
            if the rule has no such step
        """
        for each in self.steps:
            if each.key == key:
                return each
        raise LookupError(f"rule {self.name!r} has no step {key!r}")


@cache
def rule(name: str) -> Rule:
    """Return the rule of that name.

    Raises
    ------
    LookupError
        if there is none, or if its file lacks a title, a known level, or a source for each step
    """
    path = tables.HERE / "rules" / f"{name}.toml"
    if not path.is_file():
        raise LookupError(f"there is no rule called {name!r} in calc/tables/rules")
    data = tomllib.loads(path.read_text(encoding="utf-8"))
    if not data.get("title") or data.get("level") not in LEVELS or not data.get("step"):
        raise LookupError(f"rule {name!r} lacks a title, a level of {LEVELS} or its steps")
    steps = tuple(_step(name, each) for each in data["step"])
    if len({each.key for each in steps}) < len(steps):
        raise LookupError(f"rule {name!r} has two steps of one key")
    patterns = (tuple(data.get(each, ())) for each in ("only_here", "nowhere"))
    return Rule(name, data["title"], data["level"], steps, *patterns)


def names() -> tuple[str, ...]:
    """Return the names of all rules, in alphabetical order."""
    return tuple(sorted(path.stem for path in (tables.HERE / "rules").glob("*.toml")))


def text(name: str, *keys: str) -> str:
    """Return the plain text of the named steps, or of all, as one paragraph."""
    found = rule(name)
    steps = [found.step(key) for key in keys] if keys else found.steps
    return " ".join(each.plain for each in steps)


def _step(name: str, data: dict[str, Any]) -> Step:
    if not data.get("key") or not data.get("text") or not data.get("source"):
        raise LookupError(f"a step of rule {name!r} lacks its key, text or source")
    source = data["source"]
    return Step(data["key"], data["text"], (source,) if isinstance(source, str) else tuple(source))


def _cell(found: re.Match[str]) -> str:
    name, key, column = found.groups()
    return tables.cell_text(tables.load(name)["columns"][column], tables.row(name, key)[column])

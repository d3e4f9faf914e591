"""The bibliography holds what is used, and everything used is in it."""

from __future__ import annotations

import json
import re
import tomllib
from collections.abc import Iterator

from calc import rules, tables
from calc.sources import bibliography
from docs_build.bootstrap import ROOT

# A key stands in the computing as a string or, in a docstring, as a word with an underscore.
NAMED = re.compile(r"[\"'](\w+)[\"']|\b(\w+_\w+)\b")
ROLE = re.compile(r"\{source\}`([^`;]+)")


def on_pages() -> Iterator[tuple[str, str]]:
    """Page and key of every citation."""
    for path in sorted([*(ROOT / "handbook").rglob("*.md"), *(ROOT / "handbook").rglob("*.ipynb")]):
        text = path.read_text(encoding="utf-8")
        if path.suffix == ".ipynb":
            cells = json.loads(text)["cells"]
            text = "\n".join("".join(cell["source"]) for cell in cells)
        for key in ROLE.findall(text):
            yield path.relative_to(ROOT).as_posix(), key.strip()


def in_tables() -> set[str]:
    """Keys of all rows of all tables."""
    found: set[str] = set()
    for name in tables.names():
        for row in tables.rows(name):
            keys = row["source"]
            found |= set(keys) if isinstance(keys, list) else {keys}
    return found


def in_rules() -> set[str]:
    """Keys of all steps of all rules."""
    return {key for name in rules.names() for step in rules.rule(name).steps for key in step.source}


def in_code() -> set[str]:
    """Strings in the computing, and the keys that its docstrings name."""
    found: set[str] = set()
    for path in (ROOT / "calc").rglob("*.py"):
        for string, word in NAMED.findall(path.read_text(encoding="utf-8")):
            found.add(string or word)
    return found


def in_checks() -> set[str]:
    """Sources of the values printed outside the project."""
    return {
        check["source"]
        for path in (ROOT / "tests" / "published").rglob("*.toml")
        for check in tomllib.loads(path.read_text(encoding="utf-8"))["check"]
    }


def test_every_entry_is_used() -> None:
    """By a page, a table, a calculator, or a value that the computing is checked against."""
    used = {key for _, key in on_pages()} | in_tables() | in_rules() | in_code() | in_checks()
    assert sorted(set(bibliography()) - used) == []


def test_every_citation_is_in_the_bibliography() -> None:
    lost = [(page, key) for page, key in on_pages() if key not in bibliography()]
    assert lost == []
    assert in_tables() | in_rules() | in_checks() <= set(bibliography())


def test_no_two_entries_are_the_same_text() -> None:
    texts = [entry.text for entry in bibliography().values()]
    assert len(texts) == len(set(texts))

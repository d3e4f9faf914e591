"""The bibliography holds what is used, and everything used is in it."""

from __future__ import annotations

import json
import re
import tomllib
from collections.abc import Iterator
from pathlib import Path

import pytest

from calc import rules, sources, tables
from calc.sources import KINDS, Source, bibliography
from docs_build import strength
from docs_build.bootstrap import ROOT

# A key stands in the computing as a string or, in a docstring, as a word with an underscore.
NAMED = re.compile(r"[\"'](\w+)[\"']|\b(\w+_\w+)\b")
MARK = re.compile(r"mark\.published\(\"(\w+)\"\)")
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
    """Sources of the values printed outside the project, in data and in marks of tests."""
    marks = {
        key
        for path in (ROOT / "tests").rglob("test_*.py")
        for key in MARK.findall(path.read_text(encoding="utf-8"))
    }
    return marks | {
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


def test_an_unknown_kind_is_refused_with_the_kinds_there_are(
    monkeypatch: pytest.MonkeyPatch, tmp_path: Path
) -> None:
    (tmp_path / "sources").mkdir()
    told = '[old]\nkind = "published"\nshort = "x"\ntext = "y"\n'
    (tmp_path / "sources" / "a.toml").write_text(told)
    monkeypatch.setattr(sources, "HERE", tmp_path)
    with pytest.raises(
        LookupError, match=r"'old' in a.toml is of the kind 'published'.*read-whole"
    ):
        bibliography.__wrapped__()


def named(kind: str, short: str) -> str:
    return Source(key="x", kind=kind, text="y", short=short, where="p. 4").cited()


def test_a_citation_says_its_strength_once() -> None:
    assert named("read-whole", "Doe 1999") == "Doe 1999, p. 4"
    assert named("read-abstract", "Doe 1999") == "Doe 1999, p. 4 – abstract read"
    assert named("reasoned", "our limits") == "our limits, p. 4"
    assert named("common-practice", "kit of the trade").endswith("– common practice")
    assert named("from-memory", "recalled marks").endswith("– from memory, check")


def test_only_what_was_read_whole_or_says_it_itself_stands_without_a_mark() -> None:
    bare = {each.kind for each in bibliography().values() if not each.beside}
    assert "from-memory" not in bare
    assert all(each.beside in {"", each.mark} for each in bibliography().values())


def test_the_build_counts_every_source_and_what_leans_on_memory() -> None:
    told = strength.told()
    counts = [int(n) for n in re.findall(r" (\d+)[;.]", told.splitlines()[0])]
    assert sum(counts) == len(bibliography())
    assert len(counts) == len(KINDS)
    assert all(0 < few < many for _, few, many in strength.from_memory())
    assert "species laws" in told


def test_most_printed_values_were_read_where_they_are_printed() -> None:
    rests = [strength.of_check(check["source"]) for check in strength.published_checks()]
    assert rests.count("read") >= 520
    assert rests.count("read") > 3 * (rests.count("second-hand") + rests.count("memory"))


def test_a_source_of_our_own_is_no_outside_check() -> None:
    with pytest.raises(LookupError, match="our reasoning"):
        strength.of_check("own_reasoning")

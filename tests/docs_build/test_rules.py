"""One wording for each rule: emergencies, cautions and what ends a job are told once, everywhere.

``only_here`` of a rule names words that stand in that rule alone, ``nowhere`` words that nothing
uses. What no rule covers is compared sentence by sentence: two alerts of the book that say nearly
the same in other words fail.
"""

from __future__ import annotations

import ast
import itertools
import re
import tomllib
from collections.abc import Iterator
from html.parser import HTMLParser
from pathlib import Path

import pytest
import textstat

from calc import rules, tables
from calc.sources import bibliography
from docs_build.bootstrap import ROOT

LEDGER = ROOT / "tests" / "data" / "alike_alerts.toml"
ALIKE = 0.5
"""Share of the words of two alerts that both have, from which on they say the same."""
SHORTEST = 5  # words: less says too little to be compared
BLOCKS = {"p", "li", "td", "th", "dd", "dt", "figcaption", "h1", "h2", "h3", "h4", "summary"}
HEADINGS = {"h1", "h2", "h3", "h4"}
VOID = {"br", "img", "hr", "input", "meta", "link", "source", "wbr", "path", "col"}
ELSEWHERE = {"rule", "bibliography"}
"""Blocks that may use the words of a rule: the rule itself, and what a source says."""
ALERTS = {"danger", "warning", "visit-stops", "caution", "rule"}
SMALL = frozenset(
    re.findall(
        r"\w+",
        "a an and are as at be by do for from has have if in is it its no not of on one or so than "
        "that the their them then there they this to too up was when which who with you your",
    )
)


class Told(HTMLParser):
    """The blocks of text of a built page, each with the classes that enclose it."""

    def __init__(self, path: Path) -> None:
        super().__init__()
        self.blocks: list[tuple[frozenset[str], str]] = []
        self._open: list[tuple[str, frozenset[str]]] = []
        self._text: list[str] = []
        self.feed(path.read_text(encoding="utf-8"))
        self._flush()

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        if tag in BLOCKS:
            self._flush()
        if tag not in VOID:
            self._open.append((tag, frozenset((dict(attrs).get("class") or "").split())))

    def handle_endtag(self, tag: str) -> None:
        if tag in VOID:
            return  # an element that closes itself opened nothing
        if tag in BLOCKS:
            self._flush()
        while self._open and self._open.pop()[0] != tag:
            pass

    def handle_data(self, data: str) -> None:
        tags = {tag for tag, _ in self._open}
        if "main" in tags and not tags & {"script", "style", "nav", "footer"}:
            self._text.append(data)

    def _flush(self) -> None:
        text = re.sub(r"\s+", " ", "".join(self._text)).strip()
        self._text = []
        if text:
            classes = frozenset().union(*(each for _, each in self._open))
            if HEADINGS & {tag for tag, _ in self._open}:
                classes |= {"heading"}
            self.blocks.append((classes, text))


@pytest.fixture(scope="module")
def book(site: Path) -> dict[str, Told]:
    found = {
        path.relative_to(site).as_posix(): Told(path)
        for path in sorted(site.rglob("*.html"))
        if path.name not in {"genindex.html", "search.html"}
    }
    assert len(found) > 100
    return found


def strings() -> Iterator[tuple[str, str]]:
    """Every string of ``calc`` that a reader may come to see, with the place it stands in."""
    for path in sorted((ROOT / "calc").rglob("*.py")):
        where = path.relative_to(ROOT).as_posix()
        for node in ast.walk(ast.parse(path.read_text(encoding="utf-8"))):
            if isinstance(node, ast.Constant) and isinstance(node.value, str):
                yield where, node.value
    for name in tables.names():
        for row in tables.rows(name):
            for value in row.values():
                if isinstance(value, str):
                    yield f"calc/tables/{name}.toml", value
    for path in sorted((ROOT / "calc" / "clients" / "words").glob("*.toml")):
        yield path.relative_to(ROOT).as_posix(), path.read_text(encoding="utf-8")


def own_sentences() -> list[str]:
    return sorted(
        (step.plain for name in rules.names() for step in rules.rule(name).steps),
        key=len,
        reverse=True,
    )


@pytest.fixture(scope="module")
def beside_the_rules(book: dict[str, Told]) -> dict[str, str]:
    """Every text of the book and of ``calc`` without the rules' own sentences, and its place."""
    own = re.compile("|".join(map(re.escape, own_sentences())))
    texts = {
        text: where
        for where, page in book.items()
        for classes, text in page.blocks
        if not classes & ELSEWHERE
    }
    texts |= {text: where for where, text in strings()}
    return {own.sub(" ", text): where for text, where in texts.items()}


@pytest.mark.parametrize("name", rules.names())
def test_a_rule_is_sourced_and_plain(name: str) -> None:
    found = rules.rule(name)
    for step in found.steps:
        assert set(step.source) <= set(bibliography()), step.key
        assert "{" not in step.plain, step.key
    for pattern in found.only_here:
        assert re.search(pattern, rules.text(name)), f"{pattern} is not in the rule itself"
    for pattern in found.nowhere:
        assert not re.search(pattern, rules.text(name)), f"{pattern} is in the rule itself"
    words = " ".join(step.plain.rstrip(".") + "." for step in found.steps)
    if len(words.split()) >= SHORTEST * 2:
        assert textstat.flesch_kincaid_grade(words) <= 7


def test_every_rule_stands_in_the_book(book: dict[str, Told]) -> None:
    placed = {each for page in book.values() for classes, _ in page.blocks for each in classes}
    assert {f"rule-{name}" for name in rules.names()} <= placed


@pytest.mark.parametrize("name", rules.names())
def test_no_second_wording_of_a_rule(name: str, beside_the_rules: dict[str, str]) -> None:
    found = [
        (where, pattern, text[:120])
        for pattern in (*rules.rule(name).only_here, *rules.rule(name).nowhere)
        for text, where in beside_the_rules.items()
        if re.search(pattern, text)
    ]
    assert found == []


def words(text: str) -> frozenset[str]:
    """The words that carry a sentence, without their endings."""
    found = re.findall(r"[a-z]+|\d+", text.lower())
    return frozenset(re.sub(r"(?:ing|es|ed|s)$", "", each) for each in found) - SMALL


def alerts(book: dict[str, Told]) -> dict[str, str]:
    """Every sentence of an alert of the book, with a place where it stands."""
    found: dict[str, str] = {}
    for where, page in book.items():
        for classes, text in page.blocks:
            told = classes & ALERTS or (where.startswith("quick/") and "index" not in where)
            if told and not classes & {"rule-sources", "heading"}:
                for sentence in re.split(r"(?<=[.!?:;]) ", re.sub(r" ?\([^()]*\)", "", text)):
                    found.setdefault(sentence.strip(), where)
    for row in tables.rows("visit_stops"):
        for sentence in re.split(r"(?<=[.!?:;]) ", re.sub(r" ?\([^()]*\)", "", row["do"])):
            found.setdefault(sentence, "calc/tables/visit_stops.toml")
    return {text: where for text, where in found.items() if len(text.split()) >= SHORTEST}


def alike(one: frozenset[str], other: frozenset[str]) -> float:
    return len(one & other) / len(one | other) if one | other else 0.0


def test_no_alert_has_two_wordings(book: dict[str, Told]) -> None:
    """A ledger of pairs that look alike and say two things: a new one fails, a gone one too."""
    listed = tomllib.loads(LEDGER.read_text(encoding="utf-8")).get("pair", [])
    known = {frozenset((pair["one"], pair["other"])) for pair in listed}
    assert all(pair["reason"].strip() for pair in listed)
    told = alerts(book)
    bags = {text: words(text) for text in told}
    found = {
        frozenset((one, other))
        for one, other in itertools.combinations(sorted(told), 2)
        if bags[one] != frozenset() and alike(bags[one], bags[other]) >= ALIKE
    }
    new = [" | ".join(f"{text} ({told[text]})" for text in sorted(pair)) for pair in found - known]
    assert not new, "say it once, from calc/tables/rules"
    assert not known - found, "no longer alike: take these off the list"


def test_the_comparison_finds_a_second_wording() -> None:
    one = "Lie flat with the legs raised, and do not stand or walk."
    assert alike(words(one), words("Legs raised, lie flat; no standing, no walking!")) >= ALIKE
    assert alike(words(one), words("Close the box before you walk to the car.")) < ALIKE

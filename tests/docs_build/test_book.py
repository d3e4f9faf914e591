"""The built site as a whole: links, hosts, scripts, what each page must carry."""

from __future__ import annotations

import json
import re
from collections.abc import Iterator
from html import escape
from html.parser import HTMLParser
from pathlib import Path
from urllib.parse import unquote, urlsplit

import pytest

from calc import EDITION
from calc.catalogue import CALCULATORS
from calc.sources import KINDS, source
from docs_build.bootstrap import ROOT
from docs_build.build import PDF_NAME
from docs_build.page import offline

pytestmark = pytest.mark.browser
LOADED = {("script", "src"), ("link", "href"), ("img", "src"), ("iframe", "src"), ("source", "src")}


class Page(HTMLParser):
    """What a page links to, loads, and names."""

    def __init__(self, path: Path) -> None:
        super().__init__()
        self.links: list[str] = []
        self.loads: list[str] = []
        self.ids: set[str] = set()
        self.inline_scripts = 0
        self.handlers: list[str] = []
        self.metas: dict[str, str] = {}
        self.feed(path.read_text(encoding="utf-8"))

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        given = {name: value or "" for name, value in attrs}
        self.ids |= {given[key] for key in ("id", "name") if key in given}
        self.handlers += [name for name in given if name.startswith("on")]
        if tag == "a" and "href" in given:
            self.links.append(given["href"])
        if tag == "script" and "src" not in given:
            self.inline_scripts += 1
        if tag == "meta" and "http-equiv" in given:
            self.metas[given["http-equiv"]] = given["content"]
        self.loads += [given[key] for name, key in LOADED if name == tag and key in given]


@pytest.fixture(scope="module")
def pages(site: Path) -> dict[Path, Page]:
    found = {path: Page(path) for path in sorted(site.rglob("*.html"))}
    assert len(found) > 15
    return found


def targets(site: Path, path: Path, links: list[str]) -> Iterator[tuple[str, Path, str]]:
    for link in links:
        parts = urlsplit(link)
        if parts.scheme or parts.netloc:
            continue
        target = (path.parent / unquote(parts.path)).resolve() if parts.path else path
        yield link, target / "index.html" if target.is_dir() else target, unquote(parts.fragment)


def test_every_link_inside_the_book_leads_somewhere(site: Path, pages: dict[Path, Page]) -> None:
    for path, page in pages.items():
        for link, target, fragment in targets(site, path, page.links):
            assert target.exists(), f"{path.relative_to(site)}: {link}"
            if fragment and target in pages:
                assert fragment in pages[target].ids, f"{path.relative_to(site)}: {link}"


def test_everything_loaded_is_there_and_ours(site: Path, pages: dict[Path, Page]) -> None:
    for path, page in pages.items():
        for link in page.loads:
            assert not urlsplit(link).netloc, f"{path.relative_to(site)} asks another host: {link}"
        for link, target, _ in targets(site, path, page.loads):
            assert target.exists(), f"{path.relative_to(site)}: {link}"


def test_every_page_has_a_policy_and_no_inline_script(pages: dict[Path, Page]) -> None:
    for path, page in pages.items():
        policy = page.metas["Content-Security-Policy"]
        assert "default-src 'self'" in policy
        assert "script-src 'self' 'wasm-unsafe-eval';" in policy
        assert not page.inline_scripts, path
        assert not page.handlers, path


def test_every_page_carries_edition_and_cautions(pages: dict[Path, Page]) -> None:
    for path in pages:
        text = path.read_text(encoding="utf-8")
        assert f"Edition {EDITION}" in text, path
        assert "cautions and limits" in text, path


def test_worked_answers_stand_in_the_static_page(site: Path) -> None:
    """The page reads whole with scripts off, and search finds the calculator."""
    texts = [path.read_text(encoding="utf-8") for path in site.rglob("*.html")]
    for name, calculator in CALCULATORS.items():
        placed = [text for text in texts if f'data-calculator="{name}"' in text]
        assert placed, f"{name} stands on no page"
        given = [calculator.example()]
        for path in (ROOT / "demo_cases").glob("*/case.json"):
            given += filter(None, [json.loads(path.read_text())["inputs"].get(name)])
        shown = [out for out in calculator.outputs if out.main and out.kind != "table"]
        assert shown, name
        whole = [
            all(
                result.values[out.name] is None or escape(result.text(out.name)) in text
                for out in shown
            )
            for result in map(calculator.run, given)
            for text in placed
        ]
        assert any(whole), f"{name}: no page holds its worked answer"
    index = (site / "searchindex.js").read_text(encoding="utf-8")
    assert "nozzl" in index


def test_the_front_page_offers_the_pdf(site: Path, pages: dict[Path, Page]) -> None:
    assert PDF_NAME in pages[site / "index.html"].links
    assert (site / PDF_NAME).read_bytes().startswith(b"%PDF-")


def test_a_phone_keeps_the_trainee_copy_and_no_other(site: Path) -> None:
    kept = {name for group in offline.listed(site).values() for name, _, _ in group}
    assert {name for name in kept if name.endswith(".pdf")} == {PDF_NAME}
    assert PDF_NAME in (site / "sw.js").read_text(encoding="utf-8")
    page = (site / "training" / "trainer.html").read_text(encoding="utf-8")
    assert "pdf --copy trainer" in re.sub("<[^>]+>", "", page)


def test_the_foot_names_the_sources_of_the_page_by_their_strength(site: Path) -> None:
    text = (site / "method" / "how_many_left.html").read_text(encoding="utf-8")
    fold = re.search(r'<details class="page-sources">(.*?)</details>', text, re.DOTALL)
    assert fold
    named = re.findall(r'href="\.\./reference/sources\.html#source-([\w-]+)"', fold[1])
    page = (ROOT / "handbook" / "method" / "how_many_left.md").read_text(encoding="utf-8")
    written = {key.partition(";")[0].strip() for key in re.findall(r"\{source\}`([^`]+)`", page)}
    calculator = CALCULATORS["how_many_left"]
    worked = calculator.run(calculator.example()).as_dict()
    told = {each["key"] for each in worked["sources"]}
    assert told
    assert written | told <= set(named)
    assert len(named) == len(set(named))
    summary = fold[1].partition("</summary>")[0].partition(": ")[2]
    counted = {kind: sum(source(key).kind == kind for key in named) for kind in KINDS}
    assert summary == "; ".join(f"{KINDS[kind]} {held}" for kind, held in counted.items() if held)
    assert "page-sources" not in (site / "reference" / "sources.html").read_text(encoding="utf-8")


def entries_of(site: Path) -> dict[str, set[str]]:
    """Pages that the index leads to, each with the places there."""
    text = (site / "genindex.html").read_text(encoding="utf-8")
    table = text[text.index("genindex-jumpbox") :]
    found: dict[str, set[str]] = {}
    for page, place in re.findall(r'<a href="([\w/]+\.html)#([^"]+)"', table):
        found.setdefault(page, set()).add(place)
    return found


def test_every_chapter_is_in_the_index_and_every_entry_leads_somewhere(
    site: Path, pages: dict[Path, Page]
) -> None:
    found = entries_of(site)
    for page, places in found.items():
        assert places <= pages[site / page].ids, page
    text = (ROOT / "handbook" / "index.md").read_text(encoding="utf-8")
    chapters = re.findall(r"^(\w+/\w+)$", text, re.MULTILINE)
    assert len(chapters) > 100
    missing = [name for name in chapters if f"{name}.html" not in found]
    assert missing == ["start/chapters"], "these pages need index: in their front matter"
    assert "../genindex.html" in pages[site / "start" / "chapters.html"].links

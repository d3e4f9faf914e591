"""The built site as a whole: links, hosts, scripts, what each page must carry."""

from __future__ import annotations

import json
from collections.abc import Iterator
from html import escape
from html.parser import HTMLParser
from pathlib import Path
from urllib.parse import unquote, urlsplit

import pytest

from calc import EDITION
from calc.catalogue import CALCULATORS
from docs_build.bootstrap import ROOT

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
        given = [calculator.defaults()]
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
    name = f"field-handbook-{EDITION}.pdf"
    assert name in pages[site / "index.html"].links
    assert (site / name).read_bytes().startswith(b"%PDF-")

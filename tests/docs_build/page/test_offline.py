"""The book without a network, and the change from one edition to the next."""

from __future__ import annotations

import re
import shutil
from pathlib import Path
from typing import Any

import pytest

from docs_build.page import pack
from docs_build.page.offline import listed

from .conftest import Watch, answered, kept, live, serving

pytestmark = pytest.mark.browser
CATCHES = "[name=catches] >> nth=0"


def test_everything_works_with_network_off_and_browser_restarted(device: Any, site: Path) -> None:
    with serving(site) as host:
        watch = Watch(host.local)
        page = watch.over(device()).new_page()
        page.goto(host.page("how_many_left"))
        live(page)
        page.fill(CATCHES, "60, 35, 20, 11")
        answered(page)
        shown = page.locator(".answer-main").inner_text()
        page.evaluate("localStorage.clear()")
        kept(page)
        asked = watch.requests
    # The server is gone, and so is the browser: what follows is a cold start without a network.
    page = watch.over(device()).new_page()
    page.goto(host.page("how_many_left"))
    live(page)
    page.fill(CATCHES, "60, 35, 20, 11")
    answered(page)
    assert page.locator(".answer-main").inner_text() == shown
    for name in ("index.html", "", "safety/heat_in_suit.html?v=1", "reference/sources.html"):
        page.goto(host.local + name)
        assert page.locator("h1").first.is_visible(), name
    page.goto(host.local + "search.html?q=nozzle")
    page.wait_for_selector("#search-results li a", timeout=20_000)
    page.goto(host.local + "no_such_page.html")
    assert "not on this phone" in page.inner_text("h1")
    assert watch.foreign == []
    assert asked > 20


def new_edition(site: Path, folder: Path) -> Path:
    """Return a copy of the site in which one page reads differently."""
    made = folder / "next"
    shutil.copytree(site, made)
    index = made / "index.html"
    index.write_text(index.read_text("utf-8").replace("</h1>", " (next)</h1>", 1), "utf-8")
    pack.offline(made, "2099.1")
    return made


def replace_files(target: Path, source: Path) -> None:
    shutil.rmtree(target)
    shutil.copytree(source, target)


def test_a_new_edition_comes_whole_and_only_when_wanted(
    device: Any, site: Path, tmp_path: Path
) -> None:
    served = tmp_path / "served"
    shutil.copytree(site, served)
    coming = new_edition(site, tmp_path)
    with serving(served) as host:
        page = device().new_page()
        page.goto(host.local)
        kept(page)
        before = page.inner_text("h1")
        # Half an edition on the host: the list names a file that is not what it should be.
        replace_files(served, coming)
        (served / "index.html").write_text("half written", "utf-8")
        page.evaluate("navigator.serviceWorker.getRegistration().then((r) => r.update())")
        page.wait_for_timeout(1500)
        page.reload()
        assert page.inner_text("h1") == before
        assert page.locator(".keep-news").count() == 0
        replace_files(served, coming)
        page.evaluate("navigator.serviceWorker.getRegistration().then((r) => r.update())")
        page.wait_for_selector(".keep-news", timeout=20_000)
        page.reload()
        assert page.inner_text("h1") == before, "a new edition came unasked"
        page.wait_for_selector(".keep-news", timeout=20_000)
        page.click(".keep-news button >> nth=0")
        page.wait_for_selector("h1:has-text('(next)')", timeout=20_000)
        kept(page)
        names = page.evaluate("caches.keys()")
        assert len(names) == 1
        assert names[0].startswith("handbook|/|2099.1-")


def test_the_book_is_kept_by_a_press_and_says_truthfully_what_is_there(
    device: Any, site: Path
) -> None:
    panel = next(
        path.relative_to(site).as_posix()
        for path in sorted(site.rglob("*.html"))
        if "data-keep-offline" in path.read_text("utf-8")
    )
    with serving(site) as host:
        page = device().new_page()
        page.goto(host.local + panel)
        kept(page)
        button = page.locator(".keep button")
        if button.is_visible():  # the training PDF is not fetched unasked
            assert re.search(r"\d MB", button.inner_text())
            button.click()
            button.wait_for(state="hidden", timeout=60_000)
        status = page.locator(".keep [role=status]")
        assert status.inner_text().startswith("Everything of edition")
        page.evaluate(
            "caches.keys().then(async (names) => {"
            " const cache = await caches.open(names[0]);"
            " await cache.delete(new URL('/search.html', location.href).href); })"
        )
    # A file has gone missing, and there is no network to bring it back.
    page.reload()
    page.wait_for_selector(".keep [role=status]:has-text('search.html')", timeout=20_000)
    assert "1 of" in status.inner_text()
    assert "Everything" not in status.inner_text()


def test_it_works_below_any_path(device: Any, site: Path, tmp_path: Path) -> None:
    shutil.copytree(site, tmp_path / "host" / "some" / "path")
    with serving(tmp_path / "host") as host:
        page = device().new_page()
        page.goto(host.local + "some/path/method/how_many_left.html")
        live(page)
        page.fill(CATCHES, "60, 35, 20, 11")
        answered(page)
        kept(page)
    page = device().new_page()
    page.goto(host.local + "some/path/method/how_many_left.html")
    live(page)
    answered(page)


def test_the_list_holds_every_file_of_the_site(site: Path) -> None:
    groups = listed(site)
    names = {entry[0] for files in groups.values() for entry in files}
    there = {
        path.relative_to(site).as_posix()
        for path in site.rglob("*")
        if path.is_file()
        and path.suffix in {".html", ".css", ".mjs", ".js", ".svg", ".wasm", ".zip"}
    }
    assert there - names == {"sw.js"}
    whole = sum(entry[2] for files in groups.values() for entry in files)
    assert whole < 25e6

"""Two editions built from their tags: side by side, the switch, and the update of a kept book."""

from __future__ import annotations

import json
import os
import shutil
import subprocess
import sys
from pathlib import Path
from typing import Any

import pytest

from calc import EDITION
from docs_build import bootstrap, editions
from docs_build.bootstrap import OUT, ROOT, Trouble

from .conftest import Watch, answered, kept, live, serving

pytestmark = pytest.mark.browser
YEAR, NUMBER = EDITION.split(".")
NEXT = f"{YEAR}.{int(NUMBER) + 1}"
CATCHES = "[name=catches] >> nth=0"
NEW_PAGE = f"""---
edition: "{EDITION}"
reviewed: 2026-11-28
status: draft
---
# Only in the next edition

This page came later.
"""


def git(repo: Path, *arguments: str) -> None:
    person = ["-c", "user.name=test", "-c", "user.email=test@example.org"]
    subprocess.run(["git", *person, *arguments], cwd=repo, check=True, capture_output=True)


def run(repo: Path, *arguments: str) -> subprocess.CompletedProcess[str]:
    command = [sys.executable, "-m", "docs_build", *arguments]
    return subprocess.run(command, cwd=repo, capture_output=True, text=True, errors="replace")


@pytest.fixture(scope="module")
def repo(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """A copy of the tree with two tagged editions, the second with one page more."""
    made = tmp_path_factory.mktemp("editions") / "repo"
    leave = shutil.ignore_patterns(".out", ".venv", ".git", "*.pyc", ".*_cache", ".hypothesis")
    shutil.copytree(ROOT, made, ignore=leave)
    (made / ".venv").symlink_to(bootstrap.VENV.resolve(), target_is_directory=True)
    shutil.copytree(OUT / "runtime", made / ".out" / "runtime")
    git(made, "init", "-q")
    git(made, "add", "-A")
    git(made, "commit", "-q", "-m", "first")
    git(made, "tag", f"edition-{EDITION}")
    index = made / "handbook" / "index.md"
    text = index.read_text("utf-8")
    assert "\nstart/chapters\n" in text
    index.write_text(text.replace("\nstart/chapters\n", "\nstart/chapters\nstart/later\n"), "utf-8")
    (made / "handbook" / "start" / "later.md").write_text(NEW_PAGE, "utf-8")
    untold = run(made, "cut", NEXT)
    assert untold.returncode == 1
    assert f"has no heading “## {NEXT}”" in untold.stderr
    page = made / "handbook" / "reference" / "editions.md"
    page.write_text(page.read_text("utf-8") + f"\n## {NEXT}\n\nA page came.\n", "utf-8")
    done = run(made, "cut", NEXT)
    assert done.returncode == 0, done.stderr
    git(made, "add", "-A")
    git(made, "commit", "-q", "-m", "second")
    git(made, "tag", f"edition-{NEXT}")
    return made


@pytest.fixture(scope="module")
def built(repo: Path) -> Path:
    """The site of both editions."""
    done = run(repo, "editions", "--no-serve", "--port", "18473")
    assert done.returncode == 0, done.stdout + done.stderr
    return repo / ".out" / "editions" / "site"


def test_each_edition_is_what_its_tag_holds(built: Path) -> None:
    for folder, edition in ((built, NEXT), (built / "editions" / EDITION, EDITION)):
        assert f'data-edition="{edition}"' in (folder / "index.html").read_text("utf-8")
        assert f'"edition": "{edition}"' in (folder / "sw.js").read_text("utf-8")
        assert (folder / "start" / "later.html").exists() is (edition == NEXT)
        told = json.loads((folder / "editions.json").read_text("utf-8"))
        assert [one["name"] for one in told] == [NEXT, EDITION]
        for one in told:
            assert all((folder / one["path"] / page).is_file() for page in one["pages"])
    listed = json.loads((built / "editions.json").read_text("utf-8"))[0]["pages"]
    assert not [page for page in listed if page.startswith("editions/")]


def test_the_switch_keeps_the_place(device: Any, built: Path) -> None:
    with serving(built) as host:
        watch = Watch(host.local)
        page = watch.over(device()).new_page()
        page.goto(host.local + "method/how_many_left.html#calc-how_many_left")
        page.click("[data-editions] summary")
        page.click(f"[data-editions] a:has-text('This page in edition {EDITION}')")
        page.wait_for_selector(f"html[data-edition='{EDITION}']", state="attached")
        assert page.url.endswith(f"editions/{EDITION}/method/how_many_left.html#calc-how_many_left")
        live(page)
        page.fill(CATCHES, "60, 35, 20, 11")
        answered(page)
        assert f"dition {EDITION}" in page.inner_text(".answer-edition")
        note = page.locator(".older-edition")
        note.wait_for()
        assert f"The newest is {NEXT}" in note.inner_text()
        assert "not kept" in page.locator("[data-offline-status]").first.inner_text()
        note.locator("a").click()
        page.wait_for_selector(f"html[data-edition='{NEXT}']", state="attached")
        assert page.url.partition("#")[0] == host.local + "method/how_many_left.html"
        # A page that the older edition has not: the switch says so, and leads to its first page.
        page.goto(host.local + "start/later.html")
        page.click("[data-editions] summary")
        page.click("[data-editions] a:has-text('its first page, as it has not this one')")
        page.wait_for_url(host.local + f"editions/{EDITION}/index.html")
        assert watch.foreign == []
        assert watch.faults == []


def test_a_kept_book_goes_from_one_edition_to_the_next(
    device: Any, built: Path, tmp_path: Path
) -> None:
    served = tmp_path / "served"
    shutil.copytree(built / "editions" / EDITION, served)
    editions.alone(served, EDITION)
    page = device().new_page()
    with serving(served) as host:
        page.goto(host.page("how_many_left"))
        kept(page, EDITION)
        page.fill(CATCHES, "61, 35, 20, 11")
        answered(page)
        shutil.rmtree(served)
        shutil.copytree(built, served)
        page.reload()
        page.wait_for_selector(".keep-news", timeout=60_000)
        page.wait_for_selector(f".keep-news:has-text('Edition {NEXT} is ready')")
        page.reload()
        assert page.get_attribute("html", "data-edition") == EDITION, "it came unasked"
        page.wait_for_selector(".keep-news")
        page.click("[data-editions] summary")
        page.click(f"[data-editions] button:has-text('Edition {NEXT}: use it now')")
        page.wait_for_selector(f"html[data-edition='{NEXT}']", state="attached", timeout=30_000)
        assert page.url.partition("#")[0] == host.page("how_many_left")
        kept(page, NEXT)
    # The host is gone: the next edition answers, what was typed is there, the switch is known.
    page.reload()
    live(page)
    answered(page)
    assert page.locator(CATCHES).input_value() == "61"
    assert f"dition {NEXT}" in page.inner_text(".answer-edition")
    page.click("[data-editions] summary")
    page.wait_for_selector(f"[data-editions] a:has-text('This page in edition {EDITION}')")
    page.goto(host.local + "start/later.html")
    assert page.inner_text("h1") == "Only in the next edition"
    page.goto(host.local + f"editions/{EDITION}/index.html")
    assert "not on this phone" in page.inner_text("h1")
    assert len(page.evaluate("caches.keys()")) == 1


def test_a_page_that_an_edition_has_not_is_told(device: Any, built: Path) -> None:
    with serving(built) as host:
        page = device().new_page()
        page.goto(host.local)
        kept(page, NEXT)
        page.goto(host.local + "method/of_another_edition.html")
        assert f"Edition {NEXT} of the book has no such page" in page.inner_text("body")


@pytest.mark.parametrize(
    ("name", "sentence"),
    [
        ("new", "names no edition; allowed is a year, a point and a number"),
        (EDITION, f"is not newer than this one, {EDITION}"),
        ("2026.9999", "names no edition"),
    ],
)
def test_no_edition_is_cut_with_a_wrong_name(name: str, sentence: str) -> None:
    with pytest.raises(Trouble, match=sentence):
        editions.cut(name)


@pytest.mark.parametrize(
    ("tags", "sentence"),
    [
        ((), "No commit is tagged as an edition"),
        (("edition-autumn",), "“edition-autumn” names no edition"),
        (("edition-2031.1",), "on a commit whose edition is"),
    ],
)
def test_tags_that_tell_no_edition(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch, tags: tuple[str, ...], sentence: str
) -> None:
    (tmp_path / "calc").mkdir()
    shutil.copy(ROOT / "calc" / "__init__.py", tmp_path / "calc")
    monkeypatch.setattr(editions, "ROOT", tmp_path)
    monkeypatch.setattr(editions, "FOLDER", tmp_path / "built")
    with pytest.raises(Trouble, match="git said"):
        editions.side_by_side()
    git(tmp_path, "init", "-q")
    git(tmp_path, "add", "-A")
    git(tmp_path, "commit", "-q", "-m", "first")
    for tag in tags:
        git(tmp_path, "tag", tag)
    with pytest.raises(Trouble, match=sentence):
        editions.side_by_side()


def test_without_git_it_is_one_sentence(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setitem(os.environ, "PATH", "")
    with pytest.raises(Trouble, match="git was not found"):
        editions.side_by_side()

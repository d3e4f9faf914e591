"""Editions: cutting one, and building several side by side from their tags.

The newest edition stands at the root of the site, so that a phone that keeps the book is offered
it; each older one stands below ``editions/<name>/`` with everything it was published with.
"""

from __future__ import annotations

import io
import json
import os
import re
import shutil
import subprocess
import sys
import tarfile
from collections.abc import Sequence
from pathlib import Path
from typing import Any

from docs_build import bootstrap
from docs_build.bootstrap import OUT, ROOT, Trouble, say

TAG = "edition-"
NAME = re.compile(r"\d{4}\.\d{1,3}")
LIST = "editions.json"
FOLDER = OUT / "editions"
SITE = FOLDER / "site"
WORDS = "a year, a point and a number, such as 2026.2"


def side_by_side() -> Path:
    """Build every tagged edition and join them into one site; return its folder.

    Raises
    ------
    Trouble
        where there is no git, no tag, a tag that does not fit its commit, or a build that fails
    """
    names = tagged()
    built = {name: _built(name) for name in names}
    shutil.rmtree(SITE, ignore_errors=True)
    newest, *older = names
    shutil.copytree(built[newest], SITE)
    for name in older:
        shutil.copytree(built[name], SITE / "editions" / name)
    places = {name: "" if name == newest else f"editions/{name}/" for name in names}
    for name in names:
        write_list(SITE / places[name], names, places, SITE)
    say(f"Editions side by side: {', '.join(names)}.")
    return SITE


def write_list(
    folder: Path, names: Sequence[str], places: dict[str, str], site: Path
) -> list[dict[str, Any]]:
    """Write what the pages in ``folder`` know of all editions, newest first; return it.

    Each entry has the ``name``, the ``path`` from ``folder`` to that edition, and its ``pages``:
    a reader's place is kept where the other edition has the page.
    """
    told = []
    for name in names:
        target = site / places[name]
        path = os.path.relpath(target, folder).replace(os.sep, "/")
        pages = [
            page.relative_to(target).as_posix()
            for page in sorted(target.rglob("*.html"))
            if not (page.is_relative_to(target / "editions") or page.parent.name == "_static")
        ]
        told.append({"name": name, "path": "./" if path == "." else f"{path}/", "pages": pages})
    (folder / LIST).write_text(json.dumps(told), encoding="utf-8", newline="\n")
    return told


def alone(html: Path, edition: str) -> None:
    """Write the list of a site that holds one edition."""
    write_list(html, [edition], {edition: ""}, html)


def tagged() -> list[str]:
    """Return the names of all tagged editions, newest first."""
    names = [tag.removeprefix(TAG) for tag in _git("tag", "--list", f"{TAG}*").decode().split()]
    for name in names:
        if not NAME.fullmatch(name):
            raise Trouble(f"The tag “{TAG}{name}” names no edition; allowed is {WORDS}.")
    if not names:
        raise Trouble(
            f"No commit is tagged as an edition: tag one as {TAG}{_edition(ROOT)}, "
            "as DEVELOPERS.md tells under “Cut an edition”."
        )
    return sorted(names, key=_order, reverse=True)


def _order(name: str) -> tuple[int, ...]:
    return tuple(map(int, name.split(".")))


def _built(name: str) -> Path:
    """Return the built site of one edition; its own commands build it, with its own pins."""
    tree, commit = FOLDER / name, _git("rev-list", "-n", "1", f"{TAG}{name}").decode().strip()
    stamp, html = tree / ".out" / "commit", tree / ".out" / "html"
    if stamp.exists() and stamp.read_text() == commit and html.is_dir():
        say(f"Edition {name} is built already.")
        return html
    say(f"Edition {name}: taking the files of its tag …")
    _remove(tree)
    tree.mkdir(parents=True)
    with tarfile.open(fileobj=io.BytesIO(_git("archive", commit))) as files:
        files.extractall(tree, filter="data")
    if _edition(tree) != name:
        raise Trouble(
            f"The tag {TAG}{name} is on a commit whose edition is {_edition(tree)}: "
            "move the tag, or cut the edition first."
        )
    _share(tree)
    command = [sys.executable, "-m", "docs_build", "html"]
    if subprocess.call(command, cwd=tree):
        raise Trouble(f"Edition {name} could not be built; what is wrong stands above.")
    stamp.write_text(commit)
    return html


def _share(tree: Path) -> None:
    """Lend an edition our environment where its pins are ours, and the fetched runtime."""
    same = all(
        (tree / name).read_bytes() == (ROOT / name).read_bytes()
        for name in ("pyproject.toml", "docs_build/pins.txt")
    )
    if same and os.name != "nt":
        (tree / ".venv").symlink_to(bootstrap.VENV.resolve(), target_is_directory=True)
    fetched = OUT / "runtime"
    if fetched.is_dir():
        shutil.copytree(fetched, tree / ".out" / "runtime")


def _remove(tree: Path) -> None:
    if (tree / ".venv").is_symlink():
        (tree / ".venv").unlink()
    shutil.rmtree(tree, ignore_errors=True)


def _edition(tree: Path) -> str:
    text = (tree / "calc" / "__init__.py").read_text(encoding="utf-8")
    found = re.search(r'^EDITION = "(.*)"$', text, re.MULTILINE)
    return found[1] if found else "unnamed"


def _git(*arguments: str) -> bytes:
    try:
        done = subprocess.run(["git", *arguments], cwd=ROOT, capture_output=True, check=True)
    except FileNotFoundError:
        raise Trouble("Editions are built from git tags, and git was not found.") from None
    except subprocess.CalledProcessError as error:
        said = error.stderr.decode(errors="replace").strip() or "no message"
        raise Trouble(f"Editions are built from git tags; git said: {said}") from None
    return done.stdout


def cut(name: str) -> list[Path]:
    """Give the book the name of a new edition everywhere it stands; return the changed files.

    Raises
    ------
    Trouble
        for a name that is none or not newer, and where the page of editions says nothing of it
    """
    if not NAME.fullmatch(name):
        raise Trouble(f"“{name}” names no edition; allowed is {WORDS}.")
    old = _edition(ROOT)
    if _order(name) <= _order(old):
        raise Trouble(f"Edition {name} is not newer than this one, {old}.")
    page = ROOT / "handbook" / "reference" / "editions.md"
    if f"\n## {name}\n" not in page.read_text(encoding="utf-8"):
        raise Trouble(
            f"handbook/reference/editions.md has no heading “## {name}”: "
            "write first what is new for the reader."
        )
    places = {
        ROOT / "calc" / "__init__.py": (f'EDITION = "{old}"', f'EDITION = "{name}"'),
        **dict.fromkeys(
            (ROOT / "handbook").rglob("*.md"), (f'edition: "{old}"', f'edition: "{name}"')
        ),
        **dict.fromkeys(
            (ROOT / "handbook").rglob("*.ipynb"), (f'"edition": "{old}"', f'"edition": "{name}"')
        ),
    }
    changed = []
    for path, (before, after) in places.items():
        text = path.read_text(encoding="utf-8")
        if before in text:
            path.write_text(text.replace(before, after, 1), encoding="utf-8", newline="\n")
            changed.append(path)
    return changed

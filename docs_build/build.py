"""Builds of the book: the site (pages, phone app) and the training PDF."""

from __future__ import annotations

import hashlib
import re
import shutil
import subprocess
import sys
import time
from pathlib import Path

from calc import EDITION
from docs_build import editions
from docs_build.bootstrap import OUT, ROOT, Trouble, say
from docs_build.print import names

HANDBOOK = ROOT / "handbook"
HTML = OUT / "html"
PDF = OUT / "pdf"
DOCTREES = OUT / "doctrees"
STAMP = OUT / "built"
PDF_NAME = names.file_name(EDITION)
"""The trainee's copy of the whole book: the one that a phone keeps."""

TRAINER_NAME = names.file_name(EDITION, "trainer")
"""The trainer's copy: made when asked for, since it costs the site half a minute."""


def site() -> Path:
    """Build the whole site into ``.out/html`` and return that folder.

    Both builders share one set of doctrees, so the pages are read and run once. The pages come
    first: only the builder that reads a changed page knows that it must be written again, and the
    PDF is always set whole.
    """
    from docs_build.page import pack

    began, now = time.monotonic(), state()
    if _built() == now and (HTML / "sw.js").exists():
        say("Nothing has changed since the last build.")
        return HTML
    STAMP.unlink(missing_ok=True)
    _sphinx("html", HTML, DOCTREES)
    for stale in [*HTML.glob("*.pdf"), *PDF.glob("*.pdf"), *_without_source()]:
        # Of another edition, the trainer's copy of an older text, or a page that is gone.
        stale.unlink()
    made = pdf(doctrees=DOCTREES)
    shutil.copyfile(made, HTML / made.name)
    pack.runtime(HTML)
    pack.offline(HTML, EDITION)
    editions.alone(HTML, EDITION)
    STAMP.write_text(now, encoding="utf-8")
    say(f"Site ready after {time.monotonic() - began:.0f} s.")
    return HTML


def _without_source() -> list[Path]:
    """Return built pages whose source is gone: a phone must not keep them."""
    made = {path.relative_to(HANDBOOK).with_suffix("") for path in HANDBOOK.rglob("*")}
    own = {Path("genindex"), Path("search")}
    return [
        path
        for path in HTML.rglob("*.html")
        if path.relative_to(HTML).with_suffix("") not in made | own
    ]


def state() -> str:
    """Return a hash of everything the book is made from."""
    seen = hashlib.sha256(sys.version.encode())
    for tree in ("calc", "handbook", "docs_build", "demo_cases", "tests/published"):
        for path in sorted((ROOT / tree).rglob("*")):
            if path.is_file() and "__pycache__" not in path.parts:
                seen.update(path.relative_to(ROOT).as_posix().encode())
                seen.update(path.read_bytes())
    return seen.hexdigest()


def _built() -> str:
    return STAMP.read_text(encoding="utf-8") if STAMP.exists() else ""


def pdf(
    copy: str = "trainee",
    part: str = names.WHOLE,
    paper: str = "a4",
    doctrees: Path = OUT / "doctrees-pdf",
) -> Path:
    """Build the training PDF, whole or one part, for one of two readers; return its path."""
    told = {"copy": copy, "part": part, "paper": paper}
    settings = [f"training_{key}={value}" for key, value in told.items()]
    _sphinx("training", PDF, doctrees, *settings)
    return PDF / names.file_name(EDITION, **told)


def _sphinx(builder: str, folder: Path, doctrees: Path, *settings: str) -> None:
    say(f"Building the {'pages' if builder == 'html' else 'training PDF'} …")
    command = [sys.executable, "-m", "sphinx", "-b", builder, "-W", "--keep-going", "-q"]
    command += ["-d", str(doctrees)]
    for setting in settings:
        command += ["-D", setting]
    command += [str(HANDBOOK), str(folder)]
    done = subprocess.run(command, cwd=ROOT, capture_output=True, text=True, errors="replace")
    if done.returncode:
        # Sphinx warns of a page only when it reads it: the next build must read all of them again.
        shutil.rmtree(doctrees, ignore_errors=True)
        log = re.sub(r"\x1b\[[0-9;]*m", "", done.stderr or done.stdout)
        OUT.mkdir(exist_ok=True)
        (OUT / "sphinx.log").write_text(log, encoding="utf-8")
        signs = re.compile(r"(WARNING|ERROR|CRITICAL): ")
        warnings = [line for line in log.splitlines() if signs.search(line)]
        shown = "\n".join(line.replace(f"{ROOT}/", "") for line in (warnings or [log])[:12])
        raise Trouble(f"{shown}\nThe handbook has faults; the whole log is in .out/sphinx.log.")

"""Builds of the book: the site (pages, phone app) and the training PDF."""

from __future__ import annotations

import re
import shutil
import subprocess
import sys
import time
from pathlib import Path

from calc import EDITION
from docs_build.bootstrap import OUT, ROOT, Trouble, say

HANDBOOK = ROOT / "handbook"
HTML = OUT / "html"
PDF = OUT / "pdf"
DOCTREES = OUT / "doctrees"
PDF_NAME = f"field-handbook-{EDITION}.pdf"


def site() -> Path:
    """Build the whole site into ``.out/html`` and return that folder.

    The PDF comes first, since the front page offers it; both builders share one set of doctrees,
    so the pages are read and run once.
    """
    from docs_build.page import pack

    began = time.monotonic()
    book = pdf()
    _sphinx("html", HTML)
    shutil.copyfile(book, HTML / PDF_NAME)
    pack.runtime(HTML)
    pack.offline(HTML, EDITION)
    say(f"Site ready after {time.monotonic() - began:.0f} s.")
    return HTML


def pdf(paper: str = "a4") -> Path:
    """Build the training PDF and return its path."""
    _sphinx("training", PDF, f"training_paper={paper}")
    return PDF / PDF_NAME


def _sphinx(builder: str, folder: Path, *settings: str) -> None:
    say(f"Building the {'pages' if builder == 'html' else 'training PDF'} …")
    command = [sys.executable, "-m", "sphinx", "-b", builder, "-W", "--keep-going", "-q"]
    command += ["-d", str(DOCTREES)]
    for setting in settings:
        command += ["-D", setting]
    command += [str(HANDBOOK), str(folder)]
    done = subprocess.run(command, cwd=ROOT, capture_output=True, text=True, errors="replace")
    if done.returncode:
        log = re.sub(r"\x1b\[[0-9;]*m", "", done.stderr or done.stdout)
        OUT.mkdir(exist_ok=True)
        (OUT / "sphinx.log").write_text(log, encoding="utf-8")
        warnings = [line for line in log.splitlines() if "WARNING" in line or "ERROR" in line]
        shown = "\n".join(line.replace(f"{ROOT}/", "") for line in (warnings or [log])[:12])
        raise Trouble(f"{shown}\nThe handbook has faults; the whole log is in .out/sphinx.log.")

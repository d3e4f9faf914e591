"""The copies, parts and papers in which the book is printed, and what a file is called.

Standard library only: the command line must know them before anything is installed.
"""

from __future__ import annotations

import re
from pathlib import Path

COPIES = ("trainee", "trainer")
"""The trainee's copy asks; the trainer's answers, too, on the same page numbers."""

PAPERS = ("a4", "us-letter")

WHOLE = "all"
"""The part that is the whole book."""

FRONT_PAGE = Path(__file__).parent.parent.parent / "handbook" / "index.md"

_CONTENTS = re.compile(r"^:caption: *(.+?) *\n+([\w-]+)/", re.MULTILINE)


def parts() -> dict[str, str]:
    """Return the parts of the book: the folder of the first page of each, and its caption."""
    found = _CONTENTS.findall(FRONT_PAGE.read_text(encoding="utf-8"))
    return {folder: caption for caption, folder in found}


def file_name(edition: str, copy: str = "trainee", part: str = WHOLE, paper: str = "a4") -> str:
    """Return the name of the PDF; it says everything in which one differs from another."""
    return f"field-handbook-{edition}-{copy}-{part}-{paper}.pdf"

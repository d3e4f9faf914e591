"""How the tests build a book and read it."""

from __future__ import annotations

import re
import subprocess
import sys
from collections.abc import Iterator
from dataclasses import dataclass
from functools import cached_property
from pathlib import Path

from pypdf import PdfReader

from docs_build.bootstrap import ROOT

SAMPLE = Path(__file__).with_name("sample")


def sphinx(source: Path, out: Path, *more: str) -> subprocess.CompletedProcess[str]:
    """Run the builder the way the project does: every warning is an error."""
    command = [sys.executable, "-m", "sphinx", "-b", "training", "-W", "--keep-going", "-q"]
    return subprocess.run(
        [*command, *more, str(source), str(out)],
        cwd=ROOT,
        capture_output=True,
        text=True,
        check=False,
    )


@dataclass(frozen=True)
class Book:
    """A PDF, read once for all tests."""

    path: Path

    @cached_property
    def reader(self) -> PdfReader:
        return PdfReader(self.path)

    @cached_property
    def pages(self) -> list[str]:
        return [" ".join(page.extract_text().split()) for page in self.reader.pages]

    @property
    def text(self) -> str:
        return " ".join(self.pages)

    @cached_property
    def outline(self) -> list[tuple[int, str, int]]:
        """Depth, words and page (from 1) of every bookmark."""
        return list(self._outline(self.reader.outline, 0))

    def _outline(self, items: list[object], depth: int) -> Iterator[tuple[int, str, int]]:
        for item in items:
            if isinstance(item, list):
                yield from self._outline(item, depth + 1)
            else:
                page = self.reader.get_destination_page_number(item)  # type: ignore[arg-type]
                yield depth, plain(item.title), page + 1  # type: ignore[attr-defined]

    def opens(self, title: str) -> int:
        """Page (from 1) of the bookmark of that title."""
        return next(page for _, words, page in self.outline if words.endswith(title))


def plain(text: str) -> str:
    """The words without line ends."""
    return re.sub(r"\s+", " ", text).strip()

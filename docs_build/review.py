"""Which pages are past their review date: one rule, told after a build, never an error."""

from __future__ import annotations

import json
import re
from collections.abc import Iterator
from datetime import date, timedelta
from pathlib import Path

INTERVAL = timedelta(days=365)
"""So long a review lasts.

Our own choice: every page is read once between two seasons. A page that holds law, prices or
medical facts names an earlier day itself, as ``review_after`` in its front matter.
"""

_FRONT = re.compile(r"\A---\n(.*?)\n---\n", re.DOTALL)
_DAY = re.compile(r"^(reviewed|review_after): *[\"']?(\d{4}-\d\d-\d\d)", re.MULTILINE)


def past(handbook: Path, today: date) -> list[tuple[date, str]]:
    """Return the pages whose day has come, the longest overdue first: the day, and the page."""
    return sorted((day, page) for page, day in due(handbook) if day <= today)


def due(handbook: Path) -> Iterator[tuple[str, date]]:
    """Yield each page with the day from which it is to be reviewed again."""
    for path in sorted([*handbook.rglob("*.md"), *handbook.rglob("*.ipynb")]):
        days = {key: date.fromisoformat(day) for key, day in _DAY.findall(_front(path))}
        if "reviewed" in days:  # the build reports a page without one
            after = days.get("review_after", days["reviewed"] + INTERVAL)
            yield path.relative_to(handbook).with_suffix("").as_posix(), after


def _front(path: Path) -> str:
    """Return the front matter; that of a notebook stands in its metadata."""
    text = path.read_text(encoding="utf-8")
    if path.suffix == ".ipynb":
        metadata = json.loads(text)["metadata"]
        return "\n".join(f"{key}: {value}" for key, value in metadata.items())
    found = _FRONT.match(text)
    return found[1] if found else ""


def told(handbook: Path, today: date) -> str:
    """Return what a build says about reviews."""
    overdue = past(handbook, today)
    if not overdue:
        return "Nothing is past its review date."
    lines = [f"  {page}: since {day.isoformat()}" for day, page in overdue]
    return "\n".join(["Past their review date:", *lines])

"""Pages past their review date, by a clock that is set."""

from __future__ import annotations

from datetime import date, timedelta
from pathlib import Path

from docs_build import review
from docs_build.build import HANDBOOK


def page(folder: Path, name: str, *lines: str) -> None:
    body = ["# x", "reviewed: 1999-01-01"]
    folder.joinpath(name).write_text("\n".join(["---", *lines, "---", *body]))


def test_a_page_is_due_after_the_interval_or_on_the_day_it_names(tmp_path: Path) -> None:
    page(tmp_path, "text.md", "reviewed: 2026-01-10")
    page(tmp_path, "law.md", "reviewed: 2026-01-10", "review_after: 2026-07-10")
    page(tmp_path, "none.md", "status: draft")
    (tmp_path / "job.ipynb").write_text('{"metadata": {"reviewed": "2025-12-31"}, "cells": []}')
    end = date(2026, 1, 10) + review.INTERVAL
    assert review.past(tmp_path, date(2026, 7, 9)) == []
    assert review.past(tmp_path, date(2026, 7, 10)) == [(date(2026, 7, 10), "law")]
    assert [name for _, name in review.past(tmp_path, end - timedelta(1))] == ["law", "job"]
    assert [name for _, name in review.past(tmp_path, end)] == ["law", "job", "text"]


def test_what_a_build_says(tmp_path: Path) -> None:
    page(tmp_path, "law.md", "reviewed: 2026-01-10", "review_after: 2026-07-10")
    assert review.told(tmp_path, date(2026, 7, 9)) == "Nothing is past its review date."
    assert "law: since 2026-07-10" in review.told(tmp_path, date(2027, 1, 1))


def test_every_page_of_the_book_has_its_day() -> None:
    days = dict(review.due(HANDBOOK))
    pages = [*HANDBOOK.rglob("*.md"), *HANDBOOK.rglob("*.ipynb")]
    assert len(days) == len([each for each in pages if ".ipynb_checkpoints" not in each.parts])
    assert days["clients/time_and_price"] < days["method/how_many_left"], "prices change sooner"

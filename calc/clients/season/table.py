"""The season: many jobs as rows, summaries, a list for a spreadsheet."""

from __future__ import annotations

import datetime
import math
import statistics
from collections.abc import Iterable, Mapping, Sequence
from typing import Any

from calc.clients import job as record
from calc.clients.job import Job

COLUMNS = (
    "id", "date", "week", "species", "place", "height", "outcome", "adults", "queens", "males",
    "cells", "minutes", "on_site", "stings", "price", "currency",
)  # fmt: skip
"""Columns of the season's table: no client, no place name, no health."""

GROUPS = ("species", "place", "week", "outcome", "currency")
"""Columns that jobs can be grouped by."""


def rows(jobs: Iterable[Job]) -> list[dict[str, Any]]:
    """Return one row a job, by date; jobs without a date stand last."""
    made = [_row(each) for each in jobs]
    return sorted(made, key=lambda row: (row["date"] is None, row["date"] or "", row["id"]))


def _row(job: Job) -> dict[str, Any]:
    date = job.get("visit.date")
    return {
        "id": job.get("id"),
        "date": date,
        "week": None if date is None else datetime.date.fromisoformat(date).isocalendar().week,
        "species": record.label("animal.species", job.get("animal.species", "unknown")),
        "place": record.label("place.kind", job.get("place.kind", "unknown")),
        "height": job.get("place.height"),
        "outcome": record.label("result.outcome", job.get("result.outcome", "open")),
        "adults": job.get("result.adults", job.get("shared.adults_caught")),
        "queens": job.get("result.queens"),
        "males": job.get("result.males"),
        "cells": job.get("result.cells"),
        "minutes": record.minutes(job) or None,
        "on_site": _on_site(job) or None,
        "stings": record.stings(job),
        "price": job.get("price.final"),
        "currency": job.get("price.currency"),
    }


def _on_site(job: Job) -> float:
    steps = job.get("steps", [])
    return float(sum(step.get("minutes", 0) for step in steps if step["step"] != "travel"))


def summarise(table: Sequence[Mapping[str, Any]], by: str) -> list[dict[str, Any]]:
    """Return one row a group, the largest group first; weeks in their order.

    Parameters
    ----------
    table : rows of :func:`rows`
    by : one of ``GROUPS``

    Returns
    -------
    ``group``, ``jobs``, ``adults`` (sum), ``median_adults``, ``median_minutes``, ``minutes``
    (sum), ``stings`` (sum), ``price`` (sum, None where currencies are mixed)
    """
    if by not in GROUPS:
        raise ValueError(f"jobs cannot be grouped by {by}")
    groups: dict[Any, list[Mapping[str, Any]]] = {}
    for row in table:
        groups.setdefault(row[by], []).append(row)
    made = [_group(name, members) for name, members in groups.items()]
    if by == "week":
        return sorted(made, key=lambda row: (row["group"] is None, row["group"] or 0))
    return sorted(made, key=lambda row: (-row["jobs"], str(row["group"])))


def _group(name: Any, members: Sequence[Mapping[str, Any]]) -> dict[str, Any]:
    currencies = {row["currency"] for row in members if row["price"] is not None}
    return {
        "group": name,
        "jobs": len(members),
        "adults": _sum(members, "adults"),
        "median_adults": _median(members, "adults"),
        "minutes": _sum(members, "minutes"),
        "median_minutes": _median(members, "minutes"),
        "stings": _sum(members, "stings"),
        "price": _sum(members, "price") if len(currencies) <= 1 else None,
    }


def weekly(table: Sequence[Mapping[str, Any]], column: str = "") -> tuple[int, list[float]]:
    """Return the first ISO week and the counts of each week from it to the last, gaps as 0.

    ``column`` is summed; empty counts jobs. Rows without a date are left out.
    """
    dated = [row for row in table if row["week"] is not None]
    if not dated:
        return 0, []
    first, last = min(row["week"] for row in dated), max(row["week"] for row in dated)
    made = [0.0] * (last - first + 1)
    for row in dated:
        made[row["week"] - first] += (row[column] or 0) if column else 1
    return first, made


def step_minutes(jobs: Iterable[Job]) -> dict[str, list[float]]:
    """Return the minutes of each step over all jobs, for planning the next one."""
    made: dict[str, list[float]] = {}
    for job in jobs:
        for step in job.get("steps", []):
            if "minutes" in step:
                made.setdefault(step["step"], []).append(float(step["minutes"]))
    return dict(sorted(made.items()))


def csv_text(table: Iterable[Mapping[str, Any]], columns: Sequence[str] = COLUMNS) -> str:
    """Return rows as CSV text after RFC 4180: commas, CRLF, quotes where they are needed.

    A text that a spreadsheet would take for a formula gets an apostrophe in front.
    """
    lines = [columns, *([row.get(name) for name in columns] for row in table)]
    return "".join(",".join(_cell(each) for each in line) + "\r\n" for line in lines)


def _cell(value: Any) -> str:
    if value is None:
        return ""
    if isinstance(value, float):
        return f"{value:g}" if math.isfinite(value) else ""
    text = str(value)
    if (
        isinstance(value, str)
        and text[:1] in {"=", "+", "-", "@", "\t", "\r"}
        and not _number(text)
    ):
        text = f"'{text}"
    if any(sign in text for sign in ',"\r\n'):
        text = '"' + text.replace('"', '""') + '"'
    return text


def _number(text: str) -> bool:
    try:
        float(text)
    except ValueError:
        return False
    return True


def _sum(members: Sequence[Mapping[str, Any]], column: str) -> float | None:
    known = [row[column] for row in members if row[column] is not None]
    return sum(known) if known else None


def _median(members: Sequence[Mapping[str, Any]], column: str) -> float | None:
    known = [row[column] for row in members if row[column] is not None]
    return statistics.median(known) if known else None

"""All jobs on a device as a season: the summary as HTML, and two files to save."""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from html import escape
from typing import Any

from calc.clients import job, season
from calc.clients.job import Job
from calc.clients.season import records
from calc.errors import InputError

Row = Mapping[str, Any]

PARTS = (("species", "Animal"), ("week", "Week"), ("place", "Place"), ("outcome", "Outcome"))
"""What the jobs are grouped by, with the head of the first column."""

UNDATED = "Without a date"
NUMBERS = ("jobs", "adults", "minutes", "stings")
HEADS = ("Jobs", "Adults", "Minutes", "Stings")


def told(texts: Iterable[str]) -> dict[str, Any]:
    """Return the summary of all stored jobs and the files made from them.

    Parameters
    ----------
    texts : the jobs as JSON texts; one that cannot be read is counted and left out

    Returns
    -------
    ``html``; ``files``, by kind, each with ``name``, ``type`` and ``text``. No client, no health
    and no exact place is in any of them.
    """
    jobs, unread = _read(texts)
    table = season.rows(jobs)
    return {
        "html": _html(table, unread),
        "files": {
            "rows": _file("season", table, season.csv_text(table)),
            "records": _file("occurrences", table, records.occurrence_csv(jobs)),
        },
    }


def _read(texts: Iterable[str]) -> tuple[list[Job], int]:
    jobs, unread = [], 0
    for text in texts:
        try:
            jobs.append(job.read(text))
        except InputError:
            unread += 1
    return jobs, unread


def _file(name: str, table: Sequence[Row], text: str) -> dict[str, str]:
    years = sorted({row["date"][:4] for row in table if row["date"]})
    span = "-".join(dict.fromkeys((years[0], years[-1]))) if years else "undated"
    return {"name": f"{name}-{span}.csv", "type": "text/csv", "text": text}


def _html(table: Sequence[Row], unread: int) -> str:
    """Return the summary, the newest year on top: a week's number means one week only."""
    made = []
    if unread:
        made.append(f"<p>Left out, as they cannot be read: {unread}.</p>")
    if not table:
        made.append("<p>No job on this phone yet.</p>")
    years = sorted({row["date"][:4] if row["date"] else "" for row in table}, reverse=True)
    for year in years:
        members = [row for row in table if (row["date"] or "")[:4] == year]
        made.append(f'<p class="job-year">{year or UNDATED}</p>{_total(members)}')
        made += [_part(members, by, head, year or UNDATED) for by, head in PARTS]
    return "".join(made)


def _total(members: Sequence[Row]) -> str:
    stings = sum(row["stings"] for row in members)
    caught = [row["adults"] for row in members if row["adults"] is not None]
    minutes = sum(row["minutes"] or 0 for row in members)
    facts = [f"Jobs: {len(members)}"]
    if caught:
        facts.append(f"adults: {sum(caught)}, counted in {len(caught)}")
    facts.append(f"hours: {minutes / 60:.1f}")
    facts.append(f"stings: {stings}")
    facts += [
        f"{escape(each['group'] or 'no currency')}: {each['price']:.2f}"
        for each in season.summarise(members, "currency")
        if each["price"] is not None
    ]
    return f"<p>{'; '.join(facts)}.</p>"


def _part(members: Sequence[Row], by: str, head: str, year: str) -> str:
    currencies = {row["currency"] for row in members if row["price"] is not None}
    only = f" {currencies.pop()}" if len(currencies) == 1 and None not in currencies else ""
    heads = (head, *HEADS, f"Price{only}")
    cells = "".join(f'<th scope="col">{escape(each)}</th>' for each in heads)
    rows = "".join(_row(each) for each in season.summarise(members, by))
    return (
        f'<div class="job-scroll" role="group" tabindex="0" aria-label="{year}: {head}">'
        f"<table><thead><tr>{cells}</tr></thead><tbody>{rows}</tbody></table></div>"
    )


def _row(group: Row) -> str:
    name = "none" if group["group"] is None else str(group["group"])
    cells = [_cell(group[each], 0) for each in NUMBERS] + [_cell(group["price"], 2)]
    return f'<tr><th scope="row">{escape(name)}</th>{"".join(cells)}</tr>'


def _cell(value: float | None, digits: int) -> str:
    """Return a number, or a dash where there is none or currencies are mixed."""
    return f"<td>{'–' if value is None else f'{value:.{digits}f}'}</td>"

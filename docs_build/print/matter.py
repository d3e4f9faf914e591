"""What the book has before and after its chapters: title page, answers, index."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from datetime import date
from typing import Any

from docs_build.print.writer import markup
from docs_build.print.writer.base import Answer

STATUS = {"draft": "draft, not yet checked", "checked": "checked against its sources"}
"""What a page's status says under the title of its chapter."""


@dataclass(frozen=True, slots=True)
class Title:
    """What stands on the title page and in the running heads."""

    title: str
    subtitle: str
    edition: str
    reviewed: str
    paper: str

    def markup(self) -> str:
        """Return the call that sets up the book."""
        return (
            '#import "style.typ": *\n'
            f"#show: book.with(title: {markup.string(self.title)}, "
            f"subtitle: {markup.string(self.subtitle)}, edition: {markup.string(self.edition)}, "
            f"reviewed: {markup.string(self.reviewed)}, paper: {markup.string(self.paper)})\n\n"
        )


def dates(metadata: Mapping[str, Mapping[str, Any]], docnames: Sequence[str]) -> list[date]:
    """Return the days on which the pages of the book were reviewed, in order."""
    found = set()
    for docname in docnames:
        try:
            found.add(date.fromisoformat(str(metadata.get(docname, {}).get("reviewed", ""))))
        except ValueError:
            continue  # the extension of the pages reports a front matter without a date
    return sorted(found)


def reviewed(days: Sequence[date]) -> str:
    """Return the words about review for the title page."""
    if not days:
        return "Review: no date given"
    if len(days) == 1:
        return f"Pages reviewed {days[0].isoformat()}"
    return f"Pages reviewed between {days[0].isoformat()} and {days[-1].isoformat()}"


def standing(meta: Mapping[str, Any]) -> str:
    """Return the line under the title of a chapter: when reviewed, and how far it is checked."""
    told = []
    if meta.get("reviewed"):
        told.append(f"Reviewed {meta['reviewed']}")
    if meta.get("status"):
        told.append(STATUS.get(str(meta["status"]), str(meta["status"])))
    return " · ".join(told)


def answers(given: Sequence[Answer], exercises: Mapping[str, int]) -> str:
    """Return the chapter of answers, in the order of their exercises, with the way back."""
    made = [
        f"#answer({each.number}, {markup.string(f'answer:{each.ident}')}, "
        f"{markup.string(f'exercise:{each.ident}')})[{each.body}];\n\n"
        for each in sorted(given, key=lambda each: each.number)
        if each.ident in exercises
    ]
    if not made:
        return ""
    return '#chapter(none, 1, "answers")[Answers][];\n\n' + "".join(made)


def index(groups: Sequence[tuple[str, Any]], keys: Any) -> str:
    """Return the index; ``keys`` turns the address of an entry into a label, or None."""
    made = []
    for letter, entries in groups:
        lines = "".join(_entry(name, entry, keys) for name, entry in entries)
        made.append(f"#index-letter[{markup.text(letter)}];\n{lines}")
    if not made:
        return ""
    return '#chapter(none, 1, "index")[Index][];\n#columns(2)[\n' + "\n".join(made) + "];\n\n"


def _entry(name: str, entry: Any, keys: Any) -> str:
    targets, below, _ = entry
    line = _line(name, targets, keys, 0)
    return line + "".join(_line(sub, subtargets, keys, 1) for sub, subtargets in below)


def _line(name: str, targets: Sequence[tuple[str, Any]], keys: Any, depth: int) -> str:
    labels = [markup.string(key) for _, uri in targets if uri and (key := keys(uri))]
    listed = "".join(f"{label}, " for label in labels)
    return f"#index-entry({depth}, ({listed}))[{markup.text(name)}];\n"

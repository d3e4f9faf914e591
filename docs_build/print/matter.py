"""What the book has before and after its chapters: title page, answers, index."""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass
from datetime import date
from typing import Any

from docs_build.print.writer import markup
from docs_build.print.writer.base import Answer, Note

Heads = Callable[[str], str]
"""Writes the heading that names the chapter of a page and leads to it."""

STATUS = {"draft": "draft, not yet checked", "checked": "checked against its sources"}
"""What a page's status says under the title of its chapter."""


@dataclass(frozen=True, slots=True)
class Title:
    """What stands on the title page and in the running heads."""

    title: str
    subtitle: str
    edition: str
    reviewed: str
    copy: str
    part: str
    paper: str

    def markup(self) -> str:
        """Return the call that sets up the book."""
        return (
            '#import "style.typ": *\n'
            f"#show: book.with(title: {markup.string(self.title)}, "
            f"subtitle: {markup.string(self.subtitle)}, edition: {markup.string(self.edition)}, "
            f"reviewed: {markup.string(self.reviewed)}, copy: {markup.string(self.copy)}, "
            f"part-name: {markup.string(self.part)}, paper: {markup.string(self.paper)})\n\n"
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


def answers(given: Sequence[Answer], exercises: Mapping[str, int], heads: Heads) -> str:
    """Return the chapter of answers, in the order of their exercises, with the way back."""
    ordered = sorted(given, key=lambda each: each.number)
    made, docname = [], ""
    for each in ordered:
        if each.ident not in exercises:
            continue
        if each.docname != docname:
            docname = each.docname
            made.append(heads(docname))
        made.append(
            f"#answer({each.number}, {markup.string(f'answer:{each.ident}')}, "
            f"{markup.string(f'exercise:{each.ident}')})[{each.body}];\n\n"
        )
    return '#chapter(none, 2, "answers")[Answers][];\n\n' + "".join(made) if made else ""


def notes(given: Sequence[Note], heads: Heads) -> str:
    """Return the chapter of notes for the trainer, each under the chapter it is about."""
    made = "".join(heads(each.docname) + f"{each.body}\n\n" for each in given)
    return f'#chapter(none, 2, "trainer-notes")[Notes for the trainer][];\n\n{made}' if made else ""


def index(groups: Sequence[tuple[str, Any]], keys: Any) -> str:
    """Return the index; ``keys`` turns the address of an entry into a label, or None."""
    made = []
    for letter, entries in groups:
        if lines := "".join(_entry(name, entry, keys) for name, entry in entries):
            made.append(f"#index-letter[{markup.text(letter)}];\n{lines}")
    if not made:
        return ""
    return '#chapter(none, 1, "index")[Index][];\n#columns(2)[\n' + "\n".join(made) + "];\n\n"


def _entry(name: str, entry: Any, keys: Any) -> str:
    targets, below, _ = entry
    own = _labels(targets, keys)
    lines = [(sub, _labels(subtargets, keys)) for sub, subtargets in below]
    lines = [(sub, labels) for sub, labels in lines if labels]
    if not own and not lines:  # it stands in another part
        return ""
    return _line(name, own, 0) + "".join(_line(sub, labels, 1) for sub, labels in lines)


def _labels(targets: Sequence[tuple[str, Any]], keys: Any) -> list[str]:
    return [markup.string(key) for _, uri in targets if uri and (key := keys(uri))]


def _line(name: str, labels: Sequence[str], depth: int) -> str:
    listed = "".join(f"{label}, " for label in labels)
    return f"#index-entry({depth}, ({listed}))[{markup.text(name)}];\n"

"""The walk over the doctree: dispatch by node class, labels, references, warnings."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Mapping
from dataclasses import dataclass, field
from typing import Any

from docutils import nodes
from sphinx.util import logging

from docs_build.print.figures import Figures
from docs_build.print.writer import markup

log = logging.getLogger(__name__)

WARNING = "training"
"""Type of every warning of this writer; the subtype says which kind."""


@dataclass(frozen=True, slots=True)
class Answer:
    """A finished answer, kept for the trainer's pages at the back."""

    ident: str
    number: int
    body: str
    docname: str = ""


@dataclass(frozen=True, slots=True)
class Note:
    """A finished note for the trainer, kept for the back."""

    docname: str
    body: str


@dataclass(slots=True)
class Shared:
    """What the writer knows about the whole book while it walks over it."""

    figures: Figures
    images: Mapping[str, str] = field(default_factory=dict)
    aliases: dict[str, str] = field(default_factory=dict)
    footnotes: dict[str, nodes.Element] = field(default_factory=dict)
    given: set[str] = field(default_factory=set)
    asked: dict[str, Any] = field(default_factory=dict)
    answers: list[Answer] = field(default_factory=list)
    notes: list[Note] = field(default_factory=list)
    elsewhere: dict[str, tuple[str, str]] = field(default_factory=dict)
    trainer: bool = True
    exercises: dict[str, int] = field(default_factory=dict)
    show_code: bool = False
    text_width: float = 160.0


class Base:
    """Renders one node after the other to Typst markup.

    A method ``do_NAME`` renders the nodes of class NAME. A class without one, nor one of its
    parents, is reported and its children are rendered.
    """

    def __init__(self, shared: Shared, docname: str = "") -> None:
        self.shared = shared
        self.docname = docname
        self.level = self.chapter_level = 1
        self.in_table = 0
        self.in_heading = 0

    # -- walking

    def render(self, node: nodes.Node) -> str:
        """Return the markup of a node, with the places that links to it lead to."""
        if isinstance(node, nodes.Text):
            return markup.text(node.astext())
        assert isinstance(node, nodes.Element)
        made = self._method(node)(node)
        return self.anchors(node) + made

    def _method(self, node: nodes.Element) -> Callable[[Any], str]:
        for kind in type(node).__mro__:
            method = getattr(self, f"do_{kind.__name__}", None)
            if method is not None:
                return method  # type: ignore[no-any-return]
        return self.unknown

    def unknown(self, node: nodes.Element) -> str:
        """Report a node that this writer does not know, and render what is in it."""
        self.warn(f"no print form for node {type(node).__name__}", "node", node)
        return self.children(node)

    def children(self, node: nodes.Element) -> str:
        """Return the markup of all children."""
        return "".join(map(self.render, node.children))

    def inside(self, node: nodes.Element) -> str:
        """Return the markup of all children as the content of a block."""
        return self.children(node).strip("\n")

    def each(self, found: Iterable[nodes.Node]) -> str:
        """Return the markup of some nodes."""
        return "".join(map(self.render, found))

    def warn(self, message: str, subtype: str, node: nodes.Node | None = None) -> None:
        """Report what a reader of the book would miss."""
        where = node if node is not None and node.source else self.docname or None
        log.warning(message, type=WARNING, subtype=subtype, location=where)

    # -- labels

    def key(self, ident: str, docname: str | None = None) -> str:
        """Return the label of an id, which is unique only within its document."""
        key = f"{self.docname if docname is None else docname}#{ident}"
        return self.shared.aliases.get(key, key)

    def give(self, key: str) -> str | None:
        """Note that a label is set here; None where it is set already."""
        if key in self.shared.given:
            return None
        self.shared.given.add(key)
        return key

    def anchors(self, node: nodes.Element) -> str:
        """Return anchors for those ids of a node that its own markup has not set."""
        keys = (self.key(ident) for ident in node.get("ids", ()))
        return "".join(markup.anchor(key) for key in keys if self.give(key))

    def own_label(self, node: nodes.Element) -> str | None:
        """Return the label that the node's markup sets itself; its other ids lead there too."""
        ids = node.get("ids", [])
        if not ids:
            return None
        first = self.key(ids[0])
        for other in ids[1:]:
            self.shared.aliases.setdefault(f"{self.docname}#{other}", first)
        return self.give(first)

    def to(self, key: str, content: str, page: bool, node: nodes.Node) -> str:
        """Return a link inside the book and note that its label must exist in the end.

        What stands in another book is told in words, where a page would be told here.
        """
        told = self.shared.elsewhere.get(key.partition("#")[0])
        if told and page:
            name, where = told
            same = node.astext().strip().casefold() == name.casefold()
            return content + markup.text(f" ({where})" if same else f" (“{name}”, {where})")
        self.shared.asked.setdefault(key, (self.docname, node))
        return markup.link(key, content, page)

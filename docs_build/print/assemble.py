"""The book's order: parts and chapters out of the contents of the front page."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass, field, replace
from typing import Any

from docutils import nodes
from sphinx import addnodes
from sphinx.builders import Builder
from sphinx.util.nodes import inline_all_toctrees

from docs_build.print import names

PART = "training_part"
"""Attribute of the node that stands where a table of contents stood: its caption."""


@dataclass(frozen=True, slots=True)
class Chapter:
    """One document."""

    docname: str
    nodes: list[nodes.Node]


@dataclass(frozen=True, slots=True)
class Part:
    """Chapters under one caption; without a caption they stand for themselves."""

    title: str
    chapters: list[Chapter] = field(default_factory=list)
    docname: str = ""
    opening: list[nodes.Node] = field(default_factory=list)

    @property
    def key(self) -> str:
        """The folder of its pages, by which a part is asked for."""
        first = self.docname or self.chapters[0].docname
        return first.partition("/")[0]


def assemble(builder: Builder) -> nodes.document:
    """Return one tree of all documents, with the captions of the front page's contents kept."""
    root = builder.config.root_doc
    tree = builder.env.get_doctree(root)
    for toctree in list(tree.findall(addnodes.toctree)):
        held = nodes.compound(**{PART: toctree.get("caption") or ""})
        toctree.replace_self(held)
        held += toctree
    tree = inline_all_toctrees(builder, {root}, root, tree, str, [root])
    tree["docname"] = root
    builder.env.resolve_references(tree, root, builder)
    return tree


def parts(tree: nodes.document) -> list[Part]:
    """Return the parts of the assembled tree, in order."""
    found: list[Part] = []
    for held in tree.findall(lambda n: isinstance(n, nodes.compound) and PART in n):
        assert isinstance(held, nodes.Element)
        loose: list[Chapter] = []
        for file in held.children:
            assert isinstance(file, addnodes.start_of_file)
            nested = list(_nested(file))
            if nested and not held[PART]:
                if loose:
                    found.append(Part("", loose))
                    loose = []
                found.append(_part_of_document(file, nested))
            else:
                loose.append(Chapter(file["docname"], file.children))
        if loose:
            found.append(Part(held[PART], loose))
    return found


Metadata = Mapping[str, Mapping[str, Any]]


def printed(found: list[Part], metadata: Metadata) -> list[Part]:
    """Leave out what stands elsewhere: pages for the screen, and those for the trainer alone.

    The front matter says so: ``print: false``, ``copy: trainer``.
    """
    kept = []
    for part in found:
        chapters = [
            chapter
            for chapter in part.chapters
            if _on_paper(chapter, metadata) and not _for_trainer(chapter, metadata)
        ]
        if chapters or part.opening:
            kept.append(replace(part, chapters=chapters))
    return kept


def for_trainer(found: list[Part], metadata: Metadata) -> list[Chapter]:
    """Return the pages that only the trainer's copy has, in order."""
    chapters = [chapter for part in found for chapter in part.chapters]
    return [each for each in chapters if _for_trainer(each, metadata)]


def _on_paper(chapter: Chapter, metadata: Metadata) -> bool:
    return str(metadata.get(chapter.docname, {}).get("print", "")).lower() != "false"


def _for_trainer(chapter: Chapter, metadata: Metadata) -> bool:
    return str(metadata.get(chapter.docname, {}).get("copy", "")) == names.COPIES[1]


def title_of(chapter: Chapter) -> str:
    """Return the words of a chapter's title."""
    for node in chapter.nodes:
        for title in node.findall(nodes.title):
            return title.astext()
    return chapter.docname


def _part_of_document(file: nodes.Element, nested: list[nodes.Element]) -> Part:
    """Make a part of a document that holds others: its own text opens the part."""
    title = next(iter(file.findall(nodes.title)), None)
    for inner in nested:
        inner.parent.remove(inner)
    return Part(
        title.astext() if title is not None else file["docname"],
        [Chapter(inner["docname"], inner.children) for inner in nested],
        file["docname"],
        file.children,
    )


def _nested(file: nodes.Element) -> Iterator[nodes.Element]:
    """Yield the documents directly below a document."""
    for child in file.children:
        if isinstance(child, addnodes.start_of_file):
            yield child
        elif isinstance(child, nodes.Element):
            yield from _nested(child)


def front(tree: nodes.document) -> list[nodes.Node]:
    """Return what the front page has for paper.

    The way by task that opens the site is a matter of the screen: the contents stand for it here.
    Cautions, and what the page marks with the class ``print-front``, go into the book.
    """
    chosen: list[nodes.Node] = []

    def walk(node: nodes.Node) -> None:
        if isinstance(node, addnodes.start_of_file) or not isinstance(node, nodes.Element):
            return
        if isinstance(node, nodes.Admonition) or "print-front" in node.get("classes", ()):
            chosen.append(node)
            return
        for child in node.children:
            walk(child)

    walk(tree)
    return chosen


def documents(tree: nodes.document) -> Iterator[tuple[str, nodes.Element]]:
    """Yield every element of the tree with the name of the document it came from."""

    def walk(node: nodes.Element, docname: str) -> Iterator[tuple[str, nodes.Element]]:
        yield docname, node
        for child in node.children:
            if isinstance(child, addnodes.start_of_file):
                yield from walk(child, child["docname"])
            elif isinstance(child, nodes.Element):
                yield from walk(child, docname)

    yield from walk(tree, tree["docname"])

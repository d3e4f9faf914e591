"""Sources in a page: the short citation with its mark, and the bibliography."""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence

from docutils import nodes
from sphinx import addnodes
from sphinx.application import Sphinx
from sphinx.domains.std import StandardDomain
from sphinx.util.docutils import SphinxDirective, SphinxRole

from calc.sources import KINDS, Source, bibliography, source
from docs_build.sphinx_ext.nodes import calculator

SOURCES = "reference/sources"
"""The page that holds all of them."""


def cite(key: str, where: str = "") -> nodes.Node:
    """Return the short citation of a source, linked to its entry, with its mark if it needs one."""
    return addnodes.pending_xref(
        "",
        nodes.inline("", f"({source(key).cited(where)})"),
        refdomain="std",
        reftype="ref",
        refexplicit=True,
        reftarget=f"source-{key}",
        refwarn=True,
    )


class SourceRole(SphinxRole):
    """``{source}`key``` or ``{source}`key; page or table```."""

    def run(self) -> tuple[list[nodes.Node], list[nodes.system_message]]:
        """Return the citation."""
        key, _, where = (part.strip() for part in self.text.partition(";"))
        try:
            link = cite(key, where)
        except LookupError as error:
            message = self.inliner.reporter.error(str(error.args[0]), line=self.lineno)
            return [self.inliner.problematic(self.rawtext, self.rawtext, message)], [message]
        link["refdoc"] = self.env.current_document.docname
        return [link], []


class BibliographyDirective(SphinxDirective):
    """All sources, by strength and key, each an anchor that citations lead to."""

    def run(self) -> list[nodes.Node]:
        """Return how many there are of each kind, and one list a kind."""
        from docs_build.sphinx_ext.calculators import note_calc

        note_calc(self)
        domain = self.env.domains["std"]
        assert isinstance(domain, StandardDomain)
        docname = self.env.current_document.docname
        for each in bibliography().values():
            ident = f"source-{each.key}"
            domain.labels[ident] = (docname, ident, each.short)
            domain.anonlabels[ident] = (docname, ident)
        how_many = nodes.paragraph("", f"{counted(by_kind(bibliography()))}.".capitalize())
        return [how_many, *entries(bibliography())]


def entries(keys: Iterable[str]) -> list[nodes.Node]:
    """Return the entries of these keys, one list a kind, each with the place it is cited by."""
    made: list[nodes.Node] = []
    for kind, found in by_kind(keys).items():
        mark = KINDS[kind]
        made.append(nodes.rubric("", f"{mark[0].upper()}{mark[1:]}"))
        listed = nodes.bullet_list(classes=["bibliography"])
        for each in found:
            text = each.text + (f" {each.where}." if each.where else "")
            listed += nodes.list_item("", nodes.paragraph("", text), ids=[f"source-{each.key}"])
        made.append(listed)
    return made


def by_kind(keys: Iterable[str]) -> dict[str, list[Source]]:
    """Return the sources of these keys by their strength, the strongest kind first."""
    found = [source(key) for key in sorted(set(keys))]
    kinds = {kind: [each for each in found if each.kind == kind] for kind in KINDS}
    return {kind: each for kind, each in kinds.items() if each}


def counted(kinds: Mapping[str, Sequence[Source]]) -> str:
    """Return how many sources of each strength there are, in words."""
    return "; ".join(f"{KINDS[kind]} {len(found)}" for kind, found in kinds.items())


def cited(found: Iterable[nodes.Node]) -> set[str]:
    """Return the keys of all sources that text, tables and calculators of a page name."""
    keys: set[str] = set()
    for node in found:
        for link in node.findall(nodes.reference):
            target = link.get("refid", "") or link.get("refuri", "").partition("#")[2]
            if target.startswith("source-"):
                keys.add(target.removeprefix("source-"))
        for placed in node.findall(calculator):
            keys |= {each["key"] for each in placed["result"]["sources"]}
    return keys


def _mark_refdoc(app: Sphinx, doctree: nodes.document) -> None:
    for link in doctree.findall(addnodes.pending_xref):
        link.setdefault("refdoc", app.env.current_document.docname)


def _class_of_citations(app: Sphinx, doctree: nodes.document, docname: str) -> None:
    """Give resolved citations their class back: the reference resolver writes them anew."""
    for link in doctree.findall(nodes.reference):
        target = link.get("refid", "") or link.get("refuri", "").partition("#")[2]
        if target.startswith("source-"):
            link["classes"].append("source")
            link[:] = [nodes.Text(link.astext())]  # a box of its own is bytes on each phone


def setup(app: Sphinx) -> None:
    """Register role and directive."""
    app.add_role("source", SourceRole())
    app.add_directive("bibliography", BibliographyDirective)
    app.connect("doctree-read", _mark_refdoc)
    app.connect("doctree-resolved", _class_of_citations)

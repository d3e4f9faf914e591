"""Sources in a page: the short citation with its mark, and the bibliography."""

from __future__ import annotations

from docutils import nodes
from sphinx import addnodes
from sphinx.application import Sphinx
from sphinx.domains.std import StandardDomain
from sphinx.util.docutils import SphinxDirective, SphinxRole

from calc.sources import KINDS, bibliography, source


def cite(key: str, where: str = "") -> nodes.Node:
    """Return the short citation of a source, linked to its entry, with its mark if it is weak."""
    entry = source(key)
    text = ", ".join(filter(None, (entry.short, where or entry.where)))
    if entry.kind not in {"published", "common-practice"} and entry.short != entry.mark:
        text += f" – {entry.mark}"
    return addnodes.pending_xref(
        "",
        nodes.inline("", f"({text})"),
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
        """Return one list a kind."""
        from docs_build.sphinx_ext.calculators import note_calc

        note_calc(self)
        domain = self.env.domains["std"]
        assert isinstance(domain, StandardDomain)
        made: list[nodes.Node] = []
        for kind, mark in KINDS.items():
            entries = [each for each in bibliography().values() if each.kind == kind]
            if not entries:
                continue
            made.append(nodes.rubric("", f"{mark[0].upper()}{mark[1:]}"))
            listed = nodes.bullet_list(classes=["bibliography"])
            for each in entries:
                ident = f"source-{each.key}"
                text = each.text + (f" {each.where}." if each.where else "")
                listed += nodes.list_item("", nodes.paragraph("", text), ids=[ident])
                docname = self.env.current_document.docname
                domain.labels[ident] = (docname, ident, each.short)
                domain.anonlabels[ident] = (docname, ident)
            made.append(listed)
        return made


def _mark_refdoc(app: Sphinx, doctree: nodes.document) -> None:
    for link in doctree.findall(addnodes.pending_xref):
        link.setdefault("refdoc", app.env.current_document.docname)


def _class_of_citations(app: Sphinx, doctree: nodes.document, docname: str) -> None:
    """Give resolved citations their class back: the reference resolver writes them anew."""
    for link in doctree.findall(nodes.reference):
        target = link.get("refid", "") or link.get("refuri", "").partition("#")[2]
        if target.startswith("source-"):
            link["classes"].append("source")


def setup(app: Sphinx) -> None:
    """Register role and directive."""
    app.add_role("source", SourceRole())
    app.add_directive("bibliography", BibliographyDirective)
    app.connect("doctree-read", _mark_refdoc)
    app.connect("doctree-resolved", _class_of_citations)

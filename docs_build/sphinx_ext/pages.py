"""Front matter of a page: checked when it is read, shown at its foot."""

from __future__ import annotations

import json
import re
from collections.abc import Iterable
from datetime import date
from html import escape
from typing import Any

from docutils import nodes
from sphinx.application import Sphinx
from sphinx.domains.index import IndexDomain
from sphinx.locale import admonitionlabels
from sphinx.util import logging
from sphinx.util.docutils import SphinxDirective, SphinxRole

from calc import EDITION
from calc.declare import WORDS
from calc.sources import KINDS
from docs_build.build import PDF_NAME
from docs_build.page.jobs_html import sheet_html
from docs_build.page.photos_html import kinds, photos_html
from docs_build.page.settings_html import settings_html
from docs_build.page.tally_html import paper_text, tally_html
from docs_build.print import names
from docs_build.server import CSP
from docs_build.sphinx_ext.calculators import note_calc, placed
from docs_build.sphinx_ext.nodes import ADMONITIONS
from docs_build.sphinx_ext.sources import SOURCES, by_kind, cited, counted

log = logging.getLogger(__name__)

REQUIRED = ("edition", "reviewed", "status")
# A wide table scrolls in its own box; the page itself never scrolls sideways.
TABLE = re.compile(r'<table class="[^"]*docutils.*?</table>', re.DOTALL)
# Links that are all of their paragraph, item or cell are pressed with a glove: made large in style.
ALONE = re.compile(
    r"<(p|li|td|dd|dt)(?: [^>]*)?>\s*(?:<a class=(?:(?!</a>).)*</a>[\s,;.]*)+</\1>", re.DOTALL
)
SCROLLED = r'<div class="table-scroll" tabindex="0" role="group" aria-label="Table">\g<0></div>'
STATUS = {"draft": "draft", "checked": "checked against its sources"}


def _front_matter(app: Sphinx, doctree: nodes.document) -> None:
    docname = app.env.current_document.docname
    meta = app.env.metadata[docname]
    missing = [key for key in REQUIRED if not str(meta.get(key, "")).strip()]
    fault = f"front matter lacks {', '.join(missing)}" if missing else _fault(meta)
    if fault:
        log.warning(fault, location=docname, type="handbook", subtype="front-matter")


def _fault(meta: dict[str, Any]) -> str:
    for key in ("reviewed", "review_after"):
        try:
            date.fromisoformat(str(meta.get(key, meta["reviewed"])))
        except ValueError:
            return f"front matter: {key} is “{meta[key]}”, not a date like 2026-11-25"
    if str(meta.get("review_after", "9999")) <= str(meta["reviewed"]):
        return f"front matter: review_after is {meta['review_after']}, not after reviewed"
    if str(meta.get("copy", names.COPIES[1])) != names.COPIES[1]:
        return f"front matter: copy is “{meta['copy']}”, allowed is {names.COPIES[1]}"
    if meta["status"] not in STATUS:
        return f"front matter: status is “{meta['status']}”, not one of {', '.join(STATUS)}"
    if str(meta["edition"]) != EDITION:
        return f"front matter: edition is “{meta['edition']}”, this book is {EDITION}"
    return ""


def _context(
    app: Sphinx, pagename: str, templatename: str, context: dict[str, Any], doctree: Any
) -> None:
    meta = app.env.metadata.get(pagename, {})
    context["csp"] = CSP.replace("form-action 'none'", "form-action 'self'")
    context["edition"] = EDITION
    if "body" in context:
        context["body"] = TABLE.sub(SCROLLED, context["body"])
        context["body"] = ALONE.sub(
            lambda found: found[0].replace('<a class="', '<a class="alone '), context["body"]
        )
        if "data-photo-notes" in context["body"]:
            app.add_css_file("photos.css")
    context["reviewed"] = str(meta.get("reviewed", ""))
    context["page_status"] = STATUS.get(str(meta.get("status", "")), "")
    context["sources"] = ""
    if doctree is not None and pagename not in {app.config.root_doc, SOURCES}:
        context["sources"] = sources_html(cited([doctree]), context["pathto"](SOURCES))


def sources_html(keys: Iterable[str], page: str) -> str:
    """Return the fold that names a page's sources by their strength; empty without any.

    Only short names: the full text stands once, on the page of the sources, where each leads.
    """
    kinds = by_kind(keys)
    if not kinds:
        return ""
    lists = "".join(
        f"<p><b>{escape(KINDS[kind])}:</b> "
        + "; ".join(
            f'<a href="{page}#source-{each.key}">{escape(each.short)}</a>' for each in found
        )
        + "</p>"
        for kind, found in kinds.items()
    )
    return (
        '<details class="page-sources"><summary>Sources of this page: '
        f"{escape(counted(kinds))}</summary>{lists}</details>"
    )


class PassTallyDirective(SphinxDirective):
    """The place of the pass timer and tally; on paper, and without scripts, a form to fill in."""

    def run(self) -> list[nodes.Node]:
        """Return the tally and the paper form."""
        paper = nodes.container(classes=["tally-paper"])
        paper += self.parse_text_to_nodes(paper_text())
        up = "../" * self.env.current_document.docname.count("/")
        return [nodes.raw("", tally_html(up), format="html"), paper]


class PhotoNotesDirective(SphinxDirective):
    """The place of the open job's pictures; ``{photo-notes} nest`` presets what they show.

    Pages only.
    """

    optional_arguments = 1

    def run(self) -> list[nodes.Node]:
        """Return the mount point, and make the page depend on the declaration."""
        note_calc(self)
        kind = self.arguments[0] if self.arguments else "unknown"
        if kind not in kinds():
            raise self.error(f"no kind of picture: {kind}")
        up = "../" * self.env.current_document.docname.count("/")
        html = photos_html(kind, f"{up}clients/the_job.html")
        return [nodes.raw("", html, format="html")]


class PdfRole(SphinxRole):
    """``{training-pdf}`text```: a link to the trainee's PDF, with the edition; on paper text."""

    def run(self) -> tuple[list[nodes.Node], list[nodes.system_message]]:
        """Return the link."""
        up = "../" * self.env.current_document.docname.count("/")
        link = nodes.reference("", f"{self.text} {EDITION}", refuri=f"{up}{PDF_NAME}")
        link["classes"].append("training-pdf")
        return [link], []


def _index_terms(app: Sphinx, doctree: nodes.document) -> None:
    """Make entries of the index from a page's front matter; they lead to its first heading.

    ``index:`` lists terms; ``term: subterm`` stands below its term.
    """
    docname = app.env.current_document.docname
    told = app.env.metadata[docname].get("index", [])
    terms = json.loads(told) if isinstance(told, str) else told
    section = next(iter(doctree.findall(nodes.section)), None)
    if not terms or section is None:
        return
    domain = app.env.domains["index"]
    assert isinstance(domain, IndexDomain)
    for term in terms:
        pairs = term.items() if isinstance(term, dict) else [(term, "")]
        for name, below in pairs:
            words = f"{name}; {below}" if below else str(name)
            entry = ("single", words, section["ids"][0], "", None)
            domain.entries.setdefault(docname, []).append(entry)


def setup(app: Sphinx) -> None:
    """Register the checks, the page context and what stands for the app in a page."""
    app.add_directive("keep-offline", placed(lambda: "<div data-keep-offline></div>"))
    app.add_directive("job-sheet", placed(sheet_html))
    app.add_directive("settings", placed(settings_html))
    app.add_directive("pass-tally", PassTallyDirective)
    app.add_directive("photo-notes", PhotoNotesDirective)
    app.add_css_file("job.css")
    app.add_css_file("tally.css")
    app.add_role("training-pdf", PdfRole())
    admonitionlabels.update({kind: WORDS[level] for kind, level in ADMONITIONS.items()})
    app.connect("doctree-read", _front_matter)
    app.connect("doctree-read", _index_terms)
    app.connect("html-page-context", _context)

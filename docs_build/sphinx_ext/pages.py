"""Front matter of a page: checked when it is read, shown at its foot."""

from __future__ import annotations

import re
from datetime import date
from typing import Any

from docutils import nodes
from sphinx.application import Sphinx
from sphinx.util import logging
from sphinx.util.docutils import SphinxDirective, SphinxRole

from calc import EDITION
from docs_build.build import PDF_NAME
from docs_build.page.jobs_html import sheet_html
from docs_build.page.photos_html import kinds, photos_html
from docs_build.page.tally_html import paper_text, tally_html
from docs_build.server import CSP
from docs_build.sphinx_ext.calculators import note_calc

log = logging.getLogger(__name__)

REQUIRED = ("edition", "reviewed", "status")
# A wide table scrolls in its own box; the page itself never scrolls sideways.
TABLE = re.compile(r'<table class="[^"]*docutils.*?</table>', re.DOTALL)
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
    try:
        date.fromisoformat(str(meta["reviewed"]))
    except ValueError:
        return f"front matter: reviewed is “{meta['reviewed']}”, not a date like 2026-11-25"
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
        if "data-photo-notes" in context["body"]:
            app.add_css_file("photos.css")
    context["reviewed"] = str(meta.get("reviewed", ""))
    context["page_status"] = STATUS.get(str(meta.get("status", "")), "")


class OfflineDirective(SphinxDirective):
    """The place of the button that keeps the book on the phone; pages only."""

    def run(self) -> list[nodes.Node]:
        """Return the mount point."""
        return [nodes.raw("", "<div data-keep-offline></div>", format="html")]


class JobSheetDirective(SphinxDirective):
    """The place of the job sheet, with its form made from the declared fields; pages only."""

    def run(self) -> list[nodes.Node]:
        """Return the form, and make the page depend on the declaration."""
        note_calc(self)
        return [nodes.raw("", sheet_html(), format="html")]


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
    """``{training-pdf}`text```: a link to the PDF, with the edition; on paper only the text."""

    def run(self) -> tuple[list[nodes.Node], list[nodes.system_message]]:
        """Return the link."""
        up = "../" * self.env.current_document.docname.count("/")
        link = nodes.reference("", f"{self.text} {EDITION}", refuri=f"{up}{PDF_NAME}")
        link["classes"].append("training-pdf")
        return [link], []


def setup(app: Sphinx) -> None:
    """Register the checks, the page context and what stands for the app in a page."""
    app.add_directive("keep-offline", OfflineDirective)
    app.add_directive("job-sheet", JobSheetDirective)
    app.add_directive("pass-tally", PassTallyDirective)
    app.add_directive("photo-notes", PhotoNotesDirective)
    app.add_css_file("job.css")
    app.add_css_file("tally.css")
    app.add_role("training-pdf", PdfRole())
    app.connect("doctree-read", _front_matter)
    app.connect("html-page-context", _context)

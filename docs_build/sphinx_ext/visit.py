"""The directives that make the pages of the visit from the tables of its steps and stops."""

from __future__ import annotations

from docutils import nodes
from sphinx.application import Sphinx
from sphinx.util.docutils import SphinxDirective

from calc import tables
from docs_build.page import visit_html
from docs_build.sphinx_ext.calculators import note_calc, placed
from docs_build.sphinx_ext.sources import cite


class StepDirective(SphinxDirective):
    """``visit-step KEY``: where the step stands, its clock, the bar at the thumb; pages only."""

    required_arguments = 1

    def run(self) -> list[nodes.Node]:
        """Return the head of the page."""
        note_calc(self)
        try:
            tables.row("visit_steps", self.arguments[0])
        except LookupError as error:
            raise self.error(str(error)) from error
        return [nodes.raw("", visit_html.step_html(self.arguments[0]), format="html")]


class StopsDirective(SphinxDirective):
    """``visit-stops KEY``: what ends the job in a step, and what to do then."""

    required_arguments = 1

    def run(self) -> list[nodes.Node]:
        """Return an ordinary list, each item with an id, and the press below it."""
        note_calc(self)
        rows = [row for row in tables.rows("visit_stops") if row["step"] == self.arguments[0]]
        if not rows:
            raise self.error(f"visit-stops: no stops for {self.arguments[0]}")
        listed = nodes.bullet_list(classes=["visit-stops"])
        for row in rows:
            sources = row["source"] if isinstance(row["source"], list) else [row["source"]]
            told = nodes.paragraph("", row["do"])
            for key in sources:
                link = cite(key)
                link["refdoc"] = self.env.current_document.docname
                told += [nodes.Text(" "), link]
            sign = nodes.paragraph("", "", nodes.strong("", row["sign"]))
            health = ["visit-health"] if row.get("health") else []
            listed += nodes.list_item("", sign, told, ids=[f"stop-{row['key']}"], classes=health)
        return [listed, nodes.raw("", visit_html.looked_html(), format="html")]


def setup(app: Sphinx) -> None:
    """Register the directives and the style of the visit."""
    app.add_directive("visit-step", StepDirective)
    app.add_directive("visit-stops", StopsDirective)
    app.add_directive("visit-index", placed(visit_html.index_html))
    app.add_directive("visit-list", placed(visit_html.list_html))
    app.add_directive("visit-missing", placed(visit_html.missing_html))
    app.add_css_file("visit.css")

"""The directives that make the pages of the visit from the tables of its steps and stops."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from typing import Any, ClassVar

from docutils import nodes
from docutils.parsers.rst import directives
from sphinx.application import Sphinx
from sphinx.util.docutils import SphinxDirective

from calc import tables
from docs_build.page import visit_html
from docs_build.sphinx_ext.calculators import note_calc, placed
from docs_build.sphinx_ext.sources import cite

Row = Mapping[str, Any]


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
    """``visit-stops KEY``: what ends the job in a step, and what to do then.

    ``:only: key key`` takes some stops, of any step, as a plain list for a page that is no step.
    """

    optional_arguments = 1
    option_spec: ClassVar = {"only": directives.unchanged_required}

    def run(self) -> list[nodes.Node]:
        """Return a list; on the page of a step with an id for each, and the press below it."""
        note_calc(self)
        if "only" in self.options:
            return [self._listed([self._row(key) for key in self.options["only"].split()])]
        rows = [row for row in tables.rows("visit_stops") if [row["step"]] == self.arguments]
        if not rows:
            raise self.error(f"visit-stops: no stops for {' '.join(self.arguments)!r}")
        listed = self._listed(rows)
        listed["classes"].append("visit-stops")
        for item, row in zip(listed, rows, strict=True):
            item["ids"].append(f"stop-{row['key']}")
            item["classes"] += ["visit-health"] if row.get("health") else []
        return [listed, nodes.raw("", visit_html.looked_html(), format="html")]

    def _row(self, key: str) -> Row:
        try:
            return tables.row("visit_stops", key)
        except LookupError as error:
            raise self.error(str(error)) from error

    def _listed(self, rows: Sequence[Row]) -> nodes.bullet_list:
        listed = nodes.bullet_list()
        for row in rows:
            sources = row["source"] if isinstance(row["source"], list) else [row["source"]]
            told = nodes.paragraph("", row["do"])
            for key in sources:
                link = cite(key)
                link["refdoc"] = self.env.current_document.docname
                told += [nodes.Text(" "), link]
            sign = nodes.paragraph("", "", nodes.strong("", row["sign"]))
            listed += nodes.list_item("", sign, told)
        return listed


def setup(app: Sphinx) -> None:
    """Register the directives and the style of the visit."""
    app.add_directive("visit-step", StepDirective)
    app.add_directive("visit-stops", StopsDirective)
    app.add_directive("visit-index", placed(visit_html.index_html))
    app.add_directive("visit-list", placed(visit_html.list_html))
    app.add_directive("visit-missing", placed(visit_html.missing_html))
    app.add_css_file("visit.css")

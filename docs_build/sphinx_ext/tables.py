"""Tables and single numbers from ``calc``'s data files."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any, ClassVar

from docutils import nodes
from docutils.parsers.rst import directives
from docutils.writers._html_base import HTMLTranslator
from sphinx.application import Sphinx
from sphinx.util.docutils import SphinxDirective, SphinxRole

from calc import tables
from calc.tables import cell_text
from docs_build.sphinx_ext.sources import cite


class TableDirective(SphinxDirective):
    """Place a table of ``calc``, with a source in every row."""

    required_arguments = 1
    option_spec: ClassVar = {"columns": directives.unchanged}

    def run(self) -> list[nodes.Node]:
        """Return an ordinary table."""
        from docs_build.sphinx_ext.calculators import note_calc

        note_calc(self)
        name = self.arguments[0]
        try:
            table = tables.load(name)
            chosen = self.options.get("columns", "").split() or list(table["columns"])
            columns = {key: table["columns"][key] for key in chosen}
            return self._made(table["title"], columns, tables.rows(name))
        except (LookupError, KeyError) as error:
            raise self.error(f"calc-table {name}: {error}") from error

    def _made(self, title: str, columns: Columns, rows: Rows) -> list[nodes.Node]:
        """Return the table; a source that all rows share stands once below it."""
        origins = [_origin(row) for row in rows]
        shared = len(rows) > 1 and all(origin.astext() == origins[0].astext() for origin in origins)
        heads = [column["label"] for column in columns.values()]
        if not shared:
            heads.append("Source")
        group = nodes.tgroup(cols=len(heads))
        group += [nodes.colspec(colwidth=1) for _ in heads]
        head = nodes.row()
        head += [nodes.entry("", nodes.paragraph("", text)) for text in heads]
        group += nodes.thead("", head)
        body = nodes.tbody()
        for row, origin in zip(rows, origins, strict=True):
            line = nodes.row()
            line += _cells(columns, row, _numeric(columns, rows))
            if not shared:
                line += nodes.entry("", origin)
            body += line
        group += body
        made: list[nodes.Node] = [
            nodes.table("", nodes.title("", title), group, classes=["calc-table"])
        ]
        if shared:
            made.append(origins[0])
        return made


Columns = Mapping[str, Any]
Rows = tuple[Mapping[str, Any], ...]


def _numeric(columns: Columns, rows: Rows) -> set[str]:
    return {key for key in columns if all(isinstance(row.get(key, 0), int | float) for row in rows)}


def _cells(columns: Columns, row: Mapping[str, Any], numeric: set[str]) -> list[nodes.entry]:
    cells = []
    for key, column in columns.items():
        cell = nodes.entry("", nodes.paragraph("", cell_text(column, row.get(key))))
        if key in numeric:
            cell["classes"].append("numeric")
        cells.append(cell)
    return cells


def _origin(row: Mapping[str, Any]) -> nodes.paragraph:
    """Return the citations of a row, with its note."""
    keys = row["source"] if isinstance(row["source"], list) else [row["source"]]
    cited = nodes.paragraph()
    for key in keys:
        cited += [cite(key, row.get("where", "")), nodes.Text(" ")]
    if row.get("note"):
        cited += nodes.Text(row["note"])
    return cited


class NumRole(SphinxRole):
    """``{num}`table key column```: one number with its unit."""

    def run(self) -> tuple[list[nodes.Node], list[nodes.system_message]]:
        """Return the text of the cell."""
        try:
            name, key, column = self.text.split()
            text = cell_text(tables.load(name)["columns"][column], tables.row(name, key)[column])
        except (LookupError, ValueError) as error:
            message = self.inliner.reporter.error(f"num: {error}", line=self.lineno)
            return [self.inliner.problematic(self.rawtext, self.rawtext, message)], [message]
        return [nodes.inline("", text, classes=["num"])], []


def setup(app: Sphinx) -> None:
    """Register directive and role."""
    app.add_directive("calc-table", TableDirective)
    app.add_role("num", NumRole())
    # Without the classes of odd and even rows, which no style uses and every phone keeps.
    plain = (HTMLTranslator.visit_row, HTMLTranslator.depart_row)
    app.add_node(nodes.row, override=True, html=plain)

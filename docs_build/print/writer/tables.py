"""Tables: widths of columns from what stands in them, so that no cell leaves the page."""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass

from docutils import nodes

from docs_build.print.writer import markup
from docs_build.print.writer.blocks import Blocks

LETTER = 1.85
"""Mean width of a letter of the text at the size used in tables, in mm, with some reserve."""

PADDING = 4.2
"""Room left and right of a cell's text, in mm."""

SMALL = 7
"""Number of columns from which a table is set in smaller type."""


TALL = 1200
"""Letters in a cell from which its row may be broken over two pages."""


@dataclass(frozen=True, slots=True)
class Column:
    """What a column needs: for its longest word, and to keep its longest cell on one line."""

    least: float
    full: float
    total: float


def widths(columns: Sequence[Column], room: float) -> list[str]:
    """Return the widths as Typst takes them.

    A table that fits with every cell on one line keeps its natural widths. Otherwise the columns
    share the page: the ones that need less than their share keep their natural width, the others
    get parts by the root of the text they hold, and none less than its longest word.
    """
    if sum(column.full for column in columns) <= room:
        return ["auto"] * len(columns)
    left = room - sum(column.least for column in columns)
    wanted = [0.0 if column.full <= column.least else math.sqrt(column.total) for column in columns]
    share = max(left, 0.0) / (sum(wanted) or 1.0)
    # Told as parts of the room, not as lengths: a table inside a box or a list has less of it.
    return [
        f"{column.least + share * want:.1f}fr" for column, want in zip(columns, wanted, strict=True)
    ]


def measure(cells: Sequence[tuple[str, int]]) -> Column:
    """Return what a column of cells, each with the number of columns it spans, needs."""
    own = [text for text, span in cells if span == 1]
    words = max((len(word) for text in own for word in text.split()), default=1)
    longest = max((len(text) for text in own), default=1)
    return Column(
        least=min(words, 24) * LETTER + PADDING,
        full=longest * LETTER + PADDING,
        total=float(sum(map(len, own)) or 1),
    )


class Tables(Blocks):
    """Renders tables."""

    def do_table(self, node: nodes.Element) -> str:
        """Write a table, with its title as a numbered caption."""
        self.in_table += 1
        try:
            title = next((c for c in node.children if isinstance(c, nodes.title)), None)
            label = self.own_label(node)
            group = next(iter(node.findall(nodes.tgroup)))
            body = self._group(group, node)
            if title is None:
                mark = markup.anchor(label) if label else ""
                return f"\n\n{mark}#table-block({body});\n\n"
            key = markup.string(label) if label else "none"
            return f"\n\n#table-figure({key}, [{self.heading_text(title)}], {body});\n\n"
        finally:
            self.in_table -= 1

    def _group(self, group: nodes.Element, table: nodes.Element) -> str:
        count = int(group["cols"])
        room = self.shared.text_width
        sizes = ", ".join(self._widths(group, table, count, room))
        heads = self._rows(group, nodes.thead)
        rows = self._rows(group, nodes.tbody)
        head = f"table.header(repeat: true, {heads}), " if heads else ""
        size = "8pt" if count >= SMALL else "9.2pt"
        tall = any(len(entry.astext()) > TALL for entry in group.findall(nodes.entry))
        whole = markup.value(not tall)
        return f"size: {size}, whole-rows: {whole}, columns: ({sizes},), {head}{rows}"

    def _widths(
        self, group: nodes.Element, table: nodes.Element, count: int, room: float
    ) -> list[str]:
        given = [spec.get("colwidth", 1) for spec in group.findall(nodes.colspec)]
        if "colwidths-given" in table["classes"] and len(set(given)) > 1:
            return [f"{width}fr" for width in given]
        cells: list[list[tuple[str, int]]] = [[] for _ in range(count)]
        for row in group.findall(nodes.row):
            self._place(row, cells)
        return widths([measure(column) for column in cells], room)

    def _place(self, row: nodes.Element, cells: list[list[tuple[str, int]]]) -> None:
        place = 0
        for entry in row.children:
            assert isinstance(entry, nodes.Element)
            span = 1 + int(entry.get("morecols", 0))
            if place < len(cells):
                cells[place].append((entry.astext(), span))
            place += span

    def _rows(self, group: nodes.Element, part: type[nodes.Element]) -> str:
        return "".join(
            self._cell(entry)
            for found in group.findall(part)
            for row in found.findall(nodes.row)
            for entry in row.children
            if isinstance(entry, nodes.Element)
        )

    def _cell(self, entry: nodes.Element) -> str:
        options = ""
        for name, attribute in (("colspan", "morecols"), ("rowspan", "morerows")):
            if entry.get(attribute):
                options += f"{name}: {1 + int(entry[attribute])}, "
        if {"numeric", "text-right"} & set(entry["classes"]):
            options += "align: right, "
        elif "text-center" in entry["classes"]:
            options += "align: center, "
        content = self.inside(entry).strip()
        return f"table.cell({options})[{content}], " if options else f"[{content}], "

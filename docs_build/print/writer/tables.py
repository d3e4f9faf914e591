"""Tables: widths of columns from what stands in them, so that no cell leaves the page."""

from __future__ import annotations

from collections.abc import Sequence, Set
from dataclasses import dataclass

from docutils import nodes

from docs_build.print.writer import markup
from docs_build.print.writer.blocks import Blocks

LETTER = 0.18
"""Mean width of a letter of the text in mm for each point of type size, with some reserve."""

PADDING = 4.2
"""Room left and right of a cell's text, in mm."""

SMALL = 7
"""Number of columns from which a table is set in smaller type."""


RIGHT = frozenset({"numeric", "text-right"})
"""Classes of cells that stand to the right."""

BENT = 0.8
"""Power of its text by which a wide column gets room: at 1 the widest starves the others, at a half
a column of sentences stands a word to the line beside one of citations; tried on our tables."""

FEW = 10
"""Rows up to which a table of short cells is kept on one page."""

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

    A table that fits with every cell on one line keeps its natural widths. Otherwise the table
    fills the page: columns that need less than an equal share keep their natural width, the others
    share what is left by the text they hold, and none gets less than its longest word.
    """
    if sum(column.full for column in columns) <= room:
        return ["auto"] * len(columns)
    # Told as parts of the room, not as lengths: a table inside a box or a list has less of it.
    return [f"{width:.1f}fr" for width in _shares(columns, room)]


def _shares(columns: Sequence[Column], room: float) -> list[float]:
    kept = _modest(columns, room)
    others = [column for column in columns if column not in kept]
    taken = sum(c.full for c in columns if c in kept) + sum(c.least for c in others)
    parts = sum(column.total**BENT for column in others) or 1.0
    each = max(room - taken, 0.0) / parts
    return [
        column.full if column in kept else column.least + each * column.total**BENT
        for column in columns
    ]


def _modest(columns: Sequence[Column], room: float) -> list[Column]:
    """Return the columns that need less than an equal share of what the others leave."""
    kept: list[Column] = []
    while True:
        others = [column for column in columns if column not in kept]
        left = room - sum(column.full for column in columns if column in kept)
        share = left / (len(others) or 1)
        more = [column for column in others if column.full <= share]
        if not more:
            return kept
        kept += more


def measure(cells: Sequence[tuple[str, int]], size: float = 9.2) -> Column:
    """Return what a column of cells, each with the number of columns it spans, needs in mm.

    ``size`` is the size of the type in points.
    """
    own = [text for text, span in cells if span == 1]
    words = max((len(word) for text in own for word in text.split()), default=1)
    longest = max((len(text) for text in own), default=1)
    return Column(
        least=min(words, 24) * LETTER * size + PADDING,
        full=longest * LETTER * size + PADDING,
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
        size = 8.0 if count >= SMALL else 9.2
        sizes = ", ".join(self._widths(group, table, count, size))
        right = self._numeric(group)
        heads = self._rows(group, nodes.thead, right)
        head = f"table.header(repeat: true, {heads}), " if heads else ""
        rows = self._rows(group, nodes.tbody)
        return f"size: {size}pt, {self._keep(group)}columns: ({sizes},), {head}{rows}"

    def _keep(self, group: nodes.Element) -> str:
        """Return what is kept together: the table if it is small, its rows if they are."""
        letters = [len(entry.astext()) for entry in group.findall(nodes.entry)]
        few = len(list(group.findall(nodes.row))) <= FEW and sum(letters) <= 2 * TALL
        rows = max(letters, default=0) <= TALL
        return f"whole: {markup.value(few)}, whole-rows: {markup.value(rows)}, "

    def _numeric(self, group: nodes.Element) -> set[int]:
        """Return the columns whose cells all stand to the right; their heads do, too."""
        rows = [row for body in group.findall(nodes.tbody) for row in body.findall(nodes.row)]
        columns = zip(*(row.children for row in rows), strict=False)
        return {
            place
            for place, cells in enumerate(columns)
            if all(isinstance(c, nodes.Element) and RIGHT & set(c["classes"]) for c in cells)
        }

    def _widths(
        self, group: nodes.Element, table: nodes.Element, count: int, size: float
    ) -> list[str]:
        given = [spec.get("colwidth", 1) for spec in group.findall(nodes.colspec)]
        if "colwidths-given" in table["classes"] and len(set(given)) > 1:
            return [f"{width}fr" for width in given]
        cells: list[list[tuple[str, int]]] = [[] for _ in range(count)]
        for row in group.findall(nodes.row):
            self._place(row, cells)
        return widths([measure(column, size) for column in cells], self.shared.text_width)

    def _place(self, row: nodes.Element, cells: list[list[tuple[str, int]]]) -> None:
        place = 0
        for entry in row.children:
            assert isinstance(entry, nodes.Element)
            span = 1 + int(entry.get("morecols", 0))
            if place < len(cells):
                cells[place].append((entry.astext(), span))
            place += span

    def _rows(
        self, group: nodes.Element, part: type[nodes.Element], right: Set[int] = frozenset()
    ) -> str:
        return "".join(
            self._cell(entry, place in right)
            for found in group.findall(part)
            for row in found.findall(nodes.row)
            for place, entry in enumerate(row.children)
            if isinstance(entry, nodes.Element)
        )

    def _cell(self, entry: nodes.Element, right: bool) -> str:
        options = ""
        for name, attribute in (("colspan", "morecols"), ("rowspan", "morerows")):
            if entry.get(attribute):
                options += f"{name}: {1 + int(entry[attribute])}, "
        if right or RIGHT & set(entry["classes"]):
            options += "align: right, "
        elif "text-center" in entry["classes"]:
            options += "align: center, "
        content = self.inside(entry).strip()
        return f"table.cell({options})[{content}], " if options else f"[{content}], "

"""Paragraphs, headings, lists, quotations, code, cautions, figures."""

from __future__ import annotations

from docutils import nodes
from sphinx import addnodes

from calc.declare import WORDS
from docs_build.print.writer import markup
from docs_build.print.writer.inline import Inline
from docs_build.sphinx_ext.nodes import ADMONITIONS

SHORT = 900
"""Letters up to which a framed block is kept on one page."""

_NUMBERINGS = {
    "arabic": "1",
    "loweralpha": "a",
    "upperalpha": "A",
    "lowerroman": "i",
    "upperroman": "I",
}


def is_short(node: nodes.Element) -> bool:
    """Tell whether a framed block can be kept on one page."""
    tall = next(iter(node.findall(lambda n: isinstance(n, nodes.image | nodes.table))), None)
    return len(node.astext()) <= SHORT and tall is None


class Blocks(Inline):
    """Renders block nodes."""

    # -- nothing on paper

    def do_nothing(self, node: nodes.Element) -> str:
        """Comments, settings of other forms, lists of contents within a page."""
        return ""

    do_comment = do_nothing
    do_substitution_definition = do_nothing
    do_meta = do_nothing
    do_pending = do_nothing
    do_toctree = do_nothing
    do_highlightlang = do_nothing
    do_tabular_col_spec = do_nothing
    do_docinfo = do_nothing
    do_decoration = do_nothing

    def do_index(self, node: nodes.Element) -> str:
        """Entries of the index lead here by the ids they name."""
        keys = {self.key(entry[2]) for entry in node.get("entries", ()) if entry[2]}
        # A term or a heading of that id sets the label itself; here only what nobody sets.
        elsewhere = {
            self.key(ident)
            for other in (node.document or node).findall(nodes.Element)
            if not isinstance(other, addnodes.index | nodes.target)
            for ident in other.get("ids", ())
        }
        return "".join(markup.anchor(k) for k in sorted(keys - elsewhere) if self.give(k))

    # -- text

    def do_document(self, node: nodes.Element) -> str:
        """Write the whole of a small tree."""
        return self.children(node)

    def do_paragraph(self, node: nodes.Element) -> str:
        """Write a paragraph."""
        return f"\n\n{self.children(node).strip()}\n\n"

    do_compact_paragraph = do_paragraph

    def do_section(self, node: nodes.Element) -> str:
        """Write a section with its heading."""
        self.level += 1
        try:
            return "\n\n" + self.children(node)
        finally:
            self.level -= 1

    def anchors(self, node: nodes.Element) -> str:
        """Leave the labels of a section to its heading."""
        if isinstance(node, nodes.section) and isinstance(node.next_node(), nodes.title):
            return ""
        return super().anchors(node)

    def do_title(self, node: nodes.Element) -> str:
        """Heading of a section; other titles are called for by what they head."""
        if not isinstance(node.parent, nodes.section):
            return markup.block("minor", self.children(node))
        content = self.heading_text(node)
        label = self.own_label(node.parent)
        key = markup.string(label) if label else "none"
        listed = markup.value(self.level <= self.chapter_level + 1)
        return f"\n\n#section({self.level}, {key}, {listed})[{content}];\n\n"

    def heading_text(self, node: nodes.Element) -> str:
        """Return the text of a heading, fit to be repeated in the contents."""
        self.in_heading += 1
        try:
            return self.children(node).strip()
        finally:
            self.in_heading -= 1

    def do_subtitle(self, node: nodes.Element) -> str:
        """Write a line under a title."""
        return markup.block("minor", self.children(node))

    do_rubric = do_subtitle
    do_centered = do_subtitle

    def do_transition(self, node: nodes.Element) -> str:
        """Write a break between thoughts; the notes it may announce stand at the foot of pages."""
        if "footnotes" in node["classes"]:
            return ""
        return "\n\n#transition();\n\n"

    def do_block_quote(self, node: nodes.Element) -> str:
        """Write a quotation."""
        return markup.block("quotation", self.inside(node))

    def do_attribution(self, node: nodes.Element) -> str:
        """Who is quoted."""
        return markup.block("attribution", self.children(node))

    def do_line_block(self, node: nodes.Element) -> str:
        """Lines that are kept as lines."""
        return f"\n\n{'#linebreak();'.join(map(self._line, node.children))}\n\n"

    def _line(self, node: nodes.Node) -> str:
        if isinstance(node, nodes.line_block):
            return "#linebreak();".join(f"#h(1.5em);{self._line(child)}" for child in node.children)
        return self.children(node).strip() if isinstance(node, nodes.Element) else ""

    def do_literal_block(self, node: nodes.Element) -> str:
        """Code, as it is typed."""
        language = str(node.get("language", "")) or None
        told = f", lang: {markup.string(language)}" if language not in {None, "none"} else ""
        return f"\n\n#code-block({markup.string(node.astext())}{told});\n\n"

    do_doctest_block = do_literal_block

    def do_versionmodified(self, node: nodes.Element) -> str:
        """Write a change of the book."""
        return self.children(node)

    def do_compound(self, node: nodes.Element) -> str:
        """Blocks that belong together."""
        return self.children(node)

    do_only = do_compound

    def do_start_of_file(self, node: nodes.Element) -> str:
        """Write a document that stands within another one."""
        outer, self.docname = self.docname, node["docname"]
        try:
            return self.children(node)
        finally:
            self.docname = outer

    do_glossary = do_compound
    do_legend = do_compound

    # -- lists

    def do_bullet_list(self, node: nodes.Element) -> str:
        """Write a list; a list of things to tick gets boxes."""
        ticks = any("task-list-item" in item["classes"] for item in node.findall(nodes.list_item))
        made = self._list("checklist" if ticks else "list", node, "")
        return f"#fine[{made}];" if "bibliography" in node["classes"] else made

    def do_enumerated_list(self, node: nodes.Element) -> str:
        """Write a list in order."""
        sign = _NUMBERINGS.get(node.get("enumtype", "arabic"), "1")
        pattern = f"{node.get('prefix', '')}{sign}{node.get('suffix', '.') or '.'}"
        start = node.get("start", 1)
        return self._list("enum", node, f"numbering: {markup.string(pattern)}, start: {start}, ")

    def _list(self, function: str, node: nodes.Element, options: str) -> str:
        items = [child for child in node.children if isinstance(child, nodes.list_item)]
        tight = all(len([c for c in i.children if not skipped_target(c)]) <= 1 for i in items)
        made = "".join(f"[{self.render(item)}]" for item in items)
        return f"\n\n#{function}({options}tight: {markup.value(tight)}){made};\n\n"

    def do_list_item(self, node: nodes.Element) -> str:
        """One item."""
        return self.inside(node)

    def do_hlist(self, node: nodes.Element) -> str:
        """Write a list in columns as one list after the other."""
        return self.children(node)

    do_hlistcol = do_hlist

    def do_definition_list(self, node: nodes.Element) -> str:
        """Terms and what they mean."""
        items = "".join(
            self._term(item) for item in node.children if isinstance(item, nodes.Element)
        )
        return f"\n\n#definitions({items});\n\n"

    def _term(self, item: nodes.Element) -> str:
        terms = [child for child in item.children if isinstance(child, nodes.term)]
        kinds = [child for child in item.children if isinstance(child, nodes.classifier)]
        rest = [child for child in item.children if child not in terms and child not in kinds]
        name = ", ".join(self.render(term).strip() for term in terms)
        name += "".join(f" (#emph[{self.children(kind)}];)" for kind in kinds)
        return f"([{name}], [{self.each(rest).strip()}]), "

    def do_term(self, node: nodes.Element) -> str:
        """Write the word that is explained."""
        return self.children(node)

    def do_definition(self, node: nodes.Element) -> str:
        """Write the explanation."""
        return self.inside(node)

    def do_field_list(self, node: nodes.Element) -> str:
        """Names and what stands for them."""
        return self._pairs(node, nodes.field)

    def do_option_list(self, node: nodes.Element) -> str:
        """Options of a command."""
        return self._pairs(node, nodes.option_list_item)

    def _pairs(self, node: nodes.Element, kind: type[nodes.Element]) -> str:
        items = ""
        for pair in node.children:
            if isinstance(pair, kind):
                name, body = pair.children
                assert isinstance(body, nodes.Element)
                items += f"([{markup.text(name.astext())}], [{self.inside(body)}]), "
        return f"\n\n#definitions({items});\n\n"

    # -- boxes

    def do_Admonition(self, node: nodes.Element) -> str:  # noqa: N802 - named after the node
        """Write a caution, with its word and sign, or a note."""
        kind = ADMONITIONS.get(self._admonition(node), "")
        parts = list(node.children)
        title = ""
        if parts and isinstance(parts[0], nodes.title):
            first = parts.pop(0)
            assert isinstance(first, nodes.Element)
            title = self.heading_text(first)
        body = self.each(parts).strip("\n")
        return markup.block(
            "notice",
            title,
            body,
            kind=kind or "note",
            word=WORDS.get(kind, ""),
            whole=is_short(node),
        )

    do_admonition = do_Admonition
    do_seealso = do_Admonition

    def _admonition(self, node: nodes.Element) -> str:
        name = type(node).__name__
        if name == "admonition":  # one with a title of its own keeps its kind as a class
            return next((each for each in node["classes"] if each in ADMONITIONS), "")
        return name

    def do_topic(self, node: nodes.Element) -> str:
        """Write a box beside the text; contents of a page are left to the book's own."""
        if "contents" in node["classes"]:
            return ""
        parts = list(node.children)
        title = ""
        if parts and isinstance(parts[0], nodes.title):
            first = parts.pop(0)
            assert isinstance(first, nodes.Element)
            title = self.heading_text(first)
        return markup.block("panel", title, self.each(parts).strip("\n"), whole=is_short(node))

    do_sidebar = do_topic

    # -- figures

    def do_figure(self, node: nodes.Element) -> str:
        """Write a numbered figure with its caption."""
        caption = next(iter(node.findall(nodes.caption)), None)
        words = caption.astext() if caption is not None else ""
        images = list(node.findall(nodes.image))
        rest = [
            child
            for child in node.children
            if not isinstance(child, nodes.image | nodes.caption | nodes.reference)
        ]
        body = "".join(self.picture(image, "picture", alt=words) for image in images)
        body += self.each(rest)
        label = self.own_label(node)
        key = markup.string(label) if label else "none"
        said = f"[{self.heading_text(caption)}]" if caption is not None else "none"
        return f"\n\n#picture-figure({key}, {said})[{body.strip()}];\n\n"

    def do_caption(self, node: nodes.Element) -> str:
        """Caption of code or of anything else that is no figure."""
        return markup.block("minor", self.children(node))


def skipped_target(node: nodes.Node) -> bool:
    """Tell whether a child of a list item is no block of its own."""
    return isinstance(node, nodes.Invisible | addnodes.index)

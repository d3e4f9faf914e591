"""What stands within a line: emphasis, links, notes at the foot, formulas, pictures."""

from __future__ import annotations

import re

from docutils import nodes
from sphinx import addnodes

from docs_build.print.writer import markup
from docs_build.print.writer.base import Base

WITHOUT_PAGE = {"std-term", "source", "footnote-reference", "sd-btn"}
"""Classes of references that would clutter the page with numbers."""

_LENGTH = re.compile(r"(\d+(?:\.\d+)?)\s*(px|pt|cm|mm|in|em|%)?")
_POINTS = {"px": 0.75, "": 0.75, "pt": 1.0, "cm": 28.3465, "mm": 2.83465, "in": 72.0, "em": 10.5}


class Inline(Base):
    """Renders inline nodes."""

    def do_emphasis(self, node: nodes.Element) -> str:
        """Emphasis and titles of works."""
        return markup.call("emph", self.children(node))

    do_title_reference = do_emphasis
    do_literal_emphasis = do_emphasis

    def do_strong(self, node: nodes.Element) -> str:
        """Strong words."""
        return markup.call("strong", self.children(node))

    do_literal_strong = do_strong

    def do_literal(self, node: nodes.Element) -> str:
        """Words of a computer."""
        return f"#raw({markup.string(node.astext())});"

    def do_inline(self, node: nodes.Element) -> str:
        """Text with a class; a number with its unit stays on one line."""
        if "num" in node["classes"]:
            return markup.call("box", self.children(node))
        return self.children(node)

    do_PassthroughTextElement = do_inline  # noqa: N815 - named after the node
    do_generated = do_inline

    def do_abbreviation(self, node: nodes.Element) -> str:
        """Write an abbreviation with what it stands for."""
        meaning = node.get("explanation", "")
        return self.children(node) + (markup.text(f" ({meaning})") if meaning else "")

    def do_subscript(self, node: nodes.Element) -> str:
        """Write lowered text."""
        return markup.call("sub", self.children(node))

    def do_superscript(self, node: nodes.Element) -> str:
        """Write raised text."""
        return markup.call("super", self.children(node))

    def do_raw(self, node: nodes.Element) -> str:
        """Typst goes through; what is meant for other forms of the book does not."""
        return node.astext() if "typst" in node.get("format", "").split() else ""

    def do_fontawesome(self, node: nodes.Element) -> str:
        """Icons of the pages carry no meaning of their own."""
        return ""

    def do_problematic(self, node: nodes.Element) -> str:
        """Text that the parser could not read; the parser has reported it."""
        return markup.text(node.astext())

    def do_system_message(self, node: nodes.Element) -> str:
        """Messages were reported when the page was read."""
        return ""

    # -- links

    def do_pending_xref(self, node: nodes.Element) -> str:
        """Sphinx has reported that this leads nowhere."""
        return self.children(node)

    do_download_reference = do_pending_xref

    def do_reference(self, node: nodes.Element) -> str:
        """Link inside the book with its page, or outside with its address."""
        content = self.children(node)
        target = self._target(node)
        if target is not None:
            return self.to(target, content, self._wants_page(node, target), node)
        uri = str(node.get("refuri", ""))
        return self._outside(uri, content, node.astext()) if ":" in uri else content

    def _target(self, node: nodes.Element) -> str | None:
        if "refid" in node:
            return self.key(node["refid"])
        uri = str(node.get("refuri", ""))
        if uri.startswith("%"):
            docname, _, ident = uri[1:].partition("#")
            return self.key(ident, docname)
        return None

    def _wants_page(self, node: nodes.Element, target: str) -> bool:
        classes = set(node["classes"])
        for child in node.findall(nodes.inline):
            classes |= set(child["classes"])
        within = self.in_table or self.in_heading or self.docname == "genindex"
        return not (within or classes & WITHOUT_PAGE or "#source-" in target)

    def _outside(self, uri: str, content: str, words: str) -> str:
        address = uri.removeprefix("mailto:")
        if words.strip() in {uri, address}:
            return f"#outside({markup.string(uri)}, {markup.string(address)});"
        if self.in_heading:
            return content
        style = "brief" if self.in_table else "note"
        return f"#outside-{style}({markup.string(uri)}, {markup.string(address)})[{content}];"

    def do_number_reference(self, node: nodes.Element) -> str:
        """Link by number of a figure."""
        return self.do_reference(node)

    def do_target(self, node: nodes.Element) -> str:
        """Write a place that links lead to."""
        return self.children(node)

    # -- notes at the foot of the page

    def do_footnote_reference(self, node: nodes.Element) -> str:
        """Note at the foot of the page; the second mention repeats its number."""
        raw = f"{self.docname}#{node['refid']}"
        label = f"footnote:{raw}"
        if label in self.shared.given:
            return f"#footnote(label({markup.string(label)}));"
        note = self.shared.footnotes.get(raw)
        if note is None:
            self.warn("a footnote without text", "footnote", node)
            return ""
        self.shared.given.add(label)
        self.shared.aliases[raw] = label
        parts = [child for child in note.children if not isinstance(child, nodes.label)]
        body = self.each(parts).strip("\n")
        return f"#[#footnote[{body}]#label({markup.string(label)})];"

    def do_footnote(self, node: nodes.Element) -> str:
        """Leave the text to the foot of the page that refers to it."""
        node["ids"] = []
        return ""

    def do_citation(self, node: nodes.Element) -> str:
        """Write an entry of a list of works."""
        label, *rest = node.children
        entry = f"terms.item[{markup.text(label.astext())}][{self.each(rest).strip()}]"
        return f"\n\n#terms({entry});\n\n"

    do_citation_reference = do_reference

    # -- formulas

    def do_math(self, node: nodes.Element) -> str:
        """Write a formula within a line, with its letters on the line."""
        made = self._formula(node, inline=True)
        return made if made.startswith("#raw") else f"#formula({made});"

    def do_math_block(self, node: nodes.Element) -> str:
        """Write a formula on a line of its own, with its number where it has one."""
        made = self._formula(node, inline=False)
        if made.startswith("#raw"):
            return f"\n\n{made}\n\n"
        number = node.get("number")
        told = f", number: {markup.string(str(number))}" if number else ""
        return f"\n\n#formula-block({made}{told});\n\n"

    def _formula(self, node: nodes.Element, inline: bool) -> str:
        latex = node.astext().strip()
        try:
            made = self.shared.figures.formula(latex, inline)
        except ValueError as error:
            self.warn(f"formula {latex!r} cannot be drawn: {error}", "math", node)
            return f"#raw({markup.string(latex)});"
        depth = f", {made.depth:.3f}em" if inline else ""
        return (
            f"{markup.string(made.file)}, {markup.string(latex)}, {made.width:.3f}em, "
            f"{made.height:.3f}em{depth}"
        )

    # -- pictures

    def do_image(self, node: nodes.Element) -> str:
        """Picture within a line, or as a block of its own."""
        inline = isinstance(node.parent, nodes.TextElement)
        if inline and len(node.parent.children) > 1:
            return self.picture(node, "inline-picture")
        return f"\n\n{self.picture(node, 'picture')}\n\n"

    def picture(self, node: nodes.Element, function: str, alt: str = "") -> str:
        """Return the call that shows a picture."""
        uri = str(node["uri"])
        file = self.shared.images.get(uri)
        if file is None:
            self.warn(f"picture {uri} cannot be printed", "image", node)
            return ""
        alt = str(node.get("alt", "")).strip() or self.shared.figures.words(file) or alt
        if not alt:
            self.warn(f"picture {uri} has no text for those who cannot see it", "alt", node)
            alt = "Picture without description"
        width = length(str(node.get("width", "")))
        return f"#{function}({markup.string(file)}, {markup.string(alt)}, width: {width});"


def length(given: str) -> str:
    """Return a length of the pages (pixels, per cent ...) as one of Typst, ``auto`` if none."""
    match = _LENGTH.fullmatch(given.strip())
    if match is None:
        return "auto"
    number, unit = float(match[1]), match[2] or ""
    return f"{number:g}%" if unit == "%" else f"{number * _POINTS[unit]:g}pt"


def skipped(node: nodes.Node) -> bool:
    """Tell whether a node leaves nothing on paper."""
    return isinstance(node, nodes.Invisible | addnodes.highlightlang | addnodes.index)

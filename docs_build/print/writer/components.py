"""Cards, grids, tabs and folds of the pages, and cells of notebooks, in a form fit for paper."""

from __future__ import annotations

from docutils import nodes

from docs_build.print.writer import markup
from docs_build.print.writer.blocks import is_short
from docs_build.print.writer.tables import Tables

_TITLES = {"card-title", "card-header"}


def component(node: nodes.Node) -> str:
    """Return the name of a design component, empty for any other node."""
    return str(node.get("design_component", "")) if isinstance(node, nodes.Element) else ""


class Components(Tables):
    """Renders containers."""

    def do_container(self, node: nodes.Element) -> str:
        """Write a container by its design component, or by its part of a notebook."""
        if node.get("nb_element") == "cell_code_source" or "cell_input" in node["classes"]:
            return self.children(node) if self._shows_code(node) else ""
        name = component(node).replace("-", "_")
        method = getattr(self, f"design_{name}", None) if name else None
        return method(node) if method else self.children(node)

    def _shows_code(self, node: nodes.Element) -> bool:
        cell = node.parent
        tagged = isinstance(cell, nodes.Element) and "tag_print-code" in cell["classes"]
        return self.shared.show_code or tagged

    # -- cards

    def design_grid_row(self, node: nodes.Element) -> str:
        """Cards of a grid stand two abreast."""
        items = [child for child in node.children if isinstance(child, nodes.Element)]
        made = "".join(f"[{self.render(item).strip()}]" for item in items)
        return f"\n\n#card-grid{made};\n\n" if made else ""

    def design_card(self, node: nodes.Element) -> str:
        """Write a card: title, body, foot."""
        titles: list[nodes.Node] = []
        bodies: list[nodes.Node] = []
        for part in node.children:
            inner = part.children if component(part) == "card-body" else [part]
            for child in inner:
                (titles if component(child) in _TITLES else bodies).append(child)
        title = " ".join(self.render(part).strip() for part in titles)
        parts = "".join(self._card_part(part) for part in bodies)
        return markup.block("panel", title, parts.strip("\n"), whole=is_short(node))

    def _card_part(self, part: nodes.Node) -> str:
        # The link that makes the whole card a button has no words; the card's text gives them.
        if isinstance(part, nodes.paragraph) and "sd-stretched-link-par" in part["classes"]:
            return ""
        if isinstance(part, nodes.Element) and any(
            "sd-stretched-link" in link["classes"] for link in part.findall(nodes.Element)
        ):
            return self._stretched(part)
        return self.render(part)

    def _stretched(self, part: nodes.Element) -> str:
        for link in part.findall(nodes.reference):
            target = self._target(link)
            if target is not None:
                if told := self.shared.elsewhere.get(target.partition("#")[0]):
                    return markup.block("fine", markup.text(f"More {told[1]}."))
                self.to(target, "", True, link)
                return f"\n\n#page-of({markup.string(target)});\n\n"
        return ""

    def design_card_title(self, node: nodes.Element) -> str:
        """Title of a card."""
        return self.inside(node)

    # -- tabs, folds

    def design_tab_item(self, node: nodes.Element) -> str:
        """Tabs stand one under the other, each under its label."""
        label, *content = node.children
        assert isinstance(label, nodes.Element)
        body = self.each(content).strip("\n")
        return markup.block("panel", self.children(label), body, whole=is_short(node))

    def design_dropdown(self, node: nodes.Element) -> str:
        """On paper a fold is open."""
        parts = list(node.children)
        title = ""
        if node.get("has_title") and isinstance(parts[0], nodes.Element):
            first = parts.pop(0)
            title = self.anchors(first) + self.children(first)
        return markup.block("panel", title, self.each(parts).strip("\n"), whole=is_short(node))

    def design_aside(self, node: nodes.Element) -> str:
        """Write a remark beside the text."""
        return markup.block("panel", "", self.inside(node), whole=is_short(node))

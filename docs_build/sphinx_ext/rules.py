"""The directive that places a rule of the book, in its one wording, wherever it is needed."""

from __future__ import annotations

from typing import ClassVar

from docutils import nodes
from docutils.parsers.rst import directives
from sphinx.application import Sphinx
from sphinx.util.docutils import SphinxDirective

from calc.rules import Step, rule
from docs_build.sphinx_ext.calculators import note_calc
from docs_build.sphinx_ext.sources import cite

BOXES = {"stop": "danger", "caution": "warning", "note": "note"}
"""Kind of box for each level, as MyST names it."""


class RuleDirective(SphinxDirective):
    """``rule NAME``: the steps of a rule in a box, numbered if there are several.

    ``:steps: key key`` takes some of them; ``:bare:`` leaves out box and title, for a card.
    """

    required_arguments = 1
    option_spec: ClassVar = {"steps": directives.unchanged, "bare": directives.flag}

    def run(self) -> list[nodes.Node]:
        """Return the box, with the sources folded below the steps."""
        note_calc(self)
        try:
            found = rule(self.arguments[0])
            keys = self.options.get("steps", "").split()
            steps = [found.step(key) for key in keys] if keys else list(found.steps)
        except LookupError as error:
            raise self.error(str(error.args[0])) from error
        made = [self._listed(steps), *self._sources(steps)]
        classes = ["rule", f"rule-{found.name}"]
        if "bare" in self.options:
            return [nodes.container("", *made, classes=classes)]
        title = nodes.title("", found.title)
        return [nodes.admonition("", title, *made, classes=[BOXES[found.level], *classes])]

    def _listed(self, steps: list[Step]) -> nodes.Element:
        told = [nodes.paragraph("", "", *self._words(step)) for step in steps]
        if len(told) == 1:
            return told[0]
        return nodes.enumerated_list("", *(nodes.list_item("", each) for each in told))

    def _words(self, step: Step) -> list[nodes.Node]:
        found, messages = self.parse_inline(step.text)
        if messages:
            raise self.error(f"rule {self.arguments[0]}, step {step.key}: {messages[0].astext()}")
        return found

    def _sources(self, steps: list[Step]) -> list[nodes.Node]:
        """Return the sources of each step, by its number; folded on a page, in full on paper."""
        line = nodes.paragraph(classes=["rule-sources"])
        for number, step in enumerate(steps, start=1):
            if len(steps) > 1:
                line += nodes.Text(f"{number}: ")
            for key in step.source:
                link = cite(key)
                link["refdoc"] = self.env.current_document.docname
                line += [link, nodes.Text(" ")]
        opened = '<details class="rule-fold"><summary>Sources</summary>'
        return [
            nodes.raw("", opened, format="html"),
            line,
            nodes.raw("", "</details>", format="html"),
        ]


def setup(app: Sphinx) -> None:
    """Register the directive."""
    app.add_directive("rule", RuleDirective)

"""Formulas as MathML, set by the browser itself: no script, no font to fetch, readable aloud."""

from __future__ import annotations

import html

from docutils import nodes
from latex2mathml.converter import convert
from sphinx.application import Sphinx
from sphinx.writers.html5 import HTML5Translator


def mathml(latex: str, display: str) -> str:
    """Return the MathML of a LaTeX formula, with the LaTeX kept for copying."""
    return convert(latex, display=display).replace(
        "<math ", f'<math data-latex="{html.escape(latex, quote=True)}" ', 1
    )


def pieces(latex: str) -> list[str]:
    """Return a formula in the parts between which a line may end: before each ``=`` of its own."""
    if r"\left" in latex:  # its two ends must stay in one part
        return [latex]
    made, depth = [""], 0
    for sign in latex:
        depth += {"{": 1, "}": -1}.get(sign, 0)
        if sign == "=" and depth == 0 and made[-1].strip():
            made.append("")
        made[-1] += sign
    return made


def visit_inline(self: HTML5Translator, node: nodes.math) -> None:
    """Write an inline formula; a line may end before a relation, as MathML alone never breaks."""
    self.body.append("<wbr>".join(mathml(each, "inline") for each in pieces(node.astext())))
    raise nodes.SkipNode


def visit_block(self: HTML5Translator, node: nodes.math_block) -> None:
    """Write a displayed formula, in a box that scrolls where the phone is too narrow."""
    self.body.append(
        f'<div class="math-block" tabindex="0" role="group" aria-label="Formula">'
        f"{mathml(node.astext(), 'block')}</div>"
    )
    raise nodes.SkipNode


def setup(app: Sphinx) -> None:
    """Register the renderer under the name ``mathml``."""
    app.add_html_math_renderer("mathml", (visit_inline, None), (visit_block, None))

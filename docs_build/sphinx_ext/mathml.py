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


def visit_inline(self: HTML5Translator, node: nodes.math) -> None:
    """Write an inline formula."""
    self.body.append(mathml(node.astext(), "inline"))
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

"""What the book adds to Sphinx: calculators, sources, tables, exercises, formulas as MathML."""

from __future__ import annotations

from typing import Any

from sphinx.application import Sphinx

from docs_build.sphinx_ext import calculators, exercises, mathml, pages, sources, tables


def setup(app: Sphinx) -> dict[str, Any]:
    """Register the parts."""
    for part in (calculators, exercises, mathml, pages, sources, tables):
        part.setup(app)
    return {"version": "1", "env_version": 1, "parallel_read_safe": True}

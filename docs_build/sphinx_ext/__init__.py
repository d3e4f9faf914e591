"""What the book adds to Sphinx: calculators, sources, tables, exercises, formulas as MathML."""

from __future__ import annotations

import hashlib
from pathlib import Path
from typing import Any

from sphinx.application import Sphinx

from docs_build.sphinx_ext import (
    calculators,
    exercises,
    mathml,
    menu,
    pages,
    rules,
    sources,
    tables,
    visit,
)


def setup(app: Sphinx) -> dict[str, Any]:
    """Register the parts."""
    for part in (calculators, exercises, mathml, menu, pages, rules, sources, tables, visit):
        part.setup(app)
    return {"version": "1", "env_version": _code(), "parallel_read_safe": True}


def _code() -> int:
    """Return a number that changes with our code, so that Sphinx then reads all pages anew."""
    seen = hashlib.sha256()
    for path in sorted(Path(__file__).parent.parent.rglob("*.py")):
        seen.update(path.read_bytes())
    return int(seen.hexdigest()[:8], 16)

"""Which page a calculator stands on: the chapter that places it, not a step of the visit."""

from __future__ import annotations

import re
from collections.abc import Mapping
from functools import cache

from calc.catalogue import CALCULATORS
from docs_build.bootstrap import ROOT

HANDBOOK = ROOT / "handbook"
PARTS = ("safety", "biology", "method", "clients")
_PLACED = re.compile(r"^:{3,}\{calculator\} (\w+)$", re.MULTILINE)


@cache
def pages() -> Mapping[str, str]:
    """Return the page of each calculator, by name, without its ending."""
    found: dict[str, str] = {}
    for part in PARTS:
        for path in sorted((HANDBOOK / part).glob("*.md")):
            for name in _PLACED.findall(path.read_text(encoding="utf-8")):
                if name not in found or CALCULATORS[name].part == part:
                    found[name] = f"{part}/{path.stem}"
    return found


def page_of(name: str) -> str:
    """Return the page of a calculator.

    Raises
    ------
    LookupError
        if no chapter places it
    """
    try:
        return pages()[name]
    except KeyError:
        raise LookupError(f"no chapter of the handbook has :::{{calculator}} {name}") from None

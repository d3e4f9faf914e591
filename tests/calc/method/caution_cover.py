"""Helps the tests of cautions: which were raised, and whether each written one was."""

from __future__ import annotations

import ast
from pathlib import Path
from typing import Any

from calc.declare import Calculator, Result


def raised(result: Result) -> set[tuple[str, str]]:
    """Return level and text of the cautions of a result."""
    return {(each.level, each.text) for each in result.cautions}


def written(module: Any) -> int:
    """Return how many cautions a module builds in its source."""
    tree = ast.parse(Path(module.__file__).read_text(encoding="utf-8"))
    return sum(
        isinstance(node, ast.Call) and getattr(node.func, "id", "") == "Caution"
        for node in ast.walk(tree)
    )


def check(calculator: Calculator, given: dict[str, Any], level: str, part: str) -> Result:
    """Run and assert that a caution with this level and part of its text is raised."""
    result = calculator.run(given)
    found = [each for each in result.cautions if part in each.text]
    assert found, f"{part!r} not in {[each.text for each in result.cautions]}"
    assert found[0].level == level
    for each in found:
        for name in each.hides:
            assert result.values[name] is None
            assert each.level == "stop"
    return result

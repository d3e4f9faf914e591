"""Nothing is forgotten when a calculator is added: each fault comes with the line to paste."""

from __future__ import annotations

import re
from collections.abc import Iterator
from functools import cache

import pytest

from calc.catalogue import CALCULATORS
from calc.declare import Calculator
from docs_build import places
from docs_build.bootstrap import ROOT

HANDBOOK = ROOT / "handbook"


def missing(calculator: Calculator) -> Iterator[str]:
    """Say what is missing, and the line that mends it."""
    name, title = calculator.name, calculator.title
    try:
        page = places.page_of(name)
    except LookupError:
        yield f"no chapter of {calculator.part} places it; paste there: :::{{calculator}} {name}"
        return
    part, stem = page.split("/")
    entries = {
        HANDBOOK / "index.md": page,
        HANDBOOK / part / "index.md": f"{{doc}}`{stem}`",
        HANDBOOK / "training" / "goals.md": f"{{doc}}`../{page}`",
    }
    for path, line in entries.items():
        if line not in path.read_text(encoding="utf-8"):
            yield f"{path.relative_to(ROOT)} does not name it; paste: - {line}: {title}."
    if calculator.given is not None:
        room = ROOT / "calc" / calculator.part / name
        if not (room / "inputs.py").exists():
            yield f"it is no room; expected calc/{calculator.part}/{name}/inputs.py"
    if not any(f"import {name}" in text or f'"{name}"' in text for text in texts()):
        yield f"no test names it; begin tests/calc/{calculator.part}/test_{name}.py"


@cache
def texts() -> tuple[str, ...]:
    """The texts of all tests and printed values."""
    paths = [*(ROOT / "tests" / "calc").rglob("*.py"), *(ROOT / "tests").rglob("*.toml")]
    return tuple(path.read_text(encoding="utf-8") for path in paths)


@pytest.mark.parametrize("name", list(CALCULATORS))
def test_a_calculator_is_listed_everywhere(name: str) -> None:
    assert list(missing(CALCULATORS[name])) == []


def test_the_placeholders_of_a_new_calculator_are_gone() -> None:
    for path in (ROOT / "calc").rglob("*.py"):
        text = path.read_text(encoding="utf-8")
        assert not re.search(r"What it answers, and what for|What it is\.", text), path

"""Values printed outside the project, and values frozen from our own output, apart."""

from __future__ import annotations

import re
import tomllib
from collections.abc import Iterator
from importlib.util import find_spec
from pathlib import Path
from typing import Any

import pytest

from calc.sources import KINDS, READ, bibliography, source
from docs_build import strength
from docs_build.bootstrap import ROOT
from tests.checks import faults

HERE = Path(__file__).parent


def read(folder: str) -> list[Any]:
    """Return the checks below a folder, one test parameter each."""
    return [
        pytest.param(
            check,
            id=f"{path.stem}-{check['id']}",
            marks=pytest.mark.published(check["source"]) if "source" in check else (),
        )
        for path in sorted((HERE / folder).rglob("*.toml"))
        for check in tomllib.loads(path.read_text(encoding="utf-8"))["check"]
    ]


@pytest.mark.parametrize("check", read("published"))
def test_published_value(check: dict[str, Any]) -> None:
    assert strength.of_check(check["source"])
    assert check["expect"], "a check without an expected value cannot fail"
    assert not faults(check), f"{source(check['source']).short}, {check.get('where', '')}"


@pytest.mark.parametrize("check", read("frozen"))
def test_frozen_value(check: dict[str, Any]) -> None:
    assert not faults(check)


def test_checks_have_unique_ids() -> None:
    ids = [parameter.id for parameter in read("published")]
    assert len(set(ids)) == len(ids)


def marks_in_files() -> Iterator[tuple[str, str, str]]:
    """Where each mark of an outside check stands, which it is, and what it names."""
    for path in sorted((ROOT / "tests").rglob("test_*.py")):
        text = path.read_text(encoding="utf-8")
        for found in re.finditer(r"@pytest\.mark\.(published|library)(?:\(\"(\w+)\"\))?", text):
            line = text.count("\n", 0, found.start()) + 1
            yield f"{path.name}:{line}", found[1], found[2] or ""


def test_every_outside_check_names_what_it_rests_on() -> None:
    bare = [
        where
        for where, mark, name in marks_in_files()
        if (name not in bibliography() if mark == "published" else find_spec(name or "x") is None)
    ]
    assert bare == []
    assert all(strength.of_check(name) for _, mark, name in marks_in_files() if mark == "published")


def test_a_wrong_value_is_found() -> None:
    check = {"call": "math.sqrt", "args": {}, "expect": {"value": 2.0}, "tolerance": {"value": 0.1}}
    assert faults(check | {"call": "tests.test_published.three"})


def three() -> float:
    return 3.0


def test_kinds_are_ordered_from_strong_to_weak() -> None:
    assert list(KINDS)[: len(READ)] == list(READ)

"""Values printed outside the project, and values frozen from our own output, apart."""

from __future__ import annotations

import tomllib
from pathlib import Path
from typing import Any

import pytest

from calc.sources import KINDS, READ, source
from tests.checks import faults

HERE = Path(__file__).parent


def read(folder: str) -> list[Any]:
    """Return the checks below a folder, one test parameter each."""
    return [
        pytest.param(check, id=f"{path.stem}-{check['id']}")
        for path in sorted((HERE / folder).rglob("*.toml"))
        for check in tomllib.loads(path.read_text(encoding="utf-8"))["check"]
    ]


@pytest.mark.published
@pytest.mark.parametrize("check", read("published"))
def test_published_value(check: dict[str, Any]) -> None:
    assert source(check["source"]).kind in {*READ, "second-hand", "from-memory"}
    assert check["expect"], "a check without an expected value cannot fail"
    assert not faults(check), f"{source(check['source']).short}, {check.get('where', '')}"


@pytest.mark.parametrize("check", read("frozen"))
def test_frozen_value(check: dict[str, Any]) -> None:
    assert not faults(check)


def test_checks_have_unique_ids() -> None:
    ids = [parameter.id for parameter in read("published")]
    assert len(set(ids)) == len(ids)


def test_a_wrong_value_is_found() -> None:
    check = {"call": "math.sqrt", "args": {}, "expect": {"value": 2.0}, "tolerance": {"value": 0.1}}
    assert faults(check | {"call": "tests.test_published.three"})


def three() -> float:
    return 3.0


def test_kinds_are_ordered_from_strong_to_weak() -> None:
    assert list(KINDS)[: len(READ)] == list(READ)

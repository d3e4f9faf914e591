"""The house rules that a machine can check."""

from __future__ import annotations

import ast
import re
import subprocess
from pathlib import Path

import pytest

from calc import tables
from calc.sources import bibliography
from docs_build.bootstrap import ROOT

ABOVE = {
    "calc": {"handbook", "docs_build", "tests", "sphinx", "docutils"},
    "docs_build": {"tests"},
    "handbook": {"tests"},
}
TOP = {
    "README.md", "DEVELOPERS.md", "LICENSE", "pyproject.toml",
    "handbook", "calc", "tests", "demo_cases", "docs_build",
}  # fmt: skip


def tracked() -> list[str]:
    done = subprocess.run(
        ["git", "ls-files"], cwd=ROOT, capture_output=True, text=True, check=False
    )
    return done.stdout.splitlines()


def test_top_level() -> None:
    tops = {path.split("/")[0] for path in tracked()}
    assert {top for top in tops if not top.startswith(".")} <= TOP


@pytest.mark.parametrize("tree", list(ABOVE))
def test_arrows_point_one_way(tree: str) -> None:
    for path in (ROOT / tree).rglob("*.py"):
        for node in ast.walk(ast.parse(path.read_text(encoding="utf-8"))):
            names = []
            if isinstance(node, ast.Import):
                names = [alias.name for alias in node.names]
            elif isinstance(node, ast.ImportFrom):
                names = [node.module or ""]
            for name in names:
                assert name.split(".")[0] not in ABOVE[tree], f"{path.relative_to(ROOT)}: {name}"


def test_nothing_of_a_machine_is_committed() -> None:
    foreign = re.compile(
        r"/(?:home|root|Users|tmp)/|(?:pypi|npmjs|debian)\.(?:org|com)|jsdelivr|unpkg|cdnjs|googleapis"
    )
    for name in tracked():
        path = ROOT / name
        if name.startswith("tests/test_house") or not path.is_file():
            continue
        try:
            text = path.read_text(encoding="utf-8")
        except UnicodeDecodeError:
            continue
        found = foreign.search(text)
        assert found is None, f"{name}: {found and found[0]}"


def test_every_table_row_has_a_known_source() -> None:
    for name in tables.names():
        for row in tables.rows(name):
            keys = row["source"] if isinstance(row["source"], list) else [row["source"]]
            assert set(keys) <= set(bibliography()), f"{name}: {row}"
            assert set(row) - {"key", "source", "note", "where"} <= set(
                tables.load(name)["columns"]
            ), f"{name}: a column is not declared in {dict(row)}"


def test_every_test_file_can_fail() -> None:
    sign = re.compile(r"assert |raises|fail\(|check_call")
    for path in (ROOT / "tests").rglob("test_*.py"):
        assert sign.search(path.read_text(encoding="utf-8")), path


def test_every_folder_of_the_computing_is_a_package() -> None:
    """The wheel takes packages alone; other folders would be missing in a page."""
    for path in (ROOT / "calc").rglob("*.py"):
        assert (path.parent / "__init__.py").exists(), path


@pytest.mark.parametrize("folder", sorted({path.parent for path in (ROOT / "calc").rglob("*.py")}))
def test_rooms_are_small(folder: Path) -> None:
    modules = sorted(folder.glob("*.py"))
    if (folder / "inputs.py").exists() or folder.name in {"declare", "numeric", "calc"}:
        assert len(modules) <= 15, folder
        for path in modules:
            assert len(path.read_text(encoding="utf-8").splitlines()) <= 300, path


def test_pages_of_the_front_matter_are_dated() -> None:
    for path in Path(ROOT / "handbook").rglob("*.md"):
        assert re.search(r"^reviewed: \d{4}-\d\d-\d\d$", path.read_text(), re.MULTILINE), path

"""A newcomer adds a calculator by one command, and it runs at once."""

from __future__ import annotations

import json
import shutil
import subprocess
import sys
from pathlib import Path

import pytest

from docs_build import new
from docs_build.bootstrap import ROOT, Trouble


@pytest.fixture
def copy(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    """A copy of what the command writes into."""
    for folder in ("calc", "handbook", "tests/published", "tests/calc"):
        shutil.copytree(ROOT / folder, tmp_path / folder)
    monkeypatch.setattr(new, "ROOT", tmp_path)
    return tmp_path


def test_a_new_calculator_runs_and_is_listed(copy: Path) -> None:
    said = new.calculator("wind_scale", "safety")
    assert any("tests/published/wind_scale.toml" in line for line in said)
    code = (
        "import json; from calc.catalogue import find; "
        "print(json.dumps(find('wind_scale').run({'first': '2 m', 'second': 3}).as_dict()))"
    )
    done = subprocess.run(
        [sys.executable, "-c", code],
        cwd=copy,
        env={"PYTHONPATH": str(copy)},
        capture_output=True,
        text=True,
        check=True,
    )
    assert json.loads(done.stdout)["results"]["total"]["value"] == 5
    for page in ("index.md", "safety/index.md", "training/goals.md"):
        assert "wind_scale" in (copy / "handbook" / page).read_text(encoding="utf-8")
    ruff = [sys.executable, "-m", "ruff", "check", "--config", str(ROOT / "pyproject.toml")]
    assert subprocess.call([*ruff, "calc"], cwd=copy) == 0


@pytest.mark.parametrize(
    ("name", "part", "sentence"),
    [
        ("Wind", "safety", "“Wind” is no name; allowed are lower-case words"),
        ("wind", "weather", "“weather” is no part of the book; allowed is biology, safety"),
        ("fogging", "safety", "calc/safety/fogging is there already"),
    ],
)
def test_what_cannot_be_made_is_one_sentence(
    copy: Path, name: str, part: str, sentence: str
) -> None:
    with pytest.raises(Trouble, match=sentence):
        new.calculator(name, part)

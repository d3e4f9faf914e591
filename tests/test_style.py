"""Format, lint and types, as part of the one test command."""

from __future__ import annotations

import subprocess
import sys

import pytest

from docs_build.bootstrap import ROOT


@pytest.mark.parametrize(
    "command", [["ruff", "format", "--check"], ["ruff", "check"], ["mypy"]], ids=" ".join
)
def test_style(command: list[str]) -> None:
    done = subprocess.run(
        [sys.executable, "-m", *command], cwd=ROOT, capture_output=True, text=True
    )
    assert done.returncode == 0, done.stdout + done.stderr

"""What all tests share: the built site, and the count of outside checks."""

from __future__ import annotations

import os
from pathlib import Path

import pytest

from docs_build import build
from docs_build.bootstrap import ROOT

# Kernels that nbval or a page starts must find the computing, too.
os.environ["PYTHONPATH"] = str(ROOT)


@pytest.fixture(scope="session")
def site() -> Path:
    """Return the folder of the built site, building it if nobody has."""
    if not (build.HTML / "sw.js").exists():
        build.site()
    return build.HTML


@pytest.fixture(scope="session")
def training_pdf(site: Path) -> Path:
    """Return the built training PDF."""
    return build.PDF / build.PDF_NAME


@pytest.fixture(scope="session")
def trainer_pdf(site: Path) -> Path:
    """Return the trainer's copy, building it if nobody has since the site was built."""
    made = build.PDF / build.TRAINER_NAME
    return made if made.exists() else build.pdf("trainer", doctrees=build.DOCTREES)


def pytest_collection_modifyitems(items: list[pytest.Item]) -> None:
    """Begin with the file that takes longest: at the end all others would wait for it."""
    items.sort(key=lambda item: item.path.name != "test_every_page.py")


def pytest_terminal_summary(terminalreporter: pytest.TerminalReporter) -> None:
    """Print how many outside checks ran, on a line of their own."""
    counted = {
        outcome: sum("published" in report.keywords for report in reports if report.when == "call")
        for outcome in ("passed", "failed")
        if (reports := terminalreporter.stats.get(outcome, [])) is not None
    }
    terminalreporter.write_line(
        f"outside checks (values and libraries from outside the project): "
        f"{counted.get('passed', 0)} passed, {counted.get('failed', 0)} failed"
    )

"""What all tests share: the built site, and the count of outside checks."""

from __future__ import annotations

import os
from pathlib import Path

import pytest

from docs_build import build, strength
from docs_build.bootstrap import ROOT

OUTSIDE = "outside check"

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
    """Begin with the file that takes longest, and note what each outside check rests on.

    At the end of a run all others would wait for that file.
    """
    items.sort(key=lambda item: item.path.name != "test_every_page.py")
    for item in items:
        if kind := rests_on(item):
            item.user_properties.append((OUTSIDE, kind))


def rests_on(item: pytest.Item) -> str:
    """Return what a check from outside rests on; nothing for any other test."""
    if item.get_closest_marker("library"):
        return "library"
    mark = item.get_closest_marker("published")
    return strength.of_check(mark.args[0]) if mark and mark.args else ""


def pytest_terminal_summary(terminalreporter: pytest.TerminalReporter) -> None:
    """Print how many outside checks ran, by what they rest on, on a line of their own."""
    passed, failed = (
        [
            kind
            for report in terminalreporter.stats.get(outcome, [])
            if report.when == "call"
            for name, kind in report.user_properties
            if name == OUTSIDE
        ]
        for outcome in ("passed", "failed")
    )
    memory = passed.count("memory")
    told = ", ".join(
        f"{passed.count(kind)} {words}"
        for kind, words in strength.RESTS_ON.items()
        if kind != "memory"
    )
    terminalreporter.write_line(
        f"outside checks: {told}, {len(passed) - memory} in all; {len(failed)} failed "
        f"(not counted: {memory} {strength.RESTS_ON['memory']})"
    )

"""A small book that holds one of everything, set once, and the real one."""

from __future__ import annotations

import warnings
from pathlib import Path

import pytest

with warnings.catch_warnings():
    # The drawing libraries open their fonts in a way that Python 3.11 calls old.
    warnings.simplefilter("ignore", DeprecationWarning)
    import ziamath  # noqa: F401

from tests.docs_build.print.training_book import SAMPLE, Book, sphinx

collect_ignore = ["sample"]  # its notebook is data, not to be run


@pytest.fixture(scope="session")
def sample(tmp_path_factory: pytest.TempPathFactory) -> Book:
    """The small book."""
    out = tmp_path_factory.mktemp("training")
    done = sphinx(SAMPLE, out)
    assert done.returncode == 0, done.stderr
    return Book(out / "field-handbook-2026.1.pdf")


@pytest.fixture(scope="session")
def handbook(training_pdf: Path) -> Book:
    """The real book."""
    return Book(training_pdf)


@pytest.fixture(params=["sample", "handbook"], scope="session")
def book(request: pytest.FixtureRequest) -> Book:
    """The small book, then the real one."""
    found: Book = request.getfixturevalue(request.param)
    return found

"""A small book that holds one of everything, set once, and the real one."""

from __future__ import annotations

import warnings
from pathlib import Path

import pytest

with warnings.catch_warnings():
    # The drawing libraries open their fonts in a way that Python 3.11 calls old.
    warnings.simplefilter("ignore", DeprecationWarning)
    import ziamath  # noqa: F401

from docs_build.print import names
from tests.docs_build.print.training_book import SAMPLE, Book, sphinx

collect_ignore = ["sample"]  # its notebook is data, not to be run


@pytest.fixture(scope="session")
def sample(tmp_path_factory: pytest.TempPathFactory) -> Book:
    """The small book, as its trainer has it."""
    out = tmp_path_factory.mktemp("training")
    done = sphinx(SAMPLE, out, "-D", "training_copy=trainer")
    assert done.returncode == 0, done.stderr
    return Book(out / names.file_name("2026.1", "trainer"))


@pytest.fixture(scope="session")
def handbook(trainer_pdf: Path) -> Book:
    """The real book, the trainer's copy: it holds all that the other holds."""
    return Book(trainer_pdf)


@pytest.fixture(scope="session")
def trainee(training_pdf: Path) -> Book:
    """The real book, the trainee's copy."""
    return Book(training_pdf)


@pytest.fixture(params=["sample", "handbook", "trainee"], scope="session")
def book(request: pytest.FixtureRequest) -> Book:
    """The small book, then both copies of the real one."""
    found: Book = request.getfixturevalue(request.param)
    return found

"""The drawings follow the size tables: drawn again, they are the files of the book."""

from __future__ import annotations

import importlib.util
import re
from pathlib import Path
from types import ModuleType

import pytest

from calc.biology.which_animal.traits import length_range

FIGURES = Path(__file__).parents[3] / "handbook" / "biology" / "figures"
NAMES = ("sizes", "bee_and_yellowjacket", "hornets", "faces", "paper_wasp", "nests")


@pytest.fixture(scope="module")
def draw() -> ModuleType:
    spec = importlib.util.spec_from_file_location("draw_animals", FIGURES / "draw.py")
    assert spec is not None
    assert spec.loader is not None
    module = importlib.util.module_from_spec(spec)
    # dataclasses look their module up by name while the class is made
    import sys

    sys.modules[spec.name] = module
    spec.loader.exec_module(module)
    return module


@pytest.mark.parametrize("name", NAMES)
def test_figure_is_as_the_tables_draw_it(
    draw: ModuleType, name: str, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(draw, "OUT", tmp_path)
    getattr(draw, name)()
    drawn = (tmp_path / f"{name}.svg").read_text(encoding="utf-8")
    assert drawn == (FIGURES / f"{name}.svg").read_text(encoding="utf-8")
    assert "<title>" in drawn
    assert "<desc>" in drawn


def test_letters_are_readable_on_a_phone() -> None:
    for name in NAMES:
        text = (FIGURES / f"{name}.svg").read_text(encoding="utf-8")
        assert 'viewBox="0 0 360 ' in text
        assert min(map(int, re.findall(r'font-size="(\d+)"', text))) >= 13


def test_middle_lengths_are_of_the_size_table(draw: ModuleType) -> None:
    low, high = length_range("mandarinia", "worker") or (0, 0)
    assert draw.middle("mandarinia") == pytest.approx((low + high) / 2)

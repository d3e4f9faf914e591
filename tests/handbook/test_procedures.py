"""Drawings and tables of the procedure pages: the sizes they name, and what a phone can show."""

from __future__ import annotations

import importlib.util
import re
import sys
from pathlib import Path
from types import ModuleType
from xml.etree import ElementTree as ET

import pytest

from calc import tables
from calc.catalogue import find
from docs_build.bootstrap import ROOT

FIGURES = ROOT / "handbook" / "method" / "figures"
SVG = "{http://www.w3.org/2000/svg}"
NARROW = 320
"""Width in pixels of a drawing on a screen of 360."""


@pytest.fixture(scope="module")
def drawing() -> ModuleType:
    path = FIGURES / "draw_procedures.py"
    spec = importlib.util.spec_from_file_location("draw_procedures", path)
    assert spec is not None
    assert spec.loader is not None
    module = importlib.util.module_from_spec(spec)
    before = list(sys.path)
    spec.loader.exec_module(module)
    sys.path[:] = before
    return module


def shown(calculator: str, name: str) -> float:
    return float(next(each.shown_example for each in find(calculator).inputs if each.name == name))


def sizes() -> dict[str, list[str]]:
    """Return what the worked examples hold, as the vacuum's table writes it, by its rows."""
    bore, wide = shown("catch_chamber", "bore_a"), shown("catch_chamber", "bore_b")
    assert bore == shown("flow_and_reach", "nozzle_bore") == shown("flow_and_reach", "hose_bore")
    return {
        "mouth": [f"{bore:g} mm", f"{wide:g} mm"],
        "hose": [
            f"{shown('flow_and_reach', 'hose_length'):g} m long",
            f"{bore:g} or {wide:g} mm",
        ],
        "gap": [f"{shown('catch_chamber', 'gap'):g} cm"],
        "net": [f"{shown('catch_chamber', 'give'):g} mm"],
        "chamber": [
            f"{shown('flow_and_reach', 'chamber'):g} cm wide",
            f"{shown('catch_chamber', 'volume'):g} L",
        ],
        "mesh": [
            f"{shown('catch_chamber', 'mesh_opening'):g} mm",
            f"{shown('catch_chamber', 'mesh_area'):g} cm²",
        ],
        "vents": [f"{shown('holding_and_driving', 'mesh_area'):g} cm²"],
        "motor": [
            f"sealed {shown('flow_and_reach', 'sealed'):g} kPa",
            f"open {shown('flow_and_reach', 'open_flow'):g} L/s",
        ],
    }


@pytest.mark.parametrize("key", sizes())
def test_vacuum_has_the_sizes_of_the_worked_examples(key: str) -> None:
    written = tables.row("vacuum_parts", key)["size"]
    assert [size for size in sizes()[key] if size not in written] == []


def test_drawing_names_the_sizes_of_its_table() -> None:
    drawn = " ".join(ET.parse(FIGURES / "catch_vacuum.svg").getroot().itertext())
    figures = {key: sizes()[key] for key in ("gap", "net", "mesh", "vents")}
    assert [size for found in figures.values() for size in found if size not in drawn] == []


def test_drawings_are_those_of_the_script(drawing: ModuleType) -> None:
    stale = [
        name
        for name, draw in drawing.DRAWINGS.items()
        if (FIGURES / f"{name}.svg").read_text(encoding="utf-8") != draw()
    ]
    assert stale == []


def test_words_in_drawings_can_be_read_on_a_phone(drawing: ModuleType) -> None:
    for name in drawing.DRAWINGS:
        root = ET.parse(FIGURES / f"{name}.svg").getroot()
        width = float(root.get("viewBox", "").split()[2])
        small = [
            text.text
            for text in root.iter(f"{SVG}text")
            if float(text.get("font-size", "0")) * NARROW / width < 11
        ]
        assert small == [], name
        assert root.findtext(f"{SVG}title"), name
        assert root.findtext(f"{SVG}desc"), name


def test_every_decision_table_counts_the_unknown_as_yes() -> None:
    for path in sorted((ROOT / "handbook" / "method").glob("place_*.md")):
        text = path.read_text(encoding="utf-8")
        decide = text.partition("## Decide\n")[2].partition("\n## ")[0]
        assert "Not known counts as yes" in decide, path.name
        assert "| none of these | the next step |" in decide, path.name


@pytest.mark.parametrize("path", sorted((ROOT / "handbook" / "quick").glob("*.md")), ids=str)
def test_cards_are_short(path: Path) -> None:
    body = path.read_text(encoding="utf-8").split("---\n", 2)[2]
    lines = [line for line in body.splitlines() if line.strip() and not line.startswith("#")]
    assert len(re.findall(r"^\d\. ", body, re.MULTILINE)) <= 9
    assert max(len(line) for line in lines) <= 110

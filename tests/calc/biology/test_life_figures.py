"""Drawings of species, brood, castes and colony follow the tables of ``calc``."""

from __future__ import annotations

import importlib
import re
import sys
import xml.etree.ElementTree as ET
from pathlib import Path
from types import ModuleType

import pytest

from calc.biology.which_animal.traits import length_range
from calc.tables import rows

ROOT = Path(__file__).parents[3]
FIGURES = ROOT / "handbook" / "biology" / "figures"
SVG = "{http://www.w3.org/2000/svg}"


@pytest.fixture(scope="module")
def drawn() -> dict[str, str]:
    """Return each drawing as its script makes it today."""
    sys.path[:0] = [str(FIGURES), str(ROOT / "handbook" / "method" / "figures")]
    life: ModuleType = importlib.import_module("draw_life")
    species: ModuleType = importlib.import_module("draw_species")
    made = {name: draw() for name, draw in life.DRAWINGS.items()}
    made["lookalikes"] = species.lookalikes()
    return made | {f"species_{key}": species.species(key) for key in species.KINDS}


def test_drawings_are_those_of_the_scripts(drawn: dict[str, str]) -> None:
    late = [
        name
        for name, text in drawn.items()
        if (FIGURES / f"{name}.svg").read_text(encoding="utf-8") != text
    ]
    assert late == []


def test_drawings_can_be_read_on_a_phone_and_tell_what_they_show(drawn: dict[str, str]) -> None:
    for text in drawn.values():
        root = ET.fromstring(text)
        assert root.get("viewBox", "").startswith("0 0 360 ")
        assert root.find(f"{SVG}title") is not None
        assert root.find(f"{SVG}desc") is not None
        assert min(map(int, re.findall(r'font-size="(\d+)"', text))) >= 13


def test_every_species_of_the_page_is_drawn_to_one_scale(drawn: dict[str, str]) -> None:
    page = (ROOT / "handbook" / "biology" / "species.md").read_text(encoding="utf-8")
    keys = re.findall(r"\{calc-table\} species_(?!size|wing)(\w+)", page)
    assert len(keys) == 15
    assert [key for key in keys if f"figures/species_{key}.svg" not in page] == []
    large = {}
    for key in keys:
        low, high = length_range(key, "worker") or (0, 0)
        share = float(re.findall(r"scale\(([\d.]+)\)", drawn[f"species_{key}"])[0])
        large[key] = share / ((low + high) / 2)
    assert max(large.values()) == pytest.approx(min(large.values()), rel=0.002)


def test_drawings_of_species_are_small(drawn: dict[str, str]) -> None:
    assert [n for n, t in drawn.items() if n.startswith("species_") and len(t) > 8000] == []


def test_brood_scale_tells_the_shares_of_the_table(drawn: dict[str, str]) -> None:
    told = re.findall(r"(\d+)–(\d+) %", drawn["brood_scale"])
    table = [
        (
            str(int(min(each["first"] + each["second"]))),
            str(int(max(each["first"] + each["second"]))),
        )
        for each in rows("pupal_colours")
    ]
    assert told == table


def test_males_have_one_joint_and_one_plate_more(drawn: dict[str, str]) -> None:
    said = " ".join(ET.fromstring(drawn["castes"]).itertext())
    assert said.count("12 joints") == 4
    assert said.count("13 joints") == 2
    assert said.count("6 plates") == 4
    assert said.count("7 plates") == 2

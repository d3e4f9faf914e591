"""Each published limit is told with its body, its place and the word that others may apply."""

from __future__ import annotations

import pytest

from calc import tables
from calc.catalogue import find

TOLD = {
    "fogging": ("EN 166", "Europe", "United States", "your own law"),
    "noise_dose": ("OSHA 1910.95", "NIOSH 1998", "European Union", "your own law"),
    "ladder_and_lines": ("OSHA 1926.1408", "DGUV 38", "United States", "your own law"),
    "hollow_tree": ("1963", "1992", "United States", "Germany", "arborists where you are"),
    "weight_and_lifting": ("NIOSH 94-110", "2021", "United States", "your own law"),
}


@pytest.mark.parametrize("name", list(TOLD))
def test_body_place_and_others(name: str) -> None:
    result = find(name).run(find(name).example())
    told = " ".join(f"{each.text} {each.reason}" for each in result.cautions).lower()
    for words in TOLD[name]:
        assert words.lower() in told, words


@pytest.mark.parametrize(
    ("table", "column"),
    [("noise_limits", "body"), ("noise_marks", "body"), ("ladder_rules", "body"),
     ("ladder_duty", "standard"), ("lift_levels", "body"), ("strength_loss", "rule"),
     ("anti_fog_marks", "standard"), ("ppe", "standard")],
)  # fmt: skip
def test_tables_of_limits_name_the_place(table: str, column: str) -> None:
    places = ("United States", "Europe", "Germany", "Canada", "United Kingdom", "Ours", "ours",
              "Arithmetic", "Practice", "Z87.1")  # fmt: skip
    for row in tables.rows(table):
        assert any(place in row[column] for place in places), row


@pytest.mark.parametrize("name", list(TOLD))
def test_a_caution_comes_before_the_numbers(name: str) -> None:
    first = find(name).run(find(name).example()).cautions[0]
    assert first.level in {"stop", "caution"}

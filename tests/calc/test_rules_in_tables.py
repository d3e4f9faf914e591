"""A table that quotes a rule has the rule's own words, numbers and all."""

from __future__ import annotations

import re

import pytest

from calc import rules, tables
from calc.clients.first_call import first_call

QUOTING = [
    ("call_decisions", "emergency", "say", "sting_emergency", ("flat", "adrenaline")),
    ("call_conditions", "stung", "reason", "after_sting", ("company",)),
    ("call_paths", "signs", "reason", "sting_call", ("lay",)),
    ("visit_stops", "catch_hot", "do", "heat_stroke", ("signs", "cool")),
    ("anaphylaxis_signs", "skin", "do", "sting_emergency", ("hives",)),
]


@pytest.mark.parametrize(("table", "key", "column", "rule", "steps"), QUOTING)
def test_a_row_holds_the_words_of_the_rule(
    table: str, key: str, column: str, rule: str, steps: tuple[str, ...]
) -> None:
    assert rules.text(rule, *steps) in tables.row(table, key)[column]


def test_no_cell_keeps_a_name_in_place_of_words() -> None:
    for name in tables.names():
        for row in tables.rows(name):
            for value in row.values():
                assert not re.search(r"\{(?:rule|num)\}", str(value)), (name, row)


def test_a_caller_hears_how_to_lie_and_what_to_give() -> None:
    told = first_call(hurt="signs")
    assert "legs raised" in told.values["say"]
    assert "Adrenaline at once, also in doubt" in told.values["say"]


def test_one_rule_for_hives_alone() -> None:
    """The commonest sign has the same answer in the table, on the card and in the call."""
    hives = rules.text("sting_emergency", "hives")
    assert hives in tables.row("anaphylaxis_signs", "skin")["do"]
    assert hives in tables.row("call_conditions", "stung")["reason"]


def test_the_card_has_all_that_a_bystander_is_asked() -> None:
    """Each line of the first aid plans and the basic life support texts named as its source."""
    card = rules.text("sting_emergency")
    for words in (
        "legs raised", "sit, legs straight out", "on the side", "on the left",
        "No standing, no walking", "also in doubt", "outer thigh", "no seam", "5 min",
        "5 to 6 cm", "100 to 120 a minute", "defibrillator", "Note the time", "Stay.",
    ):  # fmt: skip
        assert words in card
    assert len(card.split()) <= 300, "one side of A5"

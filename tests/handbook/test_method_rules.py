"""What the rules of the method say agrees with its calculators, tables and pages."""

from __future__ import annotations

import re
from pathlib import Path

import pytest

from calc import rules, tables
from calc.method.feeding_brood import feeding_brood
from calc.method.letting_go import letting_go
from calc.method.passing_on import condition
from calc.method.waiting_for_stragglers import waiting_for_stragglers
from docs_build.bootstrap import ROOT

ONLY = re.compile(r"^:only: (.+)$", re.MULTILINE)
PAPER = sorted((ROOT / "handbook" / "method").glob("*.md"))


def test_the_release_rule_holds_what_the_calculator_asks_for() -> None:
    place, day = rules.rule("release").step("place"), rules.rule("release").step("day")
    assert f"at least {condition('distance'):.0f} m" in place.plain
    assert f"about {condition('age'):.0f} days" in day.plain
    example = letting_go.example()
    assert letting_go.run(example | {"distance": condition("distance") - 1}).stopped
    assert not letting_go.run(example | {"distance": condition("distance")}).stopped
    for age, said in ((condition("age") - 1, "Wait"), (condition("age"), "Let them go now")):
        assert str(letting_go.run(example | {"age": age}).values["verdict"]).startswith(said)


def test_nobody_is_told_to_let_kin_mate() -> None:
    result = letting_go.run(letting_go.example())
    assert "together" not in str(result.values["verdict"])
    assert any("Do not cage queens and males to mate" in each.text for each in result.cautions)


def test_brood_is_colder_than_where_hornets_freeze() -> None:
    """Noor-ul-Ane and Jung 2021 print -6.5 and -11.3 degC; a museum cycle is 48 hours."""
    ours = tables.row("freezing", "freezer")
    printed = {"worker": -6.5, "queen": -11.3}
    for key, temperature in printed.items():
        assert tables.row("supercooling", key)["temperature"] == temperature
        assert ours["temperature"] < temperature
    assert ours["hours"] >= tables.row("freezing", "parks")["hours"]
    fed = feeding_brood.run(feeding_brood.example())
    assert any(rules.text("freezing", "cold") in each.text for each in fed.cautions)
    assert "-18" in rules.text("freezing", "cold").replace("\u2212", "-")


def test_a_long_wait_is_not_spent_in_the_suit() -> None:
    result = waiting_for_stragglers.run(waiting_for_stragglers.example())
    said = [each.text for each in result.cautions]
    assert any(rules.text("waiting", "outside") in each for each in said)
    stop = tables.row("visit_stops", "wait_ladder")["do"]
    assert rules.text("waiting", "outside") in stop


@pytest.mark.parametrize(
    ("stop", "rule", "step"),
    [
        ("leave_live", "closing", "live"),
        ("report_promise", "never_empty", "number"),
        ("pack_sun", "live_box", "parked"),
    ],
)
def test_a_stop_of_the_visit_has_the_words_of_the_rule(stop: str, rule: str, step: str) -> None:
    assert rules.text(rule, step) in tables.row("visit_stops", stop)["do"]


@pytest.mark.parametrize("path", PAPER, ids=lambda path: path.stem)
def test_pages_on_paper_take_their_stops_from_the_table(path: Path) -> None:
    """The pages of the visit are not printed, so the method's pages place the same rows."""
    text = path.read_text(encoding="utf-8")
    for row in tables.rows("visit_stops"):
        assert row["do"] not in text, f"{path.name} copies {row['key']}"
    placed = {key for found in ONLY.findall(text) for key in found.split()}
    assert placed <= {row["key"] for row in tables.rows("visit_stops")}
    if path.stem == "opening_the_cavity":
        assert placed >= {"open_wires", "open_flue", "open_asbestos", "open_load"}
    if path.stem == "approach":
        assert placed >= {"look_bees", "look_notifiable", "brief_reaction", "arrive_alone"}

"""The call sheet: each rule can speak, each leads where its row says, none is hidden."""

from __future__ import annotations

from typing import Any

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from calc import tables
from calc.clients.first_call import first_call
from calc.clients.first_call_rules import parsed, rules
from calc.declare import Choice, Number

GOOD: dict[str, Any] = {
    "hurt": "no", "reaction": "none", "bees": "no", "animal": "vulgaris", "status": "native",
    "treated": "no", "where": "roof", "indoors": "no", "near": 2, "in_use": "yes",
    "winters": "cold", "days": 90,
    "access": "ladder", "power_lines": "no", "opening": "fabric", "role": "owner",
    "consent": "yes", "dogs": "none", "photo": "yes",
}  # fmt: skip

CASES: dict[str, dict[str, Any]] = {
    "signs": {"hurt": "signs"},
    "no_plan": {"reaction": "no_plan"},
    "bees": {"bees": "yes"},
    "bees_named": {"animal": "bees"},
    "notifiable": {"status": "notifiable"},
    "invader": {"animal": "velutina", "status": "unknown"},
    "protected": {"status": "protected"},
    "treated": {"treated": "yes"},
    "power": {"power_lines": "yes"},
    "tree": {"opening": "tree", "where": "hollow_tree"},
    "above": {"access": "above"},
    "refused": {"consent": "no"},
    "ask_hurt": {"hurt": "unknown"},
    "ask_bees": {"bees": "unknown"},
    "ask_reaction": {"reaction": "unknown"},
    "ask_treated": {"treated": "unknown"},
    "ask_hornet": {"animal": "crabro", "status": "unknown"},
    "indoors": {"indoors": "yes"},
    "allergy_near": {"reaction": "plan", "adrenaline": "yes"},
    "late_inside": {"near": 5, "days": 20},
    "late_outside": {"near": 5, "days": 20, "where": "ground"},
    "far": {"near": 8, "in_use": "no"},
    "bridge": {"near": 3.5, "days": 45},
    "move": {"in_use": "no"},
    "permitted": {"status": "protected", "permit": "yes"},
    "hornet": {"animal": "crabro"},
    "in_the_way": {},
}


def rows(told: Any) -> list[str]:
    return [row["rule"] for row in told.values["rules"]]


def test_every_deciding_rule_has_a_case() -> None:
    assert set(CASES) == {rule.key for rule in rules() if rule.effect != "adds"}


@pytest.mark.parametrize("key", CASES)
def test_a_case_is_decided_by_its_rule(key: str) -> None:
    rule = next(each for each in rules() if each.key == key)
    told = first_call(**(GOOD | CASES[key]))
    assert rows(told)[0].startswith(f"{rule.rule}. {rule.reason}")
    assert told.values["decision"] == rule.decision
    assert told.values["why"].startswith(rule.rule)
    assert told.stopped == (rule.effect == "path")
    assert (told.values["before"] is None) == (rule.effect == "path")


@pytest.mark.parametrize(
    ("key", "answers"),
    [
        ("stung", {"hurt": "stung"}),
        ("plan", {"reaction": "plan"}),
        ("old_adrenaline", {"reaction": "plan", "adrenaline": "expired"}),
        ("nobody_knows", {"treated": "nobody_knows"}),
        ("consent", {"consent": "asked"}),
        ("tenant", {"role": "tenant"}),
        ("fabric", {}),
        ("opening_unknown", {"opening": "unknown"}),
        ("power_unknown", {"power_lines": "unknown"}),
        ("status_unknown", {"status": "unknown"}),
        ("introduced", {"status": "introduced"}),
        ("indoors_unknown", {"indoors": "unknown"}),
        ("winters_unknown", {"winters": "unknown"}),
        ("mild", {"winters": "mild"}),
        ("days", {"days": None}),
        ("ladder", {}),
        ("access", {"access": "unknown"}),
        ("dogs", {"dogs": "loose"}),
        ("dogs_unknown", {"dogs": "unknown"}),
        ("photo", {"photo": "no"}),
    ],
)
def test_what_to_see_to_is_listed(key: str, answers: dict[str, Any]) -> None:
    rule = next(each for each in rules() if each.key == key)
    told = first_call(**(GOOD | answers))
    assert rule.rule in [row["what"] for row in told.values["before"]]


def test_every_condition_has_a_case() -> None:
    marks = test_what_to_see_to_is_listed.pytestmark  # type: ignore[attr-defined]
    tried = {case[0] for mark in marks for case in mark.args[1]}
    assert tried == {rule.key for rule in rules() if rule.effect == "adds"}


def test_exercises_of_the_page() -> None:
    base = {**GOOD, "where": "box", "opening": "no"}
    told = first_call(**(base | {"animal": "crabro", "near": 3.5, "days": 49}))
    assert told.values["decision"] == "Leave, with a fence or screen"
    told = first_call(**(GOOD | {"reaction": "no_plan", "treated": "yes"}))
    assert told.values["decision"] == "Doctor first"
    assert [each.level for each in told.cautions].count("stop") == 2
    assert told.values["before"] is None
    assert first_call(**(GOOD | {"treated": "unknown"})).values["decision"] == "Ask first"


def test_nothing_answered_asks_first() -> None:
    told = first_call()
    assert told.values["decision"] == "Ask first"
    assert "Remove" not in [row["leads_to"] for row in told.values["rules"]]
    assert len(told.values["open"]) >= 10
    assert not first_call(**GOOD).values["open"]


def test_paths_go_before_all_else_and_all_are_named() -> None:
    told = first_call(**(GOOD | {"bees": "yes", "hurt": "signs", "treated": "yes"}))
    assert told.values["decision"].startswith("Hang up")
    stops = [each for each in told.cautions if each.level == "stop"]
    assert len(stops) == 3


def test_mild_winters_never_count_on_frost() -> None:
    for where in ("roof", "ground"):
        told = first_call(**(GOOD | {"winters": "mild", "near": 5, "days": 10, "where": where}))
        assert told.values["decision"] == "Remove"


def test_introduced_hornets_are_not_relocated() -> None:
    told = first_call(**(GOOD | {"animal": "crabro", "status": "introduced"}))
    assert told.values["decision"] == "Remove"


@pytest.mark.published("ahrweiler_hornets")
def test_distances_are_those_of_the_authorities() -> None:
    # Landkreis Ahrweiler: keep 3 m; Gemeinde Neuzelle: hornets answer within about 4 m.
    assert tables.row("call_limits", "near_line")["distance"] == 3
    assert tables.row("call_limits", "far_line")["distance"] == 4
    assert first_call(**(GOOD | {"near": 2.9, "days": 20})).values["decision"] == "Remove"
    assert "season" in first_call(**(GOOD | {"near": 3, "days": 20})).values["decision"]
    assert "Remove" in first_call(**(GOOD | {"near": 4, "days": 90})).values["decision"]
    told = first_call(**(GOOD | {"near": 4.1, "in_use": "no", "days": 90}))
    assert told.values["decision"] == "Leave and explain"


def test_tests_name_inputs_words_and_options_that_exist() -> None:
    by_name = {each.name: each for each in first_call.inputs}
    limits = {row["key"] for row in tables.rows("call_limits")}
    for rule in rules():
        for name, word, value in rule.test:
            each = by_name[name]
            if word in {"is", "not"}:
                options = {"unknown"}
                if isinstance(each, Choice):
                    options = {option.value for option in each.options}
                assert set(value.split("|")) <= options, rule
            else:
                assert isinstance(each, Number)
                assert value in limits
    with pytest.raises(ValueError, match="no such word"):
        parsed("near under soon")


def test_every_decision_is_reached_and_none_says_safe() -> None:
    decisions = {row["decision"] for row in tables.rows("call_decisions")}
    assert decisions == {rule.decision for rule in rules() if rule.effect != "adds"}
    for name in ("call_paths", "call_choices", "call_conditions", "call_decisions"):
        for row in tables.rows(name):
            assert not any("safe" in str(value).lower() for value in row.values())


@settings(max_examples=400, deadline=None, derandomize=True, database=None)
@given(
    st.fixed_dictionaries(
        {
            each.name: st.sampled_from([option.value for option in each.options])
            for each in first_call.inputs
            if isinstance(each, Choice)
        }
    ),
    st.floats(0, 200),
    st.none() | st.integers(0, 365),
)
def test_dangerous_answers_never_end_in_a_visit(
    answers: dict[str, Any], near: float, days: int | None
) -> None:
    told = first_call(**answers, near=near, days=days)
    go = told.values["decision"] in {"Remove", "Relocate"}
    dangerous = (
        answers["hurt"] in {"signs", "unknown"}
        or answers["reaction"] in {"no_plan", "unknown"}
        or answers["bees"] != "no"
        or answers["animal"] == "bees"
        or answers["treated"] in {"yes", "unknown"}
        or answers["status"] == "notifiable"
        or (answers["status"] == "protected" and answers["permit"] != "yes")
        or answers["power_lines"] == "yes"
        or answers["consent"] == "no"
    )
    assert not (go and dangerous)
    assert told.values["rules"]

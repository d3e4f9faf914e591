"""The call sheet: each rule can speak, each leads where its row says, none is hidden."""

from __future__ import annotations

from random import Random
from typing import Any

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from scipy import stats

from calc import rules as book
from calc import tables
from calc.asking import ask
from calc.clients.first_call import asking, first_call
from calc.clients.first_call.inputs import Inputs
from calc.clients.first_call.rules import deciders, parsed, rules
from calc.declare import Choice, Incomplete, Number
from calc.errors import InputError

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
    "ask_bees": {"bees": "unknown"},
    "ask_reaction": {"reaction": "unknown"},
    "ask_treated": {"treated": None},
    "ask_hornet": {"animal": "crabro", "status": "unknown"},
    "indoors": {"indoors": "yes"},
    "ask_near": {"near": None},
    "allergy_near": {"reaction": "plan", "adrenaline": "yes"},
    "late_inside": {"near": 5, "days": 20},
    "late_outside": {"near": 5, "days": 20, "where": "ground"},
    "ask_in_use": {"in_use": "unknown"},
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
        ("swelling", {"reaction": "swelling"}),
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
    assert first_call(**(GOOD | {"treated": None})).values["decision"] == "Ask first"


def test_nothing_answered_waits_for_the_first_question() -> None:
    answer = first_call.answer({})
    assert isinstance(answer, Incomplete)
    assert [each.name for each in answer.missing] == ["hurt"]
    assert book.text("sting_call", "lay", "hang") in answer.cautions[0].text


def test_a_certain_stop_is_said_before_the_first_question() -> None:
    answer = first_call.answer({"treated": "yes", "near": 3})
    assert isinstance(answer, Incomplete)
    assert answer.stopped


def test_one_answer_asks_first() -> None:
    told = first_call(hurt="no")
    assert told.values["decision"] == "Ask first"
    assert "Remove" not in [row["leads_to"] for row in told.values["rules"]]
    assert len(told.values["open"]) >= 10
    assert not first_call(**GOOD).values["open"]
    assert {told.origins[name] for name in ("bees", "near", "days")} == {"not given"}


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
                    options |= {option.value for option in each.options}
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
            each.name: st.sampled_from(
                [option.value for option in each.options] + [None] * each.optional
            )
            for each in first_call.inputs
            if isinstance(each, Choice)
        }
    ),
    st.none() | st.floats(0, 200),
    st.none() | st.integers(0, 365),
)
def test_dangerous_answers_never_end_in_a_visit(
    answers: dict[str, Any], near: float | None, days: int | None
) -> None:
    told = first_call(**answers, near=near, days=days)
    if near is None and answers["indoors"] != "yes":
        assert told.values["decision"] not in {"Remove", "Relocate"}
    go = told.values["decision"] in {"Remove", "Relocate"}
    dangerous = (
        answers["hurt"] == "signs"
        or answers["reaction"] in {"no_plan", "unknown", None}
        or answers["bees"] != "no"
        or answers["animal"] == "bees"
        or answers["treated"] in {"yes", None}
        or answers["status"] == "notifiable"
        or (answers["status"] == "protected" and answers["permit"] != "yes")
        or answers["power_lines"] == "yes"
        or answers["consent"] == "no"
    )
    assert not (go and dangerous)
    assert told.values["rules"]


# One question at a time


def truth(random: Random, likely: bool) -> dict[str, Any]:
    """Draw what one caller would answer, as we expect callers or with every answer as likely."""
    made: dict[str, Any] = {}
    for row in tables.rows("call_answers"):
        each = next(one for one in Inputs.declared if one.name == row["key"])
        if each.only_if is None or made[each.only_if[0]] in each.only_if[1]:
            shares = row["shares"] if likely else None
            made[row["key"]] = random.choices(row["answers"], shares)[0]
    return made


def asked(caller: dict[str, Any]) -> tuple[int, str]:
    """Ask until the decision stands; return how many questions it took, and the decision."""
    said: dict[str, Any] = {}
    for count in range(len(caller) + 1):
        found = asking.asks(said)
        if found.asked is None:
            assert found.settled
            return count, found.standing
        assert found.asked.name not in said, "asked twice"
        said[found.asked.name] = caller[found.asked.name]
    raise AssertionError("asked for more than the caller can say")


def by_the_list(caller: dict[str, Any]) -> int:
    """Return how many questions the order of the sheet takes to the same end."""
    said: dict[str, Any] = {}
    for count, name in enumerate(caller):
        if said and asking.asks(said).settled:
            return count
        said[name] = caller[name]
    return len(caller)


def percentile(values: list[int], share: float) -> int:
    return sorted(values)[min(int(share * len(values)), len(values) - 1)]


@pytest.mark.parametrize(("likely", "middle", "most"), [(True, 10, 15), (False, 3, 10)])
def test_asking_ends_in_the_decision_of_the_full_sheet(
    likely: bool, middle: int, most: int, capsys: pytest.CaptureFixture[str]
) -> None:
    # most callers are asked much, since each of ten questions can still send the job elsewhere
    random = Random(13)
    counts, listed = [], []
    for _ in range(500):
        caller = truth(random, likely)
        count, decision = asked(caller)
        assert decision == first_call(**caller).values["decision"], caller
        counts.append(count)
        listed.append(by_the_list(caller))
    with capsys.disabled():
        kind = "plausible" if likely else "random"
        told = [
            f"{percentile(each, 0.5)} and {percentile(each, 0.95)}" for each in (counts, listed)
        ]
        print(f"\nquestions to {kind} callers, median and 95th percentile: {told[0]}; "
              f"in the order of the sheet {told[1]}")  # fmt: skip
    assert percentile(counts, 0.5) <= middle
    assert percentile(counts, 0.95) <= most
    assert sum(counts) < sum(listed)


@pytest.mark.parametrize(
    ("said", "decision"),
    [
        ({"hurt": "signs"}, "Hang up: emergency call"),
        ({"hurt": "no", "reaction": "no_plan"}, "Doctor first"),
        ({"hurt": "stung", "reaction": "none", "bees": "yes"}, "Send elsewhere: beekeeper"),
    ],
)
def test_the_first_questions_can_end_it(said: dict[str, Any], decision: str) -> None:
    *before, _ = said
    assert not ask(first_call, {name: said[name] for name in before}).settled
    found = ask(first_call, said)
    assert found.asked is None
    assert found.standing == decision


def test_the_first_question_has_the_greatest_worth() -> None:
    assert asking.next_question(frozenset()) == asking.FIRST
    assert ask(first_call, {}).as_dict()["question"]["input"] == "hurt"


def test_the_gravest_questions_come_early() -> None:
    said: dict[str, Any] = {}
    answers = GOOD | {"hurt": "no"}
    order = []
    while (found := asking.asks(said)).asked is not None:
        assert found.why
        order.append(found.asked.name)
        said[found.asked.name] = answers[found.asked.name]
    assert {"hurt", "reaction", "bees", "treated"} <= set(order[:5])
    assert order.index("animal") < order.index("status")
    assert found.standing == "Remove"


def test_each_answer_of_the_sheet_is_expected_of_callers() -> None:
    # an answer that the table leaves out could end the asking too early
    tested = {name for rule in deciders() for name, _, _ in rule.test}
    rows = {row["key"]: row for row in tables.rows("call_answers")}
    assert set(rows) == tested
    for each in Inputs.declared:
        if each.name not in tested:
            continue
        row = rows[each.name]
        assert sum(row["shares"]) == pytest.approx(100)
        assert min(row["shares"]) > 0
        if isinstance(each, Choice):
            assert set(row["answers"]) == {option.value for option in each.options}
        else:
            assert isinstance(each, Number)
            tried = {asking._signature(each.name, value) for value in range(201)}
            tried |= {asking._signature(each.name, value + 0.5) for value in range(200)}
            assert tried <= {asking._signature(each.name, one) for one in row["answers"]}


def test_a_caller_who_cannot_say_is_not_asked_again() -> None:
    said = {name: one for name, one in GOOD.items() if name not in {"near", "days"}}
    assert asking.asks(said).asked is not None
    assert asking.asks(said | {"near": None, "days": None}).standing == "Ask first"
    with pytest.raises(InputError):
        asking.asks({"hurt": "a lot"})


@pytest.mark.library("scipy")
@pytest.mark.parametrize("chances", [(9 / 14, 5 / 14), (0.5, 0.25, 0.25), (0.9, 0.06, 0.03, 0.01)])
def test_information_against_a_library(chances: tuple[float, ...]) -> None:
    # scipy 1.17.1, scipy.stats.entropy to the base 2
    told = {str(place): chance for place, chance in enumerate(chances)}
    assert asking.entropy(told) == pytest.approx(stats.entropy(chances, base=2), rel=1e-12)

"""No result claims a dependence that it has not: what is the same in every run is told so."""

from __future__ import annotations

import json
import random
from typing import Any

import pytest

from calc.catalogue import CALCULATORS
from calc.declare import (
    Answer,
    Calculator,
    Choice,
    Count,
    Counts,
    Day,
    Input,
    Number,
    Numbers,
    Out,
    Time,
)
from calc.declare.numbers import SLIP
from calc.errors import InputError
from calc.method.flow_and_reach import flow_and_reach
from docs_build.bootstrap import ROOT

SAME = "The same for every job."
CASES, CASE = ROOT / "demo_cases", "*/case.json"
NUMBERS = {"number", "count", "interval"}


LISTS: dict[str, dict[str, Any]] = {
    "time_and_price": {"times_from": "past", "past": [90, 120, 240]}
}
"""Lists without an example that hardly an invented job gives."""


def values(each: Input) -> list[Any]:
    """Return what is tried of one input: every option, both ends and some between, longer lists."""
    if isinstance(each, Choice):
        return [option.value for option in each.options]
    if isinstance(each, Day | Time):
        return list(each.over(6))
    if isinstance(each, Numbers):
        start = list(each.shown_example or ())
        grown = [min(each.high, one * 1.5 + place) for place, one in enumerate(reversed(start))]
        whole = isinstance(each, Counts)
        return [[int(one) if whole else one for one in reversed(grown)]] if start else []
    if not isinstance(each, Number):
        return []
    made = [each.low + (each.high - each.low) * share for share in (0, 0.1, 0.25, 0.5, 1)]
    return [int(value) for value in made] if isinstance(each, Count) else made


def starts(calculator: Calculator) -> list[dict[str, Any]]:
    """Return the worked example, changed lists, and what the invented jobs give."""
    cases = (json.loads(path.read_text(encoding="utf-8")) for path in sorted(CASES.glob(CASE)))
    given = [case["inputs"].get(calculator.name) for case in cases]
    example = calculator.example()
    changed = example | LISTS.get(calculator.name, {})
    return [example, changed, *(one for one in given if one)]


def told(calculator: Calculator) -> dict[str, set[str]]:
    """Return every value of every result over many runs, without what a run leaves out."""
    picked = random.Random(4)
    tried = {each.name: values(each) for each in calculator.inputs}
    bases = starts(calculator)
    runs = [*bases, *(bases[0] | {name: one} for name, many in tried.items() for one in many)]
    for turn in range(150):
        changed = {n: picked.choice(v) for n, v in tried.items() if v and picked.random() < 0.3}
        runs.append(bases[turn % len(bases)] | changed)
    found: dict[str, set[str]] = {out.name: set() for out in calculator.outputs}
    for given in runs:
        try:
            result = calculator.run(given)
        except InputError:
            continue
        for name, one in result.values.items():
            if one is not None:
                found[name].add(json.dumps(one, default=str))
    return found


@pytest.mark.parametrize("name", list(CALCULATORS))
def test_a_number_that_never_changes_is_told_as_one(name: str) -> None:
    calculator = CALCULATORS[name]
    found = told(calculator)
    for out in calculator.outputs:
        if out.kind in NUMBERS:
            constant = len(found[out.name]) == 1
            assert constant == (SAME in out.meaning), (out.name, sorted(found[out.name])[:2])


@pytest.mark.parametrize(
    "change",
    [
        {"temperature": 0},
        {"temperature": 35},
        {"altitude": 2500},
        {"bends": 0},
        {"bends": 4, "bend": "sharp_bend"},
        {"chamber": 15},
    ],
)
def test_the_reach_says_what_it_hardly_hangs_on(change: dict[str, Any]) -> None:
    example = flow_and_reach.example()
    before, after = (flow_and_reach.run(example | given).values for given in ({}, change))
    for one, other in zip(before["reach"], after["reach"], strict=True):
        assert abs(one - other) <= 0.5 + 1e-9
    meaning = flow_and_reach.out("reach").meaning
    assert "Weather, altitude, bends and chamber change" in meaning


def calculator(core: Any) -> Calculator:
    table = Out(
        name="rows",
        label="Rows",
        meaning="Rows.",
        kind="table",
        columns=(Out(name="cell", label="Cell", meaning="Cell."),),
    )
    one = Out(name="one", label="One", meaning="One.")
    return Calculator(
        name="trial",
        title="Trial",
        part="method",
        purpose="Trial.",
        inputs=(),
        outputs=(one, table),
        core=core,
        sources=(),
    )


@pytest.mark.parametrize("answer", [{"oen": 1.0}, {"one": 1.0, "rows": [{"cel": 1.0}]}])
def test_a_misspelt_result_is_a_fault_and_not_no_figure(answer: dict[str, Any]) -> None:
    with pytest.raises(KeyError, match=r"result oen|cell rows\.cel"):
        calculator(lambda: Answer(values=answer)).run({})


def test_a_result_left_out_has_no_figure() -> None:
    assert calculator(lambda: Answer(values={})).run({}).text("one") == "no figure"


def numeric() -> list[tuple[str, Number]]:
    return [
        (name, each)
        for name, one in CALCULATORS.items()
        for each in one.inputs
        if isinstance(each, Number)
    ]


def test_a_unit_is_spelled_one_way() -> None:
    for name, each in numeric():
        assert (each.unit + each.customary).isascii(), (name, each.name)


def test_a_limit_that_only_catches_slips_says_so_in_one_wording() -> None:
    assert sum(each.why == SLIP for _, each in numeric()) > 30
    wording = SLIP.removeprefix("beyond it ")
    found = [path for path in (ROOT / "calc").rglob("*.py") if wording in path.read_text("utf-8")]
    assert [path.name for path in found] == ["numbers.py"]


@pytest.mark.parametrize("name", ["bends", "distance", "chamber", "slot_length", "hole", "gaps"])
def test_what_no_machine_limits_names_no_machine(name: str) -> None:
    each = next(one for one in flow_and_reach.inputs if one.name == name)
    assert isinstance(each, Number)
    assert "machine" not in each.why

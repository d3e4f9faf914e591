"""Every value knows where it comes from, and no answer hangs on a value that nobody gave."""

from __future__ import annotations

import json
import math
import subprocess
import sys
from random import Random
from typing import Any

import pytest

from calc.asking import ask
from calc.catalogue import CALCULATORS
from calc.declare import Calculator, Incomplete, Number, Result
from calc.declare.fields import Given, count, number
from calc.errors import InputError
from calc.influence import GIVEN, influence, ordered
from calc.sources import bibliography
from docs_build.bootstrap import ROOT

ALL = list(CALCULATORS.values())
ROOMS = [each for each in ALL if each.given is not None]
MOST_ASKED = 5
ONE_AT_A_TIME = {"first_call", "which_animal"}
"""They lead through questions, so that only one of them is on the screen."""

each_calculator = pytest.mark.parametrize("calculator", ALL, ids=lambda each: each.name)
each_room = pytest.mark.parametrize("calculator", ROOMS, ids=lambda each: each.name)


def needed(calculator: Calculator) -> set[str]:
    return {each.name for each in calculator.reading({}).missing}


@each_calculator
def test_nothing_given_names_all_that_is_missing(calculator: Calculator) -> None:
    missing = needed(calculator)
    if not missing:
        assert isinstance(calculator.answer({}), Result)
        return
    with pytest.raises(InputError) as caught:
        calculator.run({})
    assert {problem.field for problem in caught.value.problems} == missing
    told = calculator.answer({})
    assert isinstance(told, Incomplete)
    assert {each.name for each in told.missing} == missing
    assert told.as_dict()["known"] == 0


@each_calculator
def test_the_worked_example_is_whole(calculator: Calculator) -> None:
    result = calculator.run(calculator.example())
    assert result.as_dict()["complete"] is True
    assert any(result.values[out.name] is not None for out in calculator.outputs if out.main)


@each_calculator
def test_each_input_tells_origin_range_and_source(calculator: Calculator) -> None:
    told = calculator.describe()
    for each, declared in zip(told["inputs"], calculator.inputs, strict=True):
        assert each["origin"] in {"asked", "equipment", "usual", "extra"}
        if isinstance(declared, Number):
            low, high = each["plausible"]
            assert declared.low <= low <= high <= declared.high, each["name"]
            assert {each["source"], each["plausible_source"]} <= set(bibliography())
        if each["usual_source"]:
            assert each["usual_source"] in bibliography(), each["name"]


@each_room
def test_a_room_asks_little(calculator: Calculator) -> None:
    asked = [each.name for each in calculator.inputs if each.origin == "asked"]
    assert asked
    assert len(asked) <= MOST_ASKED or calculator.name in ONE_AT_A_TIME, asked
    order = [each.origin for each in calculator.inputs]
    assert order == sorted(order, key=("asked", "equipment", "usual", "extra").index)
    for each in calculator.inputs:
        if each.origin == "asked":
            assert each.standing is None, f"{each.name} is asked and has a usual value"
            assert each.optional or each.shown_example is not None, each.name
        if each.standing is not None:
            assert each.usual_source, f"{each.name} has a usual value without a source"
        if each.origin == "usual":
            assert each.standing is not None, each.name
        if each.origin == "extra":
            conditional = each.only_if is not None
            assert each.optional or each.standing is not None or conditional, each.name


@each_calculator
def test_origins_are_carried_to_the_answer(calculator: Calculator) -> None:
    given = calculator.example()
    name = next(iter(given))
    told = calculator.run(given, origins={name: "job"}).as_dict()["inputs"]
    assert told[name]["origin"] == "job"
    for each in calculator.inputs:
        if each.name != name:
            expected = "given" if each.name in given else "not given"
            assert told[each.name]["origin"] in {expected, "not given"}, each.name


@each_calculator
def test_any_part_of_the_inputs_gives_an_answer_or_what_is_missing(calculator: Calculator) -> None:
    """Random subsets of random plausible values: finite, or incomplete, or the one error."""
    random = Random(calculator.name)
    for _ in range(12):
        names = random.sample(calculator.inputs, random.randint(0, len(calculator.inputs)))
        given: dict[str, Any] = {each.name: each.draw(random) for each in names}
        try:
            told = calculator.answer(given)
        except InputError:
            continue
        text = json.dumps(told.as_dict(), allow_nan=False)
        assert ("results" in json.loads(text)) == isinstance(told, Result)
        if isinstance(told, Incomplete):
            assert told.missing
            assert not {each.name for each in told.missing} & set(given)
            for low, high in told.ranges.values():
                assert math.isfinite(low)
                assert low <= high


@each_calculator
def test_a_caution_said_too_early_would_be_wrong(calculator: Calculator) -> None:
    """What is said while values are missing still holds once the example is given."""
    example = calculator.example()
    for name in needed(calculator) & set(example):
        told = calculator.answer({key: value for key, value in example.items() if key != name})
        if isinstance(told, Incomplete):
            whole = calculator.run(example)
            assert set(told.cautions) <= set(whole.cautions), name


@pytest.mark.parametrize("calculator", ROOMS, ids=lambda each: each.name)
def test_influence_is_sorted_and_true(calculator: Calculator) -> None:
    found = influence(calculator, calculator.example())
    assert {each.origin for each in found.effects} <= {"usual", "not given"}
    keys = [(each.flips, each.moves) for each in found.effects]
    assert keys == sorted(keys, reverse=True)
    json.dumps(found.as_dict(), allow_nan=False)
    told = calculator.run(calculator.example())
    assert all(told.origins[each.declared.name] not in GIVEN for each in found.effects)


@each_room
def test_the_next_question_is_the_one_that_matters_most(calculator: Calculator) -> None:
    if calculator.asks is not None:
        pytest.skip("chooses by what its questions decide, tested with it")
    told = calculator.answer({})
    if not isinstance(told, Incomplete):
        return
    first = ask(calculator, {})
    assert first.asked == ordered(told)[0]
    whole = ask(calculator, calculator.example())
    assert whole.asked is None
    assert whole.settled


class Sum(Given):
    a: float = number("A", "One.", low=0, high=10, plausible=(1, 3), example=2)
    b: float = number("B", "Ten times as much.", low=0, high=100, example=20)
    c: int = count(
        "C", "As it is.", low=0, high=9, origin="usual", usual=4, usual_source="arithmetic"
    )


def test_fields_become_inputs_of_one_frozen_class() -> None:
    assert [each.name for each in Sum.declared] == ["a", "b", "c"]
    x = Sum(a=1.0, b=2.0, c=3)
    assert (x.a, x.b, x.c) == (1.0, 2.0, 3)
    with pytest.raises(AttributeError):
        x.a = 2.0  # type: ignore[misc]


@pytest.mark.parametrize("command", [["influence"], ["ask"], ["run"]])
def test_the_door_answers_without_numpy(command: list[str]) -> None:
    code = "import sys; sys.modules['numpy'] = None; from calc.__main__ import main; "
    code += f"raise SystemExit(main({[*command, 'fogging']!r}))"
    given = '{"air_temperature": 20, "humidity": 80, "sweat": "wet", "breath": "normal"}'
    done = subprocess.run(
        [sys.executable, "-c", code], cwd=ROOT, input=given, capture_output=True, text=True
    )
    told = json.loads(done.stdout)
    if command == ["ask"]:
        assert done.returncode == 0
        assert told["question"]["input"] == "eyewear"
    else:
        assert done.returncode == 2
        assert told["error"]["field"] == "eyewear"

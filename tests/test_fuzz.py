"""Random and hostile input: each gives a finite result or the one error."""

from __future__ import annotations

import json
import math
from typing import Any

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from calc.catalogue import CALCULATORS
from calc.declare import Calculator, Choice, Input, Number, Numbers
from calc.errors import InputError

HOSTILE = st.one_of(
    st.none(),
    st.booleans(),
    st.integers(),
    st.floats(allow_nan=True, allow_infinity=True),
    st.text(max_size=30),
    st.sampled_from(
        [
            "", " ", "nan", "inf", "-inf", "1e999", "-1", "1,500", "1,5", "0x10", "１２", "5 m",
            "5 degC",
            "9**9**9 m", "5 __import__('os')", "<script>alert(1)</script>", "'; DROP TABLE", "\x00",
            "60, 35, 20, 11", "60 35;20", "5 parsec", "1/0", "5 m/", "--3", "+ 4", "٣", "1_000",
        ]
    ),
    st.lists(st.one_of(st.integers(-5, 200), st.floats(), st.text(max_size=5)), max_size=40),
    st.dictionaries(st.sampled_from(["value", "unit", "x"]), st.one_of(st.floats(), st.text())),
)  # fmt: skip


def sensible(each: Input) -> st.SearchStrategy[Any]:
    """Return values inside the declared limits, now and then just outside."""
    if isinstance(each, Choice):
        return st.sampled_from([option.value for option in each.options])
    assert isinstance(each, Number)
    whole = each.kind in {"count", "counts"}
    edge = [each.low, each.high]
    one: st.SearchStrategy[Any]
    if whole:
        one = st.integers(int(each.low), int(each.high)) | st.integers(0, 60)
    else:
        one = st.floats(each.low, each.high) | st.sampled_from(edge)
    if isinstance(each, Numbers):
        return st.lists(one, min_size=each.least, max_size=min(each.most, 8))
    return one


def inputs(calculator: Calculator) -> st.SearchStrategy[dict[str, Any]]:
    """Return mappings that mix sensible and hostile values, some left out."""
    mostly = {
        each.name: st.one_of(sensible(each), sensible(each), sensible(each), HOSTILE)
        for each in calculator.inputs
    }
    good = {each.name: sensible(each) for each in calculator.inputs}
    needed = {each.name: good[each.name] for each in calculator.inputs if each.needed}
    more = {name: each for name, each in good.items() if name not in needed}
    return st.one_of(
        st.fixed_dictionaries(needed, optional=more),
        st.fixed_dictionaries({}, optional=good),
        st.fixed_dictionaries({}, optional=mostly),
        st.dictionaries(st.sampled_from([*good, "zz", ""]), HOSTILE, max_size=4),
    )


def walk(value: Any) -> None:
    """Fail at any number that is not finite."""
    if isinstance(value, dict):
        for each in value.values():
            walk(each)
    elif isinstance(value, list):
        for each in value:
            walk(each)
    elif isinstance(value, float):
        assert math.isfinite(value)


@pytest.mark.parametrize("name", list(CALCULATORS))
def test_any_input_gives_a_finite_result_or_the_one_error(name: str) -> None:
    calculator = CALCULATORS[name]
    seen = {"result": 0, "error": 0}

    @settings(
        max_examples=2000,
        deadline=None,
        derandomize=True,
        suppress_health_check=list(HealthCheck),
        database=None,
    )
    @given(inputs(calculator))
    def run(values: dict[str, Any]) -> None:
        try:
            told = calculator.run(values).as_dict()
        except InputError as error:
            seen["error"] += 1
            for problem in error.problems:
                assert problem.sentence.strip()
                assert problem.allowed
                json.dumps(problem.as_dict(), allow_nan=False)
            return
        seen["result"] += 1
        walk(told)
        json.dumps(told, allow_nan=False)
        assert told["edition"]

    run()
    assert seen["result"] > 100, f"too few valid inputs were tried: {seen}"
    assert seen["error"] > 100, f"too few hostile inputs were tried: {seen}"

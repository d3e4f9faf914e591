"""Every result of the part on safety carries a caution and a source, whatever is typed."""

from __future__ import annotations

import pytest
from hypothesis import HealthCheck, given, settings

from calc.catalogue import CALCULATORS
from calc.declare import LEVELS
from calc.errors import InputError
from calc.sources import bibliography
from tests.test_fuzz import inputs

SAFETY = [name for name, each in CALCULATORS.items() if each.part == "safety"]


def test_the_part_is_there() -> None:
    assert {"heat_in_suit", "sting_plan", "keep_away", "briefing"} <= set(SAFETY)


@pytest.mark.parametrize("name", SAFETY)
def test_every_result_has_a_caution_and_a_source(name: str) -> None:
    calculator = CALCULATORS[name]
    seen = []

    @settings(
        max_examples=400,
        deadline=None,
        derandomize=True,
        database=None,
        suppress_health_check=list(HealthCheck),
    )
    @given(inputs(calculator))
    def walk(values: dict[str, object]) -> None:
        try:
            result = calculator.run(calculator.example() | values)
        except InputError:
            return
        seen.append(result)
        assert result.cautions, "a result without a caution"
        assert result.sources, "a result without a source"
        for each in result.cautions:
            assert each.text
            assert each.reason
            assert each.source in bibliography()
            assert set(each.hides) <= {out.name for out in calculator.outputs}
            assert (each.level == "stop") or not each.hides
        levels = [LEVELS.index(each.level) for each in result.cautions]
        assert levels == sorted(levels), "the gravest caution comes first"

    walk()
    assert len(seen) > 30


@pytest.mark.parametrize("name", SAFETY)
def test_stops_withhold_what_they_name(name: str) -> None:
    """What a stop names as withheld is withheld."""
    calculator = CALCULATORS[name]

    @settings(max_examples=200, deadline=None, derandomize=True, database=None,
              suppress_health_check=list(HealthCheck))  # fmt: skip
    @given(inputs(calculator))
    def walk(values: dict[str, object]) -> None:
        try:
            result = calculator.run(calculator.example() | values)
        except InputError:
            return
        for each in result.cautions:
            if each.level == "stop":
                assert all(not result.values[hidden] for hidden in each.hides)

    walk()

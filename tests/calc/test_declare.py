"""The declaration: reading, limits, cautions, results."""

from __future__ import annotations

from dataclasses import FrozenInstanceError

import pytest

from calc.declare import (
    Answer,
    Calculator,
    Caution,
    Choice,
    Count,
    Counts,
    Number,
    Option,
    Out,
    Result,
    Soft,
)  # fmt: skip
from calc.errors import InputError


def core(catches: tuple[int, ...], air: float, sun: str, helpers: int, gap: float | None) -> Answer:
    stop = Caution(
        level="stop", text="Too few.", reason="Two are needed.", source="arithmetic", hides=("n",)
    )
    note = Caution(level="note", text="Note.", reason="Because.", source="arithmetic")
    return Answer(
        values={"n": sum(catches), "speed": 12.34, "range": (1.0, None), "gap": gap},
        cautions=[note, *([stop] if sum(catches) < 2 else [])],
    )


SAMPLE = Calculator(
    name="sample",
    title="Sample",
    part="method",
    purpose="Shows what a declaration does.",
    inputs=(
        Counts(
            name="catches", label="Catches", meaning="m", low=0, high=100, why="w",
            source="arithmetic", least=2, most=4, item="pass", example=(60, 35),
        ),
        Number(
            name="air", label="Air temperature", meaning="m", unit="degC", customary="degF",
            low=-10, high=45, why="beyond it nobody works", source="arithmetic", example=20,
            soft=(Soft(high=35, text="Hot.", reason="Heat.", source="arithmetic"),),
        ),
        Choice(
            name="sun", label="Sun", meaning="m", example="no",
            options=(Option(value="yes", label="Yes"), Option(value="no", label="No")),
        ),
        Count(
            name="helpers", label="Helpers", meaning="m", low=0, high=9, why="w",
            source="arithmetic", usual=1,
            usual_source="arithmetic",
        ),
        Number(
            name="gap", label="Gap", meaning="m", unit="mm", customary="inch", low=0, high=10,
            why="w", source="arithmetic", only_if=("sun", ("yes",)),
        ),
    ),
    outputs=(
        Out(name="n", label="N", meaning="m", kind="count", main=True),
        Out(name="speed", label="Speed", meaning="m", unit="m/s", customary="mph", digits=1),
        Out(name="range", label="Range", meaning="m", kind="interval"),
        Out(name="gap", label="Gap", meaning="m", unit="mm"),
    ),
    core=core,
    sources=("arithmetic",),
)  # fmt: skip


def sample(**given: object) -> Result:
    """Run the worked example with some values changed."""
    return SAMPLE.run(SAMPLE.example() | given)


def sentences(**given: object) -> list[str]:
    with pytest.raises(InputError) as caught:
        sample(**given)
    return [problem.sentence for problem in caught.value.problems]


def test_example_and_units() -> None:
    result = sample()
    assert result["n"] == 95
    assert result["speed"].to("km/hour").magnitude == pytest.approx(44.424)
    assert result.text("speed") == "12.3 m/s"
    assert result.text("speed", customary=True) == "27.6 mph"
    assert result.text("range") == "1 or more"


def test_customary_bare_numbers() -> None:
    assert SAMPLE.run(SAMPLE.example() | {"air": "68"}, customary=True).inputs["air"] == 20
    assert sample(air="68 degF").inputs["air"] == 20


def test_lists_from_text_and_sequences() -> None:
    for given in ("60, 35 20", [60, 35, 20], (60, "35", 20.0), "60;35\n20"):
        assert sample(catches=given).inputs["catches"] == (60, 35, 20)


@pytest.mark.parametrize(
    ("given", "words"),
    [
        ({"catches": "5"}, "1 value was given"),
        ({"catches": "1 2 3 4 5"}, "5 values were given"),
        ({"catches": "5, -1"}, "pass 2: -1 is below the lowest value taken"),
        ({"catches": [1.5, 2]}, "pass 1: 1.5 is not a whole number"),
        ({"catches": 5}, "is not a list of values"),
        ({"catches": ""}, "a value is missing"),
        ({"air": 46}, "46 °C is above the highest value taken"),
        ({"air": "120 degF"}, "(14 to 113 °F)"),
        ({"helpers": 1.5}, "is not a whole number"),
        ({"helpers": -1}, "below the lowest"),
        ({"sun": "maybe"}, "is not one of the options"),
        ({"sun": "yes"}, "Gap: a value is missing"),
        ({"colour": 1}, "is no input of “Sample”"),
    ],
)
def test_bad_input(given: dict[str, object], words: str) -> None:
    assert words in sentences(**given)[0]


def test_every_problem_is_told_at_once() -> None:
    assert len(sentences(catches="5", air=99, sun="?")) == 3


def test_limit_itself_is_taken_in_any_unit() -> None:
    assert sample(air="113 degF").inputs["air"] == 45


def test_inactive_input_is_ignored() -> None:
    assert sample(sun="no", gap="not a number").inputs["gap"] is None


def test_stop_hides_its_number_and_comes_first() -> None:
    result = sample(catches=[1, 0], air=40)
    assert [caution.level for caution in result.cautions] == ["stop", "caution", "note"]
    assert result["n"] is None
    assert result.stopped


def test_result_is_frozen() -> None:
    result = sample()
    with pytest.raises(FrozenInstanceError):
        result.edition = "x"  # type: ignore[misc]
    with pytest.raises(TypeError):
        result.values["n"] = 1  # type: ignore[index]


def test_core_that_is_not_finite_is_a_fault() -> None:
    with pytest.raises(ArithmeticError, match="speed is not finite"):
        SAMPLE.out("speed").finite(float("inf"))

"""Seeded exercise sheets: the same for the same seed, solvable, and their keys true."""

from __future__ import annotations

import math
import subprocess
import sys
from collections.abc import Mapping
from random import Random
from typing import Any

import pytest

from calc import units
from calc.catalogue import CALCULATORS
from calc.declare import Calculator, Choice, Number
from docs_build import __main__ as door
from docs_build import commands, exercises
from docs_build.bootstrap import ROOT
from docs_build.exercise_kinds import TEMPLATES, Template, always
from docs_build.exercises import Exercise

SEEDS = range(200)


def drawn(name: str, seed: int) -> Exercise:
    return next(each for each in exercises.sheet(seed) if each.template.name == name)


def test_there_are_enough_kinds() -> None:
    names = [template.name for template in TEMPLATES]
    assert len(names) == len(set(names)) >= 10
    assert len({template.calculator for template in TEMPLATES}) >= 8


@pytest.mark.parametrize("template", TEMPLATES, ids=lambda template: template.name)
def test_what_is_asked_and_drawn_is_declared(template: Template) -> None:
    calculator = CALCULATORS[template.calculator]
    assert set(template.draws) <= {each.name for each in calculator.inputs}
    for name in template.asked:
        assert calculator.out(name).kind != "table"


def test_the_same_seed_gives_the_same_sheet_in_another_process() -> None:
    command = [sys.executable, "-c", "from docs_build import exercises as e; print(e.markdown(7))"]
    # Text is read as UTF-8 whatever the machine's own habit.
    done = subprocess.run(
        [command[0], "-X", "utf8", *command[1:]],
        cwd=ROOT,
        capture_output=True,
        encoding="utf-8",
        check=True,
    )
    assert done.stdout.rstrip() == exercises.markdown(7).rstrip()


def test_another_seed_gives_other_numbers() -> None:
    one, two = exercises.sheet(1), exercises.sheet(2)
    fresh = [a.template.name for a, b in zip(one, two, strict=True) if a.drawn != b.drawn]
    assert len(fresh) >= len(TEMPLATES) - 2


@pytest.mark.parametrize("template", TEMPLATES, ids=lambda template: template.name)
def test_every_seed_gives_an_answer(template: Template) -> None:
    cases = set()
    for seed in SEEDS:
        made = exercises.exercise(template, 1, Random(f"{seed}:{template.name}"))
        assert not made.result.stopped, (seed, made.drawn)
        for name in template.asked:
            value = made.result.values[name]
            assert value is not None, (seed, name)
            assert not isinstance(value, float) or math.isfinite(value), (seed, name)
        cases.add(repr(sorted(made.drawn.items())))
    # acclimatisation has 3 persons x 5 days x 10 lengths, the least of all kinds
    assert len(cases) > 80, "the seeds hardly change the case"


def typed(calculator: Calculator, given: Mapping[str, str]) -> dict[str, Any]:
    """What a trainee types who reads the sheet: its words and rounded numbers, nothing else."""
    made: dict[str, Any] = {}
    for each in calculator.inputs:
        text = given.get(each.label)
        if text is None:
            continue
        if isinstance(each, Choice):
            made[each.name] = next(one.value for one in each.options if one.label == text)
        elif isinstance(each, Number):
            # The form's field holds the number; its unit stands beside the field.
            made[each.name] = text.removesuffix(f" {units.label(each.unit)}")
    return made


@pytest.mark.parametrize("seed", [0, 3, 11, 42])
def test_the_sheet_as_printed_leads_to_the_key_as_printed(seed: int) -> None:
    for each in exercises.sheet(seed):
        calculator = each.result.calculator
        labels = [label for label, _ in each.given()]
        assert len(labels) == len(set(labels)), f"{each.template.name}: two inputs with one label"
        again = calculator.run(typed(calculator, dict(each.given())))
        for name, (label, text) in zip(each.template.asked, each.answers(), strict=True):
            assert again.text(name) == text, f"{each.template.name}, {label}"


@pytest.mark.parametrize("seed", [1, 2, 3])
def test_keys_against_arithmetic_of_our_sources(seed: int) -> None:
    price = drawn("price", seed).result
    # a margin is a share of the price: price = cost / (1 - margin)
    margin = price.inputs["margin"] / 100
    assert price.values["price"] == pytest.approx(price.values["cost"] / (1 - margin), abs=0.01)

    ladder = drawn("ladder", seed).result
    # 29 CFR 1926.1053(b)(5)(i): the foot stands out a quarter of the working length
    foot, high = ladder.values["foot_out"], ladder.inputs["support_height"]
    assert foot == pytest.approx(math.hypot(foot, high) / 4, rel=1e-6)

    comb = drawn("comb", seed).result
    # a regular hexagon of width p across its flats has the area p^2 sqrt(3) / 2
    cell = comb.values["pitch_used"] ** 2 * math.sqrt(3) / 2
    area = sum(math.pi / 4 * (10 * axis) ** 2 for axis in comb.inputs["long_axes"])
    assert comb.values["cells"] == pytest.approx(area / cell, rel=0.01)

    days = drawn("first-days", seed).result
    # OSHA: those new to the heat and those back from a long absence, 20 % more each day
    rule = [20, 40, 60, 80, 100]
    share = rule[min(int(days.inputs["day"]), len(rule)) - 1]
    assert days.values["today_share"] == pytest.approx(share)


def test_the_markdown_holds_the_sheet_and_then_the_key() -> None:
    text = exercises.markdown(5)
    sheet, _, key = text.partition("# Key to sheet 5")
    for each in exercises.sheet(5):
        heading = f"## {each.number}. {each.template.page}"
        assert heading in sheet
        assert heading in key
        for label, answer in each.answers():
            assert f"- {label}: **{answer}**" in key
            assert f"- {label}: **" not in sheet


def test_a_kind_that_always_stops_is_told() -> None:
    template = Template(
        name="always hot",
        calculator="heat_in_suit",
        page="",
        story="",
        draws={"air_temperature": always(48.0)},
        asked=("work_minutes",),
        judge="",
        point="",
    )
    with pytest.raises(ValueError, match="always hot"):
        exercises.exercise(template, 1, Random(1))


def test_the_command_prints_it_and_refuses_what_is_no_seed(
    capsys: pytest.CaptureFixture[str],
) -> None:
    options = door.parser().parse_args(["exercises", "--seed", "5"])
    assert commands.run(options, []) == 0
    assert capsys.readouterr().out == exercises.markdown(5)
    with pytest.raises(SystemExit):
        door.parser().parse_args(["exercises", "--seed", "five"])
    assert "allowed is 0 to 999999999" in capsys.readouterr().err

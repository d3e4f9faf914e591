"""Identification scored on descriptions written without sight of the trait table.

``tests/data/descriptions.toml`` holds them, with the accounts they were written from beside it in
``description_sources.toml``: their sources belong to the test, not to the book.
"""

from __future__ import annotations

import tomllib
from collections.abc import Mapping
from pathlib import Path
from typing import Any

import pytest

from calc.biology.which_animal import which_animal
from calc.biology.which_animal.duty import GRAVITY, decided, duty, is_named
from calc.biology.which_animal.inputs import UNKNOWN, Inputs
from calc.biology.which_animal.posterior import bee_signs, chances
from calc.biology.which_animal.traits import animals, group
from calc.tables import rows

DATA = Path(__file__).parents[2] / "data"
LEAST = 40
TOP_TWO = 0.8
NAMES = {each.name for each in Inputs.declared}


def read(name: str) -> dict[str, Any]:
    return tomllib.loads((DATA / name).read_text(encoding="utf-8"))


def seen_in(one: Mapping[str, Any]) -> dict[str, str]:
    return {name: value for name, value in one["inputs"].items() if name in NAMES}


def meant(one: Mapping[str, Any]) -> list[str]:
    value = one["animal"]
    return list(value) if isinstance(value, list) else [value]


ALL = read("descriptions.toml")["description"]
INVENTED = read("descriptions_invented.toml")["description"]
ACCOUNTS = read("description_sources.toml")


def place(one: Mapping[str, Any]) -> int:
    """Return the best place of a meant animal on the list, 1 for the first."""
    order = list(chances(seen_in(one)))
    return 1 + min(order.index(animal) for animal in meant(one))


def test_there_are_enough_and_each_is_well_formed() -> None:
    assert len(ALL) >= LEAST
    assert len(INVENTED) == 30
    for one in (*ALL, *INVENTED):
        assert set(meant(one)) <= set(animals()), one
        assert seen_in(one), one
        which_animal.run(seen_in(one))
        keys = one["source"] if isinstance(one["source"], list) else [one["source"]]
        assert set(keys) <= set(ACCOUNTS), one


def test_top_two_hits_and_every_miss(capsys: pytest.CaptureFixture[str]) -> None:
    places = {str(one.get("id", number)): place(one) for number, one in enumerate(ALL)}
    first = sum(value == 1 for value in places.values())
    two = sum(value <= 2 for value in places.values())
    with capsys.disabled():
        print(f"\nidentification: {len(ALL)} descriptions, top-1 {first}, top-2 {two}")
        for number, one in enumerate(ALL):
            if place(one) > 1:
                order = list(chances(seen_in(one)).items())[:3]
                told = ", ".join(f"{animal} {100 * part:.0f} %" for animal, part in order)
                print(f"  {one.get('id', number)}: {meant(one)} is no. {place(one)} of {told}")
    assert two >= TOP_TWO * len(ALL)


def _wasp_is_named(one: Mapping[str, Any]) -> bool:
    chance = chances(seen_in(one))
    return is_named(chance) and group(next(iter(chance))) == "wasp"


def _of(*groups: str) -> list[Any]:
    return [
        pytest.param(one, id=str(one.get("id", number)))
        for number, one in enumerate(ALL)
        if all(group(animal) in groups for animal in meant(one))
    ]


@pytest.mark.parametrize("one", _of("bee"))
def test_no_bee_below_a_wasp(one: dict[str, Any]) -> None:
    # Without a sign of a bee among the answers no ranking is promised, but no wasp may be named.
    chance = chances(seen_in(one))
    if bee_signs(seen_in(one)):
        bee = max(part for animal, part in chance.items() if group(animal) == "bee")
        wasp = max(part for animal, part in chance.items() if group(animal) == "wasp")
        assert bee > wasp
        assert which_animal.run(seen_in(one)).stopped
    assert not _wasp_is_named(one)


def test_the_printed_score_is_the_score() -> None:
    places = [place(one) for one in ALL]
    bees = [one for one in ALL if all(group(animal) == "bee" for animal in meant(one))]
    score = {
        "all": len(ALL),
        "first": sum(value == 1 for value in places),
        "first_two": sum(value <= 2 for value in places),
        "bees": len(bees),
        "bees_stopped": sum(which_animal.run(seen_in(one)).stopped for one in bees),
        "wasp_for_bee": sum(
            _wasp_is_named(one)
            for one in ALL
            if not {group(animal) for animal in meant(one)} & {"wasp", "unknown"}
        ),
    }
    bees = [one for one in INVENTED if group(one["animal"]) == "bee"]
    places = [place(one) for one in INVENTED]
    score |= {
        "invented": len(INVENTED),
        "invented_first": sum(value == 1 for value in places),
        "invented_first_two": sum(value <= 2 for value in places),
        "invented_bees_stopped": sum(which_animal.run(seen_in(one)).stopped for one in bees),
    }
    assert len(bees) == 10
    assert score == {str(row["key"]): row["count"] for row in rows("identify_score")}


def test_no_invented_description_gets_a_lighter_duty_than_its_animal() -> None:
    for one in INVENTED:
        seen = seen_in(one)
        true = str(duty(one["animal"], seen["region"])["status"])
        told = decided(chances(seen), seen).status
        assert GRAVITY.index(told) <= GRAVITY.index(true), one["id"]


def test_nearly_every_bee_is_described_with_a_sign() -> None:
    signs = [bool(bee_signs(seen_in(each.values[0]))) for each in _of("bee")]
    assert sum(signs) >= 0.9 * len(signs)


@pytest.mark.parametrize("one", _of("solitary wasp", "no stinging insect"))
def test_no_look_alike_is_named_a_wasp(one: dict[str, Any]) -> None:
    assert not _wasp_is_named(one)


def test_every_invader_is_reported() -> None:
    found = 0
    for one in ALL:
        region = seen_in(one).get("region", UNKNOWN)
        if all(duty(animal, region)["status"] == "notifiable" for animal in meant(one)):
            found += 1
            told = " ".join(each.text for each in which_animal.run(seen_in(one)).cautions)
            assert "released" in told or "never release" in told, one
    assert found >= 3

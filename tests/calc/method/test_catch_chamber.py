"""The catch chamber: what must hold whatever is typed, and every caution."""

from __future__ import annotations

from typing import Any

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from calc.declare import Incomplete, Result
from calc.method import bodies, insect
from calc.method import mesh as wire
from calc.method.catch_chamber import catch_chamber, landing
from calc.method.catch_chamber import cautions as written_there
from calc.method.catch_chamber.inputs import Inputs
from calc.method.catch_chamber.setups import Setup, meets_at, mesh
from tests.calc.method.caution_cover import check, written


def hose_of(bore: float, flow: float) -> Setup:
    return Setup("A", flow, bore, 3.0, bodies.animal("crabro"), 1.2)


EXAMPLE = catch_chamber.example()


def run(**given: Any) -> Result:
    return catch_chamber.run(EXAMPLE | given)


CAUTIONS: list[tuple[dict[str, Any], str, str]] = [
    ({"animal": "germanica", "mesh_opening": 6}, "stop", "does not hold these animals"),
    ({"animal": "crabro_queen", "mesh_opening": 4}, "caution", "Nobody has published"),
    ({"animal": "crabro", "mesh_opening": 4}, "caution", "by a trap figure"),
    ({"mesh_area": 100}, "caution", "hose areas"),
    ({"temperature": 35}, "stop", "Too hot to hold animals"),
    ({"temperature": 31}, "caution", "It is hot"),
    ({}, "caution", "Some arrive at about"),
    ({"give": 5}, "caution", "The landing is hard"),
    ({"flow_b": 15}, "caution", "too slow to lift a limp animal"),
    ({"animal": "crabro", "volume": 2}, "caution", "too small for them"),
    ({"animal": "crabro", "volume": 8}, "note", "small for so many"),
    ({}, "caution", "When the motor stops"),
    ({}, "caution", "Close the hose with a plug"),
    ({}, "caution", "put a hard box round them"),
    ({"animal": "velutina"}, "caution", "Report this hornet"),
    ({}, "note", "nobody has published how speed hurts"),
    ({}, "note", "Never draw in petrol"),
]


@pytest.mark.parametrize(("inputs", "level", "part"), CAUTIONS)
def test_caution(inputs: dict[str, Any], level: str, part: str) -> None:
    check(catch_chamber, EXAMPLE | inputs, level, part)


def test_every_caution_is_tested() -> None:
    # One of them is built once and read as two levels, by how small the chamber is.
    assert written(written_there) == len({part for _, _, part in CAUTIONS}) - 1


def test_quiet_set_up_raises_no_landing_caution() -> None:
    result = run(animal="crabro", compare="no", flow_a=44, bore_a=63, mesh_area=800)
    texts = " ".join(each.text for each in result.cautions)
    assert "Some arrive" not in texts
    assert "hose areas" not in texts
    assert result.values["arrival_b"] is None
    assert {line["b"] for line in result.values["comparison"]} == {"not compared"}


def test_a_stop_hides_how_long_to_run() -> None:
    result = run(animal="germanica", mesh_opening=6)
    assert result.stopped
    assert result.values["battery_minutes"] is None
    assert result.values["arrival_a"] is not None


@pytest.mark.parametrize(
    ("given", "part"),
    [
        ({"temperature": 36}, "Too hot to hold animals"),
        ({"animal": "germanica", "mesh_opening": 6}, "does not hold these animals"),
    ],
)
def test_a_certain_stop_does_not_wait(given: dict[str, Any], part: str) -> None:
    told = catch_chamber.answer(given)
    assert isinstance(told, Incomplete)
    assert told.stopped
    assert any(part in each.text for each in told.cautions)


def test_what_always_holds_waits_for_nothing() -> None:
    told = " ".join(each.text for each in catch_chamber.answer({}).cautions)
    for part in ("When the motor stops", "Close the hose with a plug", "Never draw in petrol"):
        assert part in told


def test_the_second_hose_is_asked_for_only_to_compare() -> None:
    alone = {name: value for name, value in EXAMPLE.items() if not name.endswith("_b")}
    told = catch_chamber.answer(alone)
    assert isinstance(told, Incomplete)
    assert [each.name for each in told.missing] == ["flow_b", "bore_b", "length_b"]
    del alone["compare"]
    assert catch_chamber.run(alone).values["arrival_b"] is None


def test_wider_hose_halves_the_arrival() -> None:
    values = run().values
    assert values["arrival_b"] < 0.5 * values["arrival_a"]


def test_a_wide_chamber_does_not_stop_a_hornet() -> None:
    setup = hose_of(bore=0.038, flow=0.034)
    assert meets_at(setup, 50) / setup.arrives() > 0.9


@settings(max_examples=60, deadline=None, derandomize=True)
@given(
    speed=st.floats(2, 60),
    mass=st.floats(20, 1000),
    short=st.floats(0.3, 5),
    more=st.floats(0.1, 5),
)
def test_longer_hose_is_faster_and_never_faster_than_air(
    speed: float, mass: float, short: float, more: float
) -> None:
    area = bodies.area_of(mass)
    near = landing.arrival(speed, 1.2, area, mass, short)
    far = landing.arrival(speed, 1.2, area, mass, short + more)
    assert 0 < near < far < speed


def test_heavy_animals_arrive_slower_and_land_harder() -> None:
    light, heavy = (bodies.animal(key) for key in ("germanica", "crabro"))
    slow, fast = (landing.arrival(30, 1.2, each.area, each.mass, 3) for each in (heavy, light))
    assert slow < fast
    assert landing.energy(heavy.mass, slow) > landing.energy(light.mass, fast)


def test_give_needed_is_the_stated_give_at_the_target() -> None:
    assert landing.give_needed(8.0) == pytest.approx(50.0)
    assert landing.mean_deceleration(16, landing.give_needed(16) / 1000) == pytest.approx(
        landing.mean_deceleration(8, 0.05)
    )


def test_scaled_area_is_the_known_one_for_the_known_mass() -> None:
    assert bodies.area_of(477.5) == pytest.approx(70.0)


@pytest.mark.parametrize(
    ("opening", "head", "word"),
    [
        (2.5, "vespula", "holds"),
        (2.6, "vespula", "unknown"),
        (5.5, "vespula", "passes"),
        (5.5, "velutina", "likely"),
        (8.0, "crabro", "likely"),
        (8.5, "crabro", "unknown"),
        (9.0, "crabro", "passes"),
        (3.0, None, "unknown"),
    ],
)
def test_mesh_against_animal(opening: float, head: str | None, word: str) -> None:
    assert wire.holding(opening, head) == word


def test_covered_mesh_costs_more() -> None:
    given = Inputs(**catch_chamber.run(EXAMPLE).inputs)
    for setup in (hose_of(bore=0.038, flow=0.034), hose_of(bore=0.063, flow=0.044)):
        line = mesh(setup, given)
        assert line["half"] > 4 * line["clean"]


def test_comparison_holds_both_set_ups_in_both_systems_of_units() -> None:
    lines = {line["what"]: line for line in run(animal="crabro").values["comparison"]}
    assert lines["Arrives at"]["a"] == "14 m/s (32 mph)"
    assert lines["Arrives at"]["b"] == "7 m/s (15 mph)"
    assert lines["Mesh, in hose areas"]["a"] == "35"


def test_stopping_distance_is_metres() -> None:
    # Design fact of the calculator: 1/k of a hornet is beyond ten metres, of a wasp some five.
    for key, least in (("crabro", 10), ("germanica", 4)):
        body = bodies.animal(key)
        assert 1 / insect.drag_rate(1.204, body.area, body.mass) > least

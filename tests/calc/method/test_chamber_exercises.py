"""The answers to the exercises of the four pages, computed."""

from __future__ import annotations

from typing import Any

import pytest

from calc.declare import Result
from calc.method.catch_chamber import catch_chamber
from calc.method.feeding_brood import feeding_brood
from calc.method.holding_and_driving import holding_and_driving
from calc.method.moving_a_nest import moving_a_nest
from calc.method.opening_the_cavity import opening_the_cavity


def hold(**given: Any) -> Result:
    return holding_and_driving.run(holding_and_driving.example() | given)


def catch(**given: Any) -> Result:
    return catch_chamber.run(catch_chamber.example() | given)


def test_chamber_hose() -> None:
    hoses = {"flow_a": 34, "bore_a": 38, "length_a": 3, "flow_b": 44, "bore_b": 63, "length_b": 3}
    result = catch(animal="crabro", **hoses)
    assert result.text("arrival_a") == "14 m/s"
    assert result.text("arrival_b") == "7 m/s"


def test_chamber_battery() -> None:
    assert catch(battery=72, motor=288).text("battery_minutes") == "13 min"
    assert 72 / 288 * 60 == 15


def test_chamber_mesh() -> None:
    assert catch(animal="germanica", mesh_opening=6).stopped


def test_opening_tiers() -> None:
    result = opening_the_cavity(
        wall="stud_wall", hazard="clear", tiers=2, spacing=3.1, lowest=7, comb=24, bay=36.8
    )
    assert result.values["planned"] == 3
    assert result.text("bottom") == "2 cm"
    assert result.text("top") == "24 cm"
    assert result.text("height") == "22 cm"
    assert result.text("width") == "30 cm"


def test_opening_flakes() -> None:
    assert opening_the_cavity.answer({"hazard": "asbestos"}).stopped


def test_holding_lid() -> None:
    hornets = {"animal": "crabro", "temperature": 25, "mesh_share": 40}
    lid = hold(air="lid", mesh_area=150, **hornets)
    two = hold(air="two", mesh_area=20, **hornets)
    assert lid.values["share"] == pytest.approx(3.5, abs=0.25)
    assert two.values["share"] < 1


def test_holding_parked() -> None:
    result = hold(temperature=22, parked=30)
    assert result.text("car") == "41 °C"
    assert result.stopped


def test_passing_hens() -> None:
    result = feeding_brood(
        status="native",
        history="none",
        brood_state="fresh",
        hens=10,
        feed=110,
        brood=1200,
        share=10,
    )
    assert result.values["verdict"] == "110 g (3.9 oz) a day for the flock, for 11 days."


def test_passing_neighbour() -> None:
    assert feeding_brood.answer({"history": "unknown"}).stopped


def test_passing_two_kilometres() -> None:
    told = moving_a_nest(status="native", workers=100, km=2).values["verdict"]
    assert told == "34 to 66 of 100 workers may be back at the old hole."

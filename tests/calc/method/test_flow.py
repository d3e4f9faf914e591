"""How the flow calculator must behave whatever the numbers: orders, cautions, hostile input."""

from __future__ import annotations

import math
from typing import Any

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from calc.declare import Incomplete
from calc.errors import InputError
from calc.method import duct, fan
from calc.method.flow_and_reach import flow_and_reach
from calc.method.flow_and_reach.system import System
from calc.method.flow_and_reach.words import about
from calc.method.mesh import mesh_loss
from calc.tables import rows

EXAMPLE = flow_and_reach.example()


def values(**given: Any) -> Any:
    return flow_and_reach.run(EXAMPLE | given).values


def texts(**given: Any) -> str:
    return " ".join(
        f"{each.level}: {each.text}" for each in flow_and_reach.run(EXAMPLE | given).cautions
    )


def flow(**given: Any) -> float:
    return float(values(**given)["flow"])


# --- orders --------------------------------------------------------------------------------

HOSES = st.fixed_dictionaries(
    {
        "vacuum": st.sampled_from(["linear", "quadratic", "points"]),
        "sealed": st.floats(0.1, 40),
        "open_flow": st.floats(1, 500),
        "hose_length": st.floats(0.1, 29),
        "hose_bore": st.floats(10, 50),
        "hose_wall": st.sampled_from(["smooth", "corrugated", "rough"]),
        "pitch": st.floats(1, 30),
        "nozzle_bore": st.floats(5, 300),
        "bends": st.integers(0, 19),
    }
)


@settings(max_examples=60, deadline=None)
@given(HOSES)
def test_more_bends_or_hose_never_give_more_flow(job: dict[str, Any]) -> None:
    base = flow(**job)
    assert flow(**job | {"bends": job["bends"] + 1}) <= base * (1 + 1e-9)
    assert flow(**job | {"hose_length": job["hose_length"] + 1}) <= base * (1 + 1e-9)
    assert flow(**job | {"hose_wall": "smooth"}) >= base * (1 - 1e-9)


@settings(max_examples=40, deadline=None)
@given(HOSES, st.floats(1.01, 3))
def test_a_stronger_machine_never_reaches_less(job: dict[str, Any], more: float) -> None:
    job = job | {"vacuum": "linear", "sealed": min(job["sealed"], 13), "hose_bore": 40}
    job = job | {"nozzle_bore": max(job["nozzle_bore"], 20)}
    base, better = values(**job), values(**job | {"sealed": job["sealed"] * more})
    assert better["flow"] >= base["flow"] * (1 - 1e-9)
    assert better["reach"][0] >= base["reach"][0]
    assert better["reach"][1] >= base["reach"][1]


@pytest.mark.parametrize("bore", [20, 38, 60])
def test_a_plate_never_shortens_the_reach(bore: float) -> None:
    for animal in ("entrance", "leaving", "alarmed"):
        plain = values(nozzle="round", nozzle_bore=bore, animal=animal)["reach"]
        plate = values(nozzle="flanged_round", nozzle_bore=bore, animal=animal)["reach"]
        assert plate[0] >= plain[0]
        assert plate[1] >= plain[1]


def test_air_gets_thinner_with_altitude() -> None:
    found = [values(altitude=height)["density"] for height in range(0, 4501, 500)]
    assert found == sorted(found, reverse=True)
    assert len(set(found)) == len(found)


def test_label_figures_weaken_in_thin_air_and_measured_ones_do_not_change_the_law() -> None:
    high = {"altitude": 3000}
    label, here = (values(figures_from=each, **high) for each in ("label", "measured"))
    assert label["suction"] < here["suction"]
    # thin air and a weaker fan fall together, so the flow of a square-law system stays
    assert label["flow"] == pytest.approx(flow(figures_from="label"), rel=1e-3)


def test_wider_hose_brings_animals_in_more_slowly() -> None:
    narrow, wide = (values(hose_bore=bore)["animals"][0]["arrival"] for bore in (38, 63))
    assert wide < narrow / 2


def test_slot_sides_may_be_typed_in_either_order() -> None:
    one = values(nozzle="slot", slot_length=100, slot_width=10)
    other = values(nozzle="slot", slot_length=10, slot_width=100)
    assert one["flow"] == other["flow"]


def test_points_on_a_line_are_the_line() -> None:
    line = values(sealed=20, open_flow=40)
    points = values(vacuum="points", point_flows="0 10 40", point_suctions="20 15 0")
    assert points["flow"] == pytest.approx(line["flow"], rel=1e-9)


def test_points_may_stand_in_any_order() -> None:
    one = flow(vacuum="points", point_flows="0 15 30", point_suctions="20 15 8")
    other = flow(vacuum="points", point_flows="30 0 15", point_suctions="8 20 15")
    assert one == other


def test_budget_adds_up() -> None:
    budget = values()["budget"]
    assert sum(line["loss"] for line in budget[:-1]) == pytest.approx(budget[-1]["loss"])
    assert sum(line["share"] for line in budget[:-1]) == pytest.approx(100)
    assert budget[-1]["loss"] == pytest.approx(values()["suction"] * 1e3)


def test_flow_needed_does_it() -> None:
    # Feeding the flow back: with it the design formula gives the animal's speed at the distance.
    needed = values(distance=5, animal="crabro")["flow_needed"] / 1e3
    area = duct.circle(0.038)
    assert needed / (10 * 0.05**2 + area) == pytest.approx(6.0)


@pytest.mark.parametrize("bore", [0.01, 0.038, 0.15])
def test_friction_is_continuous_and_its_loss_rises(bore: float) -> None:
    found = [duct.friction_factor(re, 0.01) * re * re for re in range(100, 9000, 50)]
    assert found == sorted(found)
    for edge in (2100.0, 4000.0):
        below, above = duct.friction_factor(edge * 0.99999), duct.friction_factor(edge * 1.00001)
        assert below == pytest.approx(above, rel=1e-4)


def test_operating_flow_of_a_pure_square_law() -> None:
    # closed form of the straight-line fan: a quadratic's root
    sealed, open_flow, c = 20e3, 0.045, 4.277146e6
    slope = sealed / open_flow
    known = (-slope + math.sqrt(slope**2 + 4 * c * sealed)) / (2 * c)
    found = fan.operating_flow(
        lambda flow: fan.linear(flow, sealed, open_flow), lambda flow: c * flow**2, open_flow
    )
    assert found == pytest.approx(known, rel=1e-12)


def test_a_clean_mesh_is_rightly_left_out() -> None:
    """2.5 mm of 0.7 mm wire across the chamber, then with half of it covered."""
    told = values()
    share, opening = duct.mesh_open_share(2.5, 0.7), 2.5e-3
    for part, most in ((share, 0.0005), (share / 2, 0.001)):
        lost = mesh_loss(told["flow"] / 1e3, 0.25**2, part, opening, told["density"], 1.82e-5)
        assert lost < most * told["suction"] * 1e3


def test_the_machine_alone_gives_no_reach() -> None:
    given = {each.name: EXAMPLE[each.name] for each in flow_and_reach.inputs
             if each.origin == "equipment"}  # fmt: skip
    told = flow_and_reach.answer(given)
    assert isinstance(told, Incomplete)
    assert [each.name for each in told.missing] == ["nozzle", "animal"]
    told = flow_and_reach.answer(given | {"nozzle": "collar", "animal": "leaving"})
    assert isinstance(told, Incomplete)
    assert [each.name for each in told.missing] == ["hole", "gaps"]
    told = flow_and_reach.answer(given | {"nozzle": "round", "animal": "leaving"})
    assert isinstance(told, Incomplete)
    assert [each.name for each in told.missing] == ["distance"]
    assert "flow" in told.ranges


# --- what it says --------------------------------------------------------------------------


def test_verdict_says_where_to_hold_the_mouth() -> None:
    far = values(distance=6)["verdict"]
    assert "beyond it" in far
    assert "off-centre" in far
    assert "within it" in values(distance=0.5)["verdict"]
    assert "at the hole, at about" not in far
    collar = values(nozzle="collar")
    assert "through the hole" in collar["verdict"]
    assert "off-centre" not in collar["verdict"]
    assert collar["reach"] is None
    assert collar["speed_there"] is None
    assert "Even in the nozzle" in values(sealed=0.1, animal="alarmed")["verdict"]
    assert "smaller collar hole" in values(nozzle="collar", hole=300)["verdict"]


@pytest.mark.parametrize(
    ("metres", "words"),
    [
        (0.004, "less than 1 cm (less than ½ in)"),
        (0.0222, "about 2 cm (about 1 in)"),
        (0.038, "about 4 cm (about 1.5 in)"),
    ],
)
def test_reach_is_not_told_to_the_millimetre(metres: float, words: str) -> None:
    assert about(metres) == words


def test_reach_ends_lie_on_half_centimetres() -> None:
    for line in values()["reaches"]:
        assert all(end * 2 == int(end * 2) for end in line["reach"])


def test_one_row_for_each_known_flight_speed() -> None:
    known = [row["animal"] for row in rows("flight_speeds") if "speed" in row]
    assert [line["animal"] for line in values()["reaches"]] == known


CAUTIONS = [
    ({"sealed": 40, "open_flow": 500, "hose_length": 0.1, "hose_bore": 40, "nozzle_bore": 15,
      "hose_wall": "smooth", "bends": 0, "altitude": 4500, "temperature": 50},
     "stop: No figures"),
    ({"sealed": 30, "open_flow": 500, "hose_length": 1, "nozzle_bore": 30}, "so fast"),
    ({"sealed": 40, "hose_length": 30, "bends": 20, "open_flow": 300}, "more than a tenth"),
    ({}, "caution: Animals reach the chamber"),
    ({}, "nears the hold"),
    ({"distance": 7}, "one and a half nozzle diameters"),
    ({"nozzle": "slot", "slot_length": 200, "slot_width": 5}, "Only one formula"),
    ({"sealed": 0.1, "open_flow": 3, "hose_length": 20}, "between smooth and turbulent"),
    ({"figures_from": "label"}, "label are optimistic"),
    ({"vacuum": "points", "point_flows": "1 5 10", "point_suctions": "20 18 17"},
     "outside your measured points"),
    ({"nozzle": "collar", "gaps": 0}, "caution: A sealed collar"),
    ({"nozzle": "collar"}, "note: A sealed collar"),
    ({}, "Keep the hose stretched"),
    ({"hose_bore": 32}, "broadside"),
    ({}, "Never draw in petrol"),
]  # fmt: skip


@pytest.mark.parametrize(("job", "words"), CAUTIONS)
def test_caution_is_raised(job: dict[str, Any], words: str) -> None:
    assert words in texts(**job)


def test_cautions_are_not_raised_without_cause() -> None:
    calm = texts(
        hose_bore=63, nozzle_bore=63, hose_wall="smooth", chamber=40, sealed=6, open_flow=30,
        distance=1,
    )  # fmt: skip
    assert "caution:" not in calm
    assert "stop:" not in calm


STEEP = {
    "vacuum": "points",
    "point_flows": "100 100.1 100.2",
    "point_suctions": "40 20 0",
    "hose_length": 10,
}


@pytest.mark.parametrize("job", [CAUTIONS[0][0], STEEP])
def test_stop_withholds_all_that_comes_from_the_flow(job: dict[str, Any]) -> None:
    result = flow_and_reach.run(EXAMPLE | job)
    assert result.stopped
    assert {name for name, value in result.values.items() if value is not None} == {"density"}
    assert result.charts == ()


def test_charts() -> None:
    curves, speed = flow_and_reach.run(EXAMPLE).charts
    vacuum, system, point = curves.series
    assert vacuum.y[0] == pytest.approx(20)
    assert vacuum.y[-1] == pytest.approx(0, abs=1e-9)
    assert system.y[0] == 0
    assert system.y[-1] == pytest.approx(20, rel=0.02) or system.x[-1] == pytest.approx(45)
    assert point.y[0] == pytest.approx(values()["suction"])
    band = speed.series[0]
    assert all(low <= high for low, high in zip(band.y, band.y2, strict=True))
    assert band.y2[0] == pytest.approx(values()["mouth_speed"])
    assert {line.label for line in speed.series[1:]} == {
        "At the entrance: landing, hovering, walking out",
        "Leaving on the wing",
        "Alarmed, shooting out",
    }


# --- hostile input -------------------------------------------------------------------------

BAD = [
    ({"chamber": 10, "hose_bore": 120}, "chamber", "narrower than the hose"),
    ({"vacuum": "points", "point_flows": "1 2 3", "point_suctions": "3 2"}, "point_suctions", "3"),
    ({"vacuum": "points", "point_flows": "1 2 3", "point_suctions": "3 2 1 0"},
     "point_suctions", "4 values do not match 3"),
    ({"vacuum": "points", "point_flows": "1 2 3", "point_suctions": "3 3 1"},
     "point_suctions", "falls as flow rises"),
    ({"vacuum": "points", "point_flows": "1 2 2", "point_suctions": "3 2 1"},
     "point_suctions", "falls as flow rises"),
    ({"hose_bore": "38 kg"}, "hose_bore", "another kind"),
    ({"sealed": -1}, "sealed", "below"),
    ({"bends": 1.5}, "bends", "whole"),
]  # fmt: skip


@pytest.mark.parametrize(("job", "field", "words"), BAD)
def test_bad_input_is_told_in_a_sentence(job: dict[str, Any], field: str, words: str) -> None:
    with pytest.raises(InputError) as caught:
        flow_and_reach.run(EXAMPLE | job)
    assert caught.value.field == field
    assert words in caught.value.sentence


def corners() -> list[dict[str, Any]]:
    """Return jobs with every number at one end of its range, for each shape and wall."""
    ends = [
        {
            each.name: getattr(each, end)
            for each in flow_and_reach.inputs
            if each.kind in {"number", "count"}
        }
        for end in ("low", "high")
    ]
    ends[1]["chamber"] = 15
    ends.append(ends[0] | {"hose_length": 30, "bends": 20, "nozzle_bore": 300, "chamber": 200})
    ends.append(ends[1] | {"hose_length": 0.1, "bends": 0, "nozzle_bore": 5, "slot_width": 2})
    return [
        job | {"nozzle": shape, "hose_wall": wall, "vacuum": vacuum}
        for job in ends
        for shape in ("round", "flanged_round", "slot", "flanged_slot", "collar")
        for wall in ("smooth", "corrugated", "rough")
        for vacuum in ("linear", "quadratic")
    ]


def test_every_corner_of_the_ranges_is_finite() -> None:
    for job in corners():
        result = flow_and_reach.run(
            EXAMPLE | job
        )  # a number that is not finite raises ArithmeticError
        assert result.stopped or result.values["flow"] > 0


def test_no_flow_no_loss() -> None:
    system = System.__new__(System)
    assert System.loss(system, 0.0) == 0.0


def test_customary_units_give_the_same_answer() -> None:
    si = values(hose_length=3.048, hose_bore=38.1, temperature=25, altitude=304.8)
    us = flow_and_reach.run(
        EXAMPLE
        | {"hose_length": "10 ft", "hose_bore": "1.5 in", "temperature": "77 degF",
         "altitude": "1000 ft"}
    ).values  # fmt: skip
    assert us["flow"] == pytest.approx(si["flow"], rel=1e-9)

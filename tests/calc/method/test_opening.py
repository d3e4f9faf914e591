"""Opening the cavity: what must hold whatever is typed, and every stop and caution."""

from __future__ import annotations

from typing import Any

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from calc.declare import Incomplete
from calc.errors import InputError
from calc.method.opening_the_cavity import cautions as opening_cautions
from calc.method.opening_the_cavity import opening_the_cavity
from calc.method.opening_the_cavity.window import arc, planned_tiers, tiers_range, window
from calc.tables import rows
from tests.calc.method.caution_cover import check, written

TREE = {"wall": "hollow_trunk", "animal": "hornet"}
GROUND = {"wall": "ground"}
EXAMPLE = opening_the_cavity.example()
STOPS = [
    ({"hazard": "wires"}, "live wires"),
    ({"hazard": "unknown"}, "live wires"),
    ({"hazard": "unknown"}, "asbestos"),
    ({"hazard": "load"}, "load-bearing"),
    ({"hazard": "unknown", "wall": "chimney"}, "flue"),
    (TREE | {"hazard": "unknown"}, "before an arborist"),
    (TREE | {"hazard": "unknown"}, "live wires"),
    (GROUND | {"hazard": "unknown"}, "buried cable"),
    (GROUND | {"hazard": "flue"}, "flue"),
]
CAUTIONS: list[tuple[dict[str, Any], str, str]] = [
    ({"paint": "yes"}, "caution", "Old paint"),
    ({}, "caution", "rarely all"),
    ({"comb": 35}, "caution", "fills the cavity"),
    ({"bay": None}, "caution", "Measure the clear width"),
    ({}, "note", "measure two tiers"),
    (TREE | {"comb": 60, "bay": 90, "trunk": 60}, "caution", "as wide as the trunk"),
    ({}, "caution", "may still be inside"),
    ({"left": 0}, "caution", "None is counted as left"),
    ({}, "caution", "Peep first"),
    (TREE, "caution", "says nothing on the strength of the tree"),
    (GROUND, "note", "says nothing on the strength of the building"),
    ({}, "caution", "Droppings"),
]


@pytest.mark.parametrize(("inputs", "part"), STOPS)
def test_stop_hides_what_one_would_cut_by(inputs: dict[str, Any], part: str) -> None:
    result = check(opening_the_cavity, EXAMPLE | inputs, "stop", part)
    for name in ("verdict", "height", "width", "bottom", "top", "order"):
        assert result.values[name] is None
    assert not result.charts
    assert result.values["trades"], "the way out of a stop stays in view"


@pytest.mark.parametrize(("inputs", "level", "part"), CAUTIONS)
def test_caution(inputs: dict[str, Any], level: str, part: str) -> None:
    check(opening_the_cavity, EXAMPLE | inputs, level, part)


def test_every_caution_is_tested() -> None:
    # One call writes all stops; the adults left make one caution with two wordings.
    texts = {part for _, _, part in CAUTIONS}
    assert written(opening_cautions) == len(texts)
    assert set(opening_cautions.STOPS) == set(opening_cautions._STOP_TEXT)
    raised = {part for _, part in STOPS}
    assert len(raised) == len(opening_cautions.STOPS)


def test_large_window_in_old_paint_names_the_rule() -> None:
    large = {"paint": "yes", "comb": 100, "bay": 120, "tiers": 20}
    result = check(opening_the_cavity, EXAMPLE | large, "caution", "Old paint")
    assert any("certified firm" in each.text for each in result.cautions)
    outside = opening_the_cavity.run(EXAMPLE | {"paint": "yes", "side": "outside"})
    assert not any("certified firm" in each.text for each in outside.cautions)


def test_animal_without_a_spacing_in_print_asks_for_it() -> None:
    with pytest.raises(InputError, match="measured distance") as caught:
        opening_the_cavity(**(EXAMPLE | {"animal": "dolichovespula"}))
    assert caught.value.field == "spacing"
    assert (
        opening_the_cavity(**(EXAMPLE | {"animal": "dolichovespula", "spacing": 3})).values[
            "height"
        ]
        > 0
    )


def test_an_unknown_animal_takes_the_greatest_distance_and_old_paint_counts_as_lead() -> None:
    bare = {key: EXAMPLE[key] for key in ("wall", "hazard", "tiers", "lowest", "comb")}
    result = opening_the_cavity.run(bare)
    others = [
        opening_the_cavity.run(bare | {"animal": each["key"]}).values["height"]
        for each in rows("tiers")
        if each.get("spacing")
    ]
    assert result.values["height"] == max(others)
    assert any("Old paint" in each.text for each in result.cautions)
    assert any(each.text.startswith("Adults may still be") for each in result.cautions)


def test_a_hazard_stops_before_anything_is_measured() -> None:
    told = opening_the_cavity.answer({"hazard": "asbestos"})
    assert isinstance(told, Incomplete)
    assert told.stopped
    assert not told.ranges
    clear = opening_the_cavity.answer({"hazard": "clear", "wall": "ground"})
    assert isinstance(clear, Incomplete)
    assert not clear.stopped


@pytest.mark.parametrize(("seen", "planned"), [(1, 2), (2, 3), (3, 5), (6, 9), (9, 14)])
def test_more_is_planned_for_than_is_in_view(seen: int, planned: int) -> None:
    assert planned_tiers(seen) == planned


def test_range_of_tiers_reaches_the_most_in_print() -> None:
    assert tiers_range(4, 14) == (4, 14)
    assert tiers_range(12, 14) == (12, 18)
    assert tiers_range(3, None) == (3, 5)


@settings(max_examples=80, deadline=None, derandomize=True)
@given(
    lowest=st.floats(-100, 100),
    seen=st.integers(1, 20),
    spacing=st.floats(2, 6),
    comb=st.floats(5, 60),
    room=st.floats(5, 60),
)
def test_window_takes_the_seen_tiers_and_fits_the_cavity(
    lowest: float, seen: int, spacing: float, comb: float, room: float
) -> None:
    made = window(lowest, planned_tiers(seen), spacing, comb, room)
    assert made.bottom < lowest
    assert made.top > lowest + seen * spacing
    assert made.width <= room
    assert made.height > 0
    assert window(lowest + 5, planned_tiers(seen), spacing, comb, room).height == pytest.approx(
        made.height
    )


def test_arc_is_longer_than_the_chord_and_half_the_girth_at_most() -> None:
    assert arc(30, 60) == pytest.approx(31.4159, abs=1e-3)  # 60 degrees of the circle: D pi / 6
    assert 20 < arc(20, 60) < 21
    assert arc(80, 60) == pytest.approx(94.2478, abs=1e-3)


def test_every_kind_of_cavity_has_its_steps_in_order() -> None:
    for each in rows("wall_types"):
        steps = [line["step"] for line in rows(f"cut_order_{each['key']}")]
        assert steps == list(range(1, len(steps) + 1))
        assert len(steps) >= 5

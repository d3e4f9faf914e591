"""Numbers worked out in the exercises on the animals, against the tables they come from."""

from __future__ import annotations

import pytest

from calc import tables
from docs_build.bootstrap import ROOT


def page(name: str) -> str:
    return (ROOT / "handbook" / "biology" / f"{name}.md").read_text(encoding="utf-8")


def answer(name: str, exercise: str) -> str:
    return page(name).partition(f":::{{answer}} {exercise}\n")[2].partition(":::")[0]


def test_four_tiers_have_three_gaps() -> None:
    low, high = tables.row("tiers", "vespula")["spacing"]
    assert f"{3 * low:g} to {3 * high:g} cm" in answer("inside_the_nest", "inside-height")


@pytest.mark.parametrize(("millimetres", "column"), [(48, "worker"), (65, "queen")])
def test_ten_cells_measure_a_pitch_of_the_table(millimetres: float, column: str) -> None:
    low, high = tables.row("cell_pitch", "germanica")[column]
    assert low <= millimetres / 10 <= high
    assert f"{millimetres / 10:g}" in answer("inside_the_nest", "inside-cells")
    assert f"measure {millimetres} mm" in page("inside_the_nest")


def test_workers_back_from_two_kilometres() -> None:
    row = tables.row("homing_returns", "km_2")
    back = 60 * row["returned"] / row["released"]
    assert f"about {back:.0f} of 60" in answer("foraging", "foraging-release")


def test_days_of_a_hornet_colony_for_a_season_of_the_other() -> None:
    days = (
        tables.row("prey_taken", "velutina_season")["mass"]
        / tables.row("prey_taken", "crabro_day")["mass"]
    )
    assert f"about {days:.0f} days" in answer("good_for", "good-half-kilo")
    assert f"about {days:.0f} days" in page("good_for").partition("## Exercises")[0]


def test_founding_queens_that_came_through() -> None:
    row = tables.row("founding_success", "indoors")
    assert 0.15 < row["through"] / row["began"] < 0.25
    assert "about one in five" in answer("life_of_a_colony", "life-walnut")


def test_nests_robbed_are_those_of_the_table() -> None:
    found = tables.row("wasps_as_food", "brook_valley")["found"]
    assert "18 of 144" in found
    assert f"{18 / 144:.1%}".replace("%", " %") in answer("good_for", "good-nests")
    assert "8 of 106" in found
    assert round(106 / 8) == 13
    assert "one nest in thirteen" in page("good_for")

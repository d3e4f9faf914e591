"""Comb count: geometry against drawn lattices, samples against libraries, every caution."""

from __future__ import annotations

import math
import random

import pytest
from scipy import spatial, stats

from calc import tables
from calc.declare import Result
from calc.errors import InputError
from calc.method.comb_count import comb_count
from calc.method.comb_count.geometry import (
    cell_area,
    cells_on,
    cells_per_cm2,
    oval_area,
    pitch_of,
    whole_cells_in_circle,
)
from calc.method.comb_count.nest import Tier, by_size, by_tiers, strata
from calc.method.comb_sample import (
    patches_needed,
    product_se,
    ratio_of_sums,
    share_error,
    stratified,
)
from docs_build.bootstrap import ROOT

STAGES = {
    "eggs": [8, 6, 9, 7],
    "larvae": [10, 12, 11, 9],
    "sealed": [13, 14, 12, 16],
    "empty": [6, 5, 7, 5],
}


EXAMPLE = comb_count.example()


def count(**given: object) -> Result:
    return comb_count(**(EXAMPLE | given))


def texts(level: str, **given: object) -> str:
    return " ".join(each.text for each in count(**given).cautions if each.level == level)


def drawn_cells(radius: float, pitch: float, draw: random.Random) -> tuple[int, int]:
    """Lay a hexagonal lattice at random and count middles and whole cells in a circle (mm)."""
    dx, dy = draw.random() * pitch, draw.random() * pitch
    middles = whole = 0
    rows = int(radius / (pitch * math.sqrt(3) / 2)) + 3
    for j in range(-rows, rows + 1):
        y = j * pitch * math.sqrt(3) / 2 + dy
        for i in range(-rows - 2, rows + 3):
            x = (i + (j % 2) / 2) * pitch + dx
            if math.hypot(x, y) > radius + pitch:
                continue
            middles += math.hypot(x, y) <= radius
            corner = pitch / math.sqrt(3)
            whole += all(
                math.hypot(x + corner * math.sin(a), y + corner * math.cos(a)) <= radius
                for a in (k * math.pi / 3 for k in range(6))
            )
    return middles, whole


def test_geometry_against_a_drawn_lattice() -> None:
    draw = random.Random(3)
    drawn = [drawn_cells(75, 5, draw) for _ in range(12)]
    middles = sum(m for m, _ in drawn) / 12
    whole = sum(w for _, w in drawn) / 12
    assert middles == pytest.approx(cells_on(oval_area(15, 15), 5), rel=0.005)
    assert whole == pytest.approx(whole_cells_in_circle(7.5, 5), rel=0.01)


# Ratnieks et al. 1996, abstract: 1.30 m2 and 65 970 cells of two sizes. The table's pitches were
# deduced from this nest, so this keeps the table in step with it and is no outside check.
def test_pitch_of_a_whole_nest_in_print() -> None:
    pitch = pitch_of(55_704 + 10_266, 13_000)
    found = tables.row("cell_pitch", "pensylvanica")
    assert found["worker"][1] < pitch < found["queen"][0]
    small = 55_704 / cells_per_cm2(found["worker"][0]) + 10_266 / cells_per_cm2(found["queen"][1])
    large = 55_704 / cells_per_cm2(found["worker"][1]) + 10_266 / cells_per_cm2(found["queen"][0])
    assert min(small, large) * 0.99 < 13_000 < max(small, large) * 1.01


# Outside value: Budge et al. 2017: 2359 cells on 5 combs, the widest 23 cm.
@pytest.mark.published("budge_2017_nest")
def test_a_hornet_nest_in_print_has_fewer_cells_than_five_full_discs() -> None:
    result = count(species="velutina", count_by="size", long_axes=[23] * 5, stages="not")
    assert 0.5 < 2359 / result.values["cells"] < 1
    assert "runs high" in " ".join(c.text for c in result.cautions)


# Outside value: Budge et al. 2017: eggs 459, larvae 584, prepupae and pupae 840; stage days of
# the NZ queen colonies. Shares of brood must follow shares of days within five points.
@pytest.mark.published("budge_2017_nest")
def test_stage_shares_of_a_nest_in_print_follow_the_stage_days() -> None:
    found = tables.row("stage_shares", "tetbury")
    steady = tables.row("stage_shares", "steady_vespula")
    for name, number in (("egg", 459), ("larva", 584), ("sealed", 840)):
        assert found[name] == pytest.approx(100 * number / 1883, abs=0.05)
        assert abs(found[name] - steady[name]) < 5


# Outside reference: scipy 1.17.1, stats.t.interval on one stratum without correction.
@pytest.mark.library("scipy")
def test_one_stratum_is_a_t_interval() -> None:
    values = [12, 9, 15, 11, 8, 14, 10, 13]
    found = stratified([40], [values], finite=False)
    low, high = stats.t.interval(0.95, 7, loc=40 * 11.5, scale=40 * stats.sem(values))
    assert (found.low, found.high) == pytest.approx((low, high), rel=1e-9)


# Outside reference: scipy 1.17.1, degrees of freedom of stats.ttest_ind(equal_var=False): the
# same Satterthwaite formula for two strata of equal size without correction.
@pytest.mark.library("scipy")
def test_satterthwaite_degrees_of_freedom() -> None:
    a, b = [22, 19, 24, 21, 20], [9, 12, 7, 10]
    found = stratified([1e9, 1e9], [a, b])
    assert found.df == pytest.approx(stats.ttest_ind(a, b, equal_var=False).df, rel=1e-6)


def test_stratified_limits_hold_the_truth() -> None:
    draw = random.Random(5)
    nest = [[draw.gauss(mean, 6) for _ in range(size)] for mean, size in ((38, 20), (30, 14))]
    truth = sum(map(sum, nest))
    inside = 0
    for _ in range(400):
        found = stratified([20, 14], [draw.sample(nest[0], 4), draw.sample(nest[1], 3)])
        inside += found.low <= truth <= found.high
    assert inside >= 0.92 * 400


def test_sampling_everything_leaves_no_error() -> None:
    assert stratified([3, 4], [[1, 2, 3], [4, 5, 6, 9]]).se == 0
    whole = count(count_by="tiers", tier_cells=[560, 700, 320], stages="not")
    assert whole.values["cells_interval"] == [1580, 1580]


def test_product_of_estimates() -> None:
    assert product_se(3000, 180, 0.42, 0.0349) == pytest.approx(129.29, abs=0.01)
    assert product_se(565.5, 25, 4.1, 0.062) == pytest.approx(108.342, abs=0.001)


def test_patches_needed_rounds_up() -> None:
    assert patches_needed(0.30, 0.10, 60) == 23


def test_spots_that_differ_widen_the_error() -> None:
    even = share_error([10, 10, 10], [40, 40, 40])[1]
    uneven = share_error([0, 10, 20], [40, 40, 40])[1]
    assert uneven > even > 0
    assert ratio_of_sums([10, 10, 10], [40, 40, 40]).se == 0


def test_tiers_with_few_patches_are_joined() -> None:
    tiers = [Tier(area=200, queen=False, pitch=5) for _ in range(4)]
    assert strata(tiers, [0, 0, 1, 1, 2, 2, 3, 3]) == ([[0], [1], [2], [3]], False)
    assert strata(tiers, [0, 0, 1, 2]) == ([[0], [1, 2, 3]], True)
    assert strata(tiers, [0, 0, 0, 1, 1]) == ([[1], [0, 2, 3]], True) or strata(
        tiers, [0, 0, 0, 1, 1]
    ) == ([[0, 2, 3], [1]], True)


def test_by_size_errors_of_the_pitch_are_shared() -> None:
    tiers = [Tier(area=100, queen=False, pitch=5)] * 4
    part, _ = by_size(tiers, 0.05)
    assert part.high / part.number == pytest.approx(math.exp(1.96 * math.sqrt(0.0124)), rel=0.01)
    assert part.number == pytest.approx(400 * cells_per_cm2(5))


def test_counted_tiers_correct_those_not_counted() -> None:
    tiers = [Tier(area=area, queen=False, pitch=5) for area in (300, 200, 100)]
    part, per_tier = by_tiers(tiers, [1000, 700, 0], 0.05)
    assert per_tier[:2] == (1000, 700)
    assert per_tier[2] == pytest.approx(1700 / 500 * 100)
    assert 1700 <= part.low < part.number < part.high


def test_patches_give_the_density_of_each_tier() -> None:
    given = {
        "long_axes": [20, 16], "patches": [2, 2], "patch_area": 25,
    }  # fmt: skip
    result = count(**given, **STAGES)
    cells = [sum(each) for each in zip(*STAGES.values(), strict=True)]
    one = oval_area(20, 20) / 25 * sum(cells[:2]) / 2
    two = oval_area(16, 16) / 25 * sum(cells[2:]) / 2
    assert result.values["cells"] == pytest.approx(one + two)
    stages = result.values["by_stage"]
    assert sum(each["cells"] for each in stages) == pytest.approx(one + two)
    assert result.values["brood"] == pytest.approx(sum(each["cells"] for each in stages[:3]))
    low, high = result.values["sampling_interval"]
    wide_low, wide_high = result.values["cells_interval"]
    assert wide_low < low < one + two < high < wide_high


def test_parts_add_up_to_the_colony() -> None:
    result = count(adults_caught=100, adults_left=7.5)
    assert sum(each["number"] for each in result.values["parts"]) == pytest.approx(
        result.values["colony"]
    )
    assert sum(each["share"] for each in result.values["parts"]) == pytest.approx(100)


def test_queen_tiers_are_kept_apart() -> None:
    result = count(queen_from=3)
    assert result.values["queen_cells"] > 0
    assert result.values["worker_cells"] + result.values["queen_cells"] == pytest.approx(
        result.values["cells"]
    )
    assert 0 < result.values["sealed_queen_cells"] < result.values["sealed_cells"]
    assert count().values["sealed_queen_cells"] == 0


def test_the_rule_of_the_trade() -> None:
    assert "fits the rough rule" in count().values["rule"]
    assert "below the rough rule" in count(adults_caught=90_000).values["rule"]
    assert count(stages="not").values["rule"].startswith("no comparison")


@pytest.mark.parametrize(
    ("given", "field"),
    [
        ({"short_axes": [20, 24]}, "short_axes"),
        ({"eggs": [1, 2]}, "larvae"),
        ({"patches": [1, 1]}, "patches"),
        ({"patches": [2, 2, 3]}, "patches"),
        ({"patch_area": 200}, "patch_area"),
        ({"count_by": "tiers", "tier_cells": [1, 2]}, "tier_cells"),
        ({"count_by": "tiers", "tier_cells": [0, 0, 0]}, "tier_cells"),
        ({"stages": "not", "patch_cells": None}, "patch_cells"),
    ],
)
def test_lists_that_do_not_match_are_refused(given: dict[str, object], field: str) -> None:
    with pytest.raises(InputError) as caught:
        count(**given)
    assert caught.value.field == field


def test_cautions() -> None:
    assert count().cautions[0].text.startswith("Count suited")
    assert "pitch comes from memory" in texts("caution", count_by="size")
    assert "pitch comes from memory" not in texts("caution", count_by="size", pitch=4.9)
    assert "runs high" in texts("note", count_by="size")
    few = {"long_axes": [20], "patches": [4], **STAGES}
    assert "Only 4 spots" in texts("caution", **few)
    joined = [3, 2, 1]
    assert "counted together" in texts("caution", patches=joined)
    bare = [3, 3, 0]
    assert "no patch" in texts("caution", patches=bare, queen_from=3)
    assert "do not fit" in texts("caution", patch_area=4)
    assert "There is no tier 9" in texts("caution", queen_from=9)
    assert "Young queens may still come out" in texts("caution", queen_from=3)
    assert "cell size does not tell" in texts("note", species="velutina")
    none = {name: [0] * 6 for name in ("eggs", "larvae", "sealed")}
    assert "No brood" in texts("caution", **none)
    assert "Few eggs" in texts("note", eggs=[0] * 6)
    assert "Few eggs" not in texts("note")


def test_stage_lists_of_unlike_length_are_added_up() -> None:
    result = count(count_by="size", eggs=[40], larvae=[30, 30], sealed=[70], empty=[30])
    assert [round(each["share"]) for each in result.values["by_stage"]] == [20, 30, 35, 15]
    assert "Only 1 spot:" in " ".join(each.text for each in result.cautions)


def test_an_empty_sample_gives_no_stages() -> None:
    nothing = {name: [0] * 6 for name in STAGES}
    result = count(count_by="size", **nothing)
    assert result.values["brood"] is None
    assert result.values["cells"] > 0


def test_no_number_of_adults_is_made_up() -> None:
    bare = {key: EXAMPLE[key] for key in ("species", "long_axes", "queen_from")}
    assert comb_count.run(bare).values["cells"] > 0
    result = count(adults_left=None)
    assert result.values["brood"] > 0
    assert result.values["colony"] is None
    assert result.values["colony_interval"] is None
    assert result.values["rule"].startswith("no comparison")
    assert [each["part"] for each in result.values["parts"]][:2] == ["adults caught", "eggs"]


def test_answers_of_the_page_are_those_of_the_calculator() -> None:
    page = (ROOT / "handbook" / "method" / "comb_count.md").read_text(encoding="utf-8")
    right, wrong = (cells_on(oval_area(20, 20), pitch) for pitch in (5.0, 5.5))
    assert f"5.0 mm gives {right:.0f} cells and 5.5 mm gives {wrong:.0f}" in page
    assert f"You miss {round(right) - round(wrong)} cells" in page


# Outside reference: scipy 1.17.1, spatial.Voronoi: what lies nearer to one middle than to any
# other, when neighbours stand a pitch apart in rows half a pitch out of step.
@pytest.mark.library("scipy")
@pytest.mark.parametrize("pitch", [4.5, 5.3, 8.5])
def test_a_cell_covers_what_lies_nearest_to_its_middle(pitch: float) -> None:
    rows_apart = pitch * 0.75**0.5
    middles = [
        ((column + row % 2 / 2) * pitch, row * rows_apart)
        for row in range(5)
        for column in range(5)
    ]
    diagram = spatial.Voronoi(middles)
    region = diagram.regions[diagram.point_region[12]]
    area = spatial.ConvexHull(diagram.vertices[region]).volume  # in a plane this is the area
    assert cell_area(pitch) == pytest.approx(area, rel=1e-9)
    assert cells_per_cm2(pitch) == pytest.approx(100 / area, rel=1e-9)

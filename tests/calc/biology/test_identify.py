"""Which animal is it: chances, stops, cautions, and the rule that bees come first."""

from __future__ import annotations

import itertools
import random
from typing import Any

import pytest
from scipy import stats

from calc.biology.which_animal import posterior as bayes
from calc.biology.which_animal import traits, which_animal
from calc.biology.which_animal.core import in_words
from calc.biology.which_animal.duty import GRAVITY, bee_chance, duty
from calc.biology.which_animal.inputs import MONTHS, REGION, TRAITS, UNKNOWN
from calc.declare import Caution, Result
from calc.tables import rows

REGIONS = [each.value for each in REGION.options if each.value != UNKNOWN]
SIGNS = [tuple(each["key"].split(".")) for each in rows("bee_signs")]
WASPS = [one for one in traits.animals() if traits.group(one) == "wasp"]
BEES = [one for one in traits.animals() if traits.group(one) == "bee"]


def run(**seen: str) -> Result:
    return which_animal.run({"region": UNKNOWN} | seen)


def given(result: Result) -> dict[str, str]:
    return {name: value for name, value in result.inputs.items() if value is not None}


def text(cautions: tuple[Caution, ...], level: str) -> str:
    return " ".join(each.text for each in cautions if each.level == level)


def first(**seen: str) -> str:
    return next(iter(bayes.chances(seen)))


# -- the sums ------------------------------------------------------------------------------


@pytest.mark.parametrize("trait", [each.name for each in TRAITS])
def test_likelihoods_of_each_animal_add_up_to_one(trait: str) -> None:
    for one, table in traits.likelihood(trait).items():
        assert set(table) - {traits.ABSENT} == set(traits.options(trait))
        assert min(table.values()) > 0
        assert sum(table.values()) == pytest.approx(1.0), one
        if traits.ABSENT in table:
            assert trait in {"paper", "comb", "entrance"}


def test_bees_do_not_count_as_if_they_had_paper() -> None:
    for bee in BEES:
        table = traits.likelihood("paper")[bee]
        assert sum(value for name, value in table.items() if name != traits.ABSENT) < 0.05


@pytest.mark.parametrize("region", [UNKNOWN, *REGIONS])
def test_chances_add_up_to_one_and_unknown_input_gives_the_prior(region: str) -> None:
    chance = bayes.chances({"region": region})
    assert sum(chance.values()) == pytest.approx(1.0)
    assert chance == pytest.approx(dict(traits.priors(region)))
    assert list(chance.values()) == sorted(chance.values(), reverse=True)
    assert str(run(region=region).values["animal"]).startswith("Unknown")


def test_random_descriptions_give_chances_that_add_up_to_one() -> None:
    picked = random.Random(3)
    for _ in range(300):
        seen = {each.name: picked.choice(each.options).value for each in (REGION, *TRAITS)}
        assert sum(bayes.chances(seen).values()) == pytest.approx(1.0)


@pytest.mark.library("scipy")
def test_size_kernel_against_scipy_lognormal() -> None:
    # Reference: scipy.stats.lognorm.pdf; the told length is log-normal about bias times length.
    spread, bias = traits.number("size_spread"), traits.number("size_bias")
    for told in (7.0, 17.91, 50.5):
        mine = traits.told_as_long(told, (20.0, 20.0))
        law = stats.lognorm(spread, scale=bias * 20.0)
        ratio = law.pdf(told) * told / (law.pdf(bias * 20.0) * bias * 20.0)
        assert mine == pytest.approx(ratio, rel=1e-9)


def test_months_of_the_south_are_shifted_by_half_a_year() -> None:
    for month in MONTHS:
        assert traits.shifted(traits.shifted(month, "australia_nz"), "australia_nz") == month
    assert traits.shifted("feb", "australia_nz") == "aug"
    assert traits.shifted("feb", "europe") == "feb"


# -- evidence works the right way --------------------------------------------------------------


def _firm() -> list[tuple[str, str, str]]:
    return [
        (each["animal"], each["trait"], each["almost_always"])
        for each in rows("traits")
        if each.get("almost_always") in traits.options(each["trait"])
    ]


@pytest.mark.parametrize(("animal", "trait", "value"), _firm())
def test_what_an_animal_almost_always_shows_never_lowers_it(
    animal: str, trait: str, value: str
) -> None:
    before, after = bayes.chances({}), bayes.chances({trait: value})
    assert after[animal] >= before[animal] * (1 - 1e-9)
    assert after[animal] / after[traits.NONE] > before[animal] / before[traits.NONE]


def test_more_of_the_same_evidence_makes_it_surer() -> None:
    steps = [
        {"region": "north_america_east"},
        {"nest": "branch"},
        {"cover": "full_paper"},
        {"abdomen": "white_tip"},
        {"head": "white"},
    ]
    seen: dict[str, str] = {}
    chances = []
    for step in steps:
        seen |= step
        chances.append(bayes.chances(seen)["maculata"])
    assert chances == sorted(chances)
    assert chances[-1] > 0.9


def test_marks_that_fit_nothing_lead_to_none_of_these() -> None:
    assert first(shape="thread_waist", head="white", abdomen="mostly_orange", legs="yellow_tips",
                 cover="open_comb", night="yes") == traits.NONE  # fmt: skip


def test_told_size_counts_little() -> None:
    # A common yellowjacket told as long as a paper clip stays a yellowjacket.
    marks = {"region": "europe", "face_mark": "anchor", "abdomen": "bands", "nest": "ground"}
    assert first(**marks) == "vulgaris"
    assert first(**marks, size="paper_clip") == "vulgaris"


def test_a_size_that_alone_turns_the_answer_is_said() -> None:
    told = {"region": "europe", "abdomen": "bands"}
    assert "told size alone" in text(run(**told, size="aa_battery").cautions, "note")
    assert "told size alone" not in text(run(**told, size="staple").cautions, "note")


# -- bees first ------------------------------------------------------------------------------------


def assert_bee_first(seen: dict[str, str]) -> None:
    chance = bayes.chances(seen)
    bee = max(chance[one] for one in BEES)
    assert all(chance[one] <= bee * (1 + 1e-9) for one in WASPS), seen
    order = list(chance)
    assert min(map(order.index, BEES)) < min(map(order.index, WASPS)), seen
    assert text(run(**seen).cautions, "stop").startswith("Stop the job")
    assert str(run(**seen).values["duty"]).startswith("Stop.")


@pytest.mark.parametrize("region", [UNKNOWN, *REGIONS])
@pytest.mark.parametrize("sign", SIGNS)
def test_one_sign_of_a_bee_puts_a_bee_above_every_wasp(sign: tuple[str, str], region: str) -> None:
    trait, value = sign
    assert_bee_first({"region": region, trait: value})


def test_a_sign_of_a_bee_outranks_whatever_else_was_seen() -> None:
    picked = random.Random(7)
    for trait, value in SIGNS * 20:
        seen = {each.name: picked.choice(each.options).value for each in (REGION, *TRAITS)}
        assert_bee_first(seen | {trait: value})


@pytest.mark.parametrize("wasp", WASPS)
def test_all_marks_of_a_wasp_with_one_sign_of_a_bee_still_stop(wasp: str) -> None:
    marks = {trait: value for animal, trait, value in _firm() if animal == wasp}
    for trait, value in SIGNS:
        assert_bee_first(marks | {trait: value})


@pytest.mark.parametrize(
    ("bee", "seen"),
    [
        ("honey_bee", {"comb": "wax"}),
        ("honey_bee", {"cover": "bare_cluster"}),
        ("bumble_bee", {"comb": "wax_pots"}),
        ("bumble_bee", {"shape": "round_furry", "abdomen": "furry_bands"}),
        ("carpenter_bee", {"nest": "wood_holes", "abdomen": "shiny_black"}),
        ("solitary_bee", {"nest": "bare_ground_holes", "month": "apr", "thorax": "furry"}),
    ],
)
def test_each_bee_is_found_by_its_own_marks(bee: str, seen: dict[str, str]) -> None:
    assert first(**seen) == bee
    result = run(**seen)
    assert result.stopped
    assert str(result.values["duty"]).startswith("Stop.")


def test_a_bee_not_ruled_out_stops_and_a_small_chance_is_a_caution() -> None:
    open_case = run(region="europe", nest="wall_or_roof_void")
    assert "Stop the job" in text(open_case.cautions, "stop")
    assert "a bee is not ruled out" in str(open_case.values["duty"])
    narrow = run(
        region="europe", nest="wall_or_roof_void", abdomen="bands", traffic="busy",
        entrance="one_hole",
    )  # fmt: skip
    assert 0.02 <= bee_chance(bayes.chances(given(narrow))) < 0.1
    assert narrow.values["bee_chance"] == "about 8 %"
    assert not narrow.stopped
    assert "Look once more for fur" in text(narrow.cautions, "caution")
    clear = run(region="europe", abdomen="bands", shape="stout_smooth", comb="paper_tiers")
    assert bee_chance(bayes.chances(given(clear))) < 0.02
    assert "fur" not in text(clear.cautions, "caution")


# -- duties ----------------------------------------------------------------------------------------

HORNET = {"shape": "stout_smooth", "head": "red_brown", "abdomen": "drops", "night": "yes"}
YELLOW_LEGGED = {"abdomen": "one_orange_band", "legs": "yellow_tips", "thorax": "dark_plain"}
GIANT = {"head": "broad_orange", "abdomen": "even_orange_bands", "size": "aaa_battery"}


@pytest.mark.parametrize(
    "region", ["europe", "britain", "north_america_east", "north_america_west", "australia_nz"]
)
def test_yellow_legged_hornet_is_reported_and_never_released(region: str) -> None:
    result = run(region=region, **YELLOW_LEGGED)
    assert "never release or move" in text(result.cautions, "stop")
    assert "report" in str(result.values["duty"])
    assert "Never release" in str(result.values["duty"])


def test_giant_hornet_is_reported_in_america_and_specialists_work_in_asia() -> None:
    west = run(region="north_america_west", **GIANT)
    assert "never release or move" in text(west.cautions, "stop")
    assert "do not attempt removal" in str(west.values["duty"])
    asia = run(region="east_asia", **GIANT)
    assert not asia.stopped
    assert "Authority first" in text(asia.cautions, "caution")
    assert "specialists" in str(asia.values["duty"])


def test_a_small_chance_of_an_invader_is_a_caution() -> None:
    result = run(region="europe", shape="stout_smooth", abdomen="thin_lines")
    part = sum(
        value
        for one, value in bayes.chances(given(result)).items()
        if duty(one, "europe")["status"] == "notifiable"
    )
    assert 0.04 <= part < 0.1, part
    assert "Rule out the yellow-legged hornet" in text(result.cautions, "caution")


def test_european_hornet_needs_the_authority_in_europe_only() -> None:
    europe = run(region="europe", **HORNET)
    assert "Authority first" in text(europe.cautions, "caution")
    assert str(europe.values["duty"]).startswith("Authority first")
    america = run(region="north_america_east", **HORNET)
    assert "Authority first" not in text(america.cautions, "caution")
    assert "no release" in text(america.cautions, "caution")
    assert "native hornet" in str(run(region="britain", **HORNET).values["duty"])


def test_a_protected_animal_among_the_candidates_is_said() -> None:
    result = run(
        region="europe",
        abdomen="bands",
        traffic="busy",
        entrance="one_hole",
        nest="wall_or_roof_void",
    )
    part = sum(
        value
        for one, value in bayes.chances(given(result)).items()
        if duty(one, "europe")["status"] in {"protected", "authority"}
    )
    assert 0.1 <= part < 0.25, part
    assert "Rule out the animals" in text(result.cautions, "caution")


def test_an_animal_out_of_its_range_goes_to_the_authority() -> None:
    result = run(region="britain", abdomen="white_tip", head="white", thorax="white_lines",
                 shape="stout_smooth", cover="full_paper", nest="branch")  # fmt: skip
    assert first(**given(result)) == "maculata"
    assert "not known in your region" in str(result.values["duty"])
    assert "Authority first" in text(result.cautions, "caution")


def test_introduced_animals_are_not_released() -> None:
    result = run(region="australia_nz", face_mark="dots", nest="ground", shape="stout_smooth",
                 abdomen="bands")  # fmt: skip
    assert first(**given(result)) == "germanica"
    assert "no release of young queens" in text(result.cautions, "caution")


def test_unknown_is_an_answer() -> None:
    result = run(region="east_asia", shape="slim_trailing", abdomen="mostly_orange",
                 legs="yellow_tips")  # fmt: skip
    assert str(result.values["animal"]).startswith("Unknown")
    assert "Unknown is an answer" in text(result.cautions, "caution")


def test_kin_is_named_where_the_species_is_open() -> None:
    result = run(region="europe", shape="stout_smooth", abdomen="bands", nest="ground",
                 traffic="busy")  # fmt: skip
    assert str(result.values["animal"]).startswith("A yellowjacket, which one is open")
    assert "sound reason" in str(result.values["duty"])
    assert "Unknown is an answer" not in text(result.cautions, "caution")


def test_solitary_wasps_and_flies_are_left() -> None:
    mud = run(region="north_america_east", shape="thread_waist", cover="mud", comb="mud_cells")
    assert "Leave it" in str(mud.values["duty"])
    fly = run(region="europe", shape="fly_like", head="big_eyes", antennae="stub")
    assert "no sting and no nest" in str(fly.values["duty"])
    killer = run(region="north_america_east", size="paper_clip", abdomen="broken_bars",
                 shape="stout_smooth", thorax="red_brown", month="jul")  # fmt: skip
    assert first(**given(killer)) == "cicada_killer"
    assert "males cannot sting" in str(killer.values["duty"])


def test_without_a_region_the_gravest_duty_holds_and_is_asked_for() -> None:
    result = run(**HORNET)
    assert "Give the region" in text(result.cautions, "note")
    assert duty("crabro", UNKNOWN)["status"] == "protected"
    assert duty("velutina", UNKNOWN)["status"] == "notifiable"
    assert duty("maculifrons", UNKNOWN)["status"] == "native"


@pytest.mark.parametrize(("one", "region"), list(itertools.product(traits.animals(), REGIONS)))
def test_every_animal_has_a_duty_everywhere(one: str, region: str) -> None:
    found = duty(one, region)
    assert found["status"] in GRAVITY
    word = next(each[region] for each in rows("where_it_lives") if each["key"] == one)
    if word in {"common", "uncommon"}:
        assert found["status"] != "stray", (one, region)


def test_distance_always_comes_first() -> None:
    for seen in ({}, HORNET, {"comb": "wax"}):
        assert "Never catch one to look" in text(run(**seen).cautions, "caution")


def test_chances_are_told_no_finer_than_the_model_carries() -> None:
    assert in_words(0.999) == in_words(0.95) == "over 95 %"
    assert in_words(0.9499) == "about 95 %"
    assert in_words(0.124) == "about 12 %"
    assert in_words(0.31) == "about 30 %"
    assert in_words(0.02) == "1 to 5 %"
    assert in_words(0.0) == "under 1 %"


def test_no_text_says_safe() -> None:
    every: list[Any] = [*rows("duties")]
    assert not [each for each in every if "safe" in str(each).lower()]
    assert "safe" not in str(run(**HORNET).as_dict()).lower()


# -- the table itself ----------------------------------------------------------


def test_trait_table_names_only_options_of_the_calculator() -> None:
    known = {each.name: set(traits.options(each.name)) for each in TRAITS}
    for each in rows("traits"):
        named = [value for word in traits.WORDS for value in str(each.get(word, "")).split()]
        assert len(named) == len(set(named)), each["key"]
        assert set(named) - {traits.ABSENT} <= known[each["trait"]], each["key"]
        assert each["key"] == f"{each['animal']}.{each['trait']}"
        assert each["animal"] in traits.animals()


def test_every_animal_has_a_row_for_every_trait() -> None:
    have = {each["key"] for each in rows("traits")}
    want = {
        f"{one}.{each.name}"
        for one in traits.animals()
        for each in TRAITS
        if one != traits.NONE and each.name != "size"
    }
    assert want == have


def test_words_fall_in_order() -> None:
    numbers = [traits.number(word) for word in (*traits.WORDS, "never")]
    assert numbers == sorted(numbers, reverse=True)
    assert 0 < traits.number("temper") < 1


def test_length_range_spans_the_sources_used() -> None:
    assert traits.length_range("crabro", "worker") == (18.0, 25.0)
    assert traits.length_range("crabro", "queen") == (25.0, 35.0)
    assert traits.length_range("honey_bee", "worker") == (12.0, 15.0)

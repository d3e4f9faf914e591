"""What the pages of this part answer in their exercises is what the calculators say."""

from __future__ import annotations

from calc import rules, tables
from calc.safety.acclimatisation_plan import acclimatisation_plan
from calc.safety.briefing import briefing
from calc.safety.keep_away.zones import zone
from calc.safety.sting_plan import sting_plan
from docs_build.bootstrap import ROOT

SAFETY = ROOT / "handbook" / "safety"


def page(name: str) -> str:
    return (SAFETY / f"{name}.md").read_text(encoding="utf-8")


def test_days() -> None:
    text = page("acclimatisation")
    first, fourth = (
        acclimatisation_plan.run(
            {"state": "well", "person": "new_heat", "full_minutes": 100, "day": day}
        )
        for day in (1, 4)
    )
    told = first.values["today_minutes"], fourth.values["today_minutes"]
    assert f"{told[0]} minutes on Monday and {told[1]} on Thursday" in text
    back = [
        acclimatisation_plan.run(
            {"state": "well", "person": "back", "full_minutes": 100, "day": day}
        )
        for day in (1, 2, 3, 4)
    ]
    first_back, *later = (each.values["today_minutes"] for each in back)
    assert f"{first_back} minutes, then {later[0]}, {later[1]} and {later[2]}" in text


def test_stings() -> None:
    text = page("allergy_and_stings")
    far = sting_plan.run(
        sting_plan.example()
        | {"area": "minutes", "response": 11, "walk_in": 4, "adrenaline": "none"}
    )
    assert f"After {far.values['help_at']:.0f} minutes" in text
    assert f"That is {-far.values['margin']:.0f} minutes later" in text
    assert far.stopped
    boy = sting_plan.run(sting_plan.example() | {"kin": "other", "lightest": 18})
    told = f"one sting for each kilogram: {boy.values['hospital_lightest']} for him"
    assert told in page("after_a_sting")


def test_zones() -> None:
    text = page("keeping_people_away")
    assert "{num}`zones passive machines`" in text
    assert zone("hornet", "passive", False, 0, False).machines == 6
    assert zone("hornet", "passive", True, 0, False).machines == 15
    assert zone("yellowjacket", "working", False, 0, False).outer == 15
    assert zone("yellowjacket", "working", True, 0, False).outer == 30


def test_country_in_the_briefing() -> None:
    assert "It says stop." in page("before_you_start")
    result = briefing.run(
        briefing.example() | {"area": "minutes", "response": 20, "adrenaline": "none"}
    )
    assert result.stopped


def test_no_page_says_safe_of_a_nest() -> None:
    names = ("before_you_start", "allergy_and_stings", "keeping_people_away", "clothing")
    for name in (*names, "working_alone", "people_and_animals", "after_a_sting", "after_the_job"):
        words = page(name).lower().replace("safely", "").split()
        assert "safe" not in words, name


def test_ruler_at_arms_length() -> None:
    """Like triangles: 3 cm on a ruler 60 cm from the eye, trunk 10 m away."""
    assert "looks 3 cm wide at 60 cm, from 10 m away, is 50 cm wide" in page("hollow_tree")
    assert 3 * 1000 / 60 == 50


def test_a_job_that_nobody_watches_waits_everywhere() -> None:
    for area in ("urban", "suburban", "rural"):
        result = sting_plan.run(sting_plan.example() | {"helpers": 0, "area": area})
        told = [each.text for each in result.cautions]
        assert any(rules.text("team", "nobody") in text for text in told)
    row = tables.row("visit_stops", "arrive_alone")
    assert row["do"].startswith("Do not start.")
    assert "may work alone" not in page("working_alone")


def test_illness_after_droppings_fits_its_rule() -> None:
    """The weeks named in the rule are the longest first signs of the table."""
    assert "eight weeks" in rules.text("droppings", "fever")
    assert tables.row("droppings_illness", "hantavirus")["begins"] == "1 to 8 weeks"

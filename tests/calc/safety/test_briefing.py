"""Before you start: it says what its parts say, and stops when one of them stops."""

from __future__ import annotations

from typing import Any

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from calc import rules
from calc.declare import Choice, Incomplete, Number, Result
from calc.safety.acclimatisation_plan import acclimatisation_plan
from calc.safety.briefing import briefing
from calc.safety.briefing.cards import TWO
from calc.safety.briefing.core import HELD_BACK
from calc.safety.briefing.inputs import Inputs
from calc.safety.briefing.parts import run as run_parts
from calc.safety.heat_in_suit import heat_in_suit
from calc.safety.keep_away import keep_away
from calc.safety.ladder_and_lines import ladder_and_lines
from calc.safety.noise_dose import noise_dose
from calc.safety.sting_plan import sting_plan

COOL = {"air_temperature": 12, "humidity": 60, "sun": "shade", "person": "used"}
QUICK = settings(max_examples=60, deadline=None, derandomize=True, database=None)


def run(**inputs: Any) -> Result:
    return briefing.run(briefing.example() | inputs)


def stops(result: Result) -> list[str]:
    return [each.text for each in result.cautions if each.level == "stop"]


def level(result: Result) -> int:
    """Return 1 with conditions and 2 for stop; every run has conditions."""
    return {"Go on": 1, "Stop:": 2}[result.values["verdict"][:5]]


def test_few_inputs_and_each_asked_once() -> None:
    always = [each for each in briefing.inputs if each.only_if is None]
    assert len(always) <= 20
    assert len({each.label for each in briefing.inputs}) == len(briefing.inputs)


def test_shared_inputs_keep_their_limits() -> None:
    """A shared input has the range and the options of the calculator it belongs to."""
    owners = (heat_in_suit, sting_plan, keep_away, acclimatisation_plan, noise_dose)
    for owner in (*owners, ladder_and_lines):
        theirs = {each.name: each for each in owner.inputs}
        for ours in briefing.inputs:
            other = theirs.get(ours.name)
            if isinstance(ours, Number) and isinstance(other, Number):
                assert other.low <= ours.low <= ours.high <= other.high, ours.name
            elif isinstance(ours, Choice) and isinstance(other, Choice):
                if ours.name == "adrenaline":
                    continue  # joined with the number of devices; mapped in its parts
                assert set(ours.options) <= set(other.options), ours.name


@pytest.mark.parametrize(
    ("inputs", "word"),
    [
        ({"air_temperature": 40, "humidity": 80, "sun": "full_sun"}, "Heat:"),
        ({"reaction": "systemic"}, "Stings:"),
        ({"signal": "none"}, "Stings:"),
        ({"area": "rural", "adrenaline": "none"}, "Stings:"),
        ({"area": "rural", "adrenaline": "old"}, "Stings:"),
        ({"home_reaction": "systemic", "home_place": "near"}, "Stings:"),
        ({"group": "giant"}, "People:"),
        ({"around": "open"}, "People:"),
        ({"ladder": "up", "line_distance": 3}, "Ladder:"),
        ({"saw": "used", "saw_minutes": 90}, "Noise:"),
        ({"saw": "used", "saw_minutes": 20, "protector": "none"}, "Noise:"),
    ],
)
def test_any_part_that_stops_stops_the_day(inputs: dict[str, Any], word: str) -> None:
    result = run(**(COOL | inputs))
    assert result.values["verdict"].startswith("Stop: do not start")
    assert any(text.startswith(word) for text in stops(result))
    assert all(not result.values[name] for name in HELD_BACK)
    # The stop list, the zone and the blank numbers stay.
    assert result.values["stop_list"]
    assert result.values["numbers"]
    assert result.values["outer"]


def test_every_stop_of_a_part_is_told() -> None:
    inputs = COOL | {"reaction": "systemic", "signal": "none", "around": "open", "group": "giant"}
    result = run(**inputs)
    told = stops(result)
    for word, part in run_parts(Inputs(**result.inputs)).named():
        for each in part.cautions:
            if each.level == "stop":
                assert f"{word}: {each.text}" in told
    assert len(told) == len(set(told)) >= 5


def test_numbers_are_those_of_the_parts() -> None:
    result = run(air_temperature=20, person="used", area="minutes", response=9)
    typed = {"air_temperature": 20, "acclimatised": "yes", "planned_minutes": 40}
    heat = heat_in_suit.run(heat_in_suit.example() | typed)
    assert result.values["work_minutes"] == heat.values["work_minutes"]
    assert result.values["help_at"] == pytest.approx(11)
    people = keep_away.run(keep_away.example() | {"downwind": "yes"})
    assert result.values["outer"] == people.values["downwind"]
    limits = {row["what"]: row["value"] for row in result.values["limits"]}
    assert limits["Work in an hour, at most"] == heat.text("work_minutes")
    assert not any("Noise dose" in what for what in limits), "the levels are guessed here"


def test_first_days_cut_the_plan() -> None:
    warm = {"air_temperature": 27, "humidity": 60, "sun": "shade", "work": "moderate"}
    new = run(**warm, person="new_suit", day=1, full_minutes=100, planned_minutes=60)
    share = [row for row in new.values["conditions"] if row["part"] == "First days"]
    assert len(share) == 1
    assert "20 min" in share[0]["condition"]
    later = run(**warm, person="new_suit", day=5, full_minutes=100, planned_minutes=60)
    assert not [row for row in later.values["conditions"] if row["part"] == "First days"]
    assert new.values["on_site"] < later.values["on_site"]


def test_ladder_rows_only_with_a_ladder() -> None:
    without, with_one = run(**COOL), run(**COOL, ladder="up", line_distance=40)
    assert not any("Ladder" in row["what"] for row in without.values["limits"])
    assert any("Ladder" in row["what"] for row in with_one.values["limits"])
    assert any(row["part"] == "Ladder" for row in with_one.values["conditions"])


@pytest.mark.parametrize(
    ("inputs", "part"),
    [
        ({}, "Noise"),
        ({"saw": "used", "saw_minutes": 5}, "Saw"),
        ({"disturbance": "vibration"}, "Saw"),
        ({"air_temperature": 31, "humidity": 60}, "Heat"),
    ],
)
def test_conditions(inputs: dict[str, Any], part: str) -> None:
    result = run(**(COOL | {"planned_minutes": 240} | inputs))
    assert part in {row["part"] for row in result.values["conditions"]}
    assert level(result) == 1


def test_nobody_to_watch_stops_the_day() -> None:
    """One adult outside the zone is the least, also where help is near."""
    result = run(**(COOL | {"helpers": 0, "area": "urban"}))
    told = [each.text for each in result.cautions if each.level == "stop"]
    assert any(rules.text("team", "nobody") in text for text in told)
    assert result.values["conditions"] is None


@pytest.mark.parametrize(
    ("inputs", "two"),
    [
        ({}, False),
        ({"ladder": "up", "line_distance": 40}, True),
        ({"saw": "used", "saw_minutes": 5}, True),
        ({"disturbance": "vibration"}, True),
    ],
)
def test_one_suit_is_enough_on_the_ground_alone(inputs: dict[str, Any], two: bool) -> None:
    rows = run(**(COOL | inputs)).values["conditions"] or ()
    assert any(TWO in row["condition"] for row in rows) == two


def test_numbers_to_call_are_blank() -> None:
    assert all(set(row["number"]) == {"_"} for row in run().values["numbers"])


@pytest.mark.parametrize(
    "words", ["anaphylaxis", "heat stroke", "Run. Straight. Now.", "Your law, authority, doctor"]
)
def test_cautions_stand_in_every_run(words: str) -> None:
    for inputs in ({}, COOL, {"reaction": "systemic"}):
        assert any(words in each.text for each in run(**inputs).cautions)


def test_each_limit_names_who_set_it() -> None:
    for row in run(**COOL, ladder="up", line_distance=40).values["limits"]:
        assert row["by"]
        assert row["value"]
        assert row["what"]


@QUICK
@given(
    st.floats(5, 45),
    st.floats(0.1, 10),
    st.sampled_from(["new_heat", "used"]),
    st.sampled_from(["none", "local", "systemic"]),
    st.floats(1, 60),
)
def test_hotter_farther_worse_is_never_better(
    air: float, more: float, person: str, reaction: str, response: float
) -> None:
    day = {
        "air_temperature": air,
        "person": person,
        "reaction": reaction,
        "area": "minutes",
        "response": response,
        "adrenaline": "none",
    }
    now = level(run(**day))
    assert level(run(**(day | {"air_temperature": min(air + more, 50)}))) >= now
    assert level(run(**(day | {"response": response + more}))) >= now
    assert level(run(**(day | {"reaction": "systemic"}))) >= now
    assert level(run(**(day | {"person": "new_heat"}))) >= now
    assert level(run(**(day | {"helpers": 0}))) >= now
    assert level(run(**(day | {"around": "open"}))) >= now


def test_never_says_safe() -> None:
    for inputs in ({}, COOL, {"reaction": "systemic"}):
        assert "safe" not in str(run(**inputs).as_dict()["results"]).lower()


def test_a_printed_card_carries_what_was_typed() -> None:
    rows = run(**COOL, ladder="up", line_distance=40).values["typed"]
    typed = {row["asked"]: row["answer"] for row in rows}
    assert typed["Air temperature"] == "12.0 °C (54 °F)"
    assert typed["Ladder"] == "Someone climbs"
    assert "Saw in the day" not in typed
    assert len(rows) == len(typed)


def test_the_frail_have_their_number_on_the_card() -> None:
    for group, kin in (("hornet", "hornet"), ("yellowjacket", "other")):
        plan = sting_plan.run(sting_plan.example() | {"kin": kin}).values
        signs = [row["sign"] for row in run(group=group).values["stop_list"]]
        told = f"{plan['hospital_adult']} stings or more; old, ill, pregnant: "
        assert f"{told}{plan['hospital_frail']}" in signs


FEW = {"reaction": "none", "response": 8, "helpers": 1, "adrenaline": "none", "ladder": "none"}


def test_five_answers_make_a_card() -> None:
    """What nobody said is a condition on the card, and no number hangs on it."""
    result = briefing.run(FEW)
    assert not result.stopped
    told = [(row["part"], row["condition"]) for row in result.values["conditions"]]
    for part, words in (
        ("Stings", "A call from the spot has worked"),
        ("Stings", "Each in the suit asked"),
        ("People", "no giant hornets"),
        ("People", "told, in, counted"),
        ("First days", "new to this heat or suit"),
        ("Heat", "Heat in the suit"),
        ("Noise", "Ear protection"),
    ):
        assert any(part == where and words in text for where, text in told), words
    for name in ("work_minutes", "spells", "on_site"):
        assert result.values[name] is None
    assert not any("Work" in row["what"] for row in result.values["limits"])


def test_what_nobody_said_is_judged_by_the_worse() -> None:
    few = briefing.run(FEW)
    known = briefing.run(FEW | {"group": "yellowjacket", "colony": "small", "wind": 0})
    assert few.values["outer"] > known.values["outer"]
    far = FEW | {"response": 20, "adrenaline": "two"}
    assert briefing.run(far).stopped, "nobody said who practised"
    assert not briefing.run(far | {"trained": "helper"}).stopped
    hot = FEW | {"air_temperature": 24, "humidity": 60, "sun": "shade"}
    minutes = briefing.run(hot).values["work_minutes"]
    calmer = hot | {"wind": 3, "work": "moderate", "person": "used"}
    assert minutes < briefing.run(calmer).values["work_minutes"]


@pytest.mark.parametrize(
    ("given", "words"),
    [
        ({"helpers": 0}, rules.text("team", "nobody")),
        ({"reaction": "systemic"}, "had a systemic reaction"),
        ({"reaction": "cleared", "adrenaline": "none"}, "two devices in date"),
        ({"signal": "none"}, "No way to call"),
        ({"around": "open"}, "Children or animals"),
        ({"group": "giant"}, "Giant hornets"),
        ({"response": 30, "adrenaline": "none"}, "Help comes no sooner"),
        ({"ladder": "up", "line_distance": 2}, "Ladder:"),
    ],
)
def test_a_certain_stop_does_not_wait(given: dict[str, Any], words: str) -> None:
    told = briefing.answer(given)
    assert isinstance(told, Incomplete)
    assert any(words in each.text for each in told.cautions if each.level == "stop")

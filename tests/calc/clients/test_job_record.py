"""The job in use: values set, forms filled in, results written back, health wiped, run again."""

from __future__ import annotations

import json
from typing import Any

import pytest

from calc import tables
from calc.catalogue import CALCULATORS
from calc.clients import job
from calc.clients.job import health as job_health
from calc.clients.job import rerun as job_rerun
from calc.clients.job import shared as job_shared
from calc.clients.job.fields import SECTIONS
from calc.declare import Choice, Day, Number
from calc.errors import InputError
from tests.calc.clients import job_files

NOW = job_files.NOW
LATER = "2026-09-15T19:00:00+02:00"
FULL = job.read(json.dumps(job_files.FULL))
NEW = job.new("job-2026-09", NOW, "Hornets")
HEAT = {"humidity": 55, "sun": "shade", "work": "moderate", "wind": 1, "clothing": "sting_suit"}


def test_a_new_job_is_a_good_file() -> None:
    assert job.read(job.write(NEW)) == NEW
    with pytest.raises(InputError):
        job.new("Bad Name", NOW)


def test_setting_never_changes_the_old_job() -> None:
    before = job.write(FULL)
    after = job.set_value(FULL, "steps.2.minutes", 75, LATER)
    assert job.write(FULL) == before
    assert after.get("steps")[1]["minutes"] == 75
    assert after.get("changed") == LATER


@pytest.mark.parametrize(
    ("path", "value", "stored"),
    [
        ("place.height", "12 ft", 3.6576),
        ("place.height", {"value": 350, "unit": "cm"}, 3.5),
        ("place.height", 4, 4),
        ("shared.air_temperature", "64.4 degF", 18),
        ("shared.catches", "60, 35 20;11", [60, 35, 20, 11]),
        ("result.adults", "115", 115),
        ("title", "Pond", "Pond"),
        ("client.consent", "yes", "yes"),
        ("visit.date", "2026-10-01", "2026-10-01"),
        ("typed", {"heat_in_suit": {"air_temperature": "2"}}, None),
    ],
)
def test_values_are_stored_in_their_unit(path: str, value: Any, stored: Any) -> None:
    made = job.set_value(FULL, path, value, LATER)
    assert made.get(path) == (value if stored is None else pytest.approx(stored, rel=1e-9)
                              if isinstance(stored, float | int) else stored)  # fmt: skip


@pytest.mark.parametrize(
    ("path", "value"),
    [
        ("place.height", "12 kg"), ("place.height", "high"), ("place.height", 61),
        ("place.depth", 3), ("nowhere", 1), ("steps.9.minutes", 5), ("steps.0.minutes", 5),
        ("steps.1", {}), ("steps.x.minutes", 5), ("client.consent", "maybe"), ("", 1), (".", 1),
        ("visit.date", "1.10.2026"), ("steps", "capture"), ("shared.catches", "60, many"),
        ("shared.catches", {"value": 3}), ("id", ""), ("version", 2), ("format", "x"),
        ("health.diagnosis", "x"), ("client.name", 5), ("title", "\ud800"), ("steps.1.at.x", 1),
    ],
)  # fmt: skip
def test_a_wrong_value_is_refused_and_nothing_changes(path: str, value: Any) -> None:
    before = job.write(FULL)
    with pytest.raises(InputError) as caught:
        job.set_value(FULL, path, value, LATER)
    assert caught.value.sentence.endswith(".")
    assert job.write(FULL) == before


def test_empty_takes_a_field_out() -> None:
    made = job.set_value(FULL, "client.name", " ", LATER)
    assert made.get("client.name") is None
    assert job.set_value(made, "client.name", None, LATER) == made


def test_typed_once_fills_the_other_forms() -> None:
    made = job_shared.record(NEW, "heat_in_suit", HEAT | {"air_temperature": "68 degF"}, NOW)
    assert made.get("shared.air_temperature") == 20
    assert "planned_minutes" not in made.get("shared"), "what nobody typed is not shared"
    filled = job_shared.prefill(made, "flow_and_reach")
    assert filled["temperature"] == {"value": 20, "unit": "degC"}
    made = job_shared.record(made, "how_many_left", {"catches": [60, 35, 20, 11]}, NOW)
    assert made.get("shared.adults_caught") == 126
    assert job_shared.prefill(made, "catch_chamber")["adults"] == 126
    assert job_shared.prefill(made, "opening_the_cavity")["left"] >= made.get("shared.adults_left")
    assert job_shared.prefill(made, "how_many_left")["catches"] == [60, 35, 20, 11]


def test_the_call_sheet_and_the_record_share_answers() -> None:
    made = job_shared.record(
        NEW, "first_call", {"hurt": "no", "where": "roof", "treated": "no", "animal": "crabro"}, NOW
    )
    assert made.get("place.kind") == "roof"
    assert made.get("animal.species") == "crabro"
    assert made.get("answers.where") == "roof"
    assert job_shared.prefill(made, "comb_count")["species"] == "crabro"
    assert job_shared.prefill(made, "first_call")["where"] == "roof"


def test_every_calculator_takes_what_is_filled_in() -> None:
    made = FULL
    for path, value in (("place.height", 3), ("shared.hose_bore", 50), ("shared.wind", 2)):
        made = job.set_value(made, path, value, NOW)
    for name, calculator in CALCULATORS.items():
        filled = job_shared.prefill(made, name)
        assert calculator.reading(filled).problems == ()
        made = job_shared.record(made, name, calculator.example() | filled, NOW)
    assert job.read(job.write(made)) == made
    assert job_rerun.rerun(made) == []


def test_the_date_and_the_place_fill_when_to_come() -> None:
    filled = job_shared.prefill(FULL, "when_to_come")
    assert filled["date"] == "2026-09-15"
    assert filled["latitude"] == {"value": 52.5, "unit": "degree"}
    assert filled["animal"] == "crabro"
    assert job_shared.prefill(FULL, "colony_and_season")["day"] == 15
    after = job_shared.prefill(FULL, "follow_up")
    assert (after["date"], after["animal"], after["half"]) == ("2026-09-15", "crabro", "north")
    south = job.set_value(FULL, "place.latitude", -41.3, NOW)
    assert job_shared.prefill(south, "client_letter")["half"] == "south"
    franc = job.set_value(FULL, "price.currency", "XPF", NOW)
    assert "currency" not in job_shared.prefill(franc, "time_and_price")


def test_shared_rows_name_inputs_and_results_that_exist() -> None:
    for row in tables.rows("shared_inputs"):
        for name, field in job_shared._pairs(row.get("feeds", "")):
            each = next(one for one in CALCULATORS[name].inputs if one.name == field)
            if row["kind"] in {"number", "count", "numbers", "counts", "day"}:
                assert isinstance(each, Number), row
            elif row["kind"] == "date":
                assert isinstance(each, Day), row
            else:
                assert isinstance(each, Choice), row
        for name, field in job_shared._pairs(row.get("fed_by", "")):
            assert CALCULATORS[name].out(field)


def test_species_are_known_where_they_are_filled_in() -> None:
    columns = set(tables.load("job_species")["columns"]) - {"name", "scientific", "rank"}
    pairs = next(row for row in tables.rows("shared_inputs") if row["key"] == "species")["feeds"]
    for row in tables.rows("job_species"):
        for name, field in job_shared._pairs(pairs):
            column = job_shared._column(name)
            assert column in columns
            each = next(one for one in CALCULATORS[name].inputs if one.name == field)
            if column in row:
                assert each.read(row[column], None) == row[column]


def test_a_calculation_of_the_same_edition_is_replaced() -> None:
    made = job_shared.record(NEW, "how_many_left", {"catches": [60, 35]}, NOW)
    made = job_shared.record(made, "how_many_left", {"catches": [60, 35, 20]}, LATER)
    assert [each["time"] for each in made.get("calculations")] == [LATER]


def test_a_kept_calculation_says_where_its_values_came_from() -> None:
    given = job_shared.prefill(FULL, "follow_up") | {"comb": "taken", "hole": "vent"}
    given |= {"indoors": "no"}
    made = job_shared.record(FULL, "follow_up", given, NOW, origins={"indoors": "equipment"})
    (entry,) = [each for each in made.get("calculations") if each["calculator"] == "follow_up"]
    assert entry["origins"] == {
        "date": "job", "animal": "job", "half": "job", "comb": "given", "hole": "given",
        "indoors": "equipment",
    }  # fmt: skip
    assert set(entry["origins"]) == set(entry["inputs"])
    # another date than the record's is the person's own
    other = job_shared.record(FULL, "follow_up", given | {"date": "2026-09-16"}, NOW)
    assert other.get("calculations")[-1]["origins"]["date"] == "given"


def test_a_usual_value_of_another_edition_does_not_stand_for_ever() -> None:
    given = CALCULATORS["when_to_come"].example()
    del given["setup"]
    made = job_shared.record(NEW, "when_to_come", given, NOW).as_dict()
    entry = made["calculations"][-1]
    assert entry["origins"]["setup"] == "usual"
    entry["inputs"]["setup"] = {"value": 175, "unit": "min"}
    assert job_rerun.rerun(job.Job(made)) == []


def test_origins_do_not_tell_of_health() -> None:
    made = job_shared.record(NEW, "first_call", {"hurt": "no", "reaction": "plan"}, NOW)
    (entry,) = job_health.wipe_health(made, LATER).get("calculations")
    assert not {"hurt", "reaction", "adrenaline"} & set(entry["origins"])


def test_bad_input_leaves_the_job() -> None:
    before = job.write(FULL)
    with pytest.raises(InputError):
        job_shared.record(FULL, "how_many_left", {"catches": "-1"}, LATER)
    assert job.write(FULL) == before


def with_health() -> job.Job:
    made = job_shared.record(
        FULL, "first_call", {"reaction": "plan", "adrenaline": "expired", "hurt": "stung"}, NOW
    )
    site = CALCULATORS["sting_plan"].example() | {"reaction": "systemic"}
    made = job_shared.record(made, "sting_plan", site, NOW)
    made = job.set_value(made, "stings.1.reaction", "large_local", NOW)
    return job.set_value(made, "typed", {"first_call": {"reaction": "plan", "where": "roof"}}, NOW)


def test_health_is_wiped_alone_and_wholly() -> None:
    made = with_health()
    wiped = job_health.wipe_health(made, LATER)
    named = {"wiped": []}
    calculations = [each | named for each in wiped.get("calculations")]
    text = job.write(job.Job(wiped.as_dict() | {"calculations": calculations}))
    for word in (
        "allergy", "adrenaline", "expired", "systemic", "large_local", 'reaction": "plan',
        "Stays away", "strong reaction", "had a systemic",
    ):  # fmt: skip
        assert word not in text, word
    assert wiped.get("client") == made.get("client")
    assert wiped.get("typed.first_call.where") == "roof"
    entry = next(each for each in wiped.get("calculations") if each["calculator"] == "sting_plan")
    assert "reaction" in entry["wiped"]
    assert "results" not in entry
    again = job_rerun.rerun(wiped)
    assert {each["kind"] for each in again if each["calculator"] == "sting_plan"} == {"wiped"}
    assert "plan" in job.write(made)


def test_wiped_inputs_do_not_tell_what_was_given() -> None:
    wiped = [
        job_health.wipe_health(job_shared.record(NEW, "first_call", given, NOW), LATER)
        for given in (
            {"hurt": "no", "reaction": "none"},
            {"hurt": "no", "reaction": "plan", "adrenaline": "yes"},
        )
    ]
    assert wiped[0] == wiped[1]


def test_links_and_documents_leave_health_out() -> None:
    made = with_health()
    for told in (job_health.for_link(made), job_health.for_document(made)):
        text = json.dumps(told)
        for word in ("health", "allergy", "expired", "large_local", "reaction", "52.5"):
            assert word not in text, word
    assert "client" not in job_health.for_link(made)
    assert "notes" not in job_health.for_document(made)
    assert job_health.for_document(made, health=True)["health"]["autoinjector"] == "expired"


def test_inputs_about_health_are_marked_wherever_they_stand() -> None:
    for name, calculator in CALCULATORS.items():
        for each in calculator.inputs:
            if each.name in {"reaction", "home_reaction", "adrenaline", "hurt", "home_place"} or (
                each.name == "health"
            ):
                assert each.name in job_health.HEALTH_INPUTS.get(name, ()), (name, each.name)


def test_an_old_edition_is_run_again_and_differences_shown() -> None:
    made = job_shared.record(NEW, "how_many_left", {"catches": [60, 35, 20, 11]}, NOW)
    data = made.as_dict()
    entry = data["calculations"][0]
    now = dict(entry["results"])
    entry["edition"] = "2020.1"
    entry["results"] |= {"still_inside": 99.0, "left_out_since": 3}
    del entry["results"]["passes_needed"]
    entry["stops"] = ["An old stop."]
    found = {(each["kind"], each["result"]): each for each in job_rerun.rerun(job.Job(data))}
    changed = found["changed", "still_inside"]
    assert changed["then"].startswith("99")
    assert changed["now"].startswith(str(round(now["still_inside"])))
    assert changed["edition_then"] == "2020.1"
    assert ("gone", "left_out_since") in found
    assert ("new", "passes_needed") in found
    assert found["stop", ""]["then"] == "An old stop."
    assert len(found) == 4


def test_units_that_changed_between_editions_are_no_difference() -> None:
    made = job_shared.record(NEW, "heat_in_suit", HEAT | {"air_temperature": 30}, NOW)
    data = made.as_dict()
    results = data["calculations"][0]["results"]
    degrees = results["effective_wbgt"]["value"]
    results["effective_wbgt"] = {"value": degrees * 9 / 5 + 32, "unit": "degF"}
    assert job_rerun.rerun(job.Job(data)) == []


def test_a_calculator_that_is_gone_and_inputs_that_are_refused_are_told() -> None:
    data = FULL.as_dict()
    data["calculations"] = [
        data["calculations"][0] | {"calculator": "abacus"},
        data["calculations"][0] | {"inputs": {"catches": [-1]}},
    ]
    assert [each["kind"] for each in job_rerun.rerun(job.Job(data))] == ["refused", "refused"]


def test_summary_names_no_person() -> None:
    told = job.summary(FULL)
    text = json.dumps(told)
    assert told["minutes"] == 100.5
    assert told["stings"] == 2
    assert told["species"] == "European hornet"
    for word in ("Example", "Lane", "expired", "52.5"):
        assert word not in text


def test_only_health_and_what_is_private_stays_home() -> None:
    for section in SECTIONS:
        for each in section.fields:
            if each.health:
                assert each.share == "private"

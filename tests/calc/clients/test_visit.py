"""The visit in the job record: its tables, its times, and what it never writes over."""

from __future__ import annotations

import json
from typing import Any

import pytest

from calc import tables
from calc.catalogue import CALCULATORS
from calc.clients import job, season
from calc.clients.job import Job
from calc.clients.job import health as job_health
from calc.clients.job.fields import STEPS, section
from calc.clients.visit import fields as visit_fields
from calc.clients.visit import times as visit
from docs_build.bootstrap import ROOT
from docs_build.page import jobs

NOW = "2026-09-15T18:30Z"
KEYS = [each["key"] for each in tables.rows("visit_steps")]
PAGES = ROOT / "handbook" / "visit"


def pressed(held: Job | None, **moments: str) -> Job:
    """A job in which the page has noted presses, as the page's own door takes them."""
    changes = {f"progress.{name}": {"text": text, "us": False} for name, text in moments.items()}
    given = held.as_dict() if held else None
    reply = jobs.call({"do": "set", "id": "job-1", "job": given, "now": NOW, "changes": changes})
    assert reply["ok"]
    assert not reply["errors"]
    return job.read(json.dumps(reply["job"]))


def test_the_tables_name_what_there_is() -> None:
    assert len(KEYS) == 10
    kinds = {value for value, _ in STEPS}
    for step in tables.rows("visit_steps"):
        assert step["kind"] in kinds
        assert set(step["calculators"]) <= set(CALCULATORS)
        for path in step.get("record", ()):
            home = section(path.partition(".")[0])
            assert home is not None
            field = home.field(path.partition(".")[2])
            assert field is not None, path
            assert not field.health, f"{path}: the report lists no health"
    stops = tables.rows("visit_stops")
    assert [key for key in KEYS if not any(row["step"] == key for row in stops)] == []
    assert len({row["key"] for row in stops}) == len(stops)
    for row in stops:
        assert row["key"].startswith(f"{row['step']}_")
        assert len(row["key"]) <= 40, "the record takes no longer one"


@pytest.mark.parametrize("step", tables.rows("visit_steps"), ids=KEYS)
def test_each_page_places_what_the_table_says(step: Any) -> None:
    text = (PAGES / f"{step['key']}.md").read_text("utf-8")
    placed = [line.split("} ")[1] for line in text.splitlines() if ":::{calculator}" in line]
    assert placed == step["calculators"]
    order = ["{visit-step}", "{visit-stops}", "visit-card", ":::{calculator}", "## More"]
    places = [text.index(word) for word in order]
    assert places == sorted(places), "a caution comes before the number it limits"
    assert f"# {step['name']}\n" in text


@pytest.mark.parametrize(
    ("begun", "done", "minutes"),
    [
        ("2026-09-15T10:00:00Z", "2026-09-15T10:12:30Z", 12.5),
        ("2026-09-15T12:00:00+02:00", "2026-09-15T10:12:30Z", 12.5),
        ("2026-09-15T10:00:00Z", "2026-09-16T10:00:00Z", 1440),
        ("2026-09-15T10:00:00Z", "2026-09-16T10:00:01Z", None),
        ("2026-09-15T10:00:00Z", "2026-09-15T09:59:59Z", None),
        ("2026-09-15T10:00:00Z", None, None),
        (None, "2026-09-15T09:59:59Z", None),
    ],
)
def test_minutes_are_believed_or_none(begun: Any, done: Any, minutes: Any) -> None:
    assert visit.took(begun, done) == minutes


def test_a_done_step_feeds_steps_arrival_and_the_season() -> None:
    held = pressed(None, arrive_begun="2026-09-15T10:00:00Z")
    assert held.get("visit.arrive") == "2026-09-15T10:00:00Z"
    assert held.get("steps") is None
    held = pressed(held, arrive_done="2026-09-15T10:10:00Z", catch_begun="2026-09-15T10:30:00Z")
    held = pressed(held, catch_done="2026-09-15T11:15:00Z", leave_begun="2026-09-15T11:20:00Z")
    held = pressed(held, leave_done="2026-09-15T11:30:00Z", look_begun="2026-09-15T09:50:00Z")
    held = pressed(held, look_done="2026-09-15T09:55:00Z")
    assert held.get("visit.leave") == "2026-09-15T11:30:00Z"
    # Arriving and looking count as one kind of work: one entry, added up, begun at the earlier.
    assert held.get("steps") == [
        {"step": "set_up", "minutes": 15, "at": "2026-09-15T09:50:00Z"},
        {"step": "capture", "minutes": 45, "at": "2026-09-15T10:30:00Z"},
        {"step": "close_up", "minutes": 10, "at": "2026-09-15T11:20:00Z"},
    ]
    assert season.step_minutes([held])["set_up"] == [15]


def test_what_was_typed_stays() -> None:
    held = job.set_value(job.new("job-1", NOW), "visit.arrive", "2026-09-15T08:00:00Z", NOW)
    held = job.set_value(held, "steps", [{"step": "capture", "minutes": 50}], NOW)
    held = pressed(held, arrive_begun="2026-09-15T10:00:00Z", catch_begun="2026-09-15T10:30:00Z")
    held = pressed(held, catch_done="2026-09-15T11:15:00Z")
    assert held.get("visit.arrive") == "2026-09-15T08:00:00Z"
    assert held.get("steps") == [{"step": "capture", "minutes": 50}]


def test_what_the_visit_wrote_follows_the_visit_until_someone_types_over_it() -> None:
    held = pressed(None, wait_begun="2026-09-15T10:00:00Z", wait_done="2026-09-15T10:20:00Z")
    held = pressed(held, wait_done="2026-09-15T10:30:00Z")
    assert held.get("steps")[0]["minutes"] == 30
    held = pressed(held, wait_done="")  # undone
    assert held.get("steps") == [{"step": "wait"}]
    held = pressed(held, wait_done="2026-09-15T10:40:00Z")
    assert held.get("steps")[0]["minutes"] == 40
    held = job.set_value(held, "steps.1.minutes", "25", NOW)
    held = pressed(held, wait_done="2026-09-15T10:50:00Z")
    assert held.get("steps")[0]["minutes"] == 25
    held = pressed(held, arrive_begun="2026-09-15T10:00:00Z")
    held = pressed(held, arrive_begun="2026-09-15T09:00:00Z")
    assert held.get("visit.arrive") == "2026-09-15T09:00:00Z"
    held = pressed(held, arrive_begun="")
    assert held.get("visit.arrive") is None


def test_a_clock_set_back_leaves_no_minutes() -> None:
    held = pressed(None, open_begun="2026-09-15T10:00:00Z", open_done="2026-09-15T09:00:00Z")
    assert held.get("steps") is None
    assert held.get("progress.open_done") == "2026-09-15T09:00:00Z"


def test_nothing_pressed_leaves_the_device_and_health_is_wiped_alone() -> None:
    health = [row["key"] for row in tables.rows("visit_stops") if row.get("health")]
    assert {"brief_reaction", "catch_sign", "leave_sting"} <= set(health)
    held = pressed(
        None, brief_health="brief_reaction", brief_stops="brief_inside", brief_ticks="1\n2",
        brief_looked="2026-09-15T10:00:00Z",
    )  # fmt: skip
    for made in (job_health.for_link(held), job_health.for_document(held, health=True)):
        assert "brief" not in json.dumps(made)
    for made in (job_health.wipe_health(held, NOW), job_health.without_health(held)):
        assert made.get("progress.brief_health") is None
        assert made.get("progress.brief_stops") == ["brief_inside"]
        assert made.get("progress.brief_ticks") == ["1", "2"]
    assert "reaction" not in job.write(job_health.without_health(held))


def test_every_stop_has_a_field_and_no_other() -> None:
    names = {each.name: each for each in visit_fields.fields()}
    for row in tables.rows("visit_stops"):
        field = names[f"{row['step']}_{'health' if row.get('health') else 'stops'}"]
        assert field.health == row.get("health", False)
        assert field.share == "private"


def test_a_file_from_before_the_visit_still_reads() -> None:
    text = (ROOT / "demo_cases" / "mill_willow" / "job.json").read_text("utf-8")
    assert job.read(text).get("progress") is None

"""The job file: one declaration, a schema and a reader that agree, one sentence for the rest."""

from __future__ import annotations

import copy
import json
import time
from collections.abc import Iterator
from datetime import datetime
from typing import Any

import jsonschema
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from calc.__main__ import main
from calc.clients import job
from calc.clients.job import rerun
from calc.clients.job.fields import SECTIONS
from calc.errors import InputError
from docs_build.bootstrap import ROOT
from tests.calc.clients import job_files

SCHEMA = job.schema()
CHECKER = jsonschema.FormatChecker(formats=["date"])


@CHECKER.checks("date-time", raises=ValueError)
def _moment(value: object) -> bool:
    if isinstance(value, str):
        datetime.fromisoformat(value)
    return True


VALIDATOR = jsonschema.Draft202012Validator(SCHEMA, format_checker=CHECKER)
GOOD = dict(job_files.good())
WRONG = dict(job_files.wrong())
HOSTILE = dict(job_files.hostile())


def test_the_schema_is_a_schema() -> None:
    # jsonschema 4.26, meta-schema of draft 2020-12.
    jsonschema.Draft202012Validator.check_schema(SCHEMA)


def test_the_committed_schema_is_the_one_of_the_declaration() -> None:
    text = (ROOT / "handbook/reference/job.schema.json").read_text(encoding="utf-8")
    assert json.loads(text) == SCHEMA, "write it anew: python -m calc schema"


def test_the_door_prints_the_schema(capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["schema"]) == 0
    assert json.loads(capsys.readouterr().out) == SCHEMA


@pytest.mark.library("jsonschema")
@pytest.mark.parametrize("name", GOOD)
def test_schema_and_reader_take(name: str) -> None:
    # Outside reference: jsonschema 4.26, Draft202012Validator.
    VALIDATOR.validate(GOOD[name])
    read = job.read(json.dumps(GOOD[name]))
    assert read.as_dict() == GOOD[name]
    assert job.read(job.write(read)) == read


@pytest.mark.parametrize("name", WRONG)
def test_schema_and_reader_refuse(name: str) -> None:
    # Outside reference: jsonschema 4.26, Draft202012Validator.
    assert not VALIDATOR.is_valid(WRONG[name]), "the schema takes what it should not"
    one_sentence(json.dumps(WRONG[name]))


@pytest.mark.parametrize("name", HOSTILE)
def test_hostile_files_get_one_sentence(name: str) -> None:
    start = time.perf_counter()
    one_sentence(HOSTILE[name])
    assert time.perf_counter() - start < 5, "a hostile file holds the phone up"


ODD = st.one_of(
    st.none(), st.booleans(), st.integers(-5, 10**6), st.floats(-1e6, 1e6), st.text(max_size=8),
    st.sampled_from(
        ["yes", "crabro", "2026-02-29", "2026-09-15", job_files.NOW, "EUR", "x" * 130, "a\nb",
         "\x00"]
    ),
    st.lists(st.integers(-1, 50) | st.text(max_size=3), max_size=4),
    st.dictionaries(st.sampled_from(["value", "unit", "a", "A", "step", "who"]),
                    st.integers(0, 9) | st.text(max_size=3), max_size=2),
)  # fmt: skip


def places(value: Any, way: tuple[Any, ...] = ()) -> Iterator[tuple[Any, ...]]:
    """Return the way to every value of a file."""
    if way:
        yield way
    if isinstance(value, dict | list):
        for name, each in value.items() if isinstance(value, dict) else enumerate(value):
            yield from places(each, (*way, name))


PLACES = list(places(job_files.FULL))


@pytest.mark.library("jsonschema")
@settings(max_examples=600, deadline=None, derandomize=True, database=None)
@given(st.lists(st.tuples(st.sampled_from(PLACES), ODD), min_size=1, max_size=2))
def test_schema_and_reader_agree_on_random_changes(
    changes: list[tuple[tuple[Any, ...], Any]],
) -> None:
    # Outside reference: jsonschema 4.26, Draft202012Validator.
    made = copy.deepcopy(job_files.FULL)
    for (*way, last), value in changes:
        at: Any = made
        for name in way:
            at = at[name] if isinstance(at, dict | list) and _has(at, name) else None
        if isinstance(at, dict | list) and _has(at, last):
            at[last] = value
    taken = reads(json.dumps(made))
    if made["version"] not in (0, 1) or isinstance(made["version"], bool):
        assert taken == VALIDATOR.is_valid(made)


def reads(text: str) -> bool:
    try:
        job.read(text)
    except InputError:
        return False
    return True


def _has(at: Any, name: Any) -> bool:
    return name in at if isinstance(at, dict) else isinstance(name, int) and name < len(at)


def test_two_hundred_files_were_tried() -> None:
    assert len(WRONG) + len(HOSTILE) >= 200
    assert len(HOSTILE) >= 60


def one_sentence(text: str | bytes) -> None:
    with pytest.raises(InputError) as caught:
        job.read(text)
    error = caught.value
    assert error.field
    assert error.sentence.endswith(".")
    assert "\n" not in error.sentence
    assert len(error.sentence) < 420
    assert "Traceback" not in error.sentence
    json.dumps(error.as_dict(), allow_nan=False)


def test_a_newer_version_says_so() -> None:
    with pytest.raises(InputError, match="newer edition"):
        job.read(json.dumps(job_files.FULL | {"version": 3}))


def test_the_trial_form_is_lifted() -> None:
    text = (ROOT / "tests/data/job_version_0.json").read_text(encoding="utf-8")
    lifted = job.read(text)
    assert lifted.get("version") == 2
    assert lifted.get("client.name") == "A. Example"
    assert lifted.get("animal.species") == "vulgaris"
    assert lifted.get("steps") == [
        {"step": "capture", "minutes": 45},
        {"step": "wait", "minutes": 30},
    ]
    VALIDATOR.validate(lifted.as_dict())


def test_kept_calculations_of_the_first_edition_are_lifted() -> None:
    text = (ROOT / "tests/data/job_version_1.json").read_text(encoding="utf-8")
    lifted = job.read(text)
    VALIDATOR.validate(lifted.as_dict())
    when, letter, call = (each["inputs"] for each in lifted.get("calculations"))
    assert when["date"] == letter["date"] == "2026-08-20"
    assert when["forecast"] == "hours"
    assert (letter["arrive"], letter["finish"]) == ("20:05", "22:30")
    assert not {"year", "day", "arrive_hour", "finish_minute"} & {*when, *letter}
    assert call == {"hurt": "no", "near": {"value": 2, "unit": "m"}}
    assert lifted.get("answers") == {"hurt": "no"}
    # what a later edition no longer asks is left out, and the rest is computed again
    told = rerun.rerun(lifted)
    assert not [each for each in told if each["kind"] == "refused"], told
    assert job.read(job.write(lifted)) == lifted


def test_every_field_is_told_to_the_page() -> None:
    told = job.form()
    assert [each["name"] for each in told["sections"]] == [each.name for each in SECTIONS]
    for section in told["sections"]:
        for each in section["fields"]:
            assert each["label"], each
            assert each["meaning"].endswith("."), each
            assert each["share"] in {"open", "client", "private"}
            assert not (each["health"] and each["share"] != "private")


def test_what_is_written_is_canonical() -> None:
    made: dict[str, Any] = job_files.FULL
    turned = dict(reversed(list(made.items())))
    assert job.write(job.read(json.dumps(made))) == job.write(job.read(json.dumps(turned)))

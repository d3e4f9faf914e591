"""A letter from the job record: only what it holds, never health, withheld where it would harm."""

from __future__ import annotations

import json
from typing import Any

import pytest

from calc.clients import job, letters
from calc.clients.job import letter as job_letter
from calc.declare import Caution

from . import job_files

TODAY = "2026-09-16"
SECRET = "Secretnote"


def write(
    kind: str, data: dict[str, Any], language: str = "en", **more: Any
) -> tuple[str, list[Caution]]:
    return job_letter.letter(kind, language, job.read(json.dumps(data)), TODAY, **more)


def full(**sections: dict[str, Any]) -> dict[str, Any]:
    made = dict(job_files.FULL)
    return made | {name: made.get(name, {}) | each for name, each in sections.items()}


def kept(calculator: str, inputs: dict[str, Any], results: dict[str, Any], *stops: str) -> Any:
    return {
        "calculator": calculator, "edition": "2026.1", "time": job_files.NOW,
        "inputs": inputs, "results": results, "stops": list(stops),
    }  # fmt: skip


@pytest.mark.parametrize("language", letters.LANGUAGES)
@pytest.mark.parametrize("kind", letters.KINDS)
def test_every_letter_comes_from_an_empty_and_from_a_full_job(kind: str, language: str) -> None:
    health = {"allergy_on_site": "yes", "autoinjector": "expired", "note": SECRET}
    for data in (job_files.LEAST, full(health=health)):
        text, _ = write(kind, data, language)
        assert text.startswith(letters.catalogue(language)["titles"][kind])
        assert "{" not in text
        assert "None" not in text
        assert SECRET not in text


def test_a_letter_is_the_same_whatever_is_known_of_anyones_health() -> None:
    bare = {name: each for name, each in job_files.FULL.items() if name != "health"}
    for kind in letters.KINDS:
        assert write(kind, bare) == write(kind, job_files.FULL)


def test_the_report_tells_names_dates_and_counts_of_the_job() -> None:
    data = full(result={"client_words": "The gate is shut again."}, client={"role": "owner"})
    text, _ = write("report", data, clocks={"arrive": "18:30", "leave": "21:05"})
    for words in (
        "A. Example, 1 Long Lane, Nowhere",
        "On 15 September 2026 we were there from 18:30 to 21:05.",
        "We caught 115 adults.",
        "Stings on site: 2.",
        "The hole",
        "The gate is shut again.",
        "Next look: 6 October 2026.",
    ):
        assert words in text
    assert "Last look" not in text  # two days were agreed


def test_what_was_not_noted_is_not_told() -> None:
    data = {name: each for name, each in job_files.FULL.items() if name not in {"stings", "result"}}
    data["shared"] = {}
    text, _ = write("report", data)
    assert "Stings on site" not in text
    assert "adults." not in text
    assert "still have been in there" not in text
    assert "we were there from" not in text


def test_kept_calculations_add_what_was_computed() -> None:
    data = full() | {
        "calculations": [
            kept("how_many_left", {}, {"interval_inside": [3, 20.2]}),
            kept("keep_away", {}, {"outer": {"value": 9.5, "unit": "m"}}),
            kept("when_to_come", {"date": "2026-09-15"},
                 {"arrive": "18:10", "finish": "20:40"}),
            kept("time_and_price", {"currency": "EUR"},
                 {"price": 280, "total": 333.2, "deposit_sum": 28}),
        ]
    }  # fmt: skip
    assert "up to 21 adults" in write("report", data)[0]
    assert "10 m" in write("preparation", data)[0]
    assert "32 ft" in write("preparation", data, customary=True)[0]
    quote = write("quote", data)[0]
    assert "from 18:10 to about 20:40" in quote
    assert "Price before tax: EUR 280.00." in quote
    assert "You pay in all: EUR 333.20." in quote
    # Another sum was quoted than the one computed: its tax is not known.
    data["price"] = {"currency": "EUR", "quoted": 300}
    assert "You pay in all" not in write("quote", data)[0]
    # The day was moved: its hours are not known.
    data["visit"] = {"date": "2026-09-16"}
    assert "18:10" not in write("quote", data)[0]


def test_a_stopped_calculation_tells_nothing() -> None:
    stopped = kept("keep_away", {}, {"outer": {"value": 9.5, "unit": "m"}}, "Do not start.")
    text, cautions = write("tonight", full() | {"calculations": [stopped]})
    assert "stay behind it" not in text
    assert any("No distance" in each.text for each in cautions)


@pytest.mark.parametrize("treated", ["yes", "nobody_knows", "unknown"])
def test_brood_of_a_treated_nest_is_not_written_away_as_food(treated: str) -> None:
    text, cautions = write("report", full(result={"fate": "fed"}, animal={"treated": treated}))
    assert text == ""
    assert any(each.level == "stop" for each in cautions)


def test_bees_get_a_letter_to_a_beekeeper_only() -> None:
    bees = full(animal={"species": "bees"})
    for kind in letters.KINDS:
        text, _ = write(kind, bees)
        assert bool(text) == (kind in {"beekeeper", "authority"})

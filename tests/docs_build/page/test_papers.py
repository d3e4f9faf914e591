"""Papers made on the phone: a letter from the open job, the season from all jobs."""

from __future__ import annotations

import csv
import io
import json
from pathlib import Path
from typing import Any

import pytest
from playwright.sync_api import expect

from calc.clients.season import records as season_records
from docs_build.page import job_season, jobs
from tests.calc.clients import job_files

from .conftest import PHONE, Host
from .test_jobs import ATTACK, NOW, axe, begun, bring, opened, unfold

browser = pytest.mark.browser
LETTER = "[data-part=letter]"
SEASON = "[data-part=season]"
SECRET = "Secretnote"


def made(number: int, **sections: Any) -> dict[str, Any]:
    return job_files.FULL | {"id": f"job-{number}"} | sections


SEASON_JOBS = [
    made(1),
    made(2, visit={"date": "2026-09-16"}, price={"currency": "EUR", "final": 100}),
    made(3, animal={"species": "germanica"}, result={"adults": 20}, stings=[]),
    made(4, visit={"date": "2025-07-01"}, price={"currency": "CHF", "final": 70}),
    made(5, visit={}, title=ATTACK, client={"name": ATTACK}, health={"note": SECRET}),
]


# The side of Python, without a browser.


def test_the_season_counts_all_jobs_by_year() -> None:
    told = job_season.told([*map(json.dumps, SEASON_JOBS), "{}", "no job"])
    html = told["html"]
    assert "cannot be read: 2." in html
    assert html.index('year">2026') < html.index('year">2025') < html.index('year">Without a date')
    assert "Jobs: 3; adults: 250, counted in 3; hours: 5.0; stings: 4; EUR: 661.00." in html
    hornets = '<th scope="row">European hornet</th><td>2</td><td>230</td><td>201</td><td>4</td>'
    assert hornets + "<td>380.50</td>" in html
    rows = list(csv.DictReader(io.StringIO(told["files"]["rows"]["text"])))
    assert [row["id"] for row in rows] == ["job-4", "job-1", "job-3", "job-2", "job-5"]
    assert told["files"]["rows"]["name"] == "season-2025-2026.csv"
    records = list(csv.DictReader(io.StringIO(told["files"]["records"]["text"])))
    assert tuple(records[0]) == season_records.terms()
    assert {each["decimalLatitude"] for each in records} == {"52.50"}
    assert {each["eventID"] for each in records} == {"job-1", "job-2", "job-3", "job-4"}


def test_the_season_names_nobody() -> None:
    everything = json.dumps(job_season.told(map(json.dumps, SEASON_JOBS)))
    for word in (SECRET, "Example", "Long Lane", "onerror", "Gate sticks"):
        assert word not in everything


def test_mixed_currencies_are_not_added() -> None:
    mixed = [made(1), made(2, price={"currency": "CHF", "final": 70})]
    html = job_season.told(map(json.dumps, mixed))["html"]
    assert "CHF: 70.00; EUR: 280.50." in html
    assert "350" not in html
    assert "<td>–</td>" in html


def test_no_job_is_said() -> None:
    told = job_season.told([])
    assert "No job" in told["html"]
    assert told["files"]["rows"]["name"] == "season-undated.csv"


def test_a_letter_of_an_unknown_kind_is_one_sentence() -> None:
    asked = {"do": "letter", "id": "job-1", "now": NOW, "job": job_files.FULL, "clocks": {}}
    asked |= {"today": "2026-09-16", "customary": False, "language": "en"}
    told = jobs.call(asked | {"kind": "<script>"})
    assert not told["ok"]
    assert "Traceback" not in told["sentence"]
    assert jobs.call(asked | {"kind": "quote"})["text"].startswith("Quote")


# In the browser.


@pytest.fixture
def page(phone: Any, host: Host) -> Any:
    """Return the job sheet on a device without jobs, its clipboard, share and printer noted."""
    phone.add_init_script(
        "self.told = {};"
        "Object.defineProperty(navigator, 'clipboard',"
        " { value: { writeText: async (text) => { told.copied = text; } } });"
        "navigator.share = async (given) => { told.shared = given; };"
        "self.print = () => { told.printed = true; };"
    )
    phone.evaluate(
        "import('/_static/jobs.mjs').then(async (jobs) => {"
        " for (const one of await jobs.all()) await jobs.erase(one.id); })"
    )
    return opened(phone, host)


def file_of(data: dict[str, Any]) -> tuple[str, bytes]:
    return (f"{data['id']}.json", json.dumps(data).encode())


def shown(page: Any, words: str) -> str:
    """Wait until the letter has words in it and return it."""
    place = page.locator(f"{LETTER} .job-letter")
    expect(place).to_contain_text(words, timeout=30_000)
    return str(place.evaluate("(one) => one.textContent"))


@browser
def test_a_letter_is_copied_shared_and_printed_alone(page: Any, host: Host) -> None:
    client = {"name": ATTACK, "address": "1 Long Lane"}
    bring(page, file_of(made(1, client=client, health={"note": SECRET})))
    page.click(f"{LETTER} summary")
    page.select_option("[data-letter=kind]", "report")
    text = shown(page, "We caught 115 adults.")
    assert ATTACK in text
    assert SECRET not in text
    assert "CAUTION:" in page.inner_text(f"{LETTER} .job-cautions")
    page.click("[data-job=copyLetter]")
    page.click("[data-job=shareLetter]")
    page.click("[data-job=printLetter]")
    told = page.evaluate("told")
    assert told == {
        "copied": text, "printed": True, "shared": {"title": "What we did", "text": text}
    }  # fmt: skip
    page.emulate_media(media="print")
    assert page.evaluate("document.body.innerText").strip() == text.strip()
    page.evaluate("dispatchEvent(new Event('afterprint'))")
    assert "Read it before you send it" not in page.evaluate("document.body.innerText")
    assert page.locator(".job-paper").count() == 0
    page.emulate_media(media="screen")
    page.select_option("[data-letter=language]", "de")
    assert "115" in shown(page, "Gefangene")
    assert page.get_attribute(f"{LETTER} .job-letter", "lang") == "de"
    # The choice is still there when the page comes back.
    opened(page, host).click(f"{LETTER} summary")
    shown(page, "Gefangene")
    assert page.title() != "taken"


@browser
def test_a_letter_follows_the_open_job_and_is_withheld_for_bees(page: Any) -> None:
    bring(page, file_of(made(1, title="First")), file_of(made(2, title="Second")))
    page.click(f"{LETTER} summary")
    page.select_option("[data-letter=kind]", "report")
    shown(page, "We caught 115 adults.")
    unfold(page)
    page.fill("[name='result.adults']", "99")
    shown(page, "We caught 99 adults.")
    page.click(".job-list button:has-text('First')")
    shown(page, "We caught 115 adults.")
    page.select_option("[name='animal.species']", "bees")
    expect(page.locator(f"{LETTER} .job-cautions")).to_contain_text("STOP:", timeout=20_000)
    expect(page.locator(f"{LETTER} .job-letter")).to_be_hidden()
    expect(page.locator("[data-job=copyLetter]")).to_be_hidden()


@browser
def test_the_season_is_shown_and_saved(page: Any) -> None:
    bring(page, *map(file_of, SEASON_JOBS))
    page.click("[data-job=close]")
    page.click(f"{SEASON} summary")
    place = page.locator(".job-season")
    expect(place).to_contain_text("Jobs: 3; adults: 250", timeout=30_000)
    expected = job_season.told(map(json.dumps, SEASON_JOBS))["files"]
    for button, kind in (("saveRows", "rows"), ("saveRecords", "records")):
        with page.expect_download() as coming:
            page.click(f"[data-job={button}]")
        assert coming.value.suggested_filename == expected[kind]["name"]
        text = Path(coming.value.path()).read_bytes().decode()
        assert sorted(text.splitlines()) == sorted(expected[kind]["text"].splitlines())
    # What has just been typed is in it.
    begun(page)
    unfold(page)
    page.fill("[name='visit.date']", "2026-09-20")
    expect(place).to_contain_text("Jobs: 4; adults: 250", timeout=30_000)
    assert page.title() != "taken"


@browser
def test_axe_keys_and_width_of_the_papers(chromium: Any, host: Host) -> None:
    narrow = PHONE | {"viewport": {"width": 320, "height": 640}}
    context = chromium.new_context(**narrow, service_workers="block", bypass_csp=True)
    page = opened(context.new_page(), host)
    bring(page, *map(file_of, SEASON_JOBS))
    for part in (LETTER, SEASON):
        page.focus(f"{part} summary")
        page.keyboard.press("Enter")
    shown(page, "Quote")
    expect(page.locator(".job-season")).to_contain_text("Jobs: 3", timeout=30_000)
    assert axe(page, "light") == axe(page, "dark") == []
    assert page.evaluate("document.documentElement.scrollWidth") <= 320
    page.focus("[data-letter=kind]")
    page.keyboard.press("w")
    shown(page, "What to expect tonight")
    reached = []
    for _ in range(6):
        page.keyboard.press("Tab")
        reached.append(page.evaluate("document.activeElement.dataset.job ?? ''"))
    assert {"copyLetter", "printLetter"} <= set(reached)
    context.close()

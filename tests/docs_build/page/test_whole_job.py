"""One invented job, typed once: from the call to the season, without a network, tabs killed."""

from __future__ import annotations

import csv
import io
from pathlib import Path
from typing import Any

import pytest
from playwright.sync_api import expect

from .conftest import Watch, answered, kept, live, serving
from .test_jobs import CATCHES, SHEET, begun, held, kill, opened, saved, unfold

pytestmark = pytest.mark.browser

CALL = {
    "hurt": "no", "reaction": "none", "bees": "no", "animal": "vulgaris", "treated": "no",
    "where": "shed", "role": "owner",
}  # fmt: skip
"""Answers of the caller; all but these stay as the call sheet has them."""


def choose(page: Any, name: str, value: str) -> None:
    field = page.locator(f"[data-calculator=first_call] [data-input={name}]")
    if field.locator("select").count():
        field.locator("select").select_option(value)
    else:
        field.locator(f"input[value={value}]").check(force=True)


def keep(page: Any, name: str) -> None:
    """Keep the answer of a calculator in the job."""
    section = page.locator(f"[data-calculator={name}]")
    section.locator("[data-do=store]").click()
    expect(section.locator(".calc-said")).to_contain_text("Kept in the job", timeout=30_000)


def test_from_the_call_to_the_season_typed_once(device: Any, site: Path) -> None:
    with serving(site) as host:
        context = device()
        page = context.new_page()
        page.goto(host.local + SHEET)
        kept(page)
    # The server is gone, and the browser's own network is off as well.
    context.set_offline(True)
    watch = Watch(host.local)
    watch.over(context)
    assert page.viewport_size == {"width": 360, "height": 740}

    page = opened(page, host)
    begun(page)
    page.keyboard.type("Wasps by the pond")
    unfold(page)
    page.fill("[name='client.name']", "A. Example")
    page.fill("[name='client.address']", "1 Long Lane")
    kill(page)  # the first time: while the caller still talks, before anything was checked

    page = context.new_page()
    page.goto(host.local + "clients/the_call.html")
    live(page)
    assert "Wasps by the pond" in page.inner_text(".calc-job >> nth=0")
    for name, value in CALL.items():
        choose(page, name, value)
    answered(page)
    keep(page, "first_call")
    record = held(page)["job"]
    assert {name: record["answers"][name] for name in CALL} == CALL
    assert record["calculations"][0]["results"]["decision"]

    page.goto(host.page("how_many_left"))
    live(page)
    page.fill(CATCHES, "60, 35, 20, 11")
    kill(page)  # the second time: the catches were typed a moment ago

    page = context.new_page()
    page.goto(host.page("how_many_left"))
    live(page)
    catches = [one.input_value() for one in page.locator("[name=catches]").all()]
    assert [one for one in catches if one] == ["60", "35", "20", "11"]
    answered(page)
    keep(page, "how_many_left")

    page = opened(page, host)
    assert page.input_value("[name='client.name']") == "A. Example"
    unfold(page)
    # What the caller said stands in the record by itself.
    assert page.input_value("[name='animal.species']") == "vulgaris"
    assert page.input_value("[name='place.kind']") == "shed"
    page.fill("[name='visit.date']", "2026-08-05")
    page.select_option("[name='result.outcome']", "removed")
    page.fill("[name='price.currency']", "EUR")
    page.fill("[name='price.final']", "280")
    page.click("[data-job=add][data-section=steps]")
    page.fill("[name='steps.1.minutes']", "95", timeout=20_000)
    page.select_option("[data-letter=kind]", "report")
    letter = page.locator("[data-part=letter] .job-letter")
    for words in (
        "For: A. Example, 1 Long Lane",
        "yellowjacket wasps, in a shed",
        "We caught 126 adults.",
        "may still have been in there when we stopped",
        "Next look: 12 August 2026.",
    ):
        expect(letter).to_contain_text(words, timeout=30_000)
    season = page.locator(".job-season")
    expect(season).to_contain_text(
        "Jobs: 1; adults: 126, counted in 1; hours: 1.6; stings: 0; EUR: 280.00.", timeout=30_000
    )
    record = held(page)
    assert record["raw"] == {}
    names = [each["calculator"] for each in record["job"]["calculations"]]
    assert names == ["first_call", "how_many_left"]
    (row,) = csv.DictReader(io.StringIO(saved(page, "saveRows").decode()))
    assert row | {
        "date": "2026-08-05", "species": "Common yellowjacket",
        "place": "Shed, garage or play house",
        "adults": "126", "minutes": "95", "price": "280", "currency": "EUR",
    } == row  # fmt: skip
    records = list(csv.DictReader(io.StringIO(saved(page, "saveRecords").decode())))
    assert {each["scientificName"] for each in records} == {"Vespula vulgaris"}
    assert page.evaluate("document.documentElement.scrollWidth") <= 360
    context.close()
    assert watch.foreign == []
    assert watch.faults == []

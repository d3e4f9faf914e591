"""The kept book and the running Python under real limits: no room, a kill, too little memory."""

from __future__ import annotations

import os
import shutil
import signal
import threading
from collections.abc import Callable
from contextlib import suppress
from pathlib import Path
from typing import Any

import psutil
import pytest
from playwright.sync_api import expect

from .conftest import FLAGS, PHONE, Host, answered, engine_start, kept, live, serving, until
from .test_faults import (
    CATCHES,
    FULL,
    MORTAL,
    RECORDS,
    STATUS,
    begun,
    checked,
    faulty,
    metrics,
    opened,
    saved,
    sheet,
)
from .test_offline import new_edition, replace_files
from .test_tally import counts, do, passes, ready, tap
from .test_visit import PRESS, at

pytestmark = pytest.mark.browser
__all__ = ["sheet"]  # the fixture
USED = "navigator.storage.estimate().then(({ usage }) => usage)"
CACHED = """async () => {
  const names = (await caches.keys()).filter((name) => name.startsWith('handbook|'));
  const sizes = names.map(async (name) => (await (await caches.open(name)).keys()).length);
  return (await Promise.all(sizes)).reduce((sum, size) => sum + size, 0);
}"""


def room(page: Any, host: Host) -> Callable[[int | None], None]:
    """Return the function that gives the book's origin so many bytes in all, or its usual room."""
    talk = page.context.new_cdp_session(page)

    def give(size: int | None) -> None:
        limit = {} if size is None else {"quotaSize": size}
        talk.send("Storage.overrideQuotaForOrigin", {"origin": host.local.rstrip("/"), **limit})

    return give


def typed_job(page: Any, host: Host, title: str) -> None:
    opened(page, host)
    begun(page)
    page.fill("[name=title]", title)
    checked(page)


def titles(page: Any) -> list[str]:
    return [one["job"]["title"] for one in page.evaluate(RECORDS)]


def test_a_device_without_room_for_the_book_has_room_for_a_job(device: Any, site: Path) -> None:
    with serving(site) as host:
        page = device().new_page()
        page.goto(host.local + "_static/book.css")
        give = room(page, host)
        give(3_000_000)
        page.goto(host.local)
        status = page.locator("[data-offline-status]").first
        expect(status).to_contain_text("could not be kept on this device", timeout=60_000)
        assert page.evaluate(CACHED) == 0
        typed_job(page, host, "No room")
        assert titles(page) == ["No room"]
        give(None)
        page.goto(host.local)
        kept(page)
        assert titles(page) == ["No room"]


def test_the_last_group_gives_its_room_back(device: Any, site: Path) -> None:
    with serving(site) as host:
        page = device().new_page()
        page.goto(host.local + "start/on_the_phone.html")
        kept(page)
        button = page.locator(".keep button")
        button.wait_for(state="visible")
        before = page.evaluate(CACHED)
        give = room(page, host)
        give(page.evaluate(USED) + 1_000_000)
        button.click()
        status = page.locator(".keep [role=status]")
        expect(status).to_contain_text("no room left for it", timeout=60_000)
        expect(status).to_contain_text("calculators of edition")
        assert page.evaluate(CACHED) == before
        typed_job(page, host, "Still room")
        assert titles(page) == ["Still room"]
        give(None)
        page.goto(host.local + "start/on_the_phone.html")
        button.click(timeout=60_000)
        expect(status).to_contain_text("Everything of edition", timeout=60_000)


def kill(profile: Path) -> None:
    """End the browser of a profile as a phone does that needs the memory: without a word."""
    for process in psutil.process_iter(["cmdline"]):
        if f"--user-data-dir={profile}" in (process.info["cmdline"] or []):
            with suppress(ProcessLookupError):
                os.kill(process.pid, signal.SIGKILL)


def test_a_kill_amid_an_update_leaves_the_old_edition_and_the_job(
    device: Any, site: Path, tmp_path: Path
) -> None:
    served = tmp_path / "served"
    shutil.copytree(site, served)
    coming = new_edition(site, tmp_path)
    reached, released = threading.Event(), threading.Event()

    def slow(body: bytes) -> bytes:
        reached.set()
        released.wait(60)
        return body

    damage: dict[str, Any] = {}
    with faulty(served, damage) as host:
        page = device().new_page()
        page.goto(host.local)
        kept(page)
        before = page.inner_text("h1")
        typed_job(page, host, "Amid")
        replace_files(served, coming)
        damage["index.html"] = slow
        page.evaluate("void navigator.serviceWorker.getRegistration().then((r) => r.update())")
        assert reached.wait(30), "the update never began"
        kill(tmp_path / "profile")
        released.set()
        port = host.port
    # No network: the old edition is whole, computes and has the job.
    page = device().new_page()
    page.goto(f"http://127.0.0.1:{port}/")
    assert page.inner_text("h1") == before
    page.goto(f"http://127.0.0.1:{port}/method/how_many_left.html")
    live(page)
    page.fill(CATCHES, "61")
    answered(page)
    assert titles(page) == ["Amid"]
    with serving(served, port) as host:
        page.goto(host.local)
        assert page.inner_text("h1") == before
        page.wait_for_selector(".keep-news", timeout=60_000)
        page.click(".keep-news button >> nth=0")
        page.wait_for_selector("h1:has-text('(next)')", timeout=20_000)
        kept(page)
        assert len(page.evaluate("caches.keys()")) == 1
        assert titles(page) == ["Amid"]


def test_two_tabs_on_a_full_device_lose_nothing(sheet: Any, host: Host, warm_context: Any) -> None:
    sheet.add_init_script(FULL % "false")
    opened(sheet, host)
    begun(sheet)
    sheet.fill("[name=title]", "Both full")
    checked(sheet)
    other = warm_context.new_page()
    other.add_init_script(FULL % "false")
    opened(other, host)
    for page, name, words in (
        (sheet, "notes", "Gate sticks"),
        (other, "client.name", "A. Example"),
    ):
        page.evaluate("self.full = true")
        page.fill(f"[name='{name}']", words)
        expect(page.locator(".job-said")).to_contain_text("has no room left", timeout=30_000)
        assert page.input_value(f"[name='{name}']") == words
    assert saved(sheet)["notes"] == "Gate sticks"
    assert saved(other)["client"]["name"] == "A. Example"
    for page in (sheet, other):
        page.evaluate("self.full = false")
    sheet.fill("[name='client.phone']", "0")
    checked(sheet)
    other.fill("[name='client.mail']", "a@example.org")
    checked(other)
    (record,) = sheet.evaluate(RECORDS)
    assert record["job"]["notes"] == "Gate sticks"
    assert record["job"]["client"]["name"] == "A. Example"
    other.close()


@pytest.mark.parametrize("pages", [200, 400])
def test_too_little_memory_is_said_and_nothing_typed_is_lost(
    playwright: Any, browser_path: str, host: Host, pages: int
) -> None:
    """The browser itself refuses a heap of more than so many pages of 64 KiB."""
    flags = [*FLAGS, f"--js-flags=--wasm-max-mem-pages={pages}"]
    browser = playwright.chromium.launch(executable_path=browser_path, args=flags)
    page = browser.new_context(**PHONE, service_workers="block").new_page()
    page.goto(host.page("how_many_left"))
    live(page)
    page.fill(CATCHES, "61")
    page.wait_for_selector(".calc-said[data-wrong=true]", timeout=120_000)
    assert "too little free memory" in page.locator(".calc-said").inner_text()
    assert page.input_value(CATCHES) == "61"
    assert page.locator(".answer-main").is_visible()
    browser.close()


def test_workers_come_and_go_and_one_stays(phone: Any, host: Host) -> None:
    phone.add_init_script(MORTAL)
    phone.goto(host.page("how_many_left"))
    live(phone)
    engine_start(phone)
    held = metrics(phone)
    before = 0.0
    for turn in range(5):
        phone.evaluate(
            """self.last.terminate(); self.answers = 0;
            const count = () => (self.answers += 1);
            document.addEventListener('calculator:answer', count, { once: true });"""
        )
        phone.fill(CATCHES, str(60 + turn))
        until(phone, "self.answers === 1", 60)
        assert phone.evaluate(STATUS)["state"] == "ready"
        before = before or held()["JSEventListeners"]
    assert held()["JSEventListeners"] < before + 5
    assert len([one for one in phone.workers if "worker.mjs" in one.url]) == 1


def test_twenty_four_hours_by_the_clock(chromium: Any, host: Host) -> None:
    """Every timer of a day runs: passes are counted and a step is under way, hour after hour."""
    context = chromium.new_context(**PHONE, service_workers="block")
    context.clock.install(time="2026-08-20T06:00:00Z")
    page = context.new_page()
    faults: list[str] = []
    page.on("pageerror", lambda error: faults.append(str(error)))
    held = metrics(page)
    typed_job(page, host, "A long day")
    at(page, host, "catch")
    page.click(PRESS)
    expect(page.locator(PRESS)).to_have_text("Done")
    sizes = []
    for hour in range(24):
        ready(page, host)
        do(page, "start")
        tap(page, 1 + hour % 3)
        context.clock.run_for(20 * 60_000)
        do(page, "end")
        expect(page.locator(".tally-run")).to_be_hidden()
        at(page, host, "catch")
        context.clock.run_for(10 * 60_000)
        before = held()
        context.clock.run_for(30 * 60_000)
        after = held()
        # An answer may come in meanwhile; a leak would hold one of each of thousands of ticks.
        assert after["Nodes"] < before["Nodes"] + 1000, hour
        assert after["JSEventListeners"] < before["JSEventListeners"] + 50, hour
        assert after["JSHeapUsedSize"] < before["JSHeapUsedSize"] * 1.2 + 500_000, hour
        sizes.append(page.evaluate("JSON.stringify({ ...localStorage }).length"))
    assert sizes[-1] < sizes[5] + 2_000
    (record,) = page.evaluate(RECORDS)
    assert record["job"]["title"] == "A long day"
    assert counts(page) == [1 + hour % 3 for hour in range(24)]
    minutes = [one["minutes"] for one in passes(page)]
    assert all(20 <= each < 21 for each in minutes), minutes
    # No step takes a day: the page asks for the times and drops no press.
    assert "Check the times" in page.inner_text(".visit")
    assert faults == []
    context.close()

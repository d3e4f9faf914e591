"""The visit on a phone: pressed through without a network, pages killed, two tabs, clocks set."""

from __future__ import annotations

import gzip
from pathlib import Path
from typing import Any

import pytest
from playwright.sync_api import expect

from calc import tables
from docs_build.page import pack, visit_html

from .conftest import PHONE, Host, Watch, kept, serving
from .test_jobs import axe, held, kill, unfold

browser = pytest.mark.browser
STEPS = tables.rows("visit_steps")
KEYS = [each["key"] for each in STEPS]
PRESS = ".visit-turn button"
NONE = ".visit-none button"
TIMES = ".visit-times summary"


# The side of Python, without a browser.


def test_the_scripts_stay_small() -> None:
    scripts = [pack.HERE / "static" / name for name in ("visit.mjs", "visitline.mjs")]
    assert sum(len(gzip.compress(path.read_bytes(), 9)) for path in scripts) < 5_500


def test_every_step_says_where_it_stands_and_leads_on() -> None:
    for place, key in enumerate(KEYS):
        html = visit_html.step_html(key)
        assert f"Step <b>{place + 1}</b> of {len(KEYS)}" in html
        for near in (KEYS[place - 1] if place else "index", [*KEYS, "index"][place + 1]):
            assert f'href="{near}.html"' in html


@browser
def test_the_static_page_has_stops_before_card_before_number(site: Path) -> None:
    for step in STEPS:
        text = (site / "visit" / f"{step['key']}.html").read_text("utf-8")
        signs = ['class="visit-stops', "visit-card", 'class="calculator']
        places = [text.index(sign) for sign in signs]
        assert places == sorted(places), step["key"]
        for row in tables.rows("visit_stops"):
            assert (f'id="stop-{row["key"]}"' in text) == (row["step"] == step["key"])
        for name in step["calculators"]:
            assert f'data-calculator="{name}"' in text


# In the browser.


def at(page: Any, host: Host, key: str) -> Any:
    """Open a page of the visit and wait until it takes presses."""
    page.goto(f"{host.local}visit/{key}.html")
    page.wait_for_selector("html[data-visit-page=live]", state="attached", timeout=30_000)
    return page


def fresh(page: Any, host: Host) -> Any:
    """Return the page on a device with one open job and nothing pressed."""
    at(page, host, "index")
    page.evaluate(
        "import('/_static/jobs.mjs').then(async (jobs) => {"
        " for (const one of await jobs.all()) await jobs.erase(one.id); await jobs.begin(); })"
    )
    return page


def state(page: Any, host: Host, key: str) -> str:
    """Return what the list of steps says of one."""
    at(page, host, "index")
    return str(page.inner_text(f"[data-step={key}] .visit-state"))


def step(page: Any, host: Host, key: str) -> None:
    """Go through a step: begin, look, tick, done."""
    at(page, host, key)
    page.click(PRESS)
    expect(page.locator(PRESS)).to_have_text("Done")
    page.click(NONE)
    page.locator(".visit-tick").nth(1).click()
    page.click(PRESS)
    expect(page.locator(PRESS)).to_be_hidden()


def shift(page: Any, path: str, milliseconds: int) -> None:
    """Put a kept moment to another time, as a clock that is set does."""
    page.evaluate(
        """async ([path, gone]) => {
          const jobs = await import('/_static/jobs.mjs');
          const text = new Date(Date.now() + gone).toISOString().replace(/\\.\\d+Z$/, 'Z');
          await jobs.typing(jobs.openId(), path, { text, us: false });
        }""",
        [path, milliseconds],
    )


@browser
def test_a_whole_visit_without_network_with_killed_pages_and_a_restart(
    device: Any, site: Path
) -> None:
    with serving(site) as host:
        context = device()
        page = at(context.new_page(), host, "index")
        kept(page, seconds=120)
    # The server is gone. A step begun without a job begins one.
    watch = Watch(host.local)
    watch.over(context)
    page = at(context.new_page(), host, "arrive")
    page.click("[data-visit-do=open]")
    expect(page.locator(PRESS)).to_have_text("Done", timeout=30_000)
    page.click(NONE)
    kill(page)  # the first time: at once after a press
    page = at(context.new_page(), host, "arrive")
    expect(page.locator(NONE)).to_contain_text("None found,")
    page.click(PRESS)
    for key in KEYS[1:3]:
        step(page, host, key)
    at(page, host, "catch")
    page.click(PRESS)
    shift(page, "progress.catch_begun", -12 * 60_000)
    at(page, host, "catch")
    page.locator(".visit-tick").nth(2).click()
    kill(page)  # the second time: in the middle of the catch
    context = device()  # the battery was empty: the browser is a new one
    watch.over(context)
    page = context.new_page()
    page.goto(f"{host.local}safety/fogging.html")
    line = page.locator(".visit-line a")
    expect(line).to_contain_text("On site: Catch, 12 min", timeout=30_000)
    line.click()
    page.wait_for_selector("html[data-visit-page=live]", state="attached", timeout=30_000)
    assert page.inner_text(".visit-time").startswith("12:")
    assert page.evaluate("[...document.querySelectorAll('.visit-tick input')][2].checked")
    page.click(NONE)
    page.click(PRESS)
    for key in KEYS[4:7]:
        step(page, host, key)
    at(page, host, "wait")
    page.click(PRESS)
    kill(page)  # the third time
    page = at(context.new_page(), host, "index")
    expect(page.locator(".visit-go")).to_have_text("Go on: Wait")
    for key in KEYS[7:]:
        if key == "wait":
            at(page, host, key)
            page.click(NONE)
            page.click(PRESS)
        else:
            step(page, host, key)
    at(page, host, "index")
    assert page.inner_text(".visit-told") == "All done."
    states = page.evaluate(
        "[...document.querySelectorAll('.visit-state')].map((one) => one.textContent)"
    )
    assert [text[:5] for text in states] == ["Done "] * len(KEYS)
    record = held(page)["job"]
    kinds = {each["step"]: each["minutes"] for each in record["steps"]}
    assert set(kinds) == {each["kind"] for each in STEPS}
    assert 12 <= kinds["capture"] < 14
    assert record["visit"]["arrive"] == record["progress"]["arrive_begun"]
    assert record["visit"]["leave"] == record["progress"]["leave_done"]
    assert record["progress"]["catch_ticks"] == ["3"]
    assert watch.faults == []
    assert watch.foreign == []


@browser
def test_done_wants_the_stops_looked_through_and_a_stop_is_kept(phone: Any, host: Host) -> None:
    fresh(phone, host)
    at(phone, host, "brief").click(PRESS)
    phone.click(PRESS)
    expect(phone.locator(".visit-look")).to_contain_text("None found")
    assert "Under way" in state(phone, host, "brief")
    at(phone, host, "brief").click("#stop-brief_reaction button")
    expect(phone.locator(".visit-stopped")).to_contain_text("Do not start.")
    phone.reload()
    expect(phone.locator(".visit-stopped")).to_be_visible()
    assert "strong reaction" in state(phone, host, "brief")
    assert phone.inner_text(".visit-told").startswith("Stopped at: Brief.")
    # A stop leads to what closes a visit, and goes away by the same press.
    expect(phone.locator(".visit-go")).to_have_text("Go on: Leave")
    held(phone)
    at(phone, host, "brief").click("#stop-brief_reaction button")
    expect(phone.locator(".visit-stopped")).to_be_hidden()
    assert "Under way" in state(phone, host, "brief")


@browser
def test_a_pressed_health_stop_stays_at_home(phone: Any, host: Host) -> None:
    fresh(phone, host)
    at(phone, host, "brief").click("#stop-brief_reaction button")
    phone.click("#stop-brief_inside button")
    held(phone)
    phone.goto(host.local + "clients/the_job.html")
    phone.wait_for_selector("html[data-jobs=live]", state="attached", timeout=20_000)
    files = phone.evaluate(
        """import('/_static/jobs.mjs').then((jobs) => Promise.all(
             [true, false].map((health) => jobs.save(jobs.openId(), health))))"""
    )
    kept, sent = (one["text"] for one in files)
    assert "brief_reaction" in kept
    assert "brief_reaction" not in sent
    assert "brief_inside" in sent
    unfold(phone)
    phone.click("[data-job=wipe]")
    phone.click("[data-job=wipe]")
    expect(phone.locator(".job-said")).to_contain_text("Deleted", timeout=30_000)
    record = held(phone)
    assert "brief_reaction" not in str(record)
    assert record["job"]["progress"]["brief_stops"] == ["brief_inside"]


@browser
def test_a_skipped_step_is_said_and_blocks_nothing(phone: Any, host: Host) -> None:
    fresh(phone, host)
    step(phone, host, "catch")
    assert state(phone, host, "arrive") == "Skipped"
    assert phone.inner_text(".visit-told") == "Skipped: Arrive, Look, Brief."
    expect(phone.locator(".visit-go")).to_have_text("Go on: Open")
    at(phone, host, "report")
    assert phone.inner_text("[data-step=look] .visit-state") == "Skipped"
    shown = phone.locator(".visit-missing li:not([data-there])").count()
    assert shown == sum(len(each.get("record", ())) for each in STEPS)
    step(phone, host, "look")  # later is not too late
    assert "Done" in state(phone, host, "look")


@browser
def test_two_tabs_see_each_others_presses(warm_context: Any, phone: Any, host: Host) -> None:
    fresh(phone, host)
    at(phone, host, "open")
    other = at(warm_context.new_page(), host, "open")
    phone.click(PRESS)
    phone.locator(".visit-tick").nth(0).click()
    expect(other.locator(PRESS)).to_have_text("Done")
    expect(other.locator(".visit-tick :checked")).to_have_count(1)
    other.locator(".visit-tick").nth(1).click()
    expect(phone.locator(".visit-tick :checked")).to_have_count(2)
    assert held(phone)["job"]["progress"]["open_ticks"] == ["1", "2"]
    other.close()


@browser
def test_a_clock_that_was_set_is_said_and_can_be_mended(phone: Any, host: Host) -> None:
    fresh(phone, host)
    at(phone, host, "wait").click(PRESS)
    for gone in (3_600_000, -25 * 3_600_000):
        shift(phone, "progress.wait_begun", gone)
        at(phone, host, "wait")
        assert phone.inner_text(".visit-time") == "Check the times"
        expect(phone.locator("[data-visit-in=begun]")).to_be_visible()
        assert "check the times" in state(phone, host, "wait")
        phone.goto(host.local + "safety/noise.html")
        expect(phone.locator(".visit-line")).to_contain_text("check the times")
    at(phone, host, "wait")
    phone.evaluate(
        """() => {
          const field = document.querySelector('[data-visit-in=begun]');
          const local = new Date(Date.now() - 5 * 60000 - 60000 * new Date().getTimezoneOffset());
          field.value = local.toISOString().slice(0, 19);
          field.dispatchEvent(new Event('change', { bubbles: true }));
        }"""
    )
    assert phone.inner_text(".visit-time").startswith("5:")
    phone.click("[data-visit-do=undo]")
    assert phone.inner_text(".visit-time") == "Check the times"


@browser
def test_the_alarm_flashes_here_and_on_every_page(phone: Any, host: Host) -> None:
    fresh(phone, host)
    at(phone, host, "catch").click(PRESS)
    phone.click(TIMES)
    phone.fill("[data-visit-in=minutes]", "soon")
    phone.click("[data-visit-do=ring]")
    expect(phone.locator(".visit-said")).to_contain_text("“soon” cannot be read")
    phone.fill("[data-visit-in=minutes]", "10")
    phone.click("[data-visit-do=ring]")
    expect(phone.locator(".visit-alarm")).to_contain_text("rings")
    expect(phone.locator(".visit-ring")).to_be_hidden()
    shift(phone, "progress.catch_rings", -2000)
    at(phone, host, "catch")
    expect(phone.locator(".visit-ring")).to_be_visible()
    phone.goto(host.local + "safety/noise.html")
    expect(phone.locator(".visit-line[data-ring]")).to_contain_text("time is up")
    at(phone, host, "catch").click(".visit-ring [data-visit-do=quiet]")
    expect(phone.locator(".visit-ring")).to_be_hidden()
    phone.goto(host.local + "safety/noise.html")
    expect(phone.locator(".visit-line")).to_contain_text("On site: Catch, 0 min")


@browser
def test_the_line_covers_nothing_and_ends_with_the_step(phone: Any, host: Host) -> None:
    fresh(phone, host)
    at(phone, host, "pack").click(PRESS)
    phone.goto(host.local + "safety/noise.html")
    expect(phone.locator(".visit-line")).to_be_visible()
    # In one step: the line that tells what is kept may make the page longer at any time.
    boxes = phone.evaluate(
        """() => { scrollTo({ top: 1e6, behavior: 'instant' });
           return ['.foot', '.visit-line', '.thumb'].map((css) => {
             const { top, bottom } = document.querySelector(css).getBoundingClientRect();
             return [top, bottom];
           }); }"""
    )
    assert boxes[0][1] <= boxes[1][0] + 1
    assert boxes[1][1] <= boxes[2][0] + 1
    assert boxes[1][1] - boxes[1][0] >= 48
    at(phone, host, "pack").click(NONE)
    phone.click(PRESS)
    phone.goto(host.local + "safety/noise.html")
    phone.wait_for_timeout(500)
    expect(phone.locator(".visit-line")).to_be_hidden()


@browser
def test_a_denied_store_is_said_and_the_page_still_reads(chromium: Any, host: Host) -> None:
    context = chromium.new_context(**PHONE, service_workers="block")
    page = context.new_page()
    page.add_init_script(
        "IDBFactory.prototype.open = () => { throw new DOMException('no', 'SecurityError'); };"
        "Storage.prototype.setItem = () => { throw new DOMException('no', 'SecurityError'); };"
    )
    at(page, host, "look")
    page.click(PRESS)
    expect(page.locator(".visit-said")).to_contain_text("does not let the page store a job")
    expect(page.locator(".visit-stops")).to_be_visible()
    context.close()


@browser
def test_a_store_that_fails_in_the_middle_keeps_the_press_on_the_screen(
    phone: Any, host: Host
) -> None:
    fresh(phone, host)
    at(phone, host, "open").click(PRESS)
    held(phone)
    phone.evaluate(
        "() => { const { put } = IDBObjectStore.prototype;"
        " IDBObjectStore.prototype.put = function (...given) {"
        " const request = put.apply(this, given); this.transaction.abort(); return request; };"
        " Storage.prototype.setItem ="
        " () => { throw new DOMException('full', 'QuotaExceededError'); }; }"
    )
    phone.locator(".visit-tick").nth(0).click()
    expect(phone.locator(".visit-said")).to_contain_text("does not let the page store a job")
    phone.evaluate("dispatchEvent(new StorageEvent('storage'))")
    phone.wait_for_timeout(500)
    assert phone.evaluate("document.querySelectorAll('.visit-tick :checked').length") == 1


@browser
def test_the_keyboard_is_enough(phone: Any, host: Host) -> None:
    fresh(phone, host)
    at(phone, host, "count")

    def go(css: str) -> None:
        for _ in range(80):
            if phone.evaluate("(css) => document.activeElement.matches(css)", css):
                return
            phone.keyboard.press("Tab")
        raise AssertionError(f"no way to {css}")

    go(PRESS)
    phone.keyboard.press("Enter")
    expect(phone.locator(PRESS)).to_have_text("Done")
    phone.keyboard.press("Enter")  # leads to the stops
    expect(phone.locator(NONE)).to_be_focused()
    phone.keyboard.press("Enter")
    go(".visit-tick input")
    phone.keyboard.press("Space")
    assert phone.evaluate("document.activeElement.checked")
    phone.focus(PRESS)
    phone.keyboard.press("Enter")
    expect(phone.locator(PRESS)).to_be_hidden()
    ring = phone.evaluate("getComputedStyle(document.querySelector('.visit-on')).backgroundColor")
    assert ring != "rgba(0, 0, 0, 0)", "the way on is not marked"


@browser
@pytest.mark.parametrize("key", ["index", *KEYS])
def test_axe_finds_nothing_and_all_is_large_and_narrow_enough(
    chromium: Any, host: Host, key: str
) -> None:
    narrow = PHONE | {"viewport": {"width": 320, "height": 640}}
    context = chromium.new_context(**narrow, service_workers="block", bypass_csp=True)
    page = fresh(context.new_page(), host)
    shift(page, "progress.catch_begun", -60_000)
    shift(page, "progress.catch_rings", -1000)
    shift(page, "title", 0)
    page.evaluate(
        "import('/_static/jobs.mjs').then((jobs) => jobs.typing(jobs.openId(), 'title',"
        " { text: 'Wespennestumsiedlung'.repeat(6), us: false }))"
    )
    at(page, host, key)
    if key == "catch":  # the tally names its presses when it is live
        page.wait_for_selector("html[data-tally=live]", state="attached", timeout=30_000)
    assert page.evaluate("document.documentElement.scrollWidth") <= 320
    small = page.evaluate(
        """() => [...document.querySelectorAll('.visit-turn > *, .visit-go, .visit-list a,'
             + '.visit button, .visit-stops button, .visit-none button, .visit-tick,'
             + '.visit summary, .visit-link')]
           .filter((one) => one.offsetParent || one.parentElement.matches('.visit-turn'))
           .filter((one) => !one.hidden)
           .map((one) => [one.outerHTML.slice(0, 80), one.getBoundingClientRect()])
           .filter(([, box]) => box.height < 47.5 || box.width < 47.5)
           .map(([html, box]) => `${html} ${box.width}x${box.height}`)"""
    )
    assert small == []
    assert axe(page, "light") == axe(page, "dark") == []
    context.close()


@browser
def test_without_scripts_a_step_reads_whole(chromium: Any, host: Host) -> None:
    context = chromium.new_context(**PHONE, java_script_enabled=False)
    page = context.new_page()
    page.goto(f"{host.local}visit/open.html")
    for css in (".visit-where", ".visit-stops", ".visit-card", ".calc-answer", ".visit-on"):
        assert page.locator(css).first.is_visible(), css
    assert page.locator(".visit-turn button").is_hidden()
    context.close()


@browser
def test_the_report_leads_to_the_letter(phone: Any, host: Host) -> None:
    fresh(phone, host)
    at(phone, host, "report").click("text=Write the letter")
    expect(phone.locator("#job-letter-kind")).to_be_in_viewport(timeout=30_000)

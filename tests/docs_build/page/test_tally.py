"""The pass timer and tally: taps, undo, a killed tab, two tabs, the scale, and what is left."""

from __future__ import annotations

import re
import time
from pathlib import Path
from typing import Any

import pytest
from playwright.sync_api import expect

from calc.catalogue import find
from docs_build.page import tally_html

from .conftest import PHONE, Host, Watch, answered, kept, live, serving, until
from .test_jobs import axe, begun, held, kill, opened

pytestmark = pytest.mark.browser
TALLY = "method/pass_tally.html"
QUICK = """
  const [wall, page] = [Date.now.bind(Date), performance.now.bind(performance)];
  const [began, first] = [BEGAN, page()];
  Date.now = () => began + 10 * (wall() - began);
  performance.now = () => first + 10 * (page() - first);
""".replace("BEGAN", f"{1000 * time.time():.0f}")
"""Ten minutes pass in one, on every page alike: no test can wait for real passes."""
COUNT = ".tally-count"
TAP = ".tally-tap"


def ready(page: Any, host: Host) -> Any:
    page.goto(host.local + TALLY)
    page.wait_for_selector("html[data-tally=live]", state="attached", timeout=20_000)
    return page


@pytest.fixture
def tally(phone: Any, host: Host) -> Any:
    """Return the page of the tally on a device without a count and without a job."""
    phone.evaluate(
        "import('/_static/tallystore.mjs').then((store) => store.erase(''))"
        ".then(() => import('/_static/jobs.mjs')).then(async (jobs) => {"
        " for (const one of await jobs.all()) await jobs.erase(one.id); })"
    )
    phone.add_init_script(QUICK)
    return ready(phone, host)


def do(page: Any, what: str) -> None:
    page.click(f"[data-tally-do={what}] >> visible=true")


def tap(page: Any, taps: int) -> None:
    for _ in range(taps):
        page.click(TAP)


def run_pass(page: Any, taps: int) -> None:
    do(page, "start")
    tap(page, taps)
    time.sleep(0.8)  # eight seconds on the quick clock
    do(page, "end")
    expect(page.locator(".tally-run")).to_be_hidden()


def passes(page: Any) -> list[dict[str, Any]]:
    """The passes as the device holds them."""
    return list(
        page.evaluate(
            """async () => {
              const { Tally } = await import('/_static/tallystore.mjs');
              const { openJob } = await import('/_static/jobs.mjs');
              const tally = new Tally((await openJob())?.id ?? '', () => {});
              await tally.renew();
              return tally.view.passes;
            }"""
        )
    )


def counts(page: Any) -> list[int]:
    return [one["n"] for one in passes(page)]


def test_three_passes_say_what_is_left_as_the_calculator_does(tally: Any) -> None:
    for taps in (9, 5, 2):
        run_pass(tally, taps)
    assert counts(tally) == [9, 5, 2]
    minutes = [one["minutes"] for one in passes(tally)]
    assert all(0.1 <= each < 10 for each in minutes)
    told = find("how_many_left").run({"catches": [9, 5, 2], "minutes": minutes})
    answer = tally.locator(".tally-told")
    expect(answer).to_contain_text(told.text("next_step"), timeout=60_000)
    expect(answer).to_contain_text(told.text("interval_inside"))
    expect(answer).to_contain_text(f"At least {told.text('still_inside')} inside")
    shown = tally.inner_text(".tally")
    assert shown.index(told.cautions[0].text) < shown.index("At least")
    assert "safe" not in shown.lower()
    link = tally.evaluate("document.querySelector('.tally-more').href")
    assert "catches=9+5+2" in link
    tally.goto(link)
    live(tally)
    answered(tally)
    assert tally.locator("[name=catches]").nth(2).input_value() == "2"
    assert float(tally.locator("[name=minutes]").nth(0).input_value()) == minutes[0]


def test_undo_goes_back_over_a_reload(tally: Any, host: Host) -> None:
    run_pass(tally, 3)
    do(tally, "start")
    tap(tally, 4)
    tally.click("[data-tap='10']")
    tally.click("[data-tap='5']")
    expect(tally.locator(COUNT)).to_have_text("19")
    ready(tally, host)
    expect(tally.locator(".tally-run")).to_be_visible()
    undo = tally.locator(".tally-run .tally-undo")
    expect(undo).to_have_text("Undo +5")
    for left in ("14", "4", "3", "2", "1", "0"):
        undo.click()
        expect(tally.locator(COUNT)).to_have_text(left)
    undo.click()  # the start
    expect(tally.locator(".tally-run")).to_be_hidden()
    do(tally, "undo")  # the end of the first pass: it runs again
    do(tally, "start")
    expect(tally.locator(COUNT)).to_have_text("3")
    for left in ("2", "1", "0"):
        undo.click()
        expect(tally.locator(COUNT)).to_have_text(left)


def test_a_pass_is_corrected_deleted_and_brought_back(tally: Any) -> None:
    for taps in (4, 2):
        run_pass(tally, taps)
    tally.click(".tally-pass >> nth=0")
    tally.fill(".tally-edit [data-tally-in=n] >> nth=0", "4x")
    tally.click("[data-tally-do=set] >> nth=0")
    expect(tally.locator(".tally-said")).to_have_text(
        "Caught: “4x” cannot be read; allowed is a whole number, 0 or more."
    )
    assert tally.input_value(".tally-edit [data-tally-in=n] >> nth=0") == "4x"
    tally.fill(".tally-edit [data-tally-in=n] >> nth=0", "41")
    tally.fill(".tally-edit [data-tally-in=minutes] >> nth=0", "4,5")
    tally.click("[data-tally-do=set] >> nth=0")
    expect(tally.locator(".tally-pass >> nth=0")).to_have_text("Pass 1: 41 in 4.5 min")
    tally.click(".tally-pass >> nth=1")
    tally.click("[data-tally-do=drop] >> nth=1")
    expect(tally.locator(".tally-pass")).to_have_count(1)
    do(tally, "undo")
    expect(tally.locator(".tally-pass")).to_have_count(2)
    expect(tally.locator(".tally-pass >> nth=1")).to_have_text(re.compile(r"^Pass 2: 2 in \d+ s$"))
    assert counts(tally) == [41, 2]
    do(tally, "clear")
    expect(tally.locator(".tally-pass")).to_have_count(0)
    do(tally, "undo")
    assert counts(tally) == [41, 2]


def test_a_killed_tab_and_a_dead_network_lose_no_tap(device: Any, site: Path) -> None:
    with serving(site) as host:
        context = device()
        page = context.new_page()
        page.goto(host.local + TALLY)
        kept(page)
    # The server is gone, and so is the browser.
    context = device()
    context.add_init_script(QUICK)
    watch = Watch(host.local)
    watch.over(context)
    page = ready(context.new_page(), host)
    run_pass(page, 16)
    run_pass(page, 8)
    do(page, "start")
    began = time.monotonic()
    tap(page, 3)
    kill(page)  # in the middle of the third pass
    page = ready(context.new_page(), host)
    expect(page.locator(".tally-run")).to_be_visible()
    expect(page.locator(COUNT)).to_have_text("3")
    tap(page, 1)
    time.sleep(max(0.0, 1.5 - (time.monotonic() - began)))
    do(page, "end")
    assert counts(page) == [16, 8, 4]
    assert passes(page)[2]["minutes"] >= 0.25, "the time ran on while the page was dead"
    for place in range(3):  # a slow machine stretches passes unevenly: here they are equal
        page.click(f".tally-pass >> nth={place}")
        page.fill(f".tally-edit [data-tally-in=minutes] >> nth={place}", "1")
        page.click(f"[data-tally-do=set] >> nth={place}")
    expect(page.locator(".tally-told")).to_contain_text("At least", timeout=60_000)
    context.close()
    assert watch.foreign == []


def test_two_tabs_show_one_count_and_lose_no_tap(tally: Any, host: Host) -> None:
    do(tally, "start")
    other = tally.context.new_page()
    other.add_init_script(QUICK)
    ready(other, host)
    expect(other.locator(".tally-run")).to_be_visible()
    burst = "for (let at = 0; at < 25; at += 1) document.querySelector('.tally-tap').click();"
    burst = f"() => {{ {burst} }}"
    for page in (tally, other, tally, other):
        page.evaluate(burst)
    for page in (tally, other):
        expect(page.locator(COUNT)).to_have_text("100")
    other.click(".tally-run [data-tally-do=end]")
    expect(tally.locator(".tally-run")).to_be_hidden()
    expect(tally.locator(".tally-pass")).to_contain_text("Pass 1: 100")
    other.close()


def test_the_scale_gives_a_pass(tally: Any) -> None:
    live(tally)
    assert tally.locator(".tally-take").is_hidden()
    form = ".calculator[data-calculator=weigh_the_catch] "
    for name, text in (("empty", "640"), ("full", "662.4"), ("step", "0.1")):
        tally.fill(f"{form}[name={name}]", text)
    tally.select_option(f"{form}[name=animal]", "germanica")
    tally.fill(f"{form}[name=sample_counts] >> nth=0", "40")
    tally.fill(f"{form}[name=sample_masses] >> nth=0", "3.2")
    take = tally.locator(".tally-take")
    expect(take).to_have_text("Take 280 by weight as pass 1", timeout=60_000)
    do(tally, "take")
    expect(tally.locator(".tally-pass")).to_have_text("Pass 1: 280 by weight")
    do(tally, "start")
    tap(tally, 2)
    do(tally, "leave")
    do(tally, "take")
    do(tally, "start")
    expect(tally.locator(COUNT)).to_have_text("280")
    do(tally, "end")
    assert counts(tally) == [280, 280]


def test_a_job_has_its_own_count_and_gets_the_passes(tally: Any, host: Host) -> None:
    run_pass(tally, 2)
    opened(tally, host)
    begun(tally)
    first = tally.evaluate("JSON.parse(localStorage['handbook.job.open'])")
    ready(tally, host)
    expect(tally.locator(".tally-pass")).to_have_count(0)
    for taps in (8, 4, 2):
        run_pass(tally, taps)
    minutes = [one["minutes"] for one in passes(tally)]
    opened(tally, host)
    shared = held(tally)["job"]["shared"]
    assert shared["catches"] == [8, 4, 2]
    assert shared["pass_minutes"] == minutes
    tally.goto(host.page("how_many_left"))
    live(tally)
    filled = [tally.locator("[name=catches]").nth(at).input_value() for at in range(3)]
    assert filled == ["8", "4", "2"]
    ready(tally, host)
    # Another job reloads the forms of the page, so the page may go while it is being told.
    told = "([what, id]) => import('/_static/jobs.mjs').then((jobs) => {"
    told += " setTimeout(() => jobs[what](id), 50); })"
    for what, given, left in (("setOpen", None, 1), ("setOpen", first, 3), ("erase", first, 1)):
        tally.evaluate(told, [what, given])
        expect(tally.locator(".tally-pass")).to_have_count(left)


def test_passes_typed_into_a_job_are_gone_on_from(tally: Any, host: Host) -> None:
    opened(tally, host)
    begun(tally)
    for path, text in (("catches", "60 35 20"), ("pass_minutes", "5 5 4.5")):
        tally.evaluate(
            "([path, text]) => import('/_static/jobs.mjs').then(async (jobs) => {"
            " await jobs.typing(jobs.openId(), `shared.${path}`, { text, us: false });"
            " await jobs.sync(jobs.openId()); })",
            [path, text],
        )
    ready(tally, host)
    expect(tally.locator(".tally-pass >> nth=2")).to_have_text("Pass 3: 20 in 4.5 min")


def test_without_a_wake_lock_one_line_says_so(tally: Any, host: Host) -> None:
    tally.add_init_script("navigator.wakeLock.request = async () => { throw new DOMException(); };")
    ready(tally, host)
    do(tally, "start")
    expect(tally.locator(".tally-line")).to_have_text(
        "This browser lets the screen go dark: touch it now and then."
    )
    tap(tally, 1)
    expect(tally.locator(COUNT)).to_have_text("1")


def test_a_wake_lock_is_held_while_the_screen_of_a_pass_is_open(tally: Any, host: Host) -> None:
    tally.add_init_script(
        "self.locks = []; navigator.wakeLock.request = async () => {"
        " locks.push('on'); return { release: () => locks.push('off') }; };"
    )
    ready(tally, host)
    do(tally, "start")
    until(tally, "locks.join() === 'on'")
    tally.evaluate("document.dispatchEvent(new Event('visibilitychange'))")
    until(tally, "locks.join() === 'on,on'")
    do(tally, "leave")
    until(tally, "locks.at(-1) === 'off'")


@pytest.mark.parametrize("shift", [-600_000, 90_000_000])
def test_a_clock_that_was_changed_is_asked_about(tally: Any, shift: int) -> None:
    do(tally, "start")
    tap(tally, 3)
    tally.evaluate("(by) => { const now = Date.now; Date.now = () => now() + by; }", shift)
    do(tally, "end")
    expect(tally.locator(".tally-ask")).to_be_visible()
    assert counts(tally) == []
    tally.fill("[data-tally-in=asked]", "soon")
    do(tally, "asked")
    expect(tally.locator(".tally-said")).to_contain_text("“soon” cannot be read")
    tally.fill("[data-tally-in=asked]", "4.5")
    do(tally, "asked")
    expect(tally.locator(".tally-pass")).to_have_text("Pass 1: 3 in 4.5 min")


def test_the_phone_buzzes_on_a_tap_and_at_the_planned_end(tally: Any, host: Host) -> None:
    tally.add_init_script("self.buzzes = []; navigator.vibrate = (how) => buzzes.push(how);")
    ready(tally, host)
    tally.fill("[data-tally-in=planned]", "0.2")
    do(tally, "start")
    tap(tally, 1)
    assert tally.evaluate("buzzes") == [20]
    until(tally, "buzzes.length === 2")
    assert sum(tally.evaluate("buzzes[1]")) > 1000
    time.sleep(1.2)
    assert tally.evaluate("buzzes.length") == 2, "it buzzes once"
    expect(tally.locator(".tally-time")).to_contain_text("of 0.2")
    ready(tally, host)
    assert tally.input_value("[data-tally-in=planned]") == "0.2"


def test_a_tap_is_shown_within_fifty_milliseconds(tally: Any) -> None:
    do(tally, "start")
    taken = tally.evaluate(
        """async () => {
          const [count, button] = document.querySelectorAll('.tally-count, .tally-tap');
          const taken = [];
          for (let at = 1; at <= 300; at += 1) {
            const began = performance.now();
            button.click();
            if (count.textContent !== String(at)) throw new Error(`${at} is not shown`);
            taken.push((performance.now() - began) / 10);  // the quick clock
            if (at % 10 === 0) await new Promise((go) => setTimeout(go, 0));
          }
          return taken;
        }"""
    )
    # One in twenty may meet other work of the machine.
    assert sorted(taken)[285] < 50


def test_keys_and_a_screen_reader_count_too(tally: Any) -> None:
    do(tally, "start")
    expect(tally.locator(TAP)).to_be_focused()
    for key in ("Enter", "Enter", "Space"):
        tally.keyboard.press(key)
    tally.evaluate("document.querySelector('.tally-tap').click()")
    expect(tally.locator(COUNT)).to_have_text("4")
    voice = tally.locator(".tally-voice")
    assert voice.get_attribute("aria-live") == "polite"
    expect(voice).to_have_text("4 caught")


def test_a_thumb_that_rests_or_slides_counts_once(tally: Any) -> None:
    do(tally, "start")
    both = "pointerdown pointerup click"
    for events, wait in ((both, 5), ("pointerdown", 1200), ("pointerup click", 100), (both, 5)):
        tally.evaluate(
            """(events) => { const tap = document.querySelector('.tally-tap');
              for (const name of events.split(' '))
                tap.dispatchEvent(new PointerEvent(name, { bubbles: true, detail: 1 })); }""",
            events,
        )
        time.sleep(wait / 1000)
    expect(tally.locator(COUNT)).to_have_text("3")
    tally.evaluate(
        "document.querySelector('.tally-tap').dispatchEvent("
        "new PointerEvent('pointerdown', { bubbles: true }))"
    )
    tally.evaluate("document.dispatchEvent(new PointerEvent('pointercancel', { bubbles: true }))")
    time.sleep(0.1)
    tally.keyboard.press("Enter")
    expect(tally.locator(COUNT)).to_have_text("5")


@pytest.mark.parametrize(("width", "height"), [(320, 640), (360, 640), (360, 740), (740, 360)])
def test_a_pass_needs_one_screen(chromium: Any, host: Host, width: int, height: int) -> None:
    size = {"viewport": {"width": width, "height": height}}
    context = chromium.new_context(**PHONE | size, service_workers="block")
    page = ready(context.new_page(), host)
    page.evaluate("document.querySelector('.tally-start').click()")
    page.evaluate(
        "document.querySelector('.tally-line').textContent = 'At least 12 (3 to 40). '.repeat(9)"
    )
    boxes = page.evaluate(
        """() => [...document.querySelectorAll('.tally-run button, .tally-run p:not(.tally-voice)')]
          .map((one) => [one.className || one.textContent, one.getBoundingClientRect().toJSON()])"""
    )
    assert page.evaluate("document.querySelector('.tally-run').scrollHeight") <= height
    for name, box in boxes:
        assert box["left"] >= 0, name
        assert box["top"] >= 0, name
        assert box["right"] <= width, name
        assert box["bottom"] <= height, name
    buttons = {name: box for name, box in boxes if name.startswith(("tally-tap", "tally-undo"))}
    touch = buttons["tally-tap"]
    assert touch["width"] * touch["height"] >= 0.4 * width * height
    small = page.evaluate(
        """() => [...document.querySelectorAll('.tally button, .tally input, .tally a')]
          .filter((one) => one.offsetParent).map((one) => one.getBoundingClientRect())
          .filter((box) => box.height < 47.5 || box.width < 47.5).length"""
    )
    assert small == 0
    apart = page.evaluate(
        """() => { const tap = document.querySelector('.tally-tap').getBoundingClientRect();
          return [...document.querySelectorAll('.tally-run button:not(.tally-tap)')]
            .map((one) => one.getBoundingClientRect())
            .map((one) => Math.max(tap.top - one.bottom, tap.left - one.right)); }"""
    )
    assert min(apart) >= 24, "no other button is hit with +1"
    gap = page.evaluate(
        """() => { const box = (css) => document.querySelector(css).getBoundingClientRect();
          return box('.tally-run [data-tap="10"]').top - box('[data-tally-do=end]').bottom; }"""
    )
    assert gap >= 24, "a pass is not ended with +10"
    style = "getComputedStyle(document.querySelector('.tally-tap'))"
    assert page.evaluate(f"[{style}.touchAction, {style}.userSelect]") == ["none", "none"]
    assert page.evaluate("document.documentElement.scrollWidth") <= width
    context.close()


@pytest.mark.parametrize("scheme", ["light", "dark"])
def test_axe_finds_nothing_in_a_tally(chromium: Any, host: Host, scheme: str) -> None:
    context = chromium.new_context(**PHONE, service_workers="block", bypass_csp=True)
    page = ready(context.new_page(), host)
    page.click(".tally-start")
    assert axe(page, scheme) == []
    page.click(".tally-run [data-tally-do=end]")
    page.click(".tally-pass")
    assert axe(page, scheme) == []
    context.close()


def test_without_scripts_there_is_a_form_to_fill_in(chromium: Any, host: Host) -> None:
    context = chromium.new_context(**PHONE, java_script_enabled=False)
    page = context.new_page()
    page.goto(host.local + TALLY)
    assert page.locator(".tally").is_hidden()
    paper = page.locator(".tally-paper")
    assert "Chamber with catch" in paper.inner_text()
    assert page.locator(".tally-paper tbody tr").count() == tally_html.PAPER_ROWS
    context.close()

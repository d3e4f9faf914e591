"""What can go wrong on a phone: the page says so, goes on, and no job or typed value is lost."""

from __future__ import annotations

import functools
import io
import json
import threading
from collections.abc import Callable, Iterator
from contextlib import contextmanager
from pathlib import Path
from typing import Any
from urllib.parse import urlsplit

import pytest
from playwright.sync_api import expect

from docs_build import server

from .conftest import PHONE, Host, QuietServer, answered, engine_start, engine_until, live, until

pytestmark = pytest.mark.browser
SHEET = "clients/the_job.html"
CATCHES = "[name=catches] >> nth=0"
RECORDS = "import('/_static/jobs.mjs').then((jobs) => jobs.all())"
STATUS = "import('/_static/engine.mjs').then((engine) => ({ ...engine.status }))"
Damage = Callable[[bytes], bytes | None]


class Faulty(server.Handler):
    """A host that sends some files damaged, or not at all."""

    def __init__(self, *arguments: Any, damage: dict[str, Damage], **given: Any) -> None:
        self.damage = damage
        super().__init__(*arguments, **given)

    def send_head(self) -> io.BytesIO | None:
        name = urlsplit(self.path).path
        damage = next((self.damage[end] for end in self.damage if name.endswith(end)), None)
        if damage is None:
            return super().send_head()
        path = self.translate_path(self.path)
        body = damage(Path(path).read_bytes())
        self.send_response(404 if body is None else 200)
        self.send_header("Content-Type", self.guess_type(path))
        self.send_header("Content-Length", str(len(body or b"")))
        self.end_headers()
        return io.BytesIO(body or b"")


@contextmanager
def faulty(site: Path, damage: dict[str, Damage]) -> Iterator[Host]:
    """Serve the site; ``damage`` may be changed while the host runs."""
    handler = functools.partial(Faulty, directory=str(site), damage=damage)
    httpd = QuietServer(("127.0.0.1", 0), handler)
    thread = threading.Thread(target=httpd.serve_forever, kwargs={"poll_interval": 0.02})
    thread.start()
    try:
        yield Host(site, httpd.server_port)
    finally:
        httpd.shutdown()
        httpd.server_close()
        httpd.hang_up()
        thread.join()


def cut(body: bytes) -> bytes:
    return body[: len(body) // 2]


def flipped(body: bytes) -> bytes:
    at = len(body) // 3
    return body[:at] + bytes(byte ^ 0xFF for byte in body[at : at + 4096]) + body[at + 4096 :]


def missing(body: bytes) -> None:
    del body


@pytest.fixture
def sheet(phone: Any, host: Host) -> Any:
    """Return a page on a device without jobs, with Python started from its snapshot."""
    phone.evaluate(
        "import('/_static/jobs.mjs').then(async (jobs) => {"
        " for (const one of await jobs.all()) await jobs.erase(one.id); })"
    )
    return phone


def opened(page: Any, host: Host) -> Any:
    page.goto(host.local + SHEET)
    page.wait_for_selector("html[data-jobs=live]", state="attached", timeout=20_000)
    page.evaluate("document.querySelectorAll('.job-part').forEach((one) => { one.open = true; })")
    return page


def begun(page: Any) -> None:
    page.click("[data-job=begin]")
    expect(page.locator("[name=title]")).to_be_focused()


def checked(page: Any) -> None:
    """Wait until nothing waits to be checked."""
    page.evaluate(
        """async () => {
          const jobs = await import('/_static/jobs.mjs');
          await jobs.sync(jobs.openId());
        }"""
    )


def metrics(page: Any) -> Callable[[], dict[str, float]]:
    """Return the function that tells what the page holds once all garbage is collected."""
    talk = page.context.new_cdp_session(page)
    talk.send("Performance.enable")

    def held() -> dict[str, float]:
        talk.send("HeapProfiler.collectGarbage")
        told = talk.send("Performance.getMetrics")["metrics"]
        return {one["name"]: one["value"] for one in told}

    return held


def saved(page: Any) -> dict[str, Any]:
    with page.expect_download() as coming:
        page.click("[data-job=save]")
    return dict(json.loads(Path(coming.value.path()).read_text("utf-8")))


FULL = """
  self.full = %s;
  const { put } = IDBObjectStore.prototype;
  IDBObjectStore.prototype.put = function (...given) {
    const request = put.apply(this, given);
    if (self.full) this.transaction.abort(); // as a browser does that finds no room
    return request;
  };
  const { setItem } = Storage.prototype;
  Storage.prototype.setItem = function (...given) {
    if (self.full) throw new DOMException('full', 'QuotaExceededError');
    return setItem.apply(this, given);
  };
"""
DENIED = """
  for (const name of ['localStorage', 'indexedDB', 'caches']) {
    Object.defineProperty(self, name, { get() { throw new DOMException('no', 'SecurityError'); } });
  }
"""
MORTAL = """
  const Real = Worker;
  self.Worker = class extends Real {
    constructor(...given) { super(...given); self.last = this; }
  };
  const later = setTimeout;
  self.setTimeout = (run, wait, ...rest) =>
    later(run, wait === 30_000 ? 2500 : wait, ...rest);
"""
CLOSED = "IDBFactory.prototype.open = () => { throw new DOMException('no', 'UnknownError'); };"


@pytest.mark.parametrize("when", ["before", "amid"])
def test_a_full_device_loses_nothing_typed(sheet: Any, host: Host, when: str) -> None:
    sheet.add_init_script(FULL % ("true" if when == "before" else "false"))
    opened(sheet, host)
    begun(sheet)
    sheet.evaluate("self.full = true")
    sheet.fill("[name=title]", "Full up")
    sheet.fill("[name='client.name']", "A. Example")
    sheet.fill("[name=notes]", "Gate sticks")
    expect(sheet.locator(".job-said")).to_contain_text("has no room left")
    checked(sheet)
    sheet.wait_for_timeout(400)
    assert sheet.input_value("[name=title]") == "Full up"
    assert sheet.input_value("[name='client.name']") == "A. Example"
    assert saved(sheet)["client"]["name"] == "A. Example"
    # There is room again: the next word takes all with it.
    sheet.evaluate("self.full = false")
    sheet.fill("[name='client.phone']", "0")
    checked(sheet)
    sheet.evaluate("import('/_static/jobs.mjs').then((jobs) => jobs.setOpen(jobs.openId()))")
    sheet.add_init_script("self.full = false")
    opened(sheet, host)
    assert sheet.input_value("[name=title]") == "Full up"
    assert sheet.input_value("[name=notes]") == "Gate sticks"
    assert sheet.locator(".job-list li").count() == 1


@pytest.mark.parametrize("denied", [DENIED, CLOSED])
def test_a_device_that_stores_nothing_lets_a_job_be_typed_and_saved(
    sheet: Any, host: Host, denied: str
) -> None:
    sheet.add_init_script(denied)
    opened(sheet, host)
    begun(sheet)
    expect(sheet.locator(".job-said")).to_contain_text("does not let the page store")
    sheet.fill("[name=title]", "Not kept")
    sheet.fill("[name='client.name']", "A. Example")
    checked(sheet)
    assert sheet.input_value("[name=title]") == "Not kept"
    made = saved(sheet)
    assert made["title"] == "Not kept"
    assert made["client"]["name"] == "A. Example"
    if denied is CLOSED:  # what localStorage took is there again after a turn of the page
        opened(sheet, host)
        assert sheet.input_value("[name=title]") == "Not kept"


def test_a_calculator_says_when_it_cannot_keep_and_answers_give_way(phone: Any, host: Host) -> None:
    phone.add_init_script(FULL % "false")
    phone.goto(host.page("how_many_left"))
    live(phone)
    phone.evaluate("self.full = true")
    phone.fill(CATCHES, "60, 35, 20, 11")
    expect(phone.locator(".calc-said")).to_contain_text("gone when you leave", timeout=30_000)
    answered(phone)
    room = phone.evaluate(
        """async () => {
          const { remember, recall } = await import('/_static/store.mjs');
          self.full = false;
          let size = 1 << 22;
          localStorage.setItem('handbook.answer.old', 'x'.repeat(1 << 20));
          while (size >= 64) {
            try { localStorage.setItem(`fill${size}`, 'x'.repeat(size)); } catch {}
            size >>= 1;
          }
          const kept = remember('draft.x', 'y'.repeat(5000));
          return [kept, recall('draft.x')?.length, recall('answer.old') ?? null];
        }"""
    )
    assert room == [True, 5000, None]


def wipe(page: Any, host: Host, kinds: str) -> None:
    talk = page.context.new_cdp_session(page)
    where = {"origin": host.local.rstrip("/"), "storageTypes": kinds}
    talk.send("Storage.clearDataForOrigin", where)


def test_a_job_that_the_browser_deletes_is_put_back_from_the_page(sheet: Any, host: Host) -> None:
    opened(sheet, host)
    begun(sheet)
    sheet.fill("[name=title]", "Wiped")
    sheet.fill("[name=notes]", "Gate sticks")
    checked(sheet)
    wipe(sheet, host, "local_storage,indexeddb")  # nothing is typed after it
    back = sheet.evaluate(
        """async () => {
          // The look must not make the database that the page is about to make.
          const stands = () => new Promise((go) => {
            const request = indexedDB.open('handbook-jobs');
            request.onupgradeneeded = () => request.transaction.abort();
            request.onerror = () => go(false);
            request.onsuccess = ({ target: { result } }) => {
              const all = result.transaction('jobs').objectStore('jobs').getAll();
              all.onsuccess = () => { result.close(); go(all.result.length === 1); };
            };
          });
          for (let i = 0; i < 100; i++) {
            if (await stands()) return true;
            await new Promise((go) => setTimeout(go, 50));
          }
          return false;
        }"""
    )
    assert back
    sheet.fill("[name='client.name']", "A. Example")
    checked(sheet)
    opened(sheet, host)
    assert sheet.input_value("[name=title]") == "Wiped"
    assert sheet.input_value("[name=notes]") == "Gate sticks"
    assert sheet.input_value("[name='client.name']") == "A. Example"


def test_a_job_deleted_between_two_visits_is_said(sheet: Any, host: Host) -> None:
    opened(sheet, host)
    begun(sheet)
    sheet.fill("[name=title]", "Wiped")
    checked(sheet)
    sheet.goto(host.local + "_static/book.css")
    wipe(sheet, host, "indexeddb")
    opened(sheet, host)
    expect(sheet.locator(".job-said")).to_contain_text("no longer on this device")
    begun(sheet)
    sheet.fill("[name=title]", "Next")
    assert [one["id"] for one in sheet.evaluate(RECORDS)]


def test_two_tabs_type_and_one_erases(sheet: Any, host: Host, warm_context: Any) -> None:
    opened(sheet, host)
    begun(sheet)
    sheet.fill("[name=title]", "Both")
    checked(sheet)
    other = opened(warm_context.new_page(), host)
    for turn in range(6):
        page, field = ((sheet, "notes"), (other, "client.name"))[turn % 2]
        page.fill(f"[name='{field}']", f"word {turn}")
        (other, sheet)[turn % 2].fill("[name=title]", f"title {turn}")
    checked(sheet)
    checked(other)
    (record,) = sheet.evaluate(RECORDS)
    assert record["job"]["title"] == "title 5"
    assert record["job"]["notes"] == "word 4"
    assert record["job"]["client"]["name"] == "word 5"
    # One rubs the job out while the other types.
    other.evaluate(
        """() => { const input = document.querySelector('[name=notes]');
          let n = 0;
          self.typist = setInterval(() => { input.value = `more ${n++}`;
            input.dispatchEvent(new InputEvent('input', { bubbles: true })); }, 5); }"""
    )
    sheet.click("[data-job=erase]")
    sheet.click("[data-job=erase]")
    expect(sheet.locator(".job-said")).to_have_text("Deleted: title 5")
    expect(sheet.locator(".job-open")).to_be_hidden()
    expect(other.locator(".job-open")).to_be_hidden()
    expect(other.locator(".job-said")).to_contain_text("Deleted in another page")
    other.evaluate("clearInterval(self.typist)")
    other.wait_for_timeout(300)
    assert sheet.evaluate(RECORDS) == []
    opened(other, host)
    assert other.evaluate(RECORDS) == []
    other.close()


def test_another_edition_taken_elsewhere_keeps_what_was_typed(phone: Any, host: Host) -> None:
    phone.goto(host.page("how_many_left"))
    live(phone)
    until(phone, "Boolean(navigator.serviceWorker.controller)")
    phone.reload()
    live(phone)
    phone.fill(CATCHES, "61")
    phone.wait_for_selector("[data-offline-status]:has-text('edition')", timeout=60_000)
    with phone.expect_navigation(timeout=30_000):
        phone.evaluate(
            "self.before = true,"
            " navigator.serviceWorker.dispatchEvent(new Event('controllerchange')), null"
        )
    assert not phone.evaluate("self.before")
    live(phone)
    assert phone.input_value(CATCHES) == "61"


def test_a_wrong_clock_loses_nothing(sheet: Any, host: Host) -> None:
    sheet.add_init_script(
        """const Real = Date;
        self.shift = Number(sessionStorage.getItem('shift'));
        self.Date = class extends Real {
          constructor(...given) { given.length ? super(...given) : super(Real.now() + self.shift); }
          static now() { return Real.now() + self.shift; }
        };"""
    )
    opened(sheet, host)
    for title, days in (("Now", 0), ("Ten years on", 3653), ("A day back", -1)):
        sheet.evaluate("(days) => { self.shift = days * 86_400_000; }", days)
        begun(sheet)
        sheet.fill("[name=title]", title)
        sheet.evaluate("(days) => { self.shift = -days * 86_400_000; }", days)  # while typing
        sheet.fill("[name=notes]", title + ", noted")
        checked(sheet)
    held = {one["job"]["title"]: one["job"]["notes"] for one in sheet.evaluate(RECORDS)}
    assert held == {title: f"{title}, noted" for title in ("Now", "Ten years on", "A day back")}
    assert saved(sheet)["title"] == "A day back"


PARTS = [
    ("pyodide.asm.wasm", cut),
    ("python_stdlib.zip", flipped),
    ("pyodide.asm.mjs", cut),
    ("runtime.json", cut),
    ("book.zip", flipped),
]


@pytest.mark.parametrize(("name", "how"), PARTS)
def test_a_damaged_part_is_fetched_anew(chromium: Any, site: Path, name: str, how: Damage) -> None:
    damage: dict[str, Damage] = {name: how}
    with faulty(site, damage) as host:
        context = chromium.new_context(**PHONE, service_workers="block")
        page = context.new_page()
        page.goto(host.page("how_many_left"))
        live(page)
        # The browser keeps the damaged file; from now on the host sends a whole one.
        page.evaluate(
            """async (name) => {
              const told = await (await fetch('/_runtime/runtime.json')).json().catch(() => ({}));
              const path = told.files?.find((one) => one.path.endsWith(name))?.path ?? name;
              await (await fetch(`/_runtime/${path}`)).arrayBuffer();
            }""",
            name,
        )
        damage.clear()
        page.fill(CATCHES, "60, 35, 20, 11")
        answered(page)
        context.close()


def test_a_part_that_stays_damaged_is_said(chromium: Any, site: Path) -> None:
    with faulty(site, {"pyodide.asm.wasm": flipped}) as host:
        context = chromium.new_context(**PHONE, service_workers="block")
        page = context.new_page()
        page.goto(host.page("how_many_left"))
        live(page)
        page.fill(CATCHES, "60, 35, 20, 11")
        expect(page.locator(".calc-said")).to_contain_text("what came is damaged", timeout=60_000)
        assert page.input_value(CATCHES) == "60"
        assert page.locator(".answer-main").is_visible()
        context.close()


def test_the_kept_book_mends_itself_and_says_when_it_was_not_kept(
    chromium: Any, site: Path
) -> None:
    damage: dict[str, Damage] = {"index.html": missing}
    with faulty(site, damage) as host:
        context = chromium.new_context(**PHONE)
        page = context.new_page()
        page.goto(host.page("how_many_left"))
        expect(page.locator("[data-offline-status]")).to_contain_text("not be kept", timeout=30_000)
        damage.clear()
        # Only the pages can be kept: the host has no runtime yet, then the network is gone.
        damage["/runtime.json"] = missing
        page.reload()
        expect(page.locator("[data-offline-status]")).to_contain_text(
            "calculators still need the network", timeout=60_000
        )
        damage[""] = missing
        page.reload()
        live(page)
        page.fill(CATCHES, "60, 35, 20, 10")
        expect(page.locator(".calc-said")).to_contain_text("connect once", timeout=30_000)
        damage.clear()
        page.fill(CATCHES, "60, 35, 20, 11")
        answered(page)
        page.reload()
        expect(page.locator("[data-offline-status]")).to_contain_text(
            "calculators of", timeout=60_000
        )
        # A kept file goes bad on the device.
        spoilt = """async () => {
          const cache = await caches.open((await caches.keys())[0]);
          const request = (await cache.keys()).find(({ url }) => url.endsWith('asm.wasm'));
          const headers = { 'Content-Type': 'application/wasm' };
          await cache.put(request, new Response('bad', { headers }));
          const { dropSnapshots } = await import('/_static/snapshot.mjs');
          await dropSnapshots();
        }"""
        page.evaluate(spoilt)
        page.reload()
        live(page)
        page.fill("[name=catches] >> nth=3", "12")
        answered(page)
        assert page.evaluate(STATUS)["how"] == "plain"
        context.close()


def test_a_flipped_bit_of_the_snapshot_is_found(phone: Any, host: Host) -> None:
    phone.goto(host.page("how_many_left"))
    live(phone)
    engine_start(phone)
    if phone.evaluate(STATUS)["how"] != "snapshot":  # a test before this one wiped the device
        engine_until(phone, "kept")
    found = phone.evaluate(
        """async () => {
          const { keepSnapshot, openSnapshot } = await import('/_static/snapshot.mjs');
          const open = () => new Promise((go) => {
            indexedDB.open('handbook-runtime', 1).onsuccess = ({ target }) => go(target.result);
          });
          const name = 'snapshots';
          const at = async (mode) => (await open()).transaction(name, mode).objectStore(name);
          const record = await new Promise(async (go) => {
            (await at('readonly')).get('the one').onsuccess = ({ target }) => go(target.result);
          });
          const bytes = new Uint8Array(await record.blob.arrayBuffer());
          const told = [];
          for (const place of [5, bytes.length >> 1, bytes.length - 3]) {
            const bad = bytes.slice();
            bad[place] ^= 1;
            const spoilt = { ...record, blob: new Blob([bad]) };
            await new Promise(async (go) => {
              (await at('readwrite')).put(spoilt, 'the one').onsuccess = go;
            });
            told.push(await (await openSnapshot()).read().then(() => 'read', () => 'refused'));
          }
          // 16 bytes of head, the second word of which is their number, and a heap with gaps.
          const whole = new Uint8Array(300_016);
          new Uint32Array(whole.buffer)[1] = 16;
          whole.set([1, 2, 3], 100_000);
          whole[300_015] = 9;
          const heap = whole.slice(16);
          await keepSnapshot({ build: 'x' }, whole);
          const back = await openSnapshot();
          const dirty = new Uint8Array(back.size).fill(5, 0, 200_000);
          (await back.read())(dirty, 200_000);
          told.push(dirty.length === heap.length && dirty.every((byte, i) => byte === heap[i]));
          await new Promise(async (go) => {
            (await at('readwrite')).put(record, 'the one').onsuccess = go;
          });
          return told;
        }"""
    )
    assert found == ["refused", "refused", "refused", True]


def test_a_worker_that_dies_with_a_question_is_replaced(phone: Any, host: Host) -> None:
    phone.add_init_script(MORTAL)
    phone.goto(host.page("how_many_left"))
    live(phone)
    engine_start(phone)
    phone.evaluate("self.last.terminate()")
    phone.fill(CATCHES, "60, 35, 20, 11")
    phone.wait_for_selector(".calc-progress:not([hidden])", state="attached")
    answered(phone)
    assert phone.evaluate(STATUS)["state"] == "ready"


def test_a_day_of_use_grows_nothing(sheet: Any, host: Host) -> None:
    changes = """async (turn) => {
      const section = document.querySelector('.calculator');
      const input = section.querySelector('input[type=text]');
      for (let i = 0; i < 40; i++) {
        const answer = new Promise((go) =>
          section.addEventListener('calculator:answer', go, { once: true }));
        input.value = String(60 + ((i + turn) % 17));
        input.dispatchEvent(new InputEvent('input', { bubbles: true }));
        await answer;
      }
    }"""
    size = "JSON.stringify({ ...localStorage }).length"
    held = metrics(sheet)
    opened(sheet, host)
    for title in ("One", "Two"):
        begun(sheet)
        sheet.fill("[name=title]", title)
        checked(sheet)
    sizes = []
    for turn in range(4):
        opened(sheet, host).click(f".job-list button:has-text('{('One', 'Two')[turn % 2]}')")
        sheet.goto(host.page("how_many_left"))
        live(sheet)
        sheet.evaluate(changes, turn)
        before = held()
        sheet.evaluate(changes, turn + 1)
        after = held()
        # One answer more or less may wait to be collected; a leak would hold all forty.
        assert after["JSEventListeners"] < before["JSEventListeners"] + 20
        assert after["Nodes"] < before["Nodes"] + 2000
        assert after["JSHeapUsedSize"] <= before["JSHeapUsedSize"] * 1.2 + 500_000
        sheet.wait_for_timeout(250)
        sizes.append(sheet.evaluate(size))
    assert sizes[3] <= sizes[1] * 1.05 + 200
    assert len(sheet.evaluate(RECORDS)) == 2

"""Measures what the book promises to a phone, in one run, and prints it as a table.

Times depend on the machine; what is promised as a ratio is measured as one, in this run.
"""

from __future__ import annotations

import functools
import gzip
import os
import re
import shutil
import statistics
import subprocess
import sys
import tempfile
import threading
import time
from collections.abc import Callable, Iterator
from contextlib import contextmanager
from dataclasses import dataclass
from http.server import ThreadingHTTPServer
from pathlib import Path
from typing import Any

from docs_build import server
from docs_build.bootstrap import ROOT, Trouble, say
from docs_build.page.offline import listed

RUNS = 5
CHANGES = 240
REST = 20  # seconds, after which the browser has collected
PHONE = {"viewport": {"width": 360, "height": 740}, "device_scale_factor": 2}
FLAGS = ["--no-sandbox", "--disable-gpu", "--disable-background-networking"]
PAGE = "method/how_many_left.html"
SHEET = "clients/the_job.html"
HEAVY = (PAGE, SHEET, "method/pass_tally.html", "visit/catch.html", "visit/report.html")
SCRIPTS = {".mjs", ".js"}

# What a page would do with the runtime and pint alone, with our short unit file: nothing kept.
PLAIN = """async () => {
  const began = performance.now();
  const base = new URL('/_runtime/', location.href);
  const manifest = await (await fetch(new URL('runtime.json', base))).json();
  const source = `
    import { loadPyodide } from "${new URL(manifest.python, base).href}pyodide.mjs";
    const python = await loadPyodide({ indexURL: "${new URL(manifest.python, base).href}",
                                       lockFileContents: ${JSON.stringify(manifest.lock)} });
    const zip = await (await fetch("${new URL(manifest.book, base).href}")).arrayBuffer();
    python.unpackArchive(zip, "zip", { extractDir: "/book" });
    postMessage(python.runPython(\\`
import sys
sys.path.insert(0, "/book")
import pint
units = pint.UnitRegistry("/book/calc/units.txt", cache_folder=None)
str(units.Quantity(5, "kPa").to("Pa"))\\`));`;
  const url = URL.createObjectURL(new Blob([source], { type: 'text/javascript' }));
  const answer = await new Promise((resolve, reject) => {
    const worker = new Worker(url, { type: 'module' });
    worker.onmessage = ({ data }) => { worker.terminate(); resolve(data); };
    worker.onerror = (event) => reject(new Error(event.message));
  });
  if (!answer.startsWith('5000')) throw new Error(answer);
  return performance.now() - began;
}"""

SECOND = """async () => {
  const began = performance.now();
  const section = document.querySelector('.calculator');
  const answer = new Promise((go) =>
    section.addEventListener('calculator:answer', () => go(performance.now()), { once: true }));
  const input = section.querySelector('input[type=text]');
  input.value = '61';
  input.dispatchEvent(new InputEvent('input', { bubbles: true }));
  const milliseconds = (await answer) - began;
  const { status } = await import('/_static/engine.mjs');
  return { milliseconds, how: status.how };
}"""

CHANGE = """async (changes) => {
  const section = document.querySelector('.calculator');
  const input = section.querySelector('input[type=text]');
  const times = [];
  for (let i = 0; i < changes; i++) {
    const began = performance.now();
    const answer = new Promise((go) =>
      section.addEventListener('calculator:answer', go, { once: true }));
    input.value = String(60 + (i % 17));
    input.dispatchEvent(new InputEvent('input', { bubbles: true }));
    await answer;
    times.push(performance.now() - began);
    await new Promise((go) => setTimeout(go));
  }
  return times;
}"""

KEPT = """async () => {
  const { status } = await import('/_static/engine.mjs');
  const there = () => status.kept || status.how === 'snapshot';
  for (let i = 0; i < 600 && !there(); i++) await new Promise((go) => setTimeout(go, 50));
  if (!there()) throw new Error('no snapshot was kept: ' + status.unkept);
}"""

PAINT = """() => new Promise((go) => {
  let paint = 0, shift = 0;
  new PerformanceObserver((list) => {
    for (const entry of list.getEntries()) paint = entry.startTime;
  }).observe({ type: 'largest-contentful-paint', buffered: true });
  new PerformanceObserver((list) => {
    for (const entry of list.getEntries()) if (!entry.hadRecentInput) shift += entry.value;
  }).observe({ type: 'layout-shift', buffered: true });
  setTimeout(() => go([paint, shift]), 1000);
})"""


@dataclass(frozen=True, slots=True)
class Row:
    """One measured value beside its aim."""

    what: str
    value: float
    aim: float
    unit: str = ""
    digits: int = 0

    @property
    def met(self) -> bool:
        """Whether the value is within its aim."""
        return self.value <= self.aim

    def cells(self) -> tuple[str, str, str, str]:
        """Return the row as text."""
        shown = [f"{each:,.{self.digits}f} {self.unit}".strip() for each in (self.value, self.aim)]
        return self.what, shown[0], f"≤ {shown[1]}", "yes" if self.met else "NO"


def main(html: Path) -> int:
    """Measure the built site in ``html``, print the table, return 0 (or 1 if an aim is missed)."""
    rows = [*in_browser(html), *transferred(html), *build_times()]
    table = [("what", "measured", "aim", "met"), *(row.cells() for row in rows)]
    widths = [max(len(line[column]) for line in table) for column in range(4)]
    for line in table:
        say("  ".join(cell.ljust(width) for cell, width in zip(line, widths, strict=True)).rstrip())
    return 0 if all(row.met for row in rows) else 1


@contextmanager
def _serving(html: Path) -> Iterator[str]:
    handler = functools.partial(_Quiet, directory=str(html))
    httpd = _Server(("127.0.0.1", 0), handler)
    threading.Thread(target=httpd.serve_forever, daemon=True).start()
    try:
        yield f"http://127.0.0.1:{httpd.server_port}/"
    finally:
        httpd.shutdown()
        httpd.server_close()


class _Server(ThreadingHTTPServer):
    daemon_threads = True

    def handle_error(self, request: Any, client_address: Any) -> None:
        """Let a browser hang up."""


class _Quiet(server.Handler):
    """The server of the book; only the plain start's script comes from the page itself."""


def in_browser(html: Path) -> Iterator[Row]:
    """Measure starts, changes and paints in headless Chromium."""
    from playwright.sync_api import sync_playwright

    from docs_build.commands import browser

    path = browser()
    if path is None:
        raise Trouble("The benchmark needs Chromium or Chrome.")
    with _serving(html) as url, sync_playwright() as running:
        chromium = running.chromium.launch(executable_path=path, args=FLAGS)
        try:
            yield from _starts(chromium, url)
            yield from _memory(chromium, url)
            yield from _paints(chromium, url)
            yield from _scripts(chromium, url, html)
        finally:
            chromium.close()


def _starts(chromium: Any, url: str) -> Iterator[Row]:
    context = chromium.new_context(**PHONE, service_workers="block", bypass_csp=True)
    page = context.new_page()
    page.goto(url + PAGE)
    page.wait_for_selector("html[data-calculators=live]", state="attached")
    first = page.evaluate(SECOND)
    page.evaluate(KEPT)
    page.evaluate("localStorage.clear()")
    plain, second = [], []
    for _ in range(RUNS):
        plain.append(_fresh(context, url, PLAIN))
        again = _fresh(context, url, SECOND)
        if again["how"] != "snapshot":
            raise Trouble("The second visit did not start from the snapshot.")
        second.append(again["milliseconds"])
    base, ours = statistics.median(plain), statistics.median(second)
    say(
        f"Start to first answer, median of {RUNS}: plain Pyodide + pint {base:.0f} ms, "
        f"our first visit {first['milliseconds']:.0f} ms, our second visit {ours:.0f} ms."
    )
    yield Row("second visit to first answer / plain Pyodide + pint", ours / base, 0.15, digits=3)
    times = sorted(page.evaluate(CHANGE, CHANGES))
    yield Row("input change to new result, median", statistics.median(times), 30, "ms", 1)
    yield Row("  95th percentile", times[int(0.95 * len(times))], 60, "ms", 1)
    context.close()


def _memory(chromium: Any, url: str) -> Iterator[Row]:
    """Measure what the process of a page with Python running holds and shares with no other.

    The first visit starts plainly and keeps a snapshot, the second one starts from it. What the
    changes leave behind the browser collects when the page is at rest.
    """
    import psutil

    talk = chromium.new_browser_cdp_session()

    def largest() -> float:
        found = talk.send("SystemInfo.getProcessInfo")["processInfo"]
        pids = [int(one["id"]) for one in found if one["type"] == "renderer"]
        return max(psutil.Process(pid).memory_full_info().uss for pid in pids) / 1e6

    context = chromium.new_context(**PHONE, service_workers="block", bypass_csp=True)
    for visit in ("first", "second"):
        page = context.new_page()
        page.goto(url + PAGE)
        page.wait_for_selector("html[data-calculators=live]", state="attached")
        page.evaluate(SECOND)
        page.evaluate(KEPT)
        page.evaluate(CHANGE, CHANGES)
        busy = largest()
        page.wait_for_timeout(1000 * REST)
        rest = largest()
        say(f"Memory of the {visit} visit straight after {CHANGES} changes: {busy:.0f} MB.")
        yield Row(f"memory of the {visit} visit, {REST} s after {CHANGES} changes", rest, 150, "MB")
        page.evaluate("localStorage.clear()")
        page.close()
    context.close()


def _scripts(chromium: Any, url: str, html: Path) -> Iterator[Row]:
    """Measure the scripts of the pages that load most, with a job open and a visit under way."""
    context = chromium.new_context(**PHONE, service_workers="block", bypass_csp=True)
    page = context.new_page()
    found: dict[str, float] = {}
    page.goto(url + SHEET)
    page.click("[data-job=begin]")
    for name in HEAVY:
        page.goto(url + name)
        page.wait_for_load_state("networkidle")
        loaded = page.evaluate(
            "performance.getEntriesByType('resource').map(({ name }) => new URL(name).pathname)"
        )
        names = {one.lstrip("/") for one in loaded if Path(one).suffix in SCRIPTS}
        found[name] = sum(_compressed(html / one) for one in _with_imports(html, names)) / 1e3
    context.close()
    for name, size in found.items():
        say(f"Scripts of {name}: {size:.1f} kB.")
    yield Row("scripts of the page that loads most, compressed", max(found.values()), 60, "kB", 1)


def _with_imports(html: Path, names: set[str]) -> set[str]:
    """Return scripts with what they import, and what starts in a thread or beside the page."""
    all_names = {*names, "_static/worker.mjs", "sw.js"}
    waiting = list(all_names)
    while waiting:
        text = (html / waiting.pop()).read_text(encoding="utf-8")
        for found in re.findall(r'^import .*? from "\./(.+?)"', text, re.MULTILINE):
            if (one := f"_static/{found}") not in all_names:
                all_names.add(one)
                waiting.append(one)
    return all_names


def _fresh(context: Any, url: str, script: str) -> Any:
    page = context.new_page()
    try:
        page.goto(url + PAGE)
        page.wait_for_selector("html[data-calculators=live]", state="attached")
        page.wait_for_timeout(300)
        return page.evaluate(script)
    finally:
        page.evaluate("localStorage.clear()")
        page.close()


def _paints(chromium: Any, url: str) -> Iterator[Row]:
    found = []
    for _ in range(RUNS):
        context = chromium.new_context(**PHONE)
        page = context.new_page()
        page.goto(url + PAGE)
        found.append(page.evaluate(PAINT))
        context.close()
    yield Row(
        "largest paint of a calculator page", statistics.median(f[0] for f in found), 1000, "ms"
    )
    yield Row("  layout shift", max(shift for _, shift in found), 0.05, digits=3)


def transferred(html: Path) -> Iterator[Row]:
    """Measure what a first visit of the calculator's page transfers, compressed."""
    page = sum(_compressed(html / name) for name in _loaded(html))
    # The built service worker holds the list of the book's files, which is no script.
    ours = [
        *(html / "_static").glob("*.mjs"),
        html / "_static" / "look.js",
        ROOT / "docs_build/page/sw.js",
    ]
    own = sum(_compressed(path) for path in ours)
    runtime = sum(_compressed(path) for path in (html / "_runtime").rglob("*") if path.is_file())
    yield Row("first visit without the computing part, compressed", page / 1e3, 200, "kB", 1)
    yield Row("all our own scripts together, of which a page loads some", own / 1e3, 60, "kB", 1)
    yield Row("first visit with the computing part", (page + runtime) / 1e6, 7.5, "MB", 2)
    whole = sum(size for group in listed(html).values() for _, _, size in group)
    yield Row("whole book kept on the phone", whole / 1e6, 25, "MB", 1)


def _loaded(html: Path) -> list[str]:
    """Return the files that the calculator's page names, with every module of the book."""
    from html.parser import HTMLParser

    found: list[str] = [PAGE]

    class Links(HTMLParser):
        def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
            given = dict(attrs)
            link = given.get("src") or (given.get("href") if tag == "link" else None)
            if link and tag in {"script", "link", "img"}:
                found.append(os.path.normpath(f"{Path(PAGE).parent}/{link.partition('?')[0]}"))

    Links().feed((html / PAGE).read_text(encoding="utf-8"))
    static = html / "_static"
    modules = [f"_static/{path.name}" for path in static.glob("*.mjs")]
    return [name for name in dict.fromkeys([*found, *modules]) if (html / name).is_file()]


def _compressed(path: Path) -> int:
    return len(gzip.compress(path.read_bytes(), compresslevel=6, mtime=0))


def build_times() -> Iterator[Row]:
    """Measure a clean build of the pages and one with a single page changed, in a copy."""
    with tempfile.TemporaryDirectory() as scratch:
        tree = Path(scratch) / "tree"
        shutil.copytree(ROOT, tree, ignore=shutil.ignore_patterns(".out", ".venv", ".git", "*.pyc"))
        clean = _timed(lambda: _build(tree))
        page = tree / "handbook" / PAGE.replace(".html", ".md")
        page.write_text(page.read_text(encoding="utf-8") + "\nOne more line.\n", encoding="utf-8")
        again = _timed(lambda: _build(tree))
    yield Row("clean build of the pages", clean, 90, "s", 1)
    yield Row("  one page changed", again, 5, "s", 1)


def _build(tree: Path) -> None:
    command = [sys.executable, "-m", "sphinx", "-b", "html", "-q", "handbook", ".out/html"]
    done = subprocess.run(command, cwd=tree, capture_output=True, text=True, errors="replace")
    if done.returncode:
        raise Trouble(f"The pages could not be built: {done.stderr.strip().splitlines()[-1]}")


def _timed(work: Callable[[], None]) -> float:
    began = time.monotonic()
    work()
    return time.monotonic() - began

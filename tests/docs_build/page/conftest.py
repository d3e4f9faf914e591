"""A phone with the book: server, browser, and a page that notes what it asks other hosts for."""

from __future__ import annotations

import functools
import os
import re
import shutil
import socket
import sys
import threading
import time
from collections.abc import Iterator, Mapping
from contextlib import contextmanager, suppress
from dataclasses import dataclass, field
from http.server import ThreadingHTTPServer
from pathlib import Path
from typing import Any

import pytest

from calc import units
from calc.catalogue import CALCULATORS, find
from calc.declare import Choice, Input, Number
from docs_build import server
from docs_build.commands import BROWSERS

# Playwright then also tells of what the service worker asks for.
os.environ.setdefault("PW_EXPERIMENTAL_SERVICE_WORKER_NETWORK_EVENTS", "1")

PHONE: dict[str, Any] = {
    "viewport": {"width": 360, "height": 740},
    "device_scale_factor": 2,
    "has_touch": True,
    "is_mobile": True,
    "reduced_motion": "reduce",
}
FLAGS = ["--no-sandbox", "--disable-gpu", "--disable-background-networking"]
PAGES = {
    "how_many_left": "method/how_many_left.html",
    "flow_and_reach": "method/flow_and_reach.html",
    "heat_in_suit": "safety/heat_in_suit.html",
}


class QuietServer(ThreadingHTTPServer):
    """A server to which a browser may hang up."""

    daemon_threads = True

    def __init__(self, *arguments: Any) -> None:
        super().__init__(*arguments)
        self.held: list[socket.socket] = []

    def get_request(self) -> tuple[socket.socket, Any]:
        connection, address = super().get_request()
        self.held.append(connection)
        return connection, address

    def hang_up(self) -> None:
        """End the connections that a browser keeps open: a network that is off has none."""
        for connection in self.held:
            with suppress(OSError):
                connection.shutdown(socket.SHUT_RDWR)

    def handle_error(self, request: Any, client_address: Any) -> None:
        if not isinstance(sys.exc_info()[1], ConnectionError):
            super().handle_error(request, client_address)


@dataclass
class Host:
    """The book on a running server."""

    folder: Path
    port: int
    local: str = field(init=False)

    def __post_init__(self) -> None:
        self.local = f"http://127.0.0.1:{self.port}/"

    def page(self, name: str) -> str:
        """Address of a calculator's page."""
        return self.local + PAGES[name]


@contextmanager
def serving(folder: Path, port: int = 0) -> Iterator[Host]:
    """Serve a folder on all interfaces for the time of a block."""
    handler = functools.partial(server.Handler, directory=str(folder))
    httpd = QuietServer(("", port), handler)
    thread = threading.Thread(target=httpd.serve_forever, kwargs={"poll_interval": 0.02})
    thread.start()
    try:
        yield Host(folder, httpd.server_port)
    finally:
        httpd.shutdown()
        httpd.server_close()
        httpd.hang_up()
        thread.join()


@pytest.fixture(scope="session")
def browser_path() -> str:
    """Return Chromium; without one the browser tests are skipped, under CI they fail."""
    found = os.environ.get("HANDBOOK_BROWSER") or next(
        filter(None, map(shutil.which, BROWSERS)), None
    )
    if found is None:
        why = "no Chromium or Chrome found: the page was not tried in a browser"
        if os.environ.get("CI") == "true":
            pytest.fail(why)
        pytest.skip(why)
    return found


@pytest.fixture(scope="session")
def playwright() -> Iterator[Any]:
    """Return the running Playwright."""
    from playwright.sync_api import sync_playwright

    with sync_playwright() as running:
        yield running


@pytest.fixture(scope="session")
def chromium(playwright: Any, browser_path: str) -> Iterator[Any]:
    """Return a browser for tests that need no memory beyond their context."""
    browser = playwright.chromium.launch(executable_path=browser_path, args=FLAGS)
    yield browser
    browser.close()


@pytest.fixture
def device(playwright: Any, browser_path: str, tmp_path: Path) -> Iterator[Any]:
    """Return a function that starts a browser with the memory of the one before, ending that."""
    running: list[Any] = []

    def start() -> Any:
        while running:
            running.pop().close()
        running.append(
            playwright.chromium.launch_persistent_context(
                str(tmp_path / "profile"), executable_path=browser_path, args=FLAGS, **PHONE
            )
        )
        return running[0]

    yield start
    for context in running:
        context.close()


def kept(page: Any, edition: str = "", seconds: int = 60) -> None:
    """Wait until the device keeps pages and calculators, of a certain edition if one is told."""
    words = page.locator("[data-offline-status]", has_text=f"calculators of edition {edition}")
    words.first.wait_for(state="attached", timeout=1000 * seconds)


@pytest.fixture(scope="session")
def host(site: Path) -> Iterator[Host]:
    """Serve the built book."""
    with serving(site) as running:
        yield running


@pytest.fixture(scope="session")
def places(site: Path) -> dict[str, str]:
    """Return the page of each calculator that is no page of the visit and no worked example."""
    found = {}
    for path in sorted(site.glob("*/*.html")):
        if path.parent.name not in {"visit", "worked_examples"}:
            for name in re.findall(r'data-calculator="(\w+)"', path.read_text("utf-8")):
                found.setdefault(name, path.relative_to(site).as_posix())
    assert set(found) == set(CALCULATORS)
    return found


@dataclass
class Watch:
    """What the pages of a context asked for, and what went wrong in them."""

    base: str
    foreign: list[str] = field(default_factory=list)
    faults: list[str] = field(default_factory=list)
    requests: int = 0

    def over(self, context: Any) -> Any:
        """Watch a context and return it."""
        context.on("request", self.asked)
        context.on("page", self.page)
        for page in context.pages:
            self.page(page)
        return context

    def page(self, page: Any) -> None:
        page.on("pageerror", lambda error: self.faults.append(str(error)))
        page.on("console", self.said)

    def asked(self, request: Any) -> None:
        self.requests += 1
        if not request.url.startswith((self.base, "blob:", "data:")):
            self.foreign.append(request.url)

    def said(self, message: Any) -> None:
        # A browser asks for a favicon of its own accord where a test opens a bare file.
        if message.type == "error" and not message.location.get("url", "").endswith("/favicon.ico"):
            self.faults.append(message.text)


@pytest.fixture(scope="session")
def warm_context(chromium: Any, host: Host) -> Iterator[Any]:
    """Return a context whose device has kept the snapshot of an earlier visit."""
    watch = Watch(host.local)
    context = watch.over(chromium.new_context(**PHONE))
    page = context.new_page()
    page.goto(host.page("how_many_left"))
    live(page)
    engine_start(page)
    engine_until(page, "kept")
    page.close()
    context.watch = watch
    yield context
    context.close()


@pytest.fixture
def phone(warm_context: Any, host: Host) -> Iterator[Any]:
    """Return a page at whose end nothing may have gone wrong, with nothing typed before."""
    page = warm_context.new_page()
    page.goto(host.local + "_static/book.css")
    page.evaluate("localStorage.clear()")
    warm_context.watch.faults.clear()
    yield page
    page.close()
    assert warm_context.watch.faults == []
    assert warm_context.watch.foreign == []


def live(page: Any) -> None:
    """Wait until the calculators take input."""
    page.wait_for_selector("html[data-calculators=live]", state="attached", timeout=20_000)


def until(page: Any, condition: str, seconds: float = 30) -> None:
    """Wait from outside for what holds in the page: its policy takes no condition as text."""
    end = time.monotonic() + seconds
    while not page.evaluate(condition):
        assert time.monotonic() < end, f"never: {condition}"
        page.wait_for_timeout(20)


def engine_until(page: Any, condition: str, seconds: float = 60) -> None:
    """Wait until a condition on the engine's ``status`` holds."""
    page.evaluate(
        """async ([condition, seconds]) => {
          const { status } = await import('/_static/engine.mjs');
          const holds = { kept: () => status.kept > 0, ready: () => status.state === 'ready' };
          const end = performance.now() + 1000 * seconds;
          while (!holds[condition]()) {
            if (performance.now() > end) throw new Error(`never ${condition}`);
            await new Promise((go) => setTimeout(go, 20));
          }
        }""",
        [condition, seconds],
    )


def engine_start(page: Any) -> None:
    """Start Python and wait until it answers."""
    page.evaluate("import('/_static/engine.mjs').then((engine) => engine.start())")
    engine_until(page, "ready")


def answered(page: Any, state: str = "live") -> None:
    """Wait for the answer's state; for ``live``, give first what else it needs."""
    if state == "live":
        for name, texts in typed(page).items():
            if any(texts.values()):
                complete(page, name)
    page.wait_for_selector(f".calc-out[data-state={state}]", timeout=60_000)


def typed(page: Any) -> dict[str, dict[str, str]]:
    """Return what stands in each form of a page, by calculator and input; a list joined."""
    return dict(
        page.evaluate(
            """() => {
              const read = (field) => [...field.querySelectorAll('input, select')]
                .filter((one) => one.type !== 'radio' || one.checked)
                .map((one) => one.value.trim()).filter(Boolean).join(' ');
              const all = [...document.querySelectorAll('.calculator')].reverse();
              return Object.fromEntries(all.map((one) => [one.dataset.calculator,
                Object.fromEntries([...one.querySelectorAll('.calc-field')]
                  .map((field) => [field.dataset.input, read(field)]))]));
            }"""
        )
    )


def missing(name: str, given: Mapping[str, Any]) -> list[Input]:
    """Return what an answer waits for, with ``given`` as texts in the declared units."""
    return list(find(name).reading({key: text for key, text in given.items() if text}).missing)


def enter(page: Any, name: str, field: str, value: Any) -> None:
    """Type or choose one value, given in the declared unit, in the first form of a calculator."""
    declared = next(each for each in find(name).inputs if each.name == field)
    place = page.locator(f".calculator[data-calculator={name}]").first
    box = place.locator(f"[data-input={field}]")
    if isinstance(declared, Choice):
        radio = box.locator(f"input[type=radio][value='{value}']")
        if radio.count():
            radio.check()
        else:
            box.locator("select").select_option(value)
        return
    if (
        isinstance(declared, Number)
        and page.evaluate("document.documentElement.dataset.units") == "us"
    ):
        us = declared.customary or declared.unit
        many = value if isinstance(value, tuple | list) else [value]
        value = [round(units.convert(one, declared.unit, us), 4) for one in many]
    text = " ".join(map(str, value)) if isinstance(value, tuple | list) else str(value)
    box.locator("input").first.fill(text)


def complete(page: Any, name: str) -> None:
    """Give what an answer still needs, as the worked example has it."""
    while waits := missing(name, typed(page)[name]):
        for each in waits:
            enter(page, name, each.name, each.shown_example)


def result(page: Any, label: str) -> str:
    """Return a shown result by its label."""
    found = page.locator(".calc-answer dl > div", has=page.locator(f"dt:text-is('{label}')"))
    return str(found.locator("b").first.inner_text())

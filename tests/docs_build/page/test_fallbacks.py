"""When something is missing or broken, the page says so in words and keeps its worked example."""

from __future__ import annotations

from typing import Any

import pytest

from docs_build import server

from .conftest import PHONE, Host, answered, engine_until, live

pytestmark = pytest.mark.browser
CATCHES = "[name=catches] >> nth=0"
STATUS = "import('/_static/engine.mjs').then((engine) => ({ ...engine.status }))"


def test_plain_http_computes_and_says_that_keeping_needs_https(chromium: Any, host: Host) -> None:
    address = server.address(host.port)
    if "127.0.0.1" in address:
        pytest.skip("this machine has no address but its own: no insecure origin to try")
    context = chromium.new_context(**PHONE)
    page = context.new_page()
    page.goto(address + "method/how_many_left.html")
    live(page)
    assert page.evaluate("isSecureContext") is False
    page.fill(CATCHES, "60, 35, 20, 11")
    answered(page)
    page.wait_for_selector("[data-offline-status]:has-text('HTTPS')", timeout=20_000)
    engine_until(page, "kept")
    page.reload()
    live(page)
    answered(page)
    assert page.evaluate(STATUS)["how"] == "snapshot"
    context.close()


def test_a_broken_snapshot_falls_back_to_the_plain_start(
    chromium: Any, host: Host, warm_context: Any
) -> None:
    page = warm_context.new_page()
    page.goto(host.page("how_many_left"))
    live(page)
    # A snapshot that passes its checksum but is not one: the runtime itself refuses it.
    page.evaluate(
        """async () => {
          const { keepSnapshot } = await import('/_static/snapshot.mjs');
          const manifest = await (await fetch('/_runtime/runtime.json')).json();
          await keepSnapshot(manifest, new Uint8Array(1 << 20).fill(7));
        }"""
    )
    page.fill(CATCHES, "60, 35, 20, 11")
    answered(page)
    assert page.evaluate(STATUS)["how"] == "plain"
    engine_until(page, "kept")
    page.reload()
    live(page)
    answered(page)
    assert page.evaluate(STATUS)["how"] == "snapshot"
    page.evaluate(
        """async () => {
          const { openSnapshot } = await import('/_static/snapshot.mjs');
          const { build } = await (await fetch('/_runtime/runtime.json')).json();
          const kept = await openSnapshot();
          if (kept.manifest.build !== build) throw new Error('a stale snapshot was kept');
          const heap = new Uint8Array(kept.size);
          (await kept.read())(heap, 0);
          if (!heap.some((byte) => byte)) throw new Error('no snapshot to read');
        }"""
    )
    page.close()


@pytest.mark.parametrize(
    ("pattern", "words"),
    [
        ("**/_runtime/**", "could not be fetched"),
        ("**/_runtime/*/python_stdlib.zip", "could not be fetched"),
        ("**/_static/worker.mjs", "cannot run the computing part"),
    ],
)
def test_a_missing_part_is_said_and_the_example_stays(
    chromium: Any, host: Host, pattern: str, words: str
) -> None:
    context = chromium.new_context(**PHONE, service_workers="block")
    page = context.new_page()
    page.route(pattern, lambda route: route.fulfill(status=404, body=""))
    page.goto(host.page("how_many_left"))
    live(page)
    example = page.locator(".answer-main").inner_text()
    page.fill(CATCHES, "60, 35, 20, 10")
    page.wait_for_selector(".calc-said[data-wrong=true]", timeout=30_000)
    assert words in page.locator(".calc-said").inner_text()
    assert page.locator(".answer-main").inner_text() == example
    assert page.locator("[name=catches]").nth(3).input_value() == "10"
    page.unroute(pattern)
    page.fill("[name=catches] >> nth=3", "11")
    answered(page)
    context.close()


def test_a_damaged_runtime_is_said(chromium: Any, host: Host) -> None:
    context = chromium.new_context(**PHONE, service_workers="block")
    page = context.new_page()
    page.route("**/book.zip", lambda route: route.fulfill(status=200, body="not a zip"))
    page.goto(host.page("how_many_left"))
    live(page)
    page.fill(CATCHES, "60, 35, 20, 10")
    page.wait_for_selector(".calc-said[data-wrong=true]", timeout=60_000)
    assert "did not start" in page.locator(".calc-said").inner_text()
    assert page.locator(".answer-main").is_visible()
    context.close()


@pytest.mark.parametrize(
    ("prelude", "words"),
    [
        ("self.WebAssembly = undefined;", "WebAssembly is missing"),
        (
            "WebAssembly.instantiateStreaming = WebAssembly.instantiate = async () => "
            "{ throw new RangeError('Out of memory: cannot allocate'); };",
            "too little free memory",
        ),
    ],
)
def test_a_device_that_cannot_is_told_why(
    chromium: Any, host: Host, prelude: str, words: str
) -> None:
    context = chromium.new_context(**PHONE, service_workers="block")
    page = context.new_page()
    source = (host.folder / "_static" / "worker.mjs").read_text("utf-8")
    page.route(
        "**/worker.mjs",
        lambda route: route.fulfill(body=f"{source}\n{prelude}", content_type="text/javascript"),
    )
    page.goto(host.page("how_many_left"))
    live(page)
    page.fill(CATCHES, "60, 35, 20, 10")
    page.wait_for_selector(".calc-said[data-wrong=true]", timeout=60_000)
    assert words in page.locator(".calc-said").inner_text()
    context.close()


def test_no_storage_at_all_still_computes(chromium: Any, host: Host) -> None:
    context = chromium.new_context(**PHONE, service_workers="block")
    page = context.new_page()
    page.add_init_script(
        "Object.defineProperty(self, 'localStorage', { get() { throw new Error('denied'); } });"
    )
    page.goto(host.page("how_many_left"))
    live(page)
    page.fill(CATCHES, "60, 35, 20, 11")
    answered(page)
    context.close()

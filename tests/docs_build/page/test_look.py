"""Accessibility rules, narrow screens, keyboard, size of what is pressed."""

from __future__ import annotations

from typing import Any

import pytest

from .conftest import PAGES, PHONE, Host, answered, live

pytestmark = pytest.mark.browser
SOME = ("index.html", "search.html", *PAGES.values())


@pytest.mark.parametrize("scheme", ["light", "dark"])
def test_axe_finds_nothing(chromium: Any, host: Host, scheme: str) -> None:
    from axe_playwright_python.sync_playwright import Axe

    context = chromium.new_context(
        **PHONE, color_scheme=scheme, service_workers="block", bypass_csp=True
    )
    page = context.new_page()
    found = {}
    for name in SOME:
        page.goto(host.local + name)
        if name in PAGES.values():
            live(page)
            for details in page.locator(".calculator details").all():
                details.evaluate("(one) => { one.open = true; }")
        report = Axe().run(page)
        faults = [
            f"{one['id']}: {one['help']}: {one['nodes'][0]['html'][:160]}"
            for one in report.response["violations"]
        ]
        if faults:
            found[name] = faults
    context.close()
    assert found == {}


def test_axe_finds_nothing_in_a_mistake(phone: Any, host: Host) -> None:
    from axe_playwright_python.sync_playwright import Axe

    phone.goto(host.page("how_many_left"))
    live(phone)
    phone.fill("[name=catches] >> nth=0", "many")
    answered(phone, "old")
    # The rules are put in as a script of the test, past the page's policy.
    source = Axe().axe_script if hasattr(Axe(), "axe_script") else None
    if source is None:
        from axe_playwright_python.base import AXE_FILE_PATH

        source = AXE_FILE_PATH.read_text("utf-8")
    phone.evaluate(source)
    faults = phone.evaluate("axe.run().then((found) => found.violations.map((one) => one.id))")
    assert faults == []


@pytest.mark.parametrize("name", SOME)
def test_nothing_is_wider_than_320(chromium: Any, host: Host, name: str) -> None:
    context = chromium.new_context(**PHONE | {"viewport": {"width": 320, "height": 640}})
    page = context.new_page()
    page.goto(host.local + name)
    page.wait_for_load_state("networkidle")
    assert page.evaluate("document.documentElement.scrollWidth") <= 320
    context.close()


@pytest.mark.parametrize("name", PAGES)
def test_what_is_pressed_is_large_enough(phone: Any, host: Host, name: str) -> None:
    phone.goto(host.page(name))
    live(phone)
    small = phone.evaluate(
        """() => [...document.querySelectorAll(
             '.calculator button, .calculator input[type=text], .calculator select, .calc-radio')]
           .filter((one) => one.offsetParent)
           .map((one) => [one.outerHTML.slice(0, 80), one.getBoundingClientRect()])
           .filter(([, box]) => box.height < 47.5 || box.width < 47.5)
           .map(([html, box]) => `${html} ${box.width}x${box.height}`)"""
    )
    assert small == []


def test_a_keyboard_is_enough(phone: Any, host: Host) -> None:
    phone.goto(host.page("how_many_left"))
    live(phone)
    for _ in range(60):
        phone.keyboard.press("Tab")
        if phone.evaluate("document.activeElement.name") == "catches":
            break
    assert phone.evaluate("document.activeElement.name") == "catches"
    phone.keyboard.press("Control+A")
    phone.keyboard.type("70")
    answered(phone)
    assert phone.locator("[name=catches]").first.input_value() == "70"
    phone.keyboard.press("Tab")
    assert phone.evaluate("document.activeElement.dataset.step") == "1"
    phone.keyboard.press("Enter")
    assert phone.locator("[name=catches]").first.input_value() == "71"
    ring = phone.evaluate("getComputedStyle(document.activeElement).outlineStyle")
    assert ring != "none"


@pytest.mark.parametrize("name", PAGES)
def test_the_page_does_not_jump(chromium: Any, host: Host, name: str) -> None:
    context = chromium.new_context(**PHONE)
    page = context.new_page()
    page.add_init_script(
        "self.shift = 0; new PerformanceObserver((list) => { for (const one of list.getEntries())"
        " if (!one.hadRecentInput) self.shift += one.value; })"
        ".observe({ type: 'layout-shift', buffered: true });"
    )
    page.goto(host.page(name))
    live(page)
    page.wait_for_load_state("networkidle")
    assert page.evaluate("self.shift") <= 0.05
    context.close()

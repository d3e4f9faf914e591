"""Every page of the book: accessibility rules, sizes for gloves, narrow screens, settings."""

from __future__ import annotations

from typing import Any

import pytest

from . import fonts
from .conftest import PHONE, Host

pytestmark = pytest.mark.browser

USUAL = {"color_scheme": "light", "contrast": "no-preference", "forced_colors": "none"}
SCHEMES: dict[str, dict[str, Any]] = {
    "light": USUAL,
    "dark": USUAL | {"color_scheme": "dark"},
    "contrast": USUAL | {"contrast": "more"},
    "dark contrast": USUAL | {"color_scheme": "dark", "contrast": "more"},
    "forced": USUAL | {"forced_colors": "active"},
}
AXE = """(only) => axe
  .run({ resultTypes: ["violations"], ...(only && { runOnly: [only] }) })
  .then((told) => told.violations.map(
    (one) => `${one.id}: ${one.nodes.length} ${one.nodes[0].html.slice(0, 140)}`))"""
"""All rules once; a change of colours can change nothing but the contrast."""
LEAST = 47.5
"""CSS pixels; 48 less what rounding of a zoomed layout takes."""

SMALL = """(least) => {
  const large = (box) => box.width >= least && box.height >= least;
  // A link within running text is what WCAG exempts: other words stand in the same block.
  const inText = (link) => {
    if (getComputedStyle(link).display !== "inline") return false;
    const block = link.closest("p, li, td, th, dd, dt, figcaption, caption, div");
    const copy = block.cloneNode(true);
    for (const gone of copy.querySelectorAll("a, ul, ol")) gone.remove();
    return /\\p{L}{2}/u.test(copy.textContent);
  };
  return [...document.querySelectorAll("a[href], button, summary, input, select, textarea")]
    .filter((one) => one.checkVisibility({ visibilityProperty: true }) && one.type !== "file")
    .filter((one) => !one.matches(".skip") && !(one.matches("a") && inText(one)))
    // A card is pressed as a whole.
    .map((one) => one.matches(".sd-stretched-link") ? one.closest(".sd-card") : one)
    .map((one) => (/^(radio|checkbox)$/.test(one.type) ? (one.closest("label") ?? one) : one))
    .filter((one) => !large(one.getBoundingClientRect()))
    .map((one) => {
      const box = one.getBoundingClientRect();
      return `${Math.round(box.width)}x${Math.round(box.height)} ${one.outerHTML.slice(0, 110)}`;
    });
}"""
SPILT = """() => [...document.querySelectorAll(".thumb a, .visit-turn > *, button, summary")]
  .filter((one) => one.checkVisibility() && getComputedStyle(one).display !== "inline")
  .filter((one) => one.scrollWidth > one.clientWidth + 1)
  .map((one) => one.outerHTML.slice(0, 110))"""
"""What is pressed and has words that run out of it."""

OPEN = "() => document.querySelectorAll('main details').forEach((one) => { one.open = true; })"


def pages(host: Host) -> list[str]:
    """Return every page of the built book."""
    found = [path.relative_to(host.folder).as_posix() for path in host.folder.rglob("*.html")]
    return sorted(name for name in found if not name.startswith(("_", "editions/")))


def largest(context: Any) -> None:
    """Let every page of a context come in the largest text."""
    context.add_init_script("""localStorage.setItem("handbook.look", '{"text":"largest"}')""")


def test_axe_finds_nothing_on_any_page(chromium: Any, host: Host) -> None:
    from axe_playwright_python.base import AXE_FILE_PATH

    rules = AXE_FILE_PATH.read_text("utf-8")
    context = chromium.new_context(
        **PHONE | {"device_scale_factor": 1}, service_workers="block", bypass_csp=True
    )
    page = context.new_page()
    found = {}
    for name in pages(host):
        page.emulate_media(**SCHEMES["light"])
        page.goto(host.local + name, wait_until="load")
        page.evaluate(OPEN)
        page.evaluate(rules)
        for scheme, media in SCHEMES.items():
            page.emulate_media(**media)
            faults = page.evaluate(AXE, None if scheme == "light" else "color-contrast")
            if faults:
                found[f"{name}, {scheme}"] = faults
    context.close()
    assert found == {}


@pytest.mark.parametrize("family", fonts.FAMILIES)
def test_a_page_is_set_in_the_family_that_was_put_on(
    chromium: Any, host: Host, family: str
) -> None:
    context = chromium.new_context(**PHONE, service_workers="block", bypass_csp=True)
    page = context.new_page()
    page.goto(host.local + "index.html", wait_until="load")
    fonts.put_on(page, family)
    measured = page.evaluate(
        """() => ["i", "n", "m"].map((letter) => {
          const span = document.createElement("b");
          Object.assign(span.style, { fontSize: "100px", position: "absolute" });
          span.textContent = letter;
          document.body.append(span);
          return Math.round(span.getBoundingClientRect().width * 10);
        })"""
    )
    context.close()
    assert tuple(measured) == fonts.FAMILIES[family]


@pytest.mark.parametrize("text", ["normal", "largest"])
def test_narrow_pages_are_for_gloves(chromium: Any, host: Host, text: str) -> None:
    context = chromium.new_context(
        **PHONE | {"viewport": {"width": 320, "height": 640}, "device_scale_factor": 1},
        service_workers="block",
        bypass_csp=True,
    )
    if text == "largest":
        largest(context)
    page = context.new_page()
    wide, small = {}, {}
    for name in pages(host):
        page.goto(host.local + name, wait_until="load")
        page.evaluate(OPEN)
        for family in (
            "",
            *fonts.FAMILIES,
        ):  # the machine's own font, and two that are always there
            fonts.put_on(page, family)
            width = page.evaluate("document.documentElement.scrollWidth")
            if width > 320:
                wide[name, family] = width
            if spilt := page.evaluate(SPILT):
                wide[name, family] = spilt
            faults = page.evaluate(SMALL, LEAST)
            if faults:
                small[name, family] = faults
    context.close()
    assert wide == {}
    assert small == {}


@pytest.fixture
def fresh(chromium: Any) -> Any:
    """Return a page of a device that has kept nothing."""
    context = chromium.new_context(**PHONE | {"device_scale_factor": 1}, service_workers="block")
    yield context.new_page()
    context.close()


def settings(page: Any, host: Host) -> None:
    """Open the settings and wait until they take a press."""
    page.goto(host.local + "start/settings.html")
    page.wait_for_selector(".settings-live", state="visible")


def root(page: Any, what: str) -> str:
    """Return a computed style of the whole page."""
    return str(page.evaluate(f"getComputedStyle(document.documentElement).{what}"))


def test_a_choice_holds_at_once_and_on_the_next_page(fresh: Any, host: Host) -> None:
    fresh.goto(host.local + "index.html")
    before = float(root(fresh, "fontSize")[:-2])
    fresh.get_by_role("link", name="Settings on this phone").first.click()
    fresh.wait_for_selector(".settings-live", state="visible")
    for group, choice in (
        ("Text size", "Largest"),
        ("Hand that holds the phone", "Left"),
        ("Contrast", "Strongest"),
        ("Colours", "Dark"),
        ("Units", "US units"),
    ):
        fresh.get_by_role("group", name=group).get_by_text(choice, exact=True).click()
        fresh.get_by_text("Kept on this phone").wait_for()
    fresh.goto(host.page("how_many_left"))
    assert float(root(fresh, "fontSize")[:-2]) > 1.3 * before
    assert root(fresh, "colorScheme") == "dark"
    assert fresh.evaluate("getComputedStyle(document.body).backgroundColor") == "rgb(0, 0, 0)"
    assert fresh.evaluate("document.documentElement.dataset.units") == "us"
    thumb = fresh.locator(".thumb a")
    assert thumb.first.bounding_box()["x"] > thumb.last.bounding_box()["x"]
    settings(fresh, host)
    for choice in ("Largest", "Left", "Strongest", "Dark", "US units"):
        assert fresh.get_by_role("radio", name=choice, exact=True).is_checked()


def test_the_choice_stands_before_the_first_paint(chromium: Any, host: Host) -> None:
    context = chromium.new_context(**PHONE | {"device_scale_factor": 1}, service_workers="block")
    largest(context)
    page = context.new_page()
    page.add_init_script(
        "self.shift = 0; new PerformanceObserver((list) => { for (const one of list.getEntries())"
        " if (!one.hadRecentInput) self.shift += one.value; })"
        ".observe({ type: 'layout-shift', buffered: true });"
    )
    # Modules come late; what they would set, the page would be seen to change.
    page.route("**/*.mjs", lambda route: route.abort())
    page.goto(host.local + "method/kit.html")
    assert page.evaluate("document.documentElement.dataset.text") == "largest"
    assert page.evaluate("self.shift") <= 0.05
    context.close()


def test_without_storage_the_settings_say_so(fresh: Any, host: Host) -> None:
    fresh.add_init_script(
        "Object.defineProperty(self, 'localStorage', { get() { throw new Error('denied'); } })"
    )
    settings(fresh, host)
    for choice in ("Largest", "US units"):
        fresh.get_by_text(choice, exact=True).click()
        fresh.get_by_text("lets the page keep nothing").wait_for()
    assert fresh.evaluate("document.documentElement.dataset.text") == "largest"


@pytest.mark.parametrize("kept", ["1", "null", "[]", '"x"', '{"text": 7, "hand": "<b>"}', "{"])
def test_a_spoilt_memory_spoils_no_page(fresh: Any, host: Host, kept: str) -> None:
    faults: list[str] = []
    fresh.on("pageerror", lambda error: faults.append(str(error)))
    fresh.add_init_script(f"localStorage.setItem('handbook.look', {kept!r})")
    settings(fresh, host)
    fresh.get_by_text("Larger", exact=True).click()
    fresh.get_by_text("Kept on this phone").wait_for()
    assert faults == []


@pytest.mark.parametrize(
    "name", ["start/settings.html", "method/how_many_left.html", "clients/the_job.html"]
)
def test_a_keyboard_walks_the_whole_page(fresh: Any, host: Host, name: str) -> None:
    fresh.goto(host.local + name)
    fresh.wait_for_load_state("networkidle")
    fresh.keyboard.press("Tab")
    assert fresh.evaluate("document.activeElement.className") == "skip"
    seen, unseen = [], []
    for _ in range(600):
        fresh.keyboard.press("Tab")
        told = fresh.evaluate(
            """() => { const one = document.activeElement;
              if (one === document.body || one.matches(".skip")) return null;
              self.walked ??= new Set(); self.walked.add(one);
              const ring = (each) => each && getComputedStyle(each).outlineStyle !== "none";
              const box = one.closest(".calc-box, label");
              return [one.outerHTML.slice(0, 90), ring(one) || ring(box)]; }"""
        )
        if told is None:
            break
        seen.append(told[0])
        if not told[1]:
            unseen.append(told[0])
    else:
        pytest.fail(f"no way out of the page: {seen[-3:]}")
    assert unseen == []
    # Of a group of radio buttons Tab reaches one; arrows do the rest.
    missed = fresh.evaluate(
        """() => [...document.querySelectorAll("a[href], button, summary, input, select, textarea")]
          .filter((one) => one.checkVisibility({ visibilityProperty: true }) && !one.disabled)
          .filter((one) => one.type !== "radio" && one.tabIndex >= 0 && !one.matches(".skip"))
          .filter((one) => !self.walked.has(one)).map((one) => one.outerHTML.slice(0, 90))"""
    )
    assert missed == []


def test_a_screen_reader_hears_names(fresh: Any, host: Host) -> None:
    settings(fresh, host)
    told = fresh.locator("main").aria_snapshot()
    assert 'group "Text size"' in told
    assert 'radio "Largest"' in told
    for name in ("method/how_many_left.html", "clients/the_job.html", "start/settings.html"):
        fresh.goto(host.local + name)
        fresh.wait_for_load_state("networkidle")
        fresh.evaluate(OPEN)
        told = fresh.locator("body").aria_snapshot()
        unnamed = [
            line
            for line in told.splitlines()
            if line.strip(" -:").split(" [")[0]
            in {"button", "link", "textbox", "combobox", "radio", "checkbox", "spinbutton"}
        ]
        assert unnamed == []
        assert told.count('navigation "Main"') == 1

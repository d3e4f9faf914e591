"""The form starts empty: no number hangs on what nobody gave, and what is missing is said."""

from __future__ import annotations

import re
from typing import Any
from urllib.parse import urlencode

import pytest
from playwright.sync_api import expect

from calc.catalogue import CALCULATORS, find
from calc.declare import Choice, Input, Number
from docs_build.page import answer, form

from .conftest import PHONE, Host, answered, complete, enter, live, missing, typed
from .test_jobs import axe, begun, held, opened, unfold

pytestmark = pytest.mark.browser
FOGGING = "safety/fogging.html"
"""A calculator with all four origins of inputs: it stands for the others where one is enough."""


def shown(page: Any, name: str, state: str) -> Any:
    """Wait for a state of the first form of a calculator and return its answer."""
    section = page.locator(f".calculator[data-calculator={name}]").first
    section.locator(f".calc-out[data-state={state}]").wait_for(timeout=60_000)
    return section.locator(".calc-out")


def foggy(phone: Any, host: Host) -> Any:
    phone.goto(host.local + FOGGING)
    live(phone)
    return phone


def needed(name: str, given: dict[str, str]) -> list[str]:
    return [each.name for each in missing(name, given)]


def pressed(each: Input) -> Any:
    """Return what one press or a few keys give."""
    if isinstance(each, Choice):
        return each.options[0].value
    value = each.shown_example
    return value[:1] if isinstance(value, tuple) else value


def refuses(found: Any) -> None:
    """Nothing that is computed is shown: no value, no table, no figure, and no example."""
    for css in (".answer-main", ".answer-table", ".answer-figure", ".calc-given"):
        assert found.locator(f"{css} >> visible=true").count() == 0
    assert answer.EXAMPLE not in found.inner_text()


@pytest.mark.parametrize("name", CALCULATORS)
def test_one_press_on_an_empty_phone_makes_no_answer_of_the_example(
    phone: Any, host: Host, places: dict[str, str], name: str
) -> None:
    phone.goto(host.local + places[name])
    live(phone)
    calculator = find(name)
    assert not any(typed(phone)[name].values())
    section = phone.locator(f".calculator[data-calculator={name}]").first
    assert section.locator(".calc-state").inner_text() == answer.EXAMPLE
    assert section.locator(".calc-brief").is_hidden()
    each = next(
        one
        for one in calculator.inputs
        if one.only_if is None and (isinstance(one, Choice) or one.shown_example is not None)
    )
    enter(phone, name, each.name, pressed(each))
    given = typed(phone)[name]
    assert [key for key, text in given.items() if text] == [each.name]
    waits = needed(name, given)
    found = shown(phone, name, "waiting" if waits else "live")
    told = answer.run(name, {each.name: given[each.name]}, False)
    state = found.locator(".calc-state").inner_text()
    assert state == told["state"]
    bar = section.locator(".calc-brief").inner_text()
    if waits:
        known = int(each.needed)
        assert state == f"{known} of {known + len(waits)} given"
        refuses(found)
        buttons = found.locator(".answer-missing button")
        assert [one.get_attribute("data-field") for one in buttons.all()] == waits
        assert bar.startswith(("STOP: ", f"{state}. Next: "))
    else:  # what it says hangs on this one value, and on usual values that have a source
        assert state.startswith(answer.YOURS)
        assert all(one.usual_source for one in calculator.inputs if one.standing is not None)


def test_what_is_missing_is_said_and_leads_to_its_field(phone: Any, host: Host) -> None:
    foggy(phone, host)
    first, *others = needed("fogging", {})
    enter(phone, "fogging", first, find("fogging").example()[first])
    found = shown(phone, "fogging", "waiting")
    expect(found.locator(".calc-state")).to_have_text(f"1 of {1 + len(others)} given")
    for name in others:
        button = found.locator(f".answer-missing [data-field={name}]")
        box = button.bounding_box()
        assert box["height"] >= 48
        assert box["width"] >= 250
        button.click()
        assert in_hand(phone) == name
    # The bar at the thumb leads on, one value after the other.
    given = {first: "x"}
    for place, name in enumerate(others, start=1):
        bar = phone.locator(".calc-brief-text")
        label = next(each.label for each in find("fogging").inputs if each.name == name)
        expect(bar).to_have_text(f"{place} of {1 + len(others)} given. Next: {label}")
        bar.click()
        assert in_hand(phone) == name
        refuses(found)
        enter(phone, "fogging", name, find("fogging").example()[name])
        given[name] = "x"
    assert needed("fogging", typed(phone)["fogging"]) == []
    found = shown(phone, "fogging", "live")
    assert found.locator(".answer-main").is_visible()
    phone.locator(".calc-brief-text").click()
    assert phone.evaluate("location.hash").endswith("-answer")


def in_hand(phone: Any) -> str:
    """Return the field that has the focus and can be seen."""
    return str(
        phone.evaluate(
            """() => {
              const box = document.activeElement.getBoundingClientRect();
              if (box.top < 0 || box.bottom > innerHeight) return 'out of sight';
              return document.activeElement.closest('.calc-field')?.dataset.input ?? 'none';
            }"""
        )
    )


def test_usual_values_stand_until_they_are_replaced(phone: Any, host: Host) -> None:
    foggy(phone, host)
    enter(phone, "fogging", needed("fogging", {})[0], 20)
    complete(phone, "fogging")
    given = {key: text for key, text in typed(phone)["fogging"].items() if text}
    usual = [
        each
        for each in find("fogging").inputs
        if find("fogging").reading(given).origins[each.name] == "usual"
    ]
    assert usual
    for left in range(len(usual), -1, -1):
        native = find("fogging").run(given)
        expect(phone.locator(".calc-state")).to_have_text(answer.state(native.as_dict()))
        words = f"with {left} usual value" if left else answer.YOURS
        assert words in phone.locator(".calc-state").inner_text()
        assert phone.locator("summary:has-text('Usual values in use')").count() == int(left > 0)
        for out in native.calculator.outputs:
            if out.main and native.values[out.name] is not None:
                assert native.text(out.name) in phone.locator(".answer-main").inner_text()
        if left:
            each = usual[left - 1]
            given[each.name] = each.standing  # the same value, but now the person's own
            enter(phone, "fogging", each.name, each.standing)


@pytest.mark.parametrize("scheme", ["light", "dark"])
def test_hints_can_be_read_and_usual_values_are_marked(
    phone: Any, host: Host, places: dict[str, str], scheme: str
) -> None:
    name = next(
        name
        for name in places
        if any(
            each.kind == "number" and each.standing is not None and each.only_if is None
            for each in find(name).inputs
        )
    )
    phone.emulate_media(color_scheme=scheme)
    phone.goto(host.local + places[name])
    live(phone)
    ratio, style = phone.evaluate(
        """() => {
          const input = [...document.querySelectorAll('[data-usual-si]')]
            .find((one) => one.offsetParent);
          const lit = (text) => {
            const [r, g, b] = text.match(/[\\d.]+/g).slice(0, 3).map((one) => {
              const part = one / 255;
              return part <= 0.04045 ? part / 12.92 : ((part + 0.055) / 1.055) ** 2.4;
            });
            return 0.2126 * r + 0.7152 * g + 0.0722 * b;
          };
          const box = input.closest('.calc-box');
          const pair = [getComputedStyle(input, '::placeholder').color,
            getComputedStyle(box).backgroundColor].map(lit).sort((a, b) => b - a);
          return [(pair[0] + 0.05) / (pair[1] + 0.05), getComputedStyle(box).borderTopStyle];
        }"""
    )
    assert ratio >= 7
    assert style == "dashed"


def test_the_waiting_form_is_for_gloves_and_for_everyone(chromium: Any, host: Host) -> None:
    narrow = PHONE | {"viewport": {"width": 320, "height": 640}}
    context = chromium.new_context(**narrow, service_workers="block", bypass_csp=True)
    page = context.new_page()
    foggy(page, host)
    enter(page, "fogging", needed("fogging", {})[0], 20)
    shown(page, "fogging", "waiting")
    assert axe(page, "light") == axe(page, "dark") == []
    page.evaluate("document.documentElement.dataset.text = 'largest'")
    assert page.evaluate("document.documentElement.scrollWidth") <= 320
    boxes = [
        one.bounding_box() for one in page.locator(".answer-missing button, .calc-brief").all()
    ]
    assert min(box["height"] for box in boxes) >= 48
    context.close()


def test_a_mistake_in_an_empty_form_makes_no_old_answer_of_the_example(
    phone: Any, host: Host
) -> None:
    foggy(phone, host)
    for text in ("many", "more"):
        phone.fill("[name=humidity]", text)
        phone.locator("[data-input=humidity] .calc-error", has_text=text).wait_for(timeout=60_000)
        words = phone.locator(".calc-state").inner_text()
        assert words == "Not your values yet: the worked example"


def test_a_job_gives_its_values_and_keeps_no_half_answer(phone: Any, host: Host) -> None:
    phone.evaluate(
        "import('/_static/jobs.mjs').then(async (jobs) => {"
        " for (const one of await jobs.all()) await jobs.erase(one.id); })"
    )
    begun(opened(phone, host))
    unfold(phone)
    phone.fill("[name=title]", "By the pond")
    phone.fill("[name='shared.air_temperature']", "17.5")
    held(phone)
    foggy(phone, host)
    expect(phone.locator("[name=air_temperature]")).to_have_value("17.5", timeout=20_000)
    found = shown(phone, "fogging", "waiting")
    waits = missing("fogging", typed(phone)["fogging"])
    assert waits
    expect(found.locator(".calc-state")).to_have_text(re.compile(r"^1 of \d+ given$"))
    assert "Filled in from the job: Air temperature" in phone.inner_text(".calc-job")
    refuses(found)
    phone.click("[data-do=store]")
    labels = ", ".join(each.label for each in waits)
    said = phone.locator(".calc-said")
    expect(said).to_have_text(f"Not kept. Still to be given: {labels}.", timeout=20_000)
    expect(phone.locator("[data-do=store]")).to_have_text("Not kept: see above")
    assert not held(phone)["job"].get("calculations")
    complete(phone, "fogging")
    found = shown(phone, "fogging", "live")
    fold = found.locator("details", has_text="From the job (1)")
    assert "17.5" in (fold.text_content() or "")
    phone.fill("[name=air_temperature]", "21")  # now it is the person's own
    expect(fold).to_have_count(0)
    phone.click("[data-do=store]")
    expect(said).to_contain_text("Kept in the job", timeout=20_000)
    (entry,) = held(phone)["job"]["calculations"]
    assert entry["inputs"]["air_temperature"]["value"] == 21


def test_start_again_with_a_job_brings_back_what_the_job_gave(phone: Any, host: Host) -> None:
    phone.evaluate(
        "import('/_static/jobs.mjs').then(async (jobs) => {"
        " for (const one of await jobs.all()) await jobs.erase(one.id); })"
    )
    begun(opened(phone, host))
    unfold(phone)
    phone.fill("[name='shared.air_temperature']", "17.5")
    held(phone)
    foggy(phone, host)
    expect(phone.locator("[name=air_temperature]")).to_have_value("17.5", timeout=20_000)
    complete(phone, "fogging")
    shown(phone, "fogging", "live")
    phone.click("[data-do=reset]")
    given = {key: text for key, text in typed(phone)["fogging"].items() if text}
    assert given == {"air_temperature": "17.5"}
    refuses(shown(phone, "fogging", "waiting"))


def plain(each: Input, value: Any) -> str:
    if isinstance(value, tuple | list):
        return " ".join(f"{one:g}" for one in value)
    return f"{value:g}" if isinstance(each, Number) else str(value)


@pytest.mark.parametrize("name", CALCULATORS)
def test_a_link_with_values_fills_the_form_of_any_calculator(
    phone: Any, host: Host, places: dict[str, str], name: str
) -> None:
    """Also where the page shows the calculator with a case."""
    made = form.form_html(find(name), name)
    health = re.findall(r'data-input="(\w+)"[^>]*data-health="yes"', made)
    given = {
        each.name: plain(each, each.shown_example)
        for each in find(name).inputs
        if each.shown_example is not None and each.only_if is None and each.name not in health
    }
    link = f"{host.local}{places[name]}#{urlencode({'calc': name} | given)}"
    phone.goto(link)
    live(phone)
    there = {key: text for key, text in typed(phone)[name].items() if text}
    assert there == given
    assert "Values from a link" in phone.inner_text(f"[data-calculator={name}] .calc-said")
    waits = needed(name, given)
    found = shown(phone, name, "waiting" if waits else "live")
    told = answer.run(name, given, False)
    assert found.locator(".calc-state").inner_text() == told["state"]
    assert "calc=" not in phone.url
    phone.locator(f"[data-calculator={name}] [data-do=undo]").first.click()
    assert not any(typed(phone)[name].values())
    assert found.locator(".calc-state").inner_text() == answer.EXAMPLE


def test_a_copied_link_of_a_form_with_a_case_leads_back(phone: Any, host: Host) -> None:
    foggy(phone, host)
    enter(phone, "fogging", "humidity", 88)
    answered(phone)
    given = typed(phone)["fogging"]
    main = phone.inner_text(".answer-main")
    phone.evaluate("navigator.clipboard.writeText = async (text) => { window.copied = text; }")
    phone.click("[data-do=link]")
    link = phone.evaluate("window.copied")
    phone.fill("[name=humidity]", "30")
    phone.fill("[name=worn]", "2")
    phone.goto(link)  # the page is open already: only what stands behind # changes
    expect(phone.locator("[name=humidity]")).to_have_value("88")
    assert typed(phone)["fogging"] == given
    shown(phone, "fogging", "live")
    expect(phone.locator(".answer-main")).to_have_text(main, use_inner_text=True)
    phone.click("[data-do=undo]")
    assert typed(phone)["fogging"] == given | {"humidity": "30", "worn": "2"}

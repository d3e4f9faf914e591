"""A practitioner types on a phone: answers, mistakes, units, links, nothing lost."""

from __future__ import annotations

from typing import Any
from urllib.parse import quote

import pytest
from playwright.sync_api import expect

from calc import units
from calc.catalogue import find
from calc.declare import Number, Numbers
from docs_build.page import answer, form
from docs_build.sphinx_ext.calculators import case_inputs

from .conftest import Host, answered, live, result, typed

pytestmark = pytest.mark.browser
CATCHES = "[name=catches] >> nth=0"


def label(calculator: str, name: str) -> str:
    return find(calculator).out(name).label


def opened(phone: Any, host: Host, name: str) -> Any:
    phone.goto(host.page(name))
    live(phone)
    return phone


def texts(phone: Any, name: str) -> list[str]:
    return [each.input_value() for each in phone.locator(f"[name={name}]").all()]


def test_catches_typed_give_estimate_and_interval(phone: Any, host: Host) -> None:
    opened(phone, host, "how_many_left").fill(CATCHES, "60, 35, 20, 11")
    answered(phone)
    assert texts(phone, "catches") == ["60", "35", "20", "11"]
    given = {key: text for key, text in typed(phone)["how_many_left"].items() if text}
    assert given["catches"] == "60 35 20 11"
    native = find("how_many_left").run(given)
    mains = [out for out in native.calculator.outputs if out.main and out.kind != "table"]
    assert any(out.kind == "interval" for out in mains)
    for out in mains:
        if native.values[out.name] is not None:
            assert result(phone, out.label) == native.text(out.name)
    assert phone.locator(".calc-state").inner_text() == answer.state(native.as_dict())


def test_typing_goes_from_row_to_row(phone: Any, host: Host) -> None:
    opened(phone, host, "how_many_left")
    rows = len(texts(phone, "catches"))
    phone.click(f"[name=catches] >> nth={rows - 1}")
    phone.keyboard.press("Enter")
    phone.keyboard.type("7 5")
    phone.keyboard.press("Enter")
    phone.keyboard.type("3")
    assert texts(phone, "catches")[rows:] == ["7", "5", "3"]
    answered(phone)
    phone.click("[data-input=catches] [data-do=remove]")
    assert texts(phone, "catches")[rows:] == ["7", "5"]


def test_steppers_and_start_again_with_undo(phone: Any, host: Host) -> None:
    opened(phone, host, "how_many_left")
    example = phone.locator(".calc-answer").inner_html()
    before = texts(phone, "catches")
    assert not any(before)
    usual = phone.locator(CATCHES).get_attribute("data-usual-si")
    phone.tap("[data-input=catches] [data-step='1'] >> nth=0")
    phone.tap("[data-input=catches] [data-step='1'] >> nth=0")
    answered(phone)
    stepped = texts(phone, "catches")
    assert int(stepped[0]) == (int(usual) + 2 if usual else 1)
    phone.tap("[data-do=reset]")
    assert not any(typed(phone)["how_many_left"].values())
    assert phone.locator(".calc-state").inner_text() == answer.EXAMPLE
    assert phone.locator(".calc-answer").inner_html() == example
    phone.tap("[data-do=undo]")
    assert texts(phone, "catches") == stepped
    answered(phone)
    assert answer.EXAMPLE not in phone.locator(".calc-out").inner_text()


def test_steppers_stop_where_the_declaration_stops(phone: Any, host: Host) -> None:
    opened(phone, host, "how_many_left").fill(CATCHES, "1")
    for _ in range(3):
        phone.tap("[data-input=catches] [data-step='-1'] >> nth=0")
    assert texts(phone, "catches")[0] == "0"


def test_a_mistake_stands_beside_its_field_and_the_last_answer_is_marked_old(
    phone: Any, host: Host
) -> None:
    opened(phone, host, "how_many_left").fill(CATCHES, "60, 35, 20, 11")
    answered(phone)
    good = phone.locator(".answer-main").inner_text()
    phone.fill("[name=catches] >> nth=1", "many")
    answered(phone, "old")
    assert phone.locator("[data-input=catches] .calc-error").is_visible()
    assert "many" in phone.locator("[data-input=catches] .calc-error").inner_text()
    wrong = phone.locator("[name=catches]")
    assert wrong.nth(1).get_attribute("aria-invalid") == "true"
    assert wrong.nth(0).get_attribute("aria-invalid") is None
    described = wrong.nth(1).get_attribute("aria-describedby") or ""
    assert phone.locator("[data-input=catches] .calc-error").get_attribute("id") in described
    assert phone.locator(".answer-main").inner_text() == good
    assert phone.locator(".calc-state").inner_text().startswith("Old")
    phone.fill("[name=catches] >> nth=1", "35")
    answered(phone)
    assert phone.locator("[data-input=catches] .calc-error").is_hidden()


def test_what_was_typed_survives_reload_and_a_killed_page(
    phone: Any, warm_context: Any, host: Host
) -> None:
    opened(phone, host, "how_many_left").fill(CATCHES, "44, 21, 9")
    phone.reload()
    live(phone)
    assert texts(phone, "catches") == ["44", "21", "9"]
    answered(phone)
    before = phone.locator(".answer-main").inner_text()
    phone.fill("[name=catches] >> nth=2", "5")
    expect(phone.locator(".answer-main")).not_to_have_text(before, use_inner_text=True)
    phone.wait_for_timeout(300)
    shown = phone.locator(".answer-main").inner_text()
    phone.close(run_before_unload=False)
    other = warm_context.new_page()
    other.route("**/worker.mjs", lambda route: route.abort())  # no Python this time
    other.goto(host.page("how_many_left"))
    live(other)
    assert texts(other, "catches") == ["44", "21", "5"]
    assert other.locator(".answer-main").inner_text() == shown
    other.close()
    warm_context.watch.faults.clear()  # the aborted worker


def test_unit_switch_converts_what_was_typed_and_is_remembered(phone: Any, host: Host) -> None:
    opened(phone, host, "heat_in_suit")
    field = next(
        each
        for each in find("heat_in_suit").inputs
        if getattr(each, "unit", "") == "degC" and each.only_if is not None
    )
    phone.fill(f"[name={field.name}]", "30")
    answered(phone)
    phone.click("button[data-units=us]")
    expect(phone.locator(f"[name={field.name}]")).to_have_value("86", timeout=20_000)
    assert phone.locator(f"[data-input={field.name}] .calc-unit").inner_text() == "°F"
    phone.reload()
    live(phone)
    assert texts(phone, field.name) == ["86"]
    phone.click("button[data-units=si]")
    assert texts(phone, field.name) == ["30"]
    answered(phone)


def test_usual_values_switch_units_without_python(
    phone: Any, host: Host, places: dict[str, str]
) -> None:
    name, field = next(
        (name, each)
        for name in places
        for each in find(name).inputs
        if isinstance(each, Number) and not isinstance(each, Numbers)
        if each.usual and each.customary and each.only_if is None  # none is 0 in both
    )
    phone.goto(host.local + places[name])
    live(phone)
    box = phone.locator(f"[data-calculator={name}] [name={field.name}]").first
    here = form.written(field, field.usual, field.unit)
    there = units.convert(field.usual, field.unit, field.customary)
    assert box.get_attribute("placeholder") == f"{form.USUAL} {here}"
    phone.evaluate("document.querySelector('button[data-units=us]').click()")
    shown = form.written(field, there, field.customary)
    assert shown != here
    assert box.get_attribute("placeholder") == f"{form.USUAL} {shown}"
    phone.evaluate("document.querySelector('button[data-units=si]').click()")
    assert box.get_attribute("placeholder") == f"{form.USUAL} {here}"
    assert box.input_value() == ""


def test_fields_that_do_not_count_are_hidden_and_keep_their_values(phone: Any, host: Host) -> None:
    opened(phone, host, "heat_in_suit")
    calculator = find("heat_in_suit")
    held = next(each for each in calculator.inputs if each.only_if and hasattr(each, "unit"))
    switch, values = held.only_if
    choice = next(each for each in calculator.inputs if each.name == switch)
    away = next(each.value for each in choice.options if each.value not in values)
    phone.fill(f"[name={held.name}]", "29")
    radio = phone.locator(f"input[name={switch}][value={away}]")
    if radio.count():
        radio.check()
    else:
        phone.select_option(f"[name={switch}]", away)
    assert phone.locator(f"[data-input={held.name}]").is_hidden()
    back = phone.locator(f"input[name={switch}][value={values[0]}]")
    if back.count():
        back.check()
    else:
        phone.select_option(f"[name={switch}]", values[0])
    assert texts(phone, held.name) == ["29"]
    answered(phone)


def test_a_link_fills_the_form(phone: Any, host: Host) -> None:
    phone.goto(host.page("how_many_left") + "#calc=how_many_left&catches=60+35+20+11")
    live(phone)
    assert texts(phone, "catches") == ["60", "35", "20", "11"]
    answered(phone)
    assert "catches=" not in phone.url


def test_a_hostile_link_is_judged_like_typing(phone: Any, host: Host) -> None:
    attack = "<img src=x onerror=\"document.title='taken'\">"
    phone.goto(
        host.page("how_many_left")
        + f"#calc=how_many_left&catches={quote(attack)}&catches_x={quote(attack)}&__proto__=1"
    )
    live(phone)
    assert "Left out" in phone.locator(".calc-said").inner_text()
    error = phone.locator("[data-input=catches] .calc-error")
    error.wait_for(state="visible", timeout=20_000)
    assert "is not a number" in error.inner_text()
    assert phone.locator(".calculator img").count() == 0
    assert "taken" not in phone.title()
    assert phone.locator(".answer-main").is_visible()


def test_the_copied_link_leads_back_to_the_same_answer(phone: Any, host: Host) -> None:
    opened(phone, host, "how_many_left").fill(CATCHES, "50, 30, 20")
    answered(phone)
    given = typed(phone)["how_many_left"]
    assert given["catches"] == "50 30 20"
    shown = phone.locator(".answer-main").inner_text()
    phone.evaluate("navigator.clipboard.writeText = async (text) => { window.copied = text; }")
    phone.click("[data-do=link]")
    link = phone.evaluate("window.copied")
    phone.click("[data-do=copy]")
    text = phone.evaluate("window.copied")
    assert text == answer.run("how_many_left", given, False)["text"]
    phone.evaluate("localStorage.clear()")
    phone.goto("about:blank")
    phone.goto(link)
    live(phone)
    answered(phone)
    assert phone.locator(".answer-main").inner_text() == shown


def test_help_opens_without_hovering(phone: Any, host: Host) -> None:
    opened(phone, host, "how_many_left")
    phone.tap("[data-input=catches] .calc-ask")
    meaning = next(each for each in find("how_many_left").inputs if each.name == "catches").meaning
    assert meaning in phone.locator("[data-input=catches] .calc-help").inner_text()


def test_without_scripts_inputs_and_answer_stand_as_text(chromium: Any, host: Host) -> None:
    context = chromium.new_context(java_script_enabled=False)
    page = context.new_page()
    for name in ("how_many_left", "flow_and_reach", "heat_in_suit"):
        page.goto(host.page(name))
        assert page.locator(".calc-form").is_hidden()
        case = page.locator(".calculator").first.get_attribute("data-case")
        given = case_inputs(case, name) if case else find(name).example()
        told = find(name).run(given).as_dict()
        assert page.locator(".calc-state").first.inner_text() == answer.EXAMPLE
        shown = page.locator(".calc-given").inner_text()
        for each in told["inputs"].values():
            if each["value"] is not None:
                assert each["label"] in shown
                assert each["text"] in shown
        assert page.locator(".answer-main").is_visible()
    context.close()

"""The one renderer of answers: cautions first, nothing unescaped, both unit systems."""

from __future__ import annotations

import re
import xml.etree.ElementTree as ET
from typing import Any

import pytest

from calc.catalogue import CALCULATORS, find
from calc.declare import Input, Number, Numbers
from docs_build.page import answer, chart, form

NAMES = list(CALCULATORS)


def worked(name: str) -> dict[str, Any]:
    """Return the worked example of a calculator."""
    return find(name).run(find(name).example()).as_dict()


@pytest.mark.parametrize("name", NAMES)
def test_cautions_stand_before_the_numbers(name: str) -> None:
    html = answer.answer_html(worked(name))
    first = html.index("answer-main")
    for level in ("stop", "caution"):
        for found in re.finditer(f'<li class="answer-{level}"', html):
            assert found.start() < first


@pytest.mark.parametrize("name", NAMES)
def test_every_result_label_is_shown(name: str) -> None:
    told = worked(name)
    html = answer.answer_html(told)
    withheld = {name for each in told["cautions"] for name in each["hides"]}
    for name_of, each in told["results"].items():
        if each["rows"] if each["kind"] == "table" else each["value"] is not None:
            assert answer.escape(each["label"]) in html
        elif name_of in withheld:
            assert answer.WITHHELD in html


def hostile(told: dict[str, Any]) -> dict[str, Any]:
    """Return the result with markup in every text that a core could have taken from an input."""
    attack = '<script>"x"</script>'
    told["cautions"] = [
        {"level": "stop", "text": attack, "reason": attack, "source": "none", "hides": []},
        {"level": "note", "text": attack, "reason": attack, "source": "none", "hides": []},
    ]
    for each in told["results"].values():
        if "text" in each:
            each["text"] = each["customary_text"] = attack
    for each in told["charts"]:
        each["title"] = each["alt"] = each["x"]["label"] = attack
    return told


@pytest.mark.parametrize("name", NAMES)
def test_nothing_comes_out_unescaped(name: str) -> None:
    html = answer.answer_html(hostile(worked(name)))
    assert "<script" not in html
    assert "&lt;script&gt;" in html


def test_a_withheld_number_is_said_to_be_withheld() -> None:
    told = worked("how_many_left")
    name = next(key for key, each in told["results"].items() if each["main"])
    told["results"][name] |= {"value": None, "text": "no figure", "customary_text": "no figure"}
    told["cautions"] = [
        {"level": "stop", "text": "No.", "reason": "Why.", "source": "none", "hides": [name]}
    ]
    assert answer.WITHHELD in answer.answer_html(told)
    assert answer.brief(told, False) == "STOP: No."


def test_errors_name_field_and_row() -> None:
    told = answer.run("how_many_left", {"catches": ["60", "", "many", "3"]}, False)
    assert not told["ok"]
    assert told["errors"][0]["field"] == "catches"
    assert told["errors"][0]["place"] == 2
    assert "many" in told["errors"][0]["sentence"]


@pytest.mark.parametrize("name", NAMES)
def test_an_empty_form_holds_no_value(name: str) -> None:
    """Neither the worked example nor a usual value stands in a field."""
    calculator = find(name)
    html = answer.calculator_html(name, calculator.example())
    made = html[html.index("<form") : html.index("</form>")]
    boxes = re.findall(r"<input [^>]*>", made)
    assert not [one for one in boxes if 'type="radio"' not in one and " value=" in one]
    assert not [one for one in boxes if " checked" in one]
    assert all(
        chosen.startswith('value=""') for chosen in re.findall(r"<option ([^>]* selected)>", made)
    )
    hints = re.findall(r'placeholder="([^"]*)"', made)
    assert all(hint.startswith(f"{form.USUAL} ") for hint in hints)
    usual = [each for each in calculator.inputs if isinstance(each, Number) and not listed(each)]
    assert len(set(re.findall(r'name="(\w+)"[^>]*placeholder', made))) >= sum(
        each.usual is not None for each in usual
    )


def listed(each: Input) -> bool:
    return isinstance(each, Numbers)


def rows(each: Input, value: Any) -> Any:
    """Return a value as the form hands it in."""
    if isinstance(each, Numbers):
        return [str(one) for one in value]
    return value if isinstance(value, str) else str(value)


@pytest.mark.parametrize("name", NAMES)
def test_what_the_example_shows_typed_in_gives_the_answer_beside_it(name: str) -> None:
    calculator = find(name)
    texts = {
        each.name: rows(each, calculator.example()[each.name])
        for each in calculator.inputs
        if each.name in calculator.example()
    }
    told = answer.run(name, texts, False)
    assert told["ok"], told
    assert told["complete"]
    native = calculator.run(calculator.example()).as_dict()
    assert told["html"] == answer.answer_html(native, False)


@pytest.mark.parametrize("name", NAMES)
def test_an_empty_form_names_all_that_is_missing_and_no_number(name: str) -> None:
    needed = find(name).reading({}).missing
    told = answer.run(name, {each.name: "" for each in find(name).inputs}, False)
    assert told["complete"] is not bool(needed)
    if not needed:
        assert told["state"] != answer.YOURS
        return
    assert told["state"] == f"0 of {len(needed)} given"
    assert told["results"] == {}
    assert "answer-main" not in told["html"]
    assert re.findall(r'data-field="(\w+)"', told["html"]) == [each.name for each in needed]
    assert all(each.label in told["text"] for each in needed)
    assert told["next"] == needed[0].name or told["brief"].startswith("STOP")


LISTS = [(name, each) for name in NAMES for each in find(name).inputs if listed(each)]


@pytest.mark.parametrize(("name", "each"), LISTS, ids=[f"{n}-{each.name}" for n, each in LISTS])
def test_a_list_of_empty_rows_is_not_given(name: str, each: Input) -> None:
    told = answer.run(name, {each.name: ["", " "]}, False)
    assert told["ok"]
    assert told == answer.run(name, {}, False) | {"seconds": told["seconds"]}
    if each.needed and each.only_if is None:
        assert f'data-field="{each.name}"' in told["html"]


def stated(origins: dict[str, str]) -> str:
    """Return the words above an answer of "Fogging" with certain origins."""
    told = worked("fogging")
    for key, each in told["inputs"].items():
        each["origin"] = origins.get(key, "not given")
    return answer.state(told)


def test_an_answer_is_called_yours_only_where_something_was_given() -> None:
    assert stated({"fan": "usual", "wind": "usual"}) == "With usual values alone"
    assert stated({"fan": "given"}) == "Your answer"
    assert stated({"fan": "job"}) == "Your answer"
    assert stated({"fan": "equipment", "wind": "usual"}) == "Your answer, with 1 usual value"
    assert stated({"humidity": "given", "fan": "usual", "wind": "usual"}).endswith("2 usual values")


def test_text_and_page_name_the_origin_of_what_was_not_typed() -> None:
    given = find("fogging").example()
    result = find("fogging").run(given, False, {"humidity": "job", "eyewear": "equipment"})
    told = result.as_dict()
    text, html = answer.as_text(told, False), answer.answer_html(told)
    assert "Relative humidity: 75 % (job)" in text
    assert "(equipment)" in text
    assert "From the job (1)" in html
    assert "From your equipment (1)" in html
    bare = {key: given[key] for key in given if not find("fogging").reading({}).values[key]}
    assert "(usual)" in answer.as_text(find("fogging").run(bare).as_dict(), False)


@pytest.mark.parametrize(
    ("text", "converted"), [("30", "86"), ("-5.5", "22.1"), ("86 degF", "86"), ("x", "x"), ("", "")]
)
def test_convert_turns_typed_texts(text: str, converted: str) -> None:
    calculator = find("heat_in_suit")
    field = next(each for each in calculator.inputs if getattr(each, "unit", "") == "degC")
    made = answer.convert("heat_in_suit", {field.name: text}, True)
    assert made.get(field.name, "") == converted


def test_ids_are_unique_in_a_page() -> None:
    for name in NAMES:
        defaults = find(name).example()
        page = answer.calculator_html(name, defaults)
        page += (
            answer.calculator_html(name, defaults, "a_case")
            .replace("<svg", "<!--")
            .replace("</svg>", "-->")
        )
        ids = re.findall(r' id="([^"]+)"', re.sub(r"<template>.*?</template>|<!--.*?-->", "", page))
        assert len(ids) == len(set(ids))


CHART: dict[str, Any] = {
    "name": "fan",
    "title": "Fan & system",
    "alt": "Two lines cross",
    "x": {"label": "Flow", "unit": "L/s", "customary": "cfm", "low": 0, "high": None},
    "y": {"label": "Temperature", "unit": "degC", "customary": "degF", "low": None, "high": None},
    "series": [
        {"label": "b", "style": "band", "x": [0, 10], "y": [1, 2], "y2": [3, 4]},
        {"label": "l", "style": "line", "x": [0, 10], "y": [0, 30], "y2": []},
        {"label": "d", "style": "dashed", "x": [0, 10], "y": [30, 0], "y2": []},
        {"label": "p", "style": "points", "x": [5], "y": [15], "y2": []},
        {"label": "one", "style": "line", "x": [5], "y": [15], "y2": []},
        {"label": "none", "style": "line", "x": [], "y": [], "y2": []},
    ],
}


def numbers(svg: str) -> list[float]:
    """Return the numbers that label the axes."""
    texts = [each.text or "" for each in ET.fromstring(svg).iter() if each.tag.endswith("text")]
    return [float(text) for text in texts if re.fullmatch(r"-?[\d.]+", text)]


@pytest.mark.parametrize("medium", ["page", "print"])
@pytest.mark.parametrize("customary", [False, True])
def test_a_chart_is_whole_and_named(customary: bool, medium: chart.Medium) -> None:
    svg = chart.draw(CHART, customary, medium)
    root = ET.fromstring(svg)
    assert root.get("role") == "img"
    assert root.get("viewBox", "").startswith("0 0 360 ")
    assert "Fan &amp; system" in svg
    assert ("°F" in svg) is customary
    assert not re.search(r"\bnan\b", svg)
    assert max(numbers(svg)) >= (80 if customary else 30)
    if medium == "print":
        assert "var(" not in svg
        assert "currentColor" not in svg


def test_points_lie_where_the_axes_say() -> None:
    """The middle of the point stands at 15 of 30 up and 5 of 10 along."""
    svg = chart.draw(CHART, False)
    root = ET.fromstring(svg.replace(' xmlns="http://www.w3.org/2000/svg"', ""))
    lines = [
        each.get("d", "") for each in root.iter("path") if "2.75" in each.get("stroke-width", "")
    ]
    ends = [[float(n) for n in re.findall(r"-?[\d.]+", line)] for line in lines[:2]]
    marks = [each.get("d", "") for each in root.iter("path") if each.get("marker-start")]
    x, y = (float(n) for n in re.findall(r"-?[\d.]+", marks[0])[:2])
    assert x == pytest.approx((ends[0][0] + ends[0][2]) / 2, abs=0.1)
    assert y == pytest.approx((ends[0][1] + ends[0][3]) / 2, abs=0.1)


def test_print_lines_differ_without_colour() -> None:
    series = [
        {"label": str(i), "style": "line", "x": [0, 1], "y": [0, i], "y2": []} for i in range(4)
    ]
    looks = [look["dash"] for _, look in chart._looks(CHART | {"series": series}, "print")]
    assert len(set(looks)) == 4


def test_steps_in_customary_units_are_round() -> None:
    field = next(
        e for e in find("heat_in_suit").inputs if getattr(e, "unit", "") == "degC" and e.step
    )
    assert form._round_step(field, "degF") in {0.5, 1.0, 2.0, 5.0}

"""The directives that place a calculator, and its reference, in a page."""

from __future__ import annotations

import json
import sys
from collections.abc import Callable
from inspect import ismodule
from pathlib import Path
from typing import Any, ClassVar

from docutils import nodes
from docutils.parsers.rst import directives
from sphinx import addnodes
from sphinx.application import Sphinx
from sphinx.util.docutils import SphinxDirective
from sphinx.writers.html5 import HTML5Translator

import calc
from calc.catalogue import CALCULATORS, MOMENTS, find
from calc.declare import Calculator, Choice, Input, Number
from calc.declare.answers import echo
from calc.errors import InputError
from docs_build import places
from docs_build.bootstrap import ROOT
from docs_build.page.answer import calculator_html
from docs_build.sphinx_ext.nodes import calculator
from docs_build.sphinx_ext.sources import cite
from docs_build.strength import counted, published_checks


def note_calc(directive: SphinxDirective) -> None:
    """Make the page depend on the computing, so that a changed number rebuilds it."""
    for path in Path(calc.__file__).parent.rglob("*"):
        if path.suffix in {".py", ".toml", ".txt"}:
            directive.env.note_dependency(str(path))


def placed(html: Callable[[], str]) -> type[SphinxDirective]:
    """Return a directive for what stands on pages alone, made from the computing's own tables."""

    class Placed(SphinxDirective):
        """A part of the phone app; pages only."""

        def run(self) -> list[nodes.Node]:
            """Return the part, and make the page depend on what it is made from."""
            note_calc(self)
            return [nodes.raw("", html(), format="html")]

    return Placed


def case_inputs(name: str, calculator_name: str) -> dict[str, Any]:
    """Return the inputs that a demo case holds for a calculator."""
    case = json.loads((ROOT / "demo_cases" / name / "case.json").read_text(encoding="utf-8"))
    inputs: dict[str, Any] = case["inputs"][calculator_name]
    return inputs


class CalculatorDirective(SphinxDirective):
    """Place a calculator, worked through with its defaults or with a demo case."""

    required_arguments = 1
    option_spec: ClassVar = {"case": directives.unchanged}

    def run(self) -> list[nodes.Node]:
        """Compute and return the node, with its text as children for search and other writers."""
        note_calc(self)
        name, case = self.arguments[0], self.options.get("case", "")
        try:
            found = find(name)
            given = found.example()
            if case:
                self.env.note_dependency(str(ROOT / "demo_cases" / case / "case.json"))
                given = case_inputs(case, name)
            result = found.run(given)
        except (InputError, OSError, KeyError) as error:
            raise self.error(f"calculator {name}: {error}") from error
        told = result.as_dict()
        node = calculator(
            calculator=name,
            case=case,
            given=given,
            description=found.describe(),
            result=told,
            ids=[f"calc-{name}"],
            classes=["calculator"],
        )
        node += nodes.rubric("", found.title)
        node += nodes.paragraph("", found.purpose)
        for caution in told["cautions"]:
            node += nodes.paragraph("", f"{caution['text']} {caution['reason']}")
        node += _terms([(e["label"], e["text"]) for e in told["inputs"].values()])
        node += _terms([(e["label"], e["text"]) for e in told["results"].values() if "text" in e])
        return [node]


def _terms(pairs: list[tuple[str, str]]) -> nodes.definition_list:
    listed = nodes.definition_list()
    for label, text in pairs:
        listed += nodes.definition_list_item(
            "", nodes.term("", label), nodes.definition("", nodes.paragraph("", text))
        )
    return listed


class ListDirective(SphinxDirective):
    """``calculator-list``: every calculator as a row, grouped by the moment that it serves."""

    def run(self) -> list[nodes.Node]:
        """Return a heading and a list for each moment."""
        note_calc(self)
        here = self.env.current_document.docname
        made: list[nodes.Node] = []
        for moment, group in MOMENTS.items():
            made.append(nodes.rubric("", moment))
            listed = nodes.bullet_list(classes=["calculator-list"])
            for each in group:
                page = places.page_of(each.name)
                link = addnodes.pending_xref(
                    "",
                    nodes.inline("", each.title),
                    refdomain="std",
                    reftype="doc",
                    refexplicit=True,
                    reftarget=f"/{page}",
                    refdoc=here,
                    refwarn=True,
                )
                row = nodes.paragraph("", "", link, nodes.Text(f": {each.purpose}"))
                listed += nodes.list_item("", row)
            made.append(listed)
        return made


class ReferencesDirective(SphinxDirective):
    """``calculator-references``: the generated reference of every calculator, a section each."""

    def run(self) -> list[nodes.Node]:
        """Return the sections in the order of the work."""
        note_calc(self)
        made: list[nodes.Node] = []
        for each in CALCULATORS.values():
            section = nodes.section("", nodes.title("", each.title), ids=[f"reference-{each.name}"])
            self.state.document.note_explicit_target(section)
            section += reference(each)
            made.append(section)
        return made


def reference(found: Calculator) -> list[nodes.Node]:
    """Return formula, ranges, assumptions, sources and checks as ordinary nodes."""
    told = found.describe()
    made: list[nodes.Node] = [_heading("What it computes"), nodes.paragraph("", told["purpose"])]
    if told["formula"]:
        made.append(_heading("Formulas"))
    for line in told["formula"]:
        made.append(
            nodes.paragraph("", "", nodes.Text(line["meaning"] + " "), cite(line["source"]))
        )
        block = nodes.math_block(line["latex"], line["latex"])
        block["number"] = None
        block["nowrap"] = False
        made.append(block)
    made += [_heading("Inputs and the limits they have"), _limits(found)]
    if told["assumptions"]:
        made.append(_heading("What must hold"))
        items = nodes.bullet_list()
        for text in told["assumptions"]:
            items += nodes.list_item("", nodes.paragraph("", text))
        made.append(items)
    return [*made, _heading("Sources"), _sources(told), _checks(found.name)]


def _heading(text: str) -> nodes.Node:
    return nodes.rubric("", text)


def _limits(found: Calculator) -> nodes.Node:
    listed = nodes.definition_list()
    for each in found.inputs:
        detail = nodes.paragraph("", each.meaning + " ")
        if isinstance(each, Number):
            detail += [nodes.Text(f"Taken: {each.allowed()} "), cite(each.source)]
        elif isinstance(each, Choice):
            options = "; ".join(option.label for option in each.options)
            detail += nodes.Text(f"One of: {options}.")
        if each.usual_source:
            detail += [nodes.Text(f" Usual: {_usual(each)} "), cite(each.usual_source)]
        listed += nodes.definition_list_item(
            "", nodes.term("", each.label), nodes.definition("", detail)
        )
    return listed


def _usual(each: Input) -> str:
    return str(echo(each, each.standing, "usual")["text"])


def _sources(told: dict[str, Any]) -> nodes.Node:
    items = nodes.bullet_list()
    for each in told["sources"]:
        items += nodes.list_item("", nodes.paragraph("", "", cite(each["key"])))
    return items


def _checks(name: str) -> nodes.Node:
    behind = modules_behind(name)
    told = counted(
        check
        for check in published_checks()
        if check.get("calculator") == name or check.get("call", "").rpartition(".")[0] in behind
    )
    return nodes.paragraph(
        "",
        "Values from outside that the tests hold this computing to, natively and in the page: "
        f"{told or 'none printed'}.",
    )


def modules_behind(name: str) -> set[str]:
    """Return the modules of its own part that a calculator computes with, by what they import."""
    found = find(name)
    seen: set[str] = set()
    todo = {found.core.__module__}
    while todo:
        module = todo.pop()
        seen.add(module)
        held = vars(sys.modules[module]).values()
        named = {
            each.__name__ if ismodule(each) else each.__module__
            for each in held
            if ismodule(each) or isinstance(getattr(each, "__module__", None), str)
        }
        todo |= {one for one in named if one.startswith(f"calc.{found.part}.")} - seen
    return seen


def visit_html(self: HTML5Translator, node: calculator) -> None:
    """Write the live form with its worked answer."""
    self.body.append(calculator_html(node["calculator"], node["given"], node["case"]))
    raise nodes.SkipNode


def visit_text(self: Any, node: calculator) -> None:
    """Let the children speak."""


def depart_text(self: Any, node: calculator) -> None:
    """Nothing to close."""


def setup(app: Sphinx) -> None:
    """Register node and directives."""
    plain = (visit_text, depart_text)
    app.add_node(calculator, html=(visit_html, depart_text), text=plain, man=plain)
    app.add_directive("calculator", CalculatorDirective)
    app.add_directive("calculator-list", ListDirective)
    app.add_directive("calculator-references", ReferencesDirective)

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
from sphinx.application import Sphinx
from sphinx.util.docutils import SphinxDirective
from sphinx.writers.html5 import HTML5Translator

import calc
from calc.catalogue import find
from calc.errors import InputError
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
            given = found.defaults()
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


class ReferenceDirective(SphinxDirective):
    """Place the generated reference of a calculator."""

    required_arguments = 1

    def run(self) -> list[nodes.Node]:
        """Return formula, ranges, assumptions, sources and checks as ordinary nodes."""
        note_calc(self)
        try:
            told = find(self.arguments[0]).describe()
        except InputError as error:
            raise self.error(str(error)) from error
        made: list[nodes.Node] = [self._heading("What it computes")]
        made.append(nodes.paragraph("", told["purpose"]))
        if told["formula"]:
            made.append(self._heading("Formulas"))
        for line in told["formula"]:
            made.append(
                nodes.paragraph("", "", nodes.Text(line["meaning"] + " "), cite(line["source"]))
            )
            block = nodes.math_block(line["latex"], line["latex"])
            block["number"] = None
            block["nowrap"] = False
            made.append(block)
        made += [self._heading("Inputs and the limits they have"), self._limits(told)]
        if told["assumptions"]:
            made.append(self._heading("What must hold"))
            items = nodes.bullet_list()
            for text in told["assumptions"]:
                items += nodes.list_item("", nodes.paragraph("", text))
            made.append(items)
        made += [self._heading("Sources"), self._sources(told), self._checks(told["name"])]
        return made

    def _heading(self, text: str) -> nodes.Node:
        return nodes.rubric("", text)

    def _limits(self, told: dict[str, Any]) -> nodes.Node:
        listed = nodes.definition_list()
        for each in told["inputs"]:
            detail = nodes.paragraph("", each["meaning"] + " ")
            if "why" in each:
                allowed = next(
                    one.allowed() for one in find(told["name"]).inputs if one.name == each["name"]
                )
                detail += nodes.Text(f"Taken: {allowed} ")
                detail += cite(each["source"])
            elif each.get("options"):
                options = "; ".join(option["label"] for option in each["options"])
                detail += nodes.Text(f"One of: {options}.")
            listed += nodes.definition_list_item(
                "", nodes.term("", each["label"]), nodes.definition("", detail)
            )
        return listed

    def _sources(self, told: dict[str, Any]) -> nodes.Node:
        items = nodes.bullet_list()
        for each in told["sources"]:
            items += nodes.list_item("", nodes.paragraph("", "", cite(each["key"])))
        return items

    def _checks(self, name: str) -> nodes.Node:
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
    app.add_directive("calculator-reference", ReferenceDirective)

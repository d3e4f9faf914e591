"""Exercises with answers, numbered through the book."""

from __future__ import annotations

import re
from typing import Any

from docutils import nodes
from sphinx.application import Sphinx
from sphinx.environment import BuildEnvironment
from sphinx.util.docutils import SphinxDirective
from sphinx.writers.html5 import HTML5Translator

from docs_build.sphinx_ext.nodes import answer, exercise, trainer_note


class ExerciseDirective(SphinxDirective):
    """An exercise; the argument names it for its answer."""

    required_arguments = 1
    has_content = True
    node_class: type[nodes.Element] = exercise

    def run(self) -> list[nodes.Node]:
        """Return the node with its parsed content."""
        ident = self.arguments[0]
        node = self.node_class(ident=ident, number=0)
        node["ids"] = [f"{self.node_class.__name__}-{ident}"]
        node += self.parse_content_to_nodes()
        return [node]


class AnswerDirective(ExerciseDirective):
    """The answer to the exercise of the same name."""

    node_class = answer


class TrainerNoteDirective(SphinxDirective):
    """A word to the trainer, where it is needed."""

    has_content = True

    def run(self) -> list[nodes.Node]:
        """Return the node with its parsed content."""
        return [trainer_note("", *self.parse_content_to_nodes())]


class SheetDirective(SphinxDirective):
    """A fresh exercise sheet with its key, both from a seed."""

    required_arguments = 1

    def run(self) -> list[nodes.Node]:
        """Return what the command ``exercises`` prints, one level of headings lower."""
        from docs_build import exercises
        from docs_build.sphinx_ext.calculators import note_calc

        note_calc(self)
        text = re.sub("^#", "##", exercises.markdown(int(self.arguments[0])), flags=re.MULTILINE)
        return self.parse_text_to_nodes(text, allow_section_headings=True)


def _found(env: BuildEnvironment) -> dict[str, list[str]]:
    """Return the exercises of each page in their order, kept with the environment."""
    if not hasattr(env, "exercises"):
        env.exercises = {}  # type: ignore[attr-defined]
    found: dict[str, list[str]] = env.exercises
    return found


def _collect(app: Sphinx, doctree: nodes.document) -> None:
    idents = [node["ident"] for node in doctree.findall(exercise)]
    _found(app.env)[app.env.current_document.docname] = idents


def _purge(app: Sphinx, env: BuildEnvironment, docname: str) -> None:
    _found(env).pop(docname, None)


def _merge(app: Sphinx, env: BuildEnvironment, docnames: list[str], other: Any) -> None:
    for docname in docnames:
        _found(env)[docname] = _found(other).get(docname, [])


def _number(app: Sphinx, env: BuildEnvironment) -> list[str]:
    """Count the exercises in the order of the contents."""
    order: list[str] = []

    def walk(docname: str) -> None:
        if docname not in order:
            order.append(docname)
            for child in env.toctree_includes.get(docname, []):
                walk(child)

    walk(env.config.root_doc)
    numbers: dict[str, int] = {}
    for docname in order:
        for ident in _found(env).get(docname, []):
            numbers[ident] = len(numbers) + 1
    changed = numbers != getattr(env, "exercise_numbers", None)
    env.exercise_numbers = numbers  # type: ignore[attr-defined]
    return [docname for docname in order if _found(env).get(docname)] if changed else []


def _apply(app: Sphinx, doctree: nodes.document, docname: str) -> None:
    numbers = getattr(app.env, "exercise_numbers", {})
    for kind in (exercise, answer):
        for node in doctree.findall(kind):
            node["number"] = numbers.get(node["ident"], 0)


def visit_exercise(self: HTML5Translator, node: nodes.Element) -> None:
    """Open the exercise."""
    self.body.append(
        f'<div class="exercise" id="{node["ids"][0]}">'
        f'<p class="exercise-title">Exercise {node["number"]}</p>'
    )


def depart_exercise(self: HTML5Translator, node: nodes.Element) -> None:
    """Close the exercise."""
    self.body.append("</div>")


def visit_answer(self: HTML5Translator, node: nodes.Element) -> None:
    """Open the answer, folded away."""
    self.body.append(
        f'<details class="answer" id="{node["ids"][0]}"><summary>Answer {node["number"]}</summary>'
    )


def depart_answer(self: HTML5Translator, node: nodes.Element) -> None:
    """Close the answer."""
    self.body.append("</details>")


def visit_trainer_note(self: HTML5Translator, node: nodes.Element) -> None:
    """Open the note, folded away."""
    self.body.append('<details class="answer"><summary>For the trainer</summary>')


def _plain(self: Any, node: nodes.Element) -> None:
    """Let the children speak."""


def setup(app: Sphinx) -> None:
    """Register nodes and directives."""
    plain = (_plain, _plain)
    app.add_node(exercise, html=(visit_exercise, depart_exercise), text=plain, man=plain)
    app.add_node(answer, html=(visit_answer, depart_answer), text=plain, man=plain)
    noted = (visit_trainer_note, depart_answer)
    app.add_node(trainer_note, html=noted, text=plain, man=plain)
    app.add_directive("exercise", ExerciseDirective)
    app.add_directive("answer", AnswerDirective)
    app.add_directive("trainer-note", TrainerNoteDirective)
    app.add_directive("exercise-sheet", SheetDirective)
    app.connect("doctree-read", _collect)
    app.connect("env-purge-doc", _purge)
    app.connect("env-merge-info", _merge)
    app.connect("env-updated", _number)
    app.connect("doctree-resolved", _apply)

"""Nodes of the book that Sphinx does not have, for every writer to render."""

from __future__ import annotations

from docutils import nodes

ADMONITIONS = {
    "danger": "stop",
    "error": "stop",
    "warning": "caution",
    "caution": "caution",
    "attention": "caution",
    "important": "note",
    "note": "note",
    "hint": "note",
    "tip": "note",
    "seealso": "note",
}
"""Level of each kind of admonition; its word is that of a calculator's caution."""


class calculator(nodes.General, nodes.Element):  # noqa: N801 - docutils names nodes in lower case
    """A calculator in a page.

    Attributes: ``calculator`` (name), ``case`` (name of the demo case or ""), ``given`` (the inputs
    as passed), ``description`` (``Calculator.describe()``), ``result`` (``Result.as_dict()``).
    """


class exercise(nodes.General, nodes.Element):  # noqa: N801
    """An exercise; attributes ``ident`` and ``number`` (counted over the book)."""


class answer(nodes.General, nodes.Element):  # noqa: N801
    """The answer to the exercise with the same ``ident`` and ``number``.

    A page folds it away; the PDF collects all answers at the back of the trainer's copy.
    """


class trainer_note(nodes.General, nodes.Element):  # noqa: N801
    """A word to the trainer: folded away in a page, at the back of the trainer's copy on paper."""

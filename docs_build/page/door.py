"""The door between the page's worker and the handbook: one JSON text in, one out."""

from __future__ import annotations

import json
from typing import Any

from calc import tables
from calc.catalogue import CALCULATORS
from calc.sources import bibliography
from docs_build.page import answer, jobs


def call(text: str) -> str:
    """Answer one question of the page: ``run``, ``convert`` or one about a ``job``."""
    asked = json.loads(text)
    return json.dumps(_answered(asked), allow_nan=False)


def _answered(asked: dict[str, Any]) -> dict[str, Any]:
    if asked["op"] == "run":
        return answer.run(asked["name"], asked["texts"], asked["customary"], asked.get("origins"))
    if asked["op"] == "convert":
        return answer.convert(asked["name"], asked["texts"], asked["customary"])
    if asked["op"] == "job":
        return jobs.call(asked)
    raise ValueError(f"no such question: {asked['op']}")


def warm() -> None:
    """Read every file and run every calculator once.

    The memory snapshot that a device keeps holds no file system, so all that is read later must
    have been read before it is taken.
    """
    bibliography()
    for name in tables.names():
        tables.load(name)
    for name, calculator in CALCULATORS.items():
        answer.run(name, {}, False)
        example = calculator.run(calculator.example()).as_dict()
        for customary in (False, True):
            answer.answer_html(example, customary)
        answer.convert(name, {each.name: "1" for each in calculator.inputs}, True)
    jobs.warm()

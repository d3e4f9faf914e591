"""The door for scripts: ``python -m calc list | describe NAME | run NAME | …``.

``run`` reads a JSON object of inputs on standard input and writes the result as JSON;
``run NAME --example`` works the example; ``influence`` tells what would change the answer, and
``ask`` what to ask next; ``schema`` writes the JSON Schema of the job file. Bad or missing input
ends with exit status 2 and a JSON object ``{"error": {...}}`` on standard output.
"""

from __future__ import annotations

import json
import os
import sys
from collections.abc import Sequence
from typing import Any

from calc.asking import ask
from calc.catalogue import CALCULATORS, find
from calc.clients.job.json_schema import schema
from calc.errors import InputError, shown
from calc.influence import influence

USAGE = (
    "usage: python -m calc list | describe NAME | run NAME [--example] | influence NAME | "
    "ask NAME | schema  (run, influence, ask: JSON object on standard input)"
)


def main(arguments: Sequence[str]) -> int:
    """Run one command and return its exit status."""
    try:
        answer = _answer(list(arguments))
    except InputError as error:
        _write({"error": error.as_dict()})
        print(error.sentence, file=sys.stderr)
        return 2
    _write(answer)
    return 0


def _answer(arguments: list[str]) -> Any:
    match arguments:
        case ["list"]:
            return list(CALCULATORS)
        case ["describe", name]:
            return find(name).describe()
        case ["run", name]:
            return find(name).run(_read_inputs()).as_dict()
        case ["run", name, "--example"]:
            found = find(name)
            return found.run(found.example()).as_dict()
        case ["influence", name]:
            return influence(find(name), _read_inputs()).as_dict()
        case ["ask", name]:
            return ask(find(name), _read_inputs()).as_dict()
        case ["schema"]:
            return schema()
    raise InputError("command", " ".join(arguments), USAGE.partition(": ")[2], USAGE)


def _read_inputs() -> dict[str, Any]:
    text = sys.stdin.buffer.read().decode("utf-8", errors="replace")
    allowed = "a JSON object of input names and values"
    try:
        given = json.loads(text or "{}")
    except (ValueError, RecursionError) as error:
        raise InputError(
            "standard input",
            text,
            allowed,
            f"Standard input is no JSON ({error}); allowed is {allowed}.",
        ) from None
    if not isinstance(given, dict):
        raise InputError(
            "standard input",
            text,
            allowed,
            f"Standard input holds “{shown(text)}”; allowed is {allowed}.",
        )
    return given


def _write(answer: Any) -> None:
    sys.stdout.reconfigure(encoding="utf-8")  # type: ignore[union-attr]
    json.dump(answer, sys.stdout, ensure_ascii=False, allow_nan=False, indent=2)
    sys.stdout.write("\n")


if __name__ == "__main__":
    try:
        status = main(sys.argv[1:])
        sys.stdout.flush()
    except BrokenPipeError:
        # The reader, such as ``head``, had enough; nothing is left to tell it.
        os.dup2(os.open(os.devnull, os.O_WRONLY), sys.stdout.fileno())
        status = 0
    raise SystemExit(status)

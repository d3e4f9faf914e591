"""Check values as data: how they are read and computed, natively and in the page.

Standard library and ``calc`` only, so that the browser tests can send this file into the page.
"""

from __future__ import annotations

import importlib
from typing import Any


def compute(check: dict[str, Any]) -> Any:
    """Run the call or the calculator that a check names."""
    if "call" in check:
        module, _, name = check["call"].rpartition(".")
        return getattr(importlib.import_module(module), name)(**check.get("args", {}))
    from calc.catalogue import find

    return find(check["calculator"]).run(check["inputs"]).values


def part(answer: Any, name: str) -> Any:
    """Return one named part of an answer: key, attribute, or the bare value itself."""
    if isinstance(answer, (int, float)) and name == "value":
        return answer
    if hasattr(answer, "keys"):
        return answer[name]
    if hasattr(answer, name):
        return getattr(answer, name)
    if name == "value":
        return answer
    return answer[int(name)]


def faults(check: dict[str, Any]) -> list[str]:
    """Compare an answer with what is printed; return a sentence for each part that is off."""
    answer = compute(check)
    found = []
    for name, printed in check["expect"].items():
        got = part(answer, name)
        tolerance = check.get("tolerance", {}).get(name, 0)
        many = printed if isinstance(printed, list) else [printed]
        values = list(got) if isinstance(printed, list) else [got]
        if len(many) != len(values):
            found.append(f"{name}: {len(values)} values, printed are {len(many)}")
            continue
        for one, value in zip(many, values):  # noqa: B905 - lengths are compared above
            if isinstance(one, str) or value is None:
                off = one != ("none" if value is None else value)
            else:
                off = not abs(value - one) <= tolerance + 1e-12 * max(abs(one), 1)
            if off:
                found.append(f"{name}: computed {value!r}, printed {one!r}, tolerance {tolerance}")
    return found

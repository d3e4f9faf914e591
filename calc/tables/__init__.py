"""The handbook's numbers: data files with a source on every row.

Each ``NAME.toml`` beside this module holds one table: ``title``, ``columns`` (name to label, unit,
digits) and a list ``row``, each row with ``source`` (a key of the bibliography) and, where the
source is known only by hearsay, its own ``mark``. A cell may hold the text of a rule as
``{rule}`name key key```, so that a rule of the book has one wording here too.
"""

from __future__ import annotations

import re
import tomllib
from collections.abc import Mapping
from functools import cache
from pathlib import Path
from types import MappingProxyType
from typing import Any

from calc import units

HERE = Path(__file__).parent
_RULE = re.compile(r"\{rule\}`(\S+) ([^`]+)`")


@cache
def load(name: str) -> Mapping[str, Any]:
    """Return the table ``name`` as read from its file, checked for a source on every row."""
    path = HERE / f"{name}.toml"
    if not path.is_file():
        raise LookupError(f"there is no table called {name!r} in calc/tables")
    table = tomllib.loads(path.read_text(encoding="utf-8"))
    for number, row in enumerate(table["row"], start=1):
        if not row.get("source"):
            raise LookupError(f"calc/tables/{name}.toml: row {number} has no source")
        for column, value in row.items():
            if isinstance(value, str) and "{rule}" in value:
                row[column] = _RULE.sub(_rule_text, value)
    return MappingProxyType(table)


def _rule_text(found: re.Match[str]) -> str:
    # rules read their numbers from tables, so the import waits until both stand
    from calc import rules

    return rules.text(found[1], *found[2].split())


def names() -> tuple[str, ...]:
    """Return the names of all tables, in alphabetical order."""
    return tuple(sorted(path.stem for path in HERE.glob("*.toml")))


def rows(name: str) -> tuple[Mapping[str, Any], ...]:
    """Return the rows of a table."""
    return tuple(MappingProxyType(row) for row in load(name)["row"])


def row(name: str, key: str) -> Mapping[str, Any]:
    """Return the row of a table whose ``key`` is ``key``."""
    for candidate in rows(name):
        if candidate.get("key") == key:
            return candidate
    raise LookupError(f"calc/tables/{name}.toml has no row with key {key!r}")


def cell_text(column: Mapping[str, Any], value: Any) -> str:
    """Write one cell with its unit, the customary one behind in parentheses."""
    if value is None:
        return "no figure"
    if isinstance(value, list):
        low, high = (cell_text({**column, "customary": ""}, end) for end in value)
        return f"{low} to {high}"
    if isinstance(value, bool) or not isinstance(value, int | float):
        return str(value)
    unit = column.get("unit", "")
    text = f"{units.show(value, column.get('digits', 0))} {units.label(unit)}".strip()
    other = column.get("customary", "")
    if other and other != unit:
        there = units.convert(value, unit, other)
        digits = column.get("customary_digits", column.get("digits", 0))
        text += f" ({units.show(there, digits)} {units.label(other)})"
    return text

"""Safe pieces of Typst source: escaped text, string literals, calls."""

from __future__ import annotations

import re

# Every sign that can mean something in Typst markup, wherever it stands.
_SPECIAL = re.compile(r"([\\#*_`$\[\]<>@=+\-/~\"'.:;])")
_SPACE = re.compile(r"\s+")


def text(plain: str) -> str:
    """Return plain text as markup that shows exactly this text."""
    # A space that must not break survives; every other run of white space is one space.
    kept = plain.replace("\u00a0", "\ue000").replace("\u202f", "\ue001")
    escaped = _SPECIAL.sub(r"\\\1", _SPACE.sub(" ", kept))
    return escaped.replace("\ue000", "\u00a0").replace("\ue001", "\u202f")


def string(value: str) -> str:
    """Return a Typst string literal."""
    escaped = value.replace("\\", "\\\\").replace('"', '\\"').replace("\n", "\\n")
    return f'"{escaped.replace(chr(9), "    ").replace(chr(13), "")}"'


def value(given: str | bool | int | float | None) -> str:
    """Return a Python value as a Typst literal; text becomes a string."""
    if given is None:
        return "none"
    if isinstance(given, bool):
        return "true" if given else "false"
    return string(given) if isinstance(given, str) else repr(given)


def call(name: str, *contents: str, **options: str | bool | int | float | None) -> str:
    """Return ``#name(option: value)[content][content];`` - the semicolon ends the expression."""
    inside = ", ".join(
        f"{key.replace('_', '-')}: {value(option)}" for key, option in options.items()
    )
    blocks = "".join(f"[{content}]" for content in contents)
    return f"#{name}({inside}){blocks};" if inside or not blocks else f"#{name}{blocks};"


def block(name: str, *contents: str, **options: str | bool | int | float | None) -> str:
    """Return a call that stands as a block of its own."""
    return f"\n\n{call(name, *contents, **options)}\n\n"


def anchor(key: str) -> str:
    """Return an invisible place that links can point to."""
    return f"#anchor({string(key)});"


def link(key: str, content: str, page: bool = False) -> str:
    """Return a link inside the book, with the page it leads to where asked."""
    return f"#xref({string(key)}, page: {value(page)})[{content}];"

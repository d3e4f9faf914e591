"""How a field of the job record is declared: the words, the limits, who may see it."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Any, Literal

Kind = Literal[
    "text",
    "number",
    "count",
    "choice",
    "date",
    "moment",
    "texts",
    "numbers",
    "counts",
    "values",
    "typed",
]
"""``moment`` is a date with time and zone; ``texts``, ``numbers`` and ``counts`` are lists;
``values`` maps input names to plain values; ``typed`` maps calculator names to input names to what
was typed."""

NUMERIC = {"number", "count", "numbers", "counts"}
"""Kinds that have a unit and limits."""

Share = Literal["open", "client", "private"]
"""``open`` may stand in an open record, ``client`` in a document for the client; ``private`` stays
on the device and in the exported file."""


@dataclass(frozen=True, kw_only=True, slots=True)
class Field:
    """One field of the record.

    ``low`` and ``high`` are in ``unit`` and included; ``longest`` is in signs; ``most`` is how many
    entries a list or a map takes. ``health`` marks what says something
    about a person's health: it stays out of links and documents and can be wiped alone.
    """

    name: str
    label: str
    meaning: str
    kind: Kind
    unit: str = ""
    customary: str = ""
    low: float = 0
    high: float = 0
    longest: int = 200
    lines: bool = False
    pattern: str = ""
    pattern_words: str = ""
    most: int = 0
    options: tuple[tuple[str, str], ...] = ()
    required: bool = False
    health: bool = False
    share: Share = "private"

    def allowed(self) -> str:
        """Return what is allowed, in words."""
        if self.kind in NUMERIC:
            return f"{self._what()} from {self.low:g} to {self.high:g} {self.unit}".strip()
        if self.kind == "choice":
            return "one of " + ", ".join(value for value, _ in self.options)
        return _WORDS[self.kind].format(
            longest=self.longest, most=self.most
        ) + self.pattern_words * (self.kind == "text")

    def _what(self) -> str:
        if self.kind in {"numbers", "counts"}:
            whole = "whole numbers" if self.kind == "counts" else "numbers"
            return f"a list of up to {self.most} {whole}"
        return "a whole number" if self.kind == "count" else "a number"

    def as_dict(self) -> dict[str, Any]:
        """JSON form, for the form in the page."""
        made: dict[str, Any] = {
            "name": self.name,
            "label": self.label,
            "meaning": self.meaning,
            "kind": self.kind,
            "required": self.required,
            "health": self.health,
            "share": self.share,
            "allowed": self.allowed(),
        }
        if self.most:
            made["most"] = self.most
        if self.kind in NUMERIC:
            made |= {"unit": self.unit, "customary": self.customary or self.unit}
            made |= {"low": self.low, "high": self.high}
        if self.kind == "text":
            made |= {"longest": self.longest, "lines": self.lines, "pattern": self.pattern}
        if self.kind == "choice":
            made["options"] = [{"value": value, "label": label} for value, label in self.options]
        return made


_WORDS = {
    "text": "text of up to {longest} signs",
    "date": "a date such as 2026-09-15",
    "moment": "a date with time and zone such as 2026-09-15T18:30+02:00",
    "texts": "a list of up to {most} texts of up to {longest} signs",
    "values": "up to {most} names, each with a number, a text or a list of these",
    "typed": "up to {most} calculator names, each with its inputs as typed",
}


@dataclass(frozen=True, kw_only=True, slots=True)
class Section:
    """A group of fields; ``most`` above 0 makes it a list of such groups.

    The section with the empty name stands at the top of the file.
    """

    name: str
    label: str
    meaning: str
    fields: tuple[Field, ...]
    most: int = 0

    def field(self, name: str) -> Field | None:
        """Return a field by name, or None."""
        return next((each for each in self.fields if each.name == name), None)

    def as_dict(self) -> dict[str, Any]:
        """JSON form, for the form in the page."""
        return {
            "name": self.name,
            "label": self.label,
            "meaning": self.meaning,
            "many": self.most > 0,
            "most": self.most,
            "fields": [each.as_dict() for each in self.fields],
        }

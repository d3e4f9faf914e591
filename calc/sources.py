"""The bibliography: every number's source, under a stable key.

The data stand in ``calc/tables/sources/*.toml``, one file a subject, keys unique over all of them.
"""

from __future__ import annotations

import tomllib
from collections.abc import Mapping
from dataclasses import dataclass
from functools import cache
from types import MappingProxyType

from calc.tables import HERE

KINDS = {
    "published": "published",
    "second-hand": "published, read second-hand",
    "common-practice": "common practice",
    "from-memory": "from memory, check",
    "reasoned": "our own reasoning",
}
"""How far a source carries, from the strongest to the weakest, as a reader sees it.

``published``: the text itself was read.  ``second-hand``: a published text, read as another work
quotes it.  ``common-practice``: a fact of the trade without a source.  ``from-memory``: recalled,
to be checked.  ``reasoned``: derived or suggested here, from the sources named in its text.
"""


@dataclass(frozen=True, slots=True)
class Source:
    """One entry of the bibliography."""

    key: str
    kind: str
    text: str
    short: str
    where: str = ""

    @property
    def mark(self) -> str:
        """Words that tell the reader how far the source carries."""
        return KINDS[self.kind]

    def as_dict(self) -> dict[str, str]:
        """JSON form."""
        return {
            "key": self.key,
            "kind": self.kind,
            "mark": self.mark,
            "short": self.short,
            "text": self.text,
            "where": self.where,
        }


@cache
def bibliography() -> Mapping[str, Source]:
    """Return all sources by key, sorted.

    Raises
    ------
    LookupError
        for a key that stands in two files, an unknown kind or an entry without text
    """
    found: dict[str, Source] = {}
    for path in sorted((HERE / "sources").glob("*.toml")):
        for key, entry in tomllib.loads(path.read_text(encoding="utf-8")).items():
            if key in found:
                raise LookupError(f"source {key!r} stands twice, again in {path.name}")
            if entry.get("kind") not in KINDS or not entry.get("text") or not entry.get("short"):
                raise LookupError(
                    f"source {key!r} in {path.name} lacks a known kind, short or text"
                )
            found[key] = Source(key=key, **entry)
    return MappingProxyType(dict(sorted(found.items())))


def source(key: str) -> Source:
    """Return the source with this key."""
    try:
        return bibliography()[key]
    except KeyError:
        raise LookupError(f"no source with key {key!r} in calc/tables/sources") from None

"""The bibliography: every number's source, under a stable key.

The data stand in ``calc/tables/sources/*.toml``, one file a subject, keys unique over all of them.
"""

from __future__ import annotations

import re
import tomllib
from collections.abc import Mapping
from dataclasses import dataclass
from functools import cache
from types import MappingProxyType

from calc.tables import HERE

KINDS = {
    "read-whole": "read whole",
    "read-abstract": "abstract read",
    "agency-page": "agency page",
    "other-page": "other page",
    "second-hand": "second-hand",
    "common-practice": "common practice",
    "from-memory": "from memory, check",
    "reasoned": "our reasoning",
}
"""How far a source carries, from the strongest to the weakest, as a reader sees it.

``read-whole``: the text, or the whole of the section, table or data set that is cited, was read.
``read-abstract``: of a longer work only the abstract, summary, highlights, opening or a part was
read.  ``agency-page``: a page of an agency or institution on what it answers for.  ``other-page``:
any other page: a web page, news, a town, a firm, one person.  ``second-hand``: in print, read as
another work quotes it.  ``common-practice``: a fact of the trade without a source.
``from-memory``: recalled, to be checked.  ``reasoned``: derived or suggested here, from the sources
named in its text.
"""

READ = ("read-whole", "read-abstract", "agency-page", "other-page")
"""The kinds whose own words were read."""

# A short name that says it already gets no second word; what is only recalled always gets it.
_SAID = {
    "read-abstract": re.compile(r"\babstract\b"),
    "agency-page": re.compile(r"\bpages?\b"),
    "other-page": re.compile(r"\bpages?\b"),
    "second-hand": re.compile(r"\bsecond-hand\b"),
    "common-practice": re.compile(r"\bpractice\b"),
    "reasoned": re.compile(r"\bours?\b"),
}


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

    @property
    def beside(self) -> str:
        """The mark as it stands beside the short name; empty where that name says it already.

        What was read whole needs no word.
        """
        said = _SAID.get(self.kind)
        return "" if self.kind == "read-whole" or (said and said.search(self.short)) else self.mark

    def cited(self, where: str = "") -> str:
        """Return short name, place and mark as they stand in a sentence."""
        named = ", ".join(filter(None, (self.short, where or self.where)))
        return f"{named} – {self.beside}" if self.beside else named

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
            if entry.get("kind") not in KINDS:
                raise LookupError(
                    f"source {key!r} in {path.name} is of the kind {entry.get('kind')!r}; "
                    f"a kind is one of {', '.join(KINDS)}"
                )
            if not entry.get("text") or not entry.get("short"):
                raise LookupError(f"source {key!r} in {path.name} lacks short or text")
            found[key] = Source(key=key, **entry)
    return MappingProxyType(dict(sorted(found.items())))


def source(key: str) -> Source:
    """Return the source with this key."""
    try:
        return bibliography()[key]
    except KeyError:
        raise LookupError(f"no source with key {key!r} in calc/tables/sources") from None

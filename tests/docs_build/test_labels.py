"""Labels that were made plainer: no page, card, calculator, script or sheet brings one back."""

from __future__ import annotations

import functools
import re

import pytest

from calc.catalogue import CALCULATORS
from calc.declare import LEVELS, WORDS
from docs_build.bootstrap import ROOT
from docs_build.sphinx_ext.nodes import ADMONITIONS

GONE = {
    "Home": r">Tasks<",
    "Calculators": r">Calculate<|^#+ Calculate$",
    "Previous": r">Before<",
    "On site": r"\bThe visit\b|\"Visit: |>Visit<",
    "names of cards": r"\bCard: [a-z]",
    "Mass attack": r"(?<![/_`])[Ss]warmed\b(?!\.md)",
    "Itchy rash elsewhere": r"[Hh]ives (elsewhere|away)|with(out| or without) hives",
    "Not started": r"Not begun|\"Begin\"|\*\*Begin\*\*",
    "None found": r"Looked: none|: none of these`",
    "Close job": r"[Pp]ut (this job )?aside",
    "Delete": r"(\*\*|>|[\"`])(Wipe|Erase)|: (wipe|erase) ",
    "Results": r"Compute it all again|>What was computed",
    "Relationship to property": r"[Ss]tands to the place",
    "Legal status": r"[Ss]tanding of the species",
    "Letters to the client": r"Words for the client",
    "Release, relocate or feed": r"Passing life on",
    "Colony size and stage": r"where in its year",
    "nozzle": r"[Mm]outh of the (hose|nozzle)|[Hh]old the mouth|[Pp]lug the mouth",
    "Entrance": r"\bWay in\b",
    "Work periods": r"\bSpells\b",
    "Rules applied": r"Rules that spoke",
    "Hemisphere": r"[Hh]alf of the world",
    "Lie flat": r"[Ll]ay flat",
    "Go on": r"Keep catching|\bGo only if|[Ss]top or go\b|Go as planned",
}
"""The label of today, and what stood in its place before."""

SEEN = (
    "handbook/**/*.md",
    "handbook/**/*.ipynb",
    "handbook/**/*.svg",
    "calc/**/*.toml",
    "calc/**/*.py",
)
SCRIPTS = ("docs_build/**/*.py", "docs_build/**/*.mjs", "docs_build/**/*.html")


@functools.cache
def lines() -> list[str]:
    """Return every line that a reader may see, behind the name of its file."""
    paths = [path for pattern in (*SEEN, *SCRIPTS) for path in sorted(ROOT.glob(pattern))]
    return [
        f"{path.relative_to(ROOT)}: {line.strip()}"
        for path in paths
        for line in path.read_text("utf-8").splitlines()
    ]


@pytest.mark.parametrize("label", GONE)
def test_an_old_label_stands_nowhere(label: str) -> None:
    old = re.compile(GONE[label])
    assert [line[:140] for line in lines() if old.search(line.partition(": ")[2])] == []


def test_every_admonition_has_one_of_the_three_alert_words() -> None:
    assert set(WORDS) == set(LEVELS) == set(ADMONITIONS.values())
    assert set(WORDS.values()) == {"STOP", "CAUTION", "NOTE"}


def test_a_decision_begins_with_the_word_of_the_cards() -> None:
    card = (ROOT / "handbook/quick/stop_or_go.md").read_text("utf-8")
    catches = {"Go on": [60, 35, 20], "Wait": [60, 20, 5, 1, 0, 0, 0], "Stop": [10, 20, 30]}
    for word, given in catches.items():
        assert f"“**{word}**”" in card
        told = CALCULATORS["how_many_left"].run({"catches": given})
        assert told["next_step"].startswith(word)

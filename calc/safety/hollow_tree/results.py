"""What "Hollow or dead tree" answers, the main answers first."""

from __future__ import annotations

from calc.declare import Out
from calc.declare.results import out


def _loss(name: str, label: str, meaning: str, main: bool = False) -> Out:
    return out(name, label, meaning, unit="percent", digits=0, main=main)


RESULTS: tuple[Out, ...] = (
    out(
        "verdict",
        "What the published rules say",
        "How many of them say act; never a clearance.",
        kind="text",
        main=True,
    ),
    out("rules_before", "Rules that say act, as it stands", "Of five.", kind="count", main=True),
    out("rules_after", "Rules that say act, with the window", "Of five.", kind="count", main=True),
    out(
        "rules",
        "Side by side",
        "Each rule with its own level.",
        kind="table",
        columns=(
            out("rule", "Rule", "Year and country.", kind="text"),
            out("before", "As it stands", "Value.", kind="text"),
            out("after", "With the window", "Value.", kind="text"),
            out("level", "Acts at", "Printed level.", kind="text"),
        ),
    ),
    out("who", "Who decides", "About the tree.", kind="text"),
    _loss("wagener", "Wagener 1963", "Closed hollow."),
    _loss("coder", "Coder 1989", "Closed hollow, as a tube."),
    _loss("smiley_before", "Smiley & Fraedrich 1992, as it stands", "With the opening."),
    _loss("smiley_after", "The same with the window", "With the wider opening."),
    out(
        "shell",
        "Wall over radius",
        "Mattheck 1992; below 0.30 to 0.35 is worse; made for closed hollows.",
        digits=2,
    ),
    out(
        "opening_before",
        "Open part of the girth",
        "Mattheck 1992: more than 120 degrees is the limit.",
        unit="degree",
    ),
    out("opening_after", "The same with the window", "After the cut.", unit="degree"),
    _loss("area", "Hollow part of the section", "For comparison; no rule."),
    _loss("ring_before", "Open ring, weakest way, as it stands", "Our arithmetic; no rule."),
    _loss("ring_after", "The same with the window", "Our arithmetic; no rule."),
)

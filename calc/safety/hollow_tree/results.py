"""What "Hollow or dead tree" answers, the main answers first."""

from __future__ import annotations

from calc.declare import Out


def _loss(name: str, label: str, meaning: str, main: bool = False) -> Out:
    return Out(name=name, label=label, meaning=meaning, unit="percent", digits=0, main=main)


RESULTS: tuple[Out, ...] = (
    Out(
        name="verdict",
        label="What the published rules say",
        meaning="How many of them say act; never a clearance.",
        kind="text",
        main=True,
    ),
    Out(
        name="rules_before",
        label="Rules that say act, as it stands",
        meaning="Of five.",
        kind="count",
        main=True,
    ),
    Out(
        name="rules_after",
        label="Rules that say act, with the window",
        meaning="Of five.",
        kind="count",
        main=True,
    ),
    Out(
        name="rules",
        label="Side by side",
        meaning="Each rule with its own level.",
        kind="table",
        columns=(
            Out(name="rule", label="Rule", meaning="Year and country.", kind="text"),
            Out(name="before", label="As it stands", meaning="Value.", kind="text"),
            Out(name="after", label="With the window", meaning="Value.", kind="text"),
            Out(name="level", label="Acts at", meaning="Printed level.", kind="text"),
        ),
    ),
    Out(name="who", label="Who decides", meaning="About the tree.", kind="text"),
    _loss("wagener", "Wagener 1963", "Closed hollow."),
    _loss("coder", "Coder 1989", "Closed hollow, as a tube."),
    _loss("smiley_before", "Smiley & Fraedrich 1992, as it stands", "With the opening."),
    _loss("smiley_after", "The same with the window", "With the wider opening."),
    Out(
        name="shell",
        label="Wall over radius",
        meaning="Mattheck 1992; below 0.30 to 0.35 is worse; made for closed hollows.",
        digits=2,
    ),
    Out(
        name="opening_before",
        label="Open part of the girth",
        meaning="Mattheck 1992: more than 120 degrees is the limit.",
        unit="degree",
    ),
    Out(
        name="opening_after",
        label="The same with the window",
        meaning="After the cut.",
        unit="degree",
    ),
    _loss("area", "Hollow part of the section", "For comparison; no rule."),
    _loss("ring_before", "Open ring, weakest way, as it stands", "Our arithmetic; no rule."),
    _loss("ring_after", "The same with the window", "Our arithmetic; no rule."),
)

"""What the call sheet answers, the main answers first."""

from __future__ import annotations

from calc.declare import Out

RESULTS: tuple[Out, ...] = (
    Out(
        name="decision",
        label="Decision",
        meaning="What the rules below lead to.",
        kind="text",
        main=True,
    ),
    Out(
        name="why",
        label="Why",
        meaning="The rule that decided, with its reason.",
        kind="text",
        main=True,
    ),
    Out(
        name="who",
        label="Who acts",
        meaning="The next to do something.",
        kind="text",
        main=True,
    ),
    Out(
        name="say",
        label="Words for the caller",
        meaning="Read them out, or say it in your own words.",
        kind="text",
        main=True,
    ),
    Out(
        name="rules",
        label="Rules that spoke",
        meaning="Those that decide or could have, the deciding one first.",
        kind="table",
        columns=(
            Out(name="rule", label="When, and why", meaning="The rule.", kind="text"),
            Out(name="leads_to", label="Leads to", meaning="Decision.", kind="text"),
        ),
    ),
    Out(
        name="before",
        label="Before you go",
        meaning="Rules that name something to see to; withheld where the job goes another way.",
        kind="table",
        columns=(
            Out(name="what", label="See to", meaning="What is missing.", kind="text"),
            Out(name="reason", label="Why", meaning="Reason.", kind="text"),
        ),
    ),
    Out(
        name="open",
        label="Questions still open",
        meaning="Not asked, or not known yet.",
        kind="table",
        columns=(Out(name="question", label="Ask", meaning="The question.", kind="text"),),
    ),
)

"""What the call sheet answers, the main answers first."""

from __future__ import annotations

from calc.declare import Out


def _text(name: str, label: str, meaning: str, main: bool = False) -> Out:
    return Out(name=name, label=label, meaning=meaning, kind="text", main=main)


RESULTS: tuple[Out, ...] = (
    _text("decision", "Decision", "What the rules below lead to.", main=True),
    _text("why", "Why", "The rule that decided, with its reason.", main=True),
    _text("who", "Who acts", "The next to do something.", main=True),
    _text("say", "Words for the caller", "Read them out, or say it in your own words.", main=True),
    Out(
        name="rules",
        label="Rules applied",
        meaning="Those that decide or could have, the deciding one first.",
        kind="table",
        columns=(
            _text("rule", "When, and why", "The rule."),
            _text("leads_to", "Leads to", "Decision."),
        ),
    ),
    Out(
        name="before",
        label="Before you go",
        meaning="Rules that name something to see to; withheld where the job goes another way.",
        kind="table",
        columns=(
            _text("what", "See to", "What is missing."),
            _text("reason", "Why", "Reason."),
        ),
    ),
    Out(
        name="open",
        label="Questions still open",
        meaning="Not asked, or not known yet.",
        kind="table",
        columns=(_text("question", "Ask", "The question."),),
    ),
)

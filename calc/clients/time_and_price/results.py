"""What "Time and price" answers, the main answers first."""

from __future__ import annotations

from calc.declare import Out


def _sum(name: str, label: str, meaning: str, main: bool = False) -> Out:
    return Out(name=name, label=label, meaning=meaning, digits=2, main=main)


RESULTS: tuple[Out, ...] = (
    Out(
        name="verdict",
        label="In words",
        meaning="What to quote and what to plan.",
        kind="text",
        main=True,
    ),
    _sum("price", "Price before tax", "Cost with your margin or mark-up.", main=True),
    Out(
        name="site_hours",
        label="On site, expected",
        meaning="Mean of the job itself.",
        unit="hour",
        digits=1,
        main=True,
    ),
    Out(
        name="plan_hours",
        label="On site, plan for",
        meaning="9 of 10 such jobs are done by then.",
        unit="hour",
        digits=1,
        main=True,
    ),
    Out(
        name="site_interval",
        label="On site, 80 % interval",
        meaning="8 of 10 such jobs lie in it.",
        kind="interval",
        unit="hour",
        digits=1,
    ),
    Out(
        name="deviation",
        label="Standard deviation",
        meaning="Of the minutes on site.",
        unit="min",
        digits=1,
    ),
    Out(
        name="charged_hours",
        label="Person-hours charged",
        meaning="Site, checks and drives, for all people.",
        unit="hour",
        digits=1,
    ),
    _sum("cost", "Cost", "All lines below."),
    _sum("profit", "Profit", "Price less cost."),
    Out(
        name="as_margin",
        label="That is a margin of",
        meaning="Profit as a share of the price.",
        unit="percent",
        digits=1,
    ),
    Out(
        name="as_markup",
        label="and a mark-up of",
        meaning="Profit as a share of the cost.",
        unit="percent",
        digits=1,
    ),
    _sum("other_price", "If your percent were the other", "The same number, read the other way."),
    _sum("tax_sum", "Tax", "On the price, by your rate."),
    _sum("total", "The client pays", "Price with tax."),
    _sum("deposit_sum", "Deposit", "Share of what the client pays."),
    Out(
        name="lines",
        label="What it is made of",
        meaning="Each part of the cost.",
        kind="table",
        columns=(
            Out(name="line", label="Line", meaning="Part of the cost.", kind="text"),
            Out(name="amount", label="Amount", meaning="In your currency.", digits=2),
        ),
    ),
)

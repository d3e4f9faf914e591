"""What "Time and price" says."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from calc.declare import Caution

_LONG = 8.0
"""Longest day of one team, hours (long_day_ours)."""

_ENOUGH = 8
"""Past jobs below which their spread is too unsure (enough_jobs)."""


@dataclass(frozen=True, slots=True)
class Findings:
    """What the words hang on; hours, money in the typed currency."""

    times_from: str
    past_count: int
    mean: float
    plan: float
    drive: float
    price: float
    total: float
    cost: float
    currency: str
    deposit: float
    tax: float
    reserve: bool


def verdict(found: Findings) -> str:
    """Return price and hours in one or two sentences."""
    sign = "" if found.currency == "other" else f"{found.currency} "
    with_tax = f", {sign}{found.total:.2f} with tax" if found.tax else ""
    return (
        f"Quote {sign}{found.price:.2f}{with_tax}. Expect {found.mean:.1f} h on site and keep "
        f"{found.plan:.1f} h free, and the drives."
    )


def cautions(found: Findings) -> list[Caution]:
    """Return the cautions of one run."""
    return [_RESTS, *_about_time(found), *_about_money(found), *_NOTES]


def _about_time(found: Findings) -> Iterator[Caution]:
    if found.times_from == "past" and found.past_count < _ENOUGH:
        yield Caution(
            level="caution",
            text=f"{found.past_count} past jobs are few: the interval is wide and may still be "
            "wrong. Use the table beside it.",
            reason=f"Below {_ENOUGH} jobs the spread is hardly known.",
            source="enough_jobs",
        )
    if found.times_from == "table":
        yield Caution(
            level="caution",
            text="The table's minutes are our guess, not measured. Write down your own.",
            reason="No times for this work are in print.",
            source="step_times_ours",
        )
    if found.plan + found.drive > _LONG:
        yield Caution(
            level="caution",
            text=f"With the drives the day may pass {_LONG:.0f} h. Split the job or bring more "
            "people: tired hands make the accidents.",
            reason="Planned at 9 of 10 jobs.",
            source="long_day_ours",
        )


def _about_money(found: Findings) -> Iterator[Caution]:
    if found.price <= found.cost * (1 + 1e-12):
        yield Caution(
            level="caution",
            text="This price leaves nothing: it only covers the cost you typed.",
            reason="Margin or mark-up is 0.",
            source="margin_pages",
        )
    if not found.reserve:
        yield Caution(
            level="caution",
            text="Nothing is set aside for what may go wrong. Say what may, how likely, and what "
            "it would cost.",
            reason="A second visit or a broken board comes out of your profit.",
            source="own_reasoning",
        )
    if found.deposit > 10:
        yield Caution(
            level="caution",
            text="Some places allow a deposit of a tenth at most. Check yours before you ask.",
            reason="California caps it at 10 % or 1000 dollars, whichever is less.",
            source="deposit_california",
        )


_RESTS = Caution(
    level="caution",
    text="Never cut the rests, the wait or the second person to meet a price.",
    reason="They are part of the cost. A price that needs them cut is the wrong price.",
    source="price_never_rests",
)
_NOTES = (
    Caution(
        level="note",
        text="Margin and mark-up of the same percent are not the same price.",
        reason="Margin is a share of the price, mark-up a share of the cost.",
        source="margin_pages",
    ),
    Caution(
        level="note",
        text="Whether this work is taxed, and at what rate, differs by place: ask.",
        reason="The tax line only multiplies what you type.",
        source="tax_local",
    ),
    Caution(
        level="note",
        text="A contract made at the client's door can often be cancelled for days, and then "
        "paid in part or not at all. Read the law page before you start early.",
        reason="In the European Union a trader who had not told a client of that right got "
        "nothing for finished work.",
        source="cjeu_c_97_22",
    ),
)

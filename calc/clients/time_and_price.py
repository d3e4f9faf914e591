"""Time and price: three-point times or past jobs, cost lines, margin or mark-up."""

from __future__ import annotations

import math
from collections.abc import Mapping
from typing import Any

from calc import tables
from calc.clients import pert
from calc.clients import time_and_price_words as say
from calc.clients.time_and_price_forms import INPUTS, OUTPUTS, PLACES
from calc.declare import Answer, Axis, Calculator, Chart, Series
from calc.errors import InputError, required

_HOUR = 60.0
Times = pert.Spread | pert.Past


def core(
    *,
    times_from: str,
    nest: str | None,
    at_best: tuple[float, ...] | None,
    most_likely: tuple[float, ...] | None,
    at_worst: tuple[float, ...] | None,
    past: tuple[float, ...] | None,
    basis: str,
    people: int,
    visits: int,
    check_minutes: float,
    distance: float,
    drive: float,
    distance_rate: float,
    hourly: float,
    overhead: float,
    materials: float,
    risk_chances: tuple[float, ...],
    risk_costs: tuple[float, ...],
    pricing: str,
    margin: float | None,
    markup: float | None,
    tax: float,
    deposit: float,
    currency: str,
) -> Answer:
    """Compute hours with interval, cost lines and price; see the declaration for units."""
    learned = None if past is None else pert.past(past)
    times = _times(times_from, nest, at_best, most_likely, at_worst, learned)
    site = times.mean if basis == "mean" else times.by_chance(0.8)
    hours = people * (site + (visits - 1) * check_minutes + visits * 2 * drive) / _HOUR
    lines = {
        "work, checks and drives": hours * hourly,
        "overhead on these hours": hours * overhead,
        "distance": 2 * visits * distance * distance_rate,
        "materials and wear": materials,
        "reserve for what may go wrong": _reserve(risk_chances, risk_costs),
    }
    cost = math.fsum(lines.values())
    money = _money(cost, pricing, margin, markup, tax / 100, deposit / 100)
    plan = times.by_chance(0.9)
    told = say.Findings(
        times_from=times_from,
        past_count=0 if past is None else len(past),
        mean=times.mean / _HOUR,
        plan=plan / _HOUR,
        drive=2 * drive / _HOUR,
        price=money["price"],
        total=money["total"],
        cost=cost,
        currency=currency,
        deposit=deposit,
        tax=tax,
        pricing=pricing,
    )
    low, high = times.interval(0.8)
    values = {
        "verdict": say.verdict(told),
        "site_hours": times.mean / _HOUR,
        "plan_hours": plan / _HOUR,
        "site_interval": (low / _HOUR, high / _HOUR),
        "deviation": times.deviation,
        "past_mean": None if learned is None else learned.mean,
        "past_interval": None if learned is None else learned.interval(0.8),
        "charged_hours": hours,
        "cost": cost,
        "lines": [{"line": line, "amount": amount} for line, amount in lines.items()],
        **money,
    }
    return Answer(values=values, cautions=say.cautions(told), charts=[_chart(times)])


def _times(
    times_from: str,
    nest: str | None,
    at_best: tuple[float, ...] | None,
    most_likely: tuple[float, ...] | None,
    at_worst: tuple[float, ...] | None,
    learned: pert.Past | None,
) -> Times:
    if times_from == "past":
        if learned is None:
            allowed = "2 or more past jobs"
            raise InputError(
                "past",
                None,
                allowed,
                f"Past jobs, minutes on site: none were given; allowed is {allowed}.",
            )
        return learned
    if times_from == "table":
        assert nest is not None
        steps = [tables.row("step_times", f"{nest}_{n}") for n in range(1, PLACES[nest] + 1)]
        return pert.path(*([float(step[c]) for step in steps] for c in ("low", "likely", "high")))
    assert at_best is not None
    assert most_likely is not None
    assert at_worst is not None
    _in_order(at_best, most_likely, at_worst)
    return pert.path(at_best, most_likely, at_worst)


def _in_order(low: tuple[float, ...], likely: tuple[float, ...], high: tuple[float, ...]) -> None:
    for name, label, given in (
        ("most_likely", "Each step, most likely", likely),
        ("at_worst", "Each step at worst", high),
    ):
        if len(given) != len(low):
            _refuse_length(name, label, given, len(low), "step")
    for step, (a, m, b) in enumerate(zip(low, likely, high, strict=True), start=1):
        if not a <= m <= b:
            raise _out_of_order(step, {"at_best": low, "most_likely": likely, "at_worst": high})


def _out_of_order(step: int, times: Mapping[str, tuple[float, ...]]) -> InputError:
    """Return the error for the one of a step's three times that does not fit the other two.

    Where all three stand in falling order none is alone at fault; the worst is named.
    """
    a, m, b = (each[step - 1] for each in times.values())
    name = "at_worst" if b < min(a, m) else "at_best" if a > max(m, b) else "most_likely"
    label = next(each.label for each in INPUTS if each.name == name)
    allowed = "at best, most likely, at worst in rising order"
    return InputError(
        name,
        list(times[name]),
        allowed,
        f"{label}: step {step} has {a:g}, {m:g}, {b:g} min; allowed is {allowed}.",
    )


def _refuse_length(name: str, label: str, given: tuple[float, ...], count: int, item: str) -> None:
    allowed = f"{count} values, one for each {item}"
    raise InputError(
        name, list(given), allowed, f"{label}: {len(given)} were given; allowed is {allowed}."
    )


def _reserve(chances: tuple[float, ...], costs: tuple[float, ...]) -> float:
    if len(costs) != len(chances):
        _refuse_length("risk_costs", "What it would cost", costs, len(chances), "risk")
    return pert.reserve([each / 100 for each in chances], costs)


def _money(
    cost: float,
    pricing: str,
    margin: float | None,
    markup: float | None,
    tax: float,
    deposit: float,
) -> dict[str, Any]:
    if pricing == "margin":
        share = required("margin", margin) / 100
        price = pert.price_from_margin(cost, share)
        other: float | None = pert.price_from_markup(cost, share)
        as_margin, as_markup = share, pert.markup_of_margin(share)
    else:
        share = required("markup", markup) / 100
        price = pert.price_from_markup(cost, share)
        other = pert.price_from_margin(cost, share) if share < 1 else None
        as_margin, as_markup = pert.margin_of_markup(share), share
    total = price * (1 + tax)
    return {
        "price": price,
        "profit": price - cost,
        "as_margin": 100 * as_margin,
        "as_markup": 100 * as_markup,
        "other_price": other,
        "tax_sum": total - price,
        "total": total,
        "deposit_sum": total * deposit,
    }


def _chart(times: Times) -> Chart:
    chances = [0.5 + 0.01 * each for each in range(0, 50, 3)] + [0.99]
    later = [
        times.by_chance(each) / _HOUR if each > 0.5 else times.mean / _HOUR for each in chances
    ]
    mean = times.mean / _HOUR
    # Both spreads are even about the mean, so the early half is its mirror image.
    early = [max(0.0, 2 * mean - each) for each in later[:0:-1]]
    x = (*early, *later)
    y = (*(100 * (1 - each) for each in chances[:0:-1]), *(100 * each for each in chances))
    marks = (mean, times.by_chance(0.8) / _HOUR, times.by_chance(0.9) / _HOUR)
    return Chart(
        name="done_by",
        title="Done by then",
        alt=f"Share of such jobs that are done after so many hours on site: half by {mean:.1f} h, "
        f"8 of 10 by {marks[1]:.1f} h, 9 of 10 by {marks[2]:.1f} h.",
        x=Axis(label="On site", unit="hour", low=0),
        y=Axis(label="Share of such jobs", unit="percent", low=0, high=100),
        series=(
            Series(label="done by then", x=x, y=y),
            Series(label="5, 8 and 9 of 10", x=marks, y=(50.0, 80.0, 90.0), style="points"),
        ),
    )


time_and_price = Calculator(
    name="time_and_price",
    title="Time and price",
    part="clients",
    purpose="Hours on site with their interval, what the job costs you, and the price by margin "
    "or mark-up.",
    inputs=INPUTS,
    outputs=OUTPUTS,
    core=core,
    sources=(
        "pert_1959",
        "pert_ends",
        "pert_bias",
        "step_times_ours",
        "prediction_interval",
        "enough_jobs",
        "margin_pages",
        "markup_pages",
        "hourly_ours",
        "deposit_massachusetts",
        "deposit_ours",
        "tax_local",
    ),
    formula=(
        (
            r"t_e = \frac{a + 4m + b}{6},\qquad \sigma^2 = \left(\frac{b - a}{6}\right)^2",
            "mean and variance of one step; a and b are the ends of its times; steps add up",
            "pert_ends",
        ),
        (
            r"P(T \le x) = \Phi\!\left(\frac{x - \sum t_e}{\sqrt{\sum \sigma^2}}\right)",
            "chance that the whole is done in time",
            "pert_1959",
        ),
        (
            r"\bar t \pm t_{n-1}\,s\,\sqrt{1 + \tfrac{1}{n}}",
            "the next job, from n past ones",
            "prediction_interval",
        ),
        (r"P = \frac{C}{1 - g}", "price from margin g, a share of the price", "margin_pages"),
        (r"P = C\,(1 + k)", "price from mark-up k, a share of the cost", "markup_pages"),
        (
            r"g = \frac{k}{1 + k},\qquad k = \frac{g}{1 - g}",
            "one as the other",
            "markup_pages",
        ),
        (r"R = \sum p_i c_i", "reserve: chance times cost of each risk", "arithmetic"),
    ),
    assumptions=(
        "Steps follow one another and do not hang together; if a bad day slows them all, the "
        "spread is wider than shown.",
        "Best and worst are the ends: no job lies beyond. If now and then one does, the spread is "
        "wider than shown.",
        "Past jobs were like this one.",
        "All sums are in one currency; the code is only written beside them.",
        "Drives cost hours and distance; the distance rate covers the vehicle only.",
    ),
)

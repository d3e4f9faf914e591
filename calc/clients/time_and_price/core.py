"""The core of "Time and price": from what was asked to what is answered."""

from __future__ import annotations

import math
from collections.abc import Mapping
from typing import Any

from calc import tables
from calc.clients.time_and_price import cautions as say
from calc.clients.time_and_price import price, times
from calc.clients.time_and_price.inputs import PLACES, Inputs
from calc.declare import Answer, Axis, Chart, Series
from calc.errors import InputError, required

_HOUR = 60.0
Times = times.Spread | times.Past


def core(x: Inputs) -> Answer:
    """Compute hours with interval, cost lines and price; see the declaration for units."""
    spread = _times(x)
    site = spread.mean if x.basis == "mean" else spread.by_chance(0.8)
    hours = x.people * (site + (x.visits - 1) * x.check_minutes + x.visits * 2 * x.drive) / _HOUR
    reserve = _reserve(x.risk_chances, x.risk_costs)
    lines = {
        "work, checks and drives": hours * x.hourly,
        "overhead on these hours": hours * x.overhead,
        "distance": 2 * x.visits * x.distance * x.distance_rate,
        "materials and wear": x.materials,
    }
    if reserve is not None:
        lines["reserve for what may go wrong"] = reserve
    cost = math.fsum(lines.values())
    money = _money(cost, x)
    plan = spread.by_chance(0.9)
    told = say.Findings(
        times_from=x.times_from,
        past_count=0 if x.past is None else len(x.past),
        mean=spread.mean / _HOUR,
        plan=plan / _HOUR,
        drive=2 * x.drive / _HOUR,
        price=money["price"],
        total=money["total"],
        cost=cost,
        currency=x.currency,
        deposit=x.deposit,
        tax=x.tax,
        reserve=reserve is not None,
    )
    low, high = spread.interval(0.8)
    values = {
        "verdict": say.verdict(told),
        "site_hours": spread.mean / _HOUR,
        "plan_hours": plan / _HOUR,
        "site_interval": (low / _HOUR, high / _HOUR),
        "deviation": spread.deviation,
        "charged_hours": hours,
        "cost": cost,
        "lines": [{"line": line, "amount": amount} for line, amount in lines.items()],
        **money,
    }
    return Answer(values=values, cautions=say.cautions(told), charts=[_chart(spread)])


def _times(x: Inputs) -> Times:
    if x.past is not None:
        return times.past(x.past)
    if x.nest is not None:
        steps = [tables.row("step_times", f"{x.nest}_{n}") for n in range(1, PLACES[x.nest] + 1)]
        return times.path(*([float(step[c]) for step in steps] for c in ("low", "likely", "high")))
    low, likely = required("at_best", x.at_best), required("most_likely", x.most_likely)
    high = required("at_worst", x.at_worst)
    _in_order(low, likely, high)
    return times.path(low, likely, high)


def _in_order(low: tuple[float, ...], likely: tuple[float, ...], high: tuple[float, ...]) -> None:
    for name, given in {"most_likely": likely, "at_worst": high}.items():
        if len(given) != len(low):
            _refuse_length(name, given, len(low), "step")
    for step, (a, m, b) in enumerate(zip(low, likely, high, strict=True), start=1):
        if not a <= m <= b:
            raise _out_of_order(step, {"at_best": low, "most_likely": likely, "at_worst": high})


def _out_of_order(step: int, times: Mapping[str, tuple[float, ...]]) -> InputError:
    """Return the error for the one of a step's three times that does not fit the other two.

    Where all three stand in falling order none is alone at fault; the worst is named.
    """
    a, m, b = (each[step - 1] for each in times.values())
    name = "at_worst" if b < min(a, m) else "at_best" if a > max(m, b) else "most_likely"
    allowed = "at best, most likely, at worst in rising order"
    return InputError(
        name,
        list(times[name]),
        allowed,
        f"{_label(name)}: step {step} has {a:g}, {m:g}, {b:g} min; allowed is {allowed}.",
    )


def _refuse_length(name: str, given: tuple[float, ...], count: int, item: str) -> None:
    allowed = f"{count} values, one for each {item}"
    raise InputError(
        name,
        list(given),
        allowed,
        f"{_label(name)}: {len(given)} were given; allowed is {allowed}.",
    )


def _label(name: str) -> str:
    return next(each.label for each in Inputs.declared if each.name == name)


def _reserve(chances: tuple[float, ...] | None, costs: tuple[float, ...] | None) -> float | None:
    """Return the reserve, or None where nothing was said of what may go wrong."""
    if chances is None and costs is None:
        return None
    chances, costs = chances or (), costs or ()
    if len(costs) != len(chances):
        _refuse_length("risk_costs", costs, len(chances), "risk")
    return price.reserve([each / 100 for each in chances], costs)


def _money(cost: float, x: Inputs) -> dict[str, Any]:
    other: float | None
    if x.pricing == "margin":
        share = required("margin", x.margin) / 100
        amount = price.price_from_margin(cost, share)
        other = price.price_from_markup(cost, share)
        as_margin, as_markup = share, price.markup_of_margin(share)
    else:
        share = required("markup", x.markup) / 100
        amount = price.price_from_markup(cost, share)
        other = price.price_from_margin(cost, share) if share < 1 else None
        as_margin, as_markup = price.margin_of_markup(share), share
    total = amount * (1 + x.tax / 100)
    return {
        "price": amount,
        "profit": amount - cost,
        "as_margin": 100 * as_margin,
        "as_markup": 100 * as_markup,
        "other_price": other,
        "tax_sum": total - amount,
        "total": total,
        "deposit_sum": total * x.deposit / 100,
    }


def _chart(spread: Times) -> Chart:
    chances = [0.5 + 0.01 * each for each in range(0, 50, 3)] + [0.99]
    later = [
        spread.by_chance(each) / _HOUR if each > 0.5 else spread.mean / _HOUR for each in chances
    ]
    mean = spread.mean / _HOUR
    # Both spreads are even about the mean, so the early half is its mirror image.
    early = [max(0.0, 2 * mean - each) for each in later[:0:-1]]
    x = (*early, *later)
    y = (*(100 * (1 - each) for each in chances[:0:-1]), *(100 * each for each in chances))
    marks = (mean, spread.by_chance(0.8) / _HOUR, spread.by_chance(0.9) / _HOUR)
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

"""Time and price: three-point times or past jobs, cost lines, margin or mark-up."""

from __future__ import annotations

from calc.clients.time_and_price.core import core
from calc.clients.time_and_price.inputs import Inputs
from calc.clients.time_and_price.results import RESULTS
from calc.declare import Calculator

time_and_price = Calculator(
    name="time_and_price",
    title="Time and price",
    part="clients",
    purpose="Hours on site with their interval, what the job costs you, and the price by margin "
    "or mark-up.",
    given=Inputs,
    outputs=RESULTS,
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

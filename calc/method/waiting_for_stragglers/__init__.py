"""Waiting for the stragglers: from the returns you see to when to stop."""

from __future__ import annotations

from calc.declare import Calculator
from calc.method.waiting_for_stragglers.core import core
from calc.method.waiting_for_stragglers.inputs import Inputs
from calc.method.waiting_for_stragglers.results import RESULTS

waiting_for_stragglers = Calculator(
    name="waiting_for_stragglers",
    title="Waiting for the stragglers",
    part="method",
    purpose="From the returns you see after the catch: how long a trip takes, how many are still "
    "out, and how long to wait.",
    given=Inputs,
    outputs=RESULTS,
    core=core,
    sources=(
        "straggler_model",
        "straggler_removal",
        "censored_exponential",
        "garwood_1936",
        "poidatz_2018_trips",
        "trip_shape",
        "residual_trips",
        "absent_shares",
        "gould_pollock_1997",
    ),
    formula=(
        (
            r"\hat\tau=\frac{S}{d},\qquad \frac{2S}{\chi^2_{0.975}(2d+2)}\le\tau\le"
            r"\frac{2S}{\chi^2_{0.025}(2d)}",
            "number out known: S all minutes away together, d those that came home",
            "censored_exponential",
        ),
        (
            r"\frac{\bar t}{w}=\frac{1}{x}-\frac{1}{e^x-1},\quad x=\frac{w}{\tau},\qquad "
            r"m=\frac{d}{1-e^{-w/\tau}}",
            "number out not known: mean return time over the watch w gives the trip time and the "
            "number m away at the start",
            "straggler_removal",
        ),
        (
            r"p=1-e^{-h/\tau}",
            "returns counted in intervals h are a removal series with this share a pass",
            "straggler_removal",
        ),
        (
            r"w=-\tau\ln(1-s)",
            "minutes until the share s of those away is home",
            "straggler_model",
        ),
        (
            r"w=-\tau\ln\left(1-0.95^{1/m}\right)",
            "minutes until all m are home in 95 of 100 cases",
            "straggler_model",
        ),
        (
            r"R=\left\lfloor\frac{2.9957\,\tau}{w}\right\rfloor",
            "most still out after w quiet minutes, at 95 %",
            "garwood_1936",
        ),
        (
            r"G(t)=Q\!\left(a+1,\tfrac{t}{\theta}\right)-\frac{t}{a\theta}\,"
            r"Q\!\left(a,\tfrac{t}{\theta}\right)",
            "share still out for gamma trips of shape a and scale θ, the comparison with hornets",
            "residual_trips",
        ),
        (r"m=\lambda\tau", "away in steady traffic of λ returns a minute", "little_1961"),
    ),
    assumptions=(
        "Nobody leaves after you start. If some do, the returns do not thin out and the number is "
        "too high or missing.",
        "All trips have the same chance of ending each minute. Long trips and nights out break "
        "this: the true wait is longer.",
        "The weather and the light let them fly for the whole watch. Minutes of rain, cold or dusk "
        "make the answer too hopeful.",
        "You see every return. One that slips past you counts as still out.",
    ),
)

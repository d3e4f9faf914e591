"""The core of "Count by weight": from two weighings to a count with its limits."""

from __future__ import annotations

import math
from typing import Any

from calc.declare import Answer
from calc.errors import InputError, required
from calc.method.weigh_the_catch.cautions import cautions
from calc.method.weigh_the_catch.inputs import Inputs
from calc.method.weigh_the_catch.weighing import (
    Count,
    Mean,
    count_by_weight,
    known,
    mixed,
    sample_needed,
    sampled,
    step_error,
)

MG = 1000.0
"""Milligrams in a gram."""

CLOSE = 0.05
"""Wanted half-width of the mean mass, for the size of the next sample."""


def core(x: Inputs) -> Answer:
    """Compute the count with its limits.

    Raises :class:`InputError` for a full chamber lighter than the empty one and for handfuls
    without their count.
    """
    if x.full < x.empty:
        allowed = f"{x.empty:g} g or more, the empty chamber"
        raise InputError(
            "full",
            x.full,
            allowed,
            f"Chamber with the catch: {x.full:g} g is lighter than the empty chamber; allowed is "
            f"{allowed}.",
        )
    printed = known(x.animal, x.mass)
    mean, number = printed, None
    if x.mean_from == "sample":
        counts, masses = _matched(x)
        mean = sampled(
            counts, [each * MG for each in masses], printed.spread / printed.mass, x.step * MG
        )
        number = sum(counts)
    elif x.second is not None and x.second != "none":
        mean = mixed(printed, known(x.second, None), required("share", x.share) / 100)
    net = x.full - x.empty
    found = count_by_weight(net * MG, step_error(x.step, 2) * MG, mean)
    return Answer(
        values=_values(net, mean, found),
        cautions=list(cautions(net, x.step, mean, printed, number, found)),
    )


def _matched(x: Inputs) -> tuple[tuple[int, ...], tuple[float, ...]]:
    counts = required("sample_counts", x.sample_counts)
    masses = required("sample_masses", x.sample_masses)
    if len(counts) == len(masses):
        return counts, masses
    allowed = "one mass for each handful"
    raise InputError(
        "sample_masses",
        list(masses),
        allowed,
        f"Mass of each handful: {len(masses)} given for {len(counts)} counted; "
        f"allowed is {allowed}.",
    )


def _values(net: float, mean: Mean, found: Count) -> dict[str, Any]:
    parts = (("the scale", found.scale), ("the bodies", found.bodies), ("the mean", found.mean))
    return {
        "count": round(found.number),
        "interval": (math.floor(found.low), None if found.high is None else math.ceil(found.high)),
        "net": net,
        "mean_mass": mean.mass,
        "largest": max(parts, key=lambda each: each[1])[0] if net else None,
        "scale_error": found.scale,
        "bodies_error": found.bodies,
        "mean_error": found.mean,
        "sample_needed": sample_needed(mean.spread / mean.mass, CLOSE),
    }

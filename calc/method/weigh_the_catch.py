"""Weigh the catch: the calculator, from two weighings and a mean mass to a count."""

from __future__ import annotations

import math
from collections.abc import Iterator
from typing import Any

from calc.declare import Answer, Calculator, Caution, Choice, Counts, Number, Numbers, Option, Out
from calc.errors import InputError, required
from calc.method.catch_chamber_inputs import ANIMAL, animal_options
from calc.method.weighing import (
    Count,
    Mean,
    count_by_weight,
    mixed,
    range_error,
    sample_needed,
    sampled,
    step_error,
)
from calc.tables import row, rows

MG = 1000.0
"""Milligrams in a gram."""

ENOUGH = 30
"""Animals in a sample below which the answer asks for more."""

STEPS = 20
"""Steps of the scale in the catch below which the answer asks for a finer scale: the two roundings
alone are then worth more than 4 % of the catch."""

CLOSE = 0.05
"""Wanted half-width of the mean mass, for the size of the next sample."""

FAR = 2.0
"""A sampled mean this many times the printed mass, or below its inverse, is asked about."""

_OWN = "own_reasoning"
_TABLE = ("mean_from", ("table",))
_SAMPLE = ("mean_from", ("sample",))


def _widest() -> float:
    """Return the largest printed spread between animals, over their mean."""
    return max(float(each["mass_spread"]) / float(each["mass"]) for each in rows("insect_bodies"))


def known(key: str, mass: float | None) -> Mean:
    """Return what is known of one kind before anything is weighed: mass, error and spread in mg.

    The mean of one nest may lie as far from the printed mean as one animal does, or anywhere in
    the printed range. A typed mass gets the widest printed spread.

    Parameters
    ----------
    key : row of ``insect_bodies`` or ``caught_animals``, or ``typed``
    mass : mg, for ``typed``

    Source: weigh_cautions; the tables name theirs.
    """
    if key == "typed":
        assert mass is not None
        return Mean(mass=mass, error=_widest() * mass, spread=_widest() * mass)
    for each in rows("insect_bodies"):
        if each["key"] == key:
            spread = float(each["mass_spread"])
            return Mean(mass=float(each["mass"]), error=spread, spread=spread)
    each = row("caught_animals", key)
    error = range_error(*each["range"])
    return Mean(mass=float(each["mass"]), error=error, spread=error)


def core(
    empty: float,
    full: float,
    step: float,
    animal: str,
    mass: float | None,
    mean_from: str,
    sample_counts: tuple[int, ...] | None,
    sample_masses: tuple[float, ...] | None,
    second: str | None,
    share: float | None,
) -> Answer:
    """Compute the count with its limits.

    Parameters
    ----------
    empty, full, step : g
    animal, second : rows of the tables of bodies, or ``typed`` and ``none``
    mass : mg, of a typed animal
    mean_from : ``sample`` or ``table``
    sample_counts, sample_masses : animals and grams of each handful
    share : percent of the second kind, by number

    Returns the :class:`Answer`. Raises :class:`InputError` for a full chamber lighter than the
    empty one and for handfuls without their count. Range and sources: the declaration below.
    """
    if full < empty:
        allowed = f"{empty:g} g or more, the empty chamber"
        raise InputError(
            "full",
            full,
            allowed,
            f"Chamber with the catch: {full:g} g is lighter than the empty chamber; allowed is "
            f"{allowed}.",
        )
    printed = known(animal, mass)
    if mean_from == "sample":
        counts, masses = sample_counts or (), sample_masses or ()
        _matched(counts, masses)
        grams = [each * MG for each in masses]
        mean = sampled(counts, grams, printed.spread / printed.mass, step * MG)
        number = sum(counts)
    else:
        mean, number = printed, 0
        if second is not None and second != "none":
            mean = mixed(printed, known(second, None), required("share", share) / 100)
    net = full - empty
    found = count_by_weight(net * MG, step_error(step, 2) * MG, mean)
    return Answer(
        values=_values(net, mean, found),
        cautions=list(_cautions(net, step, mean, printed, number, found, mean_from)),
    )


def _matched(counts: tuple[int, ...], masses: tuple[float, ...]) -> None:
    if counts and len(counts) == len(masses):
        return
    allowed = "one mass for each handful, and one handful at least"
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


def _cautions(
    net: float, step: float, mean: Mean, printed: Mean, number: int, found: Count, mean_from: str
) -> Iterator[Caution]:
    yield Caution(
        level="caution",
        text="Look into the chamber first: bees, leaves, comb and soil count as animals.",
        reason="The scale weighs all that is in it. Honey bees end the work.",
        source="weigh_cautions",
    )
    if net < STEPS * step:
        yield Caution(
            level="caution",
            text="The scale is too coarse for this catch. Count it, or take a finer scale.",
            reason="A display hides up to half a step at each of the two weighings.",
            source="gum_resolution",
        )
    if mean_from == "table":
        yield Caution(
            level="caution",
            text="The mass of one animal is from print, not from this nest. Weigh a sample.",
            reason="Mass changes with nest, season and food. The interval takes the mean to be as "
            "unsure as the mass of one animal.",
            source="weigh_cautions",
        )
    elif number < ENOUGH:
        yield Caution(
            level="caution",
            text=f"The sample is small. Weigh {ENOUGH} animals or more, picked blindly.",
            reason="The error of the mean falls with the root of their number.",
            source="cochran_1977",
        )
    if mean_from == "sample" and not 1 / FAR <= mean.mass / printed.mass <= FAR:
        yield Caution(
            level="caution",
            text=f"One animal of the sample weighs {mean.mass:.0f} mg, but {printed.mass:.0f} mg "
            "is printed for this kind. Check count, unit and jar.",
            reason="A slip in one of them moves the whole count.",
            source="weigh_cautions",
        )
    if found.high is None:
        yield Caution(
            level="caution",
            text="The mean mass is too unsure for an upper end. Weigh a larger sample.",
            reason="The mean cannot be told from one near nothing, so no number is ruled out.",
            source="fieller_1954",
        )
    yield Caution(
        level="note",
        text="Weigh live and dry animals at once. Wet, fed, dead or starved ones weigh "
        "differently.",
        reason="Water and food are part of the weight. No printed factor for wasps is known to us.",
        source="weigh_cautions",
    )
    yield Caution(
        level="note",
        text="A queen or a male can weigh as much as several workers. Sort them out first.",
        reason="A mean of workers counts a queen as more than one animal.",
        source="weigh_cautions",
    )


def _mass(name: str, label: str, meaning: str, low: float, default: float) -> Number:
    return Number(
        name=name,
        label=label,
        meaning=meaning,
        unit="g",
        customary="oz",
        low=low,
        high=100_000,
        source=_OWN,
        usual=default,
        digits=1,
        customary_digits=2,
    )


def _seconds() -> tuple[Option, ...]:
    return (
        Option(value="none", label="none"),
        *(each for each in animal_options() if each.value != "typed"),
    )


weigh_the_catch = Calculator(
    name="weigh_the_catch",
    title="Count by weight",
    part="method",
    purpose="From the chamber, empty and with the catch, and the mass of one animal: how many "
    "animals are in it, with the interval.",
    inputs=(
        _mass("empty", "Chamber, empty", "The closed chamber before the pass; 0 if the scale was "
              "set to zero with the chamber on it.", 0, 640),
        _mass("full", "Chamber with the catch", "The same closed chamber after the pass, on the "
              "same scale.", 0, 671),
        Number(
            name="step",
            label="Smallest step of the scale",
            meaning="By how much the last digit jumps.",
            unit="g",
            customary="oz",
            low=0.001,
            high=1000,
            why="from a fine pocket scale to a coarse hanging scale",
            source=_OWN,
            usual=1,
            digits=1,
            customary_digits=3,
        ),
        *ANIMAL,
        Choice(
            name="mean_from",
            label="Mass of one animal from",
            meaning="A sample of this catch is far better.",
            options=(
                Option(value="sample", label="a sample I weighed"),
                Option(value="table", label="the table of this book"),
            ),
            usual="sample",
        ),
        Counts(
            name="sample_counts",
            label="Animals in each handful",
            meaning="Picked blindly from this catch and counted one by one.",
            item="handful",
            low=1,
            high=5000,
            source=_OWN,
            usual=(150,),
            most=20,
            only_if=_SAMPLE,
        ),
        Numbers(
            name="sample_masses",
            label="Mass of each handful",
            meaning="Without its jar, in the same order.",
            item="handful",
            unit="g",
            customary="oz",
            low=0.01,
            high=10_000,
            source=_OWN,
            usual=(11.5,),
            most=20,
            digits=1,
            customary_digits=2,
            only_if=_SAMPLE,
        ),
        Choice(
            name="second",
            label="Second kind in the chamber",
            meaning="Another caste or species, unsorted.",
            options=_seconds(),
            usual="none",
            only_if=_TABLE,
        ),
        Number(
            name="share",
            label="Share of the second kind",
            meaning="By number, as you guess; the truth may be anywhere from 0 to twice that.",
            unit="percent",
            low=0,
            high=50,
            why="a kind of more than half is the first one",
            source=_OWN,
            usual=5,
            step=1,
            only_if=_TABLE,
        ),
    ),
    outputs=(
        Out(name="count", label="Animals by weight", kind="count", main=True,
            meaning="The net weight over the mean mass, to the nearest animal."),
        Out(name="interval", label="Animals, 95 % interval", kind="interval", main=True,
            meaning="Holds the true number in 95 of 100 such weighings, if nothing else is in the "
            "chamber."),
        Out(name="net", label="Net weight", unit="g", customary="oz", digits=1,
            customary_digits=2, meaning="Chamber with the catch less the empty chamber."),
        Out(name="mean_mass", label="Mass of one animal", unit="mg",
            meaning="The mean that was used."),
        Out(name="largest", label="Largest error comes from", kind="text",
            meaning="The scale, the spread between bodies, or the mean mass."),
        Out(name="scale_error", label="Error of the scale", unit="", digits=1,
            meaning="Standard error in animals, from the smallest step at two weighings."),
        Out(name="bodies_error", label="Error of the bodies", unit="", digits=1,
            meaning="Standard error in animals, as no two weigh the same."),
        Out(name="mean_error", label="Error of the mean", unit="", digits=1,
            meaning="Standard error in animals, from the mean mass."),
        Out(name="sample_needed", label="Sample for a good mean", kind="count",
            meaning="Animals to weigh so that the mean is known to 5 % either way, on a scale that "
            "is fine enough."),
    ),
    core=core,
    sources=(
        "gum_resolution",
        "tartu_weighing",
        "steiner_mackay",
        "fieller_1954",
        "cochran_1977",
        "weigh_cautions",
        "kovac_stabentheiner_2012",
        "crabro_mass_page",
        "velutina_mass_2015",
        "vespula_queen_mass",
        "jaworski_2019",
        "coloss_weigh_bees",
    ),
    formula=(
        (r"N=\frac{W}{m},\qquad W=W_{full}-W_{empty}", "count from the net weight and the mean "
         "mass", "coloss_weigh_bees"),
        (r"u_W^2=2\,\frac{d^2}{12}", "error of two readings on a scale with the smallest step d",
         "gum_resolution"),
        (r"m=\frac{\sum M}{\sum n},\qquad u_m^2=\frac{s^2}{\sum n}+\frac{k\,d^2/6}{(\sum n)^2}",
         "mean of k handfuls with n animals and the mass M; from three handfuls on the error of "
         "the ratio, where it is larger", "cochran_1977"),
        (r"(W-Nm)^2\le t^2\left(u_W^2+N s^2+N^2u_m^2\right)", "all N that the weight does not rule "
         "out: scale, spread s between bodies, mean", "fieller_1954"),
        (r"m=(1-q)m_1+q\,m_2,\qquad u_q=\frac{q}{\sqrt3}", "two kinds, with a guessed share q",
         "own_reasoning"),
    ),
    assumptions=(
        "Nothing but the animals was added between the two weighings. All else makes the count too "
        "high.",
        "The sample is a blind pick of this catch. Slow animals picked first make the mean wrong.",
        "Bodies of this nest vary as the printed ones do. If they vary more, the interval is too "
        "narrow.",
        "The scale is level, at rest and true. Only its smallest step is in the interval.",
    ),
)  # fmt: skip

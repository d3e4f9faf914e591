"""What a reader must know before the numbers of "Count by weight"."""

from __future__ import annotations

from collections.abc import Iterator

from calc.declare import Caution
from calc.method.weigh_the_catch.weighing import Count, Mean

ENOUGH = 30
"""Animals in a sample below which the answer asks for more."""

STEPS = 20
"""Steps of the scale in the catch below which the answer asks for a finer scale: the two roundings
alone are then worth more than 4 % of the catch."""

FAR = 2.0
"""A sampled mean this many times the printed mass, or below its inverse, is asked about."""


def cautions(
    net: float, step: float, mean: Mean, printed: Mean, number: int | None, found: Count
) -> Iterator[Caution]:
    """Yield the cautions of one run; ``number`` of animals in the sample, None for the table."""
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
    if number is None:
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
    if number is not None and not 1 / FAR <= mean.mass / printed.mass <= FAR:
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

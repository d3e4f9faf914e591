"""What "Count by weight" answers, the main answers first."""

from __future__ import annotations

from calc.declare import Out


def _error(name: str, label: str, meaning: str) -> Out:
    return Out(name=name, label=label, meaning=f"Standard error in animals, {meaning}.", digits=1)


RESULTS: tuple[Out, ...] = (
    Out(
        name="count",
        label="Animals by weight",
        meaning="The net weight over the mean mass, to the nearest animal.",
        kind="count",
        main=True,
    ),
    Out(
        name="interval",
        label="Animals, 95 % interval",
        meaning="Holds the true number in 95 of 100 such weighings, if nothing else is in the "
        "chamber.",
        kind="interval",
        main=True,
    ),
    Out(
        name="net",
        label="Net weight",
        meaning="Chamber with the catch less the empty chamber.",
        unit="g",
        customary="oz",
        digits=1,
        customary_digits=2,
    ),
    Out(
        name="mean_mass",
        label="Mass of one animal",
        meaning="The mean that was used.",
        unit="mg",
    ),
    Out(
        name="largest",
        label="Largest error comes from",
        meaning="The scale, the spread between bodies, or the mean mass.",
        kind="text",
    ),
    _error("scale_error", "Error of the scale", "from the smallest step at two weighings"),
    _error("bodies_error", "Error of the bodies", "as no two weigh the same"),
    _error("mean_error", "Error of the mean", "from the mean mass"),
    Out(
        name="sample_needed",
        label="Sample for a good mean",
        meaning="Animals to weigh so that the mean is known to 5 % either way, on a scale that "
        "is fine enough.",
        kind="count",
    ),
)

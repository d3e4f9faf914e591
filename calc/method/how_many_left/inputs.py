"""What "How many are left" asks for."""

from __future__ import annotations

from calc.declare import Given, choice, count, counts, number, numbers

_ESTIMATORS = (
    ("auto", "Automatic", "Carle & Strub for equal passes; with effort where minutes differ."),
    ("carle_strub", "Carle & Strub", "Weighted maximum likelihood; always has an answer."),
    ("zippin", "Zippin", "Maximum likelihood, binomial-total form."),
    ("seber", "Seber, closed form", "2 or 3 passes."),
    ("robson_regier", "Robson & Regier", "2 passes, corrected for bias."),
    ("moran_schnute", "Moran & Schnute", "Profile-likelihood interval, 3 passes or more."),
    ("leslie", "Leslie, with minutes", "Line of the catch per minute, 3 passes or more."),
    (
        "gould_pollock",
        "Likelihood with minutes",
        "Gould & Pollock; unequal passes, zero catches allowed.",
    ),
)


class Inputs(Given):
    """Catch and length of each pass, and when few enough are left."""

    catches: tuple[int, ...] = counts(
        "Caught on each pass",
        "Wasps caught on pass 1, pass 2 and so on; 0 counts as a pass.",
        item="pass",
        low=0,
        high=100_000,
        why="the count of one catch, with room to spare; two passes or more give an estimate",
        source="arithmetic",
        most=30,
        plausible=(0, 200),
        example=(60, 35, 20, 11),
    )
    minutes: tuple[float, ...] | None = numbers(
        "Minutes of each pass",
        "Only if the passes were not equally long; one value for each pass.",
        "min",
        item="pass",
        low=0.1,
        high=600,
        why="the length of one pass",
        source="arithmetic",
        most=30,
        plausible=(5, 15),
        digits=1,
        step=1,
        optional=True,
    )
    most_left: int = count(
        "Leave at most",
        "How many may be left when you make no more passes; 4 means fewer than five.",
        low=0,
        high=100,
        why="more than this is no end of the catching",
        plausible=(0, 10),
        origin="usual",
        usual=4,
        usual_source="own_reasoning",
    )
    confidence: float = number(
        "Wanted chance",
        "How sure you want to be that no more than that are left.",
        "percent",
        low=50,
        high=99.9,
        why="below half it is a guess, above it the model is not sure of itself",
        plausible=(80, 99),
        origin="usual",
        usual=95,
        usual_source="own_reasoning",
        digits=1,
        step=1,
    )
    estimator: str = choice(
        "Estimator",
        "Leave on automatic unless you compare with other work.",
        _ESTIMATORS,
        origin="extra",
        usual="auto",
        usual_source="own_reasoning",
    )

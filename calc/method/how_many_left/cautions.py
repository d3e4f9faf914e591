"""What must be said beside a removal estimate, and when there is no number at all."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from calc import rules
from calc.declare import Caution
from calc.method.how_many_left.choice import WITH_EFFORT, Fit, Job
from calc.method.how_many_left.fit import FitTest, last_rise_chance
from calc.method.how_many_left.profile import EqualityTest
from calc.method.removal import falls

REJECTED = 0.05
"""Below this chance a test speaks against equal chances on every pass."""

WIDE = 2.0
"""Upper limit over estimate beyond which the catch is said to fall too little."""


@dataclass(frozen=True, kw_only=True, slots=True)
class NoEstimate:
    """Why there is no number, and what to do instead."""

    why: str
    step: str
    reason: str
    source: str

    def caution(self, hides: Sequence[str]) -> Caution:
        """Return the stop that withholds the numbers."""
        text = f"Do not open, there is no estimate: {self.why}"
        return Caution(
            level="stop", text=text, reason=self.reason, source=self.source, hides=tuple(hides)
        )


NOBODY = NoEstimate(
    why="nobody was caught.",
    step="Stop: check that it is the right opening, that air flows and that wasps fly. Treat the "
    "nest as full.",
    reason="No catch looks the same for an empty nest and for a full one that you do not reach.",
    source="removal_at_nest",
)
ONE_PASS = NoEstimate(
    why="one pass shows no fall.",
    step="Go on: make a second pass, just as long, and enter both.",
    reason="The number left is read from how fast the catch falls.",
    source="bohlin_1989",
)
RISING = NoEstimate(
    why="the catch rises. Wasps are coming home, or later passes were longer or better.",
    step="Stop: catch those coming home and count them apart. Start a new count when no more come.",
    reason="A rising catch means that the nest fills faster than you empty it, or that the passes "
    "were not equal.",
    source="removal_at_nest",
)
FLAT = NoEstimate(
    why="the catch does not fall.",
    step="Go on in equal passes. If it still does not fall, look for wasps coming home or a second "
    "entrance.",
    reason="A number would come from the formula, not from your catch; many more may be inside.",
    source="bohlin_1989",
)
NO_LINE = NoEstimate(
    why="the catch per minute does not fall along a line.",
    step="Go on, or choose the automatic estimator.",
    reason="Leslie's number is where the falling line reaches zero.",
    source="leslie_davis_1939",
)


def no_estimate(job: Job, estimator: str) -> NoEstimate | None:
    """Return why these catches allow no estimate, ``None`` if they do."""
    if job.caught == 0:
        return NOBODY
    if len(job.catches) == 1:
        return ONE_PASS
    # An estimator that takes the passes as equal needs a fall per pass; minutes, if given, must
    # show one too, or the fall is only that of the shorter passes.
    for effort in (job.effort, job.effort if estimator in WITH_EFFORT else job.alike):
        if not falls(job.catches, effort):
            first, last = (job.catches[at] / effort[at] for at in (0, -1))
            return RISING if last > first else FLAT
    return None


def always() -> Iterator[Caution]:
    """Yield what holds for every estimate."""
    yield Caution(
        level="caution",
        text="Read every number as “at least”. Wasps abroad, soft new wasps and wasps deep in the "
        f"comb are not in it. {rules.text('never_empty', 'number', 'suit')}",
        reason="The count sees only wasps that your air reaches while you work.",
        source="removal_at_nest",
    )
    yield Caution(
        level="note",
        text="Foragers coming home push the estimate up. A disturbed nest pushes it down: guards "
        "leave first, the rest hide; so do shorter or gentler later passes.",
        reason="The method needs a closed nest, equal passes, and the same chance for every wasp.",
        source="bohlin_1989",
    )


def about_fit(fit: FitTest | None, equality: EqualityTest | None) -> Iterator[Caution]:
    """Yield a caution where the catch falls otherwise than equal chances allow."""
    first_differs = equality is not None and equality.p_value < REJECTED
    if first_differs and equality is not None:
        easier = equality.first_probability > equality.later_probability
        yield Caution(
            level="caution",
            text="The first pass caught better than the later ones: expect clearly more inside "
            "than shown."
            if easier
            else "The first pass caught worse than the later ones: the numbers shown may be too "
            "high, but do not count on it.",
            reason="A test of equal chances on all passes fails, so the interval is wrong too.",
            source="schnute_1983",
        )
    elif fit is not None and fit.p_value < REJECTED:
        yield Caution(
            level="caution",
            text="The catch falls unevenly: the interval is too narrow, and most often the "
            "estimate is too low.",
            reason="The chi-square test of equal chances on all passes fails.",
            source="peterson_2004",
        )


FEWEST_PASSES = 3
"""Passes below which nobody can see whether the survivors are harder to catch."""


def about_size(job: Job, fit: Fit) -> Iterator[Caution]:
    """Yield cautions about few wasps, few passes and a weak fall."""
    k, enough = len(job.catches), 200 if len(job.catches) == 2 else 50
    if k < FEWEST_PASSES:
        yield Caution(
            level="caution",
            text="Two passes are too few: make a third before you trust the numbers.",
            reason="Two-pass estimates came out below later ones in most published trials, and "
            "two passes cannot show a falling chance of capture.",
            source="riley_fausch_1992",
        )
    if fit.number < enough:
        yield Caution(
            level="caution",
            text=f"Small count: with {k} passes the interval is rough below about {enough} wasps.",
            reason="The errors of the formulas hold for larger numbers.",
            source="bohlin_1989",
        )
    if fit.high is None or fit.high > WIDE * fit.number:
        yield Caution(
            level="caution",
            text="The catch falls too little to say how many there are at most. Do not plan on "
            "the estimate; go by the upper end.",
            reason="A small fall fits a nest with many times as many wasps.",
            source="removal_thresholds",
        )
    if fit.probability >= 1:
        yield Caution(
            level="caution",
            text="All came on the first pass. The estimate is then what you caught, but a few may "
            "be left: see the upper end.",
            reason="Passes without a catch do not prove that none is left.",
            source="removal_posterior",
        )


def about_minutes(job: Job, estimator: str, auto: bool) -> Iterator[Caution]:
    """Yield what unequal passes change."""
    if job.differ and not job.by_minutes:
        yield Caution(
            level="note",
            text="Your passes differ by a tenth or less, so they count as equal: the minutes were "
            "not used. To use them, choose “Likelihood with minutes”.",
            reason="So small a difference changes the estimate by less than its interval.",
            source="removal_thresholds",
        )
    if not job.uneven:
        return
    if estimator not in WITH_EFFORT:
        yield Caution(
            level="caution",
            text="Your passes differ in length, but this estimator takes them as equal. Choose "
            "the automatic one.",
            reason="Shorter later passes make the catch fall by themselves: the estimate is then "
            "too low.",
            source="bohlin_1989",
        )
    elif auto:
        yield Caution(
            level="note",
            text="Your passes differ in length, so an estimator that counts the minutes was used.",
            reason="The passes differ by more than a tenth.",
            source="removal_thresholds",
        )


def about_line(fit: Fit) -> Iterator[Caution]:
    """Yield cautions about a Leslie line."""
    if fit.raised:
        yield Caution(
            level="caution",
            text="The line gives fewer wasps than you hold; the catch itself is shown instead. "
            "Choose the automatic estimator.",
            reason="A straight line suits small catches, not a nest that is nearly emptied.",
            source="ricker_1975",
        )
    if fit.slope_chance is not None and fit.slope_chance > REJECTED:
        yield Caution(
            level="caution",
            text="The fall of the line may be chance: there is no sound upper end.",
            reason="The test of the slope does not reject a flat line.",
            source="fsa_reference",
        )


def about_last(job: Job) -> Iterator[Caution]:
    """Yield a caution where the catch has risen again at the end."""
    if job.uneven or len(job.catches) < 3 or job.catches[-1] <= job.catches[-2]:
        return
    if last_rise_chance(job.catches) < REJECTED:
        yield Caution(
            level="caution",
            text="The last catch rose again. Wasps are probably coming home: count them apart and "
            "do not stop yet.",
            reason="So large a rise is hardly chance.",
            source="removal_at_nest",
        )

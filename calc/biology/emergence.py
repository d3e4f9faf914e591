"""What will still emerge: the calculator, from sealed cells to days and numbers."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import dataclass
from typing import Any

from calc.biology import emergence_words as say
from calc.biology.emergence_forms import INPUTS, LOOKS, OUTPUTS, SCHEDULE
from calc.biology.emergence_model import Case, band, cases, days_left, even_ages_test
from calc.declare import Answer, Axis, Calculator, Chart, Series
from calc.errors import InputError
from calc.method.distributions import NORMAL_975
from calc.method.quantiles import wilson
from calc.tables import row

QUEEN_EXTRA = (2.0, 3.5, 5.0)
"""Days that queen cells stay sealed longer: low, middle, high [gyne_extra_days]."""

_SHARE = 0.95
_DAYS = (1, 2, 3, 5, 7, 10, 14, 18, 21, 25)
_STEPS = 20


@dataclass(frozen=True, kw_only=True, slots=True)
class Brood:
    """Sealed cells of one caste with the ways to read them: the middle one and the outer ones."""

    cells: int
    counts: tuple[int, ...] | None
    middle: Case
    outer: tuple[Case, ...]

    def expected(self, day: float) -> float:
        """Cells expected out by a day."""
        return self.middle.out(self.cells, self.counts, day).number

    def limits(self, day: float) -> tuple[float, float]:
        """95 % limits over all readings."""
        return band(self.outer, self.cells, self.counts, day) if self.cells else (0.0, 0.0)


def core(
    species: str,
    worker_cells: int,
    queen_cells: int,
    sampled: str,
    prepupa: int | None,
    white: int | None,
    pink: int | None,
    dark: int | None,
    colouring: int | None,
    full: int | None,
    temperature: float,
) -> Answer:
    """Compute when and how many adults come out of sealed cells.

    Parameters
    ----------
    species : value of the choice
    worker_cells, queen_cells : sealed cells
    sampled : ``yes`` or ``no``
    prepupa, white, pink, dark, colouring, full : opened cells of each look
    temperature : of the brood, degC

    Returns the :class:`Answer`. Raises :class:`InputError` for more opened than sealed cells and
    for no sealed cell. Range and sources: the declaration below.
    """
    counts = None
    if sampled == "yes":
        looks = (prepupa, white, pink, dark, colouring, full)
        counts = tuple(each or 0 for each in looks)
    _check(worker_cells + queen_cells, counts)
    days = _sealed_days(species, temperature)
    workers, queens = _broods(worker_cells, queen_cells, counts, days)
    open_end = temperature < say.COLD and species != "velutina"
    stop = say.cold_stop(temperature, SCHEDULE)
    even = None if counts is None else even_ages_test(counts, _lengths())[2]
    last = None if open_end else _last(workers, queens)
    values: dict[str, Any] = {
        **_days_95(workers, queens, open_end),
        "last_queen": _last_queen(queens, open_end),
        "holding": say.holding(None if stop else last),
        "schedule": _schedule(workers, queens, open_end),
        "sealed_days": (days[0], None if open_end else days[2]),
        "all_out": last,
        "looks": [] if counts is None else _looks(counts, days),
        "even_chance": None if even is None else 100 * even,
    }
    cautions = [
        *say.first(queen_cells),
        *([stop] if stop else []),
        *say.about_warmth(temperature, species),
        *(say.about_sample(sum(counts), even) if counts is not None else ()),
        *say.about_method(species, counts is not None),
    ]
    charts = [] if stop else [_chart(workers, queens, open_end)]
    return Answer(values=values, cautions=cautions, charts=charts)


def _check(cells: int, counts: tuple[int, ...] | None) -> None:
    if cells == 0:
        raise InputError(
            "worker_cells",
            0,
            "one sealed cell or more, of workers or queens",
            "Sealed worker cells: there is no sealed cell; allowed is one or more, of workers or "
            "queens.",
        )
    if counts is not None and not 1 <= sum(counts) <= cells:
        allowed = f"1 to {cells} opened cells in all"
        raise InputError(
            "prepupa",
            sum(counts),
            allowed,
            f"Larva or prepupa: {sum(counts)} cells opened in all; allowed is {allowed}.",
        )


def _sealed_days(species: str, temperature: float) -> tuple[float, float, float]:
    """Return low, middle and high sealed days; for cool V. velutina those of the cool row."""
    found = row("development", species)
    low, high = found["sealed"]
    if species == "velutina" and temperature < say.COLD:
        low, high = row("development", "kunming")["sealed"]
        return float(low), (low + high) / 2, float(high)
    return float(low), float(found["middle"]), float(high)


def _scale(column: str) -> list[tuple[float, float]]:
    ends = [row("pupal_colours", key)[column] for key in LOOKS]
    return [(low / 100, high / 100) for low, high in ends]


def _middle_scale() -> list[tuple[float, float]]:
    return [
        ((a + c) / 2, (b + d) / 2)
        for (a, b), (c, d) in zip(_scale("first"), _scale("second"), strict=True)
    ]


def _lengths() -> list[float]:
    return [high - low for low, high in _middle_scale()]


def _broods(
    workers: int, queens: int, counts: tuple[int, ...] | None, days: tuple[float, float, float]
) -> tuple[Brood, Brood]:
    scales = [] if counts is None else [_scale("first"), _scale("second")]
    middle = [] if counts is None else [_middle_scale()]
    made = []
    for cells, extra in ((workers, (0.0, 0.0, 0.0)), (queens, QUEEN_EXTRA)):
        low, mid, high = (day + more for day, more in zip(days, extra, strict=True))
        made.append(
            Brood(
                cells=cells,
                counts=counts,
                middle=cases([mid], middle)[0],
                outer=tuple(cases([low, mid, high], scales)),
            )
        )
    return made[0], made[1]


def _days_95(workers: Brood, queens: Brood, open_end: bool) -> dict[str, Any]:
    cells = workers.cells + queens.cells
    days = [_day_of(workers, queens, place, cells) for place in range(len(workers.outer))]
    middle = _crossing(
        lambda day: (workers.expected(day) + queens.expected(day)) / cells, queens.middle.days
    )
    return {
        "days_95": None if open_end else middle,
        "days_95_range": (min(days), None if open_end else max(days)),
    }


def _day_of(workers: Brood, queens: Brood, place: int, cells: int) -> float:
    one, two = workers.outer[place], queens.outer[place]

    def share(day: float) -> float:
        first = one.out(workers.cells, workers.counts, day).number
        return (first + two.out(queens.cells, queens.counts, day).number) / cells

    return _crossing(share, two.days)


def _crossing(share: Callable[[float], float], high: float) -> float:
    low = 0.0
    for _ in range(18):  # to a fraction of a minute
        middle = (low + high) / 2
        if share(middle) < _SHARE:
            low = middle
        else:
            high = middle
    return high


def _last(workers: Brood, queens: Brood) -> float:
    return max(case.days for each in (workers, queens) if each.cells for case in each.outer)


def _last_queen(queens: Brood, open_end: bool) -> tuple[float, float | None] | None:
    """Return the earliest day for the youngest look seen, and the longest sealed time."""
    if not queens.cells:
        return None
    low = min(case.last(queens.counts) for case in queens.outer)
    return low, None if open_end else max(case.days for case in queens.outer)


def _schedule(workers: Brood, queens: Brood, open_end: bool) -> list[dict[str, Any]]:
    made = []
    for day in _DAYS:
        low_w, high_w = workers.limits(day)
        low_q, high_q = queens.limits(day)
        made.append(
            {
                "day": day,
                "all": None if open_end else workers.expected(day) + queens.expected(day),
                "interval": (0.0 if open_end else low_w + low_q, high_w + high_q),
                "workers": None if open_end else workers.expected(day),
                "queens": None if open_end else queens.expected(day),
            }
        )
    return made


def _looks(counts: Sequence[int], days: tuple[float, float, float]) -> list[dict[str, Any]]:
    n, made = sum(counts), []
    for key, count in zip(LOOKS, counts, strict=True):
        found = row("pupal_colours", key)
        spans = [
            days_left(day, found[scale][0] / 100, found[scale][1] / 100)
            for day in (days[0], days[2])
            for scale in ("first", "second")
        ]
        low, high = wilson(count, n, NORMAL_975)
        made.append(
            {
                "look": found["look"],
                "opened": count,
                "share": (100 * low, 100 * high),
                "left": (min(a for a, _ in spans), max(b for _, b in spans)),
            }
        )
    return made


def _chart(workers: Brood, queens: Brood, open_end: bool) -> Chart:
    end = max(case.days for case in queens.outer)
    x = tuple(end * step / _STEPS for step in range(_STEPS + 1))
    bands = [
        tuple(a + b for a, b in zip(workers.limits(day), queens.limits(day), strict=True))
        for day in x
    ]
    series = [
        Series(
            label="95 % range, all readings",
            x=x,
            y=tuple(0.0 if open_end else low for low, _ in bands),
            y2=tuple(high for _, high in bands),
            style="band",
        )
    ]
    if not open_end:
        both = tuple(workers.expected(day) + queens.expected(day) for day in x)
        series.append(Series(label="all", x=x, y=both))
        if queens.cells:
            series.append(
                Series(
                    label="from queen cells",
                    x=x,
                    y=tuple(queens.expected(day) for day in x),
                    style="dashed",
                )
            )
    return Chart(
        name="emergence",
        title="Out of the sealed cells",
        alt=f"Adults out against days, up to {workers.cells + queens.cells} in "
        f"{end:.0f} days, with a band over all readings.",
        x=Axis(label="days from the count", unit="day", low=0.0),
        y=Axis(label="adults out", low=0.0),
        series=tuple(series),
    )


still_to_emerge = Calculator(
    name="still_to_emerge",
    title="What will still emerge",
    part="biology",
    purpose="From sealed cells and the look of the brood: how many adults come out by which day, "
    "and when the last young queen is due.",
    inputs=INPUTS,
    outputs=OUTPUTS,
    core=core,
    sources=(
        "emergence_by_look",
        "renewal_uniform",
        "colour_shares_wide",
        "colour_shares_late",
        "sealed_ranges",
        "gyne_extra_days",
        "wilson_1927",
        "bumble_bee_stages",
        "gibo_1974_warmth",
    ),
    formula=(
        (
            r"F(t)=\sum_j w_j\,g_j(t),\qquad g_j=\operatorname{clip}\!\left("
            r"\frac{t-a_j}{b_j-a_j},0,1\right)",
            "share out by day t: look j has the share w and comes out between a and b",
            "emergence_by_look",
        ),
        (
            r"a_j=D\,(1-f_j^{high}),\qquad b_j=D\,(1-f_j^{low})",
            "days left of a look from the shares f of the sealed time D",
            "emergence_by_look",
        ),
        (
            r"SE^2=S^2\left(1-\frac nS\right)\frac{\sum w_jg_j^2-F^2}{n-1}+S\sum w_jg_j(1-g_j)",
            "error of the sample and chance of the cells together",
            "emergence_by_look",
        ),
        (
            r"F(t)=\min\!\left(\frac tD,1\right)",
            "without opened cells: even ages",
            "renewal_uniform",
        ),
    ),
    assumptions=(
        "Nothing dies. In nests 1.6 to 4.4 % of the brood was lost; away from the nest more is "
        "lost, so fewer come out than shown.",
        "Worker and queen cells look alike in age. If they do not, calculate each apart.",
        "The brood is as warm as a nest. Cooler brood comes later.",
        "Cells were opened without choosing, at the middle and the rim.",
    ),
)

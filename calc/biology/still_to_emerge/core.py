"""The core of "What will still emerge": from sealed cells to days and numbers."""

from __future__ import annotations

from collections.abc import Sequence
from typing import Any

from calc.biology.still_to_emerge import cautions as say
from calc.biology.still_to_emerge.brood import (
    LOOKS,
    Brood,
    broods,
    days_95,
    last_queen,
    lengths,
    longest,
    sealed_days,
)
from calc.biology.still_to_emerge.charts import chart
from calc.biology.still_to_emerge.inputs import Inputs
from calc.biology.still_to_emerge.model import days_left, even_ages_test
from calc.biology.still_to_emerge.results import SCHEDULE
from calc.declare import Answer
from calc.errors import InputError
from calc.numeric.distributions import NORMAL_975
from calc.numeric.limits import wilson
from calc.tables import row

_DAYS = (1, 2, 3, 5, 7, 10, 14, 18, 21, 25)


def core(x: Inputs) -> Answer:
    """Compute when and how many adults come out of sealed cells; units in the declaration.

    Raises :class:`InputError` for more opened than sealed cells and for no sealed cell.
    """
    counts = x.opened
    _check(x.worker_cells + x.queen_cells, counts)
    days = sealed_days(x.species, x.temperature)
    workers, queens = broods(x.worker_cells, x.queen_cells, counts, days)
    open_end = x.temperature < say.COLD and x.species != "velutina"
    stop = say.cold_stop(x.temperature, SCHEDULE)
    even = None if counts is None else even_ages_test(counts, lengths())[2]
    last = None if open_end else longest(workers, queens)
    values: dict[str, Any] = {
        **days_95(workers, queens, open_end),
        "last_queen": last_queen(queens, open_end),
        "holding": say.holding(None if stop else last),
        "schedule": _schedule(workers, queens, open_end),
        "sealed_days": (days[0], None if open_end else days[2]),
        "all_out": last,
        "looks": [] if counts is None else _looks(counts, days),
        "even_chance": None if even is None else 100 * even,
    }
    cautions = [
        *say.first(x.queen_cells),
        *([stop] if stop else []),
        *say.about_warmth(x.temperature, x.species),
        *(say.about_sample(sum(counts), even) if counts is not None else ()),
        *say.about_method(x.species, counts is not None),
    ]
    charts = [] if stop else [chart(workers, queens, open_end)]
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

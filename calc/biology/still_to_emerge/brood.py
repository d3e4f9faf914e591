"""The sealed cells of a comb: how each caste can be read, and when it is out."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass
from typing import Any

from calc.biology.still_to_emerge.cautions import COLD
from calc.biology.still_to_emerge.model import Case, band, cases
from calc.tables import row

LOOKS = ("prepupa", "white", "pink", "dark", "colouring", "full")
"""Keys of the table of looks, youngest first, in the order of the form."""

QUEEN_EXTRA = (2.0, 3.5, 5.0)
"""Days that queen cells stay sealed longer: low, middle, high [gyne_extra_days]."""

_SHARE = 0.95


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


def sealed_days(species: str, temperature: float) -> tuple[float, float, float]:
    """Return low, middle and high sealed days; for cool V. velutina those of the cool row."""
    found = row("development", species)
    low, high = found["sealed"]
    if species == "velutina" and temperature < COLD:
        low, high = row("development", "kunming")["sealed"]
        return float(low), (low + high) / 2, float(high)
    return float(low), float(found["middle"]), float(high)


def scale_of(column: str) -> list[tuple[float, float]]:
    """Return the shares of the sealed time in which each look is seen, by one scale."""
    ends = [row("pupal_colours", key)[column] for key in LOOKS]
    return [(low / 100, high / 100) for low, high in ends]


def _middle_scale() -> list[tuple[float, float]]:
    return [
        ((a + c) / 2, (b + d) / 2)
        for (a, b), (c, d) in zip(scale_of("first"), scale_of("second"), strict=True)
    ]


def lengths() -> list[float]:
    """Return how long each look lasts, as a share of the sealed time."""
    return [high - low for low, high in _middle_scale()]


def broods(
    workers: int, queens: int, counts: tuple[int, ...] | None, days: tuple[float, float, float]
) -> tuple[Brood, Brood]:
    """Return worker and queen brood, from low, middle and high sealed days of workers."""
    scales = [] if counts is None else [scale_of("first"), scale_of("second")]
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


def days_95(workers: Brood, queens: Brood, open_end: bool) -> dict[str, Any]:
    """Return the days until 95 % are out, and their range; open where no late end is known."""
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


def longest(workers: Brood, queens: Brood) -> float:
    """Return the day by which every cell is out, or dead, by the longest reading."""
    return max(case.days for each in (workers, queens) if each.cells for case in each.outer)


def last_queen(queens: Brood, open_end: bool) -> tuple[float, float | None] | None:
    """Return the earliest day for the youngest look seen, and the longest sealed time."""
    if not queens.cells:
        return None
    low = min(case.last(queens.counts) for case in queens.outer)
    return low, None if open_end else max(case.days for case in queens.outer)

"""Where a date lies in the colony's year, from the table of printed calendars."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from typing import Any

from calc.tables import rows

MONTHS = (
    "Jan", "Feb", "Mar", "Apr", "May", "Jun", "Jul", "Aug", "Sep", "Oct", "Nov", "Dec",
)  # fmt: skip
_FIRST_DAYS = (1, 32, 60, 91, 121, 152, 182, 213, 244, 274, 305, 335, 366)
HALVES = 24
"""Half-months in a year; half-month 1 is early January."""

BORROWED = {
    "vulgaris": "vespula",
    "germanica": "vespula",
    "maculifrons": "vespula",
    "pensylvanica": "vespula",
    "squamosa": "vespula",
    "maculata": "arenaria",
    "media": "saxonica",
}
"""Group whose dates stand in for those that a species' own rows lack."""

Span = tuple[int, int]


def half_month(month: int, late: bool) -> int:
    """Return the number of a half-month, 1 to 24."""
    return 2 * month - (0 if late else 1)


def of_day(day: int) -> int:
    """Return the half-month of a day of the year, 1 to 366; the 16th begins the late half."""
    month = max(m for m in range(1, 13) if _FIRST_DAYS[m - 1] <= min(day, 365))
    return half_month(month, min(day, 365) - _FIRST_DAYS[month - 1] >= 15)


def length_of(month: int) -> int:
    """Return the days of a month, 1 to 12; February has 29."""
    return 29 if month == 2 else _FIRST_DAYS[month] - _FIRST_DAYS[month - 1]


def day_of_year(month: int, day: int) -> int:
    """Return the day of the year, 1 to 365; 29 February counts as 1 March."""
    return _FIRST_DAYS[month - 1] + day - 1


def first_day(half: int) -> int:
    """Return the day of the year on which a half-month begins."""
    return _FIRST_DAYS[(half - 1) // 2] + (0 if half % 2 else 15)


def last_day(half: int) -> int:
    """Return the day of the year on which a half-month ends."""
    return first_day(half + 1) - 1 if half < HALVES else 365


def span(text: str) -> Span:
    """Return the half-months of a text such as ``early Aug to late Sep``."""
    ends = text.split(" to ")
    return _half(ends[0]), _half(ends[-1])


def _half(text: str) -> int:
    part, month = text.split()
    return half_month(MONTHS.index(month) + 1, part == "late")


def shift(half: int) -> int:
    """Return the half-month half a year away, to change between the halves of the world."""
    return (half + 11) % HALVES + 1


@dataclass(frozen=True, kw_only=True, slots=True)
class Year:
    """Spans of a species over all its places, in half-months of the northern half.

    ``each_sexuals`` holds the span of queens and males of each place that prints one.
    """

    queen: Span | None
    workers: Span | None
    peak: Span | None
    sexuals: Span | None
    each_sexuals: tuple[Span, ...]
    end: Span | None
    borrowed: tuple[str, ...]
    latest_peak_start: int | None

    @property
    def workers_from(self) -> Span | None:
        """First workers: as printed, or a month after the queen [season_steps]."""
        if self.workers is not None or self.queen is None:
            return self.workers
        return min(HALVES, self.queen[0] + 2), min(HALVES, self.queen[1] + 2)

    @property
    def last(self) -> int:
        """Last half-month of the season where it is printed, else of the queens and males."""
        printed = [each[1] for each in (self.end, self.sexuals, self.peak) if each]
        return max(printed, default=HALVES)


def year(group: str) -> Year:
    """Return the year of a species: each span from the earliest to the latest printed date.

    Parameters
    ----------
    group : species or group of the table

    Range: what is printed; see the table. Source: season_calendar (table), season_steps.
    """
    own = _rows(group)
    other = _rows(BORROWED.get(group, group))
    found: dict[str, list[Span]] = {}
    borrowed = []
    for name in ("queen", "workers", "peak", "sexuals", "end"):
        spans = _spans(own, name)
        if not spans and group in BORROWED:
            spans = _spans(other, name)
            if spans:
                borrowed.append(name)
        found[name] = spans
    return Year(
        queen=_around(found["queen"]),
        workers=_around(found["workers"]),
        peak=_around(found["peak"]),
        sexuals=_around(found["sexuals"]),
        each_sexuals=tuple(found["sexuals"]),
        end=_around(found["end"]),
        borrowed=tuple(borrowed),
        latest_peak_start=max((low for low, _ in found["peak"]), default=None),
    )


def _rows(group: str) -> list[Mapping[str, Any]]:
    # An unknown yellowjacket may be any of them.
    groups = {group} if group != "vespula" else {"vespula", *_vespula()}
    return [each for each in rows("season_calendar") if each["group"] in groups]


def _vespula() -> list[str]:
    return [name for name, group in BORROWED.items() if group == "vespula"]


def _spans(found: list[Mapping[str, Any]], name: str) -> list[Span]:
    made = []
    for each in found:
        if name in each:
            low, high = span(each[name])
            south = each["half"] == "south"
            made.append((shift(low), shift(high)) if south else (low, high))
    return made


def _around(spans: list[Span]) -> Span | None:
    if not spans:
        return None
    return min(low for low, _ in spans), max(high for _, high in spans)


STAGES = {
    "founding": "queen alone or with first workers",
    "growing": "growing",
    "peak": "at its peak",
    "sexuals": "with young queens and males",
    "ending": "near its end",
    "over": "over, or not yet begun",
}
"""Stages of the colony and their words."""


def stages(when: int, found: Year) -> list[str]:
    """Return the stages that some place of the species has on a date.

    Parameters
    ----------
    when : half-month of the northern half
    found : from :func:`year`

    Range: see :func:`year`. Source: season_steps.
    """
    made = []
    workers, peak = found.workers_from, found.peak
    start = found.queen[0] if found.queen else (workers[0] - 2 if workers else 5)
    if start <= when <= (workers[1] if workers else start + 4):
        made.append("founding")
    grown = found.latest_peak_start or (found.sexuals[0] if found.sexuals else start + 8)
    if (workers[0] if workers else start + 3) <= when < grown:
        made.append("growing")
    if peak is not None and peak[0] <= when <= peak[1]:
        made.append("peak")
    if found.sexuals is not None and found.sexuals[0] <= when <= found.last:
        made.append("sexuals")
    if found.end is not None and found.end[0] <= when <= found.end[1]:
        made.append("ending")
    if when < start or when > found.last:
        made.append("over")
    return made or ["growing"]


def growth(when: int, found: Year) -> float:
    """Return how far a colony can be on its way from first workers to its peak, 0 to 1.

    From the earliest first workers to the earliest peak (or young queens) of any place.

    Parameters
    ----------
    when : half-month of the northern half
    found : from :func:`year`

    Source: season_steps.
    """
    workers = found.workers_from
    top = found.peak or found.sexuals
    if workers is None or top is None or top[0] <= workers[0]:
        return 1.0
    return min(1.0, max(0.0, (when - workers[0]) / (top[0] - workers[0])))


def days_to_end(day: int, found: Year) -> tuple[int, int] | None:
    """Return the days from a day to the earliest and the latest printed end, none below 0.

    Parameters
    ----------
    day : day of the year, moved to the northern half
    found : from :func:`year`

    Returns ``None`` where no end is printed. Source: season_steps.
    """
    if found.end is None:
        return None
    low, high = first_day(found.end[0]) - day, last_day(found.end[1]) - day
    return max(0, low), max(0, high)


SEXUALS = {
    "not_yet": "not yet",
    "likely": "likely inside",
    "possible": "possible",
    "leaving": "may still be inside",
    "none": "not expected",
}
"""Words for young queens and males on a date."""


def sexuals(when: int, found: Year) -> str:
    """Return whether young queens and males are inside, as a key of :data:`SEXUALS`.

    Likely where half or more of the printed places have them then, possible where one has; after
    the last printed date until the end they may still be inside.

    Parameters
    ----------
    when : half-month of the northern half
    found : from :func:`year`

    Source: season_steps.
    """
    spans = found.each_sexuals
    if not spans:
        return "possible"
    inside = sum(low <= when <= high for low, high in spans)
    if 2 * inside >= len(spans):
        return "likely"
    if inside:
        return "possible"
    if when < min(low for low, _ in spans):
        return "not_yet" if "over" not in stages(when, found) else "none"
    return "leaving" if when <= found.last else "none"

"""Emergence from sealed cells: by even ages, or by the look of opened cells."""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass

from calc.numeric.distributions import NORMAL_975, chi2_sf


@dataclass(frozen=True, kw_only=True, slots=True)
class Emerged:
    """Cells out by a day: expected, error of the sample, spread of chance, both together."""

    number: float
    sampling: float
    chance: float

    @property
    def total(self) -> float:
        """Standard deviation of both together."""
        return math.hypot(self.sampling, self.chance)


def even_ages(cells: float, sealed_days: float, day: float) -> Emerged:
    r"""Return cells out by a day where ages are even over the sealed time.

    Binomial(S, min(t/D, 1)): mean :math:`St/D`, SD :math:`\sqrt{S(t/D)(1-t/D)}`.

    Parameters
    ----------
    cells : S, sealed cells
    sealed_days : D
    day : t, days from now

    Range: sealing was steady for the last D days, nothing dies, nest warmth. Source:
    renewal_uniform.
    """
    share = min(1.0, max(0.0, day / sealed_days))
    return Emerged(
        number=cells * share, sampling=0.0, chance=math.sqrt(cells * share * (1 - share))
    )


def by_look(
    cells: float,
    counts: Sequence[int],
    spans: Sequence[tuple[float, float]],
    day: float,
) -> Emerged:
    r"""Return cells out by a day from the looks of opened cells.

    Class j emerges between :math:`a_j` and :math:`b_j` days from now, evenly:
    :math:`F=\sum w_jg_j`, :math:`g_j=clip((t-a_j)/(b_j-a_j),0,1)`; sampling error
    :math:`S\sqrt{(1-n/S)(\sum w_jg_j^2-F^2)/(n-1)}`, chance :math:`\sqrt{S\sum w_jg_j(1-g_j)}`.

    Parameters
    ----------
    cells : S, sealed cells, at least the number opened
    counts : opened cells of each class, one at least in all
    spans : a_j and b_j of each class, days
    day : t, days from now

    Range: cells opened without choosing. Source: emergence_by_look.
    """
    n = sum(counts)
    shares = [each / n for each in counts]
    out = [min(1.0, max(0.0, (day - a) / (b - a))) for a, b in spans]
    mean = math.fsum(w * g for w, g in zip(shares, out, strict=True))
    square = math.fsum(w * g * g for w, g in zip(shares, out, strict=True))
    unseen = max(0.0, 1 - n / cells) if cells > 0 else 0.0
    spread = max(0.0, square - mean * mean) / max(1, n - 1)
    chance = math.fsum(w * g * (1 - g) for w, g in zip(shares, out, strict=True))
    return Emerged(
        number=cells * mean,
        sampling=cells * math.sqrt(unseen * spread),
        chance=math.sqrt(cells * chance),
    )


def days_left(sealed_days: float, share_low: float, share_high: float) -> tuple[float, float]:
    """Return the days left of a look, D(1 - f), from the shares of the sealed time passed."""
    return sealed_days * (1 - share_high), sealed_days * (1 - share_low)


def even_ages_test(counts: Sequence[int], lengths: Sequence[float]) -> tuple[float, int, float]:
    r"""Return chi-square, degrees of freedom and chance that ages are even.

    :math:`\chi^2=\sum(n_j-nd_j/D)^2/(nd_j/D)`, classes less 1.

    Parameters
    ----------
    counts : opened cells of each class, one at least in all
    lengths : d_j, length of each class, any one unit

    Range: expected numbers of about 5 or more. Source: emergence_by_look (chi-square test).
    """
    n, whole = sum(counts), math.fsum(lengths)
    expected = [n * length / whole for length in lengths]
    chi2 = math.fsum((c - e) ** 2 / e for c, e in zip(counts, expected, strict=True))
    return chi2, len(counts) - 1, chi2_sf(chi2, len(counts) - 1)


@dataclass(frozen=True, kw_only=True, slots=True)
class Case:
    """One way to read the sealed cells: sealed days and, if cells were opened, class spans."""

    days: float
    spans: tuple[tuple[float, float], ...] | None

    def out(self, cells: float, counts: Sequence[int] | None, day: float) -> Emerged:
        """Return the cells out by a day."""
        if counts is None or self.spans is None:
            return even_ages(cells, self.days, day)
        return by_look(cells, counts, self.spans, day)

    def last(self, counts: Sequence[int] | None) -> float:
        """Return the day by which the youngest look that was seen is out."""
        if counts is None or self.spans is None:
            return self.days
        return max(b for (_, b), n in zip(self.spans, counts, strict=True) if n)


def cases(days: Sequence[float], scales: Sequence[Sequence[tuple[float, float]]]) -> list[Case]:
    """Return every pairing of sealed days and colour scale; the days alone without a scale.

    Parameters
    ----------
    days : sealed days, such as low and high
    scales : shares of the sealed time passed, one list of class ends for each scale
    """
    if not scales:
        return [Case(days=each, spans=None) for each in days]
    return [
        Case(days=each, spans=tuple(days_left(each, low, high) for low, high in scale))
        for each in days
        for scale in scales
    ]


def band(
    outer: Sequence[Case], cells: float, counts: Sequence[int] | None, day: float
) -> tuple[float, float]:
    """Return the lowest and highest 95 % limits over the readings, within 0 and all cells."""
    lows, highs = [], []
    for case in outer:
        found = case.out(cells, counts, day)
        lows.append(found.number - NORMAL_975 * found.total)
        highs.append(found.number + NORMAL_975 * found.total)
    return max(0.0, min(lows)), min(cells, max(highs))

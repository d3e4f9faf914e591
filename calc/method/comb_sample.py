"""Totals from samples: stratified with finite population, ratio, shares and products."""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass
from statistics import fmean, variance

from calc.numeric.distributions import normal_quantile, student_quantile


@dataclass(frozen=True, kw_only=True, slots=True)
class Total:
    """An estimated total with its error; ``df`` is ``None`` where the normal law is used."""

    total: float
    se: float
    df: float | None
    units: float

    @property
    def mean(self) -> float:
        """Total per unit."""
        return self.total / self.units

    @property
    def mean_se(self) -> float:
        """Error of the mean per unit."""
        return self.se / self.units

    def limits(self, confidence: float = 0.95) -> tuple[float, float]:
        """Return two-sided limits by Student's t, or by the normal law without ``df``."""
        outside = 1 - confidence
        t = normal_quantile(outside) if self.df is None else student_quantile(outside, self.df)
        return self.total - t * self.se, self.total + t * self.se

    @property
    def low(self) -> float:
        """Lower 95 % limit."""
        return self.limits()[0]

    @property
    def high(self) -> float:
        """Upper 95 % limit."""
        return self.limits()[1]

    @property
    def mean_low(self) -> float:
        """Lower 95 % limit of the mean per unit."""
        return self.low / self.units

    @property
    def mean_high(self) -> float:
        """Upper 95 % limit of the mean per unit."""
        return self.high / self.units


def stratified_from_moments(
    sizes: Sequence[float],
    numbers: Sequence[int],
    means: Sequence[float],
    variances: Sequence[float],
    normal: bool = False,
    finite: bool = True,
) -> Total:
    r"""Return a stratified total with finite-population correction and Satterthwaite df.

    :math:`Y=\sum M_h\bar y_h`, :math:`V=\sum M_h^2(1-n_h/M_h)s_h^2/n_h`;
    :math:`df=(\sum g_h s_h^2)^2/\sum[(g_h s_h^2)^2/(n_h-1)]`, :math:`g_h=M_h(M_h-n_h)/n_h`.

    Parameters
    ----------
    sizes : M_h, units in each stratum, at least n_h; need not be whole
    numbers : n_h, units sampled, 2 or more
    means, variances : of the sample in each stratum
    normal : limits by the normal law instead of t
    finite : correct for the share sampled

    Range: units drawn at random within strata. Source: cochran_1977.
    """
    total = sum(size * mean for size, mean in zip(sizes, means, strict=True))
    parts = [
        (size * size * (1 - n / size if finite else 1.0) * var / n, n)
        for size, n, var in zip(sizes, numbers, variances, strict=True)
    ]
    whole = sum(part for part, _ in parts)
    bottom = sum(part * part / (n - 1) for part, n in parts)
    df = whole * whole / bottom if bottom > 0 else float(sum(n - 1 for n in numbers))
    return Total(
        total=total,
        se=math.sqrt(whole),
        df=None if normal else df,
        units=float(sum(sizes)),
    )


def stratified(
    sizes: Sequence[float],
    samples: Sequence[Sequence[float]],
    normal: bool = False,
    finite: bool = True,
) -> Total:
    """Return a stratified total from the values themselves.

    Parameters
    ----------
    sizes : units in each stratum
    samples : values of the sampled units of each stratum, 2 or more
    normal, finite : as :func:`stratified_from_moments`

    Range and source: as :func:`stratified_from_moments`.
    """
    return stratified_from_moments(
        sizes,
        [len(each) for each in samples],
        [fmean(each) for each in samples],
        [variance(each) for each in samples],
        normal,
        finite,
    )


@dataclass(frozen=True, kw_only=True, slots=True)
class Ratio:
    """A ratio of sums with its error."""

    ratio: float
    se: float
    df: int

    @property
    def low(self) -> float:
        """Lower 95 % limit by the normal law."""
        return self.ratio - normal_quantile(0.05) * self.se

    @property
    def high(self) -> float:
        """Upper 95 % limit by the normal law."""
        return self.ratio + normal_quantile(0.05) * self.se


def ratio_of_sums(over: Sequence[float], under: Sequence[float], sampled: float = 0.0) -> Ratio:
    r"""Return a ratio of sums and its standard error.

    :math:`r=\sum y/\sum x`, :math:`e_i=y_i-rx_i`, :math:`s_e^2=\sum e^2/(n-1)`,
    :math:`SE=\sqrt{(1-f)s_e^2/n}/\bar x`.

    Parameters
    ----------
    over, under : y and x of each unit, 2 or more, sum of x above 0
    sampled : f, share of all units that was sampled

    Range: n of about 5 or more; bias of order 1/n. Source: cochran_1977.
    """
    n = len(over)
    r = math.fsum(over) / math.fsum(under)
    spread = math.fsum((y - r * x) ** 2 for y, x in zip(over, under, strict=True)) / (n - 1)
    return Ratio(ratio=r, se=math.sqrt((1 - sampled) * spread / n) / fmean(under), df=n - 1)


def product_se(a: float, se_a: float, b: float, se_b: float) -> float:
    """Return the error of a product of independent estimates.

    Var(AB) = A^2 Var B + B^2 Var A + Var A Var B. Source: goodman_1960.
    """
    return math.sqrt((a * se_b) ** 2 + (b * se_a) ** 2 + (se_a * se_b) ** 2)


def share_error(counts: Sequence[int], cells: Sequence[int]) -> tuple[float, float]:
    """Return the share of a class over spots and its error.

    The larger of the binomial error and, with 2 spots or more, that of the ratio over spots: cells
    of one spot are alike, so the binomial error alone is too small.

    Parameters
    ----------
    counts : cells of the class in each spot
    cells : all cells in each spot, sum above 0

    Source: cochran_1977, comb_strata.
    """
    n = sum(cells)
    # One half added on each side keeps the error above zero where a class was not seen.
    smooth = (sum(counts) + 0.5) / (n + 1)
    binomial = math.sqrt(smooth * (1 - smooth) / n)
    share = sum(counts) / n
    if len(cells) < 2:
        return share, binomial
    return share, max(binomial, ratio_of_sums(counts, cells).se)


def patches_needed(cv: float, error: float, units: float, t: float = 2.0) -> int:
    r"""Return how many patches give a wanted relative error.

    :math:`n_0=(t\,CV/E)^2`, :math:`n=n_0/(1+n_0/M)`, rounded up.

    Parameters
    ----------
    cv : standard deviation over mean of patches
    error : E, wanted half-width over mean
    units : M, patches that fit on the comb
    t : about 2

    Source: cochran_1977.
    """
    n0 = (t * cv / error) ** 2
    return math.ceil(n0 / (1 + n0 / units))

"""A nest's cells from its tiers: by size, by whole tiers counted, or by patches."""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass

from calc.method.comb_count.geometry import cells_on
from calc.method.comb_sample import Total, product_se, ratio_of_sums, share_error, stratified
from calc.numeric.distributions import NORMAL_975

AREA_ERROR = 0.05
"""Standard error of a comb's area from two diameters, as a share [comb_errors]."""

MEASURED_PITCH_ERROR = 0.01
"""Standard error of a pitch measured over ten cells in three directions, as a share."""

TABLE_PITCH_ERROR = 0.05
"""Least standard error of a pitch taken from the table, as a share: about 10 % either way."""

STAGES = ("egg", "larva", "sealed", "empty")
"""Stages in the order of the form."""


@dataclass(frozen=True, kw_only=True, slots=True)
class Tier:
    """One comb: area in cm2, whether it has queen cells, pitch in mm."""

    area: float
    queen: bool
    pitch: float

    @property
    def by_size(self) -> float:
        """Cells if the whole outline is filled."""
        return cells_on(self.area, self.pitch)


@dataclass(frozen=True, kw_only=True, slots=True)
class Spots:
    """Cells of each stage in each spot or patch, and the tier of each patch (from 0)."""

    stages: tuple[tuple[int, ...], ...] | None
    cells: tuple[int, ...]
    tiers: tuple[int, ...] | None = None
    area: float = 0.0


@dataclass(frozen=True, kw_only=True, slots=True)
class Part:
    """A number of cells with 95 % limits and its error."""

    number: float
    low: float
    high: float
    se: float


@dataclass(frozen=True, kw_only=True, slots=True)
class Count:
    """What was found: all cells, per tier, per stage, and what was joined on the way."""

    cells: Part
    per_tier: tuple[float, ...]
    stages: dict[str, Part]
    brood: Part | None
    queen_sealed: float | None
    merged: bool
    df: float | None
    method: str
    area_share: float = 0.0

    def widened(self, part: Part) -> Part:
        """Return a part with the error of the tiers' areas added to its limits."""
        extra = NORMAL_975 * self.area_share * part.number
        return Part(
            number=part.number,
            low=max(0.0, part.number - math.hypot(part.number - part.low, extra)),
            high=part.number + math.hypot(part.high - part.number, extra),
            se=math.hypot(part.se, self.area_share * part.number),
        )


def _log_normal(number: float, share: float, least: float) -> Part:
    factor = math.exp(NORMAL_975 * math.sqrt(math.log1p(share * share)))
    return Part(
        number=number,
        low=max(least, number / factor),
        high=number * factor,
        se=number * share,
    )


def _from_total(found: Total, least: float) -> Part:
    low, high = found.limits()
    return Part(
        number=max(found.total, least), low=max(low, least), high=max(high, least), se=found.se
    )


def by_size(tiers: Sequence[Tier], pitch_error: float) -> tuple[Part, tuple[float, ...]]:
    """Return cells from the size of the tiers alone.

    The error of the pitch counts twice and is shared by all tiers, so errors add instead of
    averaging out.

    Parameters
    ----------
    tiers : combs
    pitch_error : standard error of the pitch over the pitch

    Returns all cells and cells per tier. Range: filled combs of one cell size each. Source:
    hexagon_geometry, comb_errors.
    """
    per_tier = tuple(tier.by_size for tier in tiers)
    return _log_normal(sum(per_tier), math.hypot(2 * pitch_error, AREA_ERROR), 0), per_tier


def by_tiers(
    tiers: Sequence[Tier], counted: Sequence[int], pitch_error: float
) -> tuple[Part, tuple[float, ...]]:
    """Return cells where some tiers were counted whole: ratio of counted to geometric cells.

    Parameters
    ----------
    tiers : combs
    counted : cells of each tier, 0 where it was not counted; one above 0 at least
    pitch_error : as :func:`by_size`, used where one tier only was counted

    Returns all cells and cells per tier. Range: tiers filled alike; three or more counted.
    Source: cochran_1977.
    """
    size = [tier.by_size for tier in tiers]
    pairs = [(y, x) for y, x in zip(counted, size, strict=True) if y]
    ratio = sum(y for y, _ in pairs) / sum(x for _, x in pairs)
    per_tier = tuple(y or ratio * x for y, x in zip(counted, size, strict=True))
    known, total, n = float(sum(counted)), sum(per_tier), len(pairs)
    if n == len(tiers):
        return Part(number=known, low=known, high=known, se=0.0), per_tier
    if n == 1:
        rest = _log_normal(total - known, math.hypot(2 * pitch_error, AREA_ERROR), 0)
        return (
            Part(number=total, low=known + rest.low, high=known + rest.high, se=rest.se),
            per_tier,
        )
    found = ratio_of_sums([y for y, _ in pairs], [x for _, x in pairs], n / len(tiers))
    whole = Total(total=total, se=found.se * sum(size), df=float(found.df), units=sum(size))
    return _from_total(whole, known), per_tier


def strata(tiers: Sequence[Tier], patch_tiers: Sequence[int]) -> tuple[list[list[int]], bool]:
    """Return groups of tiers with two patches or more each, and whether any were joined.

    Tiers with fewer than two patches are joined; if they have fewer than two together, they join
    the tier with the most patches. Source: comb_strata.
    """
    patches = [patch_tiers.count(place) for place in range(len(tiers))]
    alone = [[place] for place, number in enumerate(patches) if number >= 2]
    rest = [place for place, number in enumerate(patches) if number < 2]
    if not rest:
        return alone, False
    if sum(patches[place] for place in rest) >= 2:
        return [*alone, rest], True
    most = max(alone, key=lambda group: patches[group[0]])
    most.extend(rest)
    return alone, True


def by_patches(tiers: Sequence[Tier], spots: Spots) -> Count:
    """Return cells and stages from patches, with tiers as strata.

    Parameters
    ----------
    tiers : combs
    spots : patches with their tier, all of one area

    Returns a :class:`Count`. Range: patches placed without choosing; sampling error only.
    Source: cochran_1977, comb_strata.
    """
    assert spots.tiers is not None
    groups, merged = strata(tiers, spots.tiers)
    places = [[i for i, tier in enumerate(spots.tiers) if tier in group] for group in groups]
    sizes = [
        max(sum(tiers[tier].area for tier in group) / spots.area, float(len(at)))
        for group, at in zip(groups, places, strict=True)
    ]

    def total(values: Sequence[int]) -> Part:
        found = stratified(sizes, [[values[i] for i in at] for at in places])
        return _from_total(found, float(sum(values)))

    density = {}
    for group, at in zip(groups, places, strict=True):
        for tier in group:
            density[tier] = sum(spots.cells[i] for i in at) / (len(at) * spots.area)
    per_tier = tuple(density[place] * tier.area for place, tier in enumerate(tiers))
    stages, brood, queen_sealed = {}, None, None
    if spots.stages is not None:
        stages = dict(zip(STAGES, map(total, spots.stages), strict=True))
        brood = total(_brood(spots.stages))
        in_queen_tiers = [
            number if tiers[tier].queen else 0
            for number, tier in zip(spots.stages[2], spots.tiers, strict=True)
        ]
        queen_sealed = stratified(sizes, [[in_queen_tiers[i] for i in at] for at in places]).total
    whole = stratified(sizes, [[spots.cells[i] for i in at] for at in places])
    return Count(
        cells=_from_total(whole, float(sum(spots.cells))),
        per_tier=per_tier,
        stages=stages,
        brood=brood,
        queen_sealed=queen_sealed,
        merged=merged,
        df=whole.df,
        method="patches, tiers as strata, t limits",
        area_share=AREA_ERROR * math.hypot(*per_tier) / max(sum(per_tier), 1e-9),
    )


def with_shares(
    cells: Part, per_tier: tuple[float, ...], tiers: Sequence[Tier], spots: Spots, method: str
) -> Count:
    """Return cells with stages from a sample of spots that belong to no tier.

    Cells times share, with the error of a product.

    Parameters
    ----------
    cells, per_tier : from :func:`by_size` or :func:`by_tiers`
    tiers : combs
    spots : spots with their stages
    method : words for it

    Source: goodman_1960, comb_strata.
    """
    stages: dict[str, Part] = {}
    brood, queen_sealed = None, None
    if spots.stages is not None and sum(spots.cells) > 0:
        for name, counts in zip(STAGES, spots.stages, strict=True):
            stages[name] = _share_of(cells, counts, spots.cells)
        brood = _share_of(cells, _brood(spots.stages), spots.cells)
        in_queen = sum(n for n, tier in zip(per_tier, tiers, strict=True) if tier.queen)
        whole = sum(per_tier)
        queen_sealed = stages["sealed"].number * (in_queen / whole if whole > 0 else 0.0)
    return Count(
        cells=cells,
        per_tier=per_tier,
        stages=stages,
        brood=brood,
        queen_sealed=queen_sealed,
        merged=False,
        df=None,
        method=method,
    )


def _brood(stages: Sequence[Sequence[int]]) -> list[int]:
    eggs, larvae, sealed = stages[:3]
    return [a + b + c for a, b, c in zip(eggs, larvae, sealed, strict=True)]


def _share_of(cells: Part, counts: Sequence[int], spots: Sequence[int]) -> Part:
    share, error = share_error(counts, spots)
    se = product_se(cells.number, cells.se, share, error)
    number = cells.number * share
    return Part(
        number=number,
        low=max(0.0, number - NORMAL_975 * se),
        high=min(cells.high, number + NORMAL_975 * se),
        se=se,
    )

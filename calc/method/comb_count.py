"""Counting the comb: the calculator, from tiers and patches to the whole colony."""

from __future__ import annotations

from collections.abc import Sequence
from typing import Any

from calc.declare import Answer, Axis, Calculator, Chart, Series
from calc.errors import InputError
from calc.method import comb_words as say
from calc.method.comb_forms import INPUTS, OUTPUTS
from calc.method.comb_geometry import oval_area
from calc.method.comb_nest import (
    MEASURED_PITCH_ERROR,
    TABLE_PITCH_ERROR,
    Count,
    Spots,
    Tier,
    by_patches,
    by_size,
    by_tiers,
    with_shares,
)
from calc.tables import row

_STAGE_WORDS = {
    "egg": "eggs",
    "larva": "larvae",
    "sealed": "sealed",
    "empty": "empty",
}


def core(
    species: str,
    pitch: float | None,
    shape: str,
    long_axes: tuple[float, ...],
    short_axes: tuple[float, ...] | None,
    queen_from: int,
    queen_pitch: float | None,
    count_by: str,
    patches: tuple[int, ...] | None,
    patch_area: float | None,
    tier_cells: tuple[int, ...] | None,
    stages: str,
    eggs: tuple[int, ...] | None,
    larvae: tuple[int, ...] | None,
    sealed: tuple[int, ...] | None,
    empty: tuple[int, ...] | None,
    patch_cells: tuple[int, ...] | None,
    adults_caught: int,
    adults_left: float,
) -> Answer:
    """Compute cells, stages and the colony from tiers and a sample.

    Parameters
    ----------
    species : row of the table of pitches
    pitch, queen_pitch : measured, mm, or ``None``
    shape : ``round`` or ``oval``
    long_axes, short_axes : diameters of each tier, cm
    queen_from : number of the first tier with large cells, 0 for none
    count_by : ``patches``, ``tiers`` or ``size``
    patches : number of patches on each tier
    patch_area : cm2
    tier_cells : cells of each tier, 0 where not counted
    stages : ``counted`` or ``not``
    eggs, larvae, sealed, empty : cells of each stage in each spot
    patch_cells : all cells in each patch, where stages were not counted
    adults_caught, adults_left : adults

    Returns the :class:`Answer`. Raises :class:`InputError` for lists that do not match. Range and
    sources: the declaration below.
    """
    tiers = _tiers(species, pitch, long_axes, short_axes, queen_from, queen_pitch)
    spots = _spots(stages, eggs, larvae, sealed, empty, patch_cells, count_by == "patches")
    pitch_error = MEASURED_PITCH_ERROR if pitch else _table_error(species)
    if count_by == "patches":
        assert patches is not None
        assert patch_area is not None
        spots = _placed(spots, tiers, patches, patch_area)
        found = by_patches(tiers, spots)
    elif count_by == "tiers":
        assert tier_cells is not None
        _same("tier_cells", tier_cells, len(tiers), "tier")
        if not any(tier_cells):
            raise _refuse("tier_cells", tier_cells, "one tier at least with cells above 0")
        part, per_tier = by_tiers(tiers, tier_cells, pitch_error)
        found = with_shares(part, per_tier, tiers, spots, "whole tiers, ratio to their size")
    else:
        part, per_tier = by_size(tiers, pitch_error)
        found = with_shares(part, per_tier, tiers, spots, "size of the tiers and the pitch")
    measured = pitch is not None
    rough = count_by == "size" or (count_by == "tiers" and sum(map(bool, tier_cells or ())) < 2)
    cautions = [
        *say.first(),
        *say.about_size(measured, rough),
        *(say.about_patches(tiers, spots, found) if count_by == "patches" or spots.stages else ()),
        *say.about_queen_tier(queen_from, len(tiers)),
        *say.about_brood(found, _of(found, tiers, True), species),
    ]
    return Answer(
        values=_values(found, tiers, adults_caught, adults_left),
        cautions=cautions,
        charts=[_chart(found, tiers)],
    )


def _refuse(field: str, value: Sequence[float], allowed: str) -> InputError:
    label = next(each.label for each in INPUTS if each.name == field)
    given = f"{len(value)} values"
    return InputError(field, list(value), allowed, f"{label}: {given}; allowed is {allowed}.")


def _same(field: str, value: Sequence[float], wanted: int, item: str) -> None:
    if len(value) != wanted:
        raise _refuse(field, value, f"{wanted} values, one for each {item}")


def _table_range(species: str, column: str) -> list[float]:
    """Return the pitch range of the table; workers' where there is none for queens."""
    found = row("cell_pitch", species)
    return list(found.get(column) or found["worker"])


def _table_error(species: str) -> float:
    low, high = _table_range(species, "worker")
    return max(TABLE_PITCH_ERROR, (high - low) / (high + low) / 2)


def _tiers(
    species: str,
    pitch: float | None,
    long_axes: Sequence[float],
    short_axes: Sequence[float] | None,
    queen_from: int,
    queen_pitch: float | None,
) -> list[Tier]:
    if short_axes is not None:
        _same("short_axes", short_axes, len(long_axes), "tier")
    worker = pitch or sum(_table_range(species, "worker")) / 2
    ratio = sum(_table_range(species, "queen")) / sum(_table_range(species, "worker"))
    queen = queen_pitch or worker * ratio
    first = queen_from or len(long_axes) + 1
    return [
        Tier(
            area=oval_area(a, b),
            queen=place >= first,
            pitch=queen if place >= first else worker,
        )
        for place, (a, b) in enumerate(zip(long_axes, short_axes or long_axes, strict=True), 1)
    ]


def _spots(
    stages: str,
    eggs: tuple[int, ...] | None,
    larvae: tuple[int, ...] | None,
    sealed: tuple[int, ...] | None,
    empty: tuple[int, ...] | None,
    patch_cells: tuple[int, ...] | None,
    by_patch: bool,
) -> Spots:
    if stages == "not":
        return Spots(stages=None, cells=patch_cells or ())
    lists = {"eggs": eggs or (), "larvae": larvae or (), "sealed": sealed or ()}
    lists["empty"] = empty or ()
    if by_patch:
        for name, values in lists.items():
            _same(name, values, len(lists["eggs"]), "spot, as many as for eggs")
    elif len({len(values) for values in lists.values()}) > 1:
        # Lists of unlike length still add up; only the spread between spots is lost.
        lists = {name: (sum(values),) for name, values in lists.items()}
    cells = tuple(sum(each) for each in zip(*lists.values(), strict=True))
    return Spots(stages=tuple(lists.values()), cells=cells)


def _placed(spots: Spots, tiers: Sequence[Tier], patches: tuple[int, ...], area: float) -> Spots:
    _same("patches", patches, len(tiers), "tier")
    if sum(patches) != len(spots.cells) or sum(patches) < 2:
        raise _refuse(
            "patches", patches, f"numbers that add up to the {len(spots.cells)} spots, two or more"
        )
    for place, (tier, number) in enumerate(zip(tiers, patches, strict=True), start=1):
        if number * area > tier.area:
            allowed = f"patches that fit on tier {place}, {tier.area:.0f} cm² in all"
            raise InputError(
                "patch_area",
                area,
                allowed,
                f"Area of a patch: {number} patches of {area:g} cm² do not fit "
                f"on tier {place}; allowed is {allowed}.",
            )
    order = [place for place, number in enumerate(patches) for _ in range(number)]
    return Spots(stages=spots.stages, cells=spots.cells, tiers=tuple(order), area=area)


def _of(found: Count, tiers: Sequence[Tier], queen: bool) -> float:
    return sum(n for n, tier in zip(found.per_tier, tiers, strict=True) if tier.queen == queen)


def _values(found: Count, tiers: Sequence[Tier], caught: int, left: float) -> dict[str, Any]:
    adults, cells = caught + left, found.widened(found.cells)
    brood = None if found.brood is None else found.widened(found.brood)
    return {
        "cells": cells.number,
        "cells_interval": (cells.low, cells.high),
        "sampling_interval": (found.cells.low, found.cells.high),
        "brood": None if brood is None else brood.number,
        "brood_interval": None if brood is None else (brood.low, brood.high),
        "colony": None if brood is None else adults + brood.number,
        "colony_interval": None if brood is None else (adults + brood.low, adults + brood.high),
        "by_stage": [
            {
                "stage": _STAGE_WORDS[name],
                "cells": part.number,
                "interval": (part.low, part.high),
                "share": 100 * part.number / cells.number if cells.number > 0 else 0.0,
            }
            for name, part in found.stages.items()
        ],
        "parts": _parts(found, caught, left),
        "worker_cells": _of(found, tiers, False),
        "queen_cells": _of(found, tiers, True),
        "sealed_cells": found.stages["sealed"].number if found.stages else None,
        "sealed_queen_cells": found.queen_sealed,
        "per_tier": [
            {
                "tier": place,
                "kind": "queens" if tier.queen else "workers",
                "area": tier.area,
                "cells": number,
                "by_size": tier.by_size,
            }
            for place, (tier, number) in enumerate(zip(tiers, found.per_tier, strict=True), 1)
        ],
        "rule": say.rule(None if brood is None else brood.number, adults),
        "filled": cells.number / sum(tier.by_size for tier in tiers),
        "pitch_used": next((t.pitch for t in tiers if not t.queen), None),
        "df": found.df,
        "method": found.method,
    }


def _parts(found: Count, caught: int, left: float) -> list[dict[str, Any]]:
    numbers: dict[str, float] = {"adults caught": caught, "adults left or out": left}
    for name in ("egg", "larva", "sealed"):
        if name in found.stages:
            numbers[_STAGE_WORDS[name]] = found.stages[name].number
    whole = sum(numbers.values())
    return [
        {"part": name, "number": number, "share": 100 * number / whole if whole > 0 else 0.0}
        for name, number in numbers.items()
    ]


def _chart(found: Count, tiers: Sequence[Tier]) -> Chart:
    x = tuple(float(place) for place in range(1, len(tiers) + 1))
    series = [
        Series(label="if full to the rim", x=x, y=tuple(t.by_size for t in tiers), style="dashed")
    ]
    for label, queen in (("worker cells", False), ("queen cells", True)):
        pairs = [
            (place, number)
            for place, number, tier in zip(x, found.per_tier, tiers, strict=True)
            if tier.queen == queen
        ]
        if pairs:
            places, numbers = zip(*pairs, strict=True)
            series.append(Series(label=label, x=places, y=numbers, style="points"))
    return Chart(
        name="cells_per_tier",
        title="Cells per tier",
        alt="Cells per tier from the top: " + ", ".join(f"{n:.0f}" for n in found.per_tier) + ".",
        x=Axis(label="tier from the top"),
        y=Axis(label="cells", low=0.0),
        series=tuple(series),
    )


comb_count = Calculator(
    name="comb_count",
    title="Counting the comb",
    part="method",
    purpose="From the size of the tiers and a few patches: cells in all, eggs, larvae and sealed "
    "cells, and the whole colony.",
    inputs=INPUTS,
    outputs=OUTPUTS,
    core=core,
    sources=(
        "hexagon_geometry",
        "cochran_1977",
        "goodman_1960",
        "comb_strata",
        "comb_errors",
        "comb_checks",
        "pitch_memory",
        "brood_rule_practice",
    ),
    formula=(
        (
            r"N=\frac{2A}{\sqrt3\,p^2},\qquad A=\frac{\pi ab}{4}",
            "cells on a full tier of area A and pitch p",
            "hexagon_geometry",
        ),
        (
            r"Y=\sum_h M_h\bar y_h,\qquad V=\sum_h M_h^2\left(1-\frac{n_h}{M_h}\right)"
            r"\frac{s_h^2}{n_h}",
            "patches: tiers are strata, M patches would cover the tier, n were counted",
            "cochran_1977",
        ),
        (
            r"df=\frac{\left(\sum g_hs_h^2\right)^2}{\sum\left(g_hs_h^2\right)^2/(n_h-1)},\qquad "
            r"g_h=\frac{M_h(M_h-n_h)}{n_h}",
            "Satterthwaite's degrees of freedom for Student's t",
            "cochran_1977",
        ),
        (
            r"r=\frac{\sum y}{\sum x},\qquad Y=rX,\qquad SE=\frac{X}{\bar x}"
            r"\sqrt{\frac{(1-f)\,s_e^2}{n}}",
            "whole tiers: counted cells y over cells by size x, for the tiers not counted",
            "cochran_1977",
        ),
        (
            r"\operatorname{Var}(Nw)=N^2\operatorname{Var}w+w^2\operatorname{Var}N+"
            r"\operatorname{Var}N\operatorname{Var}w",
            "stage from a share w of the sample",
            "goodman_1960",
        ),
    ),
    assumptions=(
        "Patches lie at random: middle and rim alike. Patches of the middle only make the brood "
        "too high.",
        "The diameters are measured with care: the interval allows 5 % for the area of each tier. "
        "A tenth off in both diameters is a fifth off in cells.",
        "Each tier has one kind of cell. Where a tier changes, enter its two parts as two tiers.",
        "Adults left are taken as given; their uncertainty is not in the interval.",
    ),
)

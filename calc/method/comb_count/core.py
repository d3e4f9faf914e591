"""The core of "Counting the comb"."""

from __future__ import annotations

from collections.abc import Sequence
from typing import Any

from calc.declare import Answer, Axis, Chart, Series
from calc.errors import InputError
from calc.method.comb_count import cautions as say
from calc.method.comb_count.geometry import oval_area
from calc.method.comb_count.inputs import Inputs
from calc.method.comb_count.nest import (
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


def core(x: Inputs) -> Answer:
    """Compute cells, stages and the colony from tiers and a sample.

    Raises :class:`InputError` for lists that do not match. Units, ranges and sources: the
    declaration.
    """
    tiers = _tiers(x)
    spots = _spots(x)
    pitch_error = MEASURED_PITCH_ERROR if x.pitch else _table_error(x.species)
    tier_cells = x.tier_cells or ()
    if x.count_by == "patches":
        spots = _placed(spots, tiers, x)
        found = by_patches(tiers, spots)
    elif x.count_by == "tiers":
        _same("tier_cells", tier_cells, len(tiers), "tier")
        if not any(tier_cells):
            raise _refuse("tier_cells", tier_cells, "one tier at least with cells above 0")
        part, per_tier = by_tiers(tiers, tier_cells, pitch_error)
        found = with_shares(part, per_tier, tiers, spots, "whole tiers, ratio to their size")
    else:
        part, per_tier = by_size(tiers, pitch_error)
        found = with_shares(part, per_tier, tiers, spots, "size of the tiers and the pitch")
    rough = x.count_by == "size" or (x.count_by == "tiers" and sum(map(bool, tier_cells)) < 2)
    looked = x.count_by == "patches" or spots.stages
    cautions = [
        *say.first(),
        *say.about_size(x.pitch is not None, rough),
        *(say.about_patches(tiers, spots, found) if looked else ()),
        *say.about_queen_tier(x.queen_from, len(tiers)),
        *say.about_brood(found, _of(found, tiers, True), x.species),
    ]
    return Answer(values=_values(found, tiers, x), cautions=cautions, charts=[_chart(found, tiers)])


def _refuse(field: str, value: Sequence[float], allowed: str) -> InputError:
    label = next(each.label for each in Inputs.declared if each.name == field)
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


def _tiers(x: Inputs) -> list[Tier]:
    if x.short_axes is not None:
        _same("short_axes", x.short_axes, len(x.long_axes), "tier")
    worker = x.pitch or sum(_table_range(x.species, "worker")) / 2
    ratio = sum(_table_range(x.species, "queen")) / sum(_table_range(x.species, "worker"))
    queen = x.queen_pitch or worker * ratio
    first = x.queen_from or len(x.long_axes) + 1
    return [
        Tier(area=oval_area(a, b), queen=place >= first, pitch=queen if place >= first else worker)
        for place, (a, b) in enumerate(
            zip(x.long_axes, x.short_axes or x.long_axes, strict=True), 1
        )
    ]


def _spots(x: Inputs) -> Spots:
    if x.stages == "not":
        return Spots(stages=None, cells=x.patch_cells or ())
    lists = {
        "eggs": x.eggs or (),
        "larvae": x.larvae or (),
        "sealed": x.sealed or (),
        "empty": x.empty or (),
    }
    if x.count_by == "patches":
        for name, values in lists.items():
            _same(name, values, len(lists["eggs"]), "spot, as many as for eggs")
    elif len({len(values) for values in lists.values()}) > 1:
        # Lists of unlike length still add up; only the spread between spots is lost.
        lists = {name: (sum(values),) for name, values in lists.items()}
    cells = tuple(sum(each) for each in zip(*lists.values(), strict=True))
    return Spots(stages=tuple(lists.values()), cells=cells)


def _placed(spots: Spots, tiers: Sequence[Tier], x: Inputs) -> Spots:
    patches, area = x.patches or (), x.patch_area or 0.0
    if not spots.cells:
        raise _refuse("patch_cells", (), "the cells of each patch")
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


def _values(found: Count, tiers: Sequence[Tier], x: Inputs) -> dict[str, Any]:
    caught, left = x.adults_caught, x.adults_left
    adults = None if caught is None or left is None else caught + left
    cells = found.widened(found.cells)
    brood = None if found.brood is None else found.widened(found.brood)
    return {
        "cells": cells.number,
        "cells_interval": (cells.low, cells.high),
        "sampling_interval": (found.cells.low, found.cells.high),
        "brood": None if brood is None else brood.number,
        "brood_interval": None if brood is None else (brood.low, brood.high),
        "colony": None if brood is None or adults is None else adults + brood.number,
        "colony_interval": None
        if brood is None or adults is None
        else (adults + brood.low, adults + brood.high),
        "by_stage": [
            {
                "stage": _STAGE_WORDS[name],
                "cells": part.number,
                "interval": (part.low, part.high),
                "share": 100 * part.number / cells.number if cells.number > 0 else 0.0,
            }
            for name, part in found.stages.items()
        ],
        "parts": _parts(found, x),
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


def _parts(found: Count, x: Inputs) -> list[dict[str, Any]]:
    adults = {"adults caught": x.adults_caught, "adults left or out": x.adults_left}
    numbers: dict[str, float] = {name: each for name, each in adults.items() if each is not None}
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

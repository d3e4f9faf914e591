"""The trait table as likelihoods: how probable each thing seen is for each animal.

``P(option | animal)`` comes from four words (almost always, often, sometimes, rarely; what is not
named is never), turned into numbers by ``identify_weights.toml`` and divided by their sum, so that
each animal's row of one trait adds up to 1. Where an animal has no such thing at all (a bee has no
paper), ``absent`` is one more outcome of the row. The size is computed from the measured lengths.
"""

from __future__ import annotations

import math
from collections.abc import Mapping
from functools import cache

from calc import units
from calc.biology.which_animal.inputs import MONTHS, TRAITS, UNKNOWN
from calc.tables import row, rows

WORDS = ("almost_always", "often", "sometimes", "rarely")
ABSENT = "absent"
NONE = "none"
_POINTS = 9


@cache
def number(key: str) -> float:
    """Return a declared number of the table of words and thresholds."""
    return float(row("identify_weights", key)["number"])


@cache
def animals() -> tuple[str, ...]:
    """Return the keys of all candidates, the unknown one last."""
    return tuple(each["key"] for each in rows("species"))


@cache
def group(animal: str) -> str:
    """Return ``wasp``, ``bee``, ``solitary wasp``, ``no stinging insect`` or ``unknown``."""
    return str(row("species", animal)["group"])


@cache
def kin(animal: str) -> str:
    """Return the kin of an animal, such as ``yellowjacket``."""
    return str(row("species", animal)["kin"])


def name_of(animal: str) -> str:
    """Return the animal's common name."""
    return str(row("species", animal)["animal"])


@cache
def options(trait: str) -> tuple[str, ...]:
    """Return the values of a trait that say something."""
    choice = next(each for each in TRAITS if each.name == trait)
    return tuple(each.value for each in choice.options if each.value != UNKNOWN)


@cache
def priors(region: str) -> Mapping[str, float]:
    """Return each animal's chance before anything is seen, adding up to 1.

    An unknown region is the mean over all regions.
    """
    if region == UNKNOWN:
        known = [name for name in rows("where_it_lives")[0] if name not in _NO_REGION]
        tables = [priors(name) for name in known]
        return {one: sum(each[one] for each in tables) / len(tables) for one in animals()}
    weights = {one: number(row("where_it_lives", one)[region]) for one in animals()}
    total = sum(weights.values())
    return {one: weight / total for one, weight in weights.items()}


_NO_REGION = frozenset({"key", "animal", "source", "note", "where"})


@cache
def likelihood(trait: str) -> Mapping[str, Mapping[str, float]]:
    """Return ``P(option | animal)`` for all animals and the options of one trait.

    Each row adds up to 1, with :data:`ABSENT` among its outcomes where the animal can lack the
    thing. ``None of these`` is flat. An animal without a row takes the mean of the others.
    """
    names = options(trait)
    made = {one: _stated(one, trait, names) for one in animals() if one != NONE}
    known = [each for each in made.values() if each is not None]
    seen = [*names, *([ABSENT] if any(ABSENT in each for each in known) else [])]
    mean = {name: sum(each.get(name, 0.0) for each in known) / len(known) for name in seen}
    filled = {one: mean if each is None else each for one, each in made.items()}
    filled[NONE] = {name: 1.0 / len(names) for name in names}
    return filled


def shifted(month: str, region: str) -> str:
    """Return the month of the northern year that a southern month answers to."""
    if region != "australia_nz" or month == UNKNOWN:
        return month
    return MONTHS[(MONTHS.index(month) + 6) % 12]


def _stated(animal: str, trait: str, names: tuple[str, ...]) -> Mapping[str, float] | None:
    if trait == "size":
        return _size(animal, names)
    found = _trait_rows().get(f"{animal}.{trait}")
    if found is None:
        return None
    weights = dict.fromkeys((*names, ABSENT), number("never"))
    if ABSENT not in " ".join(str(found.get(word, "")) for word in WORDS).split():
        del weights[ABSENT]
    for word in WORDS:
        for name in str(found.get(word, "")).split():
            weights[name] = number(word)
    total = sum(weights.values())
    return {name: weight / total for name, weight in weights.items()}


@cache
def _trait_rows() -> Mapping[str, Mapping[str, object]]:
    return {str(each["key"]): each for each in rows("traits")}


def length_range(animal: str, *castes: str) -> tuple[float, float] | None:
    """Return the lowest and highest body length of the castes over all sources used, in mm."""
    ends: list[float] = []
    for each in rows("species_size"):
        if each["species"] != animal or each["used"] != "yes":
            continue
        for caste in castes:
            value = each.get(caste)
            if value is not None:
                ends += value if isinstance(value, list) else [value]
    return (min(ends), max(ends)) if ends else None


def _size(animal: str, names: tuple[str, ...]) -> Mapping[str, float]:
    """Return the chance that this animal is told as long as each familiar thing.

    The told length is log-normal about ``size_bias`` times the true one, which is uniform over the
    range of the workers (share ``worker_share``) or of queens and males.
    """
    workers = length_range(animal, "worker")
    others = length_range(animal, "queen", "male") or workers
    assert workers is not None
    assert others is not None
    share = number("worker_share")
    made = {
        name: share * told_as_long(familiar_length(name), workers)
        + (1 - share) * told_as_long(familiar_length(name), others)
        for name in names
    }
    floor = number("never") * sum(made.values())
    total = sum(made.values()) + floor * len(names)
    return {name: (value + floor) / total for name, value in made.items()}


def familiar_length(thing: str, unit: str = "mm") -> float:
    """Return the length of a familiar thing in a unit of length."""
    return float(units.convert(float(row("familiar_objects", thing)["length"]), "mm", unit))


def told_as_long(told: float, true: tuple[float, float]) -> float:
    """Return how well a told length fits a range of true ones, up to a factor; both in mm."""
    low, high = true
    spread, bias = number("size_spread"), number("size_bias")
    steps = (low + (high - low) * each / (_POINTS - 1) for each in range(_POINTS))
    fits = (math.exp(-0.5 * (math.log(told / (bias * one)) / spread) ** 2) for one in steps)
    return sum(fits) / _POINTS

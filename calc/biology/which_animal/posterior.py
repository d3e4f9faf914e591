"""Chances of each animal from what was seen.

Tempered naive Bayes: ``P(a | seen) ~ P(a) * prod_t P(o_t | a) ** (T * w_t)`` with the weight
``w_t`` of each trait and a temper ``T`` below 1, since the things seen depend on each other and
plain multiplication would make the answer too sure of itself.
"""

from __future__ import annotations

import math
from collections.abc import Mapping, Sequence
from functools import cache

from calc.biology.which_animal.inputs import TRAITS, UNKNOWN
from calc.biology.which_animal.traits import (
    animals,
    group,
    likelihood,
    number,
    priors,
    shifted,
)
from calc.tables import row, rows


def seen_traits(seen: Mapping[str, str]) -> dict[str, str]:
    """Return the traits that were seen, the month shifted to the northern year."""
    region = seen.get("region", UNKNOWN)
    told = {each.name: seen.get(each.name, UNKNOWN) for each in TRAITS}
    told["month"] = shifted(told["month"], region)
    return {trait: value for trait, value in told.items() if value != UNKNOWN}


@cache
def exponent(trait: str) -> float:
    """Return temper times weight of one trait."""
    return number("temper") * float(row("trait_weights", trait)["weight"])


def bee_signs(seen: Mapping[str, str]) -> list[str]:
    """Return the signs of a bee among what was seen, in words."""
    told = {f"{trait}.{value}" for trait, value in seen.items()}
    return [sign for key, sign in _signs() if key in told]


@cache
def _signs() -> tuple[tuple[str, str], ...]:
    return tuple((str(each["key"]), str(each["sign"])) for each in rows("bee_signs"))


def posterior(
    prior: Sequence[float], evidence: Sequence[Sequence[float]], powers: Sequence[float]
) -> list[float]:
    """Return the chances after the evidence, by Bayes' rule with a power on each piece.

    ``P_i ~ prior_i * prod_k evidence_ki ** power_k``; powers of 1 give the plain rule.

    Parameters
    ----------
    prior : chance of each candidate, above 0
    evidence : for each piece of evidence its chance under each candidate, above 0
    powers : for each piece of evidence its power, 0 or more
    """
    logs = [math.log(each) for each in prior]
    for chances_of, power in zip(evidence, powers, strict=True):
        logs = [log + power * math.log(each) for log, each in zip(logs, chances_of, strict=True)]
    top = max(logs)
    made = [math.exp(each - top) for each in logs]
    total = sum(made)
    return [each / total for each in made]


def chances(seen: Mapping[str, str]) -> dict[str, float]:
    """Return each candidate's chance, adding up to 1, the likeliest first.

    Where a sign of a bee was seen, no social wasp stands above the likeliest bee: all wasps are
    lowered by one factor until that holds.

    Parameters
    ----------
    seen : option values by input name; ``unknown`` or missing says nothing

    Notes
    -----
    Validity: animals of the table, seen well. Chances are for ranking and for the declared
    thresholds, not frequencies measured on real calls.
    """
    names, traits = animals(), seen_traits(seen)
    prior = priors(seen.get("region", UNKNOWN))
    shares = posterior(
        [prior[one] for one in names],
        [[likelihood(trait)[one][value] for one in names] for trait, value in traits.items()],
        [exponent(trait) for trait in traits],
    )
    made = dict(zip(names, shares, strict=True))
    if bee_signs(seen):
        made = _bees_first(made)
    total = sum(made.values())
    order = sorted(made, key=lambda one: (-made[one], group(one) != "bee"))
    return {one: made[one] / total for one in order}


def _bees_first(made: Mapping[str, float]) -> dict[str, float]:
    bee = max(value for one, value in made.items() if group(one) == "bee")
    wasp = max(value for one, value in made.items() if group(one) == "wasp")
    factor = min(1.0, bee / wasp * (1 - 1e-9))
    return {one: value * factor if group(one) == "wasp" else value for one, value in made.items()}


def of_group(chance: Mapping[str, float], *names: str) -> float:
    """Return the chance of all animals of the named groups together."""
    return sum(value for one, value in chance.items() if group(one) in names)

"""The next question: the one that does most for the duty, and when none is worth asking.

First the question is asked that saves most, as long as a likely answer can change the duty. Then
bees are ruled out, with misreadings counted: no duty but that of a bee stands before that.
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass, replace
from functools import cache
from operator import mul

from calc.asking import Question
from calc.biology.which_animal.duty import Region, decide, leading_duty
from calc.biology.which_animal.inputs import OLD_NEST, REGION, TRAITS, UNKNOWN, Inputs
from calc.biology.which_animal.posterior import bee_signs, chances, exponent, seen_traits
from calc.biology.which_animal.traits import animals, likelihood, number, options, priors
from calc.biology.which_animal.value import (
    WORK,
    class_of,
    expected_saving,
    information_gain,
    loss,
)
from calc.declare.reading import read
from calc.tables import row

TITLE = "Which animal is it?"
_UNASKED = frozenset({"region", "month", OLD_NEST.name})
"""They do not count among the questions: place and date are known, and an old nest is looked for
whatever the animal is."""

_Key = tuple[tuple[str, str], ...]


@dataclass(frozen=True, slots=True)
class Next:
    """The class of duty that stands, the trait to ask for next, and whether a bee is open.

    No trait where nothing more is worth asking; the duty is settled unless a bee is still open.
    """

    duty: str
    trait: str | None
    bee_open: bool


@cache
def answered(trait: str) -> float:
    """Return how often people can answer when asked for a trait, 0 to 1."""
    return float(row("trait_weights", trait)["answered"]) / 100


def look_next(seen: Mapping[str, str]) -> Next:
    """Return what to ask for next after what was seen; ``unknown`` is not asked again.

    Model: :func:`calc.biology.which_animal.posterior.chances`, one question ahead. Source:
    identify_reasoning; the limits stand in ``identify_weights``.
    """
    return _next(tuple(sorted(seen.items())))


@cache
def _next(key: _Key) -> Next:
    seen = dict(key)
    region = Region.of(seen.get("region", UNKNOWN))
    tempered, misread = _shares(seen)
    sign = bool(bee_signs(seen))
    now = class_of(decide(tempered, region, sign).status)
    if sign:
        return Next(now, None, False)
    left = [each.name for each in TRAITS if each.name not in seen]
    if len(seen.keys() - _UNASKED) >= number("most_questions"):
        left = []
    worth = {each: _worth(tempered, region, each, now) for each in left}
    if worth and _can_change(now, worth.values()):
        best = max(worth, key=lambda each: worth[each].value)
        if worth[best].value >= number("question_cost"):
            return Next(now, best, False)
    bees = sum(misread[each] for each in region.bees)
    most = number("bees_left" if now in WORK else "bees_left_else") / 10_000
    if now in {"bee", "unknown"} or bees <= most:
        return Next(now, None, False)
    best_for_bees = max(left, key=lambda each: _about_bees(misread, region, each), default=None)
    return Next(now, best_for_bees, True)


@dataclass(frozen=True, slots=True)
class _Worth:
    """What a question is worth, and the chance of the likeliest answer that changes the duty."""

    value: float
    likeliest: float


def _can_change(now: str, worth: Iterable[_Worth]) -> bool:
    least = number("likely_answer")
    return now in {"bee", "unknown"} or any(each.likeliest >= least for each in worth)


def _worth(shares: Sequence[float], region: Region, trait: str, now: str) -> _Worth:
    joint, losses, by_class, likeliest = [], [], [], 0.0
    for answer in _answers(trait):
        each = list(map(mul, shares, answer.told))
        after = list(map(mul, shares, answer.tempered))
        total = sum(after)
        then = decide([one / total for one in after], region, answer.sign).status
        by_class.append([sum(map(each.__getitem__, places)) for places in _classes(region)])
        if class_of(then) != now:
            likeliest = max(likeliest, sum(each))
            joint.append(each)
            losses.append(_losses(class_of(then), region))
    saved = expected_saving(joint, _losses(now, region), losses)
    told = information_gain(by_class)
    part = answered(trait)
    return _Worth(part * (saved + number("worth_of_a_bit") * told), part * likeliest)


def _about_bees(shares: Sequence[float], region: Region, trait: str) -> float:
    joint = []
    for answer in _answers(trait):
        each = list(map(mul, shares, answer.misread))
        bees = sum(each[place] for place in region.bees)
        joint.append((bees, sum(each) - bees))
    return answered(trait) * information_gain(joint)


@dataclass(frozen=True, slots=True)
class _Answer:
    """An option of a trait: its chance under each animal, plain, tempered and with misreadings."""

    told: tuple[float, ...]
    tempered: tuple[float, ...]
    misread: tuple[float, ...]
    sign: bool


@cache
def _answers(trait: str) -> tuple[_Answer, ...]:
    values, wrong, made = options(trait), number("misread"), []
    for value in values:
        told = tuple(likelihood(trait)[one][value] for one in animals())
        made.append(
            _Answer(
                told,
                tuple(each ** exponent(trait) for each in told),
                tuple((1 - wrong) * each + wrong / len(values) for each in told),
                bool(bee_signs({trait: value})),
            )
        )
    return tuple(made)


def _shares(seen: Mapping[str, str]) -> tuple[list[float], list[float]]:
    """Return each animal's chance, tempered as in the ranking, and with misreadings counted."""
    prior = priors(seen.get("region", UNKNOWN))
    tempered = [prior[one] for one in animals()]
    misread = list(tempered)
    for trait, value in seen_traits(seen).items():
        answer = _answers(trait)[options(trait).index(value)]
        tempered = _times(tempered, answer.tempered)
        misread = _times(misread, answer.misread)
    return tempered, misread


def _times(shares: Sequence[float], told: Sequence[float]) -> list[float]:
    made = list(map(mul, shares, told))
    total = sum(made)
    return [each / total for each in made]


@cache
def _losses(done: str, region: Region) -> tuple[float, ...]:
    return tuple(loss(done, class_of(each)) for each in region.status)


@cache
def _classes(region: Region) -> tuple[tuple[int, ...], ...]:
    groups: dict[str, list[int]] = {}
    for place, status in enumerate(region.status):
        groups.setdefault(class_of(status), []).append(place)
    return tuple(map(tuple, groups.values()))


_NAMES = {each.name: each for each in TRAITS}
_OPEN = (
    "Enough was asked, and a bee is still not ruled out. Send a photo to a beekeeper or a bee "
    "group before anything else."
)


def advice(seen: Mapping[str, str]) -> str:
    """Return in a sentence what to ask or look for next."""
    found = look_next(seen)
    if found.trait is not None:
        why = "to rule out a bee" if found.bee_open else "it does most for the duty"
        return f"{_NAMES[found.trait].label}: {why}."
    if found.bee_open:
        return _OPEN
    if found.duty in WORK and OLD_NEST.name not in seen:
        return f"{OLD_NEST.label}: {OLD_NEST.meaning.lower()}"
    return "Nothing: no likely answer would change what to do."


def asks(given: Mapping[str, object]) -> Question:
    """Return the next question after what was given.

    Raises
    ------
    InputError
        for a value that cannot be taken
    """
    found = read(TITLE, Inputs.declared, given, customary=False, origins={})
    replace(found, missing=()).refuse()
    seen = {name: value for name, value in found.values.items() if value is not None}
    if "region" not in seen:
        return Question(asked=REGION, why="Law and what is likely hang on it.", settled=False)
    standing = leading_duty(chances(seen), seen)
    told, why = look_next(seen), advice(seen)
    if told.trait is not None:
        return Question(asked=_NAMES[told.trait], why=why, settled=False, standing=standing)
    old = told.duty in WORK and not told.bee_open and OLD_NEST.name not in seen
    return Question(
        asked=OLD_NEST if old else None,
        why=why,
        settled=not told.bee_open,
        standing=_OPEN if told.bee_open else standing,
    )

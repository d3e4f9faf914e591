"""Which animal is it: ranked candidates, what would split the first two, and the duty."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

from calc.biology.identify_bayes import chances, seen_traits, splits
from calc.biology.identify_duty import (
    bee_chance,
    cautions,
    duty,
    is_named,
    law,
    leading_duty,
    named_kin,
)
from calc.biology.identify_inputs import INPUTS, TRAITS, UNKNOWN
from calc.biology.trait_table import ABSENT, NONE, group, kin
from calc.declare import Answer, Calculator, Caution, Out
from calc.tables import row

_SHOWN = 8
_LEAST = 0.01
_WORDS = ((0.9, "very likely"), (0.7, "likely"), (0.0, "more likely than not"))


def core(**seen: str) -> Answer:
    """Return the ranking and the duty for the options seen (``unknown`` says nothing).

    Model and validity: :func:`calc.biology.identify_bayes.chances`.
    """
    chance = chances(seen)
    return Answer(
        values={
            "duty": leading_duty(chance, seen),
            "animal": _answer(chance),
            "bee_chance": in_words(bee_chance(chance)),
            "law": law(next(iter(chance)), seen.get("region", UNKNOWN)),
            "seen": len(seen_traits(seen)),
            "candidates": _candidates(chance, seen.get("region", UNKNOWN)),
            "look_next": _look_next(chance, seen),
        },
        cautions=[*cautions(chance, seen), *_size_note(chance, seen)],
    )


def name_of(animal: str) -> str:
    """Return the animal's common name."""
    return str(row("species", animal)["animal"])


def in_words(chance: float) -> str:
    """Return a chance in words, no finer than the model carries.

    The ends stay open, and from 20 % on it goes in steps of 5 %.
    """
    if chance >= 0.95:
        return "over 95 %"
    if chance < 0.01:
        return "under 1 %"
    if chance < 0.05:
        return "1 to 5 %"
    if chance < 0.2:
        return f"about {round(100 * chance)} %"
    return f"about {min(5 * round(20 * chance), 95)} %"


def _answer(chance: Mapping[str, float]) -> str:
    first = next(iter(chance))
    if is_named(chance):
        word = next(word for least, word in _WORDS if chance[first] >= least)
        return f"{name_of(first)} ({row('species', first)['latin']}), {word}"
    if named_kin(chance):
        kind = named_kin(chance)
        within = [name_of(one) for one in chance if kin(one) == kind][:2]
        article = "An" if kind[0] in "aeiou" else "A"
        return f"{article} {kind}, which one is open. First on the list: {' or '.join(within)}"
    leading = [one for one in chance if one != NONE][:2]
    return f"Unknown. First on the list: {name_of(leading[0])}, then {name_of(leading[1])}"


def _candidates(chance: Mapping[str, float], region: str) -> list[dict[str, Any]]:
    shown = [one for one in chance if chance[one] >= _LEAST][:_SHOWN]
    bee = next(one for one in chance if group(one) == "bee")
    shown += [one for one in (bee, NONE) if one not in shown]
    return [
        {
            "animal": name_of(one),
            "chance": in_words(chance[one]),
            "short": duty(one, region)["short"],
        }
        for one in shown
    ]


def _look_next(chance: Mapping[str, float], seen: Mapping[str, str]) -> list[dict[str, Any]]:
    inputs = {each.name: each for each in TRAITS}
    first, second = (name_of(one) for one in [one for one in chance if one != NONE][:2])
    return [
        {
            "look": inputs[each.trait].label,
            "first": f"{first}: {_label(each.trait, each.first)}",
            "second": f"{second}: {_label(each.trait, each.second)}",
            "settles": 100.0 * each.settles,
        }
        for each in splits(chance, seen)[:3]
    ]


def _label(trait: str, value: str) -> str:
    if value == ABSENT:
        return "has none"
    choice = next(each for each in TRAITS if each.name == trait)
    return next(each.label for each in choice.options if each.value == value)


def _size_note(chance: Mapping[str, float], seen: Mapping[str, str]) -> list[Caution]:
    if seen.get("size", UNKNOWN) == UNKNOWN:
        return []
    without = next(iter(chances({**seen, "size": UNKNOWN})))
    if kin(without) == kin(next(iter(chance))):
        return []
    return [
        Caution(
            level="note",
            text="The told size alone changes the first name. Check the marks instead.",
            reason=f"Without the size the list starts with: {name_of(without)}. Lengths told by "
            "clients run long, and first-brood workers are small.",
            source="common_practice",
        )
    ]


which_animal = Calculator(
    name="which_animal",
    title="Which animal is it?",
    part="biology",
    purpose=(
        "Which animal it may be from what you see at a distance or in a photo, how sure that is, "
        "what to look at next, and what you must do."
    ),
    inputs=INPUTS,
    outputs=(
        Out(
            name="duty",
            label="What to do",
            meaning="The duty that follows, the gravest that is not ruled out.",
            kind="text",
            main=True,
        ),
        Out(
            name="animal",
            label="Animal",
            meaning="The first candidate if it reaches the chance needed for a name.",
            kind="text",
            main=True,
        ),
        Out(
            name="bee_chance",
            label="Chance of any bee",
            meaning="All bees together; never nothing, since people misread and photos deceive.",
            kind="text",
            main=True,
        ),
        Out(
            name="law",
            label="Law for the first candidate",
            meaning="Whose law the duty of the first candidate follows.",
            kind="text",
        ),
        Out(
            name="seen",
            label="Things seen",
            meaning="How many of the things asked were seen.",
            kind="count",
        ),
        Out(
            name="candidates",
            label="Candidates",
            meaning="Ranked; the likeliest bee and the unknown always stand in the list.",
            kind="table",
            columns=(
                Out(name="animal", label="Animal", meaning="Candidate.", kind="text"),
                Out(name="chance", label="Chance", meaning="After what was seen.", kind="text"),
                Out(name="short", label="Duty", meaning="In short.", kind="text"),
            ),
        ),
        Out(
            name="look_next",
            label="Look at this next",
            meaning="What would best tell the first two named candidates apart.",
            kind="table",
            columns=(
                Out(name="look", label="Look at", meaning="Trait.", kind="text"),
                Out(name="first", label="If it is the first", meaning="Likeliest.", kind="text"),
                Out(name="second", label="If it is the second", meaning="Likeliest.", kind="text"),
                Out(
                    name="settles",
                    label="Settles",
                    meaning="Expected share of the doubt between the two that it removes.",
                    unit="percent",
                ),
            ),
        ),
    ),
    core=core,
    sources=(
        "identify_reasoning",
        "uba_wasps",
        "wsbk_hornet",
        "pnw_hornet",
        "robinson_2005",
        "council_bees",
        "species_memory",
        "bee_memory",
        "common_practice",
    ),
    formula=(
        (
            r"P(a \mid \text{seen}) \propto P(a)\,\prod_t P(o_t \mid a)^{\,T\,w_t}",
            "chance of animal a: prior of the region times the weighted, tempered chances of what "
            "was seen",
            "identify_reasoning",
        ),
        (
            r"P(o \mid a) = n_o \Big/ \sum_{o'} n_{o'}",
            "n is the number of the word (almost always, often, sometimes, rarely, never) that "
            "the trait table gives to option o",
            "identify_reasoning",
        ),
    ),
    assumptions=(
        "The things seen are not independent of each other; the temper lowers their joint weight, "
        "and chances are still not measured frequencies.",
        "Only animals of the table can be named; None of these is a candidate with the same "
        "chance for everything seen.",
        "A single sign of a bee outranks everything else: no social wasp then stands above the "
        "likeliest bee, and the job stops.",
        "Lengths count little and are compared with familiar things, since told lengths run long.",
        "Law is given for the places named; it changes, and yours decides.",
    ),
)

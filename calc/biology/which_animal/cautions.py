"""What a reader must know before the answer of "Which animal is it?"."""

from __future__ import annotations

from collections.abc import Mapping

from calc import rules
from calc.biology.which_animal.duty import (
    asked_first,
    bee_chance,
    capital,
    duty,
    is_bee_stop,
    is_named,
    named_kin,
    with_status,
)
from calc.biology.which_animal.inputs import UNKNOWN
from calc.biology.which_animal.posterior import bee_signs, chances
from calc.biology.which_animal.question import look_next
from calc.biology.which_animal.traits import kin, name_of, number
from calc.biology.which_animal.value import WORK
from calc.declare import Caution
from calc.tables import row


def cautions(chance: Mapping[str, float], seen: Mapping[str, str]) -> list[Caution]:
    """Return every caution that holds, beside the standing one about distance."""
    region = seen.get("region", UNKNOWN)
    made = [_distance(), *_old_nest(seen.get("old_nest"))]
    made += _bees(chance, seen)
    made += _unsettled(seen)
    made += _report(chance, region)
    made += _ask(chance, region)
    made += _release(chance, region)
    if not is_named(chance) and not named_kin(chance):
        made.append(
            Caution(
                level="caution",
                text="Unknown is an answer. Do not start as if you knew.",
                reason="No candidate is likely enough to carry a name.",
                source="identify_reasoning",
            )
        )
    made += _size_note(chance, seen)
    if region == UNKNOWN:
        made.append(
            Caution(
                level="note",
                text="Give the region: the law and what is likely both depend on it.",
                reason="Without it the strictest rule of any region is shown.",
                source="identify_reasoning",
            )
        )
    return made


def _distance() -> Caution:
    return Caution(
        level="caution",
        text="Look from a distance, with field glasses or a photo. Never catch one to look.",
        reason="Colonies defend the nest; no name found here makes going near it harmless.",
        source="identify_reasoning",
    )


def _old_nest(sign: str | None) -> list[Caution]:
    if sign in {"giant", "winter"}:
        return [
            Caution(
                level="stop",
                text=rules.text("wintered_nest", "do"),
                reason="A nest wider than a metre, or flight in winter, means that it lived on.",
                source="wintered_ours",
            )
        ]
    if sign == "several":
        return [
            Caution(
                level="stop",
                text="Do not start: with several ways in, one closed or held leaves the others.",
                reason="They come out behind you. A nest that lived on has several as well.",
                source="own_reasoning",
            )
        ]
    return []


def _bees(chance: Mapping[str, float], seen: Mapping[str, str]) -> list[Caution]:
    part, signs = bee_chance(chance), bee_signs(seen)
    if is_bee_stop(chance, seen):
        why = (
            f"Seen: {', '.join(signs).lower()}."
            if signs
            else f"The chance of a bee is {100 * part:.0f} %, not small enough to go on."
        )
        return [
            Caution(
                level="stop",
                text="Stop the job: bees go to a beekeeper or stay where they are.",
                reason=why,
                source="identify_reasoning",
            )
        ]
    if part >= number("bee_caution"):
        return [
            Caution(
                level="caution",
                text="Look once more for fur, pollen and wax before you start.",
                reason=f"A chance of {100 * part:.0f} % is left that these are bees.",
                source="identify_reasoning",
            )
        ]
    return []


def _unsettled(seen: Mapping[str, str]) -> list[Caution]:
    found = look_next(seen)
    if found.duty not in WORK or (found.trait is None and not found.bee_open):
        return []
    return [
        Caution(
            level="caution",
            text="Not settled: no job on this yet. See what to ask or look for next.",
            reason="A likely answer could still change what to do, or a bee is not ruled out.",
            source="identify_reasoning",
        )
    ]


def _report(chance: Mapping[str, float], region: str) -> list[Caution]:
    alarm = with_status(chance, region, "notifiable")
    part = sum(alarm.values())
    if part < number("report_caution"):
        return []
    animal = next(iter(alarm))
    name, found = row("species", animal)["animal"], duty(animal, region)
    likely = part >= number("report_stop")
    return [
        Caution(
            level="stop" if likely else "caution",
            text=f"{name}: photograph from a distance, report, never release or move a live one."
            if likely
            else f"Rule out the {name.lower()}: it is photographed and reported, never released.",
            reason=f"Chance of a notifiable animal {100 * part:.0f} %. Law of: {found['place']}.",
            source=_first(found["source"]),
        )
    ]


def _ask(chance: Mapping[str, float], region: str) -> list[Caution]:
    asked = asked_first(chance, region, next(iter(chance)))
    part = sum(asked.values())
    if part < number("protected_caution"):
        return []
    name, found = row("species", next(iter(asked)))["animal"], duty(next(iter(asked)), region)
    return [
        Caution(
            level="caution",
            text="Authority first: no work on this nest before it has answered."
            if part >= number("ask_first")
            else "Rule out the animals for which the authority must be asked first.",
            reason=f"First of them: {name}. {capital(found['place'])}.",
            source=_first(found["source"]),
        )
    ]


def _release(chance: Mapping[str, float], region: str) -> list[Caution]:
    first = next(iter(chance))
    if duty(first, region)["status"] != "introduced":
        return []
    return [
        Caution(
            level="caution",
            text="Introduced here: no release of young queens and males without written consent.",
            reason="A release spreads an animal that does not belong there.",
            source="identify_reasoning",
        )
    ]


def _first(source: object) -> str:
    return str(source[0]) if isinstance(source, list) else str(source)


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

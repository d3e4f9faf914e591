"""The duty that follows from the chances: stop, report, ask first, find out, or go on."""

from __future__ import annotations

from collections.abc import Mapping
from functools import cache

from calc.biology.identify_bayes import bee_signs, of_group
from calc.biology.identify_inputs import REGION, UNKNOWN
from calc.biology.trait_table import NONE, kin, number
from calc.declare import Caution
from calc.tables import row, rows

GRAVITY = (
    "bee", "notifiable", "authority", "protected", "stray", "unknown", "leave", "introduced",
    "native",
)  # fmt: skip


@cache
def duty(animal: str, region: str) -> Mapping[str, object]:
    """Return the row of the duty of an animal in a region; the gravest one if unknown."""
    if region == UNKNOWN:
        every = [
            duty(animal, each.value)
            for each in REGION.options
            if each.value != UNKNOWN and not _stray(animal, each.value)
        ]
        return min(every, key=lambda each: GRAVITY.index(str(each["status"])))
    table = _duties()
    for key in (f"{animal}.{region}", f"{animal}.any"):
        if key in table:
            return table[key]
    return table["other.any"]


@cache
def _duties() -> Mapping[str, Mapping[str, object]]:
    return {str(each["key"]): each for each in rows("duties")}


def _stray(animal: str, region: str) -> bool:
    return bool(row("where_it_lives", animal)[region] == "stray")


def with_status(chance: Mapping[str, float], region: str, *status: str) -> dict[str, float]:
    """Return the animals whose duty there has one of these statuses, the likeliest first."""
    return {one: part for one, part in chance.items() if duty(one, region)["status"] in status}


def asked_first(chance: Mapping[str, float], region: str) -> dict[str, float]:
    """Return the animals whose authority must be asked, the likeliest first.

    An animal not known in the region counts only where it leads the list.
    """
    first = next(iter(chance))
    asked = with_status(chance, region, "authority", "protected")
    return with_status({first: chance[first]}, region, "stray") | asked


def bee_chance(chance: Mapping[str, float]) -> float:
    """Return the chance of any bee."""
    return of_group(chance, "bee")


def is_bee_stop(chance: Mapping[str, float], seen: Mapping[str, str]) -> bool:
    """Return whether a bee is shown by a sign or not ruled out."""
    return bool(bee_signs(seen)) or bee_chance(chance) >= number("bee_stop")


def is_named(chance: Mapping[str, float]) -> bool:
    """Return whether the first candidate is likely enough to be named."""
    first = next(iter(chance))
    return first != NONE and chance[first] >= number("named")


def named_kin(chance: Mapping[str, float]) -> str:
    """Return the kin that is likely enough to be named, or nothing."""
    sums: dict[str, float] = {}
    for one, part in chance.items():
        sums[kin(one)] = sums.get(kin(one), 0.0) + part
    first = max(sums, key=sums.__getitem__)
    return first if first != kin(NONE) and sums[first] >= number("named") else ""


def leading_duty(chance: Mapping[str, float], seen: Mapping[str, str]) -> str:
    """Return the main text: what to do now, with whose law it follows."""
    region = seen.get("region", UNKNOWN)
    first = next(iter(chance))
    if is_bee_stop(chance, seen):
        return _bee_text(chance, seen)
    alarm = with_status(chance, region, "notifiable")
    if sum(alarm.values()) >= number("report_stop"):
        return _told(next(iter(alarm)), region)
    asked = asked_first(chance, region)
    if sum(asked.values()) >= number("ask_first"):
        likeliest = next(iter(asked))
        return _told(likeliest, region)
    if not is_named(chance) and named_kin(chance):
        return _kin_text(chance, region)
    if not is_named(chance):
        return (
            "Find out first: no job on a guess. Take a sharp photo from a distance, look at the "
            "marks named below, or ask a museum, an extension office or the authority."
        )
    return _told(first, region)


def _bee_text(chance: Mapping[str, float], seen: Mapping[str, str]) -> str:
    bee = next(one for one in chance if duty(one, UNKNOWN)["status"] == "bee")
    if bee == next(iter(chance)) and (bee_signs(seen) or is_named(chance)):
        return _told(bee, seen.get("region", UNKNOWN))
    if bee_signs(seen):
        return (
            "Stop. You saw a sign of a bee. Bees are never taken out this way: send a photo to a "
            "beekeeper or a bee group before anything else."
        )
    return (
        "Stop: a bee is not ruled out. Look again from a distance for fur, pollen, wax or many "
        "single holes, or send a photo to a beekeeper."
    )


def _kin_text(chance: Mapping[str, float], region: str) -> str:
    """Return the gravest duty of the likely members of the kin that leads."""
    members = [
        one
        for one, part in chance.items()
        if kin(one) == named_kin(chance) and part >= number("protected_caution")
    ] or [next(one for one in chance if kin(one) == named_kin(chance))]
    gravest = min(members, key=lambda one: GRAVITY.index(str(duty(one, region)["status"])))
    return f"Which {named_kin(chance)} is open; the strictest rule: {_told(gravest, region)}"


def _told(animal: str, region: str) -> str:
    return str(duty(animal, region)["duty"])


def law(animal: str, region: str) -> str:
    """Return where the duty of an animal comes from, in words."""
    return f"{_capital(duty(animal, region)['place'])}. Check yours."


def cautions(chance: Mapping[str, float], seen: Mapping[str, str]) -> list[Caution]:
    """Return every caution that holds, beside the standing one about distance."""
    region = seen.get("region", UNKNOWN)
    made = [_distance()]
    made += _bees(chance, seen)
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
    asked = asked_first(chance, region)
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
            reason=f"First of them: {name}. {_capital(found['place'])}.",
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


def _capital(text: object) -> str:
    return str(text)[:1].upper() + str(text)[1:]

"""The duty that follows from the chances: stop, report, ask first, find out, or go on."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from functools import cache

from calc.biology.which_animal.inputs import REGION, UNKNOWN
from calc.biology.which_animal.posterior import bee_signs, of_group
from calc.biology.which_animal.traits import NONE, animals, kin, number
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


def asked_first(chance: Mapping[str, float], region: str, first: str) -> dict[str, float]:
    """Return the animals whose authority must be asked, the likeliest first.

    An animal not known in the region counts only where it is ``first`` on the list.
    """
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
    return _leading_kin([chance[one] for one in animals()], Region.of(UNKNOWN))


@dataclass(frozen=True, slots=True)
class Decision:
    """What to do, as a status of :data:`GRAVITY`, and the animal that it follows from.

    ``open`` names the kin where the species is open; no animal where nothing is known yet.
    """

    status: str
    animal: str | None = None
    open: str = ""


@dataclass(frozen=True, slots=True, eq=False)
class Region:
    """Status and kin of each animal in a region, in the order of :func:`animals`."""

    status: tuple[str, ...]
    kins: tuple[str, ...]
    bees: tuple[int, ...]
    reported: tuple[int, ...]
    asked: tuple[int, ...]

    @classmethod
    @cache
    def of(cls, name: str) -> Region:
        """Return the region with this value."""
        status = tuple(str(duty(one, name)["status"]) for one in animals())
        places = range(len(status))
        return cls(
            status=status,
            kins=tuple(kin(one) for one in animals()),
            bees=tuple(each for each in places if status[each] == "bee"),
            reported=tuple(each for each in places if status[each] == "notifiable"),
            asked=tuple(each for each in places if status[each] in {"authority", "protected"}),
        )


def decide(shares: Sequence[float], region: Region, sign: bool) -> Decision:
    """Return the gravest duty that is not ruled out, by the limits of the table.

    Parameters
    ----------
    shares : chance of each animal, adding up to 1, in the order of :func:`animals`
    region : where
    sign : whether a sign of a bee was seen
    """
    part = shares.__getitem__
    if sign or sum(map(part, region.bees)) >= number("bee_stop"):
        return Decision("bee", animals()[max(region.bees, key=part)])
    if sum(map(part, region.reported)) >= number("report_stop"):
        return Decision("notifiable", animals()[max(region.reported, key=part)])
    first = max(range(len(shares)), key=part)
    asked = (*region.asked, first) if region.status[first] == "stray" else region.asked
    if sum(map(part, asked)) >= number("ask_first"):
        return _decided(max(asked, key=part), region)
    if animals()[first] != NONE and part(first) >= number("named"):
        return _decided(_strictest_release(shares, region, first), region)
    leading = _leading_kin(shares, region)
    if not leading:
        return Decision("unknown")
    kins = [each for each, one in enumerate(region.kins) if one == leading]
    likely = [each for each in kins if part(each) >= number("protected_caution")]
    members = likely or [max(kins, key=part)]
    gravest = min(members, key=lambda each: GRAVITY.index(region.status[each]))
    return _decided(gravest, region, leading)


def _strictest_release(shares: Sequence[float], region: Region, first: int) -> int:
    """Return the animal named, or an introduced one of its kin that is not ruled out."""
    if region.status[first] != "native":
        return first
    likely = [
        each
        for each, one in enumerate(region.kins)
        if one == region.kins[first]
        and region.status[each] == "introduced"
        and shares[each] >= number("ask_first")
    ]
    return max(likely, key=shares.__getitem__, default=first)


def _decided(place: int, region: Region, leading: str = "") -> Decision:
    return Decision(region.status[place], animals()[place], leading)


def _leading_kin(shares: Sequence[float], region: Region) -> str:
    sums: dict[str, float] = {}
    for one, part in zip(region.kins, shares, strict=True):
        sums[one] = sums.get(one, 0.0) + part
    first = max(sums, key=sums.__getitem__)
    return first if first != kin(NONE) and sums[first] >= number("named") else ""


def decided(chance: Mapping[str, float], seen: Mapping[str, str]) -> Decision:
    """Return :func:`decide` for the chances of :func:`chances`."""
    shares = [chance[one] for one in animals()]
    return decide(shares, Region.of(seen.get("region", UNKNOWN)), bool(bee_signs(seen)))


def leading_duty(chance: Mapping[str, float], seen: Mapping[str, str]) -> str:
    """Return the main text: what to do now, with whose law it follows."""
    region = seen.get("region", UNKNOWN)
    found = decided(chance, seen)
    if found.status == "bee":
        return _bee_text(chance, seen)
    if found.animal is None:
        return (
            "Find out first: no job on a guess. Take a sharp photo from a distance, look at the "
            "marks named below, or ask a museum, an extension office or the authority."
        )
    told = _told(found.animal, region)
    if found.open:
        return f"Which {found.open} is open; the strictest rule: {told}"
    return told


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


def _told(animal: str, region: str) -> str:
    return str(duty(animal, region)["duty"])


def law(animal: str, region: str) -> str:
    """Return where the duty of an animal comes from, in words."""
    return f"{capital(duty(animal, region)['place'])}. Check yours."


def capital(text: object) -> str:
    """Return a text with its first letter large."""
    return str(text)[:1].upper() + str(text)[1:]

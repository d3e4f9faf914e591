"""What is said on release, relocation and feed: hard stops first, then what to wait for."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from typing import Any

from calc import rules
from calc.declare import Caution
from calc.method.release_numbers import condition

Given = Mapping[str, Any]

HIDDEN = ("verdict", "figures")
"""Results that a stop withholds: all of them."""


def cautions(given: Given, unmet: Sequence[str]) -> list[Caution]:
    """Return the cautions of an answer; ``unmet`` are the conditions that are not met."""
    said = {"release": _release, "move": _move, "feed": _feed}[given["purpose"]]
    return list(said(given, unmet))


def _status(given: Given) -> Iterator[Caution]:
    status = given["status"]
    if status == "invader":
        yield Caution(
            level="stop",
            text=f"{rules.text('release', 'law')} Let nothing of it hatch.",
            reason="Release is an offence in the EU, Great Britain and elsewhere; each young queen "
            "can found a nest.",
            source="union_list_release",
            hides=HIDDEN,
        )
    elif status == "introduced":
        yield Caution(
            level="stop",
            text="Do not let go or move an introduced species unless the wildlife office agreed in "
            "writing.",
            reason="Many places forbid it, and it harms what lives there.",
            source="introduced_release_law",
            hides=HIDDEN,
        )
    elif status == "unknown":
        yield Caution(
            level="stop",
            text="Find out first what it is and how the law stands. Not known counts as no.",
            reason="An invader let go by mistake cannot be called back.",
            source="introduced_release_law",
            hides=HIDDEN,
        )
    elif status == "protected":
        yield Caution(
            level="stop",
            text="A protected species is moved and let go only under a permit: ask the nature "
            "authority first.",
            reason="Without it even a well-meant move is an offence.",
            source="protected_hornet_de",
            hides=HIDDEN,
        )
    elif status == "protected_permit":
        yield Caution(
            level="note",
            text="The permit says where, when and who. It comes before everything here.",
            reason="Its conditions bind.",
            source="protected_hornet_de",
        )


def _release(given: Given, unmet: Sequence[str]) -> Iterator[Caution]:
    yield from _status(given)
    if given["distance"] < condition("distance"):
        yield Caution(
            level="stop",
            text=f"Not here: the nearest people or hives are closer than "
            f"{condition('distance'):.0f} m. Find another place.",
            reason="The client had the nest taken out, and neighbours and hives are not asked.",
            source="release_conditions_ours",
            hides=HIDDEN,
        )
    if given["agreed"] == "no":
        yield Caution(
            level="caution",
            text="Ask first: tell the client and the owner of the land what you let go, and where.",
            reason="They decide what happens on their land.",
            source="tell_the_client",
        )
    if unmet:
        yield Caution(
            level="caution",
            text=f"Wait: {', '.join(unmet)}. {rules.text('release', 'day')}",
            reason="Animals that cannot fly off are lost. Whether queens kept on sugar water live "
            "through the winter is not known.",
            source="release_conditions_ours",
        )
    yield Caution(
        level="caution",
        text="Open the cage on the ground, stand behind it, suit on. "
        f"{rules.text('release', 'workers', 'mates')}",
        reason="Queens and workers sting. Kin that mate have weaker colonies.",
        source="germanica_mates",
    )
    yield Caution(
        level="note",
        text="How many nests come of it next year is not known to a factor of ten and more.",
        reason="One source loses 98 in 100 over winter, another says that most survive.",
        source="landcare_queens",
    )


def _move(given: Given, unmet: Sequence[str]) -> Iterator[Caution]:
    yield from _status(given)
    if given["km"] < condition("moving"):
        yield Caution(
            level="caution",
            text=f"Too near: workers find home. Move at least {condition('moving'):.0f} km.",
            reason="In the one trial about half came back from two kilometres, a few in a hundred "
            "from five.",
            source="poidatz_2018_homing",
        )
    yield Caution(
        level="caution",
        text="The trial was made with yellow-legged hornets, which may not be moved. For your "
        "species it is a stand-in.",
        reason="No trial with European hornets or yellowjackets was found.",
        source="poidatz_2018_homing",
    )
    yield Caution(
        level="caution",
        text="Catch foragers at the old place until none comes; those left out hunt for the hole.",
        reason="A moved nest leaves its late foragers behind.",
        source="moving_five_km",
    )
    yield Caution(
        level="note",
        text="Distance does not hold young queens: in spring they fly much farther.",
        reason="Up to 70 km is told.",
        source="landcare_queens",
    )


def _feed(given: Given, unmet: Sequence[str]) -> Iterator[Caution]:
    if given["status"] == "invader":
        yield Caution(
            level="stop",
            text="Comb and brood of an invader belong to the authority: freeze, label, report.",
            reason="Live comb of it may not be moved, and the authority wants to see it.",
            source="union_list_release",
            hides=HIDDEN,
        )
    if given["history"] != "none":
        known = given["history"] == "treated"
        yield Caution(
            level="stop",
            text="Do not feed it to any animal. Bag it, bin it as the product's label says."
            if known
            else "Do not feed it: nobody can say that this nest was never treated. Not known "
            "counts as treated.",
            reason="Bait is fed to larvae, and several poisons pass from feed into eggs and fat.",
            source="pesticide_in_eggs" if known else "bait_reaches_larvae",
            hides=HIDDEN,
        )
    if given["brood_state"] == "bad":
        yield Caution(
            level="stop",
            text="Do not feed dead, dark, smelling or mouldy brood.",
            reason="Nests carry germs that also harm poultry and people.",
            source="freezing_practice",
            hides=HIDDEN,
        )
    elif given["brood_state"] == "dirty":
        yield Caution(
            level="stop",
            text="Do not feed brood with droppings, bait, insulation or paint dust on it.",
            reason="Rodent bait, lead and asbestos cannot be washed off.",
            source="bait_reaches_larvae",
            hides=HIDDEN,
        )
    if given["eggs"] == "sold":
        yield Caution(
            level="caution",
            text="Eggs that leave the house make you a food business in many places: ask the "
            "veterinary office before you feed wild insects.",
            reason="Wasps are on no list of insects allowed in feed.",
            source="poultry_law",
        )
    yield Caution(
        level="caution",
        text=f"{rules.text('freezing', 'law', 'cold', 'open')} Never feed adults: a dead one can "
        "still sting.",
        reason=rules.text("freezing", "poison"),
        source="freezing_ours",
    )
    yield Caution(
        level="note",
        text="Thaw it in a closed tub in the cool, feed it the same day, take leftovers away.",
        reason="Thawed brood spoils fast.",
        source="freezing_practice",
    )
    yield Caution(
        level="note",
        text="The food values are a band from few studies whose columns do not agree.",
        reason="No analysis of yellowjacket brood on a clear basis was found.",
        source="brood_default_ours",
    )

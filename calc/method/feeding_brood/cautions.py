"""What is said on feeding brood to poultry: poison and dirt first."""

from __future__ import annotations

from collections.abc import Iterator

from calc import rules
from calc.declare import Caution
from calc.method.feeding_brood.inputs import Inputs
from calc.method.passing_on import HIDDEN


def cautions(x: Inputs) -> Iterator[Caution]:
    """Yield the cautions of an answer."""
    if x.status == "invader":
        yield Caution(
            level="stop",
            text="Comb and brood of an invader belong to the authority: freeze, label, report.",
            reason="Live comb of it may not be moved, and the authority wants to see it.",
            source="union_list_release",
            hides=HIDDEN,
        )
    if x.history != "none":
        known = x.history == "treated"
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
    if x.brood_state == "bad":
        yield Caution(
            level="stop",
            text="Do not feed dead, dark, smelling or mouldy brood.",
            reason="Nests carry germs that also harm poultry and people.",
            source="freezing_practice",
            hides=HIDDEN,
        )
    elif x.brood_state == "dirty":
        yield Caution(
            level="stop",
            text="Do not feed brood with droppings, bait, insulation or paint dust on it.",
            reason="Rodent bait, lead and asbestos cannot be washed off.",
            source="bait_reaches_larvae",
            hides=HIDDEN,
        )
    if x.eggs == "sold":
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

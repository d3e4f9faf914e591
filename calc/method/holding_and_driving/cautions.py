"""What "Holding and driving" says: the verdict in words, and its cautions."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from calc import rules
from calc.declare import Caution
from calc.method import breath as gas
from calc.method.told import degrees

HIDDEN = ("verdict", "minutes_spare", "syrup", "water")
"""Results that a stop withholds: everything one would set out on the road with."""


@dataclass(frozen=True, slots=True)
class Findings:
    """What verdict and cautions are made from; minutes, degC, K, parts of one."""

    invader: bool
    place: str
    tight: bool
    temperature: float
    inside: float | None
    share: float | None
    time: float
    minutes_end: float | None
    tight_planned: float
    parked: float
    car: float
    car_box: float
    volume: float
    volume_needed: tuple[float, float]
    screen: float
    screen_wanted: float


def span(minutes: float) -> str:
    """Write a time as one reads it."""
    if minutes < 1.5:
        return "about a minute"
    if minutes < 120:
        return f"about {minutes:.0f} minutes"
    return f"about {minutes / 60:.0f} hours"


def verdict(found: Findings) -> str:
    """Return the answer in plain words."""
    if found.share is None or found.inside is None:
        return f"Shut tight, the box holds them for {span(found.tight_planned)} as planned."
    planned = gas.limit("planned", "percent") / 100
    first = f"The box settles at about {degrees(found.inside)} and {100 * found.share:.1f} % "
    first += "carbon dioxide."
    if found.share <= planned and found.inside <= gas.limit("alarm", "temperature"):
        return f"{first} That is inside what we plan for; look in on every stop."
    return f"{first} That is more than we plan for: more mesh, fewer animals, a cooler place."


def cautions(found: Findings) -> list[Caution]:
    """Return the cautions of an answer."""
    return [*_stops(found), *_air(found), *_car(found), *_always()]


def _stops(found: Findings) -> Iterator[Caution]:
    if found.invader:
        yield Caution(
            level="stop",
            text="Do not drive off with live ones: report this hornet, and let the authority act.",
            reason="It may not be held, moved or let go in the places that list it.",
            source="union_list_release",
            hides=HIDDEN,
        )
    if found.temperature >= gas.limit("end", "temperature"):
        yield Caution(
            level="stop",
            text="Too hot: the air round the box is at the end of the limits. Wait for a cool hour "
            "or cool the load space first.",
            reason="They add their own heat to it.",
            source="holding_limits_ours",
            hides=HIDDEN,
        )
    elif found.minutes_end is not None and found.minutes_end < found.time:
        yield Caution(
            level="stop",
            text=f"They do not last the ride in this box: it is at the end of the limits after "
            f"{span(found.minutes_end)}.",
            reason="Carbon dioxide or heat. More mesh low and high, more boxes, cooler, calmer.",
            source="holding_limits_ours",
            hides=HIDDEN,
        )
    if found.parked > 0 and found.car_box >= gas.limit("end", "temperature"):
        yield Caution(
            level="stop",
            text=f"Do not leave them in the parked car: its air reaches {degrees(found.car)} in "
            "that time on an average clear day, and the box is warmer still.",
            reason="Open windows hardly help, and half of all cars get hotter.",
            source="null_parked_cars",
            hides=HIDDEN,
        )
    if found.place == "loose":
        yield Caution(
            level="stop",
            text="Not in the cab without a second closed box. One loose hornet at speed is enough.",
            reason="A box that opens in the cab blinds and stings the driver.",
            source="transport_practice",
            hides=HIDDEN,
        )


def _air(found: Findings) -> Iterator[Caution]:
    if found.tight:
        yield Caution(
            level="caution",
            text=f"A tight box is for minutes, not for the road: after {span(found.tight_planned)} "
            "it is where we plan to be at the most.",
            reason="They breathe and warm it; agitated ones many times faster.",
            source="holding_limits_ours",
        )
    elif found.share is not None and found.share > gas.limit("planned", "percent") / 100:
        yield Caution(
            level="caution",
            text="The mesh is too small for so many: carbon dioxide settles above the plan.",
            reason="One mesh in the lid exchanges little; one low and one high let warmth drive "
            "the air.",
            source="holding_limits_ours",
        )
    if found.inside is not None and found.inside > gas.limit("alarm", "temperature"):
        yield Caution(
            level="caution",
            text="The box settles above the alarm temperature: shade, cool air, fewer in a box.",
            reason="Breath and heat rise steeply above it.",
            source="holding_limits_ours",
        )
    if found.screen < found.screen_wanted and not found.tight:
        yield Caution(
            level="note",
            text="Bee packages have more screen for their mass than this box.",
            reason="A rule of thumb from bees; a bee package is cooled by the bees' own fanning.",
            source="package_bees",
        )
    if found.volume < found.volume_needed[0]:
        yield Caution(
            level="caution",
            text="The box is too small for them: they pile up, bite and overheat. Take two.",
            reason="Wanted room is drawn from package bees, doubled for large, unrelated animals.",
            source="chamber_volume_ours",
        )
    if found.temperature < 10:
        yield Caution(
            level="note",
            text="In this cold they sit still and look dead. They are not; and never freeze "
            "animals that are to be let go.",
            reason="Below about 10 °C wasps hardly move.",
            source="holding_limits_ours",
        )


def _car(found: Findings) -> Iterator[Caution]:
    yield Caution(
        level="caution",
        text=rules.text("live_box", "parked", "also"),
        reason="Means of clear days; open windows hardly slow it.",
        source="mclaren_2005",
    )
    if found.place == "cab":
        yield Caution(
            level="caution",
            text="In the cab only for want of another place: second box closed and strapped, "
            "suit and adrenaline within reach.",
            reason="You cannot fight a loose hornet and steer.",
            source="transport_practice",
        )


def _always() -> Iterator[Caution]:
    yield Caution(
        level="caution",
        text=f"{rules.text('wrapping', 'hard', 'soft')} Label it with what is inside.",
        reason="What a thumb nail can scratch, a wasp can bite.",
        source="wasp_chew_rule",
    )
    yield Caution(
        level="caution",
        text=f"If it opens on the road: {rules.text('box_opens', 'stop', 'out', 'suit')}",
        reason="The crash is a greater danger than the sting.",
        source="transport_practice",
    )
    yield Caution(
        level="note",
        text="Crossing a border or a state line with live insects can need a permit.",
        reason="The law of the place has the last word.",
        source="transport_law",
    )

"""What "The catch chamber" says: the verdict in words, and its cautions."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from calc import rules
from calc.declare import Caution
from calc.method import breath as gas
from calc.method.catch_chamber.landing import target
from calc.method.told import speed
from calc.tables import row

HIDDEN = ("battery_minutes", "minutes_planned", "minutes_end", "minutes_hot", "volume_needed")
"""Results that a stop withholds: how long to run or wait, and how big to build."""


@dataclass(frozen=True, slots=True)
class Findings:
    """What verdict and cautions are made from; best of the set-ups is the slower arrival."""

    animal: str
    invader: bool
    fastest: float
    slowest: float
    slower_setup: str
    both: bool
    lands: float
    give: float
    give_needed: float
    kept_share: float
    weak_lift: str
    mesh: str
    opening: float
    mesh_areas: float
    volume: float
    volume_needed: tuple[float, float]
    temperature: float


def verdict(found: Findings) -> str:
    """Return the answer in plain words."""
    if found.both:
        first = (
            f"Set-up {found.slower_setup} is the kinder one: {found.animal} arrives at about "
            f"{speed(found.slowest)} instead of {speed(found.fastest)}."
        )
    else:
        first = f"{found.animal} arrives at about {speed(found.slowest)}."
    aim = target("speed")
    if found.slowest > aim:
        second = (
            f"They fly slower than that themselves, about {speed(aim)}: widen or shorten the hose."
        )
    else:
        second = "That is no faster than they fly themselves."
    if found.give < found.give_needed:
        third = f"Give the catch {found.give_needed:.0f} mm or more to yield."
    else:
        third = "The catch yields enough."
    return f"{first} {second} {third}"


def cautions(found: Findings) -> list[Caution]:
    """Return the cautions of an answer."""
    return [
        *_mesh(found),
        *_warmth(found),
        *_landing(found),
        *_after(found),
        *_always(found),
    ]


def _mesh(found: Findings) -> Iterator[Caution]:
    if found.mesh == "passes":
        yield Caution(
            level="stop",
            text="This mesh does not hold these animals: they pass into the motor and out at you.",
            reason="Openings of this width let them through by the trap guidance. "
            f"Take {_all_hold()} or less.",
            source="hornet_trap_holes",
            hides=HIDDEN,
        )
    elif found.mesh == "unknown":
        yield Caution(
            level="caution",
            text="Nobody has published whether this mesh holds these animals; they may wedge in "
            f"it or pass. {_all_hold()} holds all.",
            reason="No head width was found in print for them that covers this opening.",
            source="no_head_width",
        )
    elif found.mesh == "likely":
        yield Caution(
            level="caution",
            text="The mesh holds this animal by a trap figure, but smaller ones of the nest, legs "
            f"and feelers go through. {_all_hold()} is kinder.",
            reason="The trap figures are for round holes and grown workers.",
            source="hornet_trap_holes",
        )
    if found.mesh_areas < target("hose_areas"):
        yield Caution(
            level="caution",
            text=f"The mesh is {found.mesh_areas:.0f} hose areas; bodies on it soon choke the "
            f"flow. Give it {target('hose_areas'):.0f}.",
            reason="Covering half of a mesh raises its loss about sixfold.",
            source="mesh_advice",
        )


def _all_hold() -> str:
    return f"{row('head_widths', 'all')['holds']:g} mm"


def _warmth(found: Findings) -> Iterator[Caution]:
    if found.temperature >= gas.limit("end", "temperature"):
        yield Caution(
            level="stop",
            text="Too hot to hold animals in a box: do not catch now. Come back in a cool hour.",
            reason="The air itself is at the limit, and they add their own heat.",
            source="holding_limits_ours",
            hides=HIDDEN,
        )
    elif found.temperature >= gas.limit("alarm", "temperature"):
        yield Caution(
            level="caution",
            text="It is hot: shade the chamber, empty it often, and never stop the air for long.",
            reason="Breath and heat rise steeply above this temperature.",
            source="holding_limits_ours",
        )


def _landing(found: Findings) -> Iterator[Caution]:
    if found.fastest > target("speed"):
        yield Caution(
            level="caution",
            text=f"Some arrive at about {speed(found.fastest)}. A wide chamber does not slow "
            f"them: after their flight through it they still have {found.kept_share:.0%} of it. "
            "Hang a net or cloth with give, never let them meet a wall.",
            reason="In still air a heavy insect stops only after metres. A wider or shorter hose "
            "slows it.",
            source="arrival_target",
        )
    if found.give < found.give_needed:
        yield Caution(
            level="caution",
            text=f"The landing is hard: let the catch yield {found.give_needed:.0f} mm or more.",
            reason="The deceleration falls as the give grows. Our target, not a measured limit.",
            source="landing_give_ours",
        )
    if found.weak_lift:
        yield Caution(
            level="caution",
            text=f"In set-up {found.weak_lift} the air is too slow to lift a limp animal: keep "
            "the hose falling towards the chamber and without sags.",
            reason="Its drag in that air is less than its weight.",
            source="own_reasoning",
        )


def _after(found: Findings) -> Iterator[Caution]:
    low, high = found.volume_needed
    if found.volume < high:
        tight = found.volume < low
        yield Caution(
            level="caution" if tight else "note",
            text="The chamber is too small for them; empty it between passes or take two."
            if tight
            else "The chamber is small for so many; empty it before it fills.",
            reason="Wanted room is drawn from package bees and our own advice, not measured.",
            source="chamber_volume_ours",
        )
    yield Caution(
        level="caution",
        text="When the motor stops, open the screened vents at once.",
        reason="Only the fan brings air; the animals go on breathing and warming.",
        source="holding_limits_ours",
    )


def _always(found: Findings) -> Iterator[Caution]:
    yield Caution(
        level="caution",
        text="Close the hose with a plug or flap before you stop the motor. The suit stays on.",
        reason="They walk back out of an open hose.",
        source="closing_before_stop",
    )
    yield Caution(
        level="caution",
        text=f"Net and cloth are for landing: put a hard box round them. "
        f"{rules.text('wrapping', 'soft')}",
        reason="What a thumb nail can scratch, a wasp can bite.",
        source="wasp_chew_rule",
    )
    if found.invader:
        yield Caution(
            level="caution",
            text="Report this hornet to the authority before you touch the nest, and do not drive "
            "off with live ones.",
            reason="In many places it may not be held or moved alive.",
            source="union_list_release",
        )
    yield Caution(
        level="note",
        text="The target speed is reasoned: nobody has published how speed hurts wasps. "
        "Count live, lame and dead after an hour and next day, and keep the figures.",
        reason="No curve of injury against speed was found for wasps or bees.",
        source="arrival_target",
    )
    yield Caution(
        level="note",
        text=rules.text("never_draw", "what"),
        reason=f"{rules.text('never_draw', 'why')} See the safety pages.",
        source="vacuum_never_list",
    )

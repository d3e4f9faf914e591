"""What opening the cavity says: stops for what another trade opens, and cautions."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from calc.declare import Caution
from calc.method.opening_the_cavity.window import rule
from calc.tables import row

HIDDEN = ("verdict", "height", "width", "bottom", "top", "arc", "area", "order")
"""Results that a stop withholds: everything one would cut by."""

STOPS = ("wires", "asbestos", "load", "flue", "tree", "buried")

_BUILT_STOPS = ("wires", "asbestos", "load", "flue")

APPLY = {"hollow_trunk": ("wires", "tree"), "ground": ("buried",)}
"""What must be ruled out where it is not a building."""


@dataclass(frozen=True, slots=True)
class Findings:
    """What the cautions are made from; lengths in cm, area in m2."""

    wall: str
    hazard: str
    paint: str | None
    inside: bool
    planned: int
    comb: float
    bay: float | None
    width: float
    area: float
    guessed_spacing: bool
    left: int | None
    trunk: float | None


_STOP_TEXT = {
    "wires": "Do not cut: there are or may be live wires. Switch off and prove it dead, or call an "
    "electrician.",
    "asbestos": "Do not cut, break, sweep or vacuum: it may be asbestos. Leave, close the room, "
    "call a licensed contractor.",
    "load": "Do not cut: a load-bearing member lies in the window or may. Move the window or ask "
    "a builder or engineer.",
    "flue": "Do not open: a flue, chimney or vent belongs to the gas fitter or the sweep. Gas from "
    "a broken flue kills the household.",
    "tree": "Do not cut into a standing hollow tree before an arborist has said whether, where "
    "and how big.",
    "buried": "Do not dig: buried cable, gas or water may lie here. Have the lines located first.",
}


def cautions(found: Findings) -> list[Caution]:
    """Return the cautions of an answer."""
    return [*_stops(found), *_paint(found), *_comb(found), *_always(found)]


def _stops(found: Findings) -> Iterator[Caution]:
    unknown = found.hazard == "unknown"
    for key in APPLY.get(found.wall, _BUILT_STOPS) if unknown else STOPS:
        if unknown or found.hazard == key:
            yield Caution(
                level="stop",
                text=_STOP_TEXT[key],
                reason="Not known counts as yes." if unknown else "You said it is or looks so.",
                source=row("other_trades", key)["source"],
                hides=HIDDEN,
            )


def _paint(found: Findings) -> Iterator[Caution]:
    if found.paint not in {"yes", "unknown"}:
        return
    feet = found.area / 0.09290304
    most = rule("paint_inside" if found.inside else "paint_outside")
    over = feet > most
    yield Caution(
        level="caution",
        text="Old paint: work wet, make no dust, no ordinary vacuum, children away."
        + (
            " The window is above the area that US homes of that age may have disturbed without a "
            "certified firm."
            if over
            else ""
        ),
        reason=f"Counted as lead. Window of {feet:.1f} square feet against {most:.0f}; other "
        "countries have their own rule.",
        source="lead_rule_areas",
    )


def _comb(found: Findings) -> Iterator[Caution]:
    yield Caution(
        level="caution",
        text=f"What is in view is rarely all: the window is planned for {found.planned} tiers.",
        reason="The upper ones hide behind the lower; a window cut too low tears the comb.",
        source="tiers_hidden",
    )
    if found.bay is None:
        yield Caution(
            level="caution",
            text="Measure the clear width of the cavity before the cut: the window is no wider "
            "than that.",
            reason="You gave no width; a stud or sound wood may lie in this window.",
            source="opening_rules_ours",
        )
    elif found.comb + 2 * rule("beside") > found.bay:
        yield Caution(
            level="caution",
            text="The comb fills the cavity: the window is only as wide as the cavity. Free the "
            "comb at the sides with a long knife. Cut no stud, rafter or sound wood for it.",
            reason="There is no room for the hand beside it; the comb may go on past the member.",
            source="opening_rules_ours",
        )
    if found.guessed_spacing:
        yield Caution(
            level="note",
            text="The distance from tier to tier is from memory or other nests: measure two tiers "
            "through the peep hole.",
            reason="No measured spacing was found in print for most kinds.",
            source="tier_spacing_memory",
        )
    if found.trunk is not None and found.width >= found.trunk:
        yield Caution(
            level="caution",
            text="The comb is as wide as the trunk: it cannot come out whole through a window.",
            reason="The window would take half the girth. That is for the arborist alone.",
            source="other_trades",
        )


def _always(found: Findings) -> Iterator[Caution]:
    yield Caution(
        level="caution",
        text=_inside(found.left),
        reason="The count is an estimate; cutting shakes the last ones out.",
        source="wall_practice",
    )
    yield Caution(
        level="caution",
        text="Peep first. Stop and look again at the first thing that is not wood, board or comb.",
        reason="Wires, pipes, flakes, droppings and beams show in a small hole.",
        source="wall_practice",
    )
    if found.wall == "hollow_trunk":
        yield Caution(
            level="caution",
            text="This says nothing on the strength of the tree. The window weakens it.",
            reason="Hollow, dead and split trunks fail without warning; the arborist decides.",
            source="other_trades",
        )
    else:
        yield Caution(
            level="note",
            text="This says nothing on the strength of the building; the local code decides.",
            reason="It only says where the comb lies.",
            source="other_trades",
        )
    if found.wall in {"stud_wall", "soffit", "shed"}:
        yield Caution(
            level="caution",
            text="Droppings of rodents, birds or bats: do not sweep or vacuum. The page on dust "
            "says how to work with them.",
            reason="Dust of rodents' droppings can carry hantavirus, that of birds and bats a "
            "fungus.",
            source="niosh_histoplasmosis",
        )


def _inside(left: int | None) -> str:
    if left == 0:
        return (
            "None is counted as left, but brood hatches and foragers return: suit closed, "
            "chamber running, way out clear."
        )
    some = "Adults" if left is None else f"Some {left} adults"
    return (
        f"{some} may still be inside, and all sealed brood can hatch: suit closed, chamber "
        "running at the gap, way out clear."
    )

"""What a reader must know before the numbers of "Weight and lifting"."""

from __future__ import annotations

from dataclasses import dataclass

from calc import rules
from calc.declare import Caution
from calc.safety.levels import caution, note, stop

HELD_BACK = ("weight_limit", "lifting_index", "longest_piece")
"""Results that the ladder withholds."""


@dataclass(frozen=True, kw_only=True, slots=True)
class Findings:
    """What the core found."""

    index: float | None  # None where the method gives no weight
    goal: float
    most: float
    people: int
    place: str  # firm, rough, ladder
    trunk: bool
    state: str  # green, dry, dead
    dry_missing: bool


def cautions(found: Findings) -> list[Caution]:
    """Return the cautions of one run, at least four of them in every run."""
    return [
        *_stops(found),
        *_about_the_lift(found),
        *_about_the_load(found),
        _ROPE,
        _CONDITIONS,
        _JURISDICTION,
    ]


def _stops(found: Findings) -> list[Caution]:
    if found.place == "ladder":
        return [_LADDER]
    if found.index is None:
        return [_NO_WEIGHT]
    return [_OVER_MOST] if found.index > found.most + 1e-9 else []


def _about_the_lift(found: Findings) -> list[Caution]:
    made = []
    if found.index is not None and found.goal + 1e-9 < found.index <= found.most + 1e-9:
        made.append(_OVER_GOAL)
    if found.index is not None and found.index <= found.goal + 1e-9:
        made.append(_WITHIN)
    if found.people == 2:
        made.append(_TWO)
    if found.place == "rough":
        made.append(_ROUGH)
    return made


def _about_the_load(found: Findings) -> list[Caution]:
    if not found.trunk:
        return [_LIVE]
    made = []
    if found.state == "dead" or found.dry_missing:
        made.append(_DEAD)
    if found.state == "dry":
        made.append(_DRY)
    return made


_LADDER = stop(
    f"{rules.text('ladder', 'carry')} Lower it on a rope from a stand that holds you, or leave it "
    "to an arborist.",
    "The lifting equation is for two hands and firm feet; on a ladder you have neither.",
    "niosh_lifting_1994",
    HELD_BACK,
)
_NO_WEIGHT = stop(
    "Do not lift like this: the method gives no weight at all for such a reach, height or turn.",
    "Hands more than 63 cm out, above 175 cm, or turned by more than 135 degrees.",
    "niosh_lifting_1994",
)
_OVER_MOST = stop(
    "Do not lift this by hand: nearly everyone would be at more risk of injury. Cut it shorter, "
    "split it, roll it, use a hoist, or get more people.",
    "Lifting index above 3.0.",
    "niosh_lifting_1994",
)
_OVER_GOAL = caution(
    "Over the recommended limit: some people get hurt by this lift. Bring the load closer, raise "
    "it off the ground, cut it shorter, or lift with two.",
    "Lifting index above 1.0.",
    "niosh_lifting_1994",
)
_WITHIN = caution(
    "Within the recommended limit is no promise: it is for healthy people who lift in a normal "
    "room. Heat, a veil, gloves and haste all take something off.",
    "The manual says the shape of the risk is not known.",
    "niosh_lifting_1994",
)
_TWO = caution(
    "Two people do not lift double. One gives the word, both are of like height, and the lower "
    "one on a slope carries more.",
    "Two thirds of the sum, United Kingdom guidance; the NIOSH limit itself is for one person.",
    "hse_team",
)
_ROUGH = caution(
    "On soft, sloping or cluttered ground the figure is too high: clear a path first.",
    "The equation asks for firm footing.",
    "niosh_lifting_1994",
)
_DEAD = caution(
    "Dead wood lies between dry and green, and wet rot can be heavier than green: the plan uses "
    "the heavier figure. Weigh a small piece if you can.",
    "Printed densities are for sound green or air-dry wood.",
    "miles_smith_2009",
)
_DRY = caution(
    "Only wood that has dried under cover for long is air-dry. A dead tree in the rain is not.",
    "The dry figures are for 12 percent water.",
    "wood_handbook",
)
_LIVE = caution(
    "Weigh the box before it is full, keep it upright and close to the body, and look that lid "
    "and hose hole are shut before you lift.",
    "A load that shifts pulls harder on you, and an open lid lets them out.",
    "own_reasoning",
)
_ROPE = caution(
    "Nobody stands under the load or in the bight of the rope. Lowering wood out of a crown is "
    "arborists' work: a piece that runs and stops can pull many times its weight.",
    "The rope figure here is for a load lowered slowly by hand.",
    "tcia_rigging",
)
_CONDITIONS = note(
    "The method leaves out one hand, sitting or kneeling, tight space, sliding or unstable "
    "loads, carrying more than a step or two, and air outside 19 to 26 °C.",
    "In the suit, in heat, on a slope you are outside it: take less.",
    "niosh_lifting_1994",
)
_JURISDICTION = note(
    "The limit is NIOSH 94-110, revised 2021, a United States recommendation; the two-person "
    "rule is from United Kingdom guidance of 1992. Your own law may set other weights and then "
    "applies.",
    "No lifting limit is law in the United States.",
    "niosh_lifting_1994",
)

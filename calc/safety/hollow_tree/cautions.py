"""What a reader must know before the numbers of "Hollow or dead tree"."""

from __future__ import annotations

from dataclasses import dataclass

from calc import rules
from calc.declare import Caution
from calc.safety.levels import caution, note, stop

LEANING = 10.0
"""Degrees from which a tree counts as leaning in this handbook (key ``tree_rule``)."""


@dataclass(frozen=True, kw_only=True, slots=True)
class Findings:
    """What the core found."""

    before: tuple[str, ...]  # names of the rules that say act, as it stands
    after: tuple[str, ...]  # the same once the window is cut
    warned: bool  # a rule asks for caution, none for action
    cut: bool  # a window is planned
    height: str | None  # chest, above, ladder; None where nothing is cut
    dead: str  # alive, recent, long, unknown
    ash: str | None  # no, yes; None where nobody said
    lean: float | None  # None where nobody said
    signs: str  # none, some, not_looked

    @property
    def leaning(self) -> bool:
        """Whether the tree leans, or may lean for all that was said."""
        return self.lean is None or self.lean >= LEANING - 1e-9


def cautions(found: Findings) -> list[Caution]:
    """Return the cautions of one run, at least five of them in every run."""
    return [
        *_stops(found),
        _LIVE,
        _WHO,
        *_about_the_formulas(found),
        *_about_the_tree(found),
        _MEASURE,
        _DISAGREE,
        _JURISDICTION,
    ]


def _stops(found: Findings) -> list[Caution]:
    made = []
    if found.before:
        made.append(_PASSED)
    elif found.cut and found.after:
        made.append(_PASSED_AFTER)
    if found.cut and found.height == "ladder":
        made.append(_LADDER)
    if found.cut and (found.signs == "some" or _dead(found) or found.leaning):
        made.append(_NOT_BY_YOU)
    elif found.cut and found.height == "above":
        made.append(_ABOVE_CHEST)
    return made


def _about_the_formulas(found: Findings) -> list[Caution]:
    made = [_CUT] if found.cut else [_STANDING]
    if found.warned and not found.before:
        made.append(_CLOSE)
    return made


def _about_the_tree(found: Findings) -> list[Caution]:
    made = []
    if _dead(found) and found.ash == "yes":
        made += [_ASH_TESTS, _ASH_LORE]
    elif _dead(found):
        made += [_DEAD] if found.ash == "no" else [_DEAD, _ASH_LORE]
    if found.leaning:
        made.append(_LEAN)
    if found.signs == "some":
        made.append(_SIGNS)
    if found.signs == "not_looked":
        made.append(_LOOK)
    return made


def _dead(found: Findings) -> bool:
    return found.dead != "alive"


_PASSED = stop(
    "Keep off this tree: a published rule says act. Do not lean a ladder on it, climb it or cut "
    "it, and keep people out from under it until a qualified arborist has decided.",
    "At least one screening rule has reached its level as the tree stands.",
    "auf_strength_loss_table",
)
_PASSED_AFTER = stop(
    "Do not cut this window: with it a published rule says act. Leave the wood shut, work "
    "through the hole there is, or call a qualified arborist.",
    "At least one screening rule reaches its level once the window is cut.",
    "auf_strength_loss_table",
)
_LADDER = stop(
    rules.text("saw", "ladder"),
    "Both hands are on the saw, and a stem under tension can split or kick.",
    "tree_rule",
)
_NOT_BY_YOU = stop(
    "Do not cut into a dead, leaning, cracked or fungus-bearing stem yourself. A qualified "
    "arborist decides and cuts.",
    "No formula here covers cutting into such a stem.",
    "tree_rule",
)
_ABOVE_CHEST = stop(
    "Do not cut above your chest: a qualified arborist does that from a lift or rope.",
    "A saw above the chest cannot be held against kickback.",
    "tree_rule",
)
_LIVE = caution(
    rules.text("tree", "live"),
    "Wood carries the pull of a tape and a knock to the nest.",
    "tree_live_ours",
)
_WHO = caution(
    "No number here says that a tree will stand. A qualified arborist decides about the tree. "
    "You may only decide to stay away.",
    "Breaks also happen in stems that every formula passes.",
    "rinn_shell",
)
_CUT = caution(
    "The formulas were made for standing stems in wind. None was made for cutting a window into "
    "one; the figure after the cut is the least that changes.",
    "A fresh edge starts cracks, and a stem under lean or load can split along the slot.",
    "tree_rule",
)
_STANDING = caution(
    "The formulas are screening rules for standing stems in wind. They leave out cracks, "
    "roots, crown and ladder.",
    "They take a round hollow in the middle of a round stem.",
    "kane_ryan_2004",
)
_CLOSE = caution(
    "A rule asks for caution: have the tree looked at before anyone works under it.",
    "Coder from 20 percent, Mattheck from 0.35 of the radius.",
    "auf_strength_loss_table",
)
_ASH_TESTS = caution(
    "Ash killed by the borer, measured: in pull tests infested branches did not break at lower "
    "stress than sound ones.",
    "The same tests found drier, more cracked wood, breaks at the union, and a weaker base.",
    "persad_2013",
)
_ASH_LORE = caution(
    "Ash killed by the borer, lore and surveys: do not climb it, it snaps at the base without "
    "warning. The two do not agree; go by the more careful one.",
    "Surveys tie more than 30 percent of crown loss to fractures near unions.",
    "persad_tobin_2015",
)
_DEAD = caution(
    "Dead wood rots from the roots too, and you cannot see that. The longer dead, the less any "
    "formula says.",
    "The formulas look at one section of the stem only.",
    "tree_rule",
)
_LEAN = caution(
    "A leaning stem is under load all the time, without wind: stay out from under the lean.",
    f"{LEANING:.0f} degrees or more.",
    "tree_rule",
)
_SIGNS = caution(
    "Fungus, cracks, bulges, loose bark or lifted soil count more than any figure here.",
    "They tell of decay and of roots that the formulas do not see.",
    "tree_rule",
)
_LOOK = caution(
    "Walk round it first: fungus, cracks, bulges, loose bark, dead crown, lifted soil.",
    "Nobody has looked yet, so nothing of this is known.",
    "tree_rule",
)
_MEASURE = note(
    "Even after the catch nobody is sure to find the thinnest wall. Put in the thinnest you "
    "found or fear, and read the result as the best case.",
    "An arborist drills or uses sound waves.",
    "kane_ryan_2004",
)
_DISAGREE = note(
    "The rules do not agree with each other, and each puts some trees on the wrong side: one "
    "would have caught half of the failures in a storm and felled one in eight that stood.",
    "Smiley & Fraedrich 1992; Kane & Ryan 2004.",
    "smiley_fraedrich_1992",
)
_JURISDICTION = note(
    "These are rules of thumb from the United States (1963, 1989, 1992) and Germany (1992), not "
    "law. Local tree law, protected trees, bats and nesting birds come on top.",
    "Arborists where you are may work by others.",
    "auf_strength_loss_table",
)

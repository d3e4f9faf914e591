"""What "Follow-up" says: verdict, cautions, reminders."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from calc import rules, tables
from calc.clients.follow_up.closing import Counts
from calc.declare import Caution

HIDDEN = ("seal_from",)
"""Results that a stop withholds."""

REASONS = {
    "indoors": "Come back now: wasps are indoors.",
    "many": "Come back now: too many still go into the hole.",
    "slow": "Come back now: traffic into the hole does not fade.",
}
"""Call-back reasons as verdicts."""

MESH = {
    "holds": "keeps every social wasp of this book out",
    "likely": "keeps this animal out by a trap figure; smaller ones may pass",
    "unknown": "no figure in print says whether it keeps this animal out",
    "passes": "lets this animal through",
}

LOOK_WORDS = {
    "check_1": "Look 5 minutes at noon: how many go into the hole?",
    "check_2": "Look again and compare; call back if the rule says so.",
    "check_3": "Last look. Tell the client how it ended.",
}


@dataclass(frozen=True, slots=True)
class Findings:
    """What the words hang on."""

    reason: str
    counts: Counts
    may_seal: bool
    hole: str
    mesh: str | None
    comb: str
    mild: bool
    last_emergence: str
    next_look: str


def verdict(found: Findings) -> str:
    """Return what to do next."""
    if found.reason:
        return REASONS[found.reason]
    if found.may_seal:
        return "Two looks without a wasp going in: close the hole, and look once more."
    if found.counts.second is not None:
        return "No call-back by the rule. Leave the hole open and look again."
    if found.counts.first is not None:
        return f"Leave the hole open. Second look on {found.next_look}."
    return f"Leave the hole open. First look on {found.next_look}."


def seal_text(found: Findings) -> str:
    """Return when the hole may be closed, in words."""
    if found.may_seal:
        limit = tables.row("sealing", "ours")["opening"]
        if found.hole == "vent":
            return f"Now, with steel mesh of {limit:g} mm or less; keep the vent's free area."
        return f"Now: caulk for cracks, steel mesh of {limit:g} mm or less for holes."
    return "Not yet: after two looks without a wasp going in."


def cautions(found: Findings) -> list[Caution]:
    """Return the cautions of one run."""
    return [
        *_stops(found),
        *_seen(found),
        *_before_closing(found),
        *_about_mesh(found),
        *_about_brood(found),
        *_ALWAYS,
    ]


def _stops(found: Findings) -> Iterator[Caution]:
    if found.hole == "flue":
        yield Caution(
            level="stop",
            text="Never screen or close a flue, a gas vent or a dryer vent yourself. Ask the gas "
            "or chimney trade.",
            reason="Closed, it brings carbon monoxide or fire. The building code decides.",
            source="never_screen_flue",
            hides=HIDDEN,
        )
    if found.counts.first or found.counts.second or found.counts.indoors:
        latest = found.counts.first if found.counts.second is None else found.counts.second
        if latest or found.counts.indoors:
            yield Caution(
                level="stop",
                text="Never seal a hole that wasps still use: they chew a new way out, perhaps "
                "into a room.",
                reason="The latest look saw them go in, or they are indoors.",
                source="never_seal_live",
                hides=HIDDEN,
            )


def _seen(found: Findings) -> Iterator[Caution]:
    rule = tables.row("aftercare", "check_2")
    if found.reason == "indoors":
        yield Caution(
            level="caution",
            text="Keep that room shut and the people out, and leave the outer hole open until you "
            "have found the entrance.",
            reason="A second nest, or brood that hatches inward.",
            source="callback_ours",
        )
    if found.reason in {"many", "slow"}:
        yield Caution(
            level="caution",
            text="Plan the return as a full job, with suit and second person: it may be a second "
            "or a rebuilt nest.",
            reason=f"More than {rule['count']} in 5 minutes, or over {rule['share']} % of the "
            "first count, on the second look.",
            source="callback_ours",
        )


def _before_closing(found: Findings) -> Iterator[Caution]:
    if found.may_seal:
        yield Caution(
            level="caution",
            text=rules.text("bats_birds", "look"),
            reason=rules.text("bats_birds", "stop"),
            source="bats_gb",
        )


def _about_mesh(found: Findings) -> Iterator[Caution]:
    all_holds = tables.row("head_widths", "all")["holds"]
    if found.mesh == "passes":
        yield Caution(
            level="caution",
            text=f"This mesh does not keep them out. Take {all_holds:g} mm or less.",
            reason="The opening is one that lets this animal pass by trap guidance.",
            source="hornet_trap_holes",
        )
    elif found.mesh == "unknown":
        yield Caution(
            level="caution",
            text=f"Nobody has printed whether this mesh keeps this animal out; {all_holds:g} mm "
            "keeps all out.",
            reason="Head widths by species and caste are not in print.",
            source="no_head_width",
        )
    if found.hole == "vent":
        yield Caution(
            level="caution",
            text="Fine mesh cuts the air and clogs. Keep the net free area of the vent and clean "
            "it each year.",
            reason="Cloth below half an inch cuts the air markedly.",
            source="pest_screen_quarter",
        )


def _about_brood(found: Findings) -> Iterator[Caution]:
    if found.comb != "taken":
        yield Caution(
            level="caution",
            text=f"Comb left inside goes on hatching until about {found.last_emergence}. It then "
            "smells and draws beetles and flies: plan to take it out.",
            reason="Sealed brood needs no feeding; the rest dies.",
            source="comb_guests",
        )
    if found.mild:
        yield Caution(
            level="caution",
            text="Do not promise that winter ends it: where winters are mild, some colonies live "
            "on.",
            reason="Seen in California, New Zealand and the south-eastern United States.",
            source="mild_winter_exceptions",
        )


_ALWAYS = (
    Caution(
        level="caution",
        text="Count from the side and from a distance, never in the line of flight. Nobody with a "
        "sting allergy does the counting.",
        reason="Those left out still sting, and a second nest defends itself.",
        source="own_zones",
    ),
    Caution(
        level="note",
        text="Circling without going in is no call-back: those are stragglers.",
        reason="They look for a nest that is gone.",
        source="callback_ours",
    ),
    Caution(
        level="note",
        text="Air the place and wipe it with detergent and water. How long the alarm odour stays "
        "is not known.",
        reason="No tested way of cleaning was found.",
        source="odour_cleaning",
    ),
)

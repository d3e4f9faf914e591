"""What is said beside a comb count: cautions, and the rule about brood and adults."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from calc.declare import Caution
from calc.method.comb_count.nest import Count, Spots, Tier

FEW = 5
"""Patches or spots below which the limits are rough [comb_checks]."""

OFF = 1.4
"""Density over the geometric one from which pitch or patch area is doubted [comb_checks]."""

FEW_EGGS = 0.1
"""Share of eggs in the brood below which laying has fallen off [comb_checks]."""


def first() -> Iterator[Caution]:
    """Yield what comes before any number."""
    yield Caution(
        level="caution",
        text="Count suited, with the comb in a cage or chilled. New adults come out while you "
        "count, and they sting.",
        reason="After the adults of a giant hornet nest were taken, 76 young queens came out of "
        "the comb within days.",
        source="mandarinia_briefings",
    )


def about_size(measured: bool, by_size: bool) -> Iterator[Caution]:
    """Yield cautions about the pitch where the numbers hang on it."""
    if not measured and by_size:
        yield Caution(
            level="caution",
            text="The pitch comes from memory. Measure ten cells in a row, in three directions, "
            "and enter a tenth of it.",
            reason="One tenth off in pitch is one fifth off in cells.",
            source="pitch_memory",
        )
    if by_size:
        yield Caution(
            level="note",
            text="By size alone every comb counts as filled to its rim, so the number runs high.",
            reason="A hornet nest in print held about 0.63 of the cells of full discs of its "
            "widest comb, at a pitch of 8 mm.",
            source="budge_2017_nest",
        )


def about_patches(tiers: Sequence[Tier], spots: Spots, found: Count) -> Iterator[Caution]:
    """Yield cautions about few patches, joined tiers and odd densities."""
    n = len(spots.cells)
    if n < FEW:
        were = "1 spot" if n == 1 else f"{n} spots"
        yield Caution(
            level="caution",
            text=f"Only {were}: the limits are rough. Take one or two more on each tier.",
            reason="With few spots the spread between them is hardly known.",
            source="comb_checks",
        )
    if spots.tiers is None:
        return
    if found.merged:
        yield Caution(
            level="caution",
            text="Some tiers have fewer than two patches and were counted together.",
            reason="A tier with one patch tells nothing about its spread.",
            source="comb_strata",
        )
    bare = [str(i + 1) for i, t in enumerate(tiers) if t.queen and i not in spots.tiers]
    if bare:
        yield Caution(
            level="caution",
            text=f"Tier {', '.join(bare)} has queen cells and no patch, so its cells run too high.",
            reason="It was filled with the density of other tiers.",
            source="comb_strata",
        )
    expected = sum(tier.by_size for tier in tiers)
    if not 1 / OFF <= found.cells.number / expected <= OFF:
        yield Caution(
            level="caution",
            text="Cells in the patches and the pitch do not fit. Check the patch area and the "
            "pitch, or the cells at the rim.",
            reason="Area over cell area should give about the same number.",
            source="comb_checks",
        )


def about_queen_tier(first_tier: int, tiers: int) -> Iterator[Caution]:
    """Yield a caution where the first tier of queen cells lies beyond the last tier."""
    if first_tier > tiers:
        yield Caution(
            level="caution",
            text=f"There is no tier {first_tier}; no queen cells are counted.",
            reason=f"You gave {tiers} tiers.",
            source="arithmetic",
        )


def about_brood(found: Count, queen_cells: float, species: str) -> Iterator[Caution]:
    """Yield cautions about queens, missing eggs and a comb without brood."""
    if queen_cells > 0:
        yield Caution(
            level="caution",
            text="Young queens may still come out. Keep the comb caged until the last is out; "
            "never feed it away unsorted.",
            reason="Adults at the entrance say nothing about the queens in the comb.",
            source="mandarinia_briefings",
        )
    if species == "velutina":
        yield Caution(
            level="note",
            text="In this hornet cell size does not tell queens from workers.",
            reason="Castes show in the size of the pupae late in the year.",
            source="pitch_velutina",
        )
    if found.brood is None or found.cells.number <= 0:
        return
    if found.brood.number <= 0:
        yield Caution(
            level="caution",
            text="No brood: look for a second, older nest.",
            reason="A colony that has moved builds a new nest with adults and no brood.",
            source="rome_2015_output",
        )
    elif found.stages["egg"].number < FEW_EGGS * found.brood.number:
        yield Caution(
            level="note",
            text="Few eggs: laying has fallen off. The colony is near its end, or the queen is "
            "gone.",
            reason="Under steady laying eggs are about a fifth to a quarter of the brood.",
            source="shares_as_durations",
        )


def rule(brood: float | None, adults: float | None) -> str:
    """Return how the count compares with the rule that brood equals or outnumbers the adults."""
    if brood is None or adults is None or adults <= 0:
        return "no comparison without brood and adults"
    ratio = brood / adults
    if ratio >= 1:
        return (
            f"{ratio:.1f} brood for each adult: fits the rough rule for late summer, brood at "
            "least equal to the adults (common practice)"
        )
    return (
        f"{ratio:.1f} brood for each adult: below the rough rule for late summer (common "
        "practice). Late in the year this is usual; else look for combs that were missed"
    )

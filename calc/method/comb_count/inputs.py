"""What "Counting the comb" asks for."""

from __future__ import annotations

from typing import Any

from calc.declare import Given, choice, count, counts, number, numbers

MOST_TIERS = 20
MOST_SPOTS = 60

_BY_PATCHES = ("count_by", ("patches",))


def _axes(label: str, meaning: str, **more: Any) -> Any:
    return numbers(
        label,
        meaning,
        "cm",
        item="tier",
        low=1,
        high=150,
        why="from a first comb to the largest in print",
        source="ratnieks_1996",
        most=MOST_TIERS,
        plausible=(6, 35),
        customary_digits=1,
        step=1,
        **more,
    )


def _pitch(label: str, meaning: str, high: float, plausible: tuple[float, float]) -> Any:
    return number(
        label,
        meaning,
        "mm",
        low=3,
        high=high,
        why="cells of social wasps lie inside",
        source="pitch_memory",
        plausible=plausible,
        plausible_source="pitch_memory",
        origin="extra",
        digits=2,
        customary_digits=3,
        step=0.1,
        optional=True,
    )


def _adults(kind: Any, label: str, meaning: str, example: float) -> Any:
    return kind(
        label,
        meaning,
        low=0,
        high=100_000,
        why="more than any colony in print",
        source="robinson_2005",
        plausible=(0, 1000),
        example=example,
        step=1,
        optional=True,
    )


def _spots(label: str, meaning: str, example: tuple[int, ...]) -> Any:
    return counts(
        label,
        meaning,
        item="spot",
        low=0,
        high=2000,
        why="the cells of one patch or photo, with room to spare",
        source="arithmetic",
        most=MOST_SPOTS,
        plausible=(0, 20),
        example=example,
        origin="extra",
        only_if=("stages", ("counted",)),
    )


class Inputs(Given):
    """The tiers, the adults, and what was counted on the comb."""

    species: str = choice(
        "Animal",
        "Gives the pitch of the cells where you do not measure it.",
        [
            ("crabro", "European hornet"),
            ("velutina", "Yellow-legged hornet"),
            ("vulgaris", "Common yellowjacket"),
            ("germanica", "German yellowjacket"),
            ("pensylvanica", "Western yellowjacket"),
            ("vespula", "Other or unknown yellowjacket"),
            ("dolichovespula", "Aerial yellowjacket, bald-faced hornet"),
            ("polistes", "European paper wasp"),
        ],
        example="germanica",
    )
    long_axes: tuple[float, ...] = _axes(
        "Diameter of each tier",
        "Of the part with cells, from the top tier down; the longer one if oval.",
        example=(22.0, 25.0, 17.0),
    )
    queen_from: int = count(
        "Queen cells from tier",
        "Number of the first tier of large cells from the top; all below count as such. "
        "0 for none.",
        low=0,
        high=60,
        why="a number beyond the last tier counts as none",
        source="arithmetic",
        plausible=(0, 6),
        example=0,
    )
    adults_caught: int | None = _adults(
        count, "Adults caught", "All taken at the entrance and off the comb.", 780
    )
    adults_left: float | None = _adults(
        number,
        "Adults left or still out",
        "From the pages on how many are left and on stragglers.",
        12,
    )
    count_by: str = choice(
        "How you counted",
        "Patches on every tier are best; size alone is the roughest.",
        [
            ("patches", "Patches of known size on the tiers"),
            ("tiers", "Some tiers counted whole, from photos"),
            ("size", "Size of the tiers only"),
        ],
        origin="extra",
        usual="size",
        usual_source="own_reasoning",
        example="patches",
    )
    stages: str = choice(
        "Stages",
        "Whether you counted eggs, larvae, sealed and empty cells in the spots.",
        [("counted", "Counted"), ("not", "Cells only")],
        origin="extra",
        usual="not",
        usual_source="own_reasoning",
        example="counted",
    )
    patches: tuple[int, ...] | None = counts(
        "Patches on each tier",
        "From the top tier down; two or more on each. The spots below follow this order.",
        item="tier",
        low=0,
        high=MOST_SPOTS,
        why="no more spots are taken",
        source="arithmetic",
        most=MOST_TIERS,
        plausible=(2, 3),
        example=(2, 2, 2),
        origin="extra",
        only_if=_BY_PATCHES,
    )
    patch_area: float | None = number(
        "Area of a patch",
        "All patches alike; a square of 3 cm has 9 cm² (about 1.4 in²).",
        "cm**2",
        low=1,
        high=400,
        why="smaller ones are all rim, larger ones are not patches",
        plausible=(6, 16),
        example=8,
        origin="extra",
        customary_digits=1,
        step=1,
        only_if=_BY_PATCHES,
    )
    patch_cells: tuple[int, ...] | None = counts(
        "Cells in each patch",
        "All cells of the patch, whatever is in them. Used with patches only.",
        item="patch",
        low=0,
        high=2000,
        why="the cells of one patch, with room to spare",
        source="arithmetic",
        most=MOST_SPOTS,
        plausible=(20, 60),
        example=(37, 37, 37, 38, 37, 37),
        origin="extra",
        optional=True,
        only_if=("stages", ("not",)),
    )
    tier_cells: tuple[int, ...] | None = counts(
        "Cells counted on each tier",
        "All cells of a tier, from a photo; 0 for a tier you did not count.",
        item="tier",
        low=0,
        high=20_000,
        why="more than on the largest comb in print",
        source="ratnieks_1996",
        most=MOST_TIERS,
        plausible=(0, 1500),
        example=(560, 700, 0),
        origin="extra",
        only_if=("count_by", ("tiers",)),
    )
    eggs: tuple[int, ...] | None = _spots(
        "Eggs in each spot", "Cells with an egg.", (8, 6, 7, 9, 10, 8)
    )
    larvae: tuple[int, ...] | None = _spots(
        "Larvae in each spot", "Open cells with a larva.", (10, 12, 9, 11, 13, 12)
    )
    sealed: tuple[int, ...] | None = _spots(
        "Sealed cells in each spot", "Cells with a cap.", (13, 14, 16, 14, 8, 9)
    )
    empty: tuple[int, ...] | None = _spots(
        "Empty cells in each spot", "Cells with nothing in them.", (6, 5, 5, 4, 6, 8)
    )
    short_axes: tuple[float, ...] | None = _axes(
        "Shorter diameter of each tier",
        "Only for oval tiers: at right angles to the longer one, in the same order.",
        origin="extra",
        optional=True,
    )
    pitch: float | None = _pitch(
        "Pitch of worker cells, measured",
        "Ten cells in a row, over the middles, divided by ten; in three directions.",
        15,
        (4, 9),
    )
    queen_pitch: float | None = _pitch(
        "Pitch of queen cells, measured", "Ten large cells in a row divided by ten.", 18, (5, 11)
    )

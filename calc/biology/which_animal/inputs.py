"""What can be seen from a distance or in a photo: what "Which animal is it?" asks, one at a time.

The option values are the words of the trait table (``calc/tables/traits.toml``); they stay the
same from edition to edition. ``unknown`` means asked and not seen; a trait that is not given was
not asked yet. Neither says anything about the animal.
"""

from __future__ import annotations

from typing import Any

from calc.declare import Choice, Given, choice
from calc.tables import rows

UNKNOWN = "unknown"
NOT_SEEN = "Asked, not seen"
MONTHS = ("jan", "feb", "mar", "apr", "may", "jun", "jul", "aug", "sep", "oct", "nov", "dec")
MONTH_NAMES = (
    "January", "February", "March", "April", "May", "June",
    "July", "August", "September", "October", "November", "December",
)  # fmt: skip


def _seen(label: str, meaning: str, *options: tuple[str, str], **more: Any) -> Any:
    return choice(label, meaning, [*options, (UNKNOWN, NOT_SEEN)], optional=True, **more)


def _objects() -> tuple[tuple[str, str], ...]:
    return tuple((row["key"], row["object"]) for row in rows("familiar_objects"))


class Inputs(Given):
    """All that may have been seen, and the region."""

    shape: str | None = _seen(
        "Body",
        "The whole outline, as in flight or at rest.",
        ("stout_smooth", "Smooth, stout, legs tucked in flight"),
        ("slim_trailing", "Smooth, slim, narrow waist, long legs trailing in flight"),
        ("thread_waist", "Waist as thin as a thread"),
        ("fuzzy_compact", "Fuzzy and compact, brown or grey"),
        ("round_furry", "Round and furry"),
        ("fly_like", "Two wings, stub antennae, hovers like a fly"),
        example="stout_smooth",
    )
    nest: str | None = _seen(
        "Nest place",
        "Where the animals go in and out.",
        ("hollow_tree", "Hollow tree"),
        ("branch", "In the open in a tree, shrub or hedge"),
        ("ground", "One hole in the ground"),
        ("bare_ground_holes", "Many small holes in bare ground"),
        ("wall_or_roof_void", "Inside a wall or roof, through a gap"),
        ("loft_or_shed", "In the open in a loft, shed or barn"),
        ("eaves", "In the open under eaves or a porch"),
        ("box", "Bird box, shutter box or another box"),
        ("pipe_or_tile", "Pipe, roof tile, furniture or another small gap"),
        ("wood_holes", "Round holes in sound wood"),
        ("none_found", "None found, single animals only"),
        example="ground",
    )
    abdomen: str | None = _seen(
        "Abdomen",
        "The pattern behind the waist.",
        ("bands", "Yellow and black bands"),
        ("drops", "Mostly yellow with dark drops, red-brown in front"),
        ("one_orange_band", "Dark with one broad orange band near the end"),
        ("even_orange_bands", "Even orange and dark bands"),
        ("rust_yellow_zone", "Red-brown with one wide yellow zone"),
        ("white_tip", "Black with a white end"),
        ("thin_line", "Dark with one thin yellow line near the waist"),
        ("bare_spotted", "Bare, black with yellow spots down each side"),
        ("thin_lines", "Nearly black with thin yellow lines"),
        ("mostly_orange", "Mostly orange"),
        ("brown_edges", "Brown with narrow yellow edges"),
        ("broken_bars", "Dark with broken yellow bars"),
        ("dull_bands", "Amber or brown with dull bands"),
        ("furry_bands", "Furry, with coloured bands or a pale tail"),
        ("shiny_black", "Bare, shiny black"),
        example="bands",
    )
    cover: str | None = _seen(
        "Nest cover",
        "What hides the comb, seen from a distance.",
        ("full_paper", "Paper ball all round"),
        ("open_below_paper", "Paper shell, open below"),
        ("open_comb", "Bare paper comb, no cover"),
        ("bare_cluster", "Hanging cluster of insects"),
        ("mud", "Mud tubes or lumps"),
        ("plant_wool", "Wool scraped from leaves"),
        ("soil_heaps", "Small heaps or cones of soil"),
        ("nothing", "Looked: only the entrance"),
        example="nothing",
    )
    thorax: str | None = _seen(
        "Thorax",
        "The back between the wings.",
        ("dark_plain", "Black or dark brown, no marks"),
        ("yellow_marks", "Black with yellow marks"),
        ("two_stripes", "Two long yellow stripes down the back"),
        ("four_spots", "Black with four small spots"),
        ("orange_shoulder", "Black with orange or red shoulders"),
        ("white_lines", "Black with a few white lines"),
        ("red_brown", "Red-brown or rusty"),
        ("furry", "Densely furry"),
    )
    head: str | None = _seen(
        "Head and face",
        "The main colours of the head, seen from the front or above.",
        ("yellow_black", "Yellow and black"),
        ("white", "White or ivory face"),
        ("broad_orange", "Plain orange-yellow all over, very broad"),
        ("red_brown", "Yellow face, red-brown top"),
        ("dark_orange_face", "Dark top, orange face"),
        ("brown", "Brown or rusty, little yellow"),
        ("dark", "Black or very dark"),
        ("furry", "Furry or dull brown"),
        ("big_eyes", "Eyes fill most of the head"),
    )
    legs: str | None = _seen(
        "Legs",
        "Colour of the legs, and what they carry.",
        ("yellow", "Mostly yellow"),
        ("yellow_tips", "Dark with bright yellow ends"),
        ("brown", "Brown or red-brown"),
        ("dark", "Dark"),
        ("pollen", "Pollen loads, or flat hairy hind legs"),
    )
    entrance: str | None = _seen(
        "Entrance",
        "Shape and place of the entrance.",
        ("small_side", "Small hole in the side of a paper ball"),
        ("low", "Hole low down on a paper ball"),
        ("wide_below", "Wide opening below, droppings under it"),
        ("one_hole", "One hole in ground, wall, roof or tree"),
        ("many_holes", "Many holes, each with its own animal"),
        ("no_hole", "No hole: comb or cluster in the open"),
    )
    traffic: str | None = _seen(
        "Traffic",
        "How many fly in, or out, in one minute; count from a distance.",
        ("none", "None, or a single animal"),
        ("few", "1 to 5 a minute"),
        ("steady", "6 to 30 a minute"),
        ("busy", "More than 30 a minute"),
        ("one_per_hole", "Each animal uses its own hole"),
        example="busy",
    )
    night: str | None = _seen(
        "Flight after dark",
        "Whether they fly at night or come to lit windows.",
        ("yes", "Yes, at night or to lit windows"),
        ("no", "No, they stop at dusk"),
    )
    size: str | None = _seen(
        "As long as",
        "Lay the animal in the photo beside a familiar thing; lengths told in inches run long.",
        *_objects(),
    )
    antennae: str | None = _seen(
        "Antennae",
        "Colour of the feelers.",
        ("black", "Black or dark"),
        ("orange", "Orange"),
        ("brown", "Brown or red-brown"),
        ("stub", "Stubs, hardly seen"),
    )
    face_mark: str | None = _seen(
        "Face close up",
        "The mark on the plate above the jaws, only from a sharp photo.",
        ("dots", "Yellow with three black dots, or a dot and a short bar"),
        ("anchor", "Yellow with a broad black anchor"),
        ("bar", "Yellow with one thin black bar"),
        ("eye_ring", "Unbroken yellow ring round each eye"),
        ("plain", "One colour, no mark"),
    )
    paper: str | None = _seen(
        "Colour of the paper",
        "Colour of the nest's cover, where there is one.",
        ("grey", "Grey"),
        ("tan", "Tan or beige, with scales"),
        ("brown", "Brown, coarse, brittle"),
    )
    comb: str | None = _seen(
        "Comb",
        "Only if it shows without going near: what it is made of and how the cells face.",
        ("paper_tiers", "Paper, flat tiers, cells open downward"),
        ("paper_single", "Paper, one comb on a stalk"),
        ("wax", "Wax, hanging sheets with cells on both sides"),
        ("wax_pots", "A clump of small wax pots"),
        ("mud_cells", "Mud cells"),
    )
    month: str | None = _seen(
        "Month",
        "When it was seen; in Australia and New Zealand shifted by half a year.",
        *zip(MONTHS, MONTH_NAMES, strict=True),
        example="aug",
    )
    old_nest: str | None = _seen(
        "An old or odd nest",
        "Each of these is a stop, whatever the animal is.",
        ("several", "Several ways in, all in use"),
        ("giant", "Nest wider than one metre"),
        ("winter", "Wasps fly in and out in winter"),
        ("none", "None of these"),
    )
    region: str = choice(
        "Region",
        "Where the animal lives: it sets what is likely before anything is seen, and the law.",
        [
            ("north_america_east", "North America, east"),
            ("north_america_west", "North America, west"),
            ("britain", "Britain and Ireland"),
            ("europe", "Europe, mainland"),
            ("near_east", "Near East, North Africa"),
            ("east_asia", "East Asia"),
            ("australia_nz", "Australia, New Zealand"),
            (UNKNOWN, "Not known"),
        ],
        origin="equipment",
        example="europe",
    )

    @property
    def seen(self) -> dict[str, str]:
        """All that was given, by name."""
        given = {each.name: getattr(self, each.name) for each in self.declared}
        return {name: value for name, value in given.items() if value is not None}


_CHOICES = {each.name: each for each in Inputs.declared if isinstance(each, Choice)}
REGION = _CHOICES["region"]
OLD_NEST = _CHOICES["old_nest"]
TRAITS: tuple[Choice, ...] = tuple(
    each for each in _CHOICES.values() if each not in (REGION, OLD_NEST)
)
"""All that is weighed as evidence; the region is the prior, and an old nest is a stop."""

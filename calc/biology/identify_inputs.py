"""What can be seen from a distance or in a photo: the inputs of Which animal is it.

Every input is a choice that starts at ``unknown``. The option values are the words of the trait
table (``calc/tables/traits.toml``); they stay the same from edition to edition.
"""

from __future__ import annotations

from calc.declare import Choice, Option
from calc.tables import rows

UNKNOWN = "unknown"
MONTHS = ("jan", "feb", "mar", "apr", "may", "jun", "jul", "aug", "sep", "oct", "nov", "dec")
MONTH_NAMES = (
    "January", "February", "March", "April", "May", "June",
    "July", "August", "September", "October", "November", "December",
)  # fmt: skip


def _choice(
    name: str, label: str, meaning: str, *options: tuple[str, str], unknown: str = "Not seen"
) -> Choice:
    return Choice(
        name=name,
        label=label,
        meaning=meaning,
        options=(
            Option(value=UNKNOWN, label=unknown),
            *(Option(value=value, label=text) for value, text in options),
        ),
        usual=UNKNOWN,
    )


def _objects() -> tuple[tuple[str, str], ...]:
    return tuple((row["key"], row["object"]) for row in rows("familiar_objects"))


REGION = _choice(
    "region",
    "Region",
    "Where the animal lives: it sets what is likely before anything is seen, and the law.",
    ("north_america_east", "North America, east"),
    ("north_america_west", "North America, west"),
    ("britain", "Britain and Ireland"),
    ("europe", "Europe, mainland"),
    ("near_east", "Near East, North Africa"),
    ("east_asia", "East Asia"),
    ("australia_nz", "Australia, New Zealand"),
    unknown="Not given",
)

MONTH = _choice(
    "month",
    "Month",
    "When the animal was seen; for Australia and New Zealand the season is shifted by half a year.",
    *zip(MONTHS, MONTH_NAMES, strict=True),
    unknown="Not given",
)

SIZE = _choice(
    "size",
    "As long as",
    "Lay the animal in the photo beside a familiar thing; lengths told in inches run long.",
    *_objects(),
)

SHAPE = _choice(
    "shape",
    "Body",
    "The whole outline, as in flight or at rest.",
    ("stout_smooth", "Smooth, stout, legs tucked in flight"),
    ("slim_trailing", "Smooth, slim, narrow waist, long legs trailing in flight"),
    ("thread_waist", "Waist as thin as a thread"),
    ("fuzzy_compact", "Fuzzy and compact, brown or grey"),
    ("round_furry", "Round and furry"),
    ("fly_like", "Two wings, stub antennae, hovers like a fly"),
)

HEAD = _choice(
    "head",
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

FACE_MARK = _choice(
    "face_mark",
    "Face close up",
    "The mark on the plate above the jaws, only from a sharp photo.",
    ("dots", "Yellow with three black dots, or a dot and a short bar"),
    ("anchor", "Yellow with a broad black anchor"),
    ("bar", "Yellow with one thin black bar"),
    ("eye_ring", "Unbroken yellow ring round each eye"),
    ("plain", "One colour, no mark"),
)

ANTENNAE = _choice(
    "antennae",
    "Antennae",
    "Colour of the feelers.",
    ("black", "Black or dark"),
    ("orange", "Orange"),
    ("brown", "Brown or red-brown"),
    ("stub", "Stubs, hardly seen"),
)

THORAX = _choice(
    "thorax",
    "Thorax",
    "The back between the wings.",
    ("dark_plain", "Black or dark brown, no marks"),
    ("yellow_marks", "Black with yellow marks"),
    ("two_stripes", "Two long yellow stripes down the back"),
    ("four_spots", "Black with four small spots"),
    ("white_lines", "Black with a few white lines"),
    ("red_brown", "Red-brown or rusty"),
    ("furry", "Densely furry"),
)

ABDOMEN = _choice(
    "abdomen",
    "Abdomen",
    "The pattern behind the waist.",
    ("bands", "Yellow and black bands"),
    ("drops", "Mostly yellow with dark drops, red-brown in front"),
    ("one_orange_band", "Dark with one broad orange band near the end"),
    ("even_orange_bands", "Even orange and dark bands"),
    ("rust_yellow_zone", "Red-brown with one wide yellow zone"),
    ("white_tip", "Black with a white end"),
    ("thin_lines", "Nearly black with thin yellow lines"),
    ("mostly_orange", "Mostly orange"),
    ("brown_edges", "Brown with narrow yellow edges"),
    ("broken_bars", "Dark with broken yellow bars"),
    ("dull_bands", "Amber or brown with dull bands"),
    ("furry_bands", "Furry, with coloured bands or a pale tail"),
    ("shiny_black", "Bare, shiny black"),
)

LEGS = _choice(
    "legs",
    "Legs",
    "Colour of the legs, and what they carry.",
    ("yellow", "Mostly yellow"),
    ("yellow_tips", "Dark with bright yellow ends"),
    ("brown", "Brown or red-brown"),
    ("dark", "Dark"),
    ("pollen", "Pollen loads, or flat hairy hind legs"),
)

NEST = _choice(
    "nest",
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
)

COVER = _choice(
    "cover",
    "Nest cover",
    "What hides the comb, seen from a distance.",
    ("full_paper", "Paper ball all round"),
    ("open_below_paper", "Paper shell, open below"),
    ("open_comb", "Bare paper comb, no cover"),
    ("bare_cluster", "Hanging cluster of insects"),
    ("mud", "Mud tubes or lumps"),
    ("soil_heaps", "Small heaps or cones of soil"),
    ("nothing", "Looked: only the entrance"),
)

PAPER = _choice(
    "paper",
    "Colour of the paper",
    "Colour of the nest's cover, where there is one.",
    ("grey", "Grey"),
    ("tan", "Tan or beige, with scales"),
    ("brown", "Brown, coarse, brittle"),
)

ENTRANCE = _choice(
    "entrance",
    "Entrance",
    "Shape and place of the entrance.",
    ("small_side", "Small hole in the side of a paper ball"),
    ("low", "Hole low down on a paper ball"),
    ("wide_below", "Wide opening below, droppings under it"),
    ("one_hole", "One hole in ground, wall, roof or tree"),
    ("many_holes", "Many holes, each with its own animal"),
    ("no_hole", "No hole: comb or cluster in the open"),
)

TRAFFIC = _choice(
    "traffic",
    "Traffic",
    "How many fly in, or out, in one minute; count from a distance.",
    ("none", "None, or a single animal"),
    ("few", "1 to 5 a minute"),
    ("steady", "6 to 30 a minute"),
    ("busy", "More than 30 a minute"),
    ("one_per_hole", "Each animal uses its own hole"),
)

NIGHT = _choice(
    "night",
    "Flight after dark",
    "Whether they fly at night or come to lit windows.",
    ("yes", "Yes, at night or to lit windows"),
    ("no", "No, they stop at dusk"),
)

COMB = _choice(
    "comb",
    "Comb",
    "Only if it shows without going near: what it is made of and how the cells face.",
    ("paper_tiers", "Paper, flat tiers, cells open downward"),
    ("paper_single", "Paper, one comb on a stalk"),
    ("wax", "Wax, hanging sheets with cells on both sides"),
    ("wax_pots", "A clump of small wax pots"),
    ("mud_cells", "Mud cells"),
)

TRAITS: tuple[Choice, ...] = (
    MONTH, SIZE, SHAPE, HEAD, FACE_MARK, ANTENNAE, THORAX, ABDOMEN, LEGS,
    NEST, COVER, PAPER, ENTRANCE, TRAFFIC, NIGHT, COMB,
)  # fmt: skip
"""All that is weighed as evidence; the region is the prior."""

INPUTS: tuple[Choice, ...] = (REGION, *TRAITS)

"""What is asked on the phone.

Only the first question is needed for an answer. What was not asked is left out; "unknown" means
that it was asked and the caller cannot say. Neither ever counts as harmless.
"""

from __future__ import annotations

from calc.clients.job.fields import section
from calc.clients.job.options import PLACES, species
from calc.declare import Given, choice, count, number

_UNKNOWN = ("unknown", "Asked, not known")


def _of_the_record(path: str) -> list[tuple[str, str]]:
    """Return the options of a field of the job record, so that one answer serves both."""
    head, _, name = path.partition(".")
    home = section(head)
    field = home.field(name) if home else None
    if field is None:
        raise LookupError(path)
    return _known(field.options)


def _known(options: tuple[tuple[str, str], ...]) -> list[tuple[str, str]]:
    return [pair for pair in options if pair[0] != "unknown"]


_ANSWERS = [("no", "No"), ("yes", "Yes"), _UNKNOWN]


class Inputs(Given):
    """The questions, in the order in which a sheet on paper has them."""

    hurt: str = choice(
        "Is anyone hurt now",
        "Ask this first. Signs beyond the spot: hives, breath, tongue, vomiting, collapse.",
        [
            ("no", "No"),
            ("stung", "Stung, and well"),
            ("signs", "Stung, with hives or other signs beyond the spot"),
        ],
        example="no",
    )
    reaction: str | None = choice(
        "Strong reaction to a sting before, anyone there",
        "Family, neighbours, guests, workers: all who use the place.",
        [
            ("none", "None known"),
            ("swelling", "Only a large swelling at the spot"),
            ("plan", "Yes, treated, with a plan from a doctor"),
            ("no_plan", "Yes, hives or other signs, and no doctor has seen to it"),
            _UNKNOWN,
        ],
        optional=True,
        example="none",
    )
    adrenaline: str | None = choice(
        "Adrenaline there and in date",
        "As prescribed to that person; let them read the date out.",
        [*_of_the_record("health.autoinjector"), _UNKNOWN],
        optional=True,
        only_if=("reaction", ("plan",)),
        example="yes",
    )
    bees: str | None = choice(
        "Are they bees",
        "Furry, or pollen on the legs, or a cluster on a branch.",
        _ANSWERS,
        optional=True,
        example="no",
    )
    animal: str | None = choice(
        "Which animal",
        "As far as the caller or the photo tells.",
        [*_known(species()), _UNKNOWN],
        optional=True,
        example="vespula",
    )
    status: str | None = choice(
        "Legal status of the species",
        "In the law of the place.",
        [*_of_the_record("animal.status"), _UNKNOWN],
        optional=True,
        example="native",
    )
    permit: str | None = choice(
        "Permit of the authority",
        "In writing, for this nest.",
        [("no", "Not there"), ("yes", "There in writing")],
        optional=True,
        only_if=("status", ("protected",)),
        example="no",
    )
    treated: str | None = choice(
        "Sprayed, dusted or baited",
        "By anyone, this season.",
        _of_the_record("animal.treated"),
        optional=True,
        example="no",
    )
    where: str | None = choice(
        "Where the nest is",
        "The kind of place.",
        [*_known(PLACES), _UNKNOWN],
        optional=True,
        example="roof",
    )
    indoors: str | None = choice(
        "Wasps or soft plaster indoors",
        "A damp-looking or soft spot, scratching, wasps in the room.",
        _ANSWERS,
        optional=True,
        example="no",
    )
    near: float | None = number(
        "Nearest door, window, path or play place",
        "From the hole to where people are each day.",
        "m",
        low=0,
        high=200,
        why="farther off it is no question",
        source="own_call_rules",
        optional=True,
        plausible=(0.5, 15),
        example=2,
        digits=1,
        customary_digits=0,
        step=1,
    )
    in_use: str | None = choice(
        "Must people pass there",
        "No, if the path can be moved or the place closed until it is over.",
        [("yes", "Yes"), ("no", "No, it can be closed or moved"), _UNKNOWN],
        optional=True,
        example="yes",
    )
    winters: str | None = choice(
        "Winters there",
        "Mild: frost is rare, and colonies may live on.",
        [("cold", "Cold, with hard frost"), ("mild", "Mild"), _UNKNOWN],
        optional=True,
        example="cold",
    )
    days: int | None = count(
        "Days to the end of the season",
        "From “How big a colony is”, or to the usual first hard frost; leave empty if not known.",
        unit="day",
        low=0,
        high=365,
        why="a year has no more",
        source="arithmetic",
        optional=True,
        plausible=(0, 150),
        example=90,
        step=5,
    )
    access: str | None = choice(
        "How it is reached",
        "Above a ladder: roof, rope, platform.",
        [
            ("ground", "From the ground"),
            ("ladder", "From a ladder"),
            ("above", "Above a ladder"),
            _UNKNOWN,
        ],
        optional=True,
        example="ladder",
    )
    power_lines: str | None = choice(
        "Power line or cable in reach",
        "Of ladder, hose, tool or falling wood.",
        _ANSWERS,
        optional=True,
        example="no",
    )
    opening: str | None = choice(
        "What must be opened",
        "To take the comb out.",
        [("no", "Nothing"), ("fabric", "Wall, ceiling or roof"), ("tree", "A tree"), _UNKNOWN],
        optional=True,
        example="fabric",
    )
    tree_looked: str | None = choice(
        "Has an arborist looked at the tree",
        "And said whether and where it may be cut.",
        [("no", "No"), ("yes", "Yes, in writing")],
        optional=True,
        only_if=("opening", ("tree",)),
        example="no",
    )
    role: str | None = choice(
        "The caller is",
        "Who may say yes to opening a wall or a tree.",
        [*_of_the_record("client.role"), _UNKNOWN],
        optional=True,
        example="owner",
    )
    consent: str | None = choice(
        "Owner's consent",
        "The owner of the tree, wall or ground; the neighbour for theirs.",
        [*_of_the_record("client.consent"), _UNKNOWN],
        optional=True,
        example="yes",
    )
    dogs: str | None = choice(
        "Dogs and other animals",
        "Also hens, horses, cattle.",
        [("none", "None"), ("in", "Kept in"), ("loose", "Loose"), _UNKNOWN],
        optional=True,
        example="none",
    )
    photo: str | None = choice(
        "Photo from a distance",
        "Of the animal, the hole and the whole wall or tree.",
        [("no", "Not yet"), ("yes", "There")],
        optional=True,
        example="yes",
    )

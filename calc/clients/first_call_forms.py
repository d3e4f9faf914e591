"""Questions and results of the call sheet."""

from __future__ import annotations

from calc.clients.job_fields import PLACES, section, species
from calc.declare import Choice, Count, Input, Number, Option, Out


def _options(*pairs: tuple[str, str]) -> tuple[Option, ...]:
    return tuple(Option(value=value, label=label) for value, label in pairs)


def _of_the_record(path: str) -> tuple[Option, ...]:
    """Return the options of a field of the job record, so that one answer serves both."""
    head, _, name = path.partition(".")
    home = section(head)
    field = home.field(name) if home else None
    if field is None:
        raise LookupError(path)
    return _options(*field.options)


_ASKED = _options(("unknown", "Not asked yet"), ("no", "No"), ("yes", "Yes"))

QUESTIONS: tuple[Input, ...] = (
    Choice(
        name="hurt",
        label="Is anyone hurt now",
        meaning="Ask this first. Signs beyond the spot: breath, tongue, skin all over, vomiting, "
        "collapse.",
        options=_options(
            ("unknown", "Not asked yet"),
            ("no", "No"),
            ("stung", "Stung, and well"),
            ("signs", "Stung, with signs beyond the spot"),
        ),
        usual="unknown",
    ),
    Choice(
        name="reaction",
        label="Strong reaction to a sting before, anyone there",
        meaning="Family, neighbours, guests, workers: all who use the place.",
        options=_options(
            ("unknown", "Not asked yet"),
            ("none", "None known"),
            ("plan", "Yes, treated, with a plan from a doctor"),
            ("no_plan", "Yes, and no doctor has seen to it"),
        ),
        usual="unknown",
    ),
    Choice(
        name="adrenaline",
        label="Adrenaline there and in date",
        meaning="As prescribed to that person; let them read the date out.",
        only_if=("reaction", ("plan",)),
        options=_of_the_record("health.autoinjector"),
        usual="unknown",
    ),
    Choice(
        name="bees",
        label="Are they bees",
        meaning="Furry, or pollen on the legs, or a cluster on a branch.",
        options=_ASKED,
        usual="unknown",
    ),
    Choice(
        name="animal",
        label="Which animal",
        meaning="As far as the caller or the photo tells.",
        options=_options(*species()),
        usual="unknown",
    ),
    Choice(
        name="status",
        label="Legal status of the species",
        meaning="In the law of the place.",
        options=_of_the_record("animal.status"),
        usual="unknown",
    ),
    Choice(
        name="permit",
        label="Permit of the authority",
        meaning="In writing, for this nest.",
        only_if=("status", ("protected",)),
        options=_options(("no", "Not there"), ("yes", "There in writing")),
        usual="no",
    ),
    Choice(
        name="treated",
        label="Sprayed, dusted or baited",
        meaning="By anyone, this season.",
        options=_of_the_record("animal.treated"),
        usual="unknown",
    ),
    Choice(
        name="where",
        label="Where the nest is",
        meaning="The kind of place.",
        options=_options(*PLACES),
        usual="unknown",
    ),
    Choice(
        name="indoors",
        label="Wasps or soft plaster indoors",
        meaning="A damp-looking or soft spot, scratching, wasps in the room.",
        options=_ASKED,
        usual="unknown",
    ),
    Number(
        name="near",
        label="Nearest door, window, path or play place",
        meaning="From the hole to where people are each day.",
        unit="m",
        customary="ft",
        low=0,
        high=200,
        why="farther off it is no question",
        source="own_call_rules",
        usual=2,
        digits=1,
        customary_digits=0,
        step=1,
    ),
    Choice(
        name="in_use",
        label="Must people pass there",
        meaning="No, if the path can be moved or the place closed until it is over.",
        options=_options(("yes", "Yes"), ("no", "No, it can be closed or moved")),
        usual="yes",
    ),
    Choice(
        name="winters",
        label="Winters there",
        meaning="Mild: frost is rare, and colonies may live on.",
        options=_options(
            ("unknown", "Not asked yet"), ("cold", "Cold, with hard frost"), ("mild", "Mild")
        ),
        usual="unknown",
    ),
    Count(
        name="days",
        label="Days to the end of the season",
        meaning="From “How big a colony is”, or to the usual first hard frost; leave empty if not "
        "known.",
        optional=True,
        unit="day",
        low=0,
        high=365,
        why="a year has no more",
        source="arithmetic",
        usual=None,
        step=5,
    ),
    Choice(
        name="access",
        label="How it is reached",
        meaning="Above a ladder: roof, rope, platform.",
        options=_options(
            ("unknown", "Not asked yet"),
            ("ground", "From the ground"),
            ("ladder", "From a ladder"),
            ("above", "Above a ladder"),
        ),
        usual="unknown",
    ),
    Choice(
        name="power_lines",
        label="Power line or cable in reach",
        meaning="Of ladder, hose, tool or falling wood.",
        options=_ASKED,
        usual="unknown",
    ),
    Choice(
        name="opening",
        label="What must be opened",
        meaning="To take the comb out.",
        options=_options(
            ("unknown", "Not clear yet"),
            ("no", "Nothing"),
            ("fabric", "Wall, ceiling or roof"),
            ("tree", "A tree"),
        ),
        usual="unknown",
    ),
    Choice(
        name="tree_looked",
        label="Has an arborist looked at the tree",
        meaning="And said whether and where it may be cut.",
        only_if=("opening", ("tree",)),
        options=_options(("no", "No"), ("yes", "Yes, in writing")),
        usual="no",
    ),
    Choice(
        name="role",
        label="The caller is",
        meaning="Who may say yes to opening a wall or a tree.",
        options=_of_the_record("client.role"),
        usual="unknown",
    ),
    Choice(
        name="consent",
        label="Owner's consent",
        meaning="The owner of the tree, wall or ground; the neighbour for theirs.",
        options=_of_the_record("client.consent"),
        usual="unknown",
    ),
    Choice(
        name="dogs",
        label="Dogs and other animals",
        meaning="Also hens, horses, cattle.",
        options=_options(
            ("unknown", "Not asked yet"),
            ("none", "None"),
            ("in", "Kept in"),
            ("loose", "Loose"),
        ),
        usual="unknown",
    ),
    Choice(
        name="photo",
        label="Photo from a distance",
        meaning="Of the animal, the hole and the whole wall or tree.",
        options=_options(("no", "Not yet"), ("yes", "There")),
        usual="no",
    ),
)
"""What is asked, in the order of the call."""

OUTPUTS: tuple[Out, ...] = (
    Out(
        name="decision",
        label="Decision",
        meaning="What the rules below lead to.",
        kind="text",
        main=True,
    ),
    Out(
        name="why",
        label="Why",
        meaning="The rule that decided, with its reason.",
        kind="text",
        main=True,
    ),
    Out(
        name="who",
        label="Who acts",
        meaning="The next to do something.",
        kind="text",
        main=True,
    ),
    Out(
        name="say",
        label="Words for the caller",
        meaning="Read them out, or say it in your own words.",
        kind="text",
        main=True,
    ),
    Out(
        name="rules",
        label="Rules applied",
        meaning="Those that decide or could have, the deciding one first.",
        kind="table",
        columns=(
            Out(name="rule", label="When, and why", meaning="The rule.", kind="text"),
            Out(name="leads_to", label="Leads to", meaning="Decision.", kind="text"),
        ),
    ),
    Out(
        name="before",
        label="Before you go",
        meaning="Rules that name something to see to; withheld where the job goes another way.",
        kind="table",
        columns=(
            Out(name="what", label="See to", meaning="What is missing.", kind="text"),
            Out(name="reason", label="Why", meaning="Reason.", kind="text"),
        ),
    ),
    Out(
        name="open",
        label="Questions still open",
        meaning="Not asked, or not known yet.",
        kind="table",
        columns=(Out(name="question", label="Ask", meaning="The question.", kind="text"),),
    ),
)
"""What the sheet answers."""

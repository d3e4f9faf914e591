"""Inputs of release, relocate or feed."""

from __future__ import annotations

from calc.declare import Choice, Count, Input, Number, Option
from calc.method.bodies import animal_options

_OWN = "own_reasoning"
RELEASE = ("purpose", ("release",))
MOVE = ("purpose", ("move",))
FEED = ("purpose", ("feed",))

PURPOSE = Choice(
    name="purpose",
    label="What you want to do",
    meaning="Three ways to pass the life of a nest on.",
    options=(
        Option(value="release", label="let young queens and males go"),
        Option(value="move", label="move a nest with its workers"),
        Option(value="feed", label="feed brood to poultry"),
    ),
    usual="release",
)

STATUS = Choice(
    name="status",
    label="Status of the species where you are",
    meaning="From “Which animal is it?”, the nature authority or the wildlife office.",
    options=(
        Option(value="native", label="native, no permit needed"),
        Option(value="protected_permit", label="protected, and the permit covers this"),
        Option(value="protected", label="protected, no permit"),
        Option(value="introduced_permit", label="introduced, office agreed in writing"),
        Option(value="introduced", label="introduced, nobody asked"),
        Option(value="invader", label="invader, to be reported"),
        Option(value="unknown", label="not known"),
    ),
    usual="native",
)


def _count(
    name: str, label: str, meaning: str, default: int, most: int, when: tuple[str, tuple[str, ...]]
) -> Count:
    return Count(
        name=name,
        label=label,
        meaning=meaning,
        low=0,
        high=most,
        source=_OWN,
        usual=default,
        step=10,
        only_if=when,
    )


RELEASING: tuple[Input, ...] = (
    _count("queens", "Young queens", "Alive and ready to go.", 60, 5000, RELEASE),
    _count("males", "Males", "Alive.", 40, 5000, RELEASE),
    Choice(
        name="animal",
        label="Kind of queen",
        meaning="For the sugar water they need.",
        options=animal_options(),
        usual="vespula_queen",
        only_if=RELEASE,
    ),
    Number(
        name="mass",
        label="Mass of one animal",
        meaning="Weigh a boxed sample and divide.",
        unit="mg",
        low=10,
        high=3000,
        why="from the smallest social wasp to the largest hornet queen",
        source=_OWN,
        usual=500,
        step=10,
        only_if=("animal", ("typed",)),
    ),
    Number(
        name="age",
        label="Days since the youngest came out",
        meaning="Of her cell; until she flies she stays in the cage. Caught in flight: type 7.",
        unit="day",
        low=0,
        high=90,
        source=_OWN,
        usual=7,
        step=1,
        only_if=RELEASE,
    ),
    Choice(
        name="flying",
        label="They fly by themselves",
        meaning="Tried in the cage, in the light.",
        options=(Option(value="yes", label="yes"), Option(value="no", label="no")),
        usual="yes",
        only_if=RELEASE,
    ),
    Number(
        name="temperature",
        label="Air temperature",
        meaning="At the place, now.",
        unit="degC",
        customary="degF",
        low=-20,
        high=50,
        why="weather to work in",
        source=_OWN,
        usual=18,
        step=1,
        only_if=RELEASE,
    ),
    Number(
        name="wind",
        label="Wind",
        meaning="At the place, now.",
        unit="m/s",
        customary="mph",
        low=0,
        high=40,
        source=_OWN,
        usual=2,
        step=1,
        only_if=RELEASE,
    ),
    Choice(
        name="sky",
        label="Weather",
        meaning="Now and for the next hours.",
        options=(
            Option(value="sun", label="dry, sun"),
            Option(value="dry", label="dry, cloud"),
            Option(value="rain", label="rain or soon rain"),
        ),
        usual="sun",
        only_if=RELEASE,
    ),
    Number(
        name="daylight",
        label="Daylight left",
        meaning="Hours to sunset.",
        unit="hour",
        low=0,
        high=24,
        why="a day",
        source=_OWN,
        usual=4,
        digits=1,
        step=0.5,
        only_if=RELEASE,
    ),
    Number(
        name="distance",
        label="To the client, neighbours, schools, hives",
        meaning="The nearest of them.",
        unit="m",
        customary="ft",
        low=0,
        high=100000,
        source=_OWN,
        usual=1500,
        digits=-1,
        step=100,
        only_if=RELEASE,
    ),
    Choice(
        name="agreed",
        label="Client and landowner agree",
        meaning="Told beforehand what happens to the animals, and where.",
        options=(Option(value="yes", label="yes"), Option(value="no", label="no or not asked")),
        usual="yes",
        only_if=RELEASE,
    ),
)

MOVING: tuple[Input, ...] = (
    _count("workers", "Workers moved", "Alive, with the nest.", 200, 20000, MOVE),
    Number(
        name="km",
        label="Distance moved",
        meaning="As the hornet flies, from the old place to the new.",
        unit="km",
        customary="mile",
        low=0,
        high=100,
        source=_OWN,
        usual=5,
        digits=1,
        step=0.5,
        only_if=MOVE,
    ),
)

FEEDING: tuple[Input, ...] = (
    Choice(
        name="history",
        label="Poison, spray, dust or bait on this nest or near it",
        meaning="This season, by anyone: owner, neighbour, firm. Ask each of them.",
        options=(
            Option(value="none", label="none: everyone was asked and said no"),
            Option(value="unknown", label="not known, or not everyone was asked"),
            Option(value="treated", label="yes, or it looks so"),
        ),
        usual="none",
        only_if=FEED,
    ),
    Choice(
        name="brood_state",
        label="State of the brood",
        meaning="Look and smell, comb by comb.",
        options=(
            Option(value="fresh", label="fresh, pale, no smell"),
            Option(value="bad", label="dead, dark, smelling, mould or maggots"),
            Option(value="dirty", label="droppings, rodent bait, insulation or paint dust on it"),
        ),
        usual="fresh",
        only_if=FEED,
    ),
    Number(
        name="brood",
        label="Brood",
        meaning="Larvae and pupae without comb, weighed.",
        unit="g",
        customary="oz",
        low=1,
        high=50000,
        source=_OWN,
        usual=850,
        digits=0,
        customary_digits=1,
        step=50,
        only_if=FEED,
    ),
    Count(
        name="hens",
        label="Hens",
        meaning="Grown birds that share it.",
        low=1,
        high=1000,
        source=_OWN,
        usual=6,
        only_if=FEED,
    ),
    Number(
        name="feed",
        label="Feed of one hen a day",
        meaning="Weigh a day's feed and divide; small hens eat less than large ones.",
        unit="g",
        customary="oz",
        low=20,
        high=400,
        source=_OWN,
        usual=115,
        digits=0,
        customary_digits=1,
        step=5,
        only_if=FEED,
    ),
    Number(
        name="share",
        label="Share of the day's feed",
        meaning="Ten percent is customary, five the stricter rule.",
        unit="percent",
        low=1,
        high=10,
        why="more than a tenth dilutes a balanced feed",
        source="treats_ten",
        usual=10,
        step=1,
        only_if=FEED,
    ),
    Choice(
        name="eggs",
        label="The eggs",
        meaning="Who eats them.",
        options=(
            Option(value="own", label="eaten at home"),
            Option(value="sold", label="sold or given away"),
        ),
        usual="own",
        only_if=FEED,
    ),
)

INPUTS = (PURPOSE, STATUS, *RELEASING, *MOVING, *FEEDING)

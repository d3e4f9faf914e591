"""Inputs and results of "Keeping people away"."""

from __future__ import annotations

from calc.declare import Choice, Input, Number, Option, Out


def _distance(
    name: str, label: str, meaning: str, default: float, only_if: tuple[str, tuple[str, ...]] | None
) -> Number:
    return Number(
        name=name,
        label=label,
        meaning=meaning,
        only_if=only_if,
        unit="m",
        customary="ft",
        low=0,
        high=500,
        why="farther than any zone",
        source="own_zones",
        usual=default,
        digits=1,
        customary_digits=0,
        step=1,
    )


GROUP = Choice(
    name="group",
    label="Animals",
    meaning="From “Which animal is it”.",
    options=(
        Option(value="yellowjacket", label="Yellowjackets (Vespula)"),
        Option(value="aerial", label="Aerial yellowjackets, tree wasps, bald-faced hornet"),
        Option(value="hornet", label="European hornet"),
        Option(value="yellow_legged", label="Yellow-legged hornet"),
        Option(value="giant", label="Giant hornet"),
        Option(value="paper_wasp", label="Paper wasps"),
    ),
    usual="yellowjacket",
)
DISTURBANCE = Choice(
    name="disturbance",
    label="What is done to the nest",
    meaning="The worst of the day.",
    options=(
        Option(value="passive", label="Nothing; people live beside it"),
        Option(value="working", label="Adults caught, cavity opened, comb taken out"),
        Option(value="vibration", label="The same with saw, drill, mower or blows near it"),
    ),
    usual="working",
)
COLONY = Choice(
    name="colony",
    label="Colony",
    meaning="Late means the last two months before the first hard frost.",
    options=(
        Option(value="small", label="Small, early in the season"),
        Option(value="grown", label="Grown"),
        Option(value="large", label="Large, or late in the season"),
    ),
    usual="grown",
)
BEFORE = Choice(
    name="disturbed_before",
    label="Disturbed in the last days",
    meaning="Stings, blows, water, poison, a blocked hole or a mower nearby.",
    options=(Option(value="no", label="No"), Option(value="yes", label="Yes, or not known")),
    usual="no",
)
WIND = Number(
    name="wind",
    label="Wind where you stand",
    meaning="At head height; 2 m/s is felt on the face.",
    unit="m/s",
    customary="mph",
    low=0,
    high=30,
    why="above a gale nobody works there",
    source="own_reasoning",
    usual=1,
    digits=1,
    step=0.5,
)
DOWNWIND = Choice(
    name="downwind",
    label="People downwind",
    meaning="House, path or neighbour on the side the wind blows to.",
    options=(Option(value="no", label="Nobody"), Option(value="yes", label="Yes")),
    usual="no",
)
HOUSE = _distance("house", "Nest to the nearest door or window", "Measured along the air.", 8, None)
WAY = Choice(
    name="way",
    label="Path or road near",
    meaning="The nearest one that others use.",
    options=(
        Option(value="none", label="None"),
        Option(value="path", label="Path, pavement, playground"),
        Option(value="road", label="Road with vehicles"),
    ),
    usual="path",
)
_HAS_WAY = ("way", ("path", "road"))
WAY_DISTANCE = _distance(
    "way_distance", "Nest to that path or road", "Nearest point.", 20, _HAS_WAY
)
WAY_CLOSED = Choice(
    name="way_closed",
    label="Closed during the work",
    meaning="Path: tape and a person. Road: by those who may close it.",
    only_if=_HAS_WAY,
    options=(Option(value="yes", label="Yes"), Option(value="no", label="No")),
    usual="yes",
)
NEIGHBOUR = Choice(
    name="neighbour",
    label="Nearest neighbour",
    meaning="Told means: spoken with today, allergies asked.",
    options=(
        Option(value="none", label="None near"),
        Option(value="told", label="Told"),
        Option(value="not_told", label="Not told yet"),
    ),
    usual="told",
)
NEIGHBOUR_DISTANCE = _distance(
    "neighbour_distance",
    "Nest to the neighbour's house or garden",
    "Nearest place where they sit or play.",
    25,
    ("neighbour", ("told", "not_told")),
)
LOOSE = Choice(
    name="loose",
    label="Children and animals",
    meaning="Dogs, cats, hens and horses count.",
    options=(
        Option(value="in", label="In, counted, door shut"),
        Option(value="loose", label="Still out, or not known"),
    ),
    usual="in",
)
DOOR = _distance(
    "door",
    "Nest to the vehicle or shed you run to",
    "Where your run ends, with a free way.",
    12,
    None,
)

INPUTS: tuple[Input, ...] = (
    GROUP,
    DISTURBANCE,
    COLONY,
    BEFORE,
    WIND,
    DOWNWIND,
    HOUSE,
    WAY,
    WAY_DISTANCE,
    WAY_CLOSED,
    NEIGHBOUR,
    NEIGHBOUR_DISTANCE,
    LOOSE,
    DOOR,
)
"""What the reader gives, in the order of the form."""


def _metres(name: str, label: str, meaning: str, main: bool = False) -> Out:
    return Out(name=name, label=label, meaning=meaning, unit="m", customary="ft", main=main)


def _column(name: str, label: str) -> Out:
    return Out(name=name, label=label, meaning=label + ".", kind="text")


OUTPUTS: tuple[Out, ...] = (
    _metres("inner", "Suited people only, within", "Our zone; reasoned, not measured.", True),
    _metres("outer", "Nobody else outdoors, within", "Never below the published spread.", True),
    _metres("downwind", "The same on the downwind side", "One row wider in wind that is felt."),
    _metres("machines", "No machine of others within", "Mower, trimmer, hammer, saw."),
    Out(
        name="published",
        label="Published distances of defence",
        meaning="Least and farthest for these animals; mostly calm nests, some tests.",
        kind="interval",
        unit="m",
        customary="ft",
        digits=1,
        customary_digits=0,
    ),
    Out(
        name="state",
        label="Which row of our zones",
        meaning="From animals, work, colony and earlier disturbance.",
        kind="text",
    ),
    Out(
        name="shut_from",
        label="People in and windows shut before the start",
        meaning="Minutes before the first contact; our value. The same for every job.",
        unit="min",
        main=True,
    ),
    Out(
        name="normal_after",
        label="Until it is normal again, after the last contact",
        meaning="Our value; go by the flight, not by the clock. The same for every job.",
        kind="interval",
        unit="min",
        main=True,
    ),
    _metres(
        "run",
        "Run at least",
        "The least; then on into the vehicle or shed. The same for every job.",
    ),
    Out(
        name="places",
        label="Places around",
        meaning="Each with its distance and what to do there.",
        kind="table",
        columns=(
            _column("place", "Place"),
            Out(name="distance", label="Distance", meaning="m.", unit="m", customary="ft"),
            _column("zone", "Lies"),
            _column("do", "What to do"),
        ),
    ),
    Out(
        name="warn",
        label="Who is told, and what",
        meaning="Spoken, before the first contact.",
        kind="table",
        columns=(_column("who", "Who"), _column("say", "What")),
    ),
)
"""What the reader gets, the zones first."""

"""Inputs of "Sting plan"."""

from __future__ import annotations

from calc import tables
from calc.declare import Choice, Count, Input, Number, Option

_HAS = ("adrenaline", ("in_date", "expired", "hot"))


def _reactions(*keys: str) -> tuple[Option, ...]:
    return tuple(
        Option(value=key, label=row["reaction"], meaning=row["looks"])
        for key in keys
        for row in (tables.row("reactions", key),)
    )


def _people(name: str, label: str, meaning: str, low: int, high: int, default: int) -> Count:
    return Count(
        name=name,
        label=label,
        meaning=meaning,
        low=low,
        high=high,
        why="a job for one small team" if high < 50 else "more people need an organiser's plan",
        source="own_sting_plan",
        usual=default,
    )


REACTIONS = Choice(
    name="reaction",
    label="Worst reaction of anyone who works or watches",
    meaning="Ask each one by name. Swelling at the spot alone is not systemic.",
    options=_reactions("none", "local", "large_local", "cleared", "systemic", "unknown"),
    usual="local",
)
HEALTH = Choice(
    name="health",
    label="Heart, asthma, mast cells, pregnancy, heart tablets",
    meaning="Of anyone who works in the suit. Never stop tablets for this work.",
    options=(
        Option(value="none", label="None of these"),
        Option(value="cleared", label="Yes, and a doctor allows this work"),
        Option(value="risk", label="Yes, or not asked"),
    ),
    usual="none",
)
HOME_REACTION = Choice(
    name="home_reaction",
    label="Worst reaction of anyone who lives or visits there",
    meaning="Ask the client, the neighbours within the outer zone, and visitors.",
    options=_reactions("none", "local", "large_local", "systemic", "unknown"),
    usual="none",
)
ADRENALINE = Choice(
    name="adrenaline",
    label="Adrenaline on site",
    meaning="A device a doctor prescribed, out of the vehicle, in the shade.",
    options=(
        Option(value="in_date", label="In date, cool, within reach"),
        Option(value="expired", label="Out of date"),
        Option(value="hot", label="Was left in a hot vehicle"),
        Option(value="none", label="None"),
    ),
    usual="in_date",
)
TRAINED = Choice(
    name="trained",
    label="Who practised with a trainer device",
    meaning="The helper must be able to give it to you.",
    only_if=_HAS,
    options=(
        Option(value="helper", label="The one who watches"),
        Option(value="worker", label="Only the one in the suit"),
        Option(value="nobody", label="Nobody"),
    ),
    usual="helper",
)
SIGNAL = Choice(
    name="signal",
    label="Call from the spot",
    meaning="Tried today, from where you stand.",
    options=(
        Option(value="mobile", label="Mobile, tried"),
        Option(value="satellite", label="Satellite or radio, tried"),
        Option(value="landline", label="Only a landline in a house"),
        Option(value="none", label="None"),
    ),
    usual="mobile",
)
AREA = Choice(
    name="area",
    label="How far help is",
    meaning="United States means from call to ambulance at the address, or your own figure.",
    options=(
        Option(value="urban", label="Town"),
        Option(value="suburban", label="Suburb"),
        Option(value="rural", label="Country"),
        Option(value="minutes", label="I know the minutes"),
    ),
    usual="suburban",
)
RESPONSE = Number(
    name="response",
    label="Ambulance at the address after",
    meaning="Minutes from the call, as the local service tells you; take the slow case.",
    only_if=("area", ("minutes",)),
    unit="min",
    low=1,
    high=240,
    why="no ambulance arrives in less than a minute; beyond four hours plan a rescue first",
    source="own_sting_plan",
    usual=12,
    step=1,
)

INPUTS: tuple[Input, ...] = (
    _people("workers", "In the suit", "People who work at the nest.", 1, 10, 1),
    _people("helpers", "Adults who watch", "Outside the zone, with the phone.", 0, 10, 1),
    _people("household", "Others near", "Client, family, neighbours, passers-by.", 0, 200, 3),
    REACTIONS,
    HEALTH,
    HOME_REACTION,
    Choice(
        name="home_place",
        label="Where that person is during the work",
        meaning="Before the suit goes on, until you say done.",
        only_if=("home_reaction", ("systemic", "unknown")),
        options=(
            Option(value="away", label="Away from the place"),
            Option(value="indoors", label="Indoors, windows shut"),
            Option(value="near", label="Outdoors or nearby"),
        ),
        usual="away",
    ),
    ADRENALINE,
    Count(
        name="devices",
        label="Devices",
        meaning="Doses on site, all in date.",
        only_if=_HAS,
        low=0,
        high=10,
        why="a team carries a few",
        source="own_sting_plan",
        usual=2,
    ),
    Number(
        name="weight",
        label="Weight of the person with the device",
        meaning="To read the printed band; it never replaces the prescription.",
        only_if=_HAS,
        optional=True,
        unit="kg",
        customary="lb",
        low=5,
        high=250,
        why="below 5 kg no label prints anything",
        source="us_injector_label",
        usual=None,
        digits=1,
        customary_digits=0,
        step=1,
    ),
    TRAINED,
    SIGNAL,
    AREA,
    RESPONSE,
    Number(
        name="walk_in",
        label="From the road to the person",
        meaning="Gate, stairs, field track; walk it once with a watch.",
        unit="min",
        low=0,
        high=240,
        why="beyond four hours plan a rescue first",
        source="own_sting_plan",
        usual=2,
        step=1,
    ),
    Choice(
        name="kin",
        label="Animals",
        meaning="For the rule on many stings.",
        options=(
            Option(value="hornet", label="Hornets"),
            Option(value="other", label="Yellowjackets, aerial or paper wasps"),
        ),
        usual="other",
    ),
    Number(
        name="lightest",
        label="Lightest person near",
        meaning="Mostly a child: fewer stings are too many.",
        unit="kg",
        customary="lb",
        low=3,
        high=250,
        why="from a newborn up",
        source="own_sting_rule",
        usual=20,
        digits=0,
        step=1,
    ),
    Choice(
        name="water",
        label="Water for an eye",
        meaning="A tap that runs clear and not cold, or bottles.",
        options=(
            Option(value="tap", label="Running tap within reach"),
            Option(value="bottles", label="Bottles"),
        ),
        usual="tap",
    ),
    Number(
        name="bottles",
        label="Litres in bottles",
        meaning="All bottles for the eyes together.",
        only_if=("water", ("bottles",)),
        unit="L",
        customary="gal",
        low=0,
        high=200,
        why="more than a vehicle carries for this",
        source="own_sting_plan",
        usual=5,
        digits=1,
        step=1,
    ),
)
"""What the reader gives, in the order of the form."""

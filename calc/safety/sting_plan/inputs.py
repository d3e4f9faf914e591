"""What "Sting plan" asks for: the fewest that decide, then people and things on site."""

from __future__ import annotations

from collections.abc import Iterator

from calc import tables
from calc.declare import Given, choice, count, number
from calc.declare.inputs import Option

_HAS = ("adrenaline", ("in_date", "expired", "hot"))


def _reactions(*keys: str) -> Iterator[Option]:
    for key in keys:
        row = tables.row("reactions", key)
        yield Option(value=key, label=row["reaction"], meaning=row["looks"])


class Inputs(Given):
    """People, reactions, means and minutes of one job."""

    reaction: str = choice(
        "Worst reaction of anyone who works or watches",
        "Ask each one by name. Swelling at the spot alone is not systemic.",
        _reactions("none", "local", "large_local", "cleared", "systemic", "unknown"),
        example="local",
    )
    response: float | None = number(
        "Ambulance at the address after",
        "Minutes from the call, as the local service tells you; take the slow case.",
        "min",
        low=1,
        high=240,
        why="no ambulance arrives in less than a minute; beyond four hours plan a rescue first",
        source="own_sting_plan",
        only_if=("area", ("minutes",)),
        plausible=(5, 45),
        example=12,
        step=1,
    )
    adrenaline: str = choice(
        "Adrenaline on site",
        "A device a doctor prescribed, out of the vehicle, in the shade.",
        [
            ("in_date", "In date, cool, within reach"),
            ("expired", "Out of date"),
            ("hot", "Was left in a hot vehicle"),
            ("none", "None"),
        ],
        example="in_date",
    )
    trained: str | None = choice(
        "Who practised with a trainer device",
        "The helper must be able to give it to you.",
        [
            ("helper", "The one who watches"),
            ("worker", "Only the one in the suit"),
            ("nobody", "Nobody"),
        ],
        only_if=_HAS,
        example="helper",
    )
    signal: str = choice(
        "Call from the spot",
        "Tried today, from where you stand.",
        [
            ("mobile", "Mobile, tried"),
            ("satellite", "Satellite or radio, tried"),
            ("landline", "Only a landline in a house"),
            ("none", "None"),
        ],
        example="mobile",
    )
    helpers: int = count(
        "Adults who watch",
        "Outside the zone, with the phone.",
        low=0,
        high=10,
        why="a job for one small team",
        source="own_sting_plan",
        origin="equipment",
        plausible=(0, 3),
        example=1,
    )
    health: str = choice(
        "Heart, asthma, mast cells, pregnancy, heart tablets",
        "Of anyone who works in the suit. Never stop tablets for this work.",
        [
            ("none", "None of these"),
            ("cleared", "Yes, and a doctor allows this work"),
            ("risk", "Yes, or not asked"),
        ],
        origin="equipment",
        example="none",
    )
    workers: int = count(
        "In the suit",
        "People who work at the nest.",
        low=1,
        high=10,
        why="a job for one small team",
        source="own_sting_plan",
        origin="equipment",
        usual=1,
        usual_source="common_practice",
        plausible=(1, 3),
    )
    devices: int | None = count(
        "Devices",
        "Doses on site, all in date. Not counted is one.",
        low=0,
        high=10,
        why="a team carries a few",
        source="own_sting_plan",
        origin="equipment",
        only_if=_HAS,
        usual=1,
        usual_source="own_sting_plan",
        plausible=(1, 3),
        example=2,
    )
    area: str = choice(
        "How far help is",
        "Your own minutes, or United States means from call to ambulance at the address.",
        [
            ("urban", "Town"),
            ("suburban", "Suburb"),
            ("rural", "Country"),
            ("minutes", "I know the minutes"),
        ],
        origin="usual",
        usual="minutes",
        usual_source="own_sting_plan",
        example="suburban",
    )
    walk_in: float = number(
        "From the road to the person",
        "Gate, stairs, field track; walk it once with a watch.",
        "min",
        low=0,
        high=240,
        why="beyond four hours plan a rescue first",
        source="own_sting_plan",
        origin="usual",
        usual=2,
        usual_source="own_sting_plan",
        plausible=(0, 15),
        step=1,
    )
    household: int = count(
        "Others near",
        "Client, family, neighbours, passers-by.",
        low=0,
        high=200,
        why="more people need an organiser's plan",
        source="own_sting_plan",
        origin="usual",
        usual=1,
        usual_source="own_sting_plan",
        plausible=(0, 10),
        example=3,
    )
    home_reaction: str = choice(
        "Worst reaction of anyone who lives or visits there",
        "Ask the client, the neighbours within the outer zone, and visitors.",
        _reactions("none", "local", "large_local", "systemic", "unknown"),
        origin="usual",
        usual="unknown",
        usual_source="own_sting_plan",
        example="none",
    )
    kin: str = choice(
        "Animals",
        "For the rule on many stings; hornets have the lower numbers.",
        [("hornet", "Hornets, or not known"), ("other", "Yellowjackets, aerial or paper wasps")],
        origin="usual",
        usual="hornet",
        usual_source="own_sting_rule",
        example="other",
    )
    home_place: str | None = choice(
        "Where that person is during the work",
        "Before the suit goes on, until you say done.",
        [
            ("away", "Away from the place"),
            ("indoors", "Indoors, windows shut"),
            ("near", "Outdoors or nearby"),
        ],
        origin="extra",
        only_if=("home_reaction", ("systemic", "unknown")),
        optional=True,
        example="away",
    )
    weight: float | None = number(
        "Weight of the person with the device",
        "To read the printed band; it never replaces the prescription.",
        "kg",
        low=5,
        high=250,
        why="below 5 kg no label prints anything",
        source="us_injector_label",
        origin="extra",
        only_if=_HAS,
        optional=True,
        plausible=(15, 120),
        digits=1,
        customary_digits=0,
        step=1,
    )
    lightest: float | None = number(
        "Lightest person near",
        "Mostly a child: fewer stings are too many.",
        "kg",
        low=3,
        high=250,
        why="from a newborn up",
        source="own_sting_rule",
        origin="extra",
        optional=True,
        plausible=(10, 90),
        example=20,
        step=1,
    )
    water: str | None = choice(
        "Water for an eye",
        "A tap that runs clear and not cold, or bottles.",
        [("tap", "Running tap within reach"), ("bottles", "Bottles")],
        origin="extra",
        optional=True,
        example="tap",
    )
    bottles: float | None = number(
        "Litres in bottles",
        "All bottles for the eyes together.",
        "L",
        low=0,
        high=200,
        why="more than a vehicle carries for this",
        source="own_sting_plan",
        origin="extra",
        only_if=("water", ("bottles",)),
        plausible=(0, 30),
        example=5,
        digits=1,
        step=1,
    )

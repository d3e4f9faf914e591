"""What "Brood for poultry" asks for."""

from __future__ import annotations

from calc.declare import Given, choice, count, number
from calc.method.passing_on import status


class Inputs(Given):
    """Poison, state and mass of the brood, and the flock."""

    history: str = choice(
        "Poison, spray, dust or bait on this nest or near it",
        "This season, by anyone: owner, neighbour, firm. Ask each of them.",
        [
            ("none", "none: everyone was asked and said no"),
            ("unknown", "not known, or not everyone was asked"),
            ("treated", "yes, or it looks so"),
        ],
        example="none",
    )
    brood_state: str = choice(
        "State of the brood",
        "Look and smell, comb by comb.",
        [
            ("fresh", "fresh, pale, no smell"),
            ("bad", "dead, dark, smelling, mould or maggots"),
            ("dirty", "droppings, rodent bait, insulation or paint dust on it"),
        ],
        example="fresh",
    )
    status: str = status()
    brood: float = number(
        "Brood",
        "Larvae and pupae without comb, weighed.",
        "g",
        low=1,
        high=50000,
        plausible=(100, 3000),
        example=850,
        customary_digits=1,
        step=50,
    )
    hens: int = count(
        "Hens",
        "Grown birds that share it.",
        low=1,
        high=1000,
        plausible=(3, 30),
        example=6,
    )
    feed: float = number(
        "Feed of one hen a day",
        "Weigh a day's feed and divide; small hens eat less than large ones.",
        "g",
        low=20,
        high=400,
        plausible=(106, 125),
        plausible_source="hen_feed_page",
        origin="usual",
        usual=115,
        usual_source="hen_feed_page",
        customary_digits=1,
        step=5,
    )
    share: float = number(
        "Share of the day's feed",
        "Ten percent is customary, five the stricter rule.",
        "percent",
        low=1,
        high=10,
        why="more than a tenth dilutes a balanced feed",
        source="treats_ten",
        plausible=(5, 10),
        plausible_source="treats_five",
        origin="usual",
        usual=10,
        usual_source="treats_ten",
        step=1,
    )
    eggs: str = choice(
        "The eggs",
        "Who eats them.",
        [("own", "eaten at home"), ("sold", "sold or given away")],
        origin="usual",
        usual="sold",
        usual_source="own_reasoning",
        example="own",
    )

"""The other calculators, run with the inputs of the briefing."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Any

from calc.declare import Result
from calc.safety.acclimatisation_plan import acclimatisation_plan
from calc.safety.briefing.inputs import Inputs
from calc.safety.heat_in_suit import heat_in_suit
from calc.safety.keep_away import keep_away
from calc.safety.ladder_and_lines import ladder_and_lines
from calc.safety.noise_dose import noise_dose
from calc.safety.sting_plan import sting_plan

_ADRENALINE = {"two": "in_date", "one": "in_date", "old": "expired", "none": "none"}
_DEVICES = {"two": 2, "one": 1, "old": 2}
_EARS = {
    "vacuum_level": 90,
    "saw_level": 104,
    "protector": "foam",
    "nrr": 25,
    "second_nrr": 25,
    "worn": 100,
}
"""What the briefing does not ask about noise."""
_CLIMBER = {
    "rails": "nonconductive",
    "rating": "IA",
    "person": 85,
    "suit": 8,
    "carried": 12,
}
"""What the briefing does not ask about the ladder."""
_SUIT = {"heat_known": "weather", "clothing": "sting_suit", "rest": "shade"}
"""What the briefing does not ask about the heat."""
_OTHERS = ("yellowjacket", "aerial", "paper_wasp")
"""Animals of which many stings are counted by the higher numbers."""


@dataclass(frozen=True, kw_only=True, slots=True)
class Parts:
    """The results the briefing is made of; None where nothing was said that the part needs."""

    heat: Result | None
    days: Result | None
    stings: Result
    people: Result
    noise: Result | None
    ladder: Result | None

    def named(self) -> list[tuple[str, Result]]:
        """Return each part in use with the word the briefing calls it by."""
        made = (
            ("Heat", self.heat),
            ("First days", self.days),
            ("Stings", self.stings),
            ("People", self.people),
            ("Noise", self.noise),
            ("Ladder", self.ladder),
        )
        return [(word, part) for word, part in made if part is not None]


def run(x: Inputs) -> Parts:
    """Run every part with the inputs of the briefing, in declared units."""
    days = _days(x)
    return Parts(
        heat=_heat(x, days),
        days=days,
        stings=_stings(x),
        people=_people(x),
        noise=_noise(x),
        ladder=_ladder(x),
    )


def _said(x: Inputs, *names: str) -> dict[str, Any]:
    return {name: value for name in names if (value := getattr(x, name)) is not None}


def _days(x: Inputs) -> Result | None:
    if x.person is None or x.person == "used":
        return None
    return acclimatisation_plan.run({"state": "well"} | _said(x, "person", "day", "full_minutes"))


def _heat(x: Inputs, days: Result | None) -> Result | None:
    """Run the heat for the planned minutes, or for those of today's share if they are fewer."""
    if None in (x.air_temperature, x.humidity, x.sun):
        return None
    used = x.person == "used"
    given = _SUIT | _said(x, "air_temperature", "humidity", "sun", "work", "planned_minutes")
    given["wind"] = 0.0 if x.wind is None else x.wind  # calm air is the hottest
    found = heat_in_suit.run(given | {"acclimatised": "yes" if used else "no"})
    today = None if days is None else days.values["today_minutes"]
    # The schedule is for work that heats: where the limit allows the whole hour it does not bite.
    if used or today is None or found.values["work_minutes"] in {None, 60}:
        return found
    if x.planned_minutes is None or today >= x.planned_minutes:
        return found
    return heat_in_suit.run(given | {"acclimatised": "no", "planned_minutes": today})


def _noise(x: Inputs) -> Result | None:
    """Run the noise; a vacuum of unknown minutes is left out, and so is a day without a figure."""
    if x.saw == "none":
        if x.planned_minutes is None:
            return None
        return noise_dose.run(_EARS | {"vacuum_minutes": x.planned_minutes, "tools": "vacuum"})
    vacuum = 0.0 if x.planned_minutes is None else x.planned_minutes
    day = _EARS | {"vacuum_minutes": vacuum, "tools": "saw"}
    return noise_dose.run(day | _said(x, "saw_minutes", "protector", "nrr"))


def _stings(x: Inputs) -> Result:
    given: dict[str, Any] = {
        "adrenaline": _ADRENALINE[x.adrenaline],
        "kin": "other" if x.group in _OTHERS else "hornet",
        "health": x.health or "none",  # not asked is a condition of the card
        "signal": x.signal or "mobile",  # not tried is a condition of the card
        # The briefing reads the eye water out as a condition: nobody typed it here.
        "water": "bottles",
        "bottles": 0,
    }
    if x.adrenaline in _DEVICES:
        given |= {"devices": _DEVICES[x.adrenaline], "trained": x.trained or "nobody"}
    if x.response is not None:
        given["walk_in"] = 0  # the reader's own minutes end at the person
    shared = ("helpers", "reaction", "home_reaction", "home_place", "area", "response")
    return sting_plan.run(given | _said(x, *shared))


def _people(x: Inputs) -> Result:
    shut = x.around != "open"  # not said is a condition of the card
    given: dict[str, Any] = {
        "group": x.group or "hornet",
        "house": 0,
        "door": 0,
        "way": "path",
        "way_distance": 0,
        "way_closed": "yes" if shut else "no",
        "neighbour": "none",
        "disturbed_before": "no",
        "loose": "in" if shut else "loose",
        "downwind": "yes",
    }
    return keep_away.run(given | _said(x, "disturbance", "colony", "wind"))


def _ladder(x: Inputs) -> Result | None:
    if x.ladder == "none":
        return None
    return ladder_and_lines.run(
        _CLIMBER
        | {
            "lines": "unknown",
            "line_distance": x.line_distance,
            "support_height": x.support_height,
            "nest_height": x.support_height,
        }
    )

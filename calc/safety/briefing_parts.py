"""The other calculators, run with the inputs of the briefing."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from typing import Any

from calc.declare import Calculator, Result
from calc.safety.acclimatisation_plan import acclimatisation_plan
from calc.safety.heat_in_suit import heat_in_suit
from calc.safety.keep_away import keep_away
from calc.safety.ladder_and_lines import ladder_and_lines
from calc.safety.noise_dose import noise_dose
from calc.safety.sting_plan import sting_plan

_ADRENALINE = {"two": "in_date", "one": "in_date", "old": "expired", "none": "none"}
_DEVICES = {"two": 2, "one": 1, "old": 2}
_DAYS = {"state": "well", "full_minutes": 120}
"""What the briefing does not ask about the first days."""
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
_HORNETS = ("hornet", "yellow_legged", "giant")


@dataclass(frozen=True, kw_only=True, slots=True)
class Parts:
    """The results the briefing is made of; None where the part is not used on this job."""

    heat: Result
    days: Result
    stings: Result
    people: Result
    noise: Result
    ladder: Result | None

    def named(self) -> list[tuple[str, Result]]:
        """Return each part in use with the word the briefing calls it by."""
        made = [
            ("Heat", self.heat),
            ("First days", self.days),
            ("Stings", self.stings),
            ("People", self.people),
            ("Noise", self.noise),
        ]
        return made if self.ladder is None else [*made, ("Ladder", self.ladder)]


def run(given: Mapping[str, Any]) -> Parts:
    """Run every part with the inputs of the briefing, in declared units."""
    days = _days(given)
    return Parts(
        heat=_heat(given, days),
        days=days,
        stings=_stings(given),
        people=_people(given),
        noise=_noise(given),
        ladder=_ladder(given),
    )


def _part(
    calculator: Calculator, given: Mapping[str, Any], shared: tuple[str, ...], **fixed: Any
) -> Result:
    passed = {name: given[name] for name in shared if given[name] is not None}
    return calculator.run(passed | fixed)


def _days(given: Mapping[str, Any]) -> Result:
    names = ("person", "day", "full_minutes")
    typed = {name: given[name] for name in names if given[name] is not None}
    return acclimatisation_plan.run(_DAYS | typed)


def _heat(given: Mapping[str, Any], days: Result) -> Result:
    """Run the heat for the planned minutes, or for those of today's share if they are fewer."""
    shared = ("air_temperature", "humidity", "sun", "wind", "work", "planned_minutes")
    used = given["person"] == "used"
    worn = {"clothing": "sting_suit", "acclimatised": "yes" if used else "no"}
    found = _part(heat_in_suit, given, shared, **worn)
    today = days.values["today_minutes"]
    # The schedule is for work that heats: where the limit allows the whole hour it does not bite.
    if used or today >= given["planned_minutes"] or found.values["work_minutes"] in {None, 60}:
        return found
    typed = {name: given[name] for name in shared} | {"planned_minutes": today}
    return heat_in_suit.run(typed | worn)


def _noise(given: Mapping[str, Any]) -> Result:
    day = _EARS | {"vacuum_minutes": given["planned_minutes"]}
    if given["saw"] == "none":
        return noise_dose.run(day | {"tools": "vacuum"})
    names = ("saw_minutes", "protector", "nrr")
    typed = {name: given[name] for name in names if given[name] is not None}
    return noise_dose.run(day | {"tools": "saw"} | typed)


def _stings(given: Mapping[str, Any]) -> Result:
    adrenaline = given["adrenaline"]
    fixed: dict[str, Any] = {
        "adrenaline": _ADRENALINE[adrenaline],
        "kin": "hornet" if given["group"] in _HORNETS else "other",
        # The briefing reads the eye water out as a condition: nobody typed it here.
        "water": "bottles",
        "bottles": 0,
    }
    if adrenaline in _DEVICES:
        fixed["devices"] = _DEVICES[adrenaline]
    if given["response"] is not None:
        fixed["walk_in"] = 0  # the reader's own minutes end at the person
    shared = (
        *("helpers", "reaction", "health", "home_reaction", "home_place", "trained", "signal"),
        *("area", "response"),
    )
    return _part(sting_plan, given, shared, **fixed)


def _people(given: Mapping[str, Any]) -> Result:
    done = given["around"] == "done"
    return _part(
        keep_away,
        given,
        ("group", "disturbance", "colony", "wind"),
        house=0,
        door=0,
        way="path",
        way_distance=0,
        way_closed="yes" if done else "no",
        neighbour="none",
        loose="in" if done else "loose",
        downwind="yes",
    )


def _ladder(given: Mapping[str, Any]) -> Result | None:
    if given["ladder"] == "none":
        return None
    height = given["support_height"]
    return ladder_and_lines.run(
        _CLIMBER
        | {
            "lines": "unknown",
            "line_distance": given["line_distance"],
            "support_height": height,
            "nest_height": height,
        }
    )

"""Go, only with conditions, do not start: the rules of the sting plan."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass
from typing import Literal

from calc import rules as book
from calc.safety.sting_plan.facts import eye_litres, median_arrest

Level = Literal["stop", "condition"]


@dataclass(frozen=True, kw_only=True, slots=True)
class Site:
    """The people, the means and the minutes of one job."""

    workers: int
    helpers: int
    household: int
    reaction: str
    health: str
    home_reaction: str
    home_place: str | None  # None where nobody said, or nobody is at risk
    adrenaline: str
    devices: int
    trained: str | None
    signal: str
    help_at: float  # minutes from sting to help at the person
    eye_water: float  # litres; infinity for a running tap

    @property
    def usable(self) -> bool:
        """Whether adrenaline is in date, in reach, and someone else can give it."""
        return self.adrenaline == "in_date" and self.devices >= 1 and self.trained == "helper"

    @property
    def late(self) -> bool:
        """Whether help comes no sooner than the middle time to arrest."""
        return self.help_at >= median_arrest("venom")

    @property
    def home_at_risk(self) -> bool:
        """Whether somebody who lives there had, or may have had, a systemic reaction."""
        return self.household > 0 and self.home_reaction in {"systemic", "unknown"}


@dataclass(frozen=True, kw_only=True, slots=True)
class Rule:
    """One rule that bites on this site."""

    level: Level
    text: str
    reason: str
    source: str


@dataclass(frozen=True, slots=True)
class _Test:
    level: Level
    bites: Callable[[Site], bool]
    text: str
    reason: str
    source: str


def rules(site: Site) -> list[Rule]:
    """Return the rules that bite, stops first."""
    found = [
        Rule(level=test.level, text=test.text, reason=test.reason, source=test.source)
        for test in _TESTS
        if test.bites(site)
    ]
    return sorted(found, key=lambda rule: rule.level != "stop")


def severity(site: Site) -> int:
    """Return 0 if nothing asked for is missing, 1 with conditions, 2 for do not start."""
    found = rules(site)
    if any(rule.level == "stop" for rule in found):
        return 2
    return 1 if found else 0


_MEDIAN = median_arrest("venom")

_TESTS = (
    _Test(
        "stop",
        lambda s: s.reaction == "systemic",
        "Someone who works or watches had a systemic reaction and is not cleared: that person "
        "does neither.",
        "An earlier anaphylaxis is among the greatest risks. A doctor decides, not the day's need.",
        "aaa_insect",
    ),
    _Test(
        "stop",
        lambda s: s.reaction == "unknown",
        "Ask each person who works or watches about earlier reactions first.",
        "It takes a minute, and the answer can end the job.",
        "own_sting_plan",
    ),
    _Test(
        "stop",
        lambda s: s.health == "risk",
        "A person at risk does not do this work without a doctor's word for it.",
        "Mast cell disease and asthma not under control make a reaction worse; age and heart "
        "disease go with deaths. Heart and blood pressure tablets are not stopped for this work.",
        "german_venom_2023",
    ),
    _Test(
        "stop",
        lambda s: s.reaction == "cleared" and not (s.usable and s.devices >= 2),
        "A cleared worker needs two devices in date and a helper trained to use them.",
        "Treatment lowers the risk to about a tenth, not to nothing.",
        "ludman_2015",
    ),
    _Test(
        "stop",
        lambda s: s.signal == "none",
        "No way to call: do not start until a call from the spot has worked.",
        "No plan works without the call.",
        "own_sting_plan",
    ),
    _Test(
        "stop",
        lambda s: s.late and not s.usable,
        "Help comes no sooner than the middle time to arrest, and nobody on site can give "
        "adrenaline in date.",
        f"In fatal sting reactions the middle time to arrest was {_MEDIAN:.0f} minutes.",
        "pumphrey_2000",
    ),
    _Test(
        "stop",
        lambda s: s.helpers == 0,
        book.text("team", "nobody", "watcher"),
        "The person who needs help cannot be the one who calls.",
        "team_ours",
    ),
    _Test(
        "stop",
        lambda s: s.home_at_risk and s.home_place == "near",
        "The person at risk leaves the place, or goes in with windows shut, before the suit "
        "goes on.",
        "An opened nest reaches everyone in the zone.",
        "own_sting_plan",
    ),
    _Test(
        "stop",
        lambda s: s.home_at_risk and s.home_place == "indoors" and not s.usable,
        "The person at risk may stay indoors only with adrenaline in date and someone trained "
        "beside them; else away.",
        "One insect gets in, and the way to help is the same for them.",
        "own_sting_plan",
    ),
    _Test(
        "condition",
        lambda s: s.home_at_risk,
        "The person at risk stays away, or in with windows shut and a trained person, until you "
        "say done. Their own plan leads.",
        "Their doctor knows them; we do not.",
        "own_sting_plan",
    ),
    _Test(
        "condition",
        lambda s: s.reaction in {"large_local", "cleared"},
        "A doctor's word on work near nests is there in writing.",
        "Past reactions say something about the next one, and only a doctor can weigh it.",
        "own_sting_plan",
    ),
    _Test(
        "condition",
        lambda s: s.adrenaline == "none",
        "No adrenaline: ask a doctor, before the season, whether your team should carry it.",
        "Few of those who died had an earlier severe reaction; it is a prescription medicine.",
        "johansson_1991",
    ),
    _Test(
        "condition",
        lambda s: s.adrenaline in {"expired", "hot"},
        "Bring a device that is in date and was never left in a hot vehicle.",
        "Old or heated devices may give less.",
        "injector_storage",
    ),
    _Test(
        "condition",
        lambda s: s.adrenaline != "none" and s.devices < 2,
        "Carry two devices for a person at risk.",
        "About one in five needs a second dose.",
        "second_dose_share",
    ),
    _Test(
        "condition",
        lambda s: s.adrenaline != "none" and s.trained != "helper",
        "The person who watches practises with a trainer device before the suit goes on.",
        "Out of the zone, suit open at the thigh. The one who needs it may not be able to use it.",
        "own_sting_plan",
    ),
    _Test(
        "condition",
        lambda s: s.signal == "landline",
        "The watcher stands where the landline is reached in a minute.",
        "A phone indoors is no phone at the nest.",
        "own_sting_plan",
    ),
    _Test(
        "condition",
        lambda s: s.eye_water < eye_litres(),
        f"Name a tap or hose within reach, or bring {eye_litres():g} litres for an eye.",
        "Hornets can spray venom, and washing takes 15 minutes or more.",
        "eyewash_wac",
    ),
)

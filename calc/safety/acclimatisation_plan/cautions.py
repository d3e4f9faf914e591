"""What a reader must know before the numbers of "Getting used to the heat"."""

from __future__ import annotations

from calc import tables
from calc.declare import Caution
from calc.safety.levels import caution, note, stop

HELD_BACK = ("today_minutes", "today_share", "full_from", "spells", "on_site", "plan")
"""Results that a stop withholds."""


def cautions(person: str, state: str, *, no_minutes: bool) -> list[Caution]:
    """Return the cautions of one run, three or more of them in every run."""
    made = []
    if state in _STOPS:
        made.append(_STOPS[state])
    if no_minutes:
        made.append(_NO_MINUTES)
    if state == "low":
        made.append(_LOW)
    made.append(_USED if person == "used" else _FIRST_DAYS)
    if person in _DIFFER:
        made.append(_DIFFER[person])
    if person == "new_suit":
        made.append(_SUIT)
    return [*made, _HOUR, _JURISDICTION]


_STOPS = {
    "ill": stop(
        "Do not work in heat today.",
        "Fever, vomiting and diarrhoea take the water and the cooling that heat asks for.",
        "niosh_risk_factors_2017",
        HELD_BACK,
    ),
    "signs": stop(
        "Do not work in heat. See a doctor first, and start again from day 1 when cleared.",
        "Someone with heat illness bears less heat afterwards.",
        "niosh_risk_factors_2017",
        HELD_BACK,
    ),
}
_NO_MINUTES = stop(
    "Do not start: the heat limit leaves no work minutes in this hour.",
    "“Heat in the suit” gave zero; no schedule of days changes that.",
    "niosh_2016",
    HELD_BACK,
)
_LOW = caution(
    "Take the day's lightest work, or leave the heat to someone else.",
    "Lack of sleep, alcohol in the last 24 hours and missed meals lower what you bear.",
    "niosh_risk_factors_2017",
)
_FIRST_DAYS = caution(
    "Nobody works alone in these days, and somebody watches you the whole time.",
    "Nearly half of the deaths from heat at work fall on the first day, most in the first week.",
    "niosh_osha_acclimatization",
)
_USED = caution(
    "You count as new again after a week away, in the first hot spell and in another suit.",
    "What the body learned in a week of heat it loses again.",
    "acclimatisation_ours",
)
_FIRST = tables.row("acclimatization", "day_1")["new"]
_HIGHER = ", ".join(
    f"{row['returning']:.0f}" for row in tables.rows("acclimatization") if row["key"] != "day_5"
)

_DIFFER = {
    "back": caution(
        f"The two bodies differ. OSHA starts people back from a long absence at {_FIRST:.0f} "
        f"percent. NIOSH prints {_HIGHER} percent for people who know the job. This plan takes "
        f"{_FIRST:.0f}.",
        "The lower start costs a short day, the higher one can cost more.",
        "osha_acclimatizing",
    ),
    "hot_spell": caution(
        f"OSHA prints {_HIGHER} percent for experienced people in a sudden hot spell. This plan "
        f"starts at {_FIRST:.0f} percent. That is our choice, the more careful one.",
        "After a cool spring the body has lost what it learned last summer.",
        "acclimatisation_ours",
    ),
}
_SUIT = note(
    "Wear the suit at home first: dress, walk, climb a stair, undress.",
    "Additional clothing counts as a change that asks for getting used to.",
    "niosh_osha_acclimatization",
)
_HOUR = caution(
    "These are minutes of the day. The work and rest minutes of each hour hold as well, and "
    "the shorter one wins.",
    "A share of the day says nothing about one hot hour.",
    "niosh_2016",
)
_JURISDICTION = note(
    "The schedule is a recommendation of NIOSH and OSHA, United States. Another body, law or "
    "doctor may ask for more days.",
    "It is made for healthy workers.",
    "niosh_osha_acclimatization",
)

"""What a reader must know before the numbers of "Sting plan"."""

from __future__ import annotations

from calc import rules
from calc.declare import Caution
from calc.safety.levels import caution, note
from calc.safety.sting_plan.rules import Site

HELD_BACK = ("check_in", "conditions")
"""Results that a stop withholds: all that would read as leave to go."""


def standing(site: Site, reaction: str, area: str) -> list[Caution]:
    """Return the cautions of one run beside its stops, at least six in every run."""
    made = [_SIGNS, _POSTURE, _MEDICINE]
    if site.late:
        made.append(_LATE)
    if reaction in {"none", "local"}:
        made.append(_FIRST)
    if area != "minutes":
        made.append(_MEANS)
    if site.adrenaline in {"expired", "hot"}:
        made.append(_OLD)
    if site.home_at_risk:
        made.append(_HOME)
    return [*made, _EYE, _MANY, _JURISDICTION]


_SIGNS = caution(
    rules.text("sting_emergency", "signs", "adrenaline", "suit"),
    "Low pressure or a tight throat after a sting is anaphylaxis, with or without an itchy rash; "
    "waiting for one costs the time.",
    "ascia_acute_2024",
)
_POSTURE = caution(
    rules.text("sting_emergency", "out", "flat"),
    "An upright posture is a feature of the fatal cases.",
    "turner_2017",
)
_MEDICINE = caution(
    "Adrenaline is a prescription medicine. The prescription, the device's label and the "
    "person's own plan lead; clinicians have the last word.",
    "Bands on labels differ between countries; nothing here is a dose advice.",
    "us_injector_label",
)
_LATE = caution(
    "Help comes no sooner than the middle time to arrest: until then you have only what is on "
    "site.",
    "The ambulance alone is not a plan here.",
    "pumphrey_2000",
)
_FIRST = caution(
    "No strong reaction so far is no promise: in a series of deaths earlier severe reactions were "
    "uncommon, and they came within minutes.",
    "A first strong reaction has to be planned for.",
    "johansson_1991",
)
_MEANS = note(
    "The ambulance time is a mean of the United States in 2015. In the country about one call in "
    "ten waits half an hour. Ask the local service.",
    "From 911 call to arrival, without noticing and walking in.",
    "mell_2017",
)
_OLD = caution(
    "This device does not count in the plan. In the emergency itself: "
    + rules.text("sting_emergency", "old"),
    "Age and heat spoil adrenaline, but a little is better than none.",
    "simons_2000",
)
_HOME = caution(
    "Someone near may react strongly: their plan, their device and a trained person are with them "
    "before the first contact.",
    "The zone keeps most insects, not all of them, away.",
    "own_sting_plan",
)
_EYE = caution(
    rules.text("eye_venom"),
    "Sprayed hornet venom has cost sight although it was washed out.",
    "hirano_2020",
)
_MANY = caution(
    rules.text("many_stings"),
    "From 20 hornet stings on organ harm is described, and some died of fewer: the numbers are "
    "near the lowest published, not below all of them.",
    "own_sting_rule",
)
_JURISDICTION = note(
    "Times, bands and hours are of the bodies and years named; your country's guideline, law on "
    "carrying adrenaline and emergency service may differ and then lead.",
    "Information from named texts, no medical advice.",
    "own_sting_plan",
)

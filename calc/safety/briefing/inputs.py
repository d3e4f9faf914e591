"""What "Before you start" asks for: inputs of the other calculators, each once."""

from __future__ import annotations

from calc.declare import Calculator, Choice, Given, Input, choice, number, shared
from calc.safety.acclimatisation_plan import acclimatisation_plan
from calc.safety.heat_in_suit import heat_in_suit
from calc.safety.keep_away import keep_away
from calc.safety.ladder_and_lines import ladder_and_lines
from calc.safety.noise_dose import noise_dose
from calc.safety.sting_plan import sting_plan

_NEW = ("person", ("new_heat", "new_suit", "hot_spell", "back"))
_UP = ("ladder", ("up",))
_SAW = ("saw", ("used",))
_WORN = ("protector", ("foam", "plugs", "muffs"))


def _of(calculator: Calculator, name: str, *without: str) -> Input:
    """Return an input of another calculator, without some of its options."""
    found = next(each for each in calculator.inputs if each.name == name)
    if not isinstance(found, Choice):
        return found
    options = tuple(each for each in found.options if each.value not in without)
    return Choice(name=name, label=found.label, meaning=found.meaning, options=options)


class Inputs(Given):
    """The fewest that decide a day; then people and things, weather and work, if they are known."""

    reaction: str = shared(_of(sting_plan, "reaction"), example="local")
    response: float | None = shared(
        _of(sting_plan, "response"),
        meaning="Minutes from the call to your side; take the slow case.",
    )
    helpers: int = shared(_of(sting_plan, "helpers"), origin="asked")
    adrenaline: str = choice(
        "Adrenaline on site",
        "As prescribed, out of the vehicle, in the shade.",
        [
            ("two", "Two devices, in date and cool"),
            ("one", "One device, in date and cool"),
            ("old", "Out of date, or was hot"),
            ("none", "None"),
        ],
        example="two",
    )
    ladder: str = choice(
        "Ladder",
        "For the capture or to look in; no saw and no heavy piece from it.",
        [("none", "No ladder"), ("up", "Someone climbs")],
        example="none",
    )
    trained: str | None = shared(
        _of(sting_plan, "trained"),
        origin="equipment",
        only_if=("adrenaline", ("two", "one", "old")),
        optional=True,
        example="helper",
    )
    protector: str | None = shared(
        _of(noise_dose, "protector", "both"), origin="equipment", only_if=_SAW, example="foam"
    )
    nrr: float | None = shared(
        _of(noise_dose, "nrr"), origin="equipment", only_if=_WORN, example=25
    )
    area: str = shared(
        _of(sting_plan, "area"),
        origin="usual",
        usual="minutes",
        usual_source="own_sting_plan",
        example="suburban",
    )
    home_reaction: str = shared(
        _of(sting_plan, "home_reaction"),
        origin="usual",
        usual="unknown",
        usual_source="own_sting_plan",
        example="none",
    )
    disturbance: str = shared(
        _of(keep_away, "disturbance"),
        origin="usual",
        usual="working",
        usual_source="common_practice",
    )
    colony: str = shared(
        _of(keep_away, "colony"),
        meaning="Late means the last two months before the first hard frost. A nest disturbed in "
        "the last days counts as large.",
        origin="usual",
        usual="large",
        usual_source="own_zones",
        example="grown",
    )
    work: str = shared(
        _of(heat_in_suit, "work", "own"),
        origin="usual",
        usual="high",
        usual_source="own_reasoning",
        example="moderate",
    )
    saw: str = choice(
        "Saw",
        "After the catch, by someone trained; the suit does not stop a chain.",
        [("none", "No saw"), ("used", "Someone saws")],
        origin="usual",
        usual="none",
        usual_source="common_practice",
    )
    group: str | None = shared(
        _of(keep_away, "group"), origin="extra", optional=True, example="yellowjacket"
    )
    around: str | None = choice(
        "People, animals and ways around",
        "Told, in, counted; paths and roads within the outer zone closed.",
        [("done", "All told, in, and closed"), ("open", "Not yet, or not sure")],
        origin="extra",
        optional=True,
        example="done",
    )
    signal: str | None = shared(
        _of(sting_plan, "signal"), origin="extra", optional=True, example="mobile"
    )
    health: str | None = shared(
        _of(sting_plan, "health"), origin="extra", optional=True, example="none"
    )
    home_place: str | None = shared(
        _of(sting_plan, "home_place"),
        origin="extra",
        only_if=("home_reaction", ("systemic", "unknown")),
        optional=True,
        example="away",
    )
    air_temperature: float | None = shared(
        _of(heat_in_suit, "air_temperature"),
        origin="extra",
        only_if=None,
        optional=True,
        plausible=(10, 38),
        example=26,
    )
    humidity: float | None = shared(
        _of(heat_in_suit, "humidity"),
        origin="extra",
        only_if=None,
        optional=True,
        plausible=(30, 95),
        example=55,
    )
    sun: str | None = shared(
        _of(heat_in_suit, "sun", "radiation"), origin="extra", optional=True, example="light_cloud"
    )
    wind: float | None = shared(
        _of(heat_in_suit, "wind"),
        origin="extra",
        only_if=None,
        optional=True,
        plausible=(0, 5),
        example=1,
    )
    person: str | None = shared(
        _of(acclimatisation_plan, "person"), origin="extra", optional=True, example="new_suit"
    )
    day: int | None = shared(
        _of(acclimatisation_plan, "day"),
        origin="extra",
        only_if=_NEW,
        plausible=(1, 7),
        example=1,
    )
    full_minutes: float | None = shared(
        _of(acclimatisation_plan, "full_minutes"),
        origin="extra",
        only_if=_NEW,
        plausible=(60, 240),
        example=120,
    )
    planned_minutes: float | None = number(
        "Planned work in the suit",
        "All work periods together, without the rests.",
        "min",
        low=1,
        high=480,
        why="more than a working day is no plan",
        origin="extra",
        optional=True,
        plausible=(20, 180),
        example=40,
        step=5,
    )
    saw_minutes: float | None = shared(
        _of(noise_dose, "saw_minutes"), origin="extra", only_if=_SAW, low=1, example=15
    )
    support_height: float | None = shared(
        _of(ladder_and_lines, "support_height"), origin="extra", only_if=_UP, example=4
    )
    line_distance: float | None = shared(
        _of(ladder_and_lines, "line_distance"), origin="extra", only_if=_UP, example=18
    )

"""Inputs of "Before you start": those of the other calculators, each asked once."""

from __future__ import annotations

from dataclasses import replace

from calc.declare import Choice, Count, Input, Number, Option
from calc.safety import keep_away_forms, sting_plan_inputs
from calc.safety.acclimatisation_plan import acclimatisation_plan
from calc.safety.heat_in_suit import heat_in_suit
from calc.safety.ladder_and_lines import ladder_and_lines
from calc.safety.noise_dose import noise_dose


def _number(inputs: tuple[Input, ...], name: str) -> Number:
    found = next(each for each in inputs if each.name == name)
    if not isinstance(found, Number):
        raise TypeError(name)
    return found


def _choice(inputs: tuple[Input, ...], name: str) -> Choice:
    found = next(each for each in inputs if each.name == name)
    if not isinstance(found, Choice):
        raise TypeError(name)
    return found


def _without(choice: Choice, *values: str) -> tuple[Option, ...]:
    return tuple(option for option in choice.options if option.value not in values)


_HEAT, _PLAN = heat_in_suit.inputs, acclimatisation_plan.inputs
_SUN, _WORK = _choice(_HEAT, "sun"), _choice(_HEAT, "work")
_NEW = ("person", ("new_heat", "new_suit", "hot_spell", "back"))
_UP = ("ladder", ("up",))
_SAW = ("saw", ("used",))
_PROTECTOR = _choice(noise_dose.inputs, "protector")

INPUTS: tuple[Input, ...] = (
    replace(_number(_HEAT, "air_temperature"), only_if=None, usual=26),
    replace(_number(_HEAT, "humidity"), only_if=None, usual=55),
    replace(_SUN, only_if=None, options=_without(_SUN, "radiation"), usual="light_cloud"),
    replace(_number(_HEAT, "wind"), only_if=None, usual=1),
    replace(_WORK, options=_without(_WORK, "own"), usual="moderate"),
    replace(_choice(_PLAN, "person"), usual="new_suit"),
    replace(_number(_PLAN, "day"), only_if=_NEW, usual=1),
    replace(_number(_PLAN, "full_minutes"), only_if=_NEW, usual=120),
    Number(
        name="planned_minutes",
        label="Planned work in the suit",
        meaning="All work periods together, without the rests.",
        unit="min",
        low=1,
        high=480,
        why="more than a working day is no plan",
        source="own_reasoning",
        usual=40,
        step=5,
    ),
    Choice(
        name="saw",
        label="Saw",
        meaning="After the catch, by someone trained; the suit does not stop a chain.",
        options=(
            Option(value="none", label="No saw"),
            Option(value="used", label="Someone saws"),
        ),
        usual="none",
    ),
    replace(_number(noise_dose.inputs, "saw_minutes"), only_if=_SAW, low=1, usual=15),
    replace(_PROTECTOR, only_if=_SAW, options=_without(_PROTECTOR, "both"), usual="foam"),
    replace(_number(noise_dose.inputs, "nrr"), only_if=_SAW, usual=25),
    Choice(
        name="ladder",
        label="Ladder",
        meaning="For the capture or to look in; no saw and no heavy piece from it.",
        options=(
            Option(value="none", label="No ladder"),
            Option(value="up", label="Someone climbs"),
        ),
        usual="none",
    ),
    replace(_number(ladder_and_lines.inputs, "support_height"), only_if=_UP, usual=4),
    replace(_number(ladder_and_lines.inputs, "line_distance"), only_if=_UP, usual=18),
    keep_away_forms.GROUP,
    keep_away_forms.DISTURBANCE,
    keep_away_forms.COLONY,
    Choice(
        name="around",
        label="People, animals and ways around",
        meaning="Told, in, counted; paths and roads within the outer zone closed.",
        options=(
            Option(value="done", label="All told, in, and closed"),
            Option(value="open", label="Not yet, or not sure"),
        ),
        usual="done",
    ),
    Count(
        name="helpers",
        label="Adults who watch",
        meaning="Outside the zone, with the phone.",
        low=0,
        high=10,
        why="a job for one small team",
        source="own_sting_plan",
        usual=1,
    ),
    sting_plan_inputs.REACTIONS,
    sting_plan_inputs.HEALTH,
    sting_plan_inputs.HOME_REACTION,
    _choice(sting_plan_inputs.INPUTS, "home_place"),
    Choice(
        name="adrenaline",
        label="Adrenaline on site",
        meaning="As prescribed, out of the vehicle, in the shade.",
        options=(
            Option(value="two", label="Two devices, in date and cool"),
            Option(value="one", label="One device, in date and cool"),
            Option(value="old", label="Out of date, or was hot"),
            Option(value="none", label="None"),
        ),
        usual="two",
    ),
    replace(sting_plan_inputs.TRAINED, only_if=("adrenaline", ("two", "one", "old"))),
    sting_plan_inputs.SIGNAL,
    sting_plan_inputs.AREA,
    sting_plan_inputs.RESPONSE,
)
"""What the reader gives, in the order of the form."""

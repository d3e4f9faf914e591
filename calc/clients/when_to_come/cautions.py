"""What "When to come" says: verdict, stops and cautions."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from calc.clients.when_to_come.day import Plan
from calc.clients.when_to_come.sun import clock
from calc.declare import Caution
from calc.safety.heat_estimate import CALM

HIDDEN = ("arrive", "begin", "finish", "latest")
"""Results that a stop withholds."""

WHERE = {
    "night": "at home: before or after their flying hours",
    "cool": "mostly at home: it is too cool for many",
    "most_out": "out foraging: middle of the day",
    "flying": "coming and going",
}
SHORT = {"night": "at home", "cool": "at home, cool", "most_out": "out", "flying": "both"}
"""The same for a column on a phone."""


@dataclass(frozen=True, slots=True)
class Findings:
    """What the words hang on."""

    animal: str
    method: str
    height: bool
    clock_off: float  # hours by which the clock differs from the sun's
    sun_missing: bool  # no sunrise and sunset on the date
    why_not: str  # "", or what is in the way: heat, light, method
    best: Plan | None
    dim: bool  # twilight or brighter to the end
    forecast_end: float
    by_model: bool  # three values of the forecast, not its hours
    short: bool  # fewer humidities or winds than temperatures, and more than one
    calm: bool  # calm air in a block with the sun up


def verdict(found: Findings) -> str:
    """Return the answer in one or two sentences."""
    best = found.best
    if best is None:
        return _NO_TIME[found.why_not]
    text = f"Arrive at {clock(best.arrive)}, first catch at {clock(best.begin)}: they are "
    text += f"{WHERE[best.where]}."
    if best.least < 60:
        text += f" The heat leaves {best.least} min of work in an hour."
    return text


_NO_TIME = {
    "heat": "No time on this date fits: every one is over the published heat limit.",
    "light": "No time on this date fits: the work needs daylight, and by day they are not "
    "where you want them.",
    "method": "No time on this date fits: they are not where you want them for long enough.",
    "hours": "The forecast does not reach the hours that fit.",
}


def cautions(found: Findings) -> list[Caution]:
    """Return stops, cautions and notes of one run."""
    return [*_stops(found), *_about_the_time(found), *_about_the_data(found), *_ALWAYS]


def _stops(found: Findings) -> Iterator[Caution]:
    if found.best is not None:
        return
    if found.why_not == "heat":
        yield _stop(
            "Do not go on this date: every time that fits is over the published heat limit in "
            "this suit.",
            "The effective WBGT leaves no minute of this work; see Heat in the suit.",
            "niosh_2016",
        )
    elif found.why_not == "light":
        yield _stop(
            "No ladder, roof or saw work in failing light. Work by day and wait for those that "
            "are out, or choose a cool morning.",
            "In full daylight of this forecast they are not all where you want them.",
            "failing_light",
        )
    elif found.why_not == "hours":
        yield _stop(
            "Type the forecast for the whole day: the hours that could fit are not in it.",
            "Outside the blocks given, neither heat nor flight can be told.",
            "own_reasoning",
        )
    elif found.animal == "crabro" and found.method == "home":
        yield _stop(
            "Dark does not keep European hornets in: they fly at night. Choose the middle of the "
            "day and catch those that return, or a cool morning.",
            "Workers fly in dim twilight and some all night.",
            "crabro_night",
        )
    else:
        yield _stop(
            "Choose another day, a shorter job or the other way: they are not where you want "
            "them for long enough.",
            "From first catch to leaving, the animals must stay where the method wants them.",
            "own_reasoning",
        )


def _about_the_time(found: Findings) -> Iterator[Caution]:
    best = found.best
    if best is None:
        return
    if best.least < 60:
        yield Caution(
            level="caution",
            text=f"Steady work is over the published heat limit: at most {best.least} min in any "
            "hour, the rest of it in shade with the suit open.",
            reason="The least over the planned time; see Heat in the suit for the rest.",
            source="niosh_2016",
        )
    if not found.dim:
        yield Caution(
            level="caution",
            text="It will be dark before you are done. Bring two lamps, mark the trip hazards by "
            "day, and keep off ladders, roofs and saws.",
            reason="After civil dusk the ground cannot be seen; a lamp on the head draws wasps.",
            source="failing_light",
        )
    if best.where == "cool":
        yield Caution(
            level="caution",
            text="They are at home because it is cool, and they are awake. A knock brings them "
            "all out.",
            reason="One aerial wasp is as active at 2 °C (36 °F) as at 20 °C (68 °F), and "
            "attackers run hotter than foragers.",
            source="heinrich_cold",
        )
    if best.finish > found.forecast_end:
        yield Caution(
            level="caution",
            text="The job runs past the forecast you typed; its last block is used for the rest.",
            reason="Heat and flight after it are a guess.",
            source="own_reasoning",
        )


def _about_the_data(found: Findings) -> Iterator[Caution]:
    if found.animal == "crabro":
        yield Caution(
            level="caution",
            text="European hornets fly in the dark and come to light: no lamp on you that you can "
            "stand beside.",
            reason="Their eyes are not made for night; they fly all the same.",
            source="crabro_night",
        )
    if found.by_model:
        yield Caution(
            level="caution",
            text="The hours are a model's, from the lowest and the highest. Under cloud, or when "
            "the weather turns, they can be off by more than 2 °C (4 °F): look at the thermometer.",
            reason="Its error was below 2 °C at five stations, over whole years.",
            source="cesaraccio_2001",
        )
    if found.clock_off > 3.5:
        yield Caution(
            level="caution",
            text=f"Clock and longitude do not match: they are {found.clock_off:.1f} h apart. "
            "Check the sign of the longitude and the clock.",
            reason="East is plus. Summer time counts.",
            source="clock_offset_ours",
        )
    if found.short:
        yield Caution(
            level="caution",
            text="Fewer humidities or winds than temperatures: the last one holds for the rest of "
            "the day. Check that none is missing in between.",
            reason="One left out shifts all that follow.",
            source="arithmetic",
        )
    if found.calm:
        yield Caution(
            level="caution",
            text="Calm air in the forecast: it can be much hotter there than estimated. Measure "
            "on the spot, and see the range in “Heat in the suit”.",
            reason=f"At {CALM:g} m/s or less the estimate changes fastest with the wind.",
            source="heat_calm_ours",
        )
    if found.sun_missing:
        yield Caution(
            level="caution",
            text="On this date the sun does not both rise and set here: no window is built on it.",
            reason="What the animals do in such light is not known to us.",
            source="usno_rise_set",
        )


def _stop(text: str, reason: str, source: str) -> Caution:
    return Caution(level="stop", text=text, reason=reason, source=source, hides=HIDDEN)


_ALWAYS = (
    Caution(
        level="caution",
        text="Rain is no quiet window: traffic falls by about a third and is back at once. "
        "Wet rungs and wet power leads stop the job.",
        reason="Seen at nests of one yellowjacket.",
        source="rain_traffic",
    ),
    Caution(
        level="caution",
        text="Cold and dark do not disarm a colony: full protection at every hour, and a second "
        "adult outside the zone.",
        reason="The nest is heated, and touch brings them out at night as well.",
        source="heinrich_cold",
    ),
    Caution(
        level="note",
        text="Sun times are for a level horizon. A hill or a wood brings dusk earlier.",
        reason="The printed times assume that nothing stands in the way.",
        source="horizon_note",
    ),
    Caution(
        level="note",
        text="Some foragers stay out: for hours, or overnight. Wait for them with a box, or "
        "come back.",
        reason="See Waiting for the stragglers.",
        source="absent_shares",
    ),
    Caution(
        level="note",
        text="No wind limit for a calm colony is in print. Ladder, roof and tree rules decide.",
        reason="Local rules for work at height have the last word.",
        source="no_wind_limit",
    ),
)

"""What is said about stragglers: the next step and the cautions."""

from __future__ import annotations

import math
from collections.abc import Iterator, Sequence

from calc import rules
from calc.declare import Caution
from calc.method.waiting_for_stragglers.fit import Fit, Watch
from calc.tables import row

LONG_WAIT = 180.0
"""Minutes beyond which nobody should stand and wait."""

PRACTICE_QUIET = 20.0
"""Minutes of quiet after which people commonly stop [quiet_practice]."""

_CLOCKS = {
    "rain": (
        "It rains, so the minutes do not count. Stop the clock, and start it again when they fly.",
        "In rain fewer German yellowjackets flew, and they flew again at once when it stopped. A "
        "quiet spell in rain says nothing.",
    ),
    "cold": (
        "It is too cold to fly, so the minutes do not count. Wait for a warmer hour.",
        "No yellow-legged hornet was seen outside below 10 °C; those out sit where they are.",
    ),
    "dusk": (
        "It is dusk or dark, so the minutes do not count. Come back at dawn.",
        "Flights of yellow-legged hornets fall off at dusk by themselves. Some stay out overnight, "
        "and any touch at night brought workers out.",
    ),
}


def clock_stop(weather: str, hides: Sequence[str]) -> Caution | None:
    """Return the stop for weather or light in which nobody flies, or ``None``."""
    if weather not in _CLOCKS:
        return None
    text, reason = _CLOCKS[weather]
    return Caution(
        level="stop", text=text, reason=reason, source="flight_limits", hides=tuple(hides)
    )


def nothing_stop(hides: Sequence[str]) -> Caution:
    """Return the stop for a watch in which nobody came home."""
    return Caution(
        level="stop",
        text="Nobody came home, so there is no trip time and no number. Wait longer, and check "
        "that you watch the right hole.",
        reason="An empty watch looks the same when none is out and when the trips are long.",
        source="straggler_model",
        hides=tuple(hides),
    )


def no_thinning_stop(hides: Sequence[str]) -> Caution:
    """Return the stop for returns that do not thin out."""
    return Caution(
        level="stop",
        text="The returns do not thin out, so there is no number. Wait longer, and catch those "
        "that come home.",
        reason="As long as they come at the same rate, any number may be out; or some still leave "
        "by a second hole.",
        source="straggler_removal",
        hides=tuple(hides),
    )


def always(animal: str) -> Iterator[Caution]:
    """Yield what holds for every wait."""
    night = row("trip_times", "night")["absent"] + row("trip_times", "long")["absent"]
    yield Caution(
        level="caution",
        text=f"{rules.text('waiting', 'outside', 'in', 'clock')} "
        f"{rules.text('never_empty', 'number')}",
        reason="The wait can last longer than anyone bears a closed suit, and the model knows only "
        "ordinary trips.",
        source="straggler_model",
    )
    yield Caution(
        level="caution",
        text=f"Some stay out for hours or overnight. {rules.text('waiting', 'box')}",
        reason=f"Of tagged yellow-legged hornets away at one moment, about {night:.0f} % were on "
        "trips of more than an hour.",
        source="absent_shares",
    )
    if animal == "crabro":
        yield Caution(
            level="caution",
            text="European hornets also fly at night. There is no hour at which all are home.",
            reason="They were seen to fly in dim light and by moonlight.",
            source="crabro_night",
        )
    if animal != "velutina":
        yield Caution(
            level="note",
            text="The comparison is with yellow-legged hornets; no trip times of your species "
            "were found.",
            reason="Your own returns decide the numbers; the comparison does not.",
            source="poidatz_2018_trips",
        )


def about_fit(watch: Watch, found: Fit) -> Iterator[Caution]:
    """Yield cautions about few returns, short watches and long trips."""
    if found.mean is None:
        return
    if watch.home < 6:
        yield Caution(
            level="caution",
            text=f"Only {watch.home} came home: the trip time is rough. Go by the upper end.",
            reason="The limits are wide with few returns.",
            source="censored_exponential",
        )
    if watch.still_out is None and (found.out_high is None or found.out_high > watch.home):
        yield Caution(
            level="caution",
            text="The returns thin out too little to say how many are out at most. Watch longer.",
            reason="A slow thinning fits a few short trips and many long ones.",
            source="straggler_removal",
        )
    if found.mean > 60:
        yield Caution(
            level="caution",
            text="The trips look longer than an hour. Check for a second hole or a way round you.",
            reason="Of the trips of tagged hornets 96 % took under an hour.",
            source="poidatz_2018_trips",
        )


def about_quiet(watch: Watch, mean: float | None) -> Iterator[Caution]:
    """Yield a note that compares the quiet time with what people commonly do."""
    if mean is None or mean <= 0:
        return
    missed = 100 * math.exp(-PRACTICE_QUIET / mean)
    if missed >= 5:
        yield Caution(
            level="note",
            text=f"Twenty quiet minutes are not enough here: one on an ordinary trip is still out "
            f"after them in about {missed:.0f} of 100 cases.",
            reason="Many stop after 20 quiet minutes. That fits short trips only.",
            source="quiet_practice",
        )


def next_step(watch: Watch, need: float) -> str:
    """Return what to do, from the minutes of flying weather still needed."""
    late = "Those out for hours or overnight come later: leave a catch box, or come back at dawn."
    if need <= 0:
        return f"Go on: it was quiet for long enough. {late}"
    if need > LONG_WAIT:
        return f"Stop: do not stand and wait for this, it would take hours. {late}"
    minutes = 5 * math.ceil(need / 5)
    return (
        f"Wait about {minutes} more minutes of flying weather. Start the quiet clock again at "
        "each return, and enter the new returns."
    )

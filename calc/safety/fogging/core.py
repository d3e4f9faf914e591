"""The core of "Fogging": from what was asked to what is answered."""

from __future__ import annotations

from dataclasses import replace
from typing import Any

from calc import tables
from calc.declare import Answer, Axis, Chart, Series
from calc.safety import humidity as moist_air
from calc.safety.fogging.cautions import Findings, cautions
from calc.safety.fogging.inputs import Inputs
from calc.safety.fogging.model import Setup, habit

_CHANGES: tuple[tuple[str, dict[str, Any], str], ...] = (
    ("run a fan", {"fan": True}, "draws dust in"),
    ("seal the nose, breathe down", {"breath": "down"}, "hard work breathes hard"),
    ("dry the face, wear a sweat band", {"sweat": "dry"}, "until you sweat again"),
    ("goggle with indirect vents", {"eyewear": "indirect"}, "fogs over a wet face"),
    ("turn out of the wind", {"wind": "calm"}, "the face gets hotter"),
    ("warm the lens in the suit first", {"stored": None}, "for the first minutes"),
)
"""Changes of the table: what it is, what it sets, and its limit."""

_UNCOUNTED = (
    ("anti-fog lens, mark N or X", "buys time, not counted here"),
    ("mesh visor instead", "cannot fog, stops no spray: only over splash goggles"),
)
"""Changes without a figure."""


def core(x: Inputs) -> Answer:
    """Compare lens and dew point; see the declaration for units."""
    air_dew = moist_air.dew_point(x.air_temperature, x.humidity)
    if x.eyewear == "mesh":
        found = _findings(None, x.eyewear, x.breath)
        return Answer(
            values={"verdict": verdict(found), "air_dew_point": air_dew, "options": _no_figures()},
            cautions=cautions(found),
        )
    setup = Setup(
        air=x.air_temperature,
        rh=x.humidity,
        eyewear=x.eyewear,
        breath=x.breath or "normal",
        sweat=x.sweat or "damp",
        fan=x.fan == "yes",
        wind=x.wind,
        stored=x.stored,
        worn=x.worn or 0.0,
        own_breath=None if x.breath_share is None else x.breath_share / 100,
        own_sweat=None if x.sweat_share is None else x.sweat_share / 100,
    )
    found = _findings(setup, x.eyewear, x.breath)
    options = _options(setup)
    values = {
        "verdict": verdict(found),
        "margin": setup.margin,
        "best": _best(options),
        "options": options + _no_figures(),
        "lens": setup.lens,
        "lens_settled": setup.settled,
        "dew_point": setup.dew_point,
        "air_dew_point": air_dew,
        "clear_after": setup.clear_after,
        "breath_behind": 100 * setup.shares[0],
        "sweat_behind": 100 * setup.shares[1],
    }
    return Answer(values=values, cautions=cautions(found), charts=[_chart(setup)])


def verdict(found: Findings) -> str:
    """Say whether the lens is expected to fog; never a promise."""
    if found.margin is None:
        return "No lens, so nothing fogs, and nothing stops a spray."
    if found.margin < 0:
        return "Expected to fog: change the setup before you go near."
    if found.margin < found.error:
        return "May fog: the room left is less than the error of the estimate."
    return "Not expected to fog as long as nothing changes."


def _findings(setup: Setup | None, eyewear: str, breath: str | None) -> Findings:
    return Findings(
        eyewear=eyewear,
        margin=None if setup is None else setup.margin,
        error=habit("error"),
        stops_spray=tables.row("fog_eyewear", eyewear)["splash"] == "yes",
        cold_lens=setup is not None and setup.lens < setup.settled - 0.1,
        clear_after=None if setup is None else setup.clear_after,
        mask=breath == "mask",
    )


def _options(setup: Setup) -> list[dict[str, Any]]:
    made = []
    for change, sets, limit in _CHANGES:
        other = replace(setup, **sets)
        if "breath" in sets or "sweat" in sets:
            # Shares typed in by the reader are halved as the habit would.
            other = replace(other, own_breath=_less(setup, sets, "breath"),
                            own_sweat=_less(setup, sets, "sweat"))  # fmt: skip
        gain = other.margin - setup.margin
        if gain > 0.05:
            told = f"{change} ({limit})"
            made.append({"change": told, "margin": other.margin, "gain": gain})
    return sorted(made, key=lambda row: -row["gain"])


def _less(setup: Setup, sets: dict[str, Any], part: str) -> float | None:
    own = setup.own_breath if part == "breath" else setup.own_sweat
    if own is None or part not in sets:
        return own
    return own * habit(sets[part])


def _no_figures() -> list[dict[str, Any]]:
    return [
        {"change": f"{change} ({limit})", "margin": None, "gain": None}
        for change, limit in _UNCOUNTED
    ]


def _best(options: list[dict[str, Any]]) -> str:
    if not options:
        return "Nothing in the list gains much: wait for drier air, or work in short periods."
    return f"{str(options[0]['change']).split(' (')[0].capitalize()}: that gains most."


def _chart(setup: Setup) -> Chart:
    x = tuple(float(each) for each in range(0, 101, 5))
    told = [replace(setup, rh=max(each, 5.0)) for each in x]
    return Chart(
        name="humidity",
        title="Lens and dew point by humidity",
        alt=(
            "The dew point behind the lens rises with humidity; the lens does not. Now: lens "
            f"{setup.lens:.1f} and dew point {setup.dew_point:.1f} °C."
        ),
        x=Axis(label="Relative humidity", unit="percent", low=0, high=100),
        y=Axis(label="Temperature", unit="degC", customary="degF"),
        series=(
            Series(label="dew point behind it", x=x, y=tuple(each.dew_point for each in told)),
            Series(label="lens", x=(0.0, 100.0), y=(setup.lens, setup.lens), style="dashed"),
            Series(label="now", x=(setup.rh,), y=(setup.dew_point,), style="points"),
        ),
    )

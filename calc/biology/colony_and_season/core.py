"""The core of "Colony size and stage": from date and traffic to stage and workers."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Any

from calc.biology.colony_and_season import cautions as say
from calc.biology.colony_and_season import words
from calc.biology.colony_and_season.charts import year_chart
from calc.biology.colony_and_season.inputs import Inputs
from calc.biology.colony_and_season.results import WORKER_RESULTS
from calc.biology.colony_and_season.size import adults_expected
from calc.biology.colony_and_season.traffic import Rate, rate, workers
from calc.biology.season_calendar import (
    SEXUALS,
    Year,
    days_to_end,
    growth,
    of_day,
    sexuals,
    shift,
    stages,
    year,
)
from calc.declare import Answer, Caution
from calc.tables import load

HORNETS = ("crabro", "velutina", "mandarinia")
"""Animals for which the hornet rule is used."""

_HALF_YEAR = 182


def core(x: Inputs) -> Answer:
    """Compute stage, adults, days to the end and workers by traffic; units in the declaration.

    Raises :class:`InputError` for a day that the month does not have.
    """
    today = x.day_of_year
    here = of_day(today)
    south, mild = x.hemisphere == "south", x.winters == "mild"
    when = shift(here) if south else here
    found = year(x.species)
    on = stages(when, found)
    winged = sexuals(when, found)
    days = _days(today, south, mild, found, on)
    values: dict[str, Any] = {
        "stage": words.stage_text(on, winged),
        "adults_expected": adults_expected(on, x.species, mild, growth(when, found)),
        "days_to_end": days,
        "sexuals": SEXUALS[winged],
        "if_left": words.if_left(x.species, on, days),
        "if_wait": words.if_wait(on, winged),
        "if_taken": words.if_taken(x.species, on, winged),
    }
    cautions = [
        *say.always(),
        *say.about_winter(mild, on),
        *say.about_species(x.species, winged),
        *say.about_dates(found, _column_names()),
    ]
    if x.counts is not None and x.minutes is not None:
        flow = rate(x.counts, x.minutes, x.counted == "both") if sum(x.counts) else None
        values |= _traffic(x.species, flow)
        cautions += _traffic_cautions(x.species, flow, len(x.counts), x.minutes, when)
    return Answer(
        values=values,
        cautions=cautions,
        charts=[year_chart(found, x.species, south, mild, here)],
    )


def _days(
    day: int, south: bool, mild: bool, found: Year, on: list[str]
) -> tuple[int, int | None] | None:
    north = (day + _HALF_YEAR - 1) % 365 + 1 if south else day
    if on == ["over"]:
        return (0, None) if mild else (0, 0)
    ends = days_to_end(north, found)
    if ends is None:
        return None
    return ends[0], None if mild else ends[1]


def _column_names() -> dict[str, str]:
    return {
        key: str(column["label"]).lower()
        for key, column in load("season_calendar")["columns"].items()
    }


def _model(species: str) -> str:
    return "hornet" if species in HORNETS else "vespula"


def _traffic(species: str, flow: Rate | None) -> dict[str, Any]:
    if flow is None:
        return {"traffic": 0.0}
    told = workers(flow, _model(species))
    return {
        "traffic": flow.mean,
        "traffic_interval": (flow.low, flow.high),
        "workers": told.number,
        "workers_other": told.other,
        "workers_range": (told.low, told.high),
    }


def _traffic_cautions(
    species: str, flow: Rate | None, counts: int, minutes: float, when: int
) -> Iterator[Caution]:
    if flow is None:
        yield say.no_traffic_stop(WORKER_RESULTS)
    elif species == "polistes":
        yield say.no_rule_stop(WORKER_RESULTS)
    else:
        yield from say.about_wintering(flow, when)
        yield from say.about_traffic(species, flow, counts, minutes, when)

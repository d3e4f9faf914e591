"""Colony size and stage: the calculator."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Any

from calc.biology import colony_words as say
from calc.biology.colony_charts import year_chart
from calc.biology.colony_forms import INPUTS, OUTPUTS, WORKER_RESULTS
from calc.biology.colony_size import adults_expected
from calc.biology.colony_traffic import Rate, rate, workers
from calc.biology.season_calendar import (
    MONTHS,
    SEXUALS,
    Year,
    days_to_end,
    first_day,
    growth,
    half_month,
    of_day,
    sexuals,
    shift,
    stages,
    year,
)
from calc.declare import Answer, Calculator, Caution
from calc.tables import load

HORNETS = ("crabro", "velutina", "mandarinia")
"""Animals for which the hornet rule is used."""

_HALF_YEAR = 182


def core(
    species: str,
    date_as: str,
    month: str | None,
    half: str | None,
    day: int | None,
    hemisphere: str,
    winters: str,
    counted: str,
    counts: tuple[int, ...] | None,
    minutes: float | None,
) -> Answer:
    """Compute stage, adults, days to the end and workers by traffic.

    Parameters
    ----------
    species : value of the choice
    date_as : ``half_month`` or ``day``
    month, half : month as three letters, ``first`` or ``second``
    day : day of the year
    hemisphere : ``north`` or ``south``
    winters : ``cold`` or ``mild``
    counted : ``in``, ``out``, ``both`` or ``none``
    counts : wasps in each count
    minutes : length of each count

    Returns the :class:`Answer`. Range and sources: the declaration below.
    """
    here, local_day = _date(date_as, month, half, day)
    south, mild = hemisphere == "south", winters == "mild"
    when = shift(here) if south else here
    found = year(species)
    on = stages(when, found)
    winged = sexuals(when, found)
    days = _days(local_day, south, mild, found, on)
    values: dict[str, Any] = {
        "stage": say.stage_text(on, winged),
        "adults_expected": adults_expected(on, species, mild, growth(when, found)),
        "days_to_end": days,
        "sexuals": SEXUALS[winged],
        "if_left": say.if_left(species, on, days),
        "if_wait": say.if_wait(on, winged),
        "if_taken": say.if_taken(species, on, winged),
    }
    cautions = [
        *say.always(),
        *say.about_winter(mild, on),
        *say.about_species(species, winged),
        *say.about_dates(found, _column_names()),
    ]
    if counts is not None and minutes is not None:
        flow = rate(counts, minutes, counted == "both") if sum(counts) else None
        values |= _traffic(species, flow)
        cautions += _traffic_cautions(species, flow, len(counts), minutes, when)
    return Answer(
        values=values,
        cautions=cautions,
        charts=[year_chart(found, species, south, mild, here)],
    )


def _date(date_as: str, month: str | None, half: str | None, day: int | None) -> tuple[int, int]:
    """Return the half-month and the day of the year; the middle day of a half-month."""
    if date_as == "day":
        assert day is not None
        return of_day(day), min(day, 365)
    assert month is not None
    here = half_month(MONTHS.index(month.title()) + 1, half == "second")
    return here, first_day(here) + 7


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


colony_and_season = Calculator(
    name="colony_and_season",
    title="Colony size and stage",
    part="biology",
    purpose="From traffic at the entrance and the date: how many workers, which stage, how long "
    "it still lasts, and what that means for leaving, waiting or taking.",
    inputs=INPUTS,
    outputs=OUTPUTS,
    core=core,
    sources=(
        "malham_1991",
        "perrard_2009_counts",
        "traffic_band",
        "garwood_1936",
        "season_steps",
        "young_colony_size",
        "advice_of_season",
        "wintered_ours",
    ),
    formula=(
        (
            r"W=32.243\,T",
            "workers of a yellowjacket colony from T wasps a minute",
            "malham_1991",
        ),
        (
            r"W=17\,T",
            "hornets in a young nest from T returns a minute",
            "traffic_band",
        ),
        (
            r"\tfrac12\chi^2_{0.025}(2x)\le\mu\le\tfrac12\chi^2_{0.975}(2x+2)",
            "exact limits of the mean of a count x",
            "garwood_1936",
        ),
        (
            r"A_{high}=20\left(\frac{A_{peak}}{20}\right)^{g}",
            "top of the adults to expect on the share g of the way from first workers to peak",
            "young_colony_size",
        ),
        (
            r"\ln f=\sqrt{(\ln 1.6)^2+(\ln f_{count})^2}",
            "factor of the range: our band of the rule joined with the limits of the count",
            "traffic_band",
        ),
    ),
    assumptions=(
        "The counts were made by day, in dry and warm weather, before any disturbance. After one, "
        "traffic says nothing.",
        "All traffic goes through the hole you watched. A second hole makes the colony look small.",
        "The colony is one of the places in the table. Warm springs come weeks earlier.",
        "The colony is of this year. One that lived through a mild winter is far bigger.",
    ),
)

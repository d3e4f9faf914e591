"""The core of "Heat in the suit": from what was asked to what is answered."""

from __future__ import annotations

import math
from typing import Any

from calc import tables, units
from calc.declare import Answer, Chart
from calc.errors import required
from calc.safety import heat_limits
from calc.safety.heat_estimate import Heat, measured_heat, sun_on_level, weather_heat
from calc.safety.heat_in_suit.cautions import Findings, cautions
from calc.safety.heat_in_suit.charts import limits_chart, minutes_chart
from calc.safety.heat_in_suit.inputs import Inputs
from calc.safety.heat_limits import Job

LIMIT_NAMES = {
    "REL": "NIOSH 2016 recommended exposure limit, REL",
    "RAL": "NIOSH 2016 recommended alert limit, RAL",
}
"""What the two limits are called, with body and year."""


def core(x: Inputs) -> Answer:
    """Compare a job in a suit with the published heat limits; see the declaration for units."""
    measured = x.heat_known == "measured"
    shining = 0.0 if measured else sun_on_level(required("sun", x.sun), x.radiation)
    if measured:
        heat = measured_heat(required("measured_wbgt", x.measured_wbgt))
    else:
        heat = weather_heat(
            required("air_temperature", x.air_temperature),
            required("humidity", x.humidity),
            required("wind", x.wind),
            shining,
        )
    added = tables.row("clothing_adjustment", x.clothing).get("adjustment")
    job = Job(
        heat=heat,
        rate=_rate(x),
        added=added,
        at_rest=_at_rest(x, heat, added or 0.0),
        acclimatised=x.acclimatised == "yes",
    )
    found = _findings(x, job, shining)
    values = _values(job) | {"verdict": verdict(found, job.stopped)} | _plan(job, x.planned_minutes)
    return Answer(values=values, cautions=cautions(found), charts=_charts(job))


def verdict(found: Findings, stopped: bool) -> str:
    """Say in words how the job stands to the published limit."""
    if not found.covered:
        return "No published limit can be applied to this suit."
    name = f"NIOSH 2016, {found.limit_name}"
    if stopped:
        return f"Stop: over the published limit ({name}), do not start."
    if found.over:
        return f"Over the published limit ({name}) for steady work: only with the rests below."
    if found.rate_crosses or found.wbgt_crosses:
        return f"Within the published limit ({name}), but only just."
    return f"Within the published limit ({name})."


def _rate(x: Inputs) -> float:
    if x.work == "own":
        return required("metabolic_rate", x.metabolic_rate)
    return float(tables.row("metabolic_rates", x.work)["rate"])


def _at_rest(x: Inputs, heat: Heat, added: float) -> float:
    """Return the effective WBGT at the place of rest, degC."""
    if x.rest == "same":
        return heat.wbgt + added
    # With the suit off or open its adjustment falls away; lighter clothing keeps its gain.
    place = heat.shade if x.rest_wbgt is None else x.rest_wbgt
    return (heat.wbgt if place is None else place) + min(added, 0.0)


def _findings(x: Inputs, job: Job, shining: float) -> Findings:
    still = heat_limits.limit(heat_limits.REST_RATE, job.acclimatised)
    top = job.effective - job.heat.wbgt + job.heat.high
    measured, planned = x.heat_known == "measured", x.planned_minutes
    return Findings(
        clothing=x.clothing,
        acclimatised=job.acclimatised,
        limit_name="REL" if job.acclimatised else "RAL",
        measured=measured,
        in_sun=shining > 0,
        covered=job.added is not None,
        still_over=job.effective > still,
        rest_over=job.at_rest > still,
        minutes=job.minutes(),
        over=job.over,
        rate_crosses=not job.over and job.effective > job.limit(heat_limits.RATE_ERROR),
        wbgt_crosses=not job.over and top > job.limit(),
        top_still_over=top > still,
        planned_over=planned is not None and job.minutes() < 60 and planned > job.minutes(),
        rest_guessed=measured and x.rest == "shade" and x.rest_wbgt is None,
        calm=job.heat.calm,
        wind=x.wind,
        wind_used=job.heat.wind,
    )


def _values(job: Job) -> dict[str, Any]:
    heat, error = job.heat, heat_limits.RATE_ERROR
    return {
        "work_minutes": job.minutes(),
        "rest_minutes": 60 - job.minutes(),
        "work_minutes_range": (job.minutes(error), job.minutes(-error)),
        "effective_wbgt": job.effective,
        "limit": job.limit(),
        "limit_name": LIMIT_NAMES["REL" if job.acclimatised else "RAL"],
        "limit_range": (job.limit(error), job.limit(-error)),
        "margin": job.limit() - job.effective,
        "exposure_limit": heat_limits.exposure_limit(job.rate),
        "alert_limit": heat_limits.alert_limit(job.rate),
        "wbgt": heat.wbgt,
        "wbgt_range": (heat.low, heat.high),
        "wind_used": heat.wind,
        "clothing_adjustment": job.added,
        "rest_effective": job.at_rest,
        "rate": job.rate,
        "water": (_water("least"), _water("usual")),
        "water_most": _water("most"),
        "index": heat.index,
        "index_band": heat.band,
        "wet_bulb": heat.wet_bulb,
        "simplified": heat.simplified,
    }


def _plan(job: Job, planned: float | None) -> dict[str, Any]:
    """Split the planned minutes into periods of one hour's work minutes with rests between."""
    if planned is None or job.stopped:
        return {}
    if job.minutes() == 60:
        return {"planned_spells": 1, "planned_time": planned}
    spells = math.ceil(planned / job.minutes() - 1e-9)
    rests = (spells - 1) * (60 - job.minutes())
    return {"planned_spells": spells, "planned_time": planned + rests}


def _charts(job: Job) -> list[Chart]:
    if job.added is None:
        return []
    made = [limits_chart(job.effective, job.rate)]
    if not job.stopped:
        made.insert(
            0,
            minutes_chart(job.effective, job.at_rest, job.rate, job.minutes(), job.acclimatised),
        )
    return made


def _water(key: str) -> float:
    return units.convert(float(tables.row("water", key)["amount"]), "floz/h", "L/h")

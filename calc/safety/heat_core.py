"""The core of "Heat in the suit": from plain numbers to values, cautions and charts."""

from __future__ import annotations

import math
from dataclasses import dataclass
from typing import Any

from calc import tables, units
from calc.declare import Answer, Chart
from calc.errors import required
from calc.safety import heat_limits
from calc.safety.heat_cautions import Findings, cautions
from calc.safety.heat_charts import limits_chart, minutes_chart
from calc.safety.heat_estimate import Heat, measured_heat, sun_on_level, weather_heat

LIMIT_NAMES = {
    "REL": "NIOSH 2016 recommended exposure limit, REL",
    "RAL": "NIOSH 2016 recommended alert limit, RAL",
}
"""What the two limits are called, with body and year."""


@dataclass(frozen=True, kw_only=True, slots=True)
class Job:
    """One job in one heat: what is compared with the limit, in W and degC."""

    heat: Heat
    rate: float
    added: float | None  # clothing adjustment; None where no published value covers it
    at_rest: float
    acclimatised: bool

    @property
    def effective(self) -> float:
        """Effective WBGT at work, clothing included as far as a value covers it."""
        return self.heat.wbgt + (self.added or 0.0)

    def limit(self, off: float = 0.0) -> float:
        """Return the limit that applies, with the work rate off by a share."""
        return heat_limits.limit(heat_limits.off_by(self.rate, off), self.acclimatised)

    def minutes(self, off: float = 0.0) -> int:
        """Return the work minutes in an hour, with the work rate off by a share."""
        rate = heat_limits.off_by(self.rate, off)
        return heat_limits.work_minutes(self.effective, self.at_rest, rate, self.acclimatised)

    @property
    def over(self) -> bool:
        """Whether steady work is over the limit."""
        return self.effective > self.limit()

    @property
    def stopped(self) -> bool:
        """Whether no work minutes may be shown."""
        return self.added is None or self.minutes() < 1


def core(
    *,
    heat_known: str,
    air_temperature: float | None,
    humidity: float | None,
    sun: str | None,
    radiation: float | None,
    wind: float | None,
    measured_wbgt: float | None,
    rest_wbgt: float | None,
    work: str,
    metabolic_rate: float | None,
    clothing: str,
    acclimatised: str,
    rest: str,
    planned_minutes: float | None,
) -> Answer:
    """Compare a job in a suit with the published heat limits; see the declaration for units."""
    shining = 0.0 if sun is None else sun_on_level(sun, radiation)
    if heat_known == "measured":
        heat = measured_heat(required("measured_wbgt", measured_wbgt))
    else:
        heat = weather_heat(
            required("air_temperature", air_temperature),
            required("humidity", humidity),
            required("wind", wind),
            shining,
        )
    added = tables.row("clothing_adjustment", clothing).get("adjustment")
    job = Job(
        heat=heat,
        rate=metabolic_rate or float(tables.row("metabolic_rates", work)["rate"]),
        added=added,
        at_rest=_at_rest(rest, heat, rest_wbgt, added or 0.0),
        acclimatised=acclimatised == "yes",
    )
    found = _findings(
        job,
        clothing=clothing,
        measured=heat_known == "measured",
        in_sun=shining > 0,
        planned=planned_minutes,
        rest_guessed=heat_known == "measured" and rest == "shade" and rest_wbgt is None,
        wind=wind,
    )
    values = _values(job) | {"verdict": verdict(found, job.stopped)} | _plan(job, planned_minutes)
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


def _at_rest(rest: str, heat: Heat, rest_wbgt: float | None, added: float) -> float:
    """Return the effective WBGT at the place of rest, degC."""
    if rest == "same":
        return heat.wbgt + added
    # With the suit off or open its adjustment falls away; lighter clothing keeps its gain.
    place = heat.shade if rest_wbgt is None else rest_wbgt
    return (heat.wbgt if place is None else place) + min(added, 0.0)


def _findings(
    job: Job,
    *,
    clothing: str,
    measured: bool,
    in_sun: bool,
    planned: float | None,
    rest_guessed: bool,
    wind: float | None,
) -> Findings:
    still = heat_limits.limit(heat_limits.REST_RATE, job.acclimatised)
    top = job.effective - job.heat.wbgt + job.heat.high
    return Findings(
        clothing=clothing,
        acclimatised=job.acclimatised,
        limit_name="REL" if job.acclimatised else "RAL",
        measured=measured,
        in_sun=in_sun,
        covered=job.added is not None,
        still_over=job.effective > still,
        rest_over=job.at_rest > still,
        minutes=job.minutes(),
        over=job.over,
        rate_crosses=not job.over and job.effective > job.limit(heat_limits.RATE_ERROR),
        wbgt_crosses=not job.over and top > job.limit(),
        top_still_over=top > still,
        planned_over=planned is not None and job.minutes() < 60 and planned > job.minutes(),
        rest_guessed=rest_guessed,
        calm=job.heat.calm,
        wind=wind,
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

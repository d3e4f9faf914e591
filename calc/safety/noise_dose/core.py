"""The core of "Noise of the day": from what was asked to what is answered."""

from __future__ import annotations

import math
from typing import Any

from calc import units
from calc.declare import Answer
from calc.errors import required
from calc.safety.noise_dose import protection
from calc.safety.noise_dose.cautions import Findings, cautions
from calc.safety.noise_dose.charts import dose_chart
from calc.safety.noise_dose.day import Day
from calc.safety.noise_dose.dose import Spell, dose_of, mean_level_of
from calc.safety.noise_dose.inputs import Inputs
from calc.safety.noise_dose.words import eu_words, plan_words, verdict_words

TOOLS = {"vacuum": "vacuum", "saw": "saw", "other": "other noise"}
"""The three spells of a day and what they are called."""


def core(x: Inputs) -> Answer:
    """Sum the day's noise by both published rates; see the declaration for units."""
    ratings = _ratings(x)
    by_osha, by_niosh = (
        protection.attenuation_osha(ratings), protection.attenuation_niosh(ratings)
    )  # fmt: skip
    day = Day(
        spells=_spells(x),
        attenuation=min(by_osha, by_niosh),
        worn=required("worn", x.worn) / 100 if ratings else 0.0,
    )
    found = _findings(day, x.protector, x.levels_from)
    values = _values(day) | {
        "verdict": verdict_words(found),
        "plan": plan_words(found),
        "eu": eu_words(found),
        "attenuation": day.attenuation,
        "attenuation_niosh": by_niosh,
        "attenuation_osha": by_osha,
    }
    told = cautions(found)
    hidden = any(each.level == "stop" for each in told)
    return Answer(values=values, cautions=told, charts=[] if hidden else [dose_chart(day)])


def _spells(x: Inputs) -> dict[str, Spell]:
    made = {"vacuum": (x.vacuum_level, x.vacuum_minutes)}
    if x.tools in {"saw", "all"}:
        made["saw"] = (required("saw_level", x.saw_level), required("saw_minutes", x.saw_minutes))
    if x.tools in {"other", "all"}:
        level, minutes = x.other_level, x.other_minutes
        made["other"] = (required("other_level", level), required("other_minutes", minutes))
    return made


def _ratings(x: Inputs) -> list[tuple[str, float]]:
    if x.protector == "none":
        return []
    nrr = required("nrr", x.nrr)
    if x.protector == "both":
        return [("foam", nrr), ("muffs", required("second_nrr", x.second_nrr))]
    return [(x.protector, nrr)]


def _findings(day: Day, protector: str, levels_from: str) -> Findings:
    return Findings(
        niosh=day.dose("niosh"),
        osha=day.dose("osha"),
        bare_mean=mean_level_of(day.bare("niosh"), "niosh"),
        ear_mean=mean_level_of(day.dose("niosh"), "niosh"),
        bare_osha=day.bare("osha"),
        loudest=day.loudest,
        protector=protector,
        worn=day.worn,
        measured=levels_from == "measured",
        saw=day.spells.get("saw", (0.0, 0.0))[1] > 0,
        faintest=min(
            (level - day.attenuation for level, minutes in day.spells.values() if minutes > 0),
            default=math.inf,
        ),
    )


def _values(day: Day) -> dict[str, Any]:
    bare = mean_level_of(day.bare("niosh"), "niosh")
    limit = mean_level_of(100.0, "niosh") or 0.0
    return {
        "niosh_dose": day.dose("niosh"),
        "osha_dose": day.dose("osha"),
        "niosh_bare": day.bare("niosh"),
        "osha_bare": day.bare("osha"),
        "niosh_mean": bare,
        "osha_mean": mean_level_of(day.bare("osha"), "osha"),
        "ear_mean": mean_level_of(day.dose("niosh"), "niosh"),
        "needed": None if bare is None else max(0.0, bare - limit),
        "vacuum_left": day.vacuum_left("niosh"),
        "vacuum_left_osha": day.vacuum_left("osha"),
        "spells": [_line(day, tool) for tool, (_, minutes) in day.spells.items() if minutes > 0],
    }


def _line(day: Day, tool: str) -> dict[str, Any]:
    level, minutes = day.spells[tool]
    return {
        "tool": f"{TOOLS[tool]}, {units.show(level, 0)} dBA",
        "minutes": minutes,
        "niosh": dose_of([level], [minutes], "niosh"),
        "osha": dose_of([level], [minutes], "osha"),
    }

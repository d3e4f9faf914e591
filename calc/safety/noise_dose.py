"""Noise of the day: the declaration and the core. The formulas are in ``noise_core``."""

from __future__ import annotations

import math
from dataclasses import dataclass
from typing import Any

from calc import units
from calc.declare import Answer, Axis, Calculator, Chart, Series
from calc.safety import noise_core
from calc.safety.noise_cautions import Findings, cautions
from calc.safety.noise_forms import INPUTS, OUTPUTS
from calc.safety.noise_words import eu_words, plan_words, verdict_words

TOOLS = {"vacuum": "vacuum", "saw": "saw", "other": "other noise"}
"""The three spells of a day and what they are called."""


@dataclass(frozen=True, kw_only=True, slots=True)
class Day:
    """A day's noise: level (dBA) and minutes by tool, and what reaches the ear."""

    spells: dict[str, noise_core.Spell]
    attenuation: float  # dB, the weaker of the two published estimates
    worn: float  # share of the time the protector is worn, 0 to 1

    def dose(self, body: str, vacuum: float | None = None) -> float:
        """Return the dose at the ear in percent, with other vacuum minutes where given."""
        spells = dict(self.spells)
        if vacuum is not None:
            spells["vacuum"] = (spells["vacuum"][0], vacuum)
        bare = noise_core.dose_of(*_columns(spells, 0.0), body)
        under = noise_core.dose_of(*_columns(spells, self.attenuation), body)
        return (1 - self.worn) * bare + self.worn * under

    def bare(self, body: str) -> float:
        """Return the dose without any protection, percent."""
        return noise_core.dose_of(*_columns(self.spells, 0.0), body)

    def vacuum_left(self, body: str) -> int:
        """Return the whole minutes of vacuum until the dose at the ear is 100 percent."""
        per_minute = self.dose(body, 1.0) - self.dose(body, 0.0)
        return math.floor(min(max(0.0, 100 - self.dose(body)) / per_minute, 720.0) + 1e-9)

    @property
    def loudest(self) -> float:
        """Loudest level that reaches the ear unprotected or through the protector, dBA."""
        through = self.attenuation if self.worn >= 1 else 0.0
        return max((level - through for level, minutes in self.spells.values() if minutes > 0),
                   default=0.0)  # fmt: skip


def core(
    *,
    vacuum_level: float,
    vacuum_minutes: float,
    saw_minutes: float,
    saw_level: float,
    other_minutes: float,
    other_level: float,
    levels_from: str,
    protector: str,
    nrr: float | None,
    second_nrr: float | None,
    worn: float | None,
) -> Answer:
    """Sum the day's noise by both published rates; see the declaration for units."""
    ratings = _ratings(protector, nrr, second_nrr)
    by_osha, by_niosh = (
        noise_core.attenuation_osha(ratings), noise_core.attenuation_niosh(ratings)
    )  # fmt: skip
    day = Day(
        spells={
            "vacuum": (vacuum_level, vacuum_minutes),
            "saw": (saw_level, saw_minutes),
            "other": (other_level, other_minutes),
        },
        attenuation=min(by_osha, by_niosh),
        worn=0.0 if worn is None else worn / 100,
    )
    found = _findings(day, protector, levels_from)
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
    return Answer(values=values, cautions=told, charts=[] if hidden else [_chart(day)])


def _ratings(protector: str, nrr: float | None, second: float | None) -> list[tuple[str, float]]:
    if protector == "none" or nrr is None:
        return []
    if protector == "both":
        return [("foam", nrr), ("muffs", second or 0.0)]
    return [(protector, nrr)]


def _findings(day: Day, protector: str, levels_from: str) -> Findings:
    return Findings(
        niosh=day.dose("niosh"),
        osha=day.dose("osha"),
        bare_mean=noise_core.mean_level_of(day.bare("niosh"), "niosh"),
        ear_mean=noise_core.mean_level_of(day.dose("niosh"), "niosh"),
        bare_osha=day.bare("osha"),
        loudest=day.loudest,
        protector=protector,
        worn=day.worn,
        measured=levels_from == "measured",
        saw=day.spells["saw"][1] > 0,
        faintest=min(
            (level - day.attenuation for level, minutes in day.spells.values() if minutes > 0),
            default=math.inf,
        ),
    )


def _values(day: Day) -> dict[str, Any]:
    bare = noise_core.mean_level_of(day.bare("niosh"), "niosh")
    limit = noise_core.mean_level_of(100.0, "niosh") or 0.0
    return {
        "niosh_dose": day.dose("niosh"),
        "osha_dose": day.dose("osha"),
        "niosh_bare": day.bare("niosh"),
        "osha_bare": day.bare("osha"),
        "niosh_mean": bare,
        "osha_mean": noise_core.mean_level_of(day.bare("osha"), "osha"),
        "ear_mean": noise_core.mean_level_of(day.dose("niosh"), "niosh"),
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
        "niosh": noise_core.dose_of([level], [minutes], "niosh"),
        "osha": noise_core.dose_of([level], [minutes], "osha"),
    }


def _columns(spells: dict[str, noise_core.Spell], less: float) -> tuple[list[float], list[float]]:
    return [level - less for level, _ in spells.values()], [each for _, each in spells.values()]


def _chart(day: Day) -> Chart:
    x = tuple(float(minutes) for minutes in range(0, 481, 20))
    now = day.spells["vacuum"][1]
    return Chart(
        name="dose",
        title="Dose at the ear by minutes of vacuum",
        alt=(
            "The dose grows in a straight line with the minutes of vacuum. Today: "
            f"{units.show(now, 0)} minutes and {units.show(day.dose('niosh'), 0)} percent by "
            "NIOSH."
        ),
        x=Axis(label="Vacuum in the day", unit="min", low=0, high=480),
        y=Axis(label="Dose", unit="percent", low=0),
        series=(
            Series(label="NIOSH, 3 dB", x=x, y=tuple(day.dose("niosh", each) for each in x)),
            Series(
                label="OSHA, 5 dB",
                x=x,
                y=tuple(day.dose("osha", each) for each in x),
                style="dashed",
            ),
            Series(label="limit", x=(0.0, 480.0), y=(100.0, 100.0)),
            Series(label="today", x=(now,), y=(day.dose("niosh"),), style="points"),
        ),
    )


noise_dose = Calculator(
    name="noise_dose",
    title="Noise of the day",
    part="safety",
    purpose=(
        "How much of a day's noise limit the vacuum and the saw use up, by two published rules, "
        "and what an ear protector leaves."
    ),
    inputs=INPUTS,
    outputs=OUTPUTS,
    core=core,
    sources=(
        "osha_1910_95_a",
        "osha_1910_95_limits",
        "niosh_1998",
        "niosh_1998_durations",
        "niosh_1998_derating",
        "osha_nrr_half",
        "eu_noise_2003",
        "canada_noise",
    ),
    formula=(
        (
            r"T = \frac{480}{2^{(L-90)/5}}",
            "minutes that fill the day's limit by OSHA, level L in dBA",
            "osha_1910_95_a",
        ),
        (
            r"T = \frac{480}{2^{(L-85)/3}}",
            "the same by NIOSH",
            "niosh_1998",
        ),
        (
            r"D = 100 \left(\frac{C_1}{T_1} + \frac{C_2}{T_2} + \dots\right)",
            "dose in percent, C minutes at each level",
            "osha_1910_95_a",
        ),
        (
            r"\bar L = L_c + \frac{q}{\log_{10} 2}\,\log_{10}\frac{D}{100}",
            "eight-hour mean; q is 5 with 90 dBA, or 3 with 85 dBA",
            "osha_1910_95_a",
        ),
        (
            r"A = \tfrac12\,(\mathrm{NRR} - 7)",
            "attenuation by OSHA in A-weighted noise, 5 dB more for a second protector",
            "osha_nrr_half",
        ),
        (
            r"A = s\,\mathrm{NRR} - 7",
            "the same by NIOSH, s 0.75, 0.5 or 0.3; the smaller of the two is used",
            "niosh_1998_derating",
        ),
    ),
    assumptions=(
        "The levels are A-weighted, at your ear, and steady through their minutes.",
        "Eight hours of quiet follow before the next day; noise at home counts too.",
        "Every level counts, also those below 80 dBA that a dosimeter leaves out.",
        "The protector fits, is worn for the share you give, and nothing lifts its seal: a hood "
        "strap or spectacles under a muff do.",
        "The printed NRR is a mean over trained people in a laboratory; your own ear can get less.",
    ),
)

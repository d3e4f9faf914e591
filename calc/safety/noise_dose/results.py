"""What "Noise of the day" answers, the main answers first."""

from __future__ import annotations

from calc.declare import Out
from calc.declare.results import out


def _share(name: str, label: str, meaning: str, main: bool = False) -> Out:
    return out(name, label, meaning, "percent", main=main)


def _mean(name: str, label: str, meaning: str) -> Out:
    return out(name, label, meaning, "dBA", digits=1)


def _decibels(name: str, label: str, meaning: str) -> Out:
    return out(name, label, meaning, "dB", digits=1)


RESULTS: tuple[Out, ...] = (
    out(
        "verdict",
        "Against the published limits",
        "How the day stands to them; never a promise.",
        kind="text",
        main=True,
    ),
    _share(
        "niosh_dose", "NIOSH dose at the ear", "NIOSH 1998, 85 dBA and 3 dB; 100 is full.", True
    ),
    _share(
        "osha_dose", "OSHA dose at the ear", "OSHA 1910.95, 90 dBA and 5 dB; 100 is full.", True
    ),
    out(
        "vacuum_left",
        "Vacuum minutes left today",
        "By NIOSH, worn as now, on top of the plan; rounded down.",
        "min",
        kind="count",
        main=True,
    ),
    out("plan", "What to do", "The next step.", kind="text"),
    out(
        "vacuum_left_osha",
        "The same by OSHA",
        "The law's figure; the recommendation above is stricter.",
        "min",
        kind="count",
    ),
    out(
        "eu",
        "European Union, directive of 2003",
        "Action values without protectors, limit with them.",
        kind="text",
    ),
    _share("niosh_bare", "NIOSH dose, bare ear", "Without any protector."),
    _share("osha_bare", "OSHA dose, bare ear", "Without any protector."),
    _mean("niosh_mean", "Eight-hour mean, 3 dB, bare ear", "Also the European daily exposure."),
    _mean("osha_mean", "Eight-hour mean, 5 dB, bare ear", "As OSHA counts it."),
    _mean("ear_mean", "Eight-hour mean, 3 dB, at the ear", "With the protector as worn."),
    _decibels("needed", "Protection needed", "To bring the 3 dB mean down to 85 dBA."),
    _decibels("attenuation", "Protection counted", "The smaller of the next two."),
    _decibels("attenuation_niosh", "By NIOSH 1998", "Share of the NRR by kind, less 7 dB."),
    _decibels("attenuation_osha", "By OSHA", "Half of the NRR less 7 dB; 5 dB for a second."),
    out(
        "spells",
        "What each tool uses up, bare ear",
        "Mend the greatest one first.",
        kind="table",
        columns=(
            out("tool", "Tool", "With its level at the ear.", kind="text"),
            out("minutes", "Minutes", "In the day.", "min"),
            _share("niosh", "NIOSH", "Of the day's limit."),
            _share("osha", "OSHA", "Of the day's limit."),
        ),
    ),
)

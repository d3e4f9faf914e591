"""What "Noise of the day" answers, the main answers first."""

from __future__ import annotations

from calc.declare import Out


def _share(name: str, label: str, meaning: str, main: bool = False) -> Out:
    return Out(name=name, label=label, meaning=meaning, unit="percent", digits=0, main=main)


def _mean(name: str, label: str, meaning: str) -> Out:
    return Out(name=name, label=label, meaning=meaning, unit="dBA", digits=1)


def _decibels(name: str, label: str, meaning: str) -> Out:
    return Out(name=name, label=label, meaning=meaning, unit="dB", digits=1)


RESULTS: tuple[Out, ...] = (
    Out(
        name="verdict",
        label="Against the published limits",
        meaning="How the day stands to them; never a promise.",
        kind="text",
        main=True,
    ),
    _share(
        "niosh_dose", "NIOSH dose at the ear", "NIOSH 1998, 85 dBA and 3 dB; 100 is full.", True
    ),
    _share(
        "osha_dose", "OSHA dose at the ear", "OSHA 1910.95, 90 dBA and 5 dB; 100 is full.", True
    ),
    Out(
        name="vacuum_left",
        label="Vacuum minutes left today",
        meaning="By NIOSH, worn as now, on top of the plan; rounded down.",
        kind="count",
        unit="min",
        main=True,
    ),
    Out(name="plan", label="What to do", meaning="The next step.", kind="text"),
    Out(
        name="vacuum_left_osha",
        label="The same by OSHA",
        meaning="The law's figure; the recommendation above is stricter.",
        kind="count",
        unit="min",
    ),
    Out(
        name="eu",
        label="European Union, directive of 2003",
        meaning="Action values without protectors, limit with them.",
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
    Out(
        name="spells",
        label="What each tool uses up, bare ear",
        meaning="Mend the greatest one first.",
        kind="table",
        columns=(
            Out(name="tool", label="Tool", meaning="With its level at the ear.", kind="text"),
            Out(name="minutes", label="Minutes", meaning="In the day.", unit="min"),
            _share("niosh", "NIOSH", "Of the day's limit."),
            _share("osha", "OSHA", "Of the day's limit."),
        ),
    ),
)

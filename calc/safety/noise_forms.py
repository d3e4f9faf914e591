"""Inputs and results of "Noise of the day"."""

from __future__ import annotations

from calc.declare import Choice, Input, Number, Option, Out

_WORN = ("protector", ("foam", "plugs", "muffs", "both"))


def _level(name: str, label: str, meaning: str, default: float) -> Number:
    return Number(
        name=name,
        label=label,
        meaning=meaning,
        unit="dBA",
        low=60,
        high=130,
        why="OSHA's table of durations ends at 130 dBA; below 60 dBA noise is no question",
        source="osha_1910_95_a",
        usual=default,
        digits=0,
        step=1,
    )


def _minutes(name: str, label: str, meaning: str, default: float) -> Number:
    return Number(
        name=name,
        label=label,
        meaning=meaning,
        unit="min",
        low=0,
        high=720,
        why="half a day and half a night",
        source="own_reasoning",
        usual=default,
        step=5,
    )


def _nrr(name: str, label: str, meaning: str, only_if: tuple[str, tuple[str, ...]]) -> Number:
    return Number(
        name=name,
        label=label,
        meaning=meaning,
        only_if=only_if,
        unit="dB",
        low=0,
        high=40,
        why="no protector on sale is rated higher",
        source="own_reasoning",
        usual=25,
        step=1,
    )


INPUTS: tuple[Input, ...] = (
    _level("vacuum_level", "Vacuum at your ear", "Meter at the ear, hose in the hole.", 90),
    _minutes("vacuum_minutes", "Vacuum in the day", "All jobs of the day together.", 60),
    _minutes("saw_minutes", "Saw in the day", "Zero if there is no saw.", 15),
    _level("saw_level", "Saw at your ear", "Used only if the saw has minutes.", 104),
    _minutes("other_minutes", "Other noise in the day", "Blower, chipper, generator, drive.", 0),
    _level("other_level", "Other noise at your ear", "Used only if it has minutes.", 85),
    Choice(
        name="levels_from",
        label="Where the levels come from",
        meaning="A phone app is a guess too, unless it was checked against a meter.",
        options=(
            Option(value="guessed", label="Guessed, or from a table"),
            Option(value="measured", label="Measured at the ear"),
        ),
        usual="guessed",
    ),
    Choice(
        name="protector",
        label="Ear protector",
        meaning="What you really wear under the hood.",
        options=(
            Option(value="none", label="None"),
            Option(value="foam", label="Foam plugs, rolled and held"),
            Option(value="plugs", label="Other plugs or a band"),
            Option(value="muffs", label="Muffs"),
            Option(value="both", label="Foam plugs and muffs"),
        ),
        usual="foam",
    ),
    _nrr("nrr", "NRR on the packet", "Noise reduction rating in dB; of the plugs if two.", _WORN),
    _nrr(
        "second_nrr", "NRR of the muffs", "Noise reduction rating in dB.", ("protector", ("both",))
    ),
    Number(
        name="worn",
        label="Worn for",
        meaning="Share of the noisy time with the protector in place.",
        only_if=_WORN,
        unit="percent",
        low=0,
        high=100,
        why="a share",
        source="arithmetic",
        usual=100,
        step=5,
    ),
)
"""What the reader gives, in the order of the form."""


def _share(name: str, label: str, meaning: str, main: bool = False) -> Out:
    return Out(name=name, label=label, meaning=meaning, unit="percent", digits=0, main=main)


def _mean(name: str, label: str, meaning: str) -> Out:
    return Out(name=name, label=label, meaning=meaning, unit="dBA", digits=1)


def _decibels(name: str, label: str, meaning: str) -> Out:
    return Out(name=name, label=label, meaning=meaning, unit="dB", digits=1)


OUTPUTS: tuple[Out, ...] = (
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
"""What the reader gets, the main answers first."""

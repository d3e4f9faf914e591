"""What "Noise of the day" asks for."""

from __future__ import annotations

from typing import Any

from calc.declare import Given, choice, number

_SAW = ("tools", ("saw", "all"))
_OTHER = ("tools", ("other", "all"))
_WORN = ("protector", ("foam", "plugs", "muffs", "both"))
_TWO = ("protector", ("both",))


def _minutes(label: str, meaning: str, **more: Any) -> Any:
    return number(label, meaning, "min", low=0, high=720, step=5, **more)


def _level(label: str, meaning: str, **more: Any) -> Any:
    return number(
        label,
        meaning,
        "dBA",
        low=60,
        high=130,
        why="OSHA's table of durations ends at 130 dBA; below 60 dBA noise is no question",
        source="osha_1910_95_a",
        origin="equipment",
        step=1,
        **more,
    )


def _nrr(label: str, meaning: str, only_if: tuple[str, tuple[str, ...]]) -> Any:
    return number(
        label,
        meaning,
        "dB",
        low=0,
        high=40,
        why="no protector on sale is rated higher",
        origin="equipment",
        only_if=only_if,
        plausible=(15, 33),
        example=25,
        step=1,
    )


class Inputs(Given):
    """The noisy minutes of a day, how loud each tool is, and what is on the ears."""

    vacuum_minutes: float = _minutes(
        "Vacuum in the day", "All jobs of the day together.", plausible=(10, 240), example=60
    )
    tools: str = choice(
        "Noise besides the vacuum",
        "Other noise is a blower, chipper, generator or drive.",
        [
            ("vacuum", "None, the vacuum only"),
            ("saw", "A saw"),
            ("other", "Other noise, no saw"),
            ("all", "A saw and other noise"),
        ],
        example="saw",
    )
    worn: float | None = number(
        "Worn for",
        "Share of the noisy time with the protector in place.",
        "percent",
        low=0,
        high=100,
        why="a share",
        source="arithmetic",
        only_if=_WORN,
        plausible=(50, 100),
        example=100,
        step=5,
    )
    saw_minutes: float | None = _minutes(
        "Saw in the day", "With the engine or the blade running.",
        only_if=_SAW, plausible=(1, 60), example=15,
    )  # fmt: skip
    other_minutes: float | None = _minutes(
        "Other noise in the day", "All of it together.",
        only_if=_OTHER, plausible=(5, 240), example=30,
    )  # fmt: skip
    protector: str = choice(
        "Ear protector",
        "What you really wear under the hood.",
        [
            ("none", "None"),
            ("foam", "Foam plugs, rolled and held"),
            ("plugs", "Other plugs or a band"),
            ("muffs", "Muffs"),
            ("both", "Foam plugs and muffs"),
        ],
        origin="equipment",
        example="foam",
    )
    nrr: float | None = _nrr(
        "NRR on the packet", "Noise reduction rating in dB; of the plugs if two.", _WORN
    )
    second_nrr: float | None = _nrr("NRR of the muffs", "Noise reduction rating in dB.", _TWO)
    vacuum_level: float = _level(
        "Vacuum at your ear",
        "Meter at the ear, hose in the hole.",
        plausible=(75, 95),
        plausible_source="noise_of_vacuums",
        example=90,
    )
    saw_level: float | None = _level(
        "Saw at your ear",
        "Meter at the ear, in the cut.",
        only_if=_SAW,
        plausible=(88, 120),
        plausible_source="noise_of_saws",
        example=104,
    )
    other_level: float | None = _level(
        "Other noise at your ear",
        "The loudest of it.",
        only_if=_OTHER,
        plausible=(75, 109),
        plausible_source="balanay_2016",
        example=85,
    )
    levels_from: str = choice(
        "Where the levels come from",
        "A phone app is a guess too, unless it was checked against a meter.",
        [("guessed", "Guessed, or from a table"), ("measured", "Measured at the ear")],
        origin="usual",
        usual="guessed",
        usual_source="own_reasoning",
    )

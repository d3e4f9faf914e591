"""What to know before the numbers of "What will still emerge", and what holding needs."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from calc.declare import Caution

DEADLY_COLD = 10.0
"""Below this brood dies within days [brood_cold], degC."""

COLD = 20.0
"""Below this development nearly stops [brood_cold], degC."""

NEST_WARMTH = (28.0, 32.0)
"""Warmth of the nest, with a little room [gibo_1974_warmth], degC."""

FEW_OPENED = 20
"""Opened cells below which the shares are rough [emergence_by_look]."""

UNEVEN = 0.05
"""Chance below which ages do not count as even [emergence_by_look]."""


def cold_stop(temperature: float, hides: Sequence[str]) -> Caution | None:
    """Return the stop for brood that is kept too cold, or ``None``."""
    if temperature >= DEADLY_COLD:
        return None
    return Caution(
        level="stop",
        text="Too cold for a schedule: brood kept like this mostly dies. Warm it, or decide now "
        "what becomes of it.",
        reason="Recalled: below about 10 °C brood dies within days. Cold alone did not stop "
        "76 queens of a giant hornet nest from coming out of a cold store.",
        source="brood_cold",
        hides=tuple(hides),
    )


def first(queens: float) -> Iterator[Caution]:
    """Yield what comes before any number."""
    yield Caution(
        level="caution",
        text="Keep the comb in a closed box that they cannot chew through, and open it suited or "
        "chilled. New adults sting.",
        reason="Adults come out by day and by night, and for weeks.",
        source="mandarinia_briefings",
    )
    if queens > 0:
        yield Caution(
            level="caution",
            text="Do not open, feed away or free the comb before the last young queen is due.",
            reason="After only workers had been caught, 76 young queens came out within five "
            "days, and 108 more cells were sealed.",
            source="mandarinia_briefings",
        )


def about_warmth(temperature: float, species: str) -> Iterator[Caution]:
    """Yield cautions about the warmth of the brood."""
    if temperature < DEADLY_COLD:
        return
    if temperature < COLD:
        known = species == "velutina"
        yield Caution(
            level="caution",
            text="Cool brood: take the long end of the range."
            if known
            else "Cool brood: nobody has printed how slow it gets, so the range has no late end.",
            reason="One laboratory printed 15 to 20 sealed days at 14 to 15 °C for the "
            "yellow-legged hornet; others recall that development nearly stops below 20 °C.",
            source="dong_wang_1989" if known else "brood_cold",
        )
    elif temperature < NEST_WARMTH[0]:
        yield Caution(
            level="caution",
            text="Cooler than a nest: expect the long end of the range.",
            reason="Nests were measured at 29 to 31 °C; no figures lie between.",
            source="gibo_1974_warmth",
        )
    elif temperature > NEST_WARMTH[1]:
        yield Caution(
            level="caution",
            text="Warmer than a nest: cool it. No figures are known up here, and heat kills brood.",
            reason="Nests were measured at 29 to 31 °C.",
            source="gibo_1974_warmth",
        )


def about_sample(opened: int, even_chance: float | None) -> Iterator[Caution]:
    """Yield cautions about the colour scale and the sample."""
    yield Caution(
        level="caution",
        text="No colour table for wasps exists. The two scales used here are stand-ins: promise "
        "a span, not a date.",
        reason="A bee prepupa moults about two of twelve days after sealing; in a hornet nest "
        "two of five sealed cells held prepupae. Both are in the range.",
        source="colour_shares_late",
    )
    if opened < FEW_OPENED:
        yield Caution(
            level="caution",
            text=f"Only {opened} cells opened: the shares are rough. Open about "
            f"{FEW_OPENED}, from middle and rim.",
            reason="The error of a share from few cells is large.",
            source="emergence_by_look",
        )
    if even_chance is not None and even_chance < UNEVEN:
        yield Caution(
            level="note",
            text="The looks are not what steady sealing gives: laying changed some weeks ago.",
            reason="A chi-square test of even ages fails, with the middle of both scales.",
            source="emergence_by_look",
        )


def about_method(species: str, sampled: bool) -> Iterator[Caution]:
    """Yield notes about what is not in the numbers."""
    if not sampled:
        yield Caution(
            level="note",
            text="Without opened cells all ages count as equally common. Open some to do better.",
            reason="Late in the year sealing falls off, and most cells are then old.",
            source="renewal_uniform",
        )
    yield Caution(
        level="note",
        text="Open larvae are not in it. Without workers they starve; sealed brood needs warmth, "
        "no food.",
        reason="Larvae are fed by workers; a sealed cell needs only to be kept warm.",
        source="emergence_by_look",
    )
    if species == "velutina":
        yield Caution(
            level="caution",
            text="Do not raise this hornet: it is a listed invader in Europe. Ask the authority.",
            reason="Keeping, moving and releasing it is forbidden there.",
            source="invader_law_pages",
        )


def holding(last: float | None) -> str:
    """Return what holding the comb needs."""
    until = "" if last is None else f" Keep it for {last:.0f} days at least."
    return (
        "Cells down as they hung, dark, about 30 °C (86 °F), moist but not wet, a mesh that holds "
        f"them, sugar water for those that come out.{until} Look twice a day."
    )

"""What a reader must know before the numbers of "Colony size and stage"."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from calc import rules
from calc.biology.colony_and_season.traffic import Rate
from calc.biology.colony_and_season.words import INVADERS
from calc.biology.season_calendar import Year
from calc.declare import Caution

SPRING_ENDS = 12
"""Last half-month of the northern year that counts as spring: late June [malham_1991]."""

BUSY_AS_IN_AUGUST = 20.0
"""Wasps a minute one way that no nest of this year reaches in spring [wintered_ours]."""

OF_ONE_YEAR = ("adults_expected", "days_to_end", "if_left", "if_wait", "if_taken")
"""Results that hold for a nest of this year alone."""


def always() -> Iterator[Caution]:
    """Yield what holds before every number."""
    yield Caution(
        level="caution",
        text="Count from a distance and plan for the top of the range. No count makes it safe to "
        "go near.",
        reason="Colonies of one species differ tenfold at the same date and place.",
        source="advice_of_season",
    )


def about_winter(mild: bool, stages: Sequence[str]) -> Iterator[Caution]:
    """Yield what mild winters do to the rule of the first frost."""
    if mild:
        yield Caution(
            level="caution",
            text="Do not count on frost. Where winters are mild a colony can live on, and grow "
            "far beyond the range.",
            reason="Live colonies were counted in winter in Galicia, California and New Zealand; "
            "one held 7300 workers and 65 970 cells.",
            source="ratnieks_1996",
        )
    elif "ending" in stages:
        yield Caution(
            level="note",
            text="The first frost does not end every colony at once.",
            reason="Hornets in France died three days after the first frosts; hornets in "
            "Pennsylvania lasted until hard frosts.",
            source="perrard_2009_counts",
        )


def about_species(group: str, sexuals: str) -> Iterator[Caution]:
    """Yield duties and odd males."""
    if group in INVADERS:
        yield Caution(
            level="caution",
            text="Report this hornet first. Do not move or release live animals or comb.",
            reason="It is on the list of invaders of the European Union, and is reported in North "
            "America. Who takes the nest differs by country.",
            source="eu_list_2025" if group == "mandarinia" else "eu_1143_2014",
        )
    if group == "velutina" and sexuals == "not_yet":
        yield Caution(
            level="note",
            text="A male in early summer is no sign of the end here.",
            reason="Early nests of this hornet in Europe raise males that father nothing.",
            source="darrouzet_2015_males",
        )
    if group == "crabro":
        yield Caution(
            level="note",
            text="Protected in Germany and parts of Austria: the nature authority decides first.",
            reason="Catching or taking the nest without leave is an offence there.",
            source="bnatschg_2009",
        )


def about_dates(found: Year, names: dict[str, str]) -> Iterator[Caution]:
    """Yield a note where dates were borrowed from relatives."""
    if found.borrowed:
        which = ", ".join(names[each] for each in found.borrowed)
        yield Caution(
            level="note",
            text=f"Borrowed from relatives: {which}.",
            reason="No dates were printed for this animal.",
            source="season_steps",
        )


def about_wintering(found: Rate, when: int) -> Iterator[Caution]:
    """Yield the stop for a nest that was too busy for its date to be of this year."""
    if when <= SPRING_ENDS and found.mean >= BUSY_AS_IN_AUGUST:
        yield Caution(
            level="stop",
            text=rules.text("wintered_nest"),
            reason=f"{found.mean:.0f} wasps a minute one way in spring; our line is "
            f"{BUSY_AS_IN_AUGUST:.0f}. A nest of this year has tens to a few hundred workers now.",
            source="wintered_ours",
            hides=OF_ONE_YEAR,
        )


def no_traffic_stop(hides: Sequence[str]) -> Caution:
    """Return the stop for a count in which nobody flew."""
    return Caution(
        level="stop",
        text="Nobody flew, so there is no number of workers. Count again on a dry, warm day.",
        reason="An empty count looks the same for a dead colony, a cold one and a second hole.",
        source="light_rain_note",
        hides=tuple(hides),
    )


def no_rule_stop(hides: Sequence[str]) -> Caution:
    """Return the stop for animals without a rule."""
    return Caution(
        level="stop",
        text="There is no traffic rule for paper wasps. Count the adults on the open comb.",
        reason="Their comb has no cover and no entrance; the rules are for closed nests.",
        source="malham_1991",
        hides=tuple(hides),
    )


def about_traffic(
    group: str, found: Rate, counts: int, minutes: float, when: int
) -> Iterator[Caution]:
    """Yield cautions about the rule and the count."""
    hornet = group in {"crabro", "velutina", "mandarinia"}
    if hornet:
        yield Caution(
            level="caution",
            text="The rule for hornets rests on four young nests. Late in the year expect more.",
            reason="Nests of 15 to 120 hornets, judged by eye, in July; no rule was found for "
            + ("your hornet." if group != "velutina" else "grown nests."),
            source="perrard_2009_counts",
        )
    else:
        yield Caution(
            level="caution",
            text="The printed rule does not say whether it counts one way or both. Both readings "
            "are in the range.",
            reason="Its abstract says wasps entering or leaving.",
            source="malham_1991",
        )
    if group in {"maculata", "arenaria", "saxonica", "media"}:
        yield Caution(
            level="caution",
            text="The rule was made for ground yellowjackets; for tree wasps it is a guess.",
            reason="Two Vespula species in New Zealand were counted.",
            source="malham_1991",
        )
    if when <= SPRING_ENDS:
        yield Caution(
            level="caution",
            text="In spring the rule gives too many workers.",
            reason="A greater share of a small colony flies out.",
            source="malham_1991",
        )
    if counts < 5 or counts * minutes < 5:
        yield Caution(
            level="note",
            text="Count five times a minute, at two times of the day.",
            reason="Within a day traffic moves between 40 and 100 % of its peak.",
            source="komonen_2022",
        )
    if found.ragged:
        yield Caution(
            level="note",
            text="Your counts differ more than chance, so the range is wider.",
            reason="Gusts, clouds and disturbance bunch the flights.",
            source="light_rain_note",
        )

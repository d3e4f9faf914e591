"""What the stage of a colony means for leaving, waiting and taking, in words."""

from __future__ import annotations

from collections.abc import Sequence

from calc.biology.season_calendar import SEXUALS, STAGES

INVADERS = ("velutina", "mandarinia")
"""Hornets that are reported and never released [eu_1143_2014, eu_list_2025]."""


def stage_text(stages: Sequence[str], sexuals: str) -> str:
    """Return the possible stages in words."""
    named = [STAGES[each] for each in stages if each != "sexuals" or sexuals != "none"]
    words = named[0] if len(named) == 1 else ", ".join(named[:-1]) + " or " + named[-1]
    return f"{words[0].upper()}{words[1:]}. Young queens and males: {SEXUALS[sexuals]}."


def if_left(group: str, stages: Sequence[str], days: tuple[int, int | None] | None) -> str:
    """Return what leaving the colony alone means."""
    if group in INVADERS:
        return "Not yours to decide: photograph, report, and wait for the authority."
    if stages == ["over"]:
        return "Nothing more comes from an annual colony. Old paper can stay or go."
    if days is None:
        return "It ends by itself in autumn; no dates are printed for this animal."
    end = f"{days[0]} days or more" if days[1] is None else f"{days[0]} to {days[1]} days"
    grows = "It still grows before that. " if {"founding", "growing"} & set(stages) else ""
    return (
        f"It ends by itself in about {end}. {grows}Leave it where nobody comes near and nobody "
        "on site is allergic."
    )


def if_wait(stages: Sequence[str], sexuals: str) -> str:
    """Return what waiting some weeks means."""
    if stages == ["over"]:
        return "Look for traffic on a warm day before you open anything."
    if {"ending", "over"} & set(stages):
        return "Adults get fewer week by week; the last ones still defend the nest."
    if sexuals in {"likely", "leaving"}:
        leave = "Young queens leave by themselves in these weeks. Fewer remain in the comb later."
        return f"{leave} It may still grow first." if "growing" in stages else leave
    return "It gets bigger week by week: more adults, more comb, a stronger defence."


def if_taken(group: str, stages: Sequence[str], sexuals: str) -> str:
    """Return what taking the colony now means."""
    if group in INVADERS:
        return "Only for or with the authority. No release of queens, males or comb."
    if stages == ["over"]:
        return "Treat it as live until you have seen that it is not."
    if sexuals in {"likely", "possible", "leaving"}:
        return (
            "Expect young queens and males in sealed cells. Keep the comb caged until the last "
            "is out, and plan their release."
        )
    if stages == ["founding"]:
        return "A small job: the queen, few workers, one comb. Without the queen the brood is lost."
    return "Expect workers and worker brood. Plan for the top of the range of adults."

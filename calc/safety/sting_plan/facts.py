"""What labels, guidelines and studies print on stings, as functions of plain numbers."""

from __future__ import annotations

import math

from calc import tables

LABELS = ("United States", "Australia and New Zealand")
"""Whose weight bands hold for everyone."""

CHILDREN = "United States, children"
"""Whose guide for children changes to the larger device at a lower weight than the label."""


def printed_dose(weight: float, where: str) -> tuple[float, float] | None:
    """Return the device that a label or guide prints for a body weight.

    Parameters
    ----------
    weight : body weight, kg
    where : one of :data:`LABELS`, or :data:`CHILDREN`

    Returns
    -------
    least and most device in mg (mostly equal), or None where nothing is printed for this weight;
    never a figure of our own

    Source: table ``auto_injector_bands``.
    """
    found = None
    for row in tables.rows("auto_injector_bands"):
        if row["where"] != where:
            continue
        reached = weight >= row["low"] if row["edge"] == "included" else weight > row["low"]
        if reached:
            found = (float(row["dose_low"]), float(row["dose_high"]))
    return found


def dose_words(weight: float, where: str) -> str:
    """Return the printed device in words, or that none is printed."""
    dose = printed_dose(weight, where)
    if dose is None:
        return "none printed: ask the doctor"
    low, high = dose
    return f"{low:g} mg" if low == high else f"{low:g} or {high:g} mg"


def median_arrest(cause: str) -> float:
    """Return the middle time to arrest in fatal reactions, min.

    ``cause`` is ``venom``, ``food`` or ``medicine``. Source: Pumphrey 2000.
    """
    return float(tables.row("time_courses", cause)["minutes"])


def ambulance_minutes(area: str, measure: str = "mean") -> float:
    """Return minutes from call to ambulance in an area.

    ``area`` is ``urban``, ``suburban`` or ``rural``; ``measure`` is ``mean``, ``median`` or, for
    rural, ``slow`` (about one call in ten). Source: Mell 2017, United States.
    """
    return float(tables.row("response_times", area)[measure])


def help_minutes(response: float, walk_in: float) -> float:
    """Return minutes from sting to help at the person's side.

    ``notice + response + walk_in``, with 2 min to notice, leave the zone and call (ours).
    """
    return float(tables.row("time_courses", "notice")["minutes"]) + response + walk_in


def rcuk_hours(
    doses: int,
    *,
    came_back_before: bool = False,
    severe_breathing: bool = False,
    far_or_late: bool = False,
) -> float:
    """Return hours of observation by Resuscitation Council UK 2021.

    Parameters
    ----------
    doses : doses of adrenaline that were needed, 1 or more
    came_back_before : an earlier reaction returned after it had passed
    severe_breathing : severe asthma or severe trouble with breathing
    far_or_late : late at night, or care is hard to reach

    Returns
    -------
    2, 6 or 12 h, at least; 2 only with all other conditions of the table met
    """
    if doses > 2 or severe_breathing or far_or_late:
        key = "rcuk_long"
    else:
        key = "rcuk_two" if doses == 2 or came_back_before else "rcuk_fast"
    return float(tables.row("observation_times", key)["hours"])


def jtfpp_hours(doses: int, severe: bool) -> float:
    """Return hours of observation by the United States practice parameter of 2020, at least."""
    key = "jtfpp_severe" if severe or doses > 1 else "jtfpp_low"
    return float(tables.row("observation_times", key)["hours"])


def ascia_hours() -> float:
    """Return hours of observation by the Australasian first aid plan, at least."""
    return float(tables.row("observation_times", "ascia")["hours"])


def adult_count(kin: str, *, frail: bool = False) -> int:
    """Return from how many stings on our rule says hospital for an adult, even if well.

    ``kin`` is ``hornet``, or anything else for the other wasps; an old, ill or pregnant person
    (``frail``) has a lower number. Source: our sting rule, table ``sting_rule``.
    """
    family = "hornet" if kin == "hornet" else "other"
    return int(tables.row("sting_rule", f"frail_{family}" if frail else family)["stings"])


def hospital_from(kin: str, weight: float, *, frail: bool = False) -> int:
    """Return the same for a body weight in kg, where that gives fewer stings.

    ``min(count, weight / kg for each sting)``, rounded down, at least 1. Source: our sting rule,
    table ``sting_rule``.
    """
    family = "hornet" if kin == "hornet" else "other"
    kg = float(tables.row("sting_rule", f"child_{family}")["kg"])
    return max(1, math.floor(min(adult_count(kin, frail=frail), weight / kg)))


def eye_litres() -> float:
    """Return the water for one washing of the eyes: 1.5 L/min for 15 min."""
    row = tables.row("eye_washing", "ansi")
    return float(row["minutes"] * row["flow"])


def eye_minutes(litres: float) -> float:
    """Return how long this much water lasts at the standard's flow, min."""
    return litres / float(tables.row("eye_washing", "ansi")["flow"])

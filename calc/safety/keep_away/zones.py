"""Zones around a nest: published spread, our rows, and the way out."""

from __future__ import annotations

from dataclasses import dataclass

from calc import tables

STRONG = ("hornet", "yellow_legged", "giant", "aerial")
"""Groups whose nests are defended farther than those of yellowjackets and paper wasps."""

AT_WORK = ("working", "vibration")
"""Ways of disturbing a nest, from the least to the most; ``passive`` comes before them."""

FELT_WIND = 2.0
"""Wind from which alarm odour surely drifts to one side, m/s; our value."""

_ORDER = ("passive", "raised", "yellowjacket", "hornet", "angry")


@dataclass(frozen=True, kw_only=True, slots=True)
class Zone:
    """Distances from the nest, m."""

    state: str
    inner: float
    outer: float
    machines: float
    downwind: float


def published_range(group: str, *, alone: bool = False) -> tuple[float, float]:
    """Return the least and the farthest published distance of defence, m.

    Parameters
    ----------
    group : ``hornet`` (European), ``yellow_legged``, ``giant``, ``yellowjacket``, ``aerial``,
        ``paper_wasp``
    alone : only distances for nests that nobody disturbs; where none is published, all

    Source: table ``defence_distance``, each row with its own.
    """
    rows = [row for row in tables.rows("defence_distance") if row["group"] == group]
    calm = [row for row in rows if row["condition"] != "field test"]
    chosen = calm if alone and calm else rows
    return min(float(r["low"]) for r in chosen), max(float(r["high"]) for r in chosen)


def row_of(group: str, disturbance: str, raised: bool) -> str:
    """Return which row of our zones holds.

    At work each of three things moves one row up: a group that defends far, a nest that is
    shaken, and ``raised``, a colony large, late or disturbed before.
    """
    if disturbance == "passive":
        return "raised" if raised else "passive"
    step = int(group in STRONG) + int(raised) + int(disturbance == "vibration")
    return ("yellowjacket", "hornet", "angry")[min(step, 2)]


def zone(group: str, disturbance: str, raised: bool, wind: float, downwind: bool) -> Zone:
    """Return the zones of a nest.

    Our rows, and the outer zone never nearer than the farthest published distance for the group.
    With wind that is felt and people downwind, the outer zone on that side is one row wider.

    Parameters
    ----------
    wind : m/s at head height
    downwind : whether people are on the side the wind blows to

    Returns
    -------
    Zone, distances in m. Source: our zones (key ``own_zones``).
    """
    key = row_of(group, disturbance, raised)
    row = tables.row("zones", key)
    published = published_range(group, alone=disturbance == "passive")[1]
    outer = max(float(row["outer"]), published)
    wider = outer
    if downwind and wind >= FELT_WIND:
        after = _ORDER[min(_ORDER.index(key) + 1, len(_ORDER) - 1)]
        wider = max(outer, float(tables.row("zones", after)["outer"]))
    return Zone(
        state=str(row["state"]),
        inner=float(row["inner"]),
        outer=outer,
        machines=max(float(row["machines"]), published),
        downwind=wider,
    )


def place(distance: float, around: Zone, downwind: bool = False) -> str:
    """Return ``inner``, ``outer`` or ``beyond``; a place on the line counts as inside."""
    if distance <= around.inner:
        return "inner"
    return "outer" if distance <= (around.downwind if downwind else around.outer) else "beyond"


def attackers(gait: str, distance: float) -> str:
    """Return what the Korean test says of attackers after so many metres, by ``walk`` or ``run``.

    Between two printed distances the nearer one holds.
    """
    found = "no figure"
    for row in tables.rows("pursuit"):
        if row["key"].startswith(f"{gait}_") and distance >= row["distance"]:
            found = str(row["attackers"])
    return found


def run_least() -> float:
    """Return how far to run at least, m: where one or no attacker was left in the Korean test."""
    return float(tables.row("pursuit", "run_10")["distance"])

"""The core of "Keeping people away": zones, and what lies in them."""

from __future__ import annotations

from typing import Any

from calc import tables
from calc.declare import Answer
from calc.safety.keep_away.cautions import Around, cautions
from calc.safety.keep_away.charts import plan_chart
from calc.safety.keep_away.inputs import Inputs
from calc.safety.keep_away.zones import Zone, place, published_range, run_least, zone


def core(x: Inputs) -> Answer:
    """Set zones around a nest and place what lies near in them; see the declaration for units."""
    around = Around(
        group=x.group,
        disturbance=x.disturbance,
        wind=x.wind,
        downwind=x.downwind == "yes",
        house=x.house,
        way=x.way,
        way_distance=x.way_distance,
        way_closed=x.way_closed == "yes",
        neighbour=x.neighbour,
        neighbour_distance=x.neighbour_distance,
        loose=x.loose == "loose",
        door=x.door,
    )
    raised = x.colony == "large" or x.disturbed_before == "yes"
    found = zone(x.group, x.disturbance, raised, x.wind, around.downwind)
    after = tables.row("zone_times", "after")
    values: dict[str, Any] = {
        "inner": found.inner,
        "outer": found.outer,
        "downwind": found.downwind,
        "machines": found.machines,
        "published": published_range(x.group, alone=x.disturbance == "passive"),
        "state": found.state,
        "shut_from": tables.row("zone_times", "before")["low"],
        "normal_after": (after["low"], after["high"]),
        "run": run_least(),
        "places": _places(around, found),
        "warn": _warn(around),
    }
    return Answer(
        values=values, cautions=cautions(around, found), charts=[plan_chart(around, found)]
    )


_LIES = {"inner": "in the inner zone", "outer": "in the outer zone", "beyond": "beyond both"}

_DO = {
    ("house", "inner"): "that side empty, or the family away",
    ("house", "outer"): "all in, windows and air intakes shut",
    ("house", "beyond"): "told; windows on that side shut",
    ("way", "inner"): "closed, watched by a person",
    ("way", "outer"): "closed, watched by a person",
    ("way", "beyond"): "a look now and then",
    ("road", "inner"): "closed by those who may",
    ("road", "outer"): "a person at the kerb, pauses",
    ("road", "beyond"): "a look now and then",
    ("neighbour", "inner"): "away, or in with windows shut",
    ("neighbour", "outer"): "in, windows shut, pets in",
    ("neighbour", "beyond"): "told, allergies asked",
    ("door", "inner"): "free way, handle tried",
    ("door", "outer"): "free way, handle tried",
    ("door", "beyond"): "too far: a closed vehicle nearer",
}


def _places(around: Around, found: Zone) -> list[dict[str, Any]]:
    made = []
    for key, words, distance in (
        ("house", "Door or window", around.house),
        ("way", "Road" if around.way == "road" else "Path", around.way_distance),
        ("neighbour", "Neighbour", around.neighbour_distance),
        ("door", "Closed door for the run", around.door),
    ):
        if distance is None:
            continue
        lies = place(distance, found, around.downwind)
        kind = "road" if key == "way" and around.way == "road" else key
        made.append(
            {
                "place": words,
                "distance": distance,
                "zone": _LIES[lies],
                "do": _DO[kind, lies],
            }
        )
    return made


def _warn(around: Around) -> list[dict[str, str]]:
    made = [
        {"who": "Family and client", "say": "in, windows shut, until one of us says done"},
        {"who": "Children", "say": "who stays with them, in which room"},
        {"who": "Animals", "say": "in or away; horses and hens as well"},
    ]
    if around.neighbour != "none":
        made.append({"who": "Neighbours", "say": "from when to when; any allergy; windows, dog"})
    if around.way == "path":
        made.append({"who": "People on the path", "say": "a person at each end, not only tape"})
    if around.way == "road":
        made.append({"who": "Road authority", "say": "closure or warning; never by yourself"})
    return made

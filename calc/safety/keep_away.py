"""Keeping people away: zones, waiting times, places, and a plan to scale."""

from __future__ import annotations

from typing import Any

from calc import tables
from calc.declare import Answer, Calculator
from calc.safety.keep_away_cautions import Around, cautions
from calc.safety.keep_away_chart import plan_chart
from calc.safety.keep_away_forms import INPUTS, OUTPUTS
from calc.safety.keep_away_zones import Zone, place, published_range, run_least, zone


def core(
    *,
    group: str,
    disturbance: str,
    colony: str,
    disturbed_before: str,
    wind: float,
    downwind: str,
    house: float,
    way: str,
    way_distance: float | None,
    way_closed: str | None,
    neighbour: str,
    neighbour_distance: float | None,
    loose: str,
    door: float,
) -> Answer:
    """Set zones around a nest and place what lies near in them; see the declaration for units."""
    around = Around(
        group=group,
        disturbance=disturbance,
        wind=wind,
        downwind=downwind == "yes",
        house=house,
        way=way,
        way_distance=way_distance,
        way_closed=way_closed == "yes",
        neighbour=neighbour_distance,
        told=neighbour == "told",
        loose=loose == "loose",
        door=door,
    )
    raised = colony == "large" or disturbed_before == "yes"
    found = zone(group, disturbance, raised, wind, around.downwind)
    after = tables.row("zone_times", "after")
    values: dict[str, Any] = {
        "inner": found.inner,
        "outer": found.outer,
        "downwind": found.downwind,
        "machines": found.machines,
        "published": published_range(group, alone=disturbance == "passive"),
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
        ("neighbour", "Neighbour", around.neighbour),
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
    if around.neighbour is not None:
        made.append({"who": "Neighbours", "say": "from when to when; any allergy; windows, dog"})
    if around.way == "path":
        made.append({"who": "People on the path", "say": "a person at each end, not only tape"})
    if around.way == "road":
        made.append({"who": "Road authority", "say": "closure or warning; never by yourself"})
    return made


keep_away = Calculator(
    name="keep_away",
    title="Keeping people away",
    part="safety",
    purpose="How far others stay from the nest, who is told, and where you run.",
    inputs=INPUTS,
    outputs=OUTPUTS,
    core=core,
    sources=(
        "own_zones",
        "choi_velutina_people",
        "korea_three_hornets",
        "milvus_crabro",
        "rlp_portal",
        "ahrweiler_hornets",
        "neuzelle_hornets",
        "thue_velutina",
        "austria_interview",
        "media_press",
        "yellowjacket_list_2000",
    ),
    formula=(
        (
            r"r_\mathrm{outer} = \max(r_\mathrm{row},\; r_\mathrm{published})",
            "outer zone: our row, never nearer than the farthest published distance",
            "own_zones",
        ),
    ),
    assumptions=(
        "Zones are circles; walls, hedges and height can help or mislead, so they are not counted.",
        "Published distances are for calm nests or for hornets in tests; none is for a nest that "
        "is being taken out.",
        "Large, late or disturbed colonies move one row up, and so does shaking.",
        "No published figure ties wind to distance.",
        "Directions in the plan are schematic, distances are to scale.",
    ),
)

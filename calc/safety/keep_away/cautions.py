"""Stops and cautions of "Keeping people away"."""

from __future__ import annotations

from dataclasses import dataclass

from calc import rules
from calc.declare import Caution
from calc.safety.keep_away.zones import AT_WORK, FELT_WIND, Zone, place
from calc.safety.levels import caution, note, stop

HELD_BACK = ("shut_from", "normal_after")
"""Results that a stop withholds: the times that belong to a start."""


@dataclass(frozen=True, kw_only=True, slots=True)
class Around:
    """The nest's surroundings as given; None where nobody said."""

    group: str
    disturbance: str
    wind: float
    downwind: bool
    house: float | None
    way: str | None
    way_distance: float | None
    way_closed: bool
    neighbour: str
    neighbour_distance: float | None
    loose: bool
    door: float | None

    @property
    def at_work(self) -> bool:
        """Whether the nest is being worked on."""
        return self.disturbance in AT_WORK


def cautions(around: Around, zone: Zone) -> list[Caution]:
    """Return the cautions of one run, at least four in every run."""
    made = [*_stops(around, zone), _RUN, *_places(around, zone)]
    if around.group in {"yellow_legged", "giant"} and around.disturbance == "passive":
        made.append(_REPORT)
    if around.disturbance == "vibration":
        made.append(_VIBRATION)
    if around.wind >= FELT_WIND:
        made.append(_WIND)
    return [*made, _OURS, _DARK, _JURISDICTION]


def _stops(around: Around, zone: Zone) -> list[Caution]:
    made = []
    if around.group == "giant" and around.at_work:
        made.append(_GIANT)
    if around.group == "yellow_legged" and around.at_work:
        made.append(_AUTHORITY)
    if around.loose:
        made.append(_LOOSE)
    lies = _open_way(around, zone)
    if around.way == "path" and lies in {"inner", "outer"}:
        made.append(_WAY)
    if around.way == "road" and lies == "inner":
        made.append(_ROAD)
    if around.at_work and around.neighbour == "not_told" and _neighbour_near(around, zone):
        made.append(_NEIGHBOUR)
    return made


def _neighbour_near(around: Around, zone: Zone) -> bool:
    """Return whether the neighbour may be within the outer zone; not measured counts as within."""
    near = around.neighbour_distance
    return near is None or place(near, zone, around.downwind) != "beyond"


def _open_way(around: Around, zone: Zone) -> str:
    """Return where a way lies that others can use during the work."""
    if around.way_distance is None or around.way_closed or not around.at_work:
        return "none"
    return place(around.way_distance, zone, around.downwind)


def _places(around: Around, zone: Zone) -> list[Caution]:
    made = []
    if around.house is not None:
        lies = place(around.house, zone, around.downwind)
        made += {"inner": [_HOUSE_INNER], "outer": [_HOUSE_OUTER]}.get(lies, [])
    if around.way == "road" and _open_way(around, zone) == "outer":
        made.append(_ROAD_OUTER)
    if around.door is not None and around.door > zone.outer:
        made.append(_DOOR)
    if around.at_work and None in (around.house, around.way, around.door):
        made.append(_NOT_PLACED)
    return made


_GIANT = stop(
    "Giant hornets: do not work on this nest. Keep away, photograph from afar, report it.",
    "It stings through ordinary suits and can spray venom; the authority removes it.",
    "pnw_hornet",
    HELD_BACK,
)
_AUTHORITY = stop(
    "Yellow-legged hornets: ask the authority before any work; in most countries it must be "
    "reported and only its teams take the nest.",
    "An invasive species in Europe and North America.",
    "eu_1143_2014",
    HELD_BACK,
)
_LOOSE = stop(
    "Children or animals are loose in the zone: bring them in, count them, shut the door.",
    "They do not keep to tape, and dogs snap at wasps.",
    "own_zones",
    HELD_BACK,
)
_WAY = stop(
    "People can walk into the outer zone: close the way with tape and a person, or change the "
    "hour.",
    "Tape alone is stepped over.",
    "own_zones",
    HELD_BACK,
)
_ROAD = stop(
    "An open road lies in the inner zone: ask the road authority or the police how to close "
    "or warn. Do not stop traffic yourself.",
    "A sting at the wheel, or you on the road, is worse than the nest.",
    "own_zones",
    HELD_BACK,
)
_ROAD_OUTER = caution(
    "An open road lies in the outer zone: a person at the kerb turns walkers and riders away and "
    "calls a pause. If insects reach the road, stop and ask for a closure.",
    "A pavement along it counts as a path. A sting at the wheel can end in a crash.",
    "own_zones",
)
_NEIGHBOUR = stop(
    "A neighbour within the outer zone knows nothing: tell them before the first contact.",
    "Their window, their dog and their allergy are in your zone.",
    "own_zones",
    HELD_BACK,
)
_RUN = caution(
    rules.text("mass_attack", "run", "see", "where", "others"),
    "In a Korean test one or no hornet was left after 10 m of running; walkers were followed for "
    "300 m, and crouching did not help.",
    "choi_velutina_people",
)
_HOUSE_INNER = caution(
    "The house lies within the inner zone: everyone out of the rooms on that side, windows and "
    "vents shut, another door in use, or the family away.",
    "Insects get in by gaps, lamps and bathroom fans.",
    "own_zones",
)
_HOUSE_OUTER = caution(
    "The house lies within the outer zone: people and pets in, windows and air intakes shut "
    "until you say done.",
    "Flying adults search the walls around.",
    "own_zones",
)
_DOOR = caution(
    "The closed door is beyond the outer zone: park a closed vehicle nearer, engine off, keys "
    "with you, and walk the way once.",
    "You run to a door, so it must be near enough.",
    "own_zones",
)
_NOT_PLACED = caution(
    "Pace it out before the start: door and windows, path or road, the closed door you run to. "
    "Close or watch each way within the outer zone.",
    "Not all of them were given here, and what is not given is not checked.",
    "own_zones",
)
_REPORT = caution(
    "Report this species. Do not disturb, move or release it.",
    "Report duties hold in most countries where it is not native.",
    "eu_1143_2014",
)
_VIBRATION = caution(
    f"{rules.text('saw', 'fly')} Catch first: shaking can bring many out at once.",
    "Mowing and shaking are named as triggers; nobody has measured how much it takes.",
    "milvus_crabro",
)
_WIND = caution(
    "Stand and hold people upwind. Alarm odour drifts with the wind.",
    "No published figure ties wind to distance; our outer zone is one row wider downwind.",
    "own_zones",
)
_OURS = caution(
    "Our zones for work are a suggestion: nobody has measured a nest while it is taken out. If "
    "insects search people at the line, move the line out.",
    "Published distances are for calm nests or tests with hornets, and they disagree.",
    "own_zones",
)
_DARK = caution(
    "Light clothes, covered hair, no perfume, no flapping, for the one who watches as well.",
    "In three kinds of hornet black drew most attacks; swinging arms drew more; some perfumes hold "
    "the odours of alarm.",
    "korea_three_hornets",
)
_JURISDICTION = note(
    "Distances are advice of the bodies named. Law on public ways, traffic, protected "
    "species and trespass is local and comes first.",
    "German, French and Korean figures, some of them for one species only.",
    "own_zones",
)

"""The kinds of seeded exercises: which numbers are drawn, what is asked, what a good answer names.

No answer stands here; :mod:`docs_build.exercises` has the calculators give them.
"""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import dataclass
from random import Random
from typing import Any

Draw = Callable[[Random], Any]


def between(low: float, high: float, step: float = 1.0) -> Draw:
    """Return a draw of one of ``low``, ``low + step``, ... up to ``high``, all alike likely."""
    steps = round((high - low) / step)

    def draw(random: Random) -> float:
        value = low + step * int(random.random() * (steps + 1))
        return round(value, 6)

    return draw


def one_of(*options: Any) -> Draw:
    """Return a draw of one of the options."""
    return lambda random: options[int(random.random() * len(options))]


def always(value: Any) -> Draw:
    """Return what is the same on every sheet."""
    return lambda random: value


def several(least: int, most: int, each: Draw) -> Draw:
    """Return a draw of a list of ``least`` to ``most`` values."""

    def draw(random: Random) -> list[Any]:
        count = least + int(random.random() * (most - least + 1))
        return [each(random) for _ in range(count)]

    return draw


def passes(random: Random) -> list[int]:
    """Return the catches of three to six equal passes from an invented nest.

    Each animal still inside is caught on a pass with one and the same chance.
    """
    left = 60 + int(random.random() * 240)
    chance = 0.35 + 0.3 * random.random()
    caught = []
    for _ in range(3 + int(random.random() * 4)):
        caught.append(sum(random.random() < chance for _ in range(left)))
        left -= caught[-1]
    return caught


def fading(random: Random) -> list[int]:
    """Return the returns in six intervals of an invented evening, fewer each time."""
    rate = 12 + 14 * random.random()
    fall = 0.45 + 0.2 * random.random()
    counts = []
    for _ in range(6):
        counts.append(round(rate))
        rate *= fall
    return counts


@dataclass(frozen=True, kw_only=True, slots=True)
class Template:
    """One kind of exercise.

    ``story`` opens it, ``judge`` asks for the decision, ``point`` says in the key what a good
    answer names. ``asked`` are the results to find.
    """

    name: str
    calculator: str
    page: str
    story: str
    draws: Mapping[str, Draw]
    asked: tuple[str, ...]
    judge: str
    point: str


TEMPLATES: tuple[Template, ...] = (
    Template(
        name="passes",
        calculator="how_many_left",
        page="How many are left",
        story="You catch in equal passes and write down each catch.",
        draws={"catches": passes},
        asked=("next_step", "total_caught", "still_inside", "interval_inside"),
        judge="Do you stop? Which number do you plan with?",
        point="Plans with the upper end. Says what the count leaves out: those abroad, soft new "
        "wasps, adults deep in the comb, sealed brood.",
    ),
    Template(
        name="heat",
        calculator="heat_in_suit",
        page="Heat in the suit",
        story="You are new to the suit. This is the weather at the nest.",
        draws={
            "air_temperature": between(16, 27),
            "humidity": between(40, 75, 5),
            "sun": one_of("light_cloud", "shade"),
            "wind": between(0.5, 3, 0.5),
            "work": one_of("low", "moderate"),
        },
        asked=("verdict", "effective_wbgt", "work_minutes", "rest_minutes", "water"),
        judge="What do you arrange before the suit goes on?",
        point="Names the second person, shade, water, the first sign that ends the day, and that "
        "the first days are shorter still.",
    ),
    Template(
        name="nozzle",
        calculator="flow_and_reach",
        page="Flow and reach of the nozzle",
        story="You measured your vacuum and hold a round nozzle at the entrance.",
        draws={
            "nozzle": always("round"),
            "nozzle_bore": between(32, 60, 2),
            "sealed": between(14, 24),
            "open_flow": between(35, 60),
            "hose_length": between(2, 5, 0.5),
            "hose_bore": one_of(38.0, 50.0, 63.0),
            "distance": between(2, 6),
        },
        asked=("flow", "mouth_speed", "reach", "speed_there"),
        judge="Where do you hold the nozzle, and what would you change first?",
        point="Holds the nozzle nearer than the reach. Names the hose bore, its length or the "
        "leak before a bigger machine.",
    ),
    Template(
        name="landing",
        calculator="catch_chamber",
        page="The catch chamber",
        story="You may take a narrow hose or a wide one for the same wasps.",
        draws={
            "flow_a": between(25, 40),
            "flow_b": between(35, 55),
            "adults": between(100, 500, 50),
            "volume": between(15, 40, 5),
        },
        asked=("arrival_a", "arrival_b", "live_mass", "minutes_planned"),
        judge="Which hose do you take? When do you empty the chamber?",
        point="Takes the one they land in more gently, if its reach is enough. Empties before the "
        "planned minutes are up.",
    ),
    Template(
        name="stragglers",
        calculator="waiting_for_stragglers",
        page="Waiting for the stragglers",
        story="The catch is done. You count those that come home in each interval.",
        draws={"record": always("counts"), "returns": fading, "waited": always(60)},
        asked=("next_step", "home", "still_out", "more_minutes"),
        judge="Do you open now?",
        point="Waits as the first line says. Says that rain, cold or dusk make the wait longer.",
    ),
    Template(
        name="comb",
        calculator="comb_count",
        page="Counting the comb",
        story="Round tiers lie on the table, full to the rim. You measured each across.",
        draws={
            "long_axes": several(3, 6, between(8, 30)),
            "species": one_of("crabro", "vulgaris"),
            "count_by": always("size"),
            "adults_caught": between(80, 600, 10),
            "adults_left": between(0, 20),
        },
        asked=("cells", "cells_interval", "pitch_used"),
        judge="What makes this count rough?",
        point="Names the pitch, which counts twice, and rims that are half built.",
    ),
    Template(
        name="emergence",
        calculator="still_to_emerge",
        page="What will still emerge",
        story="You keep the sealed comb warm and opened some cells.",
        draws={
            "worker_cells": between(150, 600, 10),
            "queen_cells": between(10, 90, 5),
            "temperature": between(27, 31),
        },
        asked=("days_95", "days_95_range", "sealed_days"),
        judge="How long do you hold the comb? What do you look at each day?",
        point="Plans with the range and not with its middle. Keeps the comb caged.",
    ),
    Template(
        name="window",
        calculator="opening_the_cavity",
        page="Opening the cavity",
        story="Wires, pipes and fibres are cleared. You see part of the comb.",
        draws={
            "wall": one_of("stud_wall", "soffit"),
            "tiers": between(3, 7),
            "comb": between(18, 34),
            "lowest": between(0, 25, 5),
            "left": between(0, 10),
        },
        asked=("planned", "height", "width", "bottom"),
        judge="Where does the first cut go? What stops the saw?",
        point="Cuts shallow, away from the comb. Stops for a wire, a load-bearing member, old "
        "paint, fibres or a flue: another trade opens those.",
    ),
    Template(
        name="box",
        calculator="holding_and_driving",
        page="Holding and driving",
        story="The catch rides home in a box with mesh low and high.",
        draws={
            "number": between(100, 400, 20),
            "mesh_area": between(120, 300, 20),
            "temperature": between(14, 24),
            "ride": between(20, 80, 5),
        },
        asked=("inside", "share", "minutes_tight", "heat"),
        judge="Where does the box ride, and what do you never do with it?",
        point="Load space apart from the driver, tied down, shaded, mesh free. Never parked in "
        "the sun.",
    ),
    Template(
        name="noise",
        calculator="noise_dose",
        page="Noise of the day",
        story="You add up the noise of the day, with foam plugs in.",
        draws={
            "vacuum_level": between(82, 92),
            "vacuum_minutes": between(20, 120, 10),
            "saw_minutes": between(0, 10, 5),
            "nrr": between(20, 33),
        },
        asked=("niosh_dose", "niosh_bare", "attenuation_niosh", "vacuum_left"),
        judge="Are the plugs enough? What do you change first?",
        point="Compares the dose at the ear with the day's limit. Cuts the saw's time or the "
        "level before adding protection.",
    ),
    Template(
        name="ladder",
        calculator="ladder_and_lines",
        page="Ladder and power lines",
        story="You set a ladder to a nest. The power company named the line's voltage.",
        draws={
            "lines": always("known"),
            "voltage": one_of(0.4, 12.0, 20.0),
            "line_distance": between(12, 25),
            "support_height": between(2.5, 5, 0.5),
            "nest_height": between(2.5, 4.5, 0.5),
            "person": between(65, 100, 5),
            "carried": between(4, 14, 2),
        },
        asked=("clearance", "line_room", "foot_out", "load", "load_room"),
        judge="May you go up? Who holds the ladder?",
        point="Stays out of the clearance with everything carried. Has the foot held and the top "
        "tied. Runs no saw and lifts out no heavy piece up there.",
    ),
    Template(
        name="lift",
        calculator="weight_and_lifting",
        page="Weight and lifting",
        story="A felled piece of trunk with the nest in it is to be carried off.",
        draws={
            "species": one_of("red_oak", "white_oak", "sugar_maple"),
            "diameter": between(20, 32, 2),
            "length": between(20, 45, 5),
            "hollow": between(6, 14, 2),
            "reach": between(25, 45, 5),
            "people": one_of("1", "2"),
        },
        asked=("weight", "weight_limit", "lifting_index"),
        judge="How do you move it?",
        point="With an index above one the piece is cut shorter, shared or moved by a machine. "
        "Says who gives the word when two lift.",
    ),
    Template(
        name="zone",
        calculator="keep_away",
        page="Keeping people away",
        story="You walk round the nest before the start.",
        draws={
            "group": one_of("yellowjacket", "aerial", "hornet"),
            "disturbance": one_of("passive", "working"),
            "colony": one_of("small", "grown", "large"),
            "house": between(6, 30, 2),
            "way_distance": between(10, 40, 5),
            "door": between(5, 30, 5),
        },
        asked=("inner", "outer", "published", "run"),
        judge="Who is told, and where do you run?",
        point="Names doors, path, neighbour, machines. Knows the way to a closed door before the "
        "first knock.",
    ),
    Template(
        name="first-days",
        calculator="acclimatisation_plan",
        page="Getting used to the heat",
        story="A helper comes to the hot work. You plan the day.",
        draws={
            "person": one_of("new_heat", "new_suit", "back"),
            "day": between(1, 5),
            "full_minutes": between(60, 240, 20),
        },
        asked=("today_minutes", "today_share", "full_from"),
        judge="What does the second person look for?",
        point="Answers, gait, sweat, pulse, drinking. The one who watches decides.",
    ),
    Template(
        name="fog",
        calculator="fogging",
        page="Fogging",
        story="You suit up and want to see.",
        draws={
            "air_temperature": between(4, 26),
            "humidity": between(30, 80, 5),
            "eyewear": one_of("indirect", "direct"),
            "sweat": one_of("dry", "damp"),
        },
        asked=("verdict", "margin", "dew_point", "best"),
        judge="What do you do before you walk in?",
        point="Tests at a distance, suit on. Never lifts the veil to wipe at the nest.",
    ),
    Template(
        name="price",
        calculator="time_and_price",
        page="Time and price",
        story="A client asks for a price.",
        draws={
            "nest": one_of("free", "wall", "tree", "ground"),
            "people": between(1, 2),
            "distance": between(5, 60, 5),
            "hourly": between(24, 40, 2),
            "margin": between(15, 35, 5),
        },
        asked=("plan_hours", "cost", "price", "as_markup"),
        judge="What do you say about the time, and what is not in the price?",
        point="Gives the planned hours as a range. Says that repairs and other trades are apart.",
    ),
)
"""All kinds of exercises, in the order of a sheet."""

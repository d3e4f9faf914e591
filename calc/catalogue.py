"""The explicit list of calculators: what is not listed here is not in the book."""

from __future__ import annotations

from collections.abc import Mapping
from types import MappingProxyType

from calc.biology.colony_and_season import colony_and_season
from calc.biology.still_to_emerge import still_to_emerge
from calc.biology.which_animal import which_animal
from calc.clients.client_letter import client_letter
from calc.clients.first_call import first_call
from calc.clients.follow_up import follow_up
from calc.clients.time_and_price import time_and_price
from calc.clients.when_to_come import when_to_come
from calc.declare import Calculator
from calc.errors import InputError, shown
from calc.method.catch_chamber import catch_chamber
from calc.method.comb_count import comb_count
from calc.method.feeding_brood import feeding_brood
from calc.method.flow_and_reach import flow_and_reach
from calc.method.holding_and_driving import holding_and_driving
from calc.method.how_many_left import how_many_left
from calc.method.letting_go import letting_go
from calc.method.moving_a_nest import moving_a_nest
from calc.method.opening_the_cavity import opening_the_cavity
from calc.method.waiting_for_stragglers import waiting_for_stragglers
from calc.method.weigh_the_catch import weigh_the_catch
from calc.safety.acclimatisation_plan import acclimatisation_plan
from calc.safety.briefing import briefing
from calc.safety.fogging import fogging
from calc.safety.heat_in_suit import heat_in_suit
from calc.safety.hollow_tree import hollow_tree
from calc.safety.keep_away import keep_away
from calc.safety.ladder_and_lines import ladder_and_lines
from calc.safety.noise_dose import noise_dose
from calc.safety.sting_plan import sting_plan
from calc.safety.weight_and_lifting import weight_and_lifting

MOMENTS: Mapping[str, tuple[Calculator, ...]] = MappingProxyType(
    {
        "Before you go": (
            first_call,
            which_animal,
            when_to_come,
            colony_and_season,
            time_and_price,
            flow_and_reach,
            catch_chamber,
            acclimatisation_plan,
        ),
        "On site, before the first touch": (
            briefing,
            sting_plan,
            keep_away,
            heat_in_suit,
            fogging,
            noise_dose,
            ladder_and_lines,
            hollow_tree,
            weight_and_lifting,
        ),
        "At the nest": (
            weigh_the_catch,
            how_many_left,
            waiting_for_stragglers,
            opening_the_cavity,
            comb_count,
            still_to_emerge,
        ),
        "Afterwards": (
            holding_and_driving,
            letting_go,
            moving_a_nest,
            feeding_brood,
            client_letter,
            follow_up,
        ),
    }
)
"""Calculators by the moment that they serve, in the order of the work."""

CALCULATORS: Mapping[str, Calculator] = MappingProxyType(
    {each.name: each for group in MOMENTS.values() for each in group}
)
"""Calculators by name, in the order of the work."""


def find(name: str) -> Calculator:
    """Return the calculator with this name; an unknown one raises :class:`InputError`."""
    try:
        return CALCULATORS[name]
    except KeyError:
        allowed = "one of " + ", ".join(CALCULATORS)
        raise InputError(
            "calculator",
            name,
            allowed,
            f"“{shown(name)}” is no calculator of this handbook; allowed is {allowed}.",
        ) from None

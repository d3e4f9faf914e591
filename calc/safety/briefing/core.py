"""The core of "Before you start": the other calculators, joined."""

from __future__ import annotations

from calc import rules
from calc.declare import Answer, Caution
from calc.safety.briefing import cards
from calc.safety.briefing.inputs import Inputs
from calc.safety.briefing.parts import Parts, run
from calc.safety.levels import caution, note, stop

HELD_BACK = ("work_minutes", "spells", "on_site", "conditions", "limits")
"""Results that any stop withholds: all that would read as leave to go."""


def core(x: Inputs) -> Answer:
    """Run the other calculators once and join what they say; units as they declare them."""
    parts = run(x)
    stops = _stops(parts)
    conditions = cards.conditions(x, parts)
    heat = {} if parts.heat is None else parts.heat.values
    values = {
        "verdict": verdict(len(stops), len(conditions)),
        "work_minutes": heat.get("work_minutes"),
        "outer": parts.people.values["downwind"],
        "help_at": parts.stings.values["help_at"],
        "spells": heat.get("planned_spells"),
        "on_site": heat.get("planned_time"),
        "conditions": conditions,
        "limits": [] if stops else cards.limits(parts),
        "stop_list": cards.stop_list(parts),
        "numbers": cards.numbers(),
        "typed": cards.typed(x),
    }
    return Answer(values=values, cautions=[*stops, *_STANDING])


def verdict(stops: int, conditions: int) -> str:
    """Say how the day stands, never that it is safe."""
    if stops:
        return f"Stop: do not start, {stops} {'reason' if stops == 1 else 'reasons'} above."
    word = "condition" if conditions == 1 else "conditions"
    return f"Go on only with {conditions} {word}: read them aloud, tick each."


def _stops(parts: Parts) -> list[Caution]:
    """Return the stops of every part as stops of the briefing, each once."""
    made: dict[str, Caution] = {}
    for word, result in parts.named():
        for each in result.cautions:
            if each.level == "stop":
                text = f"{word}: {each.text}"
                made[text] = stop(text, each.reason, each.source, HELD_BACK)
    return list(made.values())


_STANDING = (
    caution(
        rules.text("sting_emergency", "signs")
        + " This is anaphylaxis. "
        + rules.text("sting_emergency", "adrenaline"),
        "The stop list has the rest; clinicians and the person's own plan lead.",
        "ascia_first_aid",
    ),
    caution(
        rules.text("heat_stroke", "signs"),
        "Harm grows with each minute hot: what to do stands in the stop list.",
        "belval_2018",
    ),
    caution(
        rules.text("mass_attack", "run", "where", "others"),
        "Walkers were followed for 300 m in a Korean test; crouching did not help.",
        "choi_velutina_people",
    ),
    note(
        "The card joins limits of bodies in several countries and values of our own. Your law, "
        "authority, doctor and licensed trades come first. Trees, roofs, wires, dust and lifting "
        "have their own pages.",
        "Ladder load, ear protection and eye water are taken as on those pages; read them too.",
        "own_sting_plan",
    ),
)

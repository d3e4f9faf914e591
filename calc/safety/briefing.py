"""Before you start: one card from heat, stings, people, noise and ladder, typed once."""

from __future__ import annotations

from typing import Any

from calc import rules
from calc.declare import Answer, Calculator, Caution, Out
from calc.safety import briefing_cards as cards
from calc.safety.briefing_inputs import INPUTS
from calc.safety.briefing_parts import Parts, run
from calc.safety.levels import caution, note, stop

HELD_BACK = ("work_minutes", "spells", "on_site", "conditions", "limits")
"""Results that any stop withholds: all that would read as leave to go."""


def core(**given: Any) -> Answer:
    """Run the other calculators once and join what they say; units as they declare them."""
    parts = run(given)
    stops = _stops(parts)
    conditions = cards.conditions(parts, given["planned_minutes"])
    values = {
        "verdict": verdict(len(stops), len(conditions)),
        "work_minutes": parts.heat.values["work_minutes"],
        "outer": parts.people.values["downwind"],
        "help_at": parts.stings.values["help_at"],
        "spells": parts.heat.values["planned_spells"],
        "on_site": parts.heat.values["planned_time"],
        "conditions": conditions,
        "limits": [] if stops else cards.limits(parts),
        "stop_list": cards.stop_list(parts),
        "numbers": cards.numbers(),
        "typed": cards.typed(given),
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


def _column(name: str, label: str) -> Out:
    return Out(name=name, label=label, meaning=label + ".", kind="text")


OUTPUTS: tuple[Out, ...] = (
    Out(
        name="verdict",
        label="Today",
        meaning="If any part stops, the day stops.",
        kind="text",
        main=True,
    ),
    Out(
        name="work_minutes",
        label="Work in an hour, at most",
        meaning="In this heat, in the suit.",
        kind="count",
        unit="min",
        main=True,
    ),
    Out(
        name="outer",
        label="Nobody else outdoors, within",
        meaning="Our zone, with people downwind.",
        unit="m",
        customary="ft",
        main=True,
    ),
    Out(
        name="help_at",
        label="Help at your side after",
        meaning="From the sting on.",
        unit="min",
        main=True,
    ),
    Out(
        name="spells",
        label="Work periods",
        meaning="Pieces of the planned work.",
        kind="count",
    ),
    Out(
        name="on_site",
        label="Time on site",
        meaning="Work with the rests between.",
        unit="min",
    ),
    Out(
        name="conditions",
        label="Go on only if",
        meaning="Each one ticked before the suit goes on.",
        kind="table",
        columns=(_column("part", "Part"), _column("condition", "Condition")),
    ),
    Out(
        name="limits",
        label="Limits, times, distances",
        meaning="Read aloud; each with who set it.",
        kind="table",
        columns=(_column("what", "What"), _column("value", "Value"), _column("by", "Set by")),
    ),
    Out(
        name="stop_list",
        label="Stop at once",
        meaning="Anyone may say stop, and stop means stop.",
        kind="table",
        columns=(_column("sign", "If"), _column("do", "Then")),
    ),
    Out(
        name="numbers",
        label="Write in",
        meaning="Local numbers and names; nothing is filled in here.",
        kind="table",
        columns=(_column("who", "What"), _column("number", "Here")),
    ),
    Out(
        name="typed",
        label="The day as typed",
        meaning="Read it through: the card is no better than these lines.",
        kind="table",
        columns=(_column("asked", "Asked"), _column("answer", "Answer")),
    ),
)

briefing = Calculator(
    name="briefing",
    title="Before you start",
    part="safety",
    purpose="The day's inputs once, one card to read aloud, print or show.",
    inputs=INPUTS,
    outputs=OUTPUTS,
    core=core,
    sources=(
        "niosh_2016",
        "niosh_osha_acclimatization",
        "niosh_hydration_2017",
        "pumphrey_2000",
        "mell_2017",
        "ascia_first_aid",
        "second_dose_share",
        "own_sting_plan",
        "own_sting_rule",
        "belval_2018",
        "own_emergency",
        "usda_bee_attack",
        "own_zones",
        "choi_velutina_people",
        "eyewash_ansi",
    ),
    formula=(),
    assumptions=(
        "The house counts as beside the nest and people as downwind; “Keeping people away” takes "
        "the true distances.",
        "The vacuum runs as long as the planned work, at a guessed level; without a saw foam "
        "plugs are worn. “Noise of the day” takes your own levels.",
        "A ladder counts as near a line of unknown voltage, with the load of an ordinary person; "
        "“Ladder and power lines” takes yours.",
        "With the minutes of an area two minutes are added for the walk from the road.",
        "If any part stops, the briefing stops with that part's reason.",
    ),
)

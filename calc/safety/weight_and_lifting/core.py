"""The core of "Weight and lifting": from what was asked to what is answered."""

from __future__ import annotations

from typing import Any

from calc.declare import Answer
from calc.errors import InputError, required
from calc.safety.weight_and_lifting import equation, wood
from calc.safety.weight_and_lifting.cautions import Findings, cautions
from calc.safety.weight_and_lifting.charts import reach_chart
from calc.safety.weight_and_lifting.inputs import Inputs


def core(x: Inputs) -> Answer:
    """Weigh a load and set it against the lifting limit; see the declaration for units."""
    trunk = x.load == "trunk"
    wooden = _trunk(x) if trunk else None
    added = required("extra", x.extra) if trunk else 0.0
    low, high = wooden or (required("mass", x.mass),) * 2
    low, high = low + added, high + added
    people = int(x.people)
    at_start, at_end = (_limit(x, height) for height in (x.start, x.end))
    alone = min(at_start, at_end)
    limit = equation.team_limit(alone, people)
    index = high / limit if limit > 0 else None
    found = Findings(
        index=index,
        goal=equation.level("goal"),
        most=equation.level("most"),
        people=people,
        place=x.place,
        trunk=trunk,
        state=x.state or "",
        dry_missing=x.state == "dry" and wood.dry_density(required("species", x.species)) is None,
    )
    force = high * equation.GRAVITY / 1000
    values: dict[str, Any] = {
        "verdict": verdict(found),
        "weight": high,
        "weight_range": (low, high) if trunk else None,
        "weight_limit": limit,
        "lifting_index": index,
        "limit_start": at_start,
        "limit_end": at_end,
        "multipliers": _multipliers(x),
        "rope": equation.level("rope") * force,
        "block": equation.level("block") * force,
    }
    if wooden is not None:
        per_length = wooden[1] / required("length", x.length)
        values["longest_piece"] = max(0.0, limit - added) / per_length
    charts = [] if x.place == "ladder" or index is None else [reach_chart(index, x.reach)]
    return Answer(values=values, cautions=cautions(found), charts=charts)


def verdict(found: Findings) -> str:
    """Say how the lift stands to the published limit; never a promise."""
    if found.place == "ladder":
        return "No published limit covers lifting on a ladder: do not lift."
    if found.index is None:
        return "The published method gives no weight for this lift: do not lift."
    who = "two people" if found.people == 2 else "one person"
    if found.index > found.most + 1e-9:
        return f"Far over the published limit (NIOSH) for {who}: do not lift."
    if found.index > found.goal + 1e-9:
        return f"Over the published limit (NIOSH) for {who}: change the lift."
    return f"Within the published limit (NIOSH) for {who}."


def _trunk(x: Inputs) -> tuple[float, float]:
    """Return the lightest and heaviest weight of the wood of a piece, kg."""
    diameter, hollow = required("diameter", x.diameter), required("hollow", x.hollow)
    if hollow >= diameter:
        raise InputError(
            "hollow",
            hollow,
            "less than the diameter",
            "Diameter of the hollow: it is as wide as the trunk; allowed is less than the "
            "diameter.",
        )
    densities = wood.densities(required("species", x.species), required("state", x.state))
    length = required("length", x.length)
    low, high = (
        wood.piece_mass(density, diameter / 100, length / 100, hollow / 100)
        for density in densities
    )
    return low, high


def _limit(x: Inputs, height: float) -> float:
    moved = abs(x.end - x.start)
    return equation.weight_limit(x.reach, height, moved, x.angle, x.lifts, x.duration, x.grip)


def _multipliers(x: Inputs) -> list[dict[str, Any]]:
    both = {
        "hands out from the body": equation.horizontal(x.reach),
        "way up or down": equation.travel(abs(x.end - x.start)),
        "turn of the body": equation.asymmetry(x.angle),
        "how often": equation.frequency(x.lifts, x.duration),
    }
    made = [{"what": what, "start": value, "end": value} for what, value in both.items()]
    height = {
        "what": "height of the hands",
        "start": equation.vertical(x.start),
        "end": equation.vertical(x.end),
    }
    held = {
        "what": "grip",
        "start": equation.grip(x.grip, x.start),
        "end": equation.grip(x.grip, x.end),
    }
    return [made[0], height, *made[1:], held]

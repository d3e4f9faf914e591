"""Weight and lifting: the declaration and the core. The equation is in ``lifting_core``."""

from __future__ import annotations

from typing import Any

from calc import tables
from calc.declare import Answer, Axis, Calculator, Chart, Series
from calc.errors import InputError, required
from calc.safety import lifting_core as equation
from calc.safety.lifting_cautions import Findings, cautions
from calc.safety.lifting_forms import INPUTS, OUTPUTS


def core(
    *,
    load: str,
    species: str | None,
    state: str | None,
    diameter: float | None,
    length: float | None,
    hollow: float | None,
    extra: float | None,
    mass: float | None,
    place: str,
    people: str,
    reach: float,
    start: float,
    end: float,
    angle: float,
    grip: str,
    lifts: float,
    duration: str,
) -> Answer:
    """Weigh a load and set it against the lifting limit; see the declaration for units."""
    trunk = load == "trunk"
    if trunk:
        low, high = _trunk(
            required("species", species),
            required("state", state),
            required("diameter", diameter),
            required("length", length),
            required("hollow", hollow),
            required("extra", extra),
        )
    else:
        low = high = required("mass", mass)
    at_start, at_end = (
        equation.weight_limit(reach, height, abs(end - start), angle, lifts, duration, grip)
        for height in (start, end)
    )
    alone = min(at_start, at_end)
    limit = equation.team_limit(alone, int(people))
    index = high / limit if limit > 0 else None
    found = Findings(
        index=index,
        alone=high / alone if alone > 0 else None,
        goal=equation.level("goal"),
        most=equation.level("most"),
        people=int(people),
        place=place,
        trunk=trunk,
        state=state or "",
        dry_missing=trunk and state == "dry" and _dry(species or "") is None,
        live=not trunk,
    )
    per_length = (high - (extra or 0.0)) / length if trunk and length else None
    force = high * equation.GRAVITY / 1000
    values: dict[str, Any] = {
        "verdict": verdict(found),
        "weight": high,
        "weight_range": (low, high) if trunk else None,
        "weight_limit": limit,
        "lifting_index": index,
        "longest_piece": max(0.0, limit - (extra or 0.0)) / per_length if per_length else None,
        "limit_start": at_start,
        "limit_end": at_end,
        "multipliers": _multipliers(reach, start, end, angle, lifts, duration, grip),
        "rope": equation.level("rope") * force,
        "block": equation.level("block") * force,
    }
    charts = [] if place == "ladder" or index is None else [_chart(index, reach)]
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


def _dry(species: str) -> float | None:
    value = tables.row("wood_density", species).get("dry")
    return None if value is None else float(value)


def _trunk(
    species: str, state: str, diameter: float, length: float, hollow: float, extra: float
) -> tuple[float, float]:
    """Return the lightest and heaviest weight of a piece, kg; lengths in cm."""
    if hollow >= diameter:
        raise InputError(
            "hollow",
            hollow,
            "less than the diameter",
            "Diameter of the hollow: it is as wide as the trunk; allowed is less than the "
            "diameter.",
        )
    green = float(tables.row("wood_density", species)["green"])
    dry = _dry(species)
    densities = {
        "green": (green, green),
        "dry": (dry or green, dry or green),
        "dead": (dry or green, green),
    }[state]
    low, high = (
        equation.piece_mass(density, diameter / 100, length / 100, hollow / 100)
        for density in densities
    )
    return low + extra, high + extra


def _multipliers(
    reach: float, start: float, end: float, angle: float, lifts: float, duration: str, grip: str
) -> list[dict[str, Any]]:
    both = {
        "hands out from the body": equation.horizontal(reach),
        "way up or down": equation.travel(abs(end - start)),
        "turn of the body": equation.asymmetry(angle),
        "how often": equation.frequency(lifts, duration),
    }
    made = [{"what": what, "start": value, "end": value} for what, value in both.items()]
    height = {
        "what": "height of the hands",
        "start": equation.vertical(start),
        "end": equation.vertical(end),
    }
    held = {
        "what": "grip",
        "start": equation.grip(grip, start),
        "end": equation.grip(grip, end),
    }
    return [made[0], height, *made[1:], held]


def _chart(index: float, reach: float) -> Chart:
    x = tuple(float(each) for each in range(25, 64))
    now = equation.horizontal(reach)
    ends = (25.0, 63.0)
    goal, most = equation.level("goal"), equation.level("most")
    return Chart(
        name="reach",
        title="Closer is lighter",
        alt=(
            "The lifting index grows as the hands go out from the ankles. Now: "
            f"{index:.1f} at {reach:.0f} centimetres."
        ),
        x=Axis(label="Hands in front of the ankles", unit="cm", customary="inch", low=20, high=65),
        y=Axis(label="Lifting index", low=0),
        series=(
            Series(
                label="this load",
                x=x,
                y=tuple(index * now / equation.horizontal(each) for each in x),
            ),
            Series(label="goal", x=ends, y=(goal, goal), style="dashed"),
            Series(label="do not lift above", x=ends, y=(most, most)),
            Series(label="now", x=(reach,), y=(index,), style="points"),
        ),
    )


weight_and_lifting = Calculator(
    name="weight_and_lifting",
    title="Weight and lifting",
    part="safety",
    purpose=(
        "What a piece of trunk or a box weighs, and how that stands to the published lifting "
        "limit for one or two people."
    ),
    inputs=INPUTS,
    outputs=OUTPUTS,
    core=core,
    sources=(
        "niosh_lifting_1994",
        "niosh_lifting_frequency",
        "miles_smith_2009",
        "wood_density_formula",
        "wood_handbook",
        "nps_log_table",
        "hse_team",
        "rope_factor",
        "pulley_doubles",
    ),
    formula=(
        (
            r"m = \rho\, \ell\, \tfrac{\pi}{4}\,(D^2 - d^2)",
            "weight of a round piece, density, length, outer and hollow diameter",
            "own_reasoning",
        ),
        (
            r"\rho = 1000\, G \left(1 + \frac{M}{100}\right)",
            "density from specific gravity and moisture in percent",
            "wood_density_formula",
        ),
        (
            r"\mathrm{RWL} = 23 \cdot \frac{25}{H} \cdot (1 - 0.003\,|V - 75|) \cdot "
            r"\left(0.82 + \frac{4.5}{D}\right) \cdot (1 - 0.0032 A) \cdot F \cdot C",
            "recommended weight limit in kg; H, V, D in cm, A in degrees",
            "niosh_lifting_1994",
        ),
        (
            r"\mathrm{LI} = \frac{m}{\mathrm{RWL}}",
            "lifting index, at the worse end of the lift",
            "niosh_lifting_1994",
        ),
        (
            r"\mathrm{RWL}_2 = \tfrac23 \cdot 2\,\mathrm{RWL}",
            "limit for two people of like strength",
            "hse_team",
        ),
    ),
    assumptions=(
        "The piece is round and straight; bark, knots and branches come on top.",
        "The wood is sound at the density of its kind; wet rot can be heavier.",
        "Two hands, standing, firm shoes, a load that does not shift, put down with care.",
        "Lowering counts like lifting; carrying more than a step or two is not covered.",
        "The rope is new, static, and lets the load down slowly; a fall is not covered.",
    ),
)

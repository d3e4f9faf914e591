"""Opening the cavity: where the comb lies and the window that takes it whole."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

from calc.declare import Answer, Axis, Calculator, Chart, Out, Series
from calc.errors import InputError
from calc.method.opening_cautions import STOPS, Findings, cautions
from calc.method.opening_inputs import INPUTS
from calc.method.opening_window import (
    Window,
    arc,
    planned_tiers,
    stack_height,
    tiers_range,
    window,
)
from calc.tables import row, rows

Given = Mapping[str, Any]


def _spacing(given: Given) -> tuple[float, float]:
    """Return least and greatest distance from tier to tier in cm."""
    if given["spacing"] is not None:
        return given["spacing"], given["spacing"]
    known = row("tiers", given["animal"]).get("spacing")
    if known is None:
        raise InputError(
            "spacing",
            None,
            "a measured distance from tier to tier",
            "From tier to tier: no distance is in print for this animal; "
            "allowed is a measured distance from tier to tier.",
        )
    return float(known[0]), float(known[1])


def _verdict(shown: Window, given: Given, planned: int) -> str:
    def side(value: float) -> str:
        place = "above" if value >= 0 else "below"
        return f"{abs(value):.0f} cm ({abs(value) / 2.54:.0f} in) {place} the entrance"

    return (
        f"Plan for {planned} tiers. Cut from {side(shown.bottom)} to {side(shown.top)}, "
        f"{shown.width:.0f} cm ({shown.width / 2.54:.0f} in) wide, and peep first. "
        f"The comb hangs {row('wall_types', given['wall'])['lies']}."
    )


def core(**given: Any) -> Answer:
    """Compute place of the comb and window from the declared inputs.

    Takes plain numbers in the declared units; None for inputs that do not apply.
    """
    low, high = _spacing(given)
    kind = row("tiers", given["animal"])
    most = kind.get("most")
    planned = planned_tiers(given["tiers"])
    shown = window(given["lowest"], planned, high, given["comb"], given["bay"])
    trunk = given["trunk"]
    wall = row("wall_types", given["wall"])
    found = Findings(
        wall=given["wall"],
        hazards={key: given[key] for key in (*STOPS, "paint")},
        inside=given["side"] != "outside",
        planned=planned,
        comb=given["comb"],
        bay=given["bay"],
        width=shown.width,
        area=shown.area,
        guessed_spacing=given["spacing"] is None,
        left=given["left"],
        trunk=trunk,
    )
    said = cautions(found)
    values: dict[str, Any] = {
        "verdict": _verdict(shown, given, planned),
        "height": shown.height,
        "width": shown.width,
        "bottom": shown.bottom,
        "top": shown.top,
        "planned": planned,
        "tiers_range": tiers_range(given["tiers"], most),
        "stack": (stack_height(given["tiers"], low), stack_height(planned, high)),
        "area": shown.area,
        "arc": None if trunk is None else arc(shown.width, trunk),
        "tools": wall["tools"],
        "other": wall["other"],
        "order": [
            {"do": f"{each['step']}. {each['do']}"} for each in rows(f"cut_order_{given['wall']}")
        ],
        "trades": [
            {key: each[key] for key in ("hazard", "trade")} for each in rows("other_trades")
        ],
    }
    stopped = any(each.level == "stop" for each in said)
    charts = [] if stopped else [_chart(shown, given, planned, high)]
    return Answer(values=values, cautions=said, charts=charts)


def _chart(shown: Window, given: Given, planned: int, spacing: float) -> Chart:
    half = given["comb"] / 2
    levels = [
        given["lowest"] + stack_height(count, spacing) for count in (0, given["tiers"], planned)
    ]
    stacks = [
        Series(label=label, x=(-half, half), y=(low, low), y2=(high, high), style="band")
        for label, low, high in (
            ("Tiers in view", levels[0], levels[1]),
            ("Tiers that may be above", levels[1], levels[2]),
        )
    ]
    edge = shown.width / 2
    frame = Series(
        label="Window",
        x=(-edge, edge, edge, -edge, -edge),
        y=(shown.bottom, shown.bottom, shown.top, shown.top, shown.bottom),
    )
    hole = Series(label="Entrance", x=(0.0,), y=(0.0,), style="points")
    return Chart(
        name="window",
        title="Window and tiers, seen from the front",
        alt="A frame round two blocks one on the other: below, the tiers in view, above, those "
        "that may hang there. A dot marks the entrance.",
        x=Axis(label="Across", unit="cm", customary="inch"),
        y=Axis(label="Above the entrance", unit="cm", customary="inch"),
        series=(*stacks, frame, hole),
    )


_CM: dict[str, Any] = {"unit": "cm", "customary": "inch", "digits": 0}

OUTPUTS = (
    Out(name="verdict", label="What it means", meaning="The answer in words.", kind="text"),
    Out(
        name="height",
        label="Window height",
        meaning="From below the lowest tier to a hand above the planned ones.",
        main=True,
        **_CM,
    ),
    Out(
        name="width",
        label="Window width",
        meaning="The comb and a hand on each side, no wider than the cavity.",
        main=True,
        **_CM,
    ),
    Out(
        name="bottom",
        label="Lower edge above the entrance",
        meaning="Minus lies below it.",
        main=True,
        **_CM,
    ),
    Out(
        name="top",
        label="Upper edge above the entrance",
        meaning="Minus lies below it.",
        main=True,
        **_CM,
    ),
    Out(
        name="planned",
        label="Tiers planned for",
        meaning="One more than in view; half as many again from five on.",
        kind="count",
    ),
    Out(
        name="tiers_range",
        label="Tiers there may be",
        meaning="From those in view to the most in print for the animal, or more.",
        kind="interval",
    ),
    Out(
        name="stack",
        label="Height of the comb",
        meaning="From the tiers seen at the least spacing to the tiers planned at the greatest.",
        kind="interval",
        **_CM,
    ),
    Out(
        name="area",
        label="Area of the window",
        meaning="For the lead-paint rule and for the client.",
        unit="m**2",
        customary="ft**2",
        digits=2,
        customary_digits=1,
    ),
    Out(
        name="arc",
        label="Width along the bark",
        meaning="What a tape round the trunk shows for this window.",
        **_CM,
    ),
    Out(name="tools", label="Tools", meaning="For this kind of cavity.", kind="text"),
    Out(name="other", label="Another trade first", meaning="Before any cut.", kind="text"),
    Out(
        name="order",
        label="Order of the cuts",
        meaning="For this kind of cavity.",
        kind="table",
        columns=(Out(name="do", label="Do", meaning="In this order.", kind="text"),),
    ),
    Out(
        name="trades",
        label="Never opened without another trade",
        meaning="The signs of each are on the page.",
        kind="table",
        columns=(
            Out(name="hazard", label="What", meaning="Hazard.", kind="text"),
            Out(name="trade", label="Who", meaning="Clears it.", kind="text"),
        ),
    ),
)

opening_the_cavity = Calculator(
    name="opening_the_cavity",
    title="Opening the cavity",
    part="method",
    purpose="Where the comb lies behind the wall or bark, how high and wide to cut to take it "
    "whole, in what order, with what tools, and what another trade opens.",
    inputs=INPUTS,
    outputs=OUTPUTS,
    core=core,
    sources=(
        "tiers_hidden",
        "opening_rules_ours",
        "tier_spacing_memory",
        "squamosa_layers",
        "nz_overwintered_1996",
        "ratnieks_1996_combs",
        "robinson_2005_combs",
        "velutina_combs",
        "looney_2023_combs",
        "wsda_2020",
        "wall_practice",
        "other_trades",
        "asbestos_guidance",
        "lead_rule_areas",
        "wiring_rule",
        "stud_spacing_page",
    ),
    formula=(
        (
            r"n = n_0 + \lceil n_0/2 \rceil",
            "Tiers planned for from the tiers in view.",
            "opening_rules_ours",
        ),
        (
            r"h = n\,s + a + b",
            "Height: tiers times spacing, with room above and below.",
            "opening_rules_ours",
        ),
        (
            r"\ell = D\,\arcsin\frac{w}{D}",
            "Width along the bark of a trunk D thick for a window w wide.",
            "arithmetic",
        ),
    ),
    assumptions=(
        "The tiers hang level over one another; nests in slanting or narrow cavities lean and "
        "spread.",
        "No word is said on the strength of tree or building.",
        "How many tiers are hidden and the room for the hand are our advice, not measured.",
    ),
)

"""The core of "Opening the cavity"."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from typing import Any

from calc.declare import Answer, Axis, Chart, Series
from calc.errors import InputError
from calc.method.opening_the_cavity.cautions import Findings, cautions
from calc.method.opening_the_cavity.inputs import Inputs
from calc.method.opening_the_cavity.window import (
    Window,
    arc,
    planned_tiers,
    stack_height,
    tiers_range,
    window,
)
from calc.tables import row, rows


def _kinds(x: Inputs) -> Sequence[Mapping[str, Any]]:
    """Return the rows of the table of tiers that the animal may be."""
    return rows("tiers") if x.animal == "unknown" else (row("tiers", x.animal),)


def _spacing(x: Inputs) -> tuple[float, float]:
    """Return least and greatest distance from tier to tier in cm."""
    if x.spacing is not None:
        return x.spacing, x.spacing
    known = [each["spacing"] for each in _kinds(x) if each.get("spacing") is not None]
    if not known:
        raise InputError(
            "spacing",
            None,
            "a measured distance from tier to tier",
            "From tier to tier: no distance is in print for this animal; "
            "allowed is a measured distance from tier to tier.",
        )
    return float(min(low for low, _ in known)), float(max(high for _, high in known))


def _verdict(shown: Window, x: Inputs, planned: int) -> str:
    def side(value: float) -> str:
        place = "above" if value >= 0 else "below"
        return f"{abs(value):.0f} cm ({abs(value) / 2.54:.0f} in) {place} the entrance"

    return (
        f"Plan for {planned} tiers. Cut from {side(shown.bottom)} to {side(shown.top)}, "
        f"{shown.width:.0f} cm ({shown.width / 2.54:.0f} in) wide, and peep first. "
        f"The comb hangs {row('wall_types', x.wall)['lies']}."
    )


def core(x: Inputs) -> Answer:
    """Compute place of the comb and window; units, ranges and sources: the declaration."""
    low, high = _spacing(x)
    most = max(each.get("most") or 0 for each in _kinds(x))
    planned = planned_tiers(x.tiers)
    shown = window(x.lowest, planned, high, x.comb, x.bay)
    wall = row("wall_types", x.wall)
    found = Findings(
        wall=x.wall,
        hazard=x.hazard,
        paint=x.paint,
        inside=x.side != "outside",
        planned=planned,
        comb=x.comb,
        bay=x.bay,
        width=shown.width,
        area=shown.area,
        guessed_spacing=x.spacing is None,
        left=x.left,
        trunk=x.trunk,
    )
    said = cautions(found)
    values: dict[str, Any] = {
        "verdict": _verdict(shown, x, planned),
        "height": shown.height,
        "width": shown.width,
        "bottom": shown.bottom,
        "top": shown.top,
        "planned": planned,
        "tiers_range": tiers_range(x.tiers, most),
        "stack": (stack_height(x.tiers, low), stack_height(planned, high)),
        "area": shown.area,
        "arc": None if x.trunk is None else arc(shown.width, x.trunk),
        "tools": wall["tools"],
        "other": wall["other"],
        "order": [{"do": f"{each['step']}. {each['do']}"} for each in rows(f"cut_order_{x.wall}")],
        "trades": [
            {key: each[key] for key in ("hazard", "trade")} for each in rows("other_trades")
        ],
    }
    stopped = any(each.level == "stop" for each in said)
    charts = [] if stopped else [_chart(shown, x, planned, high)]
    return Answer(values=values, cautions=said, charts=charts)


def _chart(shown: Window, x: Inputs, planned: int, spacing: float) -> Chart:
    half = x.comb / 2
    levels = [x.lowest + stack_height(count, spacing) for count in (0, x.tiers, planned)]
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

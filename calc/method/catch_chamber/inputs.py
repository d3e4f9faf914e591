"""What "The catch chamber" asks for."""

from __future__ import annotations

from typing import Any

from calc.common_inputs import ALTITUDE
from calc.declare import Given, choice, count, number, shared
from calc.method.bodies import ANIMAL, MASS
from calc.tables import rows

_LIMIT = "limits_of_flow_tool"
_BATTERY = ("power", ("battery",))


def _flow(which: str, **more: Any) -> Any:
    return number(
        f"Flow, set-up {which}",
        "Flow through the hose, from “Flow and reach of the nozzle” or measured.",
        "L/s",
        low=1,
        high=300,
        source=_LIMIT,
        plausible=(15, 70),
        step=1,
        **more,
    )


def _bore(which: str, **more: Any) -> Any:
    return number(
        f"Hose bore, set-up {which}",
        "Inside width of the hose.",
        "mm",
        low=15,
        high=200,
        source=_LIMIT,
        plausible=(32, 75),
        customary_digits=1,
        step=1,
        **more,
    )


def _length(which: str, **more: Any) -> Any:
    return number(
        f"Hose length, set-up {which}",
        "From the nozzle to the chamber; the animal gathers speed all the way.",
        "m",
        low=0.2,
        high=20,
        source=_LIMIT,
        plausible=(1.5, 8),
        digits=1,
        step=0.5,
        **more,
    )


def _equipment(label: str, meaning: str, unit: str, low: float, high: float, **more: Any) -> Any:
    return number(
        label, meaning, unit, low=low, high=high, source=_LIMIT, origin="equipment", **more
    )


_SECOND: dict[str, Any] = {"origin": "extra", "only_if": ("compare", ("yes",))}


class Inputs(Given):
    """The catch that is expected; hose, chamber and power; what is seldom changed."""

    animal: str = shared(ANIMAL)
    flow_a: float = _flow("A", example=34)
    adults: int = count(
        "Adults expected",
        "Plan for the upper end of your estimate.",
        low=1,
        high=50000,
        plausible=(20, 2000),
        example=300,
        step=50,
    )
    temperature: float = number(
        "Air temperature",
        "Of the air that the vacuum draws in, at the chamber.",
        "degC",
        low=-10,
        high=50,
        why="weather to work in",
        source=_LIMIT,
        plausible=(10, 34),
        example=22,
        step=1,
    )
    bore_a: float = _bore("A", origin="equipment", example=38)
    length_a: float = _length("A", origin="equipment", example=3)
    gap: float = _equipment(
        "Hose end to the catch",
        "How far they fly on in the chamber before they meet net or wall.",
        "cm",
        0,
        300,
        plausible=(10, 60),
        example=30,
        step=5,
    )
    give: float = _equipment(
        "Give of the catch",
        "How far the net or cloth yields when something flies into it; a hard wall has about 1 mm.",
        "mm",
        1,
        1000,
        plausible=(1, 150),
        example=100,
        customary_digits=2,
        step=10,
    )
    volume: float = _equipment(
        "Chamber volume",
        "Inside of the chamber that holds the animals.",
        "L",
        1,
        1000,
        plausible=(10, 60),
        example=20,
        customary_digits=1,
        step=5,
    )
    mesh_opening: float = _equipment(
        "Mesh opening",
        "Clear width between two wires of the square mesh before the motor.",
        "mm",
        0.3,
        20,
        plausible=(1, 6),
        example=2.5,
        digits=1,
        customary_digits=3,
        step=0.1,
    )
    mesh_wire: float = _equipment(
        "Wire thickness",
        "Thickness of one wire.",
        "mm",
        0.05,
        5,
        plausible=(0.3, 1),
        example=0.7,
        digits=2,
        customary_digits=3,
        step=0.1,
    )
    mesh_area: float = _equipment(
        "Mesh area",
        "Whole area of the mesh that the air can pass.",
        "cm**2",
        5,
        20000,
        plausible=(100, 1000),
        example=400,
        step=50,
    )
    power: str = choice(
        "Power",
        "What drives the vacuum.",
        [("battery", "battery"), ("mains", "mains or generator")],
        origin="equipment",
        example="battery",
    )
    battery: float | None = number(
        "Battery energy",
        "Volts times ampere-hours, all batteries you bring.",
        "Wh",
        low=5,
        high=20000,
        origin="equipment",
        plausible=(50, 2000),
        example=180,
        step=10,
        only_if=_BATTERY,
    )
    motor: float | None = number(
        "Motor draws",
        "Electrical power at the setting you use; the plate gives the most.",
        "W",
        low=10,
        high=5000,
        origin="equipment",
        plausible=(100, 1200),
        example=300,
        step=50,
        only_if=_BATTERY,
    )
    state: str = choice(
        "Mood of the animals",
        "Freshly caught animals use many times the air of calm ones.",
        [(each["key"], each["state"]) for each in rows("holding_levels")],
        origin="usual",
        usual="caught",
        usual_source="agitation_levels_ours",
    )
    altitude: float = shared(
        ALTITUDE, origin="usual", usual_source="own_reasoning", plausible=(0, 2000)
    )
    compare: str = choice(
        "Compare with a second set-up",
        "Shows both side by side.",
        [("yes", "yes"), ("no", "no")],
        origin="extra",
        example="yes",
        usual="no",
        usual_source="own_reasoning",
    )
    flow_b: float | None = _flow("B", **_SECOND, example=44)
    bore_b: float | None = _bore("B", **_SECOND, example=63)
    length_b: float | None = _length("B", **_SECOND, example=3)
    mass: float | None = shared(MASS)

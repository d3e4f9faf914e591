"""What "Flow and reach of the nozzle" answers."""

from __future__ import annotations

from typing import Any

from calc.declare import Out

_SPEED: dict[str, Any] = {"unit": "m/s", "customary": "mph", "digits": 0}
_REACH: dict[str, Any] = {"kind": "interval", "unit": "cm", "customary": "inch", "digits": 1}

RESULTS: tuple[Out, ...] = (
    Out(
        name="verdict",
        label="What it means",
        meaning="The answer in words.",
        kind="text",
    ),
    Out(
        name="reach",
        label="Reach in front of the nozzle",
        meaning="Distance within which the air outruns the flight speed chosen; the range is the "
        "spread of the formulas, to half a centimetre. Weather, altitude, bends and chamber change "
        "it by half a centimetre at most. A collar has none.",
        main=True,
        **_REACH,
    ),
    Out(
        name="speed_there",
        label="Air speed at the animals",
        meaning="Air speed at your distance, between the formulas.",
        kind="interval",
        unit="m/s",
        customary="mph",
        digits=1,
        main=True,
    ),
    Out(
        name="mouth_speed",
        label="Air speed at the nozzle",
        meaning="Mean air speed in the nozzle, or in the hole under a collar.",
        main=True,
        **_SPEED,
    ),
    Out(
        name="flow",
        label="Flow",
        meaning="Flow at which the vacuum's suction meets the loss of hose and nozzle.",
        unit="L/s",
        customary="cfm",
        digits=0,
        main=True,
    ),
    Out(
        name="suction",
        label="Suction at the machine",
        meaning="Suction at the machine at that flow.",
        unit="kPa",
        customary="inH2O",
        digits=1,
    ),
    Out(
        name="flow_needed",
        label="Flow that would reach them",
        meaning="Flow with which this nozzle would outrun the chosen flight speed at your "
        "distance, by the formula hoods are designed with.",
        unit="L/s",
        customary="cfm",
        digits=0,
    ),
    Out(
        name="reaches",
        label="Reach for each flight speed",
        meaning="Zero means slower than the animal even in the nozzle.",
        kind="table",
        columns=(
            Out(name="animal", label="Animal", meaning="What flies.", kind="text"),
            Out(
                name="speed",
                label="Flies at",
                meaning="Flight speed.",
                unit="m/s",
                customary="mph",
                digits=1,
            ),
            Out(name="reach", label="Reach", meaning="Spread of the formulas.", **_REACH),
        ),
    ),
    Out(
        name="animals",
        label="Seated animals and arrival",
        meaning="Pull of the air at the nozzle against the hold on a rough surface, both in body "
        "weights, and the speed at the hose's end. Hold and areas are estimates.",
        kind="table",
        columns=(
            Out(name="animal", label="Animal", meaning="What sits.", kind="text"),
            Out(name="drag", label="Pull at the nozzle", meaning="Side-on drag.", digits=1),
            Out(name="hold", label="Hold, about", meaning="Scaled from ants.", digits=0),
            Out(name="arrival", label="Arrives at", meaning="Hose end.", **_SPEED),
        ),
    ),
    Out(
        name="budget",
        label="Where the suction goes",
        meaning="Loss of each part in the order of the air.",
        kind="table",
        columns=(
            Out(name="part", label="Part", meaning="Part of the system.", kind="text"),
            Out(
                name="loss",
                label="Loss",
                meaning="Pressure loss.",
                unit="Pa",
                customary="inH2O",
                digits=0,
                customary_digits=2,
            ),
            Out(
                name="share",
                label="Share",
                meaning="Share of the whole.",
                unit="percent",
                digits=0,
            ),
        ),
    ),
    Out(
        name="hose_speed",
        label="Air speed in the hose",
        meaning="Mean air speed in the hose.",
        **_SPEED,
    ),
    Out(
        name="gauge",
        label="A gauge behind the nozzle shows",
        meaning="Suction at a tap in the hose wall just behind the nozzle; compare it with yours.",
        unit="kPa",
        customary="inH2O",
        digits=2,
        customary_digits=1,
    ),
    Out(
        name="air_power",
        label="Air power at the machine",
        meaning="Flow times suction.",
        unit="W",
        digits=0,
    ),
    Out(
        name="density",
        label="Air density",
        meaning="Density of dry air at your temperature and altitude.",
        unit="kg/m**3",
        customary="lb/ft**3",
        digits=3,
        customary_digits=4,
    ),
    Out(
        name="reynolds",
        label="Reynolds number in the hose",
        meaning="Below about two thousand the flow is laminar.",
        digits=-2,
    ),
    Out(
        name="friction",
        label="Friction factor of the hose",
        meaning="Darcy friction factor.",
        digits=3,
    ),
)

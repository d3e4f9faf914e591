"""The vacuum, hose, chamber and nozzle of one job, in SI units, and where they meet."""

from __future__ import annotations

import math
from collections.abc import Callable
from dataclasses import dataclass
from itertools import pairwise

from calc.errors import InputError, required
from calc.method import air, duct, fan, suction
from calc.method.flow_and_reach.inputs import Inputs
from calc.tables import row

KILO = 1e3
MILLI = 1e-3
CENTI = 1e-2
CM2 = 1e-4


def coefficient(key: str) -> float:
    """Return K from the table ``loss_coefficients``."""
    return float(row("loss_coefficients", key)["k"])


@dataclass(frozen=True, slots=True)
class Air:
    """State of the air: pressure in Pa, density in kg/m3, viscosity in Pa s."""

    pressure: float
    density: float
    viscosity: float


def air_at(temperature: float, altitude: float) -> Air:
    """Return the air at a temperature in degC and an altitude in m."""
    pressure = air.standard_pressure(altitude)
    return Air(pressure, air.density(temperature, pressure), air.viscosity(temperature))


@dataclass(frozen=True, slots=True)
class Vacuum:
    """Suction in Pa at a flow in m3/s; it is 0 at ``open_flow``. ``measured`` ends are in m3/s."""

    curve: fan.Curve
    open_flow: float
    points: tuple[tuple[float, float], ...] = ()

    @property
    def sealed(self) -> float:
        """Suction at no flow, Pa."""
        return self.curve(0.0)


def two_figures(kind: str, sealed: float, open_flow: float, density_ratio: float) -> Vacuum:
    """Return the vacuum from sealed suction (Pa) and open flow (m3/s).

    ``density_ratio`` scales the suction where the figures were taken in other air [fan_laws].
    """
    shape = fan.linear if kind == "linear" else fan.quadratic
    suction_here = sealed * density_ratio
    return Vacuum(lambda flow: shape(flow, suction_here, open_flow), open_flow)


def measured(flows: tuple[float, ...], suctions: tuple[float, ...], density_ratio: float) -> Vacuum:
    """Return the vacuum from measured pairs of flow (L/s) and suction (kPa).

    Raises
    ------
    InputError
        if the lists differ in length, a flow stands twice or the suction does not fall
    """
    if len(flows) != len(suctions):
        raise InputError(
            "point_suctions",
            list(suctions),
            f"{len(flows)} values, one for each flow",
            f"Measured suctions: {len(suctions)} values do not match {len(flows)} flows; "
            f"allowed is one suction for each flow.",
        )
    pairs = sorted(zip(flows, suctions, strict=True))
    for (flow, push), (next_flow, next_push) in pairwise(pairs):
        # A difference in the last digits would make the straight line between them vertical.
        if next_flow - flow < 0.01 or push - next_push < 0.001:
            raise InputError(
                "point_suctions",
                list(suctions),
                "suction that falls from each flow to the next greater one",
                f"Measured suctions: {next_push:g} kPa at {next_flow:g} L/s does not lie below "
                f"{push:g} kPa at {flow:g} L/s; allowed is suction that falls as flow rises.",
            )
    points = tuple((flow * MILLI, push * KILO * density_ratio) for flow, push in pairs)
    return Vacuum(lambda flow: fan.through_points(flow, points), fan.open_flow_of(points), points)


@dataclass(frozen=True, slots=True)
class Hose:
    """Hose: length and bore in m, pitch of corrugation in m or None, roughness in m."""

    length: float
    bore: float
    pitch: float | None
    roughness: float

    @property
    def area(self) -> float:
        """Area of the bore, m2."""
        return duct.circle(self.bore)

    def factor(self, reynolds: float) -> float:
        """Return the friction factor; a corrugated hose is never better than a smooth one."""
        plain = duct.friction_factor(reynolds, self.roughness / self.bore)
        if self.pitch is None:
            return plain
        return max(plain, duct.hawthorne(self.bore, self.pitch))


@dataclass(frozen=True, slots=True)
class Nozzle:
    """Nozzle: free area in m2, entry loss on the speed in it, and whether it is a collar.

    ``opening`` holds the formulas of the air in front; a collar has none.
    """

    area: float
    entry: float
    opening: suction.Opening | None


def nozzle(x: Inputs) -> Nozzle:
    """Return the nozzle of the shape that was chosen."""
    if x.nozzle == "collar":
        area = duct.circle(required("hole", x.hole) * MILLI) + required("gaps", x.gaps) * CM2
        return Nozzle(area, coefficient("sharp_slot"), None)
    flanged = x.nozzle.startswith("flanged")
    entry = coefficient("flanged_end" if flanged else "plain_end")
    if x.nozzle.endswith("slot"):
        sides = required("slot_length", x.slot_length), required("slot_width", x.slot_width)
        make_slot = suction.flanged_slot if flanged else suction.plain_slot
        # Which side was typed first does not matter to the air.
        opening = make_slot(max(sides) * MILLI, min(sides) * MILLI)
    else:
        make_round = suction.flanged_round if flanged else suction.plain_round
        opening = make_round(required("nozzle_bore", x.nozzle_bore) * MILLI)
    return Nozzle(opening.area, entry, opening)


@dataclass(frozen=True, slots=True)
class System:
    """Everything the air passes on its way to the vacuum."""

    air: Air
    nozzle: Nozzle
    hose: Hose
    bends: int
    bend_loss: float
    chamber: float

    def reynolds(self, flow: float) -> float:
        """Return the Reynolds number in the hose at a flow in m3/s."""
        return duct.reynolds(
            self.air.density, flow / self.hose.area, self.hose.bore, self.air.viscosity
        )

    def parts(self) -> tuple[tuple[str, Callable[[float], float]], ...]:
        """Return the parts in the order of the air, each with its loss in Pa at a flow."""
        return (
            ("Nozzle entry", self._entry),
            ("Step from nozzle to hose", self._step),
            ("Hose wall", self._wall),
            ("Bends", lambda flow: self._on_hose(self.bends * self.bend_loss, flow)),
            ("Dump into the catch chamber", self._dump),
        )

    def loss(self, flow: float) -> float:
        """Return the whole loss in Pa at a flow in m3/s."""
        if flow <= 0:
            return 0.0
        return math.fsum(part(flow) for _, part in self.parts())

    def _on_hose(self, k: float, flow: float) -> float:
        return duct.minor_loss(k, self.air.density, flow / self.hose.area)

    def _entry(self, flow: float) -> float:
        return duct.minor_loss(self.nozzle.entry, self.air.density, flow / self.nozzle.area)

    def _step(self, flow: float) -> float:
        small, large = self.nozzle.area, self.hose.area
        if self.nozzle.opening is None:  # the hose end stands flush in the back of the collar
            return self._on_hose(coefficient("flanged_end"), flow)
        if small < large:
            k = duct.sudden_expansion(small, large)
            return duct.minor_loss(k, self.air.density, flow / small)
        return self._on_hose(duct.sudden_contraction(large, small), flow)

    def _wall(self, flow: float) -> float:
        return duct.friction_loss(
            self.hose.factor(self.reynolds(flow)),
            self.hose.length,
            self.hose.bore,
            self.air.density,
            flow / self.hose.area,
        )

    def _dump(self, flow: float) -> float:
        return self._on_hose(duct.sudden_expansion(self.hose.area, self.chamber**2), flow)


def operating_flow(vacuum: Vacuum, system: System) -> float:
    """Return the flow in m3/s at which the vacuum's suction equals the system's loss."""
    return fan.operating_flow(vacuum.curve, system.loss, vacuum.open_flow)


def vacuum_of(x: Inputs, density: float) -> Vacuum:
    """Return the vacuum; figures of a label are taken to the air's density here, kg/m3."""
    ratio = density / air.STANDARD_DENSITY if x.figures_from == "label" else 1.0
    if x.vacuum == "points":
        flows = required("point_flows", x.point_flows)
        return measured(flows, required("point_suctions", x.point_suctions), ratio)
    sealed = required("sealed", x.sealed) * KILO
    return two_figures(x.vacuum, sealed, required("open_flow", x.open_flow) * MILLI, ratio)


def system_of(x: Inputs) -> System:
    """Return all that the air passes.

    Raises :class:`InputError` for a chamber narrower than the hose.
    """
    side, bore = x.chamber * CENTI, x.hose_bore * MILLI
    if side < bore:
        raise InputError(
            "chamber",
            x.chamber,
            "a side of at least the hose bore",
            "Catch chamber, side: it is narrower than the hose; "
            "allowed is a side of at least the hose bore.",
        )
    return System(
        air=air_at(x.temperature, x.altitude),
        nozzle=nozzle(x),
        hose=Hose(
            length=x.hose_length,
            bore=bore,
            pitch=None if x.pitch is None else x.pitch * MILLI,
            roughness=0.0 if x.roughness is None else x.roughness * MILLI,
        ),
        bends=x.bends,
        bend_loss=coefficient(x.bend),
        chamber=side,
    )

"""One hose and what it does to an animal, and two of them side by side."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from typing import Any

from calc.errors import required
from calc.method import air, bodies, duct, insect
from calc.method import breath as gas
from calc.method import mesh as wire
from calc.method.catch_chamber import landing
from calc.method.catch_chamber.inputs import Inputs
from calc.method.live_box import Animals
from calc.method.told import both


@dataclass(frozen=True, slots=True)
class Setup:
    """One hose: name, flow in m3/s, bore in m, length in m, and what it does to an animal."""

    name: str
    flow: float
    bore: float
    length: float
    animal: bodies.Animal
    density: float

    @property
    def air_speed(self) -> float:
        """Mean air speed in the hose, m/s."""
        return self.flow / duct.circle(self.bore)

    def arrives(self, share: float = 1.0, length: float | None = None) -> float:
        """Return the arrival speed in m/s for a share of the area, and maybe another length."""
        return landing.arrival(
            self.air_speed,
            self.density,
            self.animal.area * share,
            self.animal.mass,
            self.length if length is None else length,
        )

    @property
    def lift(self) -> float:
        """Drag of the hose's air on a limp animal over its weight."""
        return insect.drag_in_body_weights(
            self.density, self.air_speed, self.animal.area, self.animal.mass
        )


def setups_of(x: Inputs, animal: bodies.Animal, density: float) -> list[Setup]:
    """Return set-up A and, where they are compared, set-up B, in air of ``density`` kg/m3."""
    made = [("A", x.flow_a, x.bore_a, x.length_a)]
    if x.compare == "yes":
        made.append(
            (
                "B",
                required("flow_b", x.flow_b),
                required("bore_b", x.bore_b),
                required("length_b", x.length_b),
            )
        )
    return [
        Setup(name, flow / 1000, bore / 1000, length, animal, density)
        for name, flow, bore, length in made
    ]


def meets_at(setup: Setup, gap: float) -> float:
    """Return the speed in m/s with which the animal meets the catch, ``gap`` cm from the hose."""
    rate = insect.drag_rate(setup.density, setup.animal.area, setup.animal.mass)
    return landing.coasting(setup.arrives(), rate, gap / 100)


def hose(setup: Setup) -> dict[str, Any]:
    """Return what the hose does: air, arrival and its range in m/s, lift in body weights."""
    return {
        "air": setup.air_speed,
        "arrival": setup.arrives(),
        "range": (setup.arrives(landing.AREA_LOW), setup.arrives(landing.AREA_HIGH)),
        "lift": setup.lift,
    }


def touch(setup: Setup, x: Inputs) -> dict[str, Any]:
    """Return the landing: m/s, mJ, fall in m, body weights, give wanted in mm."""
    meets = meets_at(setup, x.gap)
    return {
        "meets": meets,
        "energy": landing.energy(setup.animal.mass, meets),
        "drop": landing.drop_height(meets),
        "force": landing.mean_deceleration(meets, x.give / 1000) / insect.GRAVITY,
        "needed": landing.give_needed(meets),
    }


def mesh(setup: Setup, x: Inputs) -> dict[str, Any]:
    """Return the mesh: hose areas, loss clean and half covered in Pa, area wanted in cm2."""
    share = duct.mesh_open_share(x.mesh_opening, x.mesh_wire)
    viscosity = air.viscosity(x.temperature)
    clean, half = (
        wire.mesh_loss(
            setup.flow,
            x.mesh_area / 1e4,
            part,
            x.mesh_opening / 1000,
            setup.density,
            viscosity,
        )
        for part in (share, share / 2)
    )
    return {
        "areas": x.mesh_area / 1e4 / duct.circle(setup.bore),
        "clean": clean,
        "half": half,
        "wanted": landing.target("hose_areas") * duct.circle(setup.bore) * 1e4,
    }


def running(setup: Setup, animals: Animals, temperature: float) -> dict[str, Any]:
    """Return what the animals add to the air that passes: carbon dioxide in percent, K."""
    flow = setup.flow * 60_000
    return {
        "carbon_dioxide": animals.carbon_dioxide(temperature) / 1000 / 60 / flow * 100,
        "rise": animals.heat(temperature) / gas.heat_carried(flow, temperature),
    }


def _column(setup: Setup, x: Inputs, animals: Animals) -> list[tuple[str, str]]:
    flown, landed = hose(setup), touch(setup, x)
    meshed, runs = mesh(setup, x), running(setup, animals, x.temperature)
    low, high = flown["range"]
    return [
        ("Air in the hose", both(flown["air"], "m/s", "mph")),
        ("Lift, body weights", f"{flown['lift']:.1f}"),
        ("Arrives at", both(flown["arrival"], "m/s", "mph")),
        (
            "Arrives between",
            f"{low:.0f} and {both(high, 'm/s', 'mph')}",
        ),
        ("Meets the catch at", both(landed["meets"], "m/s", "mph")),
        ("Energy", f"{landed['energy']:.0f} mJ"),
        ("Like a fall of", both(landed["drop"], "m", "ft", 1)),
        ("Braked by, body weights", f"{landed['force']:.0f}"),
        ("Give wanted", both(landed["needed"], "mm", "inch", 0, 1)),
        ("Mesh, in hose areas", f"{meshed['areas']:.0f}"),
        ("Mesh to aim for", both(meshed["wanted"], "cm**2", "inch**2", -1)),
        ("Mesh loss, clean", both(meshed["clean"], "Pa", "inH2O", 1, 3)),
        ("Mesh loss, half covered", both(meshed["half"], "Pa", "inH2O", 1, 3)),
        ("Carbon dioxide they add", f"{runs['carbon_dioxide']:.3f} %"),
        ("They warm the air by", both(runs["rise"], "delta_degC", "delta_degF", 1, 1)),
    ]


def compared(x: Inputs, setups: Sequence[Setup], animals: Animals) -> list[dict[str, str]]:
    """Return the rows of the comparison: what, set-up A, set-up B in both systems of units."""
    columns = [_column(setup, x, animals) for setup in setups]
    return [
        {
            "what": what,
            "a": first,
            "b": columns[1][place][1] if len(columns) > 1 else "not compared",
        }
        for place, (what, first) in enumerate(columns[0])
    ]

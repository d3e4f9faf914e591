"""The parts of the flow calculator against general-purpose libraries."""

from __future__ import annotations

import math
from itertools import pairwise

import pytest
from fluids.atmosphere import ATMOSPHERE_1976
from fluids.core import Reynolds, dP_from_K
from fluids.filters import round_edge_screen
from fluids.fittings import (
    bend_rounded,
    contraction_conical_Crane,
    diffuser_sharp,
    entrance_distance,
    entrance_sharp,
)
from fluids.friction import Colebrook, Haaland, friction_factor
from scipy.optimize import brentq

from calc.method import air, duct
from calc.method.flow_and_reach import flow_and_reach
from calc.method.flow_and_reach.inputs import Inputs
from calc.method.flow_and_reach.system import (
    coefficient,
    operating_flow,
    system_of,
    vacuum_of,
)
from calc.method.insect import arrival_share

GRID = [
    (re, rough)
    for re in (4000.0, 1e4, 5e4, 1e5, 1e6)
    for rough in (0.0, 1e-5, 1e-4, 1e-3, 0.01, 0.05)
]


@pytest.mark.library("fluids")
@pytest.mark.parametrize(("re", "rough"), GRID)
def test_colebrook(re: float, rough: float) -> None:
    # fluids 1.3.1, fluids.friction.Colebrook (closed form with the Wright omega function)
    assert duct.colebrook(re, rough) == pytest.approx(Colebrook(re, rough), rel=1e-10)


@pytest.mark.library("fluids")
@pytest.mark.parametrize(("re", "rough"), GRID[6:])
def test_haaland(re: float, rough: float) -> None:
    # fluids 1.3.1, fluids.friction.Haaland
    assert duct.haaland(re, rough) == pytest.approx(Haaland(re, rough), rel=1e-12)


@pytest.mark.library("fluids")
@pytest.mark.parametrize("re", [1.0, 100.0, 1000.0, 2000.0])
def test_laminar(re: float) -> None:
    # fluids 1.3.1, fluids.friction.friction_factor, laminar below 2040
    assert duct.friction_factor(re) == pytest.approx(friction_factor(re), rel=1e-12)


@pytest.mark.library("fluids")
@pytest.mark.parametrize("re", [5e3, 7e4, 3e5])
def test_turbulent(re: float) -> None:
    # fluids 1.3.1, fluids.friction.friction_factor
    mine = duct.friction_factor(re, 0.002)
    assert mine == pytest.approx(friction_factor(re, 0.002), rel=1e-5)


@pytest.mark.library("fluids")
@pytest.mark.parametrize("altitude", [-400.0, 0.0, 500.0, 1000.0, 1500.0, 2500.0, 4500.0])
def test_atmosphere(altitude: float) -> None:
    # fluids 1.3.1, fluids.atmosphere.ATMOSPHERE_1976: T, P, rho
    known = ATMOSPHERE_1976(altitude)
    assert air.standard_temperature(altitude) == pytest.approx(known.T, rel=1e-6)
    assert air.standard_pressure(altitude) == pytest.approx(known.P, rel=1e-5)
    assert air.standard_density(altitude) == pytest.approx(known.rho, rel=1e-5)


@pytest.mark.library("fluids")
@pytest.mark.parametrize("altitude", [0.0, 500.0, 1500.0, 3000.0, 4500.0])
def test_viscosity(altitude: float) -> None:
    # fluids 1.3.1, ATMOSPHERE_1976.mu: the standard's own Sutherland form
    known = ATMOSPHERE_1976(altitude)
    assert air.viscosity(known.T - 273.15) == pytest.approx(known.mu, rel=2e-4)


@pytest.mark.library("fluids")
def test_reynolds_and_minor_loss() -> None:
    # fluids 1.3.1, fluids.core.Reynolds and dP_from_K
    assert duct.reynolds(1.204, 20, 0.038, 1.813e-5) == pytest.approx(
        Reynolds(V=20, D=0.038, rho=1.204, mu=1.813e-5)
    )
    assert duct.minor_loss(1.5, 1.204, 20) == pytest.approx(dP_from_K(K=1.5, rho=1.204, V=20))


@pytest.mark.library("fluids")
@pytest.mark.parametrize("wide", [0.05, 0.076, 0.10, 0.30])
def test_sudden_widening(wide: float) -> None:
    # fluids 1.3.1, fluids.fittings.diffuser_sharp
    mine = duct.sudden_expansion(duct.circle(0.038), duct.circle(wide))
    assert mine == pytest.approx(diffuser_sharp(Di1=0.038, Di2=wide), rel=1e-12)


@pytest.mark.library("fluids")
@pytest.mark.parametrize("wide", [0.05, 0.076, 0.30])
def test_sudden_narrowing(wide: float) -> None:
    # fluids 1.3.1, fluids.fittings.contraction_conical_Crane with length 0 (Crane TP-410)
    mine = duct.sudden_contraction(duct.circle(0.038), duct.circle(wide))
    assert mine == pytest.approx(contraction_conical_Crane(Di1=wide, Di2=0.038, l=0), rel=1e-12)


@pytest.mark.library("fluids")
def test_entries_lie_where_other_handbooks_put_them() -> None:
    # fluids 1.3.1, entrance_sharp: flush entry 0.50 (Idelchik) to 0.57 (Rennels)
    known = [entrance_sharp(), entrance_sharp(method="Idelchik")]
    assert coefficient("flanged_end") == pytest.approx(min(known), abs=0.02)
    # entrance_distance: a tube that sticks out loses more than a flush one, at most 1
    assert entrance_distance(Di=0.038, t=0.002) <= coefficient("plain_end") <= 1


@pytest.mark.library("fluids")
def test_gentle_bend() -> None:
    # fluids 1.3.1, bend_rounded of two diameters: Rennels 0.225, Crane 0.242
    known = [
        bend_rounded(Di=0.038, angle=90, bend_diameters=2, Re=5e4, method=method)
        for method in ("Rennels", "Crane")
    ]
    assert coefficient("gentle_bend") == pytest.approx(max(known), rel=0.05)


@pytest.mark.library("fluids")
@pytest.mark.parametrize("share", [0.301, 0.5, 0.6016, 0.7463])
@pytest.mark.parametrize("re", [5.0, 25.0, 90.0, 150.0, 400.0, 5000.0])
def test_screen(share: float, re: float) -> None:
    # fluids 1.3.1, fluids.filters.round_edge_screen (Blevins 1984)
    assert duct.screen_loss(share, re) == pytest.approx(round_edge_screen(share, re), rel=1e-12)


CASES = [
    {},
    {"vacuum": "quadratic"},
    {"vacuum": "points"},
    {"hose_wall": "smooth", "hose_length": 12},
    {"hose_wall": "rough", "roughness": 0.9, "altitude": 2500, "temperature": -5},
    {"sealed": 0.1, "open_flow": 1, "hose_length": 30, "hose_bore": 20, "hose_wall": "smooth"},
    {"nozzle": "flanged_slot", "bends": 9, "bend": "sharp_bend"},
    {"nozzle": "collar", "hole": 8, "gaps": 0, "vacuum": "quadratic", "open_flow": 200},
]


@pytest.mark.library("scipy")
@pytest.mark.parametrize("given", CASES)
def test_operating_point(given: dict[str, object]) -> None:
    # scipy 1.17, scipy.optimize.brentq on the same two curves
    x = Inputs(**flow_and_reach.reading(flow_and_reach.example() | given).values)
    system = system_of(x)
    vacuum = vacuum_of(x, system.air.density)
    root = brentq(
        lambda flow: vacuum.curve(flow) - system.loss(flow), 0.0, vacuum.open_flow, xtol=1e-15
    )
    assert operating_flow(vacuum, system) == pytest.approx(root, rel=1e-9)


@pytest.mark.library("scipy")
@pytest.mark.parametrize("distance", [1e-4, 0.25, 1.0, 4.0, 50.0])
def test_arrival(distance: float) -> None:
    # scipy 1.17, scipy.integrate.solve_ivp on the equation of motion in distance:
    # v dv/dx = k (V - v)^2, written for the share p of the air's speed
    from scipy.integrate import solve_ivp

    solved = solve_ivp(
        lambda _, square: 2 * (1 - square**0.5) ** 2, (0, distance), [0.0], rtol=1e-10, atol=1e-14
    )
    assert arrival_share(distance) == pytest.approx(math.sqrt(solved.y[0][-1]), rel=1e-6)


@pytest.mark.parametrize("re", [4e3, 1e5, 1e8])
@pytest.mark.parametrize("rough", [0.0, 1e-4, 0.05])
def test_newton_climbs_to_the_root_of_a_concave_curve(re: float, rough: float) -> None:
    def miss(x: float) -> float:
        return x + 2 * math.log10(rough / 3.7 + 2.51 / re * x)

    x = [0.5 + 0.5 * place for place in range(60)]
    slopes = [miss(b) - miss(a) for a, b in pairwise(x)]
    assert min(slopes) > 0
    assert all(later <= sooner + 1e-12 for sooner, later in pairwise(slopes))
    assert "without a bend" not in (duct.colebrook.__doc__ or "")

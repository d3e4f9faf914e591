"""Chamber, box and release against libraries and sentences from outside the project."""

from __future__ import annotations

import math

import fluids
import psychrolib
import pytest
from scipy.integrate import solve_ivp
from scipy.optimize import brentq
from scipy.stats import binomtest

from calc.method import air, duct, insect
from calc.method import breath as gas
from calc.method.catch_chamber import landing
from calc.method.live_box import Animals, Box, car_rise, minutes_to_temperature, steady_rise
from calc.method.mesh import mesh_loss
from calc.method.moving_a_nest import homing
from calc.tables import row, rows

psychrolib.SetUnitSystem(psychrolib.SI)
RHO = 1.2041


# scipy 1.17, integrate.solve_ivp: the law of motion is integrated in time, not in distance.
@pytest.mark.library("scipy")
@pytest.mark.parametrize(
    ("mass", "area", "wind", "length"),
    [(477.5, 70.0, 29.9, 3.0), (74.1, 25.0, 14.0, 1.5), (84.1, 25.0, 33.7, 5.0), (800, 99, 21, 2)],
)
def test_arrival_against_an_integrator(
    mass: float, area: float, wind: float, length: float
) -> None:
    k = insect.drag_rate(RHO, area, mass)

    def move(_: float, y: list[float]) -> list[float]:
        return [y[1], k * (wind - y[1]) ** 2]

    def end(_: float, y: list[float]) -> float:
        return y[0] - length

    end.terminal = True  # type: ignore[attr-defined]
    done = solve_ivp(move, (0, 60), [0.0, 0.0], events=end, rtol=1e-10, atol=1e-12)
    assert landing.arrival(wind, RHO, area, mass, length) == pytest.approx(
        done.y_events[0][0][1], rel=1e-6
    )


@pytest.mark.library("scipy")
@pytest.mark.parametrize(("mass", "area", "gap"), [(477.5, 70.0, 0.3), (74.1, 25.0, 1.0)])
def test_coasting_against_an_integrator(mass: float, area: float, gap: float) -> None:
    k = insect.drag_rate(RHO, area, mass)
    done = solve_ivp(lambda _, v: -k * v, (0, gap), [14.0], rtol=1e-10, atol=1e-12)
    assert landing.coasting(14.0, k, gap) == pytest.approx(done.y[0][-1], rel=1e-7)


# fluids 1.3, filters.round_edge_screen and core.dP_from_K.
@pytest.mark.library("fluids")
@pytest.mark.parametrize(
    ("opening", "wire", "flow", "area"),
    [
        (2.5, 0.7, 0.034, 0.04),
        (2.5, 0.7, 0.044, 0.0625),
        (4.0, 1.0, 0.02, 0.01),
        (1.3, 0.28, 0.03, 0.05),
    ],
)
def test_mesh_loss_against_fluids(opening: float, wire: float, flow: float, area: float) -> None:
    share = duct.mesh_open_share(opening, wire)
    mu = air.viscosity(20.0)
    speed = flow / area
    reynolds = fluids.Reynolds(V=speed, D=opening / 1000, rho=RHO, mu=mu)
    k = fluids.filters.round_edge_screen(share, reynolds)
    expected = fluids.dP_from_K(K=k, rho=RHO, V=speed)
    ours = mesh_loss(flow, area, share, opening / 1000, RHO, mu)
    assert ours == pytest.approx(expected, rel=0.005)


# psychrolib 2.5, GetDryAirEnthalpy and GetDryAirDensity.
@pytest.mark.library("psychrolib")
@pytest.mark.parametrize(("temperature", "exchange"), [(10.0, 2040.0), (22.0, 8.0), (35.0, 1.0)])
def test_heat_carried_against_psychrolib(temperature: float, exchange: float) -> None:
    density = psychrolib.GetDryAirDensity(temperature, 101_325.0)
    enthalpy = psychrolib.GetDryAirEnthalpy(temperature + 1) - psychrolib.GetDryAirEnthalpy(
        temperature
    )
    expected = density * enthalpy * exchange / 60_000
    assert gas.heat_carried(exchange, temperature) == pytest.approx(expected, rel=2e-3)


# psychrolib densities give the pressure, fluids 1.3 flow_meter_discharge the flow of the orifice.
@pytest.mark.library("fluids")
@pytest.mark.parametrize(("rise", "height", "area"), [(2.0, 0.125, 0.0008), (6.0, 0.3, 0.01)])
def test_stack_flow_against_an_orifice(rise: float, height: float, area: float) -> None:
    outside, inside = (psychrolib.GetDryAirDensity(t, 101_325.0) for t in (22.0, 22.0 + rise))
    push = 9.80665 * height * (outside - inside)
    bore = math.sqrt(4 * area / math.pi)
    # What leaves at the top is inside air.
    mass = fluids.flow_meter.flow_meter_discharge(
        D=1000 * bore, Do=bore, P1=101_325.0 + push, P2=101_325.0, rho=inside, C=0.65
    )
    ours = gas.stack_flow(0.65, area, height, rise, 22.0 + rise)
    # The formula divides by the inside temperature, the orifice by the inside density.
    assert ours == pytest.approx(mass / inside, rel=0.015)


# scipy 1.17, integrate.solve_ivp: the balance of carbon dioxide.
@pytest.mark.library("scipy")
@pytest.mark.parametrize(
    ("volume", "gives", "exchange"), [(20, 600, 2.0), (30, 180, 9.3), (20, 600, 0)]
)
def test_share_after_against_an_integrator(volume: float, gives: float, exchange: float) -> None:
    gain = gives / 1000 / 60
    done = solve_ivp(
        lambda _, c: (gain - exchange * (c - gas.OUTSIDE_SHARE)) / volume,
        (0, 45),
        [gas.OUTSIDE_SHARE],
        rtol=1e-10,
        atol=1e-14,
    )
    assert gas.share_after(volume, gives, exchange, 45) == pytest.approx(done.y[0][-1], rel=1e-6)


# scipy 1.17, optimize.brentq: where heat made and heat lost meet.
@pytest.mark.library("scipy")
@pytest.mark.parametrize(
    ("mass", "state", "wall"), [(143.0, "restless", 2.0), (143.0, "caught", 0.5)]
)
def test_settling_point_against_a_root_finder(mass: float, state: str, wall: float) -> None:
    animals, box = Animals(mass, state), Box(20.0, wall, 0.0008, 0.25)

    def miss(rise: float) -> float:
        return box.loss(rise, 22 + rise) - animals.heat(22 + rise)

    ours = steady_rise(box, animals, 22.0)
    assert ours == pytest.approx(brentq(miss, 1e-6, 20.0), abs=1e-4)


# scipy 1.17, integrate.solve_ivp: the warming in time, not in temperature.
@pytest.mark.library("scipy")
@pytest.mark.parametrize(
    ("mass", "state", "outside"),
    [(900.0, "caught", 28.0), (3000.0, "caught", 20.0), (3000.0, "calm", 28.0)],
)
def test_warming_against_an_integrator(mass: float, state: str, outside: float) -> None:
    animals, box = Animals(mass, state), Box(20.0, 2.0)
    capacity = 20 / 1000 * 1.2 * gas.SPECIFIC_HEAT + mass * 3.4

    def warm(_: float, t: list[float]) -> list[float]:
        return [(animals.heat(t[0]) - box.loss(t[0] - outside, t[0])) / capacity]

    def hot(_: float, t: list[float]) -> float:
        return t[0] - 35.0

    hot.terminal = True  # type: ignore[attr-defined]
    done = solve_ivp(warm, (0, 36_000), [outside], events=hot, rtol=1e-9, atol=1e-9)
    ours = minutes_to_temperature(box, animals, outside, 35.0)
    assert ours == pytest.approx(done.t_events[0][0] / 60, rel=2e-3)


# scipy 1.17, stats.binomtest(...).proportion_ci(method="wilson").
@pytest.mark.library("scipy")
@pytest.mark.parametrize("key", [each["key"] for each in rows("homing_returns")])
def test_homing_limits_against_scipy(key: str) -> None:
    each = row("homing_returns", key)
    expected = binomtest(each["returned"], each["released"]).proportion_ci(method="wilson")
    assert homing.returned_limits(each["returned"], each["released"]) == pytest.approx(
        (100 * expected.low, 100 * expected.high), abs=1e-6
    )


@pytest.mark.published("kaefer_thesis")
def test_honey_bee_and_wasp_at_20_degrees() -> None:
    # Käfer, thesis abstract: at 20 °C wasps give off 60 % more than honey bees.
    ratio = gas.resting_rate(20.0) / row("respiration", "bee_20")["rate"]
    assert ratio == pytest.approx(1.60, abs=0.05)


@pytest.mark.published("mclaren_2005")
def test_parked_car_against_the_second_study() -> None:
    # McLaren 2005, abstract: about 40 °F in an hour, 80 % of it in the first half hour.
    assert car_rise(60) == pytest.approx(40, abs=5)
    assert car_rise(30) / car_rise(60) == pytest.approx(0.80, abs=0.05)


@pytest.mark.published("null_parked_cars")
def test_parked_car_against_a_meteorologists_note() -> None:
    # Note of 2010: 19 degrees in ten minutes, ten more in the next ten; 100 °F becomes 129 °F.
    assert car_rise(20) - car_rise(10) == pytest.approx(10, abs=0.5)
    assert 100 + car_rise(20) == pytest.approx(129, abs=0.5)


@pytest.mark.published("callister_5_7")
def test_steady_diffusion_against_a_textbook() -> None:
    # Callister 5.7: D 1.2e-10 m²/s over 1.8 mm from 2 to 0.5 kg/m³ gives 1.0e-7 kg/m²/s.
    flux = gas.diffusion_flow(1.2e-10, 1.0, 1.8e-3) * (2.0 - 0.5)
    assert flux == pytest.approx(1.0e-7, abs=0.05e-7)

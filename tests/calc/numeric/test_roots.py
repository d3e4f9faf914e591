"""Roots, minima and interpolation against scipy and numpy."""

from __future__ import annotations

import math
from collections.abc import Callable

import numpy as np
import pytest
from scipy import optimize

from calc.numeric.interpolate import linear
from calc.numeric.minimise import minimum, top_whole
from calc.numeric.roots import first_whole, root

CURVES = [
    (lambda x: x**3 - 2 * x - 5, 1.0, 4.0),
    (lambda x: math.cos(x) - x, 0.0, 2.0),
    (lambda x: math.exp(-x) - 1e-9, 0.0, 700.0),
    (lambda x: math.atan(x - 1e4), -1e6, 1e6),
    (lambda x: (x - 0.3) ** 9, 0.0, 1.0),
    (lambda x: -1.0 if x < math.pi else 1.0, 0.0, 10.0),
]


# Outside reference: scipy 1.17.1, optimize.brentq and optimize.bisect.
@pytest.mark.library("scipy")
@pytest.mark.parametrize(("curve", "low", "high"), CURVES)
def test_root(curve: Callable[[float], float], low: float, high: float) -> None:
    found = root(curve, low, high)
    wanted = optimize.bisect(curve, low, high, xtol=1e-300, rtol=1e-15, maxiter=5000)
    tolerance = {"rel": 1e-12} if (curve(wanted + 1e-3) > 1e-20) else {"abs": 1e-2}
    assert found == pytest.approx(wanted, **tolerance)
    assert root(lambda x: -curve(x), low, high) == pytest.approx(found, **tolerance)


# Outside reference: scipy 1.17.1, calls of optimize.brentq for the same root.
@pytest.mark.library("scipy")
def test_root_is_found_in_few_calls() -> None:
    calls = []

    def curve(x: float) -> float:
        calls.append(x)
        return x**3 - 2 * x - 5

    root(curve, 1, 4)
    _, told = optimize.brentq(lambda x: x**3 - 2 * x - 5, 1, 4, full_output=True)
    assert len(calls) <= told.function_calls + 5


def test_root_refuses_ends_of_one_sign_and_takes_a_zero_end() -> None:
    with pytest.raises(ValueError, match="no change of sign"):
        root(lambda x: x * x + 1, -1, 1)
    assert root(lambda x: x, 0, 1) == 0
    assert root(lambda x: x - 1, 0, 1) == 1


@pytest.mark.parametrize("first", [0, 1, 2, 7, 100, 12345])
def test_first_whole(first: int) -> None:
    assert first_whole(lambda n: n >= first, 0) == first
    assert first_whole(lambda n: n >= first, 0, 12345) == first
    assert first_whole(lambda n: n >= first, 0, first - 1) == (0 if first == 0 else None)


# Outside reference: scipy 1.17.1, optimize.minimize_scalar, bounded.
@pytest.mark.library("scipy")
@pytest.mark.parametrize("top", [0.0, 0.2, 3.7, 10.0])
def test_minimum(top: float) -> None:
    def cost(x: float) -> float:
        return math.cosh(x - top)

    place, least = minimum(cost, 0, 10)
    found = optimize.minimize_scalar(
        cost, bounds=(0, 10), method="bounded", options={"xatol": 1e-9}
    )
    assert place == pytest.approx(found.x, abs=1e-5)
    assert least == pytest.approx(found.fun, rel=1e-12)


@pytest.mark.parametrize("top", [0, 1, 5, 99, 1000])
def test_top_whole(top: int) -> None:
    assert top_whole(lambda x: -((x - top) ** 2), 2**20) == top


# Outside reference: numpy, interp.
@pytest.mark.library("numpy")
@pytest.mark.parametrize("x", [-1, 0, 0.5, 1, 1.7, 4, 9])
def test_linear(x: float) -> None:
    places, values = (0.0, 1.0, 4.0), (3.0, -1.0, 8.0)
    assert linear(x, places, values) == pytest.approx(float(np.interp(x, places, values)))


def test_linear_needs_points() -> None:
    with pytest.raises(ValueError, match="as many values"):
        linear(1, (), ())

"""Removal counting against reference libraries: tails, roots, maxima, direct sums."""

from __future__ import annotations

import math

import numpy as np
import pytest
from scipy import integrate, optimize, special, stats

from calc.method.how_many_left.fit import expected_catches, fit_test
from calc.method.removal import carle_strub, standard_errors, weighted_sum, zippin
from calc.method.removal.effort import gould_pollock, leslie, log_likelihood
from calc.method.removal.quantiles import number_quantiles
from calc.method.removal.stopping import (
    chance_at_most,
    log_normal_interval,
    outlook,
    passes_from_start,
)
from calc.method.waiting_for_stragglers.fit import Watch, fit

# Outside reference in this file: scipy 1.17 (stats, special, optimize), numpy 2.4.

FALLING = [
    (38, 26, 12),
    (60, 35, 20, 11),
    (30, 10, 3, 1, 0),
    (60, 25, 9, 3, 1, 0, 0),
    (1477, 133, 46),
    (5, 5, 4),
    (200, 199),
    (120, 0),
    (3, 0, 0, 0),
    (100_000, 50_000),
]


def negative_log(catches: tuple[int, ...], lengths: tuple[float, ...], hazard: float) -> float:
    # The catches of all passes are multinomial given their sum: scipy.stats.multinomial.
    before = np.cumsum([0, *lengths[:-1]])
    share = np.exp(-hazard * before) * -np.expm1(-hazard * np.array(lengths))
    return -float(stats.multinomial.logpmf(catches, sum(catches), share / share.sum()))


@pytest.mark.library("scipy")
@pytest.mark.parametrize(
    ("catches", "lengths"),
    [
        ((38, 26, 12), (1.0, 1.0, 1.0)),
        ((60, 45, 20, 9), (5.0, 10.0, 10.0, 10.0)),
        ((117, 75, 87, 67, 58, 67, 42), (5.0, 7.0, 5.0, 5.0, 4.0, 6.0, 5.0)),
        ((30, 0, 4), (2.0, 1.0, 3.0)),
    ],
)
def test_likelihood_with_effort_is_at_its_top(
    catches: tuple[int, ...], lengths: tuple[float, ...]
) -> None:
    fit = gould_pollock(catches, lengths)
    # scipy.optimize.minimize_scalar on scipy.stats.multinomial
    best = optimize.minimize_scalar(
        lambda hazard: negative_log(catches, lengths, hazard),
        bounds=(fit.hazard / 5, fit.hazard * 5),
        method="bounded",
        options={"xatol": 1e-12},
    )
    assert fit.hazard == pytest.approx(best.x, rel=1e-5)
    assert fit.number == pytest.approx(
        sum(catches) / -math.expm1(-fit.hazard * sum(lengths)), rel=1e-12
    )
    difference = log_likelihood(fit.hazard, catches, lengths) - log_likelihood(
        fit.hazard / 2, catches, lengths
    )
    assert difference == pytest.approx(
        negative_log(catches, lengths, fit.hazard / 2) - negative_log(catches, lengths, fit.hazard)
    )


@pytest.mark.library("scipy")
@pytest.mark.parametrize("catches", [(38, 26, 12), (124, 61, 35, 14), (10, 9), (44, 12, 1, 0)])
def test_zippin_solves_its_equation(catches: tuple[int, ...]) -> None:
    k, total = len(catches), sum(catches)
    wanted = sum(place * catch for place, catch in enumerate(catches)) / total
    # scipy.optimize.brentq on the printed equation
    q = optimize.brentq(lambda q: q / (1 - q) - k * q**k / (1 - q**k) - wanted, 1e-9, 1 - 1e-6)
    fit = zippin(catches)
    assert fit.probability == pytest.approx(1 - q, abs=1e-9)
    assert fit.number == pytest.approx(total / (1 - q**k), rel=1e-9)


def test_effort_form_equals_zippin_and_its_error_for_equal_passes() -> None:
    plain, effort = zippin((38, 26, 12)), gould_pollock((38, 26, 12), (7.0, 7.0, 7.0))
    assert effort.number == pytest.approx(plain.number, rel=1e-9)
    assert effort.number_se == pytest.approx(standard_errors(plain.number, plain.probability, 3)[0])


@pytest.mark.library("scipy")
def test_leslie_is_the_least_squares_line() -> None:
    catches, effort = (117, 75, 87, 67, 58, 67, 42), (5.0, 7.0, 5.0, 5.0, 4.0, 6.0, 5.0)
    before = np.cumsum([0, *catches[:-1]])
    # scipy.stats.linregress
    line = stats.linregress(before, np.array(catches) / np.array(effort))
    fit = leslie(catches, effort)
    assert fit.catchability == pytest.approx(-line.slope)
    assert fit.number == pytest.approx(-line.intercept / line.slope)
    assert fit.catchability_se == pytest.approx(line.stderr)
    assert fit.slope_chance == pytest.approx(line.pvalue)
    assert fit.r_squared == pytest.approx(line.rvalue**2)


@pytest.mark.library("scipy")
def test_fit_is_the_chi_square_test() -> None:
    catches = (124, 61, 35, 14)
    fit = zippin(catches)
    expected = expected_catches(fit.number, fit.probability, (1.0,) * 4)
    # scipy.stats.chisquare with one degree fewer for p
    chi2, chance = stats.chisquare(catches, expected, ddof=1)
    test = fit_test(catches, (1.0,) * 4)
    assert test is not None
    assert test.df == 2
    assert test.chi2 == pytest.approx(chi2, rel=1e-6)
    assert test.p_value == pytest.approx(chance, rel=1e-6)


def direct(catches: tuple[int, ...], furthest: int = 2_000_000) -> tuple[np.ndarray, np.ndarray]:
    """Return N and its probabilities, summed one by one with scipy.special.gammaln."""
    k, total, x = len(catches), sum(catches), weighted_sum(catches)
    n = np.arange(total, total + furthest, dtype=float)
    log = special.gammaln(n) - special.gammaln(n - total + 1)
    log += special.gammaln(k * n - x - total + 1) - special.gammaln(k * n - x + 2)
    weight = np.exp(log - log.max())
    return n, weight / (weight.sum() + weight[-1] * n[-1])


@pytest.mark.library("scipy")
@pytest.mark.parametrize("catches", FALLING)
def test_quantiles_and_chances_are_those_of_the_direct_sum(catches: tuple[int, ...]) -> None:
    n, weight = direct(catches)
    summed = np.cumsum(weight)
    chances = (0.025, 0.5, 0.95, 0.975)
    wanted = [int(n[np.searchsorted(summed, chance)]) for chance in chances]
    for found, one in zip(number_quantiles(catches, chances), wanted, strict=True):
        assert found == pytest.approx(one, rel=1e-4, abs=0)
    view = outlook(catches, (1.0,) * len(catches))
    for most in (0, 1, 4, 20):
        assert chance_at_most(most, view) == pytest.approx(summed[most], rel=1e-4, abs=1e-9)


@pytest.mark.parametrize(
    ("catches", "effort"),
    [((60, 0, 0), (20.0, 10.0, 5.0)), ((9, 0), (10.0, 30.0)), ((38, 26, 12), (10.0, 11.0, 12.0))],
)
def test_quantiles_with_effort_are_those_of_the_integral(
    catches: tuple[int, ...], effort: tuple[float, ...]
) -> None:
    # Reference: scipy.stats.nbinom over a density of p that scipy.integrate.quad makes whole.
    lengths = np.array(effort) / np.mean(effort)
    whole = float(lengths.sum())

    def density(p: float) -> float:
        h = -math.log1p(-p)
        return math.exp(log_likelihood(h, catches, tuple(lengths)))

    scale = integrate.quad(density, 0, 1, limit=400)[0]

    def chance(most: int) -> float:
        def part(p: float) -> float:
            return density(p) * stats.nbinom.cdf(most, sum(catches), 1 - (1 - p) ** whole)

        return integrate.quad(part, 0, 1, limit=400)[0] / scale

    for wanted in (0.5, 0.975):
        (found,) = number_quantiles(catches, (wanted,), effort)
        assert found is not None
        left = found - sum(catches)
        assert chance(left) >= wanted - 1e-4
        assert left == 0 or chance(left - 1) < wanted + 1e-4


def test_the_upper_end_is_never_given_up() -> None:
    # scipy.special.gammaln, one by one: the end lies at 65,000, far beyond the 2,000 at which the
    # search for it once ended.
    n, weight = direct((200, 199))
    wanted = n[np.searchsorted(np.cumsum(weight), 0.975)]
    assert wanted > 60_000
    assert number_quantiles((200, 199), (0.975,))[0] == pytest.approx(wanted, rel=1e-4)
    # The same for those still out, where the search once ended at 400.
    n, weight = direct((60, 55, 50))
    wanted = n[np.searchsorted(np.cumsum(weight), 0.975)] - 165
    watch = Watch(times=None, counts=(60, 55, 50), interval=10.0, waited=30.0, still_out=None)
    found = fit(watch)
    assert wanted > 400
    assert found is not None
    assert found.out_high == pytest.approx(wanted, rel=1e-3)


@pytest.mark.library("scipy")
def test_chance_after_further_passes_by_integration() -> None:
    catches, most, further = (38, 26, 12), 4, 3

    def density(p: float) -> float:
        q = 1 - p
        return p**76 * q ** (26 + 24) / (1 - q**3) ** 76

    def product(p: float) -> float:
        # scipy.stats.nbinom: left after k + j passes, size T
        odds = (1 - p) ** further * (1 - p) ** 3 / (1 - (1 - p) ** 3)
        return float(density(p) * stats.nbinom.cdf(most, 76, 1 / (1 + odds)))

    from scipy.integrate import quad

    whole, part = quad(density, 0, 1)[0], quad(product, 0, 1)[0]
    assert chance_at_most(most, outlook(catches, (1.0,) * 3), further) == pytest.approx(
        part / whole, rel=1e-6
    )


@pytest.mark.library("scipy")
@pytest.mark.parametrize(("number", "p"), [(100, 0.5), (300, 0.7), (1000, 0.3), (3000, 0.6)])
@pytest.mark.parametrize("most", [0, 4, 9])
def test_passes_from_start(number: int, p: float, most: int) -> None:
    # scipy.stats.binom.cdf
    k = 1
    while stats.binom.cdf(most, number, (1 - p) ** k) < 0.95:
        k += 1
    assert passes_from_start(number, p, most, 0.95) == k


@pytest.mark.library("scipy")
def test_log_normal_interval_is_that_of_scipy() -> None:
    # scipy.stats.lognorm with the mean on the log scale at the estimate, as Burnham has it
    spread = math.sqrt(math.log1p((9.687 / 15) ** 2))
    low, high = log_normal_interval(76, 91, 9.687)
    assert low - 76 == pytest.approx(stats.lognorm.ppf(0.025, spread, scale=15))
    assert high - 76 == pytest.approx(stats.lognorm.ppf(0.975, spread, scale=15))


@pytest.mark.library("scipy")
def test_carle_strub_by_stepping_one_at_a_time() -> None:
    for catches in FALLING[:8]:
        k, total, x = len(catches), sum(catches), weighted_sum(catches)

        def weighted(n: int, k: int = k, total: int = total, x: int = x) -> float:
            # The likelihood whose top the formula finds, p averaged over an even weight:
            # scipy.special.gammaln and betaln
            return float(
                special.gammaln(n + 1)
                - special.gammaln(n - total + 1)
                + special.betaln(total + 1, k * n - x - total + 1)
            )

        n = total
        while weighted(n + 1) - weighted(n) > 1e-12:
            n += 1
        assert carle_strub(catches).number == n

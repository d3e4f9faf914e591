"""Distributions against scipy."""

from __future__ import annotations

import pytest
from scipy import special, stats

from calc.numeric import distributions as own
from calc.numeric.limits import clopper_pearson, garwood, garwood_upper, rate_limits, wilson


# Outside reference: scipy 1.17.1, stats.chi2.
@pytest.mark.library("scipy")
@pytest.mark.parametrize("df", [1, 2, 7.5, 40, 1000])
@pytest.mark.parametrize("chance", [0.0005, 0.025, 0.5, 0.975, 0.9995])
def test_chi2(df: float, chance: float) -> None:
    value = stats.chi2.ppf(chance, df)
    assert own.chi2_quantile(chance, df) == pytest.approx(value, rel=1e-9)
    assert own.chi2_sf(value, df) == pytest.approx(1 - chance, rel=1e-9)
    for x in (1e-6, 0.3, 12.0, 300.0):
        assert own.chi2_sf(x, df) == pytest.approx(stats.chi2.sf(x, df), rel=1e-9)
    assert pytest.approx(stats.chi2.ppf(0.95, 1), rel=1e-13) == own.CHI2_95_1


# Outside reference: scipy 1.17.1, stats.t.
@pytest.mark.library("scipy")
@pytest.mark.parametrize("df", [1, 1.4, 5, 7.59719, 134.306])
@pytest.mark.parametrize("two_sided", [1e-6, 0.05, 0.2, 0.999])
def test_student(df: float, two_sided: float) -> None:
    value = stats.t.isf(two_sided / 2, df)
    assert own.student_quantile(two_sided, df) == pytest.approx(value, rel=1e-9)
    assert own.student_p_value(value, df) == pytest.approx(two_sided, rel=1e-9)


# Outside reference: scipy 1.17.1, stats.norm.
@pytest.mark.library("scipy")
@pytest.mark.parametrize("two_sided", [1e-12, 0.001, 0.05, 0.5, 1])
def test_normal(two_sided: float) -> None:
    wanted = stats.norm.isf(two_sided / 2)
    assert own.normal_quantile(two_sided) == pytest.approx(wanted, rel=1e-12, abs=1e-15)
    assert pytest.approx(stats.norm.ppf([0.95, 0.975]), rel=1e-14) == [
        own.NORMAL_95,
        own.NORMAL_975,
    ]


# Outside reference: scipy 1.17.1, special.betainc, special.gammaincc and stats.beta.
@pytest.mark.library("scipy")
@pytest.mark.parametrize(
    ("a", "b"), [(0.5, 0.5), (1, 9), (3, 2.5), (40, 200), (2, 9e5), (5000, 5), (1e5, 1e5)]
)
def test_beta_and_gamma(a: float, b: float) -> None:
    for x in (0.0, 1e-6, 0.1, 0.5, 0.501, 0.99, 0.999, 1.0):
        assert own.betainc(a, b, x) == pytest.approx(special.betainc(a, b, x), rel=1e-9, abs=1e-290)
        assert own.gammaincc(a, 10 * x) == pytest.approx(special.gammaincc(a, 10 * x), rel=1e-9)
    assert own.beta_quantile(0.3, a, b) == pytest.approx(stats.beta.ppf(0.3, a, b), rel=1e-9)


# Outside reference: scipy 1.17.1, stats.binom.sf.
@pytest.mark.library("scipy")
@pytest.mark.parametrize(("x", "n", "p"), [(0, 5, 0.5), (4, 9, 0.5), (50, 60, 0.9), (6, 5, 0.1)])
def test_binomial(x: int, n: int, p: float) -> None:
    assert own.binomial_at_least(x, n, p) == pytest.approx(stats.binom.sf(x - 1, n, p), rel=1e-10)


# Outside reference: scipy 1.17.1, stats.poisson at the limits.
@pytest.mark.library("scipy")
@pytest.mark.parametrize("count", [0, 1, 4, 30, 500])
def test_limits_of_a_count(count: int) -> None:
    low, high = garwood(count)
    assert stats.poisson.sf(count - 1, low) == pytest.approx(0.025 if count else 1, rel=1e-8)
    assert (low == 0) == (count == 0)
    assert stats.poisson.cdf(count, high) == pytest.approx(0.025, rel=1e-8)
    assert stats.poisson.cdf(count, garwood_upper(count)) == pytest.approx(0.05, rel=1e-8)
    assert rate_limits(count, 4) == pytest.approx((low / 4, high / 4))


# Outside reference: scipy 1.17.1, stats.binomtest(...).proportion_ci.
@pytest.mark.library("scipy")
@pytest.mark.parametrize(("k", "n"), [(0, 5), (3, 17), (50, 100), (999, 1000), (7, 7)])
def test_limits_of_a_share(k: int, n: int) -> None:
    exact = stats.binomtest(k, n).proportion_ci(method="exact")
    assert clopper_pearson(k, n) == pytest.approx((exact.low, exact.high), rel=1e-9, abs=1e-12)
    score = stats.binomtest(k, n).proportion_ci(method="wilson")
    got = wilson(k, n, own.NORMAL_975)
    assert got == pytest.approx((score.low, score.high), rel=1e-9, abs=1e-12)

"""Old home of :mod:`calc.numeric.limits`, for calculators that have not moved yet."""

from __future__ import annotations

from calc.numeric.distributions import NORMAL_95 as NORMAL_95_ONE_SIDED
from calc.numeric.distributions import (
    beta_quantile,
    chi2_quantile,
    normal_quantile,
    student_quantile,
)
from calc.numeric.distributions import gammaincc as gamma_upper
from calc.numeric.limits import (
    RULE_OF_THREE,
    clopper_pearson,
    garwood,
    garwood_upper,
    rate_limits,
    wilson,
)

__all__ = [
    "NORMAL_95_ONE_SIDED",
    "RULE_OF_THREE",
    "beta_quantile",
    "chi2_quantile",
    "clopper_pearson",
    "gamma_upper",
    "garwood",
    "garwood_upper",
    "normal_quantile",
    "rate_limits",
    "student_quantile",
    "wilson",
]

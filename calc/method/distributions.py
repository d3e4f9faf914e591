"""Old names of :mod:`calc.numeric.distributions`, for calculators that have not moved yet."""

from __future__ import annotations

from calc.numeric.distributions import CHI2_95_1 as CHI2_95_1
from calc.numeric.distributions import NORMAL_975 as NORMAL_975
from calc.numeric.distributions import betainc as beta_lower
from calc.numeric.distributions import chi2_sf as chi2_upper
from calc.numeric.distributions import student_p_value as student_two_sided

__all__ = ["CHI2_95_1", "NORMAL_975", "beta_lower", "chi2_upper", "student_two_sided"]

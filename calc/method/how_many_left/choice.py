"""Which estimator is used, on what it works, and its 95 % interval, never below the catch."""

from __future__ import annotations

import math
from collections.abc import Callable, Sequence
from dataclasses import dataclass, replace

from calc.errors import InputError
from calc.method.how_many_left.fit import expected_catches
from calc.method.how_many_left.profile import moran_schnute, usable
from calc.method.removal import (
    Estimate,
    carle_strub,
    falls,
    robson_regier,
    seber_three_pass,
    seber_two_pass,
    zippin,
)
from calc.method.removal.effort import gould_pollock, leslie
from calc.method.removal.quantiles import number_quantiles
from calc.method.removal.stopping import Outlook, log_normal_interval, outlook

UNEVEN = 1.1
"""Longest pass over shortest from which passes no longer count as equal."""

WITH_EFFORT = ("leslie", "gould_pollock")
"""Estimators that use the minutes."""

QUANTILES = "2.5 and 97.5 % points, p uncertain"
LOG_NORMAL = "log-normal on the part not caught"
POSTERIOR_END = "upper end 97.5 % point, p uncertain"
PROFILE = "profile likelihood"
FIELLER = "Fieller's limits of the regression"


@dataclass(frozen=True, kw_only=True, slots=True)
class Job:
    """What was caught, in passes of which length; ``weighed`` if an estimator asks for minutes."""

    catches: tuple[int, ...]
    minutes: tuple[float, ...] | None
    weighed: bool = False

    @property
    def caught(self) -> int:
        """Total caught."""
        return sum(self.catches)

    @property
    def uneven(self) -> bool:
        """Whether the passes differ by more than a tenth in length."""
        return self.minutes is not None and max(self.minutes) > UNEVEN * min(self.minutes)

    @property
    def differ(self) -> bool:
        """Whether the passes differ in length at all."""
        return self.minutes is not None and max(self.minutes) > min(self.minutes)

    @property
    def by_minutes(self) -> bool:
        """Whether the minutes are used: where they differ by much, or by any if asked for."""
        return self.uneven or (self.weighed and self.differ)

    @property
    def alike(self) -> tuple[float, ...]:
        """Length 1 for each pass."""
        return (1.0,) * len(self.catches)

    @property
    def effort(self) -> tuple[float, ...]:
        """Minutes of each pass where they are used, else 1 for each."""
        return self.minutes if self.minutes is not None and self.by_minutes else self.alike

    @property
    def lengths(self) -> tuple[float, ...]:
        """Length of each pass as a share of the mean pass."""
        mean = sum(self.effort) / len(self.effort)
        return tuple(each / mean for each in self.effort)

    @property
    def outlook(self) -> Outlook:
        """How likely each capture probability is."""
        return outlook(self.catches, self.effort)


@dataclass(frozen=True, kw_only=True, slots=True)
class Fit:
    """What an estimator makes of a job; ``high`` is None where there is no upper limit."""

    form: str
    interval_form: str
    number: float
    probability: float
    low: float
    high: float | None
    expected: tuple[float, ...]
    raised: bool = False
    slope_chance: float | None = None


def chosen(estimator: str, job: Job) -> str:
    """Return the estimator that ``auto`` stands for: with effort where the passes differ."""
    if estimator != "auto":
        return estimator
    return "gould_pollock" if job.uneven else "carle_strub"


def check(estimator: str, job: Job) -> None:
    """Raise :class:`InputError` if the estimator cannot take this number of passes."""
    k = len(job.catches)
    problem = ""
    if estimator == "robson_regier" and k != 2:
        problem = f"Robson & Regier's form takes 2 passes, not {k}"
    if estimator == "seber" and k not in {2, 3}:
        problem = f"Seber's closed forms take 2 or 3 passes, not {k}"
    if estimator in {"leslie", "moran_schnute"} and k < 3:
        problem = f"This estimator needs 3 passes or more, not {k}"
    if estimator == "moran_schnute" and k == 3 and not usable(job.catches):
        problem = "This estimator cannot take three passes of which the third caught none"
    if problem:
        allowed = "an estimator that fits the passes, such as auto"
        raise InputError("estimator", estimator, allowed, f"{problem}; allowed is {allowed}.")


def fitted(estimator: str, job: Job) -> Fit | None:
    """Return the fit of one estimator, ``None`` where it has no answer for this job."""
    if estimator not in WITH_EFFORT and not falls(job.catches, job.alike):
        return None
    try:
        fit = _FITS[estimator](job)
    except ValueError:
        return None
    # No count of passes rules out one last wasp, so the interval never closes on the catch.
    return fit if fit.high is None else replace(fit, high=max(fit.high, job.caught + 1.0))


def _closed(job: Job, estimate: Estimate) -> Fit:
    low, high, form = _limits(job, estimate.number, estimate.number_se)
    return _equal_passes(job, estimate.form, form, estimate.number, estimate.probability, low, high)


def _equal_passes(
    job: Job, form: str, interval_form: str, number: float, p: float, low: float, high: float | None
) -> Fit:
    return Fit(
        form=form,
        interval_form=interval_form,
        number=number,
        probability=p,
        low=low,
        high=high,
        expected=expected_catches(number, p, job.alike),
    )


def _limits(job: Job, number: float, number_se: float | None) -> tuple[float, float | None, str]:
    if number_se is not None and number - job.caught > 1e-9:
        low, high = log_normal_interval(job.caught, number, number_se)
        return low, high, LOG_NORMAL
    (end,) = number_quantiles(job.catches, (0.975,), job.effort)
    return job.caught, None if end is None else max(number, end), POSTERIOR_END


def _carle_strub(job: Job) -> Fit:
    estimate = carle_strub(job.catches)
    low, high = number_quantiles(job.catches, (0.025, 0.975))
    number = estimate.number
    return _equal_passes(
        job,
        estimate.form,
        QUANTILES,
        number,
        estimate.probability,
        job.caught if low is None else min(low, number),
        None if high is None else max(high, number),
    )


def _seber(job: Job) -> Fit:
    two = len(job.catches) == 2
    return _closed(job, seber_two_pass(job.catches) if two else seber_three_pass(job.catches))


def _moran_schnute(job: Job) -> Fit:
    fit = moran_schnute(job.catches)
    return _equal_passes(job, fit.form, PROFILE, fit.number, fit.probability, fit.low, fit.high)


def _leslie(job: Job) -> Fit:
    fit = leslie(job.catches, job.effort)
    caught, number = job.caught, max(fit.number, float(job.caught))
    low, high = fit.fieller or (caught, None)
    return Fit(
        form=fit.form,
        interval_form=FIELLER,
        number=number,
        probability=min(1.0, fit.catchability * sum(job.effort) / len(job.effort)),
        low=min(max(low, caught), number),
        high=None if high is None else max(high, number),
        expected=_along_the_line(job, fit.number, fit.catchability),
        raised=fit.number < caught,
        slope_chance=fit.slope_chance,
    )


def _along_the_line(job: Job, number: float, catchability: float) -> tuple[float, ...]:
    expected, before = [], 0
    for catch, length in zip(job.catches, job.effort, strict=True):
        expected.append(max(0.0, catchability * length * (number - before)))
        before += catch
    return tuple(expected)


def _gould_pollock(job: Job) -> Fit:
    fit = gould_pollock(job.catches, job.effort)
    low, high, form = _limits(job, fit.number, fit.number_se)
    mean = sum(job.effort) / len(job.effort)
    p = 1.0 if math.isinf(fit.hazard) else -math.expm1(-fit.hazard * mean)
    return Fit(
        form=fit.form,
        interval_form=form,
        number=fit.number,
        probability=p,
        low=low,
        high=high,
        expected=expected_catches(fit.number, p, job.lengths),
    )


_FITS: dict[str, Callable[[Job], Fit]] = {
    "carle_strub": _carle_strub,
    "zippin": lambda job: _closed(job, zippin(job.catches)),
    "seber": _seber,
    "robson_regier": lambda job: _closed(job, robson_regier(job.catches)),
    "moran_schnute": _moran_schnute,
    "leslie": _leslie,
    "gould_pollock": _gould_pollock,
}


def comparison(job: Job, used: str, fit: Fit) -> list[Fit]:
    """Return the fit used and those of the other estimators that can take this job."""
    return [fit, *_others(job, used)]


def _others(job: Job, used: str) -> Sequence[Fit]:
    found = []
    for name in _FITS:
        if name == used or (name == "gould_pollock" and not job.by_minutes):
            continue
        try:
            check(name, job)
        except InputError:
            continue
        fit = fitted(name, job)
        if fit is not None:
            found.append(fit)
    return found

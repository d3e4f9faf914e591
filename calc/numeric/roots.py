"""Where a function passes zero, and where a condition on whole numbers turns true."""

from __future__ import annotations

from collections.abc import Callable

MOST_STEPS = 500

_STILL = 4 * 2.220446049250313e-16  # a step below this share of x no longer changes x


def root(
    function: Callable[[float], float],
    low: float,
    high: float,
    *,
    absolute: float = 1e-15,
    relative: float = 1e-14,
) -> float:
    """Return where a function passes zero between two ends, by Brent's way.

    Inverse quadratic or secant steps, and halving where those do not close in.

    Parameters
    ----------
    function : continuous, with values of different sign (or zero) at the ends
    low, high : the ends
    absolute, relative : the root is found to ``absolute + relative |x|``

    Raises ``ValueError`` if both ends have one sign. Range: any. Source: Brent's standard method.
    """
    a, b = low, high
    at_a, at_b = function(a), function(b)
    if at_a == 0 or at_b == 0:
        return a if at_a == 0 else b
    if (at_a > 0) == (at_b > 0):
        raise ValueError(f"no change of sign between {low} and {high}")
    c, at_c = a, at_a
    last = step = b - a
    for _ in range(MOST_STEPS):
        if (at_b > 0) == (at_c > 0):
            c, at_c = a, at_a
            last = step = b - a
        if abs(at_c) < abs(at_b):
            a, b, c = b, c, b
            at_a, at_b, at_c = at_b, at_c, at_b
        near, half = (absolute + max(relative, _STILL) * abs(b)) / 2, (c - b) / 2
        if abs(half) <= near or at_b == 0:
            break
        tried = _between((a, at_a), (b, at_b), (c, at_c))
        if abs(last) < near or abs(at_a) <= abs(at_b) or not _closes(tried, half, last, near):
            last = step = half
        else:
            last, step = step, tried
        a, at_a = b, at_b
        b += step if abs(step) > near else near if half > 0 else -near
        at_b = function(b)
    return b


def _between(a: tuple[float, float], b: tuple[float, float], c: tuple[float, float]) -> float:
    """Return the step from ``b`` to where the curve through the points passes zero."""
    (xa, fa), (xb, fb), (xc, fc) = a, b, c
    if fa == fb or fa == 0:
        return xc - xb
    if xa == xc or fa == fc or fc == 0:
        return (xa - xb) * fb / (fb - fa)
    s, q, r = fb / fa, fa / fc, fb / fc
    return s * ((xc - xb) * q * (q - r) - (xb - xa) * (r - 1)) / -((q - 1) * (r - 1) * (s - 1))


def _closes(step: float, half: float, last: float, near: float) -> bool:
    """Whether a step stays inside the bracket and shrinks fast enough."""
    inside = 0 < step / half < 1.5 - near / abs(2 * half)
    return inside and abs(step) < abs(last) / 2


def first_whole(condition: Callable[[int], bool], low: int, high: int | None = None) -> int | None:
    """Return the smallest whole number from which a condition, once true, stays true.

    Parameters
    ----------
    condition : false below some number and true from it on
    low, high : where to look, both included; without ``high`` upwards in doubling steps

    Returns the number, ``None`` if the condition is false up to ``high``. Source: bisection.
    """
    if condition(low):
        return low
    if high is None:
        step = 1
        while not condition(low + step):
            low += step
            step *= 2
        high = low + step
    elif high <= low or not condition(high):
        return None
    while high - low > 1:
        middle = (low + high) // 2
        low, high = (low, middle) if condition(middle) else (middle, high)
    return high

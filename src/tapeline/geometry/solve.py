"""Finding the size that makes a drawing come out: one unknown by bracketing, several by Newton-like steps."""

from __future__ import annotations

from collections.abc import Callable, Sequence

from tapeline.problems import InputError, Problem, Severity

__all__ = ["solve", "solve_one"]

CLOSE_ENOUGH_MM = 1e-7
"""A ten-thousandth of what a seam may differ by."""


def solve_one(miss: Callable[[float], float], low: float, high: float, what: str) -> float:
    """The value between `low` and `high` at which `miss` (mm too long or too short) is nothing.

    `what` names the value for the problem (`cannot-be-met`) raised when the ends miss to the same side.

    >>> round(solve_one(lambda side: side * side - 2, 1, 2, "the side"), 6)
    1.414214
    """
    from scipy.optimize import brentq

    at_low, at_high = miss(low), miss(high)
    if at_low * at_high > 0:
        nearest = min(at_low, at_high, key=abs)
        raise _cannot_be_met(what, f"between {low:.0f} and {high:.0f} mm it stays {abs(nearest):.1f} mm off")
    return float(brentq(miss, low, high, xtol=1e-10))


def solve(miss: Callable[[Sequence[float]], Sequence[float]], start: Sequence[float], what: str) -> list[float]:
    """Values near `start` at which every `miss` (mm) is nothing.

    Raises `InputError` (`cannot-be-met`) naming `what` when there is no such place near the start.

    >>> [round(v, 6) for v in solve(lambda v: (v[0] + v[1] - 3, v[0] - v[1] - 1), (1.0, 1.0), "two numbers")]
    [2.0, 1.0]
    """
    from scipy.optimize import root

    found = root(lambda values: list(miss([float(v) for v in values])), list(start), method="hybr", tol=1e-12)
    values = [float(v) for v in found.x]
    worst = max(abs(m) for m in miss(values))
    if worst > CLOSE_ENOUGH_MM:
        raise _cannot_be_met(what, f"the best drawing is still {worst:.1f} mm off")
    return values


def _cannot_be_met(what: str, how_far: str) -> InputError:
    return InputError(
        Problem(
            "cannot-be-met",
            Severity.ERROR,
            f"{what} cannot be found: {how_far}",
            hint="look at the tapes and sizes that it depends on",
        )
    )

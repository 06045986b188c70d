"""Finding the size that makes a drawing come out: one unknown by bracketing, several by Broyden's steps."""

from __future__ import annotations

from collections.abc import Callable, Sequence

import numpy as np
from numpy.typing import NDArray

from tapeline.problems import InputError, Problem, Severity

__all__ = ["solve", "solve_one"]

Array = NDArray[np.float64]
Miss = Callable[[Sequence[float]], Sequence[float]]
"""From values to how far each drawing misses, mm."""

EXACT_MM = 1e-7
"""A ten-thousandth of what a seam may differ by."""
PROBE_MM = 1e-3
MOST_STEPS = 60
HALVINGS = 12


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


def solve(miss: Miss, start: Sequence[float], what: str, slopes: Sequence[float] = ()) -> list[float]:
    """Values near `start` at which every `miss` (mm) is nothing.

    Broyden's method ("A class of methods for solving nonlinear simultaneous equations", Mathematics of Computation 19,
    1965, pp. 577-593): Newton's, but the slopes are measured once and corrected by what each step shows. Our own few
    lines, for the library that has it takes 0.4 s to load, longer than everything else a draft does.

    `slopes` say how much each miss grows with its own value, where that is roughly known: then none is measured first.
    Raises `InputError` (`cannot-be-met`) naming `what` when there is no such place near the start.

    >>> [round(v, 6) for v in solve(lambda v: (v[0] * v[1] - 6, v[0] - v[1] - 1), (2.0, 1.0), "two numbers")]
    [3.0, 2.0]
    """
    values: Array = np.array(start, float)
    off = _missed(miss, values)
    slope: Array = np.diag(slopes) if slopes else _slopes(miss, values, off)
    for _ in range(MOST_STEPS):
        if np.abs(off).max() < EXACT_MM:
            break
        step: Array = np.asarray(np.linalg.lstsq(slope, -off, rcond=None)[0], np.float64)
        new, new_off = _shortened(miss, values, step, off)
        moved = new - values
        if not np.abs(moved).max() > 0:
            break
        slope += np.outer(new_off - off - slope @ moved, moved) / (moved @ moved)
        values, off = new, new_off
    worst = float(np.abs(off).max())
    if not worst < EXACT_MM:
        raise _cannot_be_met(what, f"the best drawing is still {worst:.1f} mm off")
    return [float(value) for value in values]


def _missed(miss: Miss, values: Array) -> Array:
    return np.array(miss([float(value) for value in values]), float)


def _slopes(miss: Miss, values: Array, off: Array) -> Array:
    columns = []
    for index in range(len(values)):
        probed = values.copy()
        probed[index] += PROBE_MM
        columns.append((_missed(miss, probed) - off) / PROBE_MM)
    return np.array(columns).T


def _shortened(miss: Miss, values: Array, step: Array, off: Array) -> tuple[Array, Array]:
    """Take a step, or a part of it where the whole would lead away or off the paper."""
    for halving in range(HALVINGS):
        new = values + step / 2**halving
        try:
            new_off = _missed(miss, new)
        except InputError:
            continue
        if np.abs(new_off).max() < 2 * np.abs(off).max():
            return new, new_off
    return values, off


def _cannot_be_met(what: str, how_far: str) -> InputError:
    return InputError(
        Problem(
            "cannot-be-met",
            Severity.ERROR,
            f"{what} cannot be found: {how_far}",
            hint="look at the tapes and sizes that it depends on",
        )
    )

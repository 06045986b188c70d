"""Where a polynomial given by its Bernstein coefficients is zero: how a straight line meets a segment."""

from __future__ import annotations

import math
from collections.abc import Sequence
from itertools import pairwise

__all__ = ["height", "square_zeros", "turns", "zeros"]

MOST_STEPS = 60
"""Halving alone arrives in 53; Newton seldom needs more than 6."""


def zeros(heights: Sequence[float], slack: float = 0.0) -> list[float]:
    """Parameters in [0, 1], in order, where a line (two heights) or a cubic (four) is zero.

    The heights are Bernstein coefficients: distances of control points from a line. An end or a turning point that
    comes within `slack` of zero counts as one; heights that are all within it lie on the line and give none.

    >>> zeros([-1, 3])
    [0.25]
    >>> zeros([1, -1, -1, 1], slack=1e-9)
    [0.2113248654051872, 0.7886751345948129]
    """
    if min(heights) > slack or max(heights) < -slack or max(map(abs, heights)) <= slack:
        return []
    if len(heights) == 2:
        first, last = heights
        if abs(first) <= slack:
            return [0.0]
        if abs(last) <= slack:
            return [1.0]
        return [first / (first - last)]
    marks = [0.0, *turns(heights), 1.0]
    values = [height(heights, t) for t in marks]
    found = [t for t, value in zip(marks, values, strict=True) if abs(value) <= slack]
    for (low, high), (at_low, at_high) in zip(pairwise(marks), pairwise(values), strict=True):
        if at_low * at_high < 0 and min(abs(at_low), abs(at_high)) > slack:
            found.append(_between(heights, low, high, rising=at_high > 0))
    return sorted(found)


def height(b: Sequence[float], t: float) -> float:
    """A cubic at a parameter, from its four Bernstein coefficients."""
    u = 1 - t
    return u * u * u * b[0] + 3 * u * t * (u * b[1] + t * b[2]) + t * t * t * b[3]


def _slope(b: Sequence[float], t: float) -> float:
    u = 1 - t
    return 3 * (u * u * (b[1] - b[0]) + 2 * u * t * (b[2] - b[1]) + t * t * (b[3] - b[2]))


def turns(b: Sequence[float]) -> list[float]:
    """Where a cubic stops rising or falling, strictly between its ends; between two of them it does only one."""
    return square_zeros(b[1] - b[0], b[2] - b[1], b[3] - b[2])


def square_zeros(first: float, middle: float, last: float) -> list[float]:
    """Where a polynomial of the second degree, by its Bernstein coefficients, is zero strictly inside (0, 1), in order.

    >>> square_zeros(-1, 0, 3)
    [0.36602540378443865]
    """
    square, half, whole = first - 2 * middle + last, middle - first, first
    inside = half * half - square * whole
    if inside < 0:
        return []
    # The stable form: no difference of two near numbers.
    lead = -(half + math.copysign(math.sqrt(inside), half))
    roots = ([lead / square] if square else []) + ([whole / lead] if lead else [])
    return sorted(t for t in set(roots) if 0 < t < 1)


def _between(b: Sequence[float], low: float, high: float, *, rising: bool) -> float:
    """The one zero of a stretch that only rises or only falls: Newton, halving wherever Newton would leave it."""
    t = (low + high) / 2
    for _ in range(MOST_STEPS):
        value, slope = height(b, t), _slope(b, t)
        if value == 0:
            return t
        if (value < 0) is rising:
            low = t
        else:
            high = t
        following = t - value / slope if slope else low
        if not low < following < high:
            following = (low + high) / 2
        if following in (t, low, high):
            return following
        t = following
    return t

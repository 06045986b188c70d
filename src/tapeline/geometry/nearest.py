"""The place of a cubic that is nearest a point, exactly: where the way to the point stands square on the curve."""

from __future__ import annotations

import math
from collections.abc import Iterator, Sequence
from itertools import pairwise

from tapeline.geometry.point import Point

__all__ = ["nearest"]

DEEPEST = 40
"""Halvings of a stretch, before what is left is taken for one place: below rounding."""
ROUNDING = 1e-15
"""Of a parameter: a step no longer than this has arrived."""
MOST_STEPS = 60
"""Halving alone arrives in 53; Newton seldom needs more than 6."""


def nearest(corners: Sequence[Point], point: Point) -> tuple[float, float]:
    """The parameter of the place nearest a point, and how far away that is, mm.

    At that place, unless it is an end, the distance stops falling and begins to rise: the way to the point is square to
    the curve. That product is a polynomial of the fifth degree; its Bernstein coefficients tell in which stretches of
    the curve it can be zero, and Newton finds the place in each.

    >>> nearest([Point(0, 0), Point(10, 10), Point(20, 10), Point(30, 0)], Point(15, 20))
    (0.5, 12.5)
    """
    (ax, ay), (bx, by), (cx, cy), (dx, dy) = [(p.x - point.x, p.y - point.y) for p in corners]
    ux, uy, vx, vy, wx, wy = bx - ax, by - ay, cx - bx, cy - by, dx - cx, dy - cy
    square = (
        ax * ux + ay * uy,
        0.6 * (bx * ux + by * uy) + 0.4 * (ax * vx + ay * vy),
        0.3 * (cx * ux + cy * uy) + 0.6 * (bx * vx + by * vy) + 0.1 * (ax * wx + ay * wy),
        0.1 * (dx * ux + dy * uy) + 0.6 * (cx * vx + cy * vy) + 0.3 * (bx * wx + by * wy),
        0.4 * (dx * vx + dy * vy) + 0.6 * (cx * wx + cy * wy),
        dx * wx + dy * wy,
    )
    best, least = (0.0, math.hypot(ax, ay)) if (end := math.hypot(dx, dy)) >= math.hypot(ax, ay) else (1.0, end)
    for t in _rises(square, 0.0, 1.0, 0):
        s = 1 - t
        i, j, k, n = s * s * s, 3 * s * s * t, 3 * s * t * t, t * t * t
        far = math.hypot(i * ax + j * bx + k * cx + n * dx, i * ay + j * by + k * cy + n * dy)
        if far < least:
            best, least = t, far
    return best, least


def _rises(b: Sequence[float], low: float, high: float, deep: int) -> Iterator[float]:
    """Where a polynomial of the fifth degree, given on a stretch of a curve, goes from below zero to above it."""
    signs = [value > 0 for value in b if value]
    changes = sum(one is not other for one, other in pairwise(signs))
    if not changes:
        return
    if changes == 1:
        # One zero; where it falls, the place is the farthest about, not the nearest.
        if signs[-1]:
            yield low + (high - low) * _rise(b)
        return
    if deep == DEEPEST:
        yield (low + high) / 2
        return
    rows, row = [list(b)], list(b)
    while len(row) > 1:
        row = [(one + other) / 2 for one, other in pairwise(row)]
        rows.append(row)
    middle = (low + high) / 2
    if row[0] == 0:
        yield middle
    yield from _rises([row[0] for row in rows], low, middle, deep + 1)
    yield from _rises([row[-1] for row in reversed(rows)], middle, high, deep + 1)


def _rise(b: Sequence[float]) -> float:
    """The one zero of a polynomial that rises through it: Newton, halving wherever Newton would leave the stretch."""
    b0, b1, b2, b3, b4, b5 = b
    d0, d1, d2, d3, d4 = b1 - b0, b2 - b1, b3 - b2, b4 - b3, b5 - b4
    low, high, t = 0.0, 1.0, 0.5
    if b0 < 0 < b5:
        t = b0 / (b0 - b5)
    for _ in range(MOST_STEPS):
        u = 1 - t
        tt, uu = t * t, u * u
        value = uu * uu * (u * b0 + 5 * t * b1) + 10 * uu * tt * (u * b2 + t * b3) + tt * tt * (5 * u * b4 + t * b5)
        if value == 0:
            return t
        if value < 0:
            low = t
        else:
            high = t
        slope = 5 * (uu * (uu * d0 + 4 * u * t * d1 + 6 * tt * d2) + tt * (4 * u * t * d3 + tt * d4))
        following = t - value / slope if slope else low
        if not low < following < high:
            following = (low + high) / 2
        if following in (t, low, high) or abs(following - t) < ROUNDING:
            return following
        t = following
    return t

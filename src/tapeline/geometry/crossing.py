"""Where two paths cross, as lengths along each: by chords first, then Newton on the curves themselves."""

from __future__ import annotations

import math
from collections.abc import Iterator
from functools import lru_cache

import numpy as np
from numpy.typing import NDArray

from tapeline.geometry.path import Path
from tapeline.geometry.point import Vector
from tapeline.geometry.segment import Cubic, Segment

__all__ = ["crossings"]

SAME_PLACE_MM = 1e-6
"""Two crossings closer than this are one, found from two segments that meet there."""
ON_BOTH_MM = 1e-8
"""Newton has arrived when the two places are this close."""
PAST_THE_END = 1e-9
"""How far beyond 0 or 1 a parameter may lie from rounding alone."""
CHORD_ERROR_MM = 0.05
"""Chords need only be near enough for Newton to start from."""
SLIGHT_ANGLE = 0.2
"""Radians; chords that cross at less may miss although their curves meet, or meet where their curves do so twice."""
MOST_STEPS = 25


def crossings(one: Path, other: Path) -> list[tuple[float, float]]:
    """Where two paths cross or touch: mm along the first and mm along the second, in order along the first.

    Stretches that lie on each other give no crossing.

    >>> from tapeline.geometry import Point
    >>> level, upright = Path.through(Point(0, 0), Point(10, 0)), Path.through(Point(4, -3), Point(4, 5))
    >>> crossings(level, upright)
    [(4.0, 3.0)]
    """
    found: list[tuple[float, float]] = []
    before = 0.0
    for a in one.segments:
        beside = 0.0
        for b in other.segments:
            if _may_meet(a, b):
                found += [(before + _length(a, s), beside + _length(b, t)) for s, t in _segment_crossings(a, b)]
            beside += b.length
        before += a.length
    found.sort()
    kept: list[tuple[float, float]] = []
    for here in found:
        if all(max(abs(here[0] - k[0]), abs(here[1] - k[1])) > SAME_PLACE_MM for k in kept):
            kept.append(here)
    return kept


def _length(segment: Segment, t: float) -> float:
    if t <= 0:
        return 0.0
    return segment.length if t >= 1 else segment.part(0, t).length


@lru_cache(maxsize=4096)
def _box(segment: Segment) -> tuple[float, float, float, float]:
    """Left, right, bottom, top of the points that hold a segment."""
    xs, ys = zip(*((p.x, p.y) for p in segment.control_points), strict=True)
    return min(xs), max(xs), min(ys), max(ys)


def _may_meet(a: Segment, b: Segment) -> bool:
    left, right, low, high = _box(a)
    other_left, other_right, other_low, other_high = _box(b)
    return (
        left <= other_right + SAME_PLACE_MM
        and other_left <= right + SAME_PLACE_MM
        and low <= other_high + SAME_PLACE_MM
        and other_low <= high + SAME_PLACE_MM
    )


def _segment_crossings(a: Segment, b: Segment) -> Iterator[tuple[float, float]]:
    for s, t in _starts(a, b):
        arrived = _newton(a, b, s, t)
        if arrived is not None:
            yield arrived


def _starts(a: Segment, b: Segment) -> Iterator[tuple[float, float]]:
    """Parameters near every crossing: where the chords of the curves cross; the ends of chords that run along."""
    p, q = _corners(a), _corners(b)
    m, n = len(p) - 1, len(q) - 1
    bent = m > 1 or n > 1
    slack = 2 * CHORD_ERROR_MM if bent else SAME_PLACE_MM
    for i, j in _near(p, q, slack):
        u, v = Vector(*(p[i + 1] - p[i])), Vector(*(q[j + 1] - q[j]))
        gap = Vector(*(q[j] - p[i]))
        cross = u.cross(v)
        if abs(cross) > 1e-12 * u.length * v.length:
            # Beyond the chords' own ends too: Newton goes on from the nearest place on them.
            s, t = (min(max(x, 0.0), 1.0) for x in (gap.cross(v) / cross, gap.cross(u) / cross))
            yield (i + s) / m, (j + t) / n
        if bent and abs(cross) < SLIGHT_ANGLE * u.length * v.length:
            yield from ((k / m, h / n) for k in (i, i + 1) for h in (j, j + 1))


@lru_cache(maxsize=4096)
def _corners(segment: Segment) -> NDArray[np.float64]:
    """The ends of a segment's chords, one a row."""
    count = _chord_count(segment)
    return np.array([(p.x, p.y) for p in (segment.at(i / count) for i in range(count + 1))])


def _near(p: NDArray[np.float64], q: NDArray[np.float64], slack: float) -> list[tuple[int, int]]:
    """Which chords of the one lie in boxes that meet those of the other's chords."""
    low_p, high_p = np.minimum(p[:-1], p[1:]), np.maximum(p[:-1], p[1:])
    low_q, high_q = np.minimum(q[:-1], q[1:]), np.maximum(q[:-1], q[1:])
    apart = (low_p[:, None] > high_q[None] + slack) | (low_q[None] > high_p[:, None] + slack)
    return [(int(i), int(j)) for i, j in np.argwhere(~apart.any(axis=2))]


def _chord_count(segment: Segment) -> int:
    if not isinstance(segment, Cubic):
        return 1
    p0, p1, p2, p3 = segment.control_points
    bend = max(((p0 - p1) + (p2 - p1)).length, ((p1 - p2) + (p3 - p2)).length) * 6
    return max(2, math.ceil(math.sqrt(bend / (8 * CHORD_ERROR_MM))))


def _newton(a: Segment, b: Segment, s: float, t: float) -> tuple[float, float] | None:
    """The crossing near a start, or nothing when the curves do not meet there."""
    for _ in range(MOST_STEPS):
        gap = b.at(t) - a.at(s)
        if gap.length < ON_BOTH_MM:
            if -PAST_THE_END <= s <= 1 + PAST_THE_END and -PAST_THE_END <= t <= 1 + PAST_THE_END:
                return min(max(s, 0.0), 1.0), min(max(t, 0.0), 1.0)
            return None
        u, v = _speed(a, s), _speed(b, t)
        cross = u.cross(v)
        if abs(cross) < 1e-14 * max(u.length * v.length, 1e-300):
            return None
        s, t = s + gap.cross(v) / cross, t + gap.cross(u) / cross
        # A whole segment away: it will not come back.
        if not (-1 < s < 2 and -1 < t < 2):
            return None
    return None


def _speed(segment: Segment, t: float) -> Vector:
    if not isinstance(segment, Cubic):
        return segment.end - segment.start
    p0, p1, p2, p3 = segment.control_points
    return (p1 - p0) * (3 * (1 - t) ** 2) + (p2 - p1) * (6 * (1 - t) * t) + (p3 - p2) * (3 * t * t)

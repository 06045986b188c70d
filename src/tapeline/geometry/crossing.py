"""Where two paths cross, as lengths along each; two curves by chords first, then Newton on the curves themselves."""

from __future__ import annotations

import math
from collections.abc import Iterable, Iterator
from functools import lru_cache
from itertools import accumulate

import numpy as np
from numpy.typing import NDArray

from tapeline.geometry.path import AT_THE_KNOT, Path
from tapeline.geometry.point import Vector
from tapeline.geometry.segment import Cubic, Line, Segment
from tapeline.geometry.zeros import zeros

__all__ = ["crossings", "first_crossing", "nearest_crossing"]

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
    boxes = [_box(b) for b in other.segments]
    met = [
        (i, s, j, t)
        for i, a in enumerate(one.segments)
        for box in (_box(a),)
        for j, b in enumerate(other.segments)
        if _meet(box, boxes[j])
        for s, t in _segment_crossings(a, b)
    ]
    if not met:
        return []
    kept: list[tuple[float, float]] = []
    # Lengths cost more than all the rest: only those before a crossing are asked for.
    along, beside = _starts_of(one, max(i for i, *_ in met)), _starts_of(other, max(j for _, _, j, _ in met))
    for here in sorted(
        (along[i] + _length(one.segments[i], s), beside[j] + _length(other.segments[j], t)) for i, s, j, t in met
    ):
        if all(max(abs(here[0] - k[0]), abs(here[1] - k[1])) > SAME_PLACE_MM for k in kept):
            kept.append(here)
    return kept


def nearest_crossing(line: Line, other: Path) -> float:
    """Millimetres along a straight line to the first place where it meets a path; `ValueError` when it never does.

    >>> from tapeline.geometry import Point
    >>> nearest_crossing(Line(Point(0, 0), Point(10, 0)), Path.through(Point(4, -3), Point(4, 5)))
    4.0
    """
    box = _box(line)
    return line.length * min(s for b in other.segments if _meet(box, _box(b)) for s, _ in _line_crossings(line, b))


def first_crossing(one: Iterable[Segment], other: Path) -> tuple[list[Segment], float] | None:
    """Segments, walked end to end as far as they first meet a path; and how many mm along the path that is.

    Nothing when they never do. What lies beyond that place is not looked at, so segments may be made as they are asked
    for.

    >>> from tapeline.geometry import Point
    >>> level, upright = Path.through(Point(0, 0), Point(10, 0)), Path.through(Point(4, -3), Point(4, 5))
    >>> first_crossing(level.segments, upright)
    ([Line(start=Point(x=0, y=0), end=Point(x=4.0, y=0.0))], 3.0)
    """
    boxes = [_box(b) for b in other.segments]
    walked: list[Segment] = []
    for a in one:
        box = _box(a)
        met = [
            (s, j, t) for j, b in enumerate(other.segments) if _meet(box, boxes[j]) for s, t in _segment_crossings(a, b)
        ]
        if met:
            s, j, t = min(met)
            if s > AT_THE_KNOT or not walked:
                walked.append(a.part(0, s))
            return walked, _starts_of(other, j)[j] + _length(other.segments[j], t)
        walked.append(a)
    return None


def _starts_of(path: Path, last: int) -> list[float]:
    """How far along a path its segments begin, up to one of them."""
    return list(accumulate((segment.length for segment in path.segments[:last]), initial=0.0))


def _length(segment: Segment, t: float) -> float:
    if t <= 0:
        return 0.0
    return segment.length if t >= 1 else segment.part(0, t).length


_Box = tuple[float, float, float, float]


def _box(segment: Segment) -> _Box:
    """Left, right, bottom, top of the points that hold a segment."""
    if isinstance(segment, Line):
        a, b = segment.start, segment.end
        left, right = (a.x, b.x) if a.x < b.x else (b.x, a.x)
        return (left, right, a.y, b.y) if a.y < b.y else (left, right, b.y, a.y)
    a, b, c, d = segment.control_points
    return min(a.x, b.x, c.x, d.x), max(a.x, b.x, c.x, d.x), min(a.y, b.y, c.y, d.y), max(a.y, b.y, c.y, d.y)


def _meet(a: _Box, b: _Box) -> bool:
    return (
        a[0] <= b[1] + SAME_PLACE_MM
        and b[0] <= a[1] + SAME_PLACE_MM
        and a[2] <= b[3] + SAME_PLACE_MM
        and b[2] <= a[3] + SAME_PLACE_MM
    )


def _segment_crossings(a: Segment, b: Segment) -> list[tuple[float, float]]:
    """Parameters on both. A straight line meets either kind by a formula; two curves are searched for."""
    if isinstance(a, Line):
        return list(_line_crossings(a, b))
    if isinstance(b, Line):
        return [(s, t) for t, s in _line_crossings(b, a)]
    return [] if _beside(a, b) or _beside(b, a) else list(_curve_crossings(a, b))


def _line_crossings(line: Line, other: Segment) -> Iterator[tuple[float, float]]:
    from_x, from_y = line.start.x, line.start.y
    way_x, way_y = line.end.x - from_x, line.end.y - from_y
    length = math.hypot(way_x, way_y)
    if length == 0:
        return
    way_x, way_y = way_x / length, way_y / length
    heights = [way_x * (p.y - from_y) - way_y * (p.x - from_x) for p in other.control_points]
    for t in zeros(heights, ON_BOTH_MM):
        place = other.at(t)
        s = way_x * (place.x - from_x) + way_y * (place.y - from_y)
        if -ON_BOTH_MM <= s <= length + ON_BOTH_MM:
            yield min(max(s / length, 0.0), 1.0), t


def _beside(a: Cubic, b: Cubic) -> bool:
    """Whether the points that hold the one all lie to one side of those that hold the other, seen along its chord."""
    way = a.end - a.start
    own = [way.cross(p - a.start) for p in a.control_points]
    its = [way.cross(p - a.start) for p in b.control_points]
    slack = SAME_PLACE_MM * way.length
    return min(own) > max(its) + slack or min(its) > max(own) + slack


def _curve_crossings(a: Cubic, b: Cubic) -> Iterator[tuple[float, float]]:
    for s, t in _starts(a, b):
        arrived = _newton(a, b, s, t)
        if arrived is not None:
            yield arrived


def _starts(a: Cubic, b: Cubic) -> Iterator[tuple[float, float]]:
    """Parameters near every crossing: where the chords of the curves cross; the ends of chords that run along."""
    p, q = _corners(a), _corners(b)
    m, n = len(p) - 1, len(q) - 1
    for i, j in _near(p, q, 2 * CHORD_ERROR_MM):
        u, v = Vector(*(p[i + 1] - p[i])), Vector(*(q[j + 1] - q[j]))
        gap = Vector(*(q[j] - p[i]))
        cross = u.cross(v)
        if abs(cross) > 1e-12 * u.length * v.length:
            # Beyond the chords' own ends too: Newton goes on from the nearest place on them.
            s, t = (min(max(x, 0.0), 1.0) for x in (gap.cross(v) / cross, gap.cross(u) / cross))
            yield (i + s) / m, (j + t) / n
        if abs(cross) < SLIGHT_ANGLE * u.length * v.length:
            yield from ((k / m, h / n) for k in (i, i + 1) for h in (j, j + 1))


@lru_cache(maxsize=4096)
def _corners(curve: Cubic) -> NDArray[np.float64]:
    """The ends of a curve's chords, one a row."""
    return Path((curve,)).sampled(CHORD_ERROR_MM)


def _near(p: NDArray[np.float64], q: NDArray[np.float64], slack: float) -> list[tuple[int, int]]:
    """Which chords of the one lie in boxes that meet those of the other's chords."""
    low_p, high_p = np.minimum(p[:-1], p[1:]), np.maximum(p[:-1], p[1:])
    low_q, high_q = np.minimum(q[:-1], q[1:]), np.maximum(q[:-1], q[1:])
    apart = (low_p[:, None] > high_q[None] + slack) | (low_q[None] > high_p[:, None] + slack)
    return [(int(i), int(j)) for i, j in np.argwhere(~apart.any(axis=2))]


def _newton(a: Cubic, b: Cubic, s: float, t: float) -> tuple[float, float] | None:
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


def _speed(curve: Cubic, t: float) -> Vector:
    p0, p1, p2, p3 = curve.control_points
    return (p1 - p0) * (3 * (1 - t) ** 2) + (p2 - p1) * (6 * (1 - t) * t) + (p3 - p2) * (3 * t * t)

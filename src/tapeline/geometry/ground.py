"""The ground that closed outlines cover: grown, swept, joined, and compared exactly; polygons by shapely, wrapped here.

An `Outline` is the corners of a closed polygon, counter-clockwise, the first not said again at the end.
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from itertools import pairwise
from typing import Any

from tapeline.geometry.path import FLATNESS_MM, Path
from tapeline.geometry.point import Point, Vector
from tapeline.geometry.rigid import Rigid

__all__ = [
    "Outline",
    "bounds",
    "clearance",
    "closed_up",
    "common_ground",
    "ground",
    "grown",
    "outline_of",
    "placed",
    "simpler",
    "swept",
    "united",
    "unsound",
]

Outline = tuple[Point, ...]
"""Corners of a closed polygon, counter-clockwise, mm."""

WITHIN = 0.95
"""A chord may cut in by a little less than all moves out, so that rounding does not count."""
SHARPEST = 2.0
"""A grown corner runs out to at most this many times the distance, and is cut off there."""


def outline_of(path: Path, tolerance: float = FLATNESS_MM) -> Outline:
    """The corners of a closed path, its curves as chords that leave them by no more than a tolerance in mm.

    >>> outline_of(Path.through(Point(0, 0), Point(0, 10), Point(20, 10), Point(0, 0)))
    (Point(x=20.0, y=10.0), Point(x=0.0, y=10.0), Point(x=0.0, y=0.0))
    """
    points = path.flattened(tolerance)
    kept = [p for p, q in pairwise([*points, points[0]]) if p.distance_to(q) > 1e-9]
    return _counter_clockwise(kept)


def ground(outline: Sequence[Point]) -> float:
    """Square millimetres inside a closed outline; negative when it runs clockwise.

    >>> ground((Point(0, 0), Point(20, 0), Point(20, 10), Point(0, 10)))
    200.0
    """
    return sum(a.x * b.y - a.y * b.x for a, b in pairwise([*outline, outline[0]])) / 2


def bounds(outline: Iterable[Point]) -> tuple[float, float, float, float]:
    """Least x, least y, greatest x, greatest y.

    >>> bounds((Point(0, 5), Point(20, 0), Point(20, 10)))
    (0, 0, 20, 10)
    """
    xs, ys = zip(*((p.x, p.y) for p in outline), strict=True)
    return min(xs), min(ys), max(xs), max(ys)


def placed(outline: Sequence[Point], move: Rigid) -> Outline:
    """Where an outline comes to lie; counter-clockwise still when it was turned over."""
    points = tuple(move.point(p) for p in outline)
    return points[::-1] if move.turns_over else points


def grown(outline: Sequence[Point], by: float, *, chord: float = 0.0) -> Outline:
    """An outline that lies outside another by at least a distance in mm, sharp corners cut off.

    Args:
        outline: The one inside.
        by: How far outside.
        chord: The result has fewer corners, and lies at most this much further out still.

    >>> bounds(grown((Point(0, 0), Point(20, 0), Point(20, 10), Point(0, 10)), 1))
    (-1.0, -1.0, 21.0, 11.0)
    """
    shape = _polygon(outline).buffer(by, join_style="mitre", mitre_limit=SHARPEST)
    if chord and not (fewer := shape.simplify(chord)).covers(shape):
        # Where a chord cuts into it, all of it moves out by that much; straight sides stay where they are.
        fewer = shape.buffer(chord, join_style="mitre", mitre_limit=SHARPEST).simplify(chord * WITHIN)
        return _corners(fewer if fewer.covers(shape) else shape)
    return _corners(fewer if chord else shape)


def simpler(outline: Sequence[Point], slack: float) -> Outline:
    """An outline of fewer corners that holds another and lies at most about twice a slack in mm outside it."""
    return grown(outline, 0.0, chord=slack)


def swept(outline: Sequence[Point], move: Vector) -> Outline:
    """All the ground that an outline passes over while it is shifted; hollows that close on the way are filled.

    >>> bounds(swept((Point(0, 0), Point(20, 0), Point(20, 10), Point(0, 10)), Vector(5, 0)))
    (0.0, 0.0, 25.0, 10.0)
    """
    from shapely import Polygon, unary_union

    parts = [_polygon(outline), _polygon([p + move for p in outline])]
    for a, b in pairwise([*outline, outline[0]]):
        side = Polygon([(q.x, q.y) for q in (a, b, b + move, a + move)])
        if side.area > 1e-9:
            parts.append(side.buffer(0))
    return _corners(unary_union(parts))


def united(outlines: Iterable[Sequence[Point]]) -> tuple[Outline, ...]:
    """The outlines of the ground that several cover together; holes are filled."""
    from shapely import unary_union

    shape = unary_union([_polygon(outline) for outline in outlines])
    return tuple(_corners(part) for part in getattr(shape, "geoms", [shape]))


def closed_up(outlines: Sequence[Sequence[Point]], step: float = 2.0) -> Outline:
    """One outline round several: the gaps between them are bridged, wider ones step by step until all hang together."""
    from shapely import unary_union

    shape = unary_union([_polygon(outline) for outline in outlines])
    reach = step
    bridged = shape
    while bridged.geom_type != "Polygon":
        grown_shape = shape.buffer(reach, join_style="mitre", mitre_limit=SHARPEST)
        bridged = unary_union([shape, grown_shape.buffer(-reach, join_style="mitre", mitre_limit=SHARPEST)])
        reach *= 2
    return _corners(bridged)


def common_ground(outlines: Sequence[Sequence[Point]]) -> list[tuple[int, int, float]]:
    """Every two of some outlines that cover the same ground, and how much of it in mm2, exactly.

    >>> square = (Point(0, 0), Point(10, 0), Point(10, 10), Point(0, 10))
    >>> common_ground([square, tuple(Point(p.x + 9, p.y) for p in square)])
    [(0, 1, 10.0)]
    """
    from shapely import STRtree

    shapes = [_polygon(outline) for outline in outlines]
    found = []
    for i, j in STRtree(shapes).query(shapes, predicate="intersects").T.tolist():
        if i < j and (shared := shapes[i].intersection(shapes[j]).area) > 0:
            found.append((i, j, float(shared)))
    return sorted(found)


def clearance(one: Sequence[Point], other: Sequence[Point]) -> float:
    """Millimetres between the nearest places of two closed outlines; 0 where they touch or overlap."""
    return float(_polygon(one).distance(_polygon(other)))


def unsound(outline: Sequence[Point]) -> str:
    """Why an outline encloses no ground that could be cut, in a few words; empty when it does.

    >>> unsound((Point(0, 0), Point(10, 10), Point(10, 0), Point(0, 10)))
    'it crosses or touches itself'
    >>> unsound((Point(0, 0), Point(10, 0), Point(5, float("nan"))))
    'a corner is no number'
    """
    if any(p.x != p.x or p.y != p.y or abs(p.x) > 1e9 or abs(p.y) > 1e9 for p in outline):
        return "a corner is no number"
    if len(set(outline)) < 3:
        return "it has fewer than three corners"
    if not _polygon(outline).is_valid:
        return "it crosses or touches itself"
    return "" if abs(ground(outline)) > 1e-9 else "it encloses nothing"


def _polygon(outline: Sequence[Point]) -> Any:  # noqa: ANN401 - shapely carries no types
    from shapely import Polygon

    return Polygon([(p.x, p.y) for p in outline])


def _corners(shape: Any) -> Outline:  # noqa: ANN401 - shapely carries no types
    return _counter_clockwise([Point(float(x), float(y)) for x, y in list(shape.exterior.coords)[:-1]])


def _counter_clockwise(points: Sequence[Point]) -> Outline:
    return tuple(points) if ground(points) > 0 else tuple(reversed(points))

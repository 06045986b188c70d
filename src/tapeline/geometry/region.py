"""What an outline encloses: area, crossings, overlap; polygons by shapely, wrapped here."""

from __future__ import annotations

from collections.abc import Sequence

from tapeline.geometry.path import FLATNESS_MM, Path
from tapeline.geometry.point import Point
from tapeline.geometry.segment import Line

__all__ = ["area", "crosses_itself", "holds", "holds_all", "inner_place", "outlines_overlap"]

CLOSED_MM = 1e-9
"""An outline that ends so near its beginning is closed but for rounding."""


def area(outline: Path) -> float:
    """Signed area in mm2 inside a closed outline, exactly (positive when it runs counter-clockwise).

    >>> area(Path.through(Point(0, 0), Point(10, 0), Point(10, 10), Point(0, 0)))
    50.0
    """
    total = 0.0
    for segment in outline.segments:
        p = segment.control_points
        if isinstance(segment, Line):
            total += _cross(p[0], p[1]) / 2
        else:
            # Green's theorem on a cubic: the weights of each pair of control points are exact.
            total += (
                6 * _cross(p[0], p[1])
                + 3 * _cross(p[0], p[2])
                + _cross(p[0], p[3])
                + 3 * _cross(p[1], p[2])
                + 3 * _cross(p[1], p[3])
                + 6 * _cross(p[2], p[3])
            ) / 20
    return total


def crosses_itself(outline: Path) -> bool:
    """Whether a closed outline touches or crosses itself.

    >>> crosses_itself(Path.through(Point(0, 0), Point(10, 10), Point(10, 0), Point(0, 10), Point(0, 0)))
    True
    """
    from shapely import LinearRing

    corners = outline.sampled(FLATNESS_MM)
    if outline.start.distance_to(outline.end) < CLOSED_MM:
        # Rounding would leave a last side of no length, which lies on its neighbours.
        corners[-1] = corners[0]
    return not LinearRing(corners).is_simple


def holds(outline: Path, point: Point) -> bool:
    """Whether a place lies inside a closed outline.

    >>> holds(Path.through(Point(0, 0), Point(10, 0), Point(10, 10), Point(0, 0)), Point(7, 3))
    True
    """
    from shapely import Point as Place
    from shapely import Polygon

    return bool(Polygon(outline.sampled(FLATNESS_MM)).contains(Place(point.x, point.y)))


def holds_all(outline: Path, points: Sequence[Point]) -> bool:
    """Whether every one of some places lies inside a closed outline.

    >>> holds_all(Path.through(Point(0, 0), Point(10, 0), Point(10, 10), Point(0, 0)), [Point(7, 3), Point(3, 7)])
    False
    """
    from shapely import Polygon, contains_xy

    shape = Polygon(outline.sampled(FLATNESS_MM))
    return bool(contains_xy(shape, [(p.x, p.y) for p in points]).all())


def inner_place(outline: Path) -> Point:
    """A place well inside a closed outline: its middle of gravity where that lies inside.

    >>> inner_place(Path.through(Point(0, 0), Point(10, 0), Point(10, 10), Point(0, 10), Point(0, 0)))
    Point(x=5.0, y=5.0)
    """
    from shapely import Polygon

    shape = Polygon(outline.sampled(FLATNESS_MM))
    found = shape.centroid if shape.contains(shape.centroid) else shape.representative_point()
    return Point(found.x, found.y)


def outlines_overlap(one: Sequence[Point], other: Sequence[Point], slack: float = FLATNESS_MM) -> bool:
    """Whether two closed outlines cover common ground by more than a slack in mm.

    >>> square = [Point(0, 0), Point(10, 0), Point(10, 10), Point(0, 10)]
    >>> outlines_overlap(square, [Point(p.x + 10, p.y) for p in square])
    False
    """
    from shapely import Polygon

    a, b = (Polygon([(p.x, p.y) for p in points]).buffer(-slack / 2) for points in (one, other))
    return bool(a.intersects(b))


def _cross(a: Point, b: Point) -> float:
    return a.x * b.y - a.y * b.x

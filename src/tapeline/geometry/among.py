"""Many outlines and many places at once: which lies in which, and how near; trees of boxes by shapely, wrapped here."""

from __future__ import annotations

from collections.abc import Sequence

from tapeline.geometry.point import Point

__all__ = ["distances", "holders", "inside_another"]


def distances(course: Sequence[Point], places: Sequence[Point], *, closed: bool = False) -> list[float]:
    """Millimetres from each place to a line through points.

    >>> distances([Point(0, 0), Point(10, 0)], [Point(5, 3), Point(14, 3)])
    [3.0, 5.0]
    """
    import shapely

    if not places:
        return []
    corners = [(p.x, p.y) for p in course]
    line = shapely.LineString([*corners, corners[0]] if closed else corners)
    found = shapely.distance(line, shapely.points([(p.x, p.y) for p in places]))
    return [float(one) for one in found]


def holders(outlines: Sequence[Sequence[Point]], places: Sequence[Point], near_mm: float = 0.0) -> list[int | None]:
    """For each place the number of the outline that it lies in, or no further than `near_mm` from; the nearest first.

    >>> square = [Point(0, 0), Point(10, 0), Point(10, 10), Point(0, 10)]
    >>> holders([square], [Point(5, 5), Point(10.4, 5), Point(12, 5)], 0.5)
    [0, 0, None]
    """
    import shapely

    found: list[int | None] = [None] * len(places)
    if not outlines or not places:
        return found
    shapes = _polygons(outlines)
    spots = shapely.points([(p.x, p.y) for p in places])
    tree = shapely.STRtree(shapes)
    best = [0.0] * len(places)
    for which, shape in tree.query(spots, predicate="dwithin", distance=near_mm).T.tolist():
        far = float(shapely.distance(spots[which], shapes[shape]))
        if found[which] is None or far < best[which]:
            found[which], best[which] = shape, far
    return found


def inside_another(outlines: Sequence[Sequence[Point]]) -> list[bool]:
    """Whether each outline begins inside a larger one.

    >>> square = [Point(0, 0), Point(10, 0), Point(10, 10), Point(0, 10)]
    >>> inside_another([square, [Point(2, 2), Point(3, 2), Point(3, 3)]])
    [False, True]
    """
    import shapely

    lies = [False] * len(outlines)
    if len(outlines) < 2:
        return lies
    shapes = _polygons(outlines)
    areas = [abs(float(one)) for one in shapely.area(shapes)]
    spots = shapely.points([(points[0].x, points[0].y) for points in outlines])
    for which, shape in shapely.STRtree(shapes).query(spots, predicate="within").T.tolist():
        if areas[shape] > areas[which]:
            lies[which] = True
    return lies


def _polygons(outlines: Sequence[Sequence[Point]]) -> list[object]:
    import shapely

    return [shapely.Polygon([(p.x, p.y) for p in points]) for points in outlines]

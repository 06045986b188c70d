"""Outlines that lie on each other: what all of them together cover."""

from __future__ import annotations

from collections.abc import Sequence

from tapeline.geometry.path import Path
from tapeline.geometry.point import Point

__all__ = ["covered"]

SLACK_MM = 0.05
"""How far a curve's chords may leave it."""


def covered(outlines: Sequence[Path]) -> Path:
    """The outline of all that closed outlines cover, as chords, clockwise; where they do not touch, their hull.

    >>> square = [Point(0, 0), Point(0, 10), Point(10, 10), Point(10, 0), Point(0, 0)]
    >>> wide = Path.through(*(Point(p.x * 2, p.y / 2) for p in square))
    >>> covered([Path.through(*square), wide]).length
    60.0
    """
    from shapely import Polygon, unary_union
    from shapely.geometry.polygon import orient

    whole = unary_union([Polygon(outline.sampled(SLACK_MM)).buffer(0) for outline in outlines])
    if not isinstance(whole, Polygon):
        whole = whole.convex_hull
    corners = [Point(float(x), float(y)) for x, y in orient(whole, -1.0).exterior.coords]
    return Path.through(*corners)

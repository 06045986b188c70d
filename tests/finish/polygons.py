"""A second opinion on outlines, by polygons (shapely): what lies inside what, areas, parallel outlines."""

from __future__ import annotations

from typing import Any

from shapely import LinearRing, Polygon
from shapely.affinity import affine_transform

from tapeline.geometry import Path, Rigid

FINE_MM = 0.0005
"""Chords leave the curves by no more than this."""


def polygon(path: Path) -> Any:
    """What a closed path encloses."""
    return Polygon([(p.x, p.y) for p in path.flattened(FINE_MM)])


def ring(path: Path) -> Any:
    """A closed path as a line."""
    return LinearRing([(p.x, p.y) for p in path.flattened(FINE_MM)])


def widened(path: Path, by_mm: float) -> float:
    """Area in mm2 inside the parallel outline with pointed corners."""
    return float(polygon(path).buffer(by_mm, join_style="mitre", mitre_limit=20).area)


def moved(shape: Any, move: Rigid) -> Any:
    """Where a polygon lies after a move of the sheet."""
    return affine_transform(shape, [move.a, move.c, move.b, move.d, move.e, move.f])


def beyond(shape: Any, path: Path, wide_mm: float) -> Any:
    """The part of a polygon to the left of a straight path and beside it."""
    a, b = path.start, path.end
    out, along = (b - a).unit.left * 500.0, (b - a).unit * wide_mm
    corners = [a + along * -1, a + along * -1 + out, b + along + out, b + along]
    return shape.intersection(Polygon([(p.x, p.y) for p in corners]))

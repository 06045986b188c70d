"""How far lines reach, seen one way: the room that a piece takes on the cloth."""

from __future__ import annotations

from collections.abc import Iterable

from tapeline.geometry.path import FLATNESS_MM, Path
from tapeline.geometry.point import Vector

__all__ = ["extent"]


def extent(paths: Iterable[Path], way: Vector) -> float:
    """Millimetres from the first to the last place of some paths, measured along a way, within `FLATNESS_MM`.

    >>> from tapeline.geometry.point import Point
    >>> extent([Path.through(Point(0, 0), Point(30, 40))], Vector(2, 0))
    30.0
    """
    ways = (way.unit.x, way.unit.y)
    reached = [path.sampled(FLATNESS_MM) @ ways for path in paths]
    return float(max(r.max() for r in reached) - min(r.min() for r in reached))

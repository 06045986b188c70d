"""How far lines reach, seen one way: the room that a piece takes on the cloth."""

from __future__ import annotations

import math
from collections.abc import Iterable

from tapeline.geometry.path import Path
from tapeline.geometry.point import Vector
from tapeline.geometry.zeros import height, turns

__all__ = ["extent"]


def extent(paths: Iterable[Path], way: Vector) -> float:
    """Millimetres from the first to the last place of some paths, measured along a way, exactly.

    >>> from tapeline.geometry.point import Point
    >>> extent([Path.through(Point(0, 0), Point(30, 40))], Vector(2, 0))
    30.0
    """
    x, y = way.unit.x, way.unit.y
    low, high = math.inf, -math.inf
    for segment in (segment for path in paths for segment in path.segments):
        heights = [x * p.x + y * p.y for p in segment.control_points]
        low, high = min(low, heights[0], heights[-1]), max(high, heights[0], heights[-1])
        # A curve reaches no further than its handles; only when they reach further has it to be looked at.
        if min(heights) < low or max(heights) > high:
            reached = [height(heights, t) for t in turns(heights)]
            low, high = min(low, *reached, high), max(high, *reached, low)
    return high - low

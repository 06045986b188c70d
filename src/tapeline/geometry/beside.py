"""The line beside a path with corners: run on round the outside of a corner, cut off where it crosses on the inside."""

from __future__ import annotations

from tapeline.geometry.crossing import crossings
from tapeline.geometry.path import Path, corner_between
from tapeline.geometry.segment import Segment

__all__ = ["beside"]

CORNER = 1e-3
"""Radians; a path that turns more than this at one of its knots has a corner there."""


def beside(path: Path, left_mm: float) -> Path:
    """The path a distance in mm to the left of another (to the right, where it is negative).

    Where a stretch without a corner turns tighter than the distance, the result crosses itself.

    >>> from tapeline.geometry import Point
    >>> path = Path.through(Point(0, 0), Point(30, 0), Point(30, 40))
    >>> beside(path, 10).svg(), beside(path, -10).svg()
    ('M0,10 L20,10 L20,40', 'M0,-10 L30,-10 L40,-10 L40,0 L40,40')
    """
    runs: list[list[Segment]] = []
    for segment in path.segments:
        if runs and abs(runs[-1][-1].direction(1).turn_to(segment.direction(0))) < CORNER:
            runs[-1].append(segment)
        else:
            runs.append([segment])
    first, *others = (Path(tuple(run)).offset_left(left_mm) for run in runs)
    made = first
    for other in others:
        met = crossings(made, other)
        if met:
            end, start = max(met, key=lambda pair: pair[0] - pair[1])
            made = made.part(0, end).joined(other.part(start, other.length))
        else:
            made = Path((*made.segments, *corner_between(made.segments[-1], other.segments[0]), *other.segments))
    return made

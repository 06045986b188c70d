"""A seam line moved into its piece: beside the old one, by one amount at its start and another at its end."""

from __future__ import annotations

import math
from itertools import accumulate

from tapeline.alter.cut_line import REACH_MM, CutLine
from tapeline.alter.story import spoken
from tapeline.geometry import Cubic, Line, Path, Point, Segment, Vector, fair_line
from tapeline.lengths import Length, Phrase
from tapeline.pattern import Edge

__all__ = ["moved_line"]

EVEN_MM = 1e-9


def moved_line(edge: Edge, start: Length, end: Length) -> CutLine:
    """The line along which an edge lies when it has moved into its piece; what it gives up lies beyond.

    Moved evenly, every segment keeps its directions at both ends, so that what was smooth and what was straight stays
    so. Moved unevenly a straight edge stays straight, and a curved one is a fair line.
    """
    inner = _beside(edge.path, start.mm, end.mm)
    head = Line(inner.start + inner.leaves * -REACH_MM, inner.start)
    tail = Line(inner.end, inner.end + inner.arrives * REACH_MM)
    even = abs(start.mm - end.mm) < EVEN_MM
    name = spoken(edge.name)
    says: Phrase = (
        (f"beside the {name}, ", start, " inside")
        if even
        else (f"beside the {name}, ", start, " inside where it begins and ", end, " where it ends")
    )
    return CutLine(Path((head, *inner.segments, tail)), inner.at(inner.length / 2), says, ())


def _beside(path: Path, start: float, end: float) -> Path:
    along = [0.0, *accumulate(segment.length for segment in path.segments)]
    shifts = [_inward(path, k) * (start + (end - start) * at / along[-1]) for k, at in enumerate(along)]
    places = [knot + shift for knot, shift in zip(path.knots, shifts, strict=True)]
    if abs(start - end) < EVEN_MM:
        return Path(tuple(_shifted(s, shifts[k], shifts[k + 1]) for k, s in enumerate(path.segments)))
    if all(isinstance(segment, Line) for segment in path.segments):
        return Path.through(*places)
    turn = -math.atan2(end - start, along[-1])
    return fair_line(places, path.leaves.turned(turn), path.arrives.turned(turn))


def _inward(path: Path, knot: int) -> Vector:
    """Square to the path at a knot, into the piece: outlines run clockwise."""
    ways: list[Vector] = []
    if knot > 0:
        ways.append(path.segments[knot - 1].direction(1))
    if knot < len(path.segments):
        ways.append(path.segments[knot].direction(0))
    return (ways[0] + ways[-1]).unit.right


def _shifted(segment: Segment, start: Vector, end: Vector) -> Segment:
    if isinstance(segment, Line):
        return Line(segment.start + start, segment.end + end)
    return Cubic(segment.start + start, segment.out + start, segment.into + end, _end(segment) + end)


def _end(segment: Cubic) -> Point:
    return segment.end

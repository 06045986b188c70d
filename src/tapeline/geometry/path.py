"""A `Path` is a line as it is drawn: straight and curved segments, end to end."""

from __future__ import annotations

import math
from collections.abc import Iterator
from dataclasses import dataclass
from itertools import pairwise

import numpy as np
from numpy.typing import NDArray

from tapeline.geometry.point import Point, Vector
from tapeline.geometry.rigid import Rigid
from tapeline.geometry.segment import Line, Segment
from tapeline.geometry.zeros import zeros

__all__ = ["FLATNESS_MM", "Path", "corner_between"]

FLATNESS_MM = 0.01
"""Chords may leave a curve by this much where a writer needs points: a tenth of the thinnest pencil line."""
ON_THE_LINE_MM = 1e-9
"""An end this close to a line lies on it: rounding."""
AT_THE_KNOT = 1e-12
"""Share of a segment that is only rounding."""


@dataclass(frozen=True, slots=True)
class Path:
    """Segments, each starting where the one before ends.

    >>> path = Path.through(Point(0, 0), Point(30, 0), Point(30, 40))
    >>> path.length
    70.0
    >>> path.svg()
    'M0,0 L30,0 L30,40'
    """

    segments: tuple[Segment, ...]

    @classmethod
    def through(cls, *points: Point) -> Path:
        """Straight from point to point."""
        return cls(tuple(Line(a, b) for a, b in pairwise(points)))

    @property
    def start(self) -> Point:
        """Where it begins."""
        return self.segments[0].start

    @property
    def end(self) -> Point:
        """Where it ends."""
        return self.segments[-1].end

    @property
    def length(self) -> float:
        """Millimetres along the path."""
        return math.fsum(segment.length for segment in self.segments)

    @property
    def knots(self) -> tuple[Point, ...]:
        """The start, and the end of every segment."""
        return self.start, *(segment.end for segment in self.segments)

    @property
    def leaves(self) -> Vector:
        """The way it sets out."""
        return self.segments[0].direction(0)

    @property
    def arrives(self) -> Vector:
        """The way it comes in."""
        return self.segments[-1].direction(1)

    def _locate(self, length: float) -> tuple[int, float]:
        """Segment and parameter a length along; the ends beyond the ends."""
        last = len(self.segments) - 1
        for index, segment in enumerate(self.segments):
            here = segment.length
            if length < here or index == last:
                return index, segment.parameter_at(min(max(length, 0.0), here))
            length -= here
        raise AssertionError("a path has segments")

    def at(self, length: float) -> Point:
        """The place a length in mm from the start, along the path."""
        index, t = self._locate(length)
        return self.segments[index].at(t)

    def direction_at(self, length: float) -> Vector:
        """The way it runs there."""
        index, t = self._locate(length)
        return self.segments[index].direction(t)

    def length_to(self, point: Point) -> float:
        """Millimetres along the path to the place on it nearest a point.

        >>> Path.through(Point(0, 0), Point(30, 0), Point(30, 40)).length_to(Point(35, 10))
        40.0
        """
        _, index, t = self._nearest(point)
        before = math.fsum(segment.length for segment in self.segments[:index])
        if t <= 0:
            return before
        return before + self.segments[index].part(0, t).length

    def distance_to(self, point: Point) -> float:
        """Millimetres from a point to the nearest place on the path."""
        return self._nearest(point)[0]

    def _nearest(self, point: Point) -> tuple[float, int, float]:
        """How far the nearest place on the path is, in which segment, and its parameter there."""
        found: tuple[float, int, float] | None = None
        for least, index in sorted((_apart(segment, point), index) for index, segment in enumerate(self.segments)):
            if found and least > found[0]:
                break
            t, far = self.segments[index].nearest(point)
            if found is None or (far, index) < found[:2]:
                found = far, index, t
        if found is None:
            raise AssertionError("a path has segments")
        return found

    def part(self, start: float, end: float) -> Path:
        """The stretch between two lengths along the path, in mm."""
        (first, t0), (last, t1) = self._locate(start), self._locate(end)
        if first == last:
            return Path((self.segments[first].part(t0, t1),))
        head = self.segments[first].part(t0, 1) if t0 > 0 else self.segments[first]
        tail = self.segments[last].part(0, t1) if t1 < 1 else self.segments[last]
        # At a knot, rounding must not leave a stretch of no length, which runs no way.
        pieces = (
            ((head,) if t0 < 1 - AT_THE_KNOT else ())
            + self.segments[first + 1 : last]
            + ((tail,) if t1 > AT_THE_KNOT else ())
        )
        return Path(pieces)

    def split_at_knot(self, knot: int) -> tuple[Path, Path]:
        """Two paths, cut where two segments meet (knot 1 is the end of the first segment)."""
        return Path(self.segments[:knot]), Path(self.segments[knot:])

    def crossings(self, line: Line) -> list[Point]:
        """Where it crosses a straight line that runs on without end, in order along the path.

        >>> Path.through(Point(0, 0), Point(10, 20)).crossings(Line(Point(0, 10), Point(1, 10)))
        [Point(x=5.0, y=10.0)]
        """
        side = line.direction(0).left
        found: list[Point] = []
        for segment in self.segments:
            heights = [side.dot(p - line.start) for p in segment.control_points]
            found += [segment.at(t) for t in zeros(heights, ON_THE_LINE_MM)]
        kept: list[Point] = []
        for point in found:
            if not kept or kept[-1].distance_to(point) > FLATNESS_MM:
                kept.append(point)
        return kept

    def joined(self, other: Path) -> Path:
        """This path and another that starts where it ends."""
        return Path(self.segments + other.segments)

    def reversed(self) -> Path:
        """The same line from its other end."""
        return Path(tuple(segment.reversed() for segment in reversed(self.segments)))

    def moved(self, move: Rigid) -> Path:
        """Where it lies after a move of the sheet."""
        return Path(tuple(segment.moved(move) for segment in self.segments))

    def offset_left(self, distance: float) -> Path:
        """The line beside this one, to its left by a distance in mm; corners are closed by running on to meet.

        Where the path turns tighter than the distance the result crosses itself; `crosses_itself` tells.
        """
        out: list[Segment] = []
        for segment in self.segments:
            for piece in segment.offset_left(distance):
                if out and out[-1].end.distance_to(piece.start) > FLATNESS_MM:
                    out += corner_between(out[-1], piece)
                out.append(piece)
        return Path(tuple(out))

    def curvatures(self, per_segment: int = 24) -> list[float]:
        """Curvature in 1/mm at even parameters along every segment, ends included."""
        steps = [i / (per_segment - 1) for i in range(per_segment)]
        return [segment.curvature(t) for segment in self.segments for t in steps]

    def flattened(self, tolerance: float = FLATNESS_MM) -> list[Point]:
        """Points on the path whose chords leave it by no more than a tolerance in mm."""
        return [Point(x, y) for x, y in self.sampled(tolerance).tolist()]

    def sampled(self, tolerance: float = FLATNESS_MM) -> NDArray[np.float64]:
        """The same points as an array, one (x, y) a row."""
        # All segments at once; a line is a cubic that does not bend.
        corners = np.array([[(p.x, p.y) for p in _as_cubic(segment)] for segment in self.segments])
        bend = 6 * np.hypot(*np.moveaxis(np.diff(corners, 2, axis=1), 2, 0)).max(axis=1)
        # The chord error of a cubic is at most an eighth of its bend over the square of the count.
        counts = np.maximum(1, np.ceil(np.sqrt(bend / (8 * tolerance)))).astype(int)
        ends = np.cumsum(counts)
        whose = np.repeat(np.arange(len(counts)), counts)
        t = ((np.arange(ends[-1]) - (ends - counts)[whose] + 1) / counts[whose])[:, None]
        u = 1 - t
        p0, p1, p2, p3 = np.moveaxis(corners[whose], 1, 0)
        points: NDArray[np.float64] = np.empty((ends[-1] + 1, 2))
        points[0] = corners[0, 0]
        points[1:] = u**3 * p0 + 3 * u * u * t * p1 + 3 * u * t * t * p2 + t**3 * p3
        points[ends] = corners[:, 3]
        return points

    def control_points(self) -> Iterator[Point]:
        """All points that define it; its hull holds the path."""
        for segment in self.segments:
            yield from segment.control_points

    def svg(self, digits: int = 4) -> str:
        """As an SVG path string in mm, y up; the fourth decimal is the wavelength of light."""

        def number(value: float) -> str:
            text = f"{value:.{digits}f}".rstrip("0").rstrip(".")
            return "0" if text == "-0" else text

        def pairs(points: tuple[Point, ...]) -> str:
            return " ".join(f"{number(p.x)},{number(p.y)}" for p in points)

        parts = [f"M{pairs((self.start,))}"]
        parts += [("L" if isinstance(s, Line) else "C") + pairs(s.control_points[1:]) for s in self.segments]
        return " ".join(parts)


def corner_between(before: Segment, after: Segment) -> list[Segment]:
    """Run two offset neighbours on along their tangents until they meet."""
    u, v = before.direction(1), after.direction(0)
    cross = u.cross(v)
    if abs(cross) < 1e-6:
        return [Line(before.end, after.start)]
    along = (after.start - before.end).cross(v) / cross
    meet = before.end + u * along
    return [Line(before.end, meet), Line(meet, after.start)]


def _apart(segment: Segment, point: Point) -> float:
    """No place of a segment is nearer to a point than the box round what defines it, mm."""
    corners = segment.control_points
    xs, ys = [p.x for p in corners], [p.y for p in corners]
    return math.hypot(max(min(xs) - point.x, 0.0, point.x - max(xs)), max(min(ys) - point.y, 0.0, point.y - max(ys)))


def _as_cubic(segment: Segment) -> tuple[Point, ...]:
    if isinstance(segment, Line):
        return segment.start, segment.at(1 / 3), segment.at(2 / 3), segment.end
    return segment.control_points

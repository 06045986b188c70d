"""The two things a path is made of: straight `Line` and cubic Bezier `Cubic`.

Lengths, splits, nearest places and offsets of cubics come from kurbopy, wrapped here and nowhere else.
Its objects can neither be compared nor sent between processes, so they live only inside these methods.
"""

from __future__ import annotations

import math
from dataclasses import dataclass, field

import kurbopy

from tapeline.geometry.nearest import nearest
from tapeline.geometry.point import Point, Vector
from tapeline.geometry.rigid import Rigid
from tapeline.geometry.zeros import square_zeros

__all__ = ["LENGTH_ACCURACY_MM", "OFFSET_ACCURACY_MM", "Cubic", "Line", "Segment"]

LENGTH_ACCURACY_MM = 1e-9
"""Far below any pencil line, so that seams can be compared by subtraction; costs nothing measurable."""
OFFSET_ACCURACY_MM = 0.01
"""A tenth of the thinnest pencil line."""
NO_LENGTH_MM = 1e-9
"""A segment shorter than this is a point: its direction means nothing."""


@dataclass(frozen=True, slots=True)
class Line:
    """A straight line between two points.

    >>> Line(Point(0, 0), Point(30, 40)).length
    50.0
    """

    start: Point
    end: Point

    @property
    def length(self) -> float:
        """Millimetres."""
        return self.start.distance_to(self.end)

    @property
    def control_points(self) -> tuple[Point, ...]:
        """The points that define it, first to last."""
        return self.start, self.end

    def at(self, t: float) -> Point:
        """The place at parameter t, 0 to 1."""
        return self.start.toward(self.end, t)

    def direction(self, _t: float) -> Vector:
        """The way it runs, one millimetre long."""
        return (self.end - self.start).unit

    def curvature(self, _t: float) -> float:
        """A straight line does not turn."""
        return 0.0

    def inflections(self) -> list[float]:
        """Nor does it turn from one side to the other."""
        return []

    def parameter_at(self, length: float) -> float:
        """The parameter a length in mm along."""
        return length / self.length

    def part(self, t0: float, t1: float) -> Line:
        """The piece between two parameters."""
        return Line(self.at(t0), self.at(t1))

    def nearest(self, point: Point) -> tuple[float, float]:
        """Parameter of the place nearest a point, and how far away that is, mm."""
        way = self.end - self.start
        t = min(max((point - self.start).dot(way) / way.dot(way), 0.0), 1.0)
        return t, self.at(t).distance_to(point)

    def reversed(self) -> Line:
        """The same line from its other end."""
        return Line(self.end, self.start)

    def moved(self, move: Rigid) -> Line:
        """Where it lies after a move of the sheet."""
        return Line(move.point(self.start), move.point(self.end))

    def offset_left(self, distance: float) -> tuple[Line, ...]:
        """The line beside this one, to the left by a distance in mm."""
        step = self.direction(0).left * distance
        return (Line(self.start + step, self.end + step),)


@dataclass(frozen=True, slots=True)
class Cubic:
    """A cubic Bezier curve: two ends, and two handles that it sets out toward and arrives from.

    >>> round(Cubic(Point(0, 0), Point(0, 55.23), Point(44.77, 100), Point(100, 100)).length, 1)
    157.1
    """

    start: Point
    out: Point
    into: Point
    end: Point
    _far: float | None = field(default=None, init=False, repr=False, compare=False)
    """Its length, once it was asked for: seams and outlines are measured again and again."""

    def _kurbo(self) -> kurbopy.CubicBez:
        point, a, b, c, d = kurbopy.Point, self.start, self.out, self.into, self.end
        return kurbopy.CubicBez(point(a.x, a.y), point(b.x, b.y), point(c.x, c.y), point(d.x, d.y))

    @classmethod
    def _from_kurbo(cls, curve: kurbopy.CubicBez) -> Cubic:
        a, b, c, d = curve.p0, curve.p1, curve.p2, curve.p3
        return cls(Point(a.x, a.y), Point(b.x, b.y), Point(c.x, c.y), Point(d.x, d.y))

    @property
    def length(self) -> float:
        """Millimetres along the curve."""
        if self._far is None:
            # No change of the value, which is frozen: only what follows from it.
            object.__setattr__(self, "_far", float(self._kurbo().arclen(LENGTH_ACCURACY_MM)))
        return self._far or 0.0

    @property
    def control_points(self) -> tuple[Point, ...]:
        """The points that define it, first to last."""
        return self.start, self.out, self.into, self.end

    def at(self, t: float) -> Point:
        """The place at parameter t, 0 to 1."""
        u = 1 - t
        a, b, c, d = u * u * u, 3 * u * u * t, 3 * u * t * t, t * t * t
        p, q, r, s = self.start, self.out, self.into, self.end
        return Point(a * p.x + b * q.x + c * r.x + d * s.x, a * p.y + b * q.y + c * r.y + d * s.y)

    def _first(self, t: float) -> tuple[float, float]:
        """How fast it goes at parameter t, to the side and up; numbers, for a draft asks thousands of times."""
        u = 1 - t
        a, b, c = 3 * u * u, 6 * u * t, 3 * t * t
        p, q, r, s = self.start, self.out, self.into, self.end
        return (
            a * (q.x - p.x) + b * (r.x - q.x) + c * (s.x - r.x),
            a * (q.y - p.y) + b * (r.y - q.y) + c * (s.y - r.y),
        )

    def direction(self, t: float) -> Vector:
        """The way it runs at parameter t, one millimetre long (at a handle of no length: the way it runs nearby)."""
        x, y = self._first(t)
        if math.hypot(x, y) < NO_LENGTH_MM:
            x, y = self._first(t + 1e-6 if t < 0.5 else t - 1e-6)
        far = math.hypot(x, y)
        return Vector(x / far, y / far)

    def curvature(self, t: float) -> float:
        """How sharply it turns to the left at parameter t, 1/mm (negative: to the right)."""
        x, y = self._first(t)
        p, q, r, s = self.start, self.out, self.into, self.end
        early, late = 6 * (1 - t), 6 * t
        turn_x = early * (r.x - 2 * q.x + p.x) + late * (s.x - 2 * r.x + q.x)
        turn_y = early * (r.y - 2 * q.y + p.y) + late * (s.y - 2 * r.y + q.y)
        return (x * turn_y - y * turn_x) / math.hypot(x, y) ** 3

    def inflections(self) -> list[float]:
        """Parameters between its ends at which it turns from one side to the other, in order; no more than two.

        >>> Cubic(Point(0, 0), Point(10, 10), Point(20, -10), Point(30, 0)).inflections()
        [0.5]
        """
        a, b, c = self.out - self.start, self.into - self.out, self.end - self.into
        return square_zeros(a.cross(b), a.cross(c) / 2, b.cross(c))

    def parameter_at(self, length: float) -> float:
        """The parameter a length in mm along."""
        return float(self._kurbo().inv_arclen(float(length), LENGTH_ACCURACY_MM))

    def part(self, t0: float, t1: float) -> Cubic:
        """The piece between two parameters."""
        return Cubic._from_kurbo(self._kurbo().subsegment((t0, t1)))

    def nearest(self, point: Point) -> tuple[float, float]:
        """Parameter of the place nearest a point, and how far away that is, mm."""
        return nearest(self.control_points, point)

    def reversed(self) -> Cubic:
        """The same curve from its other end."""
        return Cubic(self.end, self.into, self.out, self.start)

    def moved(self, move: Rigid) -> Cubic:
        """Where it lies after a move of the sheet."""
        return Cubic(move.point(self.start), move.point(self.out), move.point(self.into), move.point(self.end))

    @property
    def _straight(self) -> bool:
        """Whether it runs straight from end to end, as a curve does between two points that face each other."""
        chord = self.end - self.start
        if chord.length < NO_LENGTH_MM:
            return False
        way = chord.unit
        out, into = self.out - self.start, self.into - self.start
        beside = max(abs(way.cross(out)), abs(way.cross(into)))
        return beside < NO_LENGTH_MM and 0 <= way.dot(out) <= chord.length and 0 <= way.dot(into) <= chord.length

    def offset_left(self, distance: float) -> tuple[Segment, ...]:
        """The curve beside this one, to the left by a distance in mm, within `OFFSET_ACCURACY_MM`.

        Where the curve turns tighter than the distance, the result crosses itself; `geometry.region` tells.
        """
        if distance == 0:
            return (self,)
        if self._straight:
            return Line(self.start, self.end).offset_left(distance)
        found = kurbopy.offset_cubic(self._kurbo(), float(distance), OFFSET_ACCURACY_MM).segments()
        return tuple(
            Cubic._from_kurbo(s)
            if isinstance(s, kurbopy.CubicBez)
            else Line(Point(s.p0.x, s.p0.y), Point(s.p1.x, s.p1.y))
            for s in found
        )


Segment = Line | Cubic

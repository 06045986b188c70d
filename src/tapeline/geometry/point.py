"""A `Point` is a place on the paper; a `Vector` is a move from one place to another."""

from __future__ import annotations

import math
from dataclasses import dataclass

__all__ = ["Point", "Vector"]


@dataclass(frozen=True, slots=True)
class Vector:
    """A move, in mm (or a bare direction, when its length is 1).

    >>> Vector(3, 4).length
    5.0
    >>> Vector(0, -10).angle == -math.pi / 2
    True
    """

    x: float
    y: float

    def __add__(self, other: Vector) -> Vector:
        return Vector(self.x + other.x, self.y + other.y)

    def __sub__(self, other: Vector) -> Vector:
        return Vector(self.x - other.x, self.y - other.y)

    def __mul__(self, times: float) -> Vector:
        return Vector(self.x * times, self.y * times)

    __rmul__ = __mul__

    def __neg__(self) -> Vector:
        return Vector(-self.x, -self.y)

    @property
    def length(self) -> float:
        """Millimetres."""
        return math.hypot(self.x, self.y)

    @property
    def angle(self) -> float:
        """Radians, counter-clockwise from x, in (-pi, pi]."""
        return math.atan2(self.y, self.x)

    @property
    def unit(self) -> Vector:
        """The same way, one millimetre far; `ZeroDivisionError` for no move at all."""
        far = math.hypot(self.x, self.y)
        return Vector(self.x / far, self.y / far)

    @property
    def left(self) -> Vector:
        """Turned a quarter to the left (counter-clockwise)."""
        return Vector(-self.y, self.x)

    @property
    def right(self) -> Vector:
        """Turned a quarter to the right (clockwise)."""
        return Vector(self.y, -self.x)

    def dot(self, other: Vector) -> float:
        """Scalar product: how far this move goes the other's way, times the other's length."""
        return self.x * other.x + self.y * other.y

    def cross(self, other: Vector) -> float:
        """Positive when the other lies to the left of this."""
        return self.x * other.y - self.y * other.x

    def turn_to(self, other: Vector) -> float:
        """Radians to turn left to face the other's way, in (-pi, pi].

        >>> round(math.degrees(Vector(1, 0).turn_to(Vector(0, -1))))
        -90
        """
        return math.atan2(self.cross(other), self.dot(other))

    def turned(self, angle: float) -> Vector:
        """Turned to the left by an angle in radians."""
        cos, sin = math.cos(angle), math.sin(angle)
        return Vector(self.x * cos - self.y * sin, self.x * sin + self.y * cos)


@dataclass(frozen=True, slots=True)
class Point:
    """A place on the paper, in mm. Points are not added; a point and a move give a point.

    >>> Point(10, 0) - Point(4, 0)
    Vector(x=6, y=0)
    >>> Point(4, 0) + Vector(0, 5)
    Point(x=4, y=5)
    """

    x: float
    y: float

    def __add__(self, move: Vector) -> Point:
        return Point(self.x + move.x, self.y + move.y)

    def __sub__(self, other: Point) -> Vector:
        return Vector(self.x - other.x, self.y - other.y)

    def distance_to(self, other: Point) -> float:
        """Millimetres, straight."""
        return math.hypot(self.x - other.x, self.y - other.y)

    def toward(self, other: Point, share: float) -> Point:
        """The place a share of the way to another point: 0 is here, 1 is there.

        >>> Point(0, 0).toward(Point(10, 20), 0.5)
        Point(x=5.0, y=10.0)
        """
        return Point(self.x + (other.x - self.x) * share, self.y + (other.y - self.y) * share)

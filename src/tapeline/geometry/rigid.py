"""Laying paper on paper: moves that keep every length (shift, turn, turn over)."""

from __future__ import annotations

from dataclasses import dataclass

from tapeline.geometry.point import Point, Vector

__all__ = ["Rigid"]


@dataclass(frozen=True, slots=True)
class Rigid:
    """Where each place comes to lie when a sheet is moved, turned, or turned over.

    `x' = a x + c y + e`, `y' = b x + d y + f`; (a, b) and (c, d) are where the two axes point afterwards.

    >>> Rigid.shift(Vector(5, 0)).point(Point(1, 2))
    Point(x=6, y=2)
    """

    a: float = 1
    b: float = 0
    c: float = 0
    d: float = 1
    e: float = 0
    f: float = 0

    @classmethod
    def shift(cls, move: Vector) -> Rigid:
        """Slide without turning."""
        return cls(e=move.x, f=move.y)

    @classmethod
    def turn(cls, angle: float, about: Point = Point(0, 0)) -> Rigid:
        """Turn to the left by an angle in radians about a point."""
        x, y = Vector(1, 0).turned(angle), Vector(0, 1).turned(angle)
        still = cls(x.x, x.y, y.x, y.y).point(about)
        return cls(x.x, x.y, y.x, y.y, about.x - still.x, about.y - still.y)

    @classmethod
    def laying(cls, point: Point, direction: Vector, onto: Point, along: Vector, *, turned_over: bool = False) -> Rigid:
        """Lay a point onto another and a direction along another, face up or turned over.

        Turning over is how the back lies on the front when their shoulders are matched on the table.

        >>> over = Rigid.laying(Point(0, 0), Vector(1, 0), Point(0, 0), Vector(1, 0), turned_over=True)
        >>> over.point(Point(3, 4))
        Point(x=3.0, y=-4.0)
        """
        u, v = direction.unit, along.unit
        u_side, v_side = u.left, v.right if turned_over else v.left
        a, c = u.x * v.x + u_side.x * v_side.x, u.y * v.x + u_side.y * v_side.x
        b, d = u.x * v.y + u_side.x * v_side.y, u.y * v.y + u_side.y * v_side.y
        return cls(a, b, c, d, onto.x - a * point.x - c * point.y, onto.y - b * point.x - d * point.y)

    @classmethod
    def over(cls, through: Point, way: Vector) -> Rigid:
        """Turn over about a straight line: the mirror image, as a fold makes it.

        >>> Rigid.over(Point(0, 5), Vector(1, 0)).point(Point(3, 4))
        Point(x=3.0, y=6.0)
        """
        return cls.laying(through, way, through, way, turned_over=True)

    @property
    def turns_over(self) -> bool:
        """Whether the sheet ends face down."""
        return self.a * self.d - self.b * self.c < 0

    @property
    def back(self) -> Rigid:
        """The move that undoes this one."""
        return Rigid(
            self.a,
            self.c,
            self.b,
            self.d,
            -(self.a * self.e + self.b * self.f),
            -(self.c * self.e + self.d * self.f),
        )

    def then(self, other: Rigid) -> Rigid:
        """This move, and another after it."""
        x, y = other.vector(Vector(self.a, self.b)), other.vector(Vector(self.c, self.d))
        origin = other.point(Point(self.e, self.f))
        return Rigid(x.x, x.y, y.x, y.y, origin.x, origin.y)

    def point(self, point: Point) -> Point:
        """Where a place comes to lie."""
        return Point(
            self.a * point.x + self.c * point.y + self.e,
            self.b * point.x + self.d * point.y + self.f,
        )

    def vector(self, vector: Vector) -> Vector:
        """Which way a direction points afterwards."""
        return Vector(self.a * vector.x + self.c * vector.y, self.b * vector.x + self.d * vector.y)

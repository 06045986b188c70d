"""A `Heading` is the way a line leaves or arrives, said as a hand with a set square would say it."""

from __future__ import annotations

from dataclasses import dataclass

from tapeline.geometry import Vector

__all__ = ["LEVEL", "STRAIGHT_DOWN", "STRAIGHT_UP", "Heading"]


@dataclass(frozen=True, slots=True)
class Heading:
    """A direction; of a square there are two, and the line takes the one it is going anyway."""

    direction: Vector
    says: str
    either_way: bool = False

    def going(self, onward: Vector) -> Vector:
        """The direction for a line that is on its way along `onward`."""
        return -self.direction if self.either_way and self.direction.dot(onward) < 0 else self.direction


STRAIGHT_DOWN = Heading(Vector(0, -1), "straight down")
STRAIGHT_UP = Heading(Vector(0, 1), "straight up")
LEVEL = Heading(Vector(1, 0), "level", either_way=True)

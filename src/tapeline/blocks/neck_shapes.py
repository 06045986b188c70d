"""Shapes of a neckline: how deep the front is, and how full its corner.

Common practice in the trade, no published source; how full is our own choice of what a French curve gives.
"""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction

from tapeline.pattern import choice

__all__ = ["NECK_SHAPES", "STRAIGHT", "NeckShape"]

STRAIGHT = Fraction(1, 2)
"""Half way down to the corner lies the straight line."""


@dataclass(frozen=True, slots=True)
class NeckShape:
    """A front neckline, before it is lowered; its width is chosen beside it."""

    depth: float | Fraction = choice(Fraction(1), 1, 2, "depth of the front, as a share of the neck's own")
    fullness: float | Fraction = choice(
        Fraction(2, 3), 0.5, 0.75, "how far down to the corner it runs: steep at the sides and flat below; 1/2 is a v"
    )


NECK_SHAPES = {
    "round": NeckShape(),
    "scoop": NeckShape(Fraction(3, 2), Fraction(18, 25)),
    "v": NeckShape(Fraction(3, 2), STRAIGHT),
}
"""A scoop is half as deep again, and fuller; a v is straight, with a point."""

"""Shapes of a neckline: how deep the front is, and how full its corner.

Common practice in the trade, no published source; how full is our own choice of what a French curve gives.
"""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction

from tapeline.pattern import choice

__all__ = ["NECK_SHAPES", "NeckShape"]


@dataclass(frozen=True, slots=True)
class NeckShape:
    """A front neckline, before it is lowered; its width is chosen beside it."""

    depth: float | Fraction = choice(Fraction(1), 1, 2, "depth of the front, as a share of the neck's own")
    fullness: float | Fraction = choice(
        Fraction(2, 3), 0.65, 0.75, "how far down to the corner it runs: steep at the sides and flat below"
    )


NECK_SHAPES = {
    "round": NeckShape(),
    "scoop": NeckShape(Fraction(3, 2), Fraction(18, 25)),
}
"""A scoop is half as deep again, and fuller."""

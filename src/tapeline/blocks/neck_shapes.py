"""Shapes of a neckline: how it runs over the shoulder, how deep the front is, and how full its corner.

Common practice in the trade, no published source; how full is our own choice of what a French curve gives.
"""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction

from tapeline.lengths import Length, cm
from tapeline.pattern import Word, choice

__all__ = ["NECK_SHAPES", "STRAIGHT", "NeckLine", "NeckShape"]

STRAIGHT = Fraction(1, 2)
"""Half way down to the corner lies the straight line."""


class NeckLine(Word):
    """How front and back meet at the shoulder."""

    SWEEP = "sweep", "one line over the shoulder, without a corner"
    BOAT = "boat", "nearly straight from shoulder to shoulder, with a corner at the shoulder"
    SQUARE = "square", "straight down from the shoulder and straight across, with a corner in front"
    FUNNEL = "funnel", "cut on: the shoulder seam runs on up, and the neck stands away"


@dataclass(frozen=True, slots=True)
class NeckShape:
    """A front neckline, before it is lowered, and how much wider it is than is chosen beside it."""

    depth: float | Fraction = choice(Fraction(1), 0.5, 2, "depth of the front, as a share of the neck's own")
    fullness: float | Fraction = choice(
        Fraction(2, 3), 0.5, 0.75, "how far down to the corner it runs: steep at the sides and flat below; 1/2 is a v"
    )
    wider: Length = choice(cm(0), 0, 8, "wider at each shoulder by its shape, besides what is chosen")
    rise: Length = choice(cm(5), 2, 8, "how far a funnel is raised above the shoulder")
    line: NeckLine = NeckLine.SWEEP

    @property
    def idle(self) -> frozenset[str]:
        """The numbers that say nothing of such a line."""
        if self.line is NeckLine.FUNNEL:
            return frozenset({"depth", "fullness"})
        return frozenset({"rise"} if self.line is NeckLine.SWEEP else {"rise", "fullness"})


NECK_SHAPES = {
    "round": NeckShape(),
    "scoop": NeckShape(Fraction(3, 2), Fraction(18, 25)),
    "v": NeckShape(Fraction(3, 2), STRAIGHT),
    "boat": NeckShape(Fraction(2, 3), wider=cm(4), line=NeckLine.BOAT),
    "square": NeckShape(Fraction(5, 4), wider=cm(1.5), line=NeckLine.SQUARE),
    "funnel": NeckShape(wider=cm(3), line=NeckLine.FUNNEL),
}
"""A scoop is half as deep again, and fuller; a v is straight, with a point; a boat neck is wide, and higher in
front than the neck; a square one has two straight lines; a funnel is cut on, and stands away."""

"""What the textbooks say of simple cloths: a hanging strip, a strip over an edge, a tube round a cylinder."""

from __future__ import annotations

import math
from dataclasses import dataclass

from tapeline.drape.cloth import Hand
from tapeline.drape.pull import green

__all__ = ["Tube", "hanging_strip", "strip_over_edge", "tube"]

PARTS = 400
HALVINGS = 60


def hanging_strip(hand: Hand, length: float) -> float:
    """How much longer in mm a strip gets by its own weight: at each height it carries what is below.

    >>> from tapeline.drape.cloth import HANDS
    >>> round(hanging_strip(HANDS["single jersey"], 500.0), 2)
    0.36
    """
    heights = [(k + 0.5) * length / PARTS for k in range(PARTS)]
    return math.fsum(hand.along.stretch(hand.load * height / 1000) for height in heights) * length / PARTS


def strip_over_edge(ratio: float) -> float:
    """The slope from the edge to the tip, in degrees, of a strip that hangs over by `ratio` bending lengths.

    The heavy elastica: B t'' = -w (L - s) cos t, level at the edge, without moment at the tip (W. G. Bickley, "The
    heavy elastica", Philosophical Magazine 17, 1934), by shooting for the bend at the edge.

    >>> round(strip_over_edge(2.0), 1)
    41.5
    """

    def shot(bend: float) -> tuple[float, float, float]:
        step, turn, out, drop = ratio / PARTS, 0.0, 0.0, 0.0

        def rates(s: float, turn: float, bend: float) -> tuple[float, float, float, float]:
            return bend, -(ratio - s) * math.cos(turn), math.cos(turn), math.sin(turn)

        for k in range(PARTS):
            s = k * step
            one = rates(s, turn, bend)
            two = rates(s + step / 2, turn + step / 2 * one[0], bend + step / 2 * one[1])
            three = rates(s + step / 2, turn + step / 2 * two[0], bend + step / 2 * two[1])
            four = rates(s + step, turn + step * three[0], bend + step * three[1])
            added = [step / 6 * (a + 2 * b + 2 * c + d) for a, b, c, d in zip(one, two, three, four, strict=True)]
            turn, bend, out, drop = turn + added[0], bend + added[1], out + added[2], drop + added[3]
        return bend, out, drop

    low, high = 0.0, ratio * ratio
    for _ in range(HALVINGS):
        middle = (low + high) / 2
        low, high = (middle, high) if shot(middle)[0] < 0 else (low, middle)
    _, out, drop = shot(low)
    return math.degrees(math.atan2(drop, out))


@dataclass(frozen=True, slots=True)
class Tube:
    """A tube drawn over a wider cylinder, free to shorten."""

    hoop: float
    """Stretch round it."""
    pressure: float
    """On the cylinder, kPa, for each unit of the cloth as cut: tension over radius (Laplace)."""
    shortens: float
    """Stretch along it; less than zero."""


def tube(hand: Hand, girth_radius: float, radius: float) -> Tube:
    """Of cloth cut to one radius, its middle held at another, mm.

    >>> from tapeline.drape.cloth import HANDS
    >>> round(tube(HANDS["rib"], 100.0, 110.0).hoop, 3)
    0.1
    """
    hoop = radius / girth_radius - 1
    return Tube(
        hoop,
        hand.across.tension(hoop) / girth_radius,
        math.sqrt(1 - 2 * hand.narrows * green(hoop)) - 1,
    )

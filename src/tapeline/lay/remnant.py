"""What is left of the cloth in pieces large enough to keep."""

from __future__ import annotations

from dataclasses import dataclass

from tapeline.geometry import empty_boxes
from tapeline.lay.plan import LayPlan

__all__ = ["Remnant", "remnants"]

LEAST_MM = 100.0
"""Narrower than this nobody keeps (common practice, no source)."""
MOST = 3
"""So many are worth telling."""


@dataclass(frozen=True, slots=True)
class Remnant:
    """A rectangle in which nothing is cut, in mm: where it begins, along and across."""

    x: float
    y: float
    length: float
    width: float


def remnants(plan: LayPlan) -> tuple[Remnant, ...]:
    """The largest rectangles between the pieces, the largest first; none shares cloth with another.

    They are found on a grid, so a little larger ones may be cut by hand. On two layers there are two of each.
    """
    if not plan.placements:
        return ()
    boxes = empty_boxes(plan.outlines, plan.length_mm, plan.cloth.strip_mm, LEAST_MM, MOST)
    return tuple(Remnant(x, y, right - x, top - y) for x, y, right, top in boxes)

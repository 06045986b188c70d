"""Lifting an arm on the paper: the sleeve turned up about the shoulder point."""

from __future__ import annotations

import math

from tapeline.draft.place import Place, Reading
from tapeline.geometry import Rigid, solve_one
from tapeline.lengths import Length

__all__ = ["fall_at", "lift_until", "lifted"]

MOST_LIFT = 150.0
"""Degrees."""


def fall_at(degrees: float, run: Length) -> Reading:
    """How far a line falls over a level run, at an angle below the level.

    >>> from tapeline.lengths import cm
    >>> fall_at(45, cm(14)).length.show()
    '14 cm'
    """
    fall = Length(run.mm * math.tan(math.radians(degrees)))
    return Reading(fall, (f"how far {degrees:g} degrees fall over ", run), ())


def lifted(place: Place, pivot: Place, degrees: float) -> Place:
    """Where a place of the sleeve comes to lie when the arm is lifted.

    >>> from tapeline.geometry import Point
    >>> up = lifted(Place(Point(10, 0), "back.hem"), Place(Point(0, 0), "back.tip"), 90).point
    >>> round(up.x, 6), round(up.y, 6)
    (0.0, 10.0)
    """
    return Place(
        Rigid.turn(math.radians(degrees), pivot.point).point(place.point),
        how=(f"{place.name}, the sleeve turned up by {degrees:g} degrees about {pivot.name}",),
        needs=(place.label, pivot.label),
    )


def lift_until(place: Place, pivot: Place, other: Place, apart: Length) -> float:
    """By how many degrees the arm is lifted when a place of the sleeve is so far from one of the body.

    Raises `InputError` (`cannot-be-met`) where they never are.
    """

    def short(degrees: float) -> float:
        return lifted(place, pivot, degrees).point.distance_to(other.point) - apart.mm

    return solve_one(short, 0.0, MOST_LIFT, "how far the arm lifts")

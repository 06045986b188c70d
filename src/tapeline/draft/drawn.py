"""Lines on the paper: `Drawn` ones from end to end, and a `Ray` that runs on from a point."""

from __future__ import annotations

import math
from dataclasses import dataclass

from tapeline.draft.heading import Heading
from tapeline.draft.place import Place, spoken
from tapeline.geometry import Path, Vector
from tapeline.lengths import Length, Phrase
from tapeline.problems import InputError, Problem, Severity

__all__ = ["Drawn", "Ray", "Reading"]


@dataclass(frozen=True, slots=True)
class Reading:
    """A length read off the paper with the tape, and how."""

    length: Length
    how: Phrase
    needs: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class Drawn:
    """A line that has been drawn."""

    label: str
    path: Path

    @property
    def name(self) -> str:
        """As it is read on the drawing."""
        return spoken(self.label)

    @property
    def reversed(self) -> Drawn:
        """The same line from its other end."""
        return Drawn(self.label, self.path.reversed())

    @property
    def square_at_start(self) -> Heading:
        """Square to it where it begins."""
        return Heading(self.path.leaves.left, f"square to the {self.name}", either_way=True)

    @property
    def square_at_end(self) -> Heading:
        """Square to it where it ends."""
        return Heading(self.path.arrives.left, f"square to the {self.name}", either_way=True)

    @property
    def onward(self) -> Heading:
        """Straight on from its end."""
        return Heading(self.path.arrives, f"straight on from the {self.name}")

    def reading(self) -> Reading:
        """Its length, measured along it."""
        return Reading(Length(self.path.length), (f"measured along the {self.name}",), (self.label,))


@dataclass(frozen=True, slots=True)
class Ray:
    """A straight line that runs on from a place."""

    start: Place
    direction: Vector
    label: str

    @property
    def name(self) -> str:
        """As it is read on the drawing."""
        return spoken(self.label)

    @property
    def square(self) -> Heading:
        """Square to it."""
        return Heading(self.direction.left, f"square to the {self.name}", either_way=True)

    def at(self, by: Length) -> Place:
        """A length along it from its start."""
        return Place(
            self.start.point + self.direction * by.mm,
            how=(f"from {self.start.name}, along the {self.name} by ", by),
            lengths=(by,),
            needs=(self.label, *((by.name,) if by.name else by.needs())),
        )

    def until(self, distance: Length, straight_from: Place) -> Reading:
        """How far along it lies the place that is a distance from another place in a straight line.

        Raises `InputError` (`shoulder-not-reached`) when no place on it is that near or that far.
        """
        start = self.start.point - straight_from.point
        along = start.dot(self.direction)
        square = along**2 - start.dot(start) + distance.mm**2
        length = math.sqrt(square) - along if square >= 0 else -1.0
        if length <= 0:
            raise InputError(
                Problem(
                    "shoulder-not-reached",
                    Severity.ERROR,
                    f"{distance.symbols()} = {distance.show()} does not reach past {self.start.name}: "
                    f"{self.start.name} is already {start.length / 10:.1f} cm from {straight_from.name}",
                    where=self.label,
                    hint="take the shoulder width and the neck again, or set the neck width by hand",
                )
            )
        return Reading(
            Length(length),
            (f"along the {self.name}, to where it is ", distance, f" from {straight_from.name} in a straight line"),
            (self.label, straight_from.label, *distance.needs()),
        )



"""Lines on the paper: `Drawn` ones from end to end, and a `Ray` that runs on from a point."""

from __future__ import annotations

import math
from dataclasses import dataclass
from fractions import Fraction

from tapeline.draft.heading import Heading
from tapeline.draft.place import Place, Reading, needs_of, spoken
from tapeline.geometry import Line, Path, Vector, solve_one
from tapeline.lengths import Length
from tapeline.problems import InputError, Problem, Severity

__all__ = ["Drawn", "Ray", "turned_over"]

ROUNDING_MM = 1e-9
"""An arc that misses the end of a line by less ends there."""


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
    def full_name(self) -> str:
        """With its piece, where lines of several pieces are spoken of: `front neckline`."""
        return self.label.replace(".", " ").replace("_", " ")

    @property
    def start(self) -> Place:
        """Where it begins."""
        return Place(self.path.start, how=(f"where the {self.name} begins",), needs=(self.label,))

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

    @property
    def outset(self) -> Heading:
        """The way it sets out, for a line that runs into it."""
        return Heading(self.path.leaves, f"straight on into the {self.name}")

    @property
    def end(self) -> Place:
        """Where it ends."""
        return Place(self.path.end, how=(f"at the end of the {self.name}",), needs=(self.label,))

    def along(self, by: Length) -> Place:
        """A length along it from its start, straight on beyond its end."""
        over = max(0.0, by.mm - self.path.length)
        return Place(
            self.path.at(by.mm) + self.path.arrives * over,
            how=(f"along the {self.name} by ", by),
            lengths=(by,),
            needs=(self.label, *needs_of(by)),
        )

    @property
    def beginning(self) -> Place:
        """Where it begins."""
        return Place(self.path.start, how=(f"where the {self.name} begins",), needs=(self.label,))

    def way_at(self, by: Length) -> Heading:
        """As it runs, a length along it."""
        return Heading(self.path.direction_at(by.mm), f"along the {self.name}")

    def square_at(self, by: Length) -> Heading:
        """Square to it, a length along it."""
        return Heading(self.path.direction_at(by.mm).left, f"square to the {self.name}", either_way=True)

    @property
    def straight_start(self) -> Reading:
        """How far it runs straight from its start."""
        first = self.path.segments[0]
        length = first.length if isinstance(first, Line) else 0.0
        return Reading(Length(length), (f"measured along the straight part of the {self.full_name}",), (self.label,))

    def off(self, share: Fraction, by: Length) -> Place:
        """A share of the way along it and square off it, to its right: into the piece, as edges run clockwise."""
        along = self.path.length * float(share)
        return Place(
            self.path.at(along) + self.path.direction_at(along).right * by.mm,
            how=(f"{share} of the way along the {self.full_name}, square off it by ", by),
            lengths=(by,),
            needs=(self.label, *needs_of(by)),
        )

    def beside(self, by: Length) -> Reading:
        """How long it is a distance further to its left: outside a piece, inside a neck's opening."""
        return Reading(
            Length(self.path.offset_left(by.mm).length),
            (f"measured along the {self.full_name}, ", by, " inside the opening"),
            (self.label, *needs_of(by)),
        )

    def reading_to(self, place: Place) -> Reading:
        """Its length from its start to a place on it."""
        return Reading(
            Length(self.path.length_to(place.point)),
            (f"measured along the {self.full_name} to {place.name}",),
            (self.label, place.label),
        )

    def touched_from(self, eye: Place, beyond: Place) -> Place:
        """Where a ruler laid from a place touches it, beyond another place on it.

        Raises `InputError` (`cannot-be-met`) when the ruler would cross it instead.
        """

        def aside(along: float) -> float:
            return (self.path.at(along) - eye.point).unit.cross(self.path.direction_at(along))

        start = self.path.length_to(beyond.point)
        along = solve_one(aside, start, self.path.length, f"where a ruler from {eye.name} touches the {self.name}")
        return Place(
            self.path.at(along),
            how=(f"where a ruler laid from {eye.name} touches the {self.name}",),
            needs=(self.label, eye.label, beyond.label),
        )

    def crossing_level(self, level: Place) -> Place:
        """Where it crosses the level of another place; `InputError` (`level-not-crossed`) when it does not."""
        across = Line(level.point, level.point + Vector(1, 0))
        found = self.path.crossings(across)
        if not found:
            raise InputError(
                Problem(
                    "level-not-crossed",
                    Severity.ERROR,
                    f"the {self.name} does not cross the level of {level.name}",
                    where=self.label,
                    hint="look at the lengths down the back: armhole depth, back length, hip depth",
                )
            )
        return Place(found[0], how=(f"on the {self.name}, level with {level.name}",), needs=(self.label, level.label))

    def crossing_plumb(self, place: Place) -> Place:
        """Where it crosses the upright through another place; `InputError` (`plumb-not-crossed`) when it does not."""
        found = self.path.crossings(Line(place.point, place.point + Vector(0, 1)))
        if not found:
            raise InputError(
                Problem(
                    "plumb-not-crossed",
                    Severity.ERROR,
                    f"the {self.name} lies nowhere straight above or below {place.name}",
                    where=self.label,
                    hint="make what is measured out to there narrower. Nothing was drafted.",
                )
            )
        return Place(
            found[0],
            how=(f"on the {self.name}, straight above or below {place.name}",),
            needs=(self.label, place.label),
        )

    def reading_across(self) -> Reading:
        """How far apart its ends are on the level."""
        return Reading(
            Length(abs(self.path.end.x - self.path.start.x)),
            (f"measured straight across the {self.full_name}",),
            (self.label,),
        )

    def arc_end(self, centre: Place, square_to: Drawn | None = None) -> Place:
        """Where, on the straight line it ends in, a single arc arrives square to it that left the centre level.

        With `square_to` it left that line square in place of the upright one.

        Such an arc is part of a circle about the place where this line and the centre line would meet; its chord
        turns half as much as the arc.
        """
        down = square_to.path.arrives if square_to else Vector(0, -1)
        slant = down.turn_to(self.path.arrives)
        chord = Line(centre.point, centre.point + down.left.turned(slant / 2))
        start, way = self.path.end, self.path.arrives
        along = (centre.point - start).cross(chord.direction(0)) / way.cross(chord.direction(0))
        return Place(
            start + way * along,
            how=(f"on the {self.name}, where one arc from {centre.name} comes in square",),
            needs=(self.label, centre.label),
        )

    def arc_within(self, centre: Place) -> tuple[Place, float]:
        """The same on a curve, and how far along it, in mm; `InputError` (`cannot-be-met`) where there is none."""

        def off(along: float) -> float:
            slant = Vector(0, -1).turn_to(self.path.direction_at(along))
            return (self.path.at(along) - centre.point).cross(Vector(1, 0).turned(slant / 2))

        along = self.path.length
        if abs(off(along)) > ROUNDING_MM:
            along = solve_one(off, 0.0, along, f"where the hem from {centre.name} meets the {self.name}")
        return Place(
            self.path.at(along),
            how=(f"on the {self.name}, where one arc from {centre.name} comes in square",),
            needs=(self.label, centre.label),
        ), along

    def back_from_end(self, by: Length) -> Place:
        """A length back along it from its end."""
        return Place(
            self.path.at(self.path.length - by.mm),
            how=(f"back along the {self.name} from its end by ", by),
            lengths=(by,),
            needs=(self.label, *needs_of(by)),
        )

    def reading(self) -> Reading:
        """Its length, measured along it."""
        return Reading(Length(self.path.length), (f"measured along the {self.full_name}",), (self.label,))


def turned_over(place: Place, about: Place, line: Drawn) -> Place:
    """Where a place comes to lie when the paper is folded along a line, straight on from its end."""
    fold, off = line.path.arrives, place.point - about.point
    return Place(
        about.point + (fold * (2 * off.dot(fold)) - off),
        how=(f"{place.name}, the paper folded at {about.name} along the {line.name}",),
        needs=(place.label, about.label, line.label),
    )


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

    @property
    def onward(self) -> Heading:
        """The way it runs."""
        return Heading(self.direction, f"along the {self.name}")

    def fall(self, run: Length, name: str) -> Length:
        """How far it falls over a level run."""
        return Length(-self.direction.y / self.direction.x * run.mm, name)

    def starting(self, place: Place) -> Ray:
        """The same line from another place on it."""
        return Ray(place, self.direction, self.label)

    def at(self, by: Length) -> Place:
        """A length along it from its start."""
        return Place(
            self.start.point + self.direction * by.mm,
            how=(f"from {self.start.name}, along the {self.name} by ", by),
            lengths=(by,),
            needs=(self.label, *needs_of(by)),
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
            (self.label, straight_from.label, *needs_of(distance)),
        )

"""A `Place` is a point that is being found: it knows where it is, how the hand gets there, and from what.

The verbs are the body's own: up, down, out (to the side), inward (to the centre). Nobody writes a sign or an angle.
"""

from __future__ import annotations

import math
from dataclasses import dataclass
from fractions import Fraction
from functools import lru_cache

from tapeline.draft.heading import Heading
from tapeline.geometry import Point, Vector
from tapeline.lengths import Length, Phrase

__all__ = ["Place", "Reading", "corner_below", "foot_of", "halfway", "part_way", "square_corner"]


@dataclass(frozen=True, slots=True)
class Reading:
    """A length read off the paper with the tape, and how."""

    length: Length
    how: Phrase
    needs: tuple[str, ...]

    def __add__(self, other: Reading) -> Reading:
        """Two readings one after the other."""
        return Reading(
            Length(self.length.mm + other.length.mm),
            (*self.how, ", and ", *other.how),
            tuple(dict.fromkeys((*self.needs, *other.needs))),
        )


@dataclass(frozen=True, slots=True)
class Place:
    """A point with its label, or the way to one that has none yet.

    >>> from tapeline.lengths import cm
    >>> nape = Place(Point(0, 0), "back.nape")
    >>> waist = nape.down(Length(400, "back_length"))
    >>> waist.point.y, "".join(map(str, waist.how[:2]))
    (-400, 'from nape, down by ')
    """

    point: Point
    label: str = ""
    how: Phrase = ()
    lengths: tuple[Length, ...] = ()
    needs: tuple[str, ...] = ()

    @property
    def name(self) -> str:
        """Its label without the piece: as it is read on the drawing."""
        return spoken(self.label)

    def down(self, by: Length) -> Place:
        """Straight down."""
        return self._moved(Vector(0, -1), "down", by)

    def up(self, by: Length) -> Place:
        """Straight up."""
        return self._moved(Vector(0, 1), "up", by)

    def out(self, by: Length) -> Place:
        """Level, away from the centre line."""
        return self._moved(Vector(1, 0), "out", by)

    def inward(self, by: Length) -> Place:
        """Level, toward the centre line (or across it)."""
        return self._moved(Vector(-1, 0), "inward", by)

    def toward(self, other: Place, by: Length) -> Place:
        """In a straight line toward another place."""
        return self._moved((other.point - self.point).unit, f"toward {other.name},", by, other)

    def beyond(self, other: Place, by: Length) -> Place:
        """Straight on past this place, coming from another."""
        return self._moved((self.point - other.point).unit, f"straight on, coming from {other.name},", by, other)

    def away_from(self, line: tuple[Place, Place], by: Length) -> Place:
        """Square off a straight line, to the left of the way from its first place to its second."""
        first, second = line
        return self._moved(
            (second.point - first.point).unit.left, f"square off the line {first.name} - {second.name}", by, *line
        )

    def back_along(self, way: Heading, level: Place) -> Place:
        """Back along the way a line arrives here, to the level of another place."""
        back = (level.point.y - self.point.y) / way.direction.y
        return Place(
            self.point + way.direction * back,
            how=(f"from {self.name} back, {way.says}, to the level of {level.name}",),
            needs=_labels(self, level),
        )

    def level_with(self, other: Place) -> Place:
        """Straight above or below this place, level with another."""
        return Place(
            Point(self.point.x, other.point.y),
            how=(f"straight above or below {self.name}, level with {other.name}",),
            needs=_labels(self, other),
        )

    def reading_from(self, other: Place) -> Reading:
        """The straight distance from another place, measured on the paper."""
        return Reading(
            Length(self.point.distance_to(other.point)),
            (f"measured straight from {other.name} to {self.name}",),
            _labels(self, other),
        )

    def reading_down_to(self, other: Place) -> Reading:
        """How much lower another place lies, measured on the paper."""
        return Reading(
            Length(self.point.y - other.point.y),
            (f"measured down from the level of {self.name} to that of {other.name}",),
            _labels(self, other),
        )

    def _moved(self, way: Vector, word: str, by: Length, *also: Place) -> Place:
        start: Phrase = (f"from {self.name}, ",) if self.label else (*self.how, ", then ")
        point = self.point
        return Place(
            Point(point.x + way.x * by.mm, point.y + way.y * by.mm),
            how=(*start, f"{word} by ", by),
            lengths=(by,) if self.label else (*self.lengths, by),
            needs=tuple(dict.fromkeys((*_labels(self, *also), *needs_of(by)))),
        )


def halfway(a: Place, b: Place) -> Place:
    """The middle between two places."""
    return _between(a, b, Fraction(1, 2), "half way")


def part_way(a: Place, b: Place, share: Fraction) -> Place:
    """A share of the way from one place to another."""
    return _between(a, b, share, f"{share} of the way")


def corner_below(above: Place, beside: Place) -> Place:
    """Straight below (or above) the one, level with the other."""
    return above.level_with(beside)


def foot_of(place: Place, line: tuple[Place, Place]) -> Place:
    """Where a line square to another, from a place, meets it."""
    first, second = line
    way = second.point - first.point
    share = (place.point - first.point).dot(way) / way.dot(way)
    return Place(
        first.point.toward(second.point, share),
        how=(f"square from {place.name} onto the line {first.name} - {second.name}",),
        needs=_labels(place, first, second),
    )


def square_corner(a: Place, b: Place, by: Length) -> Place:
    """The corner of a set square whose arms pass through two places, a length from the first; it lies to their left.

    >>> from tapeline.lengths import cm
    >>> corner = square_corner(Place(Point(0, 0), "top"), Place(Point(0, -50), "low"), cm(3)).point
    >>> round(corner.x, 6), round(corner.y, 6)
    (24.0, -18.0)
    """
    way = b.point - a.point
    # By Thales the corner lies on the circle over both: `along` of the way, and square off it to the left.
    along = (by.mm / way.length) ** 2
    if along >= 1:
        raise ValueError(f"no set square reaches from {a.name} over {by.show()} to {b.name}")
    off = math.sqrt(along * (1 - along))
    return Place(
        a.point + way * along + way.left * off,
        how=(f"the corner of a set square whose arms pass through {a.name} and {b.name}, from {a.name} by ", by),
        lengths=(by,),
        needs=(*_labels(a, b), *needs_of(by)),
    )


def needs_of(length: Length) -> tuple[str, ...]:
    """What a step that uses a length comes from: the length, when it has a name of its own."""
    return (length.name,) if length.name else length.needs()


@lru_cache(maxsize=4096)
def spoken(label: str) -> str:
    """A label as it is read: without the piece, without underscores."""
    return label.rpartition(".")[2].replace("_", " ")


def _between(a: Place, b: Place, share: Fraction, words: str) -> Place:
    ends = " and ".join(p.name if p.label else "(" + "".join(map(str, p.how)) + ")" for p in (a, b))
    return Place(
        a.point.toward(b.point, float(share)),
        how=(f"{words} from {' to '.join(ends.split(' and '))}",),
        needs=_labels(a, b),
    )


def _labels(*places: Place) -> tuple[str, ...]:
    found: dict[str, None] = {}
    for place in places:
        if place.label:
            found[place.label] = None
        else:
            found.update(dict.fromkeys(place.needs))
    return tuple(found)

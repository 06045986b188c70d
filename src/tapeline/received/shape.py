"""The three shapes that a drawing is sorted into, moves of them, and the count of what is left out."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass, field, replace

from tapeline.geometry import Line, Path, Point
from tapeline.geometry.among import distances
from tapeline.received.piece import NotUnderstood

__all__ = [
    "STAYS",
    "Chain",
    "Left",
    "Move",
    "Place",
    "Shape",
    "Spot",
    "Words",
    "after",
    "at",
    "kind_of",
    "line_of",
    "middle_of",
    "moved",
    "path_of",
    "points_of",
]

Place = tuple[float, float]
STRAIGHT_MM = 0.1
"""A line that leaves its chord by no more is straight."""
MOST_KINDS = 200
"""Kinds of things not understood that are told apart."""


@dataclass(frozen=True, slots=True)
class Chain:
    """Straight from place to place; a closed one does not say its first place again."""

    layer: str
    places: tuple[Place, ...]
    closed: bool
    where: str
    middle: Place | None = None
    """Of a circle."""


@dataclass(frozen=True, slots=True)
class Spot:
    """A point."""

    layer: str
    at: Place
    where: str


@dataclass(frozen=True, slots=True)
class Words:
    """A line of text, and where it begins."""

    layer: str
    at: Place
    text: str
    where: str


Shape = Chain | Spot | Words
Move = tuple[float, float, float, float, float, float]
"""x' = a x + c y + e, y' = b x + d y + f."""
STAYS: Move = (1.0, 0.0, 0.0, 1.0, 0.0, 0.0)


@dataclass(slots=True)
class Left:
    """What is left out, counted."""

    counts: dict[tuple[str, str, str], tuple[int, str]] = field(default_factory=dict)

    def out(self, what: str, layer: str, why: str, where: str, count: int = 1) -> None:
        """One more, or several."""
        key = (what, layer, why)
        if key not in self.counts and len(self.counts) >= MOST_KINDS:
            key = ("other things", "(various)", f"more than {MOST_KINDS} kinds of things are not told apart")
        before, first = self.counts.get(key, (0, where))
        self.counts[key] = (before + count, first)

    def told(self) -> tuple[NotUnderstood, ...]:
        """The most first."""
        found = (NotUnderstood(*key[:2], count, key[2], where) for key, (count, where) in self.counts.items())
        return tuple(sorted(found, key=lambda one: -one.count))


def at(place: Place, move: Move) -> Place:
    """Where a place comes to lie."""
    a, b, c, d, e, f = move
    return a * place[0] + c * place[1] + e, b * place[0] + d * place[1] + f


def after(first: Move, then: Move) -> Move:
    """One move, and another after it."""
    (x0, y0), (x1, y1), (x2, y2) = (at(p, then) for p in ((0.0, 0.0), first[:2], first[2:4]))
    e, f = at(first[4:], then)
    return x1 - x0, y1 - y0, x2 - x0, y2 - y0, e, f


def moved(shape: Shape, move: Move) -> Shape:
    """The same elsewhere."""
    if move == STAYS:
        return shape
    if isinstance(shape, Chain):
        middle = None if shape.middle is None else at(shape.middle, move)
        return replace(shape, places=tuple(at(p, move) for p in shape.places), middle=middle)
    return replace(shape, at=at(shape.at, move))


def points_of(places: Iterable[Place]) -> list[Point]:
    """Places as points."""
    return [Point(x, y) for x, y in places]


def path_of(chain: Chain) -> Path:
    """A chain as a path; a closed one ends where it begins."""
    points = points_of(chain.places)
    return Path.through(*points, points[0]) if chain.closed else Path.through(*points)


def line_of(chain: Chain) -> Line | None:
    """A chain as one straight line, where it is."""
    ends = points_of((chain.places[0], chain.places[-1]))
    if ends[0].distance_to(ends[1]) < STRAIGHT_MM or max(distances(ends, points_of(chain.places))) > STRAIGHT_MM:
        return None
    return Line(*ends)


def middle_of(shape: Shape) -> Point:
    """A place on it that tells where it lies."""
    return Point(*(shape.places[len(shape.places) // 2] if isinstance(shape, Chain) else shape.at))


def kind_of(shape: Shape) -> str:
    """In a word."""
    return "line" if isinstance(shape, Chain) else "point" if isinstance(shape, Spot) else "text"

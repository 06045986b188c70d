"""An edge whose two ends were moved apart, drawn anew through its own knots."""

from __future__ import annotations

from collections.abc import Sequence
from enum import StrEnum
from typing import Protocol

from tapeline.geometry import Cubic, Line, Path, Point, Rigid, Segment, Vector, fair_line

__all__ = ["Region", "redrawn"]

SMOOTH = 1e-3
"""Radians; two curves that meet with less of a turn are one line to the eye."""


class Region(StrEnum):
    """Where a place of the outline lies."""

    KEPT = "kept"
    STRIP = "strip"
    """Between the two lines of a fold: it vanishes under the rest."""
    BEYOND = "beyond"
    AT_START = "at start"
    """On the line, where it starts."""
    AT_END = "at end"


class Moves(Protocol):
    """Where places and directions come to lie."""

    @property
    def move(self) -> Rigid:
        """What happens to all that lies beyond."""
        ...

    def moved(self, point: Point, region: Region) -> Point | None:
        """Where a place of the outline comes to lie; nowhere in a fold."""
        ...


def redrawn(path: Path, regions: Sequence[Region], moves: Moves) -> Path:
    """A path whose knots lie in several regions.

    Segments that lie on one side are kept or moved as they are. A straight one that was cut is straight again, unless
    its parts were turned against each other: then it bends, so that both its ends keep their angles. A curve that was
    cut is drawn anew with the curves that run smoothly into it, as one fair line through the knots that are left,
    leaving and arriving as before. Where nothing was moved a fair line comes out as it was.
    """
    knots = path.knots
    places = [moves.moved(knot, region) for knot, region in zip(knots, regions, strict=True)]
    new: list[Segment] = []
    for first, last in _runs(path, regions):
        segments = path.segments[first:last]
        if last == first + 1 and _untouched(regions[first], regions[last]):
            new.append(segments[0].moved(moves.move) if regions[first] is Region.BEYOND else segments[0])
            continue
        through = [place for place in places[first : last + 1] if place is not None]
        through = [p for k, p in enumerate(through) if k == 0 or p.distance_to(through[k - 1]) > SMOOTH]
        leave = _turned(segments[0].direction(0), regions[first], moves.move)
        arrive = _turned(segments[-1].direction(1), regions[last], moves.move)
        if isinstance(segments[0], Line) and abs(leave.turn_to(arrive)) < SMOOTH:
            new += Path.through(*through).segments
        else:
            new += fair_line(through, leave, arrive).segments
    return Path(tuple(new))


def _runs(path: Path, regions: Sequence[Region]) -> list[tuple[int, int]]:
    """Numbers of segments, first and past the last, that are drawn as one."""
    count = len(path.segments)
    touched = [not _untouched(regions[k], regions[k + 1]) for k in range(count)]
    # A cut curve takes those with it that run smoothly into it.
    for order in (range(1, count), range(count - 1, 0, -1)):
        for k in order:
            if _as_one(path.segments[k - 1], path.segments[k]) and touched[k - 1] != touched[k]:
                touched[k - 1] = touched[k] = True
    runs: list[tuple[int, int]] = []
    for k in range(count):
        goes_on = (
            k > 0
            and touched[k]
            and touched[k - 1]
            and (_as_one(path.segments[k - 1], path.segments[k]) or _dropped(regions[k]))
        )
        if goes_on:
            runs[-1] = (runs[-1][0], k + 1)
        else:
            runs.append((k, k + 1))
    return runs


def _dropped(region: Region) -> bool:
    return region is Region.STRIP


def _untouched(one: Region, two: Region) -> bool:
    return one == two and one in (Region.KEPT, Region.BEYOND)


def _as_one(before: Segment, after: Segment) -> bool:
    if isinstance(before, Cubic) and isinstance(after, Cubic):
        return abs(before.direction(1).turn_to(after.direction(0))) < SMOOTH
    return False


def _turned(way: Vector, region: Region, move: Rigid) -> Vector:
    """A direction after the move; in the gap, half way."""
    if region is Region.BEYOND:
        return move.vector(way)
    return way if region is Region.KEPT else (way + move.vector(way)).unit

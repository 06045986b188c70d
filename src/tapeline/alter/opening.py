"""An outline that is opened or folded along a line: what lies beyond moves, and the edges that were cut are redrawn."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, replace
from enum import StrEnum
from functools import reduce
from itertools import accumulate, pairwise

from tapeline.alter.cut_line import CutLine
from tapeline.alter.grain import grain_inside
from tapeline.alter.outline_cut import ON_CORNER_MM, OutlineCut, closed_up
from tapeline.alter.redrawn import Region, redrawn
from tapeline.geometry import Path, Point, Rigid
from tapeline.pattern import Mark, Piece

__all__ = ["Edges", "Opening"]

SAME_PLACE_MM = 1e-9


class Edges(StrEnum):
    """What becomes of an edge that is cut."""

    FAIR = "fair"
    """Drawn anew: a straight line straight from end to end (bent, where a hinge turned its parts), a curve fair."""
    STRAIGHT = "straight"
    """Both parts stay as they are, and a straight line runs from the one to the other."""


@dataclass(frozen=True, slots=True)
class Opening:
    """A cut that is spread (both lines are one) or a fold between two lines; what lies beyond the far one moves."""

    near: OutlineCut
    far: OutlineCut
    near_line: CutLine
    far_line: CutLine
    move: Rigid

    def region(self, place: float, total: float) -> Region:
        """Where a length along the outline of so many mm lies."""
        for ends, region in (
            ((self.near.start_mm, self.far.start_mm), Region.AT_START),
            ((self.near.end_mm, self.far.end_mm), Region.AT_END),
        ):
            if any(min(abs(place - end), total - abs(place - end)) < ON_CORNER_MM for end in ends):
                return region
        if _between(place, self.far.start_mm, self.far.end_mm):
            return Region.BEYOND
        return Region.STRIP if _between(place, self.near.start_mm, self.near.end_mm) else Region.KEPT

    def takes(self, point: Point, outline: Path) -> bool:
        """Whether a point of the construction goes with what lies beyond: by the outline where it lies on it."""
        along = _along(outline, point)
        if along is not None:
            return self.region(along, outline.length) is Region.BEYOND
        return self.far_line.beyond.dot(point - self.far_line.at) > ON_CORNER_MM

    def meeting(self, region: Region) -> tuple[Point, Point]:
        """Where the outline stops at one end of the cut, and where it goes on after the move."""
        if region is Region.AT_START:
            return self.near.path.start, self.move.point(self.far.path.start)
        return self.near.path.end, self.move.point(self.far.path.end)

    def moved(self, point: Point, region: Region) -> Point | None:
        """Where a place of the outline comes to lie: on the line, in the middle of the gap; in a fold, nowhere."""
        if region is Region.STRIP:
            return None
        if region in (Region.AT_START, Region.AT_END):
            one, two = self.meeting(region)
            return one.toward(two, 0.5)
        return self.move.point(point) if region is Region.BEYOND else point

    def opened(self, piece: Piece, edges: Edges) -> Piece:
        """The piece after the move, with the names of its edges and all notches and marks."""
        draw = self._straight if edges is Edges.STRAIGHT else self._fair
        lengths = [edge.length for edge in piece.edges]
        starts = [0.0, *accumulate(lengths)]
        new = []
        for edge, start in zip(piece.edges, starts, strict=False):
            new.append(replace(edge, path=draw(piece, edge.name, edge.path, start)))
        notches = []
        for notch in piece.notches:
            at = next(k for k, edge in enumerate(piece.edges) if edge.name == notch.edge)
            region = self.region(starts[at] + notch.at_mm, starts[-1])
            if region is Region.STRIP:
                region = Region.AT_START if notch.edge == self.near.beyond[0].was else Region.AT_END
            place = self.moved(piece.edges[at].path.at(notch.at_mm), region)
            assert place is not None  # noqa: S101 - only a place in the fold has none
            notches.append(replace(notch, at_mm=new[at].path.length_to(place)))
        marks = tuple(Mark(mark.name, self._inside(mark.path)) for mark in piece.marks)
        grain = piece.grain
        if all(self.far_line.is_beyond(end) for end in (grain.start, grain.end)):
            grain = grain.moved(self.move)
        drawn = {
            edge.name
            for edge, old in zip(new, piece.edges, strict=True)
            if edge.path not in (old.path, old.path.moved(self.move))
        }
        made = closed_up(replace(piece, edges=tuple(new), notches=tuple(notches), marks=marks), drawn)
        return replace(made, grain=grain_inside(made, grain))

    def _inside(self, path: Path) -> Path:
        """A line inside the piece: its knots move with the paper, and it is drawn straight over the gap."""

        def place(point: Point) -> Point:
            return self.move.point(point) if self.far_line.is_beyond(point) else point

        return Path(tuple(type(s)(*(place(p) for p in s.control_points)) for s in path.segments))

    def _straight(self, piece: Piece, name: str, path: Path, start: float) -> Path:
        """Kept parts and moved parts of one edge, with straight lines between."""
        del piece, path, start
        kept = [(part.start_mm, part.edge.path) for part in self.near.kept if part.was == name]
        gone = [(part.start_mm, part.edge.path.moved(self.move)) for part in self.far.beyond if part.was == name]
        parts = [part for _, part in sorted([*kept, *gone], key=lambda pair: pair[0])]

        def bridged() -> Iterator[Path]:
            yield parts[0]
            for before, after in pairwise(parts):
                if before.end.distance_to(after.start) > SAME_PLACE_MM:
                    yield Path.through(before.end, after.start)
                yield after

        return reduce(Path.joined, bridged())

    def _fair(self, piece: Piece, name: str, path: Path, start: float) -> Path:
        """An edge drawn anew as far as it was cut."""
        del name
        total = sum(edge.length for edge in piece.edges)
        places = [start, *(start + along for along in accumulate(s.length for s in path.segments))]
        regions = [self.region(place, total) for place in places]
        if set(regions) == {Region.KEPT}:
            return path
        if set(regions) == {Region.BEYOND}:
            return path.moved(self.move)
        return redrawn(path, regions, self)


def _along(outline: Path, point: Point) -> float | None:
    """How far along the outline a place on it lies; segments whose handles all lie elsewhere are not asked."""
    for number, segment in enumerate(outline.segments):
        xs, ys = [p.x for p in segment.control_points], [p.y for p in segment.control_points]
        beside = not min(xs) - ON_CORNER_MM < point.x < max(xs) + ON_CORNER_MM
        if beside or not min(ys) - ON_CORNER_MM < point.y < max(ys) + ON_CORNER_MM:
            continue
        at, away = segment.nearest(point)
        if away < ON_CORNER_MM:
            return sum(s.length for s in outline.segments[:number]) + (segment.part(0, at).length if at > 0 else 0.0)
    return None


def _between(place: float, start: float, end: float) -> bool:
    """Whether a place lies clockwise between two others."""
    return start < place < end if start < end else (place > start or place < end)

"""The grade table: how every named point and every corner moves from size to size."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from itertools import pairwise

from tapeline.geometry import Point, Vector
from tapeline.grade.common_point import CommonPoint, Meet, common_point
from tapeline.pattern import Garment

__all__ = ["GradedPoint", "grade_table", "shared_pieces"]

LIES_ON_MM = 1e-6


@dataclass(frozen=True, slots=True)
class GradedPoint:
    """A point in every size, from the point at which the sizes of its piece meet."""

    piece: str
    """Or the sheet it was drawn on, where no piece is cut from that as it lies."""
    name: str
    """Of the draft's point, or of the two edges that meet in a corner: `underarm`, `shoulder / armhole`."""
    corner: bool
    """Whether it is a corner of the seam line; otherwise a point of the draft."""
    meets: str
    """Where the sizes meet."""
    places: tuple[Point, ...]

    @property
    def moves(self) -> tuple[Vector, ...]:
        """From each size to the next, mm: x to the side, y up."""
        return tuple(after - before for before, after in pairwise(self.places))


def shared_pieces(garments: Sequence[Garment]) -> list[str]:
    """Names of the pieces that every size has, in their order."""
    names = [{piece.name for piece in garment.pieces} for garment in garments]
    return [piece.name for piece in garments[0].pieces if all(piece.name in has for has in names)]


def grade_table(garments: Sequence[Garment], meet: Meet = Meet.CHEST) -> tuple[GradedPoint, ...]:
    """Corners and drawn points of every piece that all sizes have; a point that one size lacks is left out.

    Args:
        garments: From size to size.
        meet: At which height the sizes of a piece meet.
    """
    drawn = [garment.points for garment in garments]
    found: list[GradedPoint] = []
    told: set[str] = set()
    for name in shared_pieces(garments):
        common = common_point(garments, name, meet)
        found += _corners(garments, name, common)
        if _lies_as_drawn(garments[0], name, drawn[0]):
            told.add(name)
            found += _points(drawn, name, common)
    still = CommonPoint("its sheet's own beginning", tuple(Point(0.0, 0.0) for _ in garments))
    for sheet in dict.fromkeys(label.rpartition(".")[0] for label in drawn[0]):
        if sheet not in told:
            found += _points(drawn, sheet, still)
    return tuple(found)


def _corners(garments: Sequence[Garment], name: str, common: CommonPoint) -> Iterator[GradedPoint]:
    pieces = [garment.piece(name) for garment in garments]
    edges = [edge.name for edge in pieces[0].edges]
    if any([edge.name for edge in piece.edges] != edges for piece in pieces):
        return
    for number, edge in enumerate(edges):
        words = f"{edges[number - 1]} / {edge}".replace("_", " ")
        places = [p.edges[number].path.start + move for p, move in zip(pieces, common.moves(), strict=True)]
        yield GradedPoint(name, words, corner=True, meets=common.says, places=tuple(places))


def _points(drawn: Sequence[Mapping[str, Point]], sheet: str, common: CommonPoint) -> Iterator[GradedPoint]:
    for label in drawn[0]:
        if label.rpartition(".")[0] == sheet and all(label in points for points in drawn):
            places = [points[label] + move for points, move in zip(drawn, common.moves(), strict=True)]
            words = label.rpartition(".")[2].replace("_", " ")
            yield GradedPoint(sheet, words, corner=False, meets=common.says, places=tuple(places))


def _lies_as_drawn(garment: Garment, name: str, points: Mapping[str, Point]) -> bool:
    """Whether the piece still lies where its sheet was drawn: one of its corners is a point there."""
    corners = [edge.path.start for edge in garment.piece(name).edges]
    own = [place for label, place in points.items() if label.rpartition(".")[0] == name]
    return any(place.distance_to(corner) < LIES_ON_MM for place in own for corner in corners)

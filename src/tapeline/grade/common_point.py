"""Where the sizes of a piece lie on each other: a point that every size has."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from enum import StrEnum

from tapeline.geometry import Point, Vector
from tapeline.pattern import Garment, Piece

__all__ = ["CommonPoint", "Meet", "common_point"]


class Meet(StrEnum):
    """At which height the sizes meet; both are common practice in the trade, no source."""

    CHEST = "chest"
    """Body pieces at the centre on the chest line, sleeves at the foot of the cap on the grain line."""
    NECK = "neck"
    """Body pieces at the nape, or level with it; sleeves at the crown."""


_LEVELS = {
    "chest_level": "the centre, on the chest line",
    "cap_foot": "the grain line, at the foot of the cap",
    "waist_level": "the centre, on the waist line",
}
"""Points of the draft where pieces meet at the chest, the first that there is."""
_AT_ORIGIN_MM = 1e-6


@dataclass(frozen=True, slots=True)
class CommonPoint:
    """A point of a piece in every size."""

    says: str
    """For a person: `the centre, on the chest line`."""
    places: tuple[Point, ...]
    """In the piece's own axes, for each size."""

    def moves(self) -> tuple[Vector, ...]:
        """What brings each size's point to where it is nought."""
        return tuple(Point(0.0, 0.0) - place for place in self.places)


def common_point(garments: Sequence[Garment], piece: str, meet: Meet = Meet.CHEST) -> CommonPoint:
    """The point at which the sizes of a piece meet.

    A piece that is drawn without the point it should meet at meets where its drawing begins, at the lower end of its
    fold, or at its first corner: whichever comes first that every size has.

    Args:
        garments: Sizes that have the piece.
        piece: Its name.
        meet: At which height.
    """
    drawn = [garment.points for garment in garments]
    if meet is Meet.CHEST:
        for level, says in _LEVELS.items():
            label = f"{piece}.{level}"
            if all(label in points for points in drawn):
                return CommonPoint(says, tuple(points[label] for points in drawn))
    for label, place in drawn[0].items():
        begins = label.startswith(f"{piece}.") and place.distance_to(Point(0.0, 0.0)) < _AT_ORIGIN_MM
        if begins and all(label in points for points in drawn):
            return CommonPoint(_words(label), tuple(points[label] for points in drawn))
    pieces = [garment.piece(piece) for garment in garments]
    fold = next((edge.name for edge in pieces[0].edges if edge.fold), None)
    if fold is not None and all(any(edge.name == fold for edge in p.edges) for p in pieces):
        lower = [min((p.edge(fold).path.start, p.edge(fold).path.end), key=lambda end: end.y) for p in pieces]
        return CommonPoint("the lower end of its fold", tuple(lower))
    return CommonPoint(f"the beginning of its {_first(pieces[0])}", tuple(p.edges[0].path.start for p in pieces))


def _first(piece: Piece) -> str:
    return piece.edges[0].name.replace("_", " ")


def _words(label: str) -> str:
    return f"the point {label.rpartition('.')[2].replace('_', ' ')}"

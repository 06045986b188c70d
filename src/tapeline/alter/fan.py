"""A piece opened evenly at many cuts, until one of its edges is longer by just so much."""

from __future__ import annotations

from collections.abc import Sequence

from tapeline.alter.cut_line import CutLine
from tapeline.alter.outline_cut import cut_outline
from tapeline.alter.spread import Spread, spread
from tapeline.lengths import Length
from tapeline.pattern import Garment, Piece

__all__ = ["fanned"]

EXACT_MM = 0.05
TRIES = 5
"""A cut opens square to itself, and the edge may cross it aslant: it is opened again until the edge is right."""


def fanned(garment: Garment, piece: str, cuts: Sequence[CutLine], by: Length, *, edge: str, hinge: str) -> Garment:
    """The piece opened at all cuts alike, hinged at an edge or in parallel; the edge that they begin at grows by `by`.

    Raises `InputError`: as `spread`.
    """
    whole = garment.piece(piece)
    long = whole.edge(edge).length
    each, made = by / len(cuts), garment
    for _ in range(TRIES):
        opened = [Spread(cut, each, hinge=hinge) if hinge else _along(whole, edge, cut, each) for cut in cuts]
        made = spread(garment, piece, opened)
        more = made.piece(piece).edge(edge).length - long
        if abs(more - by.mm) < EXACT_MM or more <= 0:
            break
        each = Length(each.mm * by.mm / more, "each_cut")
    return made


def _along(whole: Piece, edge: str, cut: CutLine, by: Length) -> Spread:
    """Opened along the edge, not square to a cut that slants: so the edge runs on as it did."""
    path, found = whole.edge(edge).path, cut_outline(whole, cut).path
    mouth = min((found.start, found.end), key=path.distance_to)
    way = path.direction_at(path.length_to(mouth))
    way = way if cut.beyond.dot(way) > 0 else way * -1
    return Spread(cut, by * cut.beyond.dot(way), slide=by * cut.path.leaves.dot(way))

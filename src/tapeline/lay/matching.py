"""Where each piece has to lie on the stripes, so that they run on across the seams."""

from __future__ import annotations

from collections.abc import Iterator

from tapeline.finish import Finished
from tapeline.geometry import Point
from tapeline.pattern import EdgeRef, Garment, Piece

__all__ = ["matches"]

FIRST = ("front", "back")
"""Begun with; what is sewn to them follows."""


def matches(finished: Finished) -> dict[str, Point]:
    """By piece, the place in its own drawing that lies on a dominant line.

    From the front on, piece by piece, along the seams, those along the grain before others: what is sewn together at
    the first pair of notches (or, where a seam has none, at its beginning) lies at the same place of a stripe. Across,
    the dominant line runs down the fold, or down the grain line.
    """
    garment = finished.garment
    cut = {one.piece.name: one.piece for one in finished.pieces}
    start = next((name for name in FIRST if name in cut), next(iter(cut), None))
    if start is None:
        return {}
    level = {start: _along(cut[start], _first_place(cut[start]))}
    waiting = [start]
    while waiting:
        name = waiting.pop(0)
        for own, other in sorted(_sewn(garment, name), key=lambda sides: -_reach(garment, sides[0])):
            for there in dict.fromkeys(ref.piece for ref in other):  # in the order sewn, the same on every run
                if there in level or there not in cut:
                    continue
                here, beyond = _pair(garment, (own, name), (other, there))
                level[there] = _along(cut[there], beyond) + level[name] - _along(cut[name], here)
                waiting.append(there)
    for name, piece in cut.items():
        level.setdefault(name, _along(piece, _first_place(piece)))
    return {name: _place(cut[name], along) for name, along in level.items()}


def _sewn(garment: Garment, name: str) -> Iterator[tuple[tuple[EdgeRef, ...], tuple[EdgeRef, ...]]]:
    for seam in garment.seams:
        for own, other in ((seam.a, seam.b), (seam.b, seam.a)):
            if any(ref.piece == name for ref in own):
                yield own, other


def _reach(garment: Garment, side: tuple[EdgeRef, ...]) -> float:
    """How far a seam reaches along the grain: a side seam farther than a shoulder."""
    levels = [_along(garment.piece(ref.piece), end) for ref in side for end in _ends(garment, ref)]
    return max(levels) - min(levels)


def _ends(garment: Garment, ref: EdgeRef) -> tuple[Point, Point]:
    path = garment.path(ref)
    return path.start, path.end


def _pair(
    garment: Garment, one: tuple[tuple[EdgeRef, ...], str], other: tuple[tuple[EdgeRef, ...], str]
) -> tuple[Point, Point]:
    """A place on one piece and the place on the other that is sewn to it."""
    a, b = _notched(garment, *one), _notched(garment, *other)
    if a and b:
        return a[0], b[0]
    first, second = (_ends(garment, next(ref for ref in side if ref.piece == name))[0] for side, name in (one, other))
    return first, second


def _notched(garment: Garment, side: tuple[EdgeRef, ...], name: str) -> list[Point]:
    """The notches of a piece along one side of a seam, in the order in which it is sewn."""
    found = []
    for ref in side:
        if ref.piece != name:
            continue
        path = garment.piece(name).edge(ref.edge).path
        places = [path.at(notch.at_mm) for notch in garment.piece(name).notches_on(ref.edge)]
        found += places[::-1] if ref.backwards else places
    return found


def _along(piece: Piece, place: Point) -> float:
    return (place - Point(0, 0)).dot((piece.grain.end - piece.grain.start).unit)


def _first_place(piece: Piece) -> Point:
    if piece.notches:
        notch = piece.notches[0]
        return piece.edge(notch.edge).path.at(notch.at_mm)
    return piece.seam_line.start


def _place(piece: Piece, along: float) -> Point:
    """On the fold, or on the grain line where there is none."""
    fold = next((edge.path.start for edge in piece.edges if edge.fold), piece.grain.start)
    way = (piece.grain.end - piece.grain.start).unit
    return fold + way * (along - (fold - Point(0, 0)).dot(way))

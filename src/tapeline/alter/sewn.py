"""What becomes of seams, joins and notches when the edges of a piece become others."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping
from dataclasses import replace
from itertools import accumulate, pairwise

from tapeline.pattern import EdgeRef, Garment, Join, Notch, NotchKind, Piece, Seam

__all__ = ["Became", "answer", "notched_across", "rejoined", "resewn", "with_pieces"]

AT_A_MARK_MM = 1.0
"""A notch nearer than this to another mark would be the same to the scissors."""
SAME_CORNER_MM = 0.02

Became = Mapping[tuple[str, str], tuple[EdgeRef, ...]]
"""By piece and edge: the edges that it became, in the order in which it was drawn."""


def with_pieces(garment: Garment, *changed: Piece) -> Garment:
    """The garment with some pieces in place of those of the same name; a new one comes after the others."""
    by_name = {piece.name: piece for piece in changed}
    kept = tuple(by_name.pop(piece.name, piece) for piece in garment.pieces)
    return replace(garment, pieces=(*kept, *by_name.values()))


def resewn(seams: Iterable[Seam], became: Became) -> tuple[Seam, ...]:
    """Seams that sew the parts where they sewed the whole, in the same order along the seam."""
    return tuple(replace(seam, a=_side(seam.a, became), b=_side(seam.b, became)) for seam in seams)


def _side(side: tuple[EdgeRef, ...], became: Became) -> tuple[EdgeRef, ...]:
    found: list[EdgeRef] = []
    for ref in side:
        parts = became.get((ref.piece, ref.edge), (replace(ref, backwards=False),))
        found += [part.backward for part in reversed(parts)] if ref.backwards else parts
    return tuple(found)


def rejoined(before: Garment, pieces: Iterable[Piece], became: Became) -> tuple[Join, ...]:
    """Joins at the corners where they were, under the names that the edges have there now."""
    now = tuple(pieces)

    def corner(old: tuple[str, str, str]) -> tuple[str, str, str]:
        piece, line, seam = old
        lines, seams = (became.get((piece, name), (EdgeRef(piece, name),)) for name in (line, seam))
        place, _ = before.piece(piece).corner(line, seam)
        for one in now:
            for edge, following in pairwise((*one.edges, one.edges[0])):
                if edge.path.end.distance_to(place) > SAME_CORNER_MM:
                    continue
                for first, second in ((edge.name, following.name), (following.name, edge.name)):
                    if EdgeRef(one.name, first) in lines and EdgeRef(one.name, second) in seams:
                        return one.name, first, second
        return old

    return tuple(replace(join, corners=(corner(join.corners[0]), corner(join.corners[1]))) for join in before.joins)


def notched_across(garment: Garment, piece: str, places: Mapping[str, Iterable[float]]) -> Garment:
    """A notch wherever an edge that is sewn to one of a piece meets certain places of it, mm along by edge.

    Between two marks the sides answer each other in even shares, as truing walks them. Where a mark is there already,
    none is added; one that is nearly there is moved.
    """
    added: list[tuple[EdgeRef, float]] = []
    for seam in garment.seams:
        for side, other in ((seam.a, seam.b), (seam.b, seam.a)):
            at = 0.0
            for ref in side:
                length = garment.path(ref).length
                if ref.piece == piece:
                    for place in places.get(ref.edge, ()):
                        along = at + (length - place if ref.backwards else place)
                        added += answer(garment, side, other, along)
                at += length
    for ref, at in added:
        old = garment.piece(ref.piece)
        taken = [*places.get(ref.edge, ())] if ref.piece == piece else []
        taken += [0.0, old.edge(ref.edge).length]
        if any(abs(at - mark) <= AT_A_MARK_MM for mark in taken):
            continue
        # A notch as near as that is one mark with the new one, and has to be where the seam arrives.
        others = [notch for notch in old.notches if notch.edge != ref.edge or abs(notch.at_mm - at) > AT_A_MARK_MM]
        near = [notch for notch in old.notches if notch not in others]
        marked = replace(near[0], at_mm=at) if near else Notch(ref.edge, at)
        across = dict(_gone_along(garment, ref, near[0].at_mm, at)) if near else {}
        others = [across.get(notch, notch) for notch in others]
        garment = with_pieces(garment, replace(old, notches=(*others, marked)))
    return garment


def _gone_along(garment: Garment, ref: EdgeRef, was: float, now: float) -> list[tuple[Notch, Notch]]:
    """On a strip that is folded and sewn to itself: the notch across the fold from a moved one, and where it goes."""
    moved: list[tuple[Notch, Notch]] = []
    for seam in garment.seams:
        ends = [side[0] for side in (seam.a, seam.b) if len(side) == 1]
        if len(ends) != 2 or {end.piece for end in ends} != {ref.piece} or ends[0].edge == ends[1].edge:
            continue
        for own, across in (ends, ends[::-1]):
            if own.edge != ref.edge:
                continue
            # Both are walked the same way; the strip is as long on either side of its fold.
            turned, length = own.backwards != across.backwards, garment.path(across).length
            place, goes = ((length - mm if turned else mm) for mm in (was, now))
            moved += [
                (notch, replace(notch, at_mm=goes))
                for notch in garment.piece(ref.piece).notches_on(across.edge)
                if abs(notch.at_mm - place) < SAME_CORNER_MM
            ]
    return moved


def answer(
    garment: Garment, side: tuple[EdgeRef, ...], other: tuple[EdgeRef, ...], along: float
) -> Iterator[tuple[EdgeRef, float]]:
    """Where on the other side of a seam a place of this side is sewn."""
    ours, theirs = _marks(garment, side), _marks(garment, other)
    if len(ours) != len(theirs):
        ours, theirs = [ours[0], ours[-1]], [theirs[0], theirs[-1]]
    part = next((k for k in range(1, len(ours)) if along <= ours[k]), len(ours) - 1)
    share = (along - ours[part - 1]) / (ours[part] - ours[part - 1])
    there = theirs[part - 1] + share * (theirs[part] - theirs[part - 1])
    for ref in other:
        length = garment.path(ref).length
        if 0 <= there <= length:
            yield ref, length - there if ref.backwards else there
            return
        there -= length


def _marks(garment: Garment, side: tuple[EdgeRef, ...]) -> list[float]:
    """Both ends of a side, its notches, and where its edges meet; what is nearer than a notch is wide counts once."""
    lengths = [garment.path(ref).length for ref in side]
    starts = [0.0, *accumulate(lengths)]
    marks = starts[1:-1]
    for ref, start, length in zip(side, starts, lengths, strict=False):
        for notch in garment.piece(ref.piece).notches_on(ref.edge):
            if notch.kind is not NotchKind.PLEAT:
                marks.append(start + (length - notch.at_mm if ref.backwards else notch.at_mm))
    inside = sorted(mark for mark in marks if AT_A_MARK_MM < mark < starts[-1] - AT_A_MARK_MM)
    return [0.0, *inside, starts[-1]]

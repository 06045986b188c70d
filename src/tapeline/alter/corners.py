"""What is sewn to the corners that a moving seam carries along: notches, and lines that are divided at the seam."""

from __future__ import annotations

import math
from collections.abc import Iterator
from dataclasses import dataclass, replace

from tapeline.alter.sewn import AT_A_MARK_MM, answer, with_pieces
from tapeline.alter.story import Story, spoken
from tapeline.geometry import Path
from tapeline.lengths import Length
from tapeline.pattern import Edge, EdgeRef, Garment, Notch, Piece, Seam

__all__ = ["Corner", "carried", "goes_along"]

SMOOTH = math.radians(1)
"""Two edges that meet with less of a turn are one line: what truing allows where a line crosses a seam."""

Side = tuple[EdgeRef, ...]


@dataclass(frozen=True, slots=True)
class Corner:
    """Where a moving seam ends: the edge that gets shorter, the one that gets longer, and by how much."""

    gives: EdgeRef
    """Walked towards the seam."""
    takes: EdgeRef
    """Walked towards the seam."""
    by_mm: float


def goes_along(garment: Garment, corner: Corner) -> bool:
    """Whether both edges can stay one line each: nothing that is sewn to them would have to be cut elsewhere."""
    own, other = _sides(garment, corner.gives), _sides(garment, corner.takes)
    together = [seam.name for seam, _, _ in own if any(seam.name == name.name for name, _, _ in other)]
    if len(own) != len(other):
        return False
    if len(together) == len(own):
        return all(_not_divided(garment, corner, seam, side, across) for seam, side, across in own)
    return len(own) == 1 and _neighbours(garment, corner, own[0], other[0]) is not None


def carried(story: Story, garment: Garment, corner: Corner) -> Garment:
    """The garment in which what is sewn to a corner has gone along; the corner itself is where it was."""
    own, other = _sides(garment, corner.gives), _sides(garment, corner.takes)
    for seam, side, across in own:
        if any(ref.edge == corner.takes.edge and ref.piece == corner.takes.piece for ref in side):
            garment = _notch_moved(garment, corner, side, across)
        else:
            garment = _divided(story, garment, corner, (seam, side, across), other[0])
    return garment


def _sides(garment: Garment, ref: EdgeRef) -> list[tuple[Seam, Side, Side]]:
    """Seams that sew an edge: with the side that it is on, and the other."""
    found = []
    for seam in garment.seams:
        for side, across in ((seam.a, seam.b), (seam.b, seam.a)):
            if any((one.piece, one.edge) == (ref.piece, ref.edge) for one in side):
                found.append((seam, side, across))
    return found


def _place(garment: Garment, corner: Corner, side: Side, inside: float) -> float:
    """How far along a side a place of the giving edge lies, so many mm before the seam."""
    along = 0.0
    for ref in side:
        length = garment.path(ref).length
        if (ref.piece, ref.edge) == (corner.gives.piece, corner.gives.edge):
            return along + (length - inside if ref.backwards == corner.gives.backwards else inside)
        along += length
    raise KeyError(str(corner.gives))


def _not_divided(garment: Garment, corner: Corner, seam: Seam, side: Side, across: Side) -> bool:
    """Whether what lies opposite the corner is the inside of one edge."""
    del seam
    if not any((ref.piece, ref.edge) == (corner.takes.piece, corner.takes.edge) for ref in side):
        return False
    found = list(answer(garment, side, across, _place(garment, corner, side, 0.0)))
    return all(AT_A_MARK_MM < at < garment.piece(ref.piece).edge(ref.edge).length - AT_A_MARK_MM for ref, at in found)


def _notch_moved(garment: Garment, corner: Corner, side: Side, across: Side) -> Garment:
    """The notch that met the seam meets it where it is now."""
    (was, old), (now, new) = (
        next(iter(answer(garment, side, across, _place(garment, corner, side, inside))))
        for inside in (0.0, corner.by_mm)
    )
    if was.piece != now.piece or was.edge != now.edge:
        return garment
    return _followed(garment, was, old, new, ())


def _followed(garment: Garment, ref: EdgeRef, old: float, new: float, seams: tuple[str, ...]) -> Garment:
    """A notch moves along its edge, and so do those that answer it: on the other side of a folded band."""
    piece = garment.piece(ref.piece)

    def at_it(notch: Notch) -> bool:
        return notch.edge == ref.edge and abs(notch.at_mm - old) < AT_A_MARK_MM

    if not any(map(at_it, piece.notches)):
        return garment
    answers = []
    for seam, side, across in _sides(garment, ref):
        sewn_to_itself = all(one.piece == ref.piece for one in across)
        if seam.name not in seams and sewn_to_itself and len(side) == len(across) == 1:
            (there, was), (_, now) = (_opposite(garment, side[0], across[0], at) for at in (old, new))
            answers.append((seam.name, there, was, now))
    notches = tuple(replace(notch, at_mm=new) if at_it(notch) else notch for notch in piece.notches)
    garment = with_pieces(garment, replace(piece, notches=notches))
    for name, there, was, now in answers:
        garment = _followed(garment, there, was, now, (*seams, name))
    return garment


def _opposite(garment: Garment, one: EdgeRef, other: EdgeRef, at: float) -> tuple[EdgeRef, float]:
    """Where a place of an edge meets the other edge of its seam, in an even share of both."""
    here, there = garment.path(one).length, garment.path(other).length
    along = (here - at if one.backwards else at) * there / here
    return other, there - along if other.backwards else along


def _neighbours(
    garment: Garment, corner: Corner, own: tuple[Seam, Side, Side], other: tuple[Seam, Side, Side]
) -> tuple[EdgeRef, EdgeRef] | None:
    """Edges of one piece that are sewn to both sides of the corner and meet there in one line, walked towards it."""
    ends = []
    for (_, side, across), ref in ((own, corner.gives), (other, corner.takes)):
        last = side[-1]
        if (last.piece, last.edge, last.backwards) == (ref.piece, ref.edge, ref.backwards):
            ends.append(across[-1])
            continue
        first = side[0]
        if (first.piece, first.edge, first.backwards) != (ref.piece, ref.edge, not ref.backwards):
            return None
        ends.append(across[0].backward)
    one, two = ends
    if one.piece != two.piece or one.edge == two.edge:
        return None
    came, goes = garment.path(one), garment.path(two.backward)
    if came.end.distance_to(goes.start) > AT_A_MARK_MM / 100 or abs(came.arrives.turn_to(goes.leaves)) > SMOOTH:
        return None
    return one, two


def _divided(
    story: Story,
    garment: Garment,
    corner: Corner,
    own: tuple[Seam, Side, Side],
    other: tuple[Seam, Side, Side],
) -> Garment:
    """A line of another piece that is divided where the seam meets it is divided where the seam is now.

    A sleeve's crown goes along with the shoulder seam; what was eased in there is eased in on the other side of it.
    """
    found = _neighbours(garment, corner, own, other)
    assert found is not None  # noqa: S101 - `goes_along` was asked
    short, long = found
    seam, side, across = own
    _, at = next(iter(answer(garment, side, across, _place(garment, corner, side, corner.by_mm))))
    piece = garment.piece(short.piece)
    whole = piece.edge(short.edge).length
    part = at if short.backwards else whole - at
    edges, notches = tuple(_edges(piece, short, long, part)), tuple(_notches(piece, short, long, part))
    made = replace(piece, edges=edges, notches=notches)
    for ref, says in ((short, "Ends where the seam is now"), (long, "Reaches to where the seam is now")):
        label = f"{piece.name}.{ref.edge}"
        how = (Length(part, "carried"), f" of the {spoken(short.edge)} is {spoken(long.edge)} now")
        story.edge(label, label, made.edge(ref.edge).path, says=says, how=how, needs=())
    more = part - corner.by_mm
    eased = {seam.name: -more if across == seam.a else more, other[0].name: more if other[2] == other[0].a else -more}
    seams = tuple(
        replace(one, ease=one.ease + Length(eased[one.name], "carried")) if one.name in eased else one
        for one in garment.seams
    )
    return replace(with_pieces(garment, made), seams=seams)


def _edges(piece: Piece, short: EdgeRef, long: EdgeRef, part: float) -> Iterator[Edge]:
    path = piece.edge(short.edge).path
    cut = path.part(0, part) if short.backwards else path.part(path.length - part, path.length)
    left = path.part(part, path.length) if short.backwards else path.part(0, path.length - part)
    for edge in piece.edges:
        if edge.name == short.edge:
            yield replace(edge, path=left)
        elif edge.name == long.edge:
            joined = Path.joined(edge.path, cut) if short.backwards else Path.joined(cut, edge.path)
            yield replace(edge, path=joined)
        else:
            yield edge


def _notches(piece: Piece, short: EdgeRef, long: EdgeRef, part: float) -> Iterator[Notch]:
    """Where they are on the cloth; a notch on the very end goes along with it."""
    whole, other = piece.edge(short.edge).length, piece.edge(long.edge).length
    for notch in piece.notches:
        if notch.edge == long.edge and not short.backwards:
            at_end = notch.at_mm < AT_A_MARK_MM
            yield notch if at_end else replace(notch, at_mm=notch.at_mm + part)
        elif notch.edge == long.edge and other - notch.at_mm < AT_A_MARK_MM:
            yield replace(notch, at_mm=other + part)
        elif notch.edge == short.edge:
            before_end = notch.at_mm if short.backwards else whole - notch.at_mm
            if before_end < AT_A_MARK_MM:
                yield replace(notch, at_mm=0.0 if short.backwards else whole - part)
            elif before_end < part:
                at = other + notch.at_mm if short.backwards else part - before_end
                yield replace(notch, edge=long.edge, at_mm=at)
            else:
                yield replace(notch, at_mm=notch.at_mm - part if short.backwards else notch.at_mm)
        else:
            yield notch

"""Joining two pieces along a seam: cut in one."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, replace

from tapeline.alter.joinable import cut_alike, lies_flat, on_one_fold, refused, seam_of_two, sewn_once
from tapeline.alter.sewn import Became, resewn, with_pieces
from tapeline.alter.story import Story, piece_named, spoken
from tapeline.geometry import Rigid
from tapeline.pattern import Edge, EdgeRef, Garment, Girth, Join, Mark, Piece, Seam

__all__ = ["join"]

TURN = 1e-3
"""Radians; two edges that meet with less of a turn are one line."""
SAME_MM = 0.01


@dataclass(frozen=True, slots=True)
class _Side:
    """A piece, with its edges from the one end of the seam round to the other, and where it comes to lie."""

    piece: Piece
    seam_edge: str
    edges: tuple[Edge, ...]
    move: Rigid


def join(garment: Garment, seam: str) -> Garment:
    """Two pieces that are sewn together along one edge each become one; the first of the seam keeps its name.

    The second is laid to the first, turned over where the seam asks for it. Its edges keep their names where those are
    free, and otherwise have their piece's name before them; a line that runs straight on, and is sewn as one, becomes
    one edge. Nothing is stretched: the area is the sum of both, and every length is kept.

    Raises `InputError`: `seam-unknown`, `seam-not-flat` where the edges cannot lie on each other along their whole
    length, `two-folds` where the joined piece would lie on two folds, `girth-turned` where a girth is measured level
    across the second piece and that would no longer be level, `cut-differently`, `edge-sewn-twice`.

    >>> from tapeline.alter import level, split
    >>> from tapeline.draft import Draft
    >>> from tapeline.lengths import cm
    >>> from tapeline.measures import size_wearer
    >>> from tapeline.styles import STYLES
    >>> tee = STYLES["tee"].page(Draft(size_wearer("92"), {}), STYLES["tee"].choices(), surveyed=True)
    >>> line = level(tee, "back.back_shoulder_tip", down=cm(8)).turned
    >>> again = join(split(tee, "back", line, name="yoke", title="Yoke", seam="yoke_seam"), "yoke_seam")
    >>> sorted(edge.name for edge in again.piece("yoke").edges)
    ['armhole', 'centre', 'hem', 'neckline', 'shoulder', 'side']
    """
    found = seam_of_two(garment, seam)
    a, b = found.a[0], found.b[0]
    one, two = piece_named(garment, a.piece), piece_named(garment, b.piece)
    lying, laid = garment.path(a), garment.path(b)
    over = a.backwards == b.backwards
    move = Rigid.laying(laid.start, laid.end - laid.start, lying.start, lying.end - lying.start, turned_over=over)
    lies_flat(found, lying, laid.moved(move))
    cut_alike(one, two)
    sewn_once(garment, found)
    first = _Side(one, a.edge, _around(one, a.edge), Rigid())
    second = _Side(two, b.edge, _laid_edges(two, b.edge, move), move)
    ring, became = _ring(garment, first, second)
    made = _piece(first, second, ring, became)
    on_one_fold(made, seam)

    story = Story(garment)
    story.section(one.name, f"{one.title} and {two.title} are cut in one")
    for edge in second.edges:
        ref = became[two.name, edge.name][0]
        how = (f"laid to the {spoken(one.name)} along the {spoken(seam)} seam",)
        path, says = made.edge(ref.edge).path, f"Comes from the {spoken(two.name)}"
        story.edge(f"{two.name}.{edge.name}", f"{one.name}.{ref.edge}", path, says=says, how=how, needs=())
    girths = tuple(_girth(story, girth, first, second, became) for girth in garment.girths)
    without = replace(with_pieces(garment, made), seams=tuple(s for s in garment.seams if s.name != seam))
    pieces = tuple(piece for piece in without.pieces if piece.name != two.name)
    return replace(
        without,
        pieces=pieces,
        seams=tuple(map(_once, resewn(without.seams, became))),
        joins=tuple(_joins(garment, seam, became)),
        girths=girths,
        steps=story.steps,
    )


def _around(piece: Piece, edge: str) -> tuple[Edge, ...]:
    """The edges from where one ends round to where it begins."""
    at = next(k for k, one in enumerate(piece.edges) if one.name == edge)
    return (*piece.edges[at + 1 :], *piece.edges[:at])


def _laid_edges(piece: Piece, edge: str, move: Rigid) -> tuple[Edge, ...]:
    moved = [replace(one, path=one.path.moved(move)) for one in _around(piece, edge)]
    if move.turns_over:
        moved = [replace(one, path=one.path.reversed()) for one in reversed(moved)]
    return tuple(moved)


def _ring(garment: Garment, first: _Side, second: _Side) -> tuple[list[Edge], Became]:
    """The edges of both, clockwise, lines that run on made one; and what each edge became."""
    taken = {edge.name for edge in first.edges}
    over = second.move.turns_over
    became: dict[tuple[str, str], tuple[EdgeRef, ...]] = {}
    ring = list(first.edges)
    own = first.piece.name
    follow = list(second.edges)
    tail = ring[-1].name if _runs_on(garment, (first, ring[-1]), (second, follow[0])) else ""
    head = ring[0].name if len(follow) > 1 and _runs_on(garment, (second, follow[-1]), (first, ring[0])) else ""
    added = []
    for k, edge in enumerate(follow):
        if k == 0 and tail:
            ring[-1] = replace(ring[-1], path=ring[-1].path.joined(edge.path))
            name = tail
        elif k == len(follow) - 1 and head:
            ring[0] = replace(ring[0], path=edge.path.joined(ring[0].path))
            name = head
        else:
            name = edge.name if edge.name not in taken else f"{second.piece.name}_{edge.name}"
            taken.add(name)
            added.append(replace(edge, name=name))
        became[second.piece.name, edge.name] = (EdgeRef(own, name, backwards=over),)
    return [*ring, *added], became


def _runs_on(garment: Garment, came: tuple[_Side, Edge], goes: tuple[_Side, Edge]) -> bool:
    """Whether two edges that meet are one line: no turn between them, and sewn as one wherever they are sewn."""
    if abs(came[1].path.arrives.turn_to(goes[1].path.leaves)) > TURN or came[1].kind is not goes[1].kind:
        return False
    names = {(side.piece.name, edge.name) for side, edge in (came, goes)}
    sides = [{(ref.piece, ref.edge) for ref in side} for seam in garment.seams for side in (seam.a, seam.b)]
    return all(names <= side or not names & side for side in sides)


def _piece(first: _Side, second: _Side, ring: list[Edge], became: Became) -> Piece:
    one, two = first.piece, second.piece
    paths = {edge.name: edge.path for edge in ring}
    # A notch is where it was on the cloth.
    notches = [
        replace(notch, at_mm=paths[notch.edge].length_to(one.edge(notch.edge).path.at(notch.at_mm)))
        for notch in one.notches
        if notch.edge != first.seam_edge
    ]
    for notch in two.notches:
        if notch.edge != second.seam_edge:
            place = second.move.point(two.edge(notch.edge).path.at(notch.at_mm))
            edge = became[two.name, notch.edge][0].edge
            notches.append(replace(notch, edge=edge, at_mm=paths[edge].length_to(place)))
    names = {mark.name for mark in one.marks}
    marks = [
        Mark(m.name if m.name not in names else f"{two.name}_{m.name}", m.path.moved(second.move)) for m in two.marks
    ]
    cut = one.cut if one.on_fold or not two.on_fold else two.cut
    return replace(one, edges=tuple(ring), cut=cut, notches=tuple(notches), marks=(*one.marks, *marks))


def _once(seam: Seam) -> Seam:
    """An edge that became one with its neighbour is walked once."""

    def side(refs: tuple[EdgeRef, ...]) -> tuple[EdgeRef, ...]:
        return tuple(ref for k, ref in enumerate(refs) if k == 0 or ref != refs[k - 1])

    return replace(seam, a=side(seam.a), b=side(seam.b))


def _joins(garment: Garment, seam: str, became: Became) -> Iterator[Join]:
    """Joins under the names of now; where the seam itself was crossed, the line is drawn through."""

    def named(piece: str, line: str, sewn: str) -> tuple[str, str, str]:
        lines, seams = became.get((piece, line)), became.get((piece, sewn))
        return (lines[0].piece, lines[0].edge, seams[0].edge) if lines and seams else (piece, line, sewn)

    for old in garment.joins:
        if old.seam != seam:
            yield replace(old, corners=(named(*old.corners[0]), named(*old.corners[1])))


def _girth(story: Story, girth: Girth, first: _Side, second: _Side, became: Became) -> Girth:
    """A girth across both is measured across the whole; one across the second goes with its point."""
    one, two = first.piece.name, second.piece.name
    points = story.garment.points
    own = [points[f"{one}.{mark}"].y for name, mark, _ in girth.across if name == one and f"{one}.{mark}" in points]
    across: list[tuple[str, str, float]] = []
    for name, mark, times in girth.across:
        level = points.get(f"{name}.{mark}")
        if name != two:
            across.append((name, mark, times))
        elif level is None:
            across.append((one, became[two, mark][0].edge, times))
        elif abs(second.move.b) > TURN:
            what = f"the {girth.name} is measured level across the {spoken(two)}, which would lie aslant"
            raise refused("girth-turned", two, what, "split off what is below, and join only the rest")
        else:
            place = second.move.point(level)
            if not any(abs(y - place.y) < SAME_MM for y in own):
                how = (f"as {spoken(name)} {spoken(mark)}",)
                label = story.point(f"{one}.{mark}", f"The level of the {girth.name}", how, place, (f"{name}.{mark}",))
                across.append((one, label.partition(".")[2], times))
    return replace(girth, across=tuple(across))

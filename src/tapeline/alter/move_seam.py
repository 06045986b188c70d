"""Moving a seam: what the one piece gives up, the other takes."""

from __future__ import annotations

from dataclasses import dataclass, replace

from tapeline.alter.corners import Corner, carried, goes_along
from tapeline.alter.grain import grain_inside
from tapeline.alter.joinable import cut_alike, lies_flat, refused, seam_of_two, sewn_once
from tapeline.alter.moved_line import moved_line
from tapeline.alter.opened import bad_line, girth_kept
from tapeline.alter.outline_cut import EdgePart, OutlineCut, cut_outline, pinned
from tapeline.alter.sewn import notched_across, resewn, with_pieces
from tapeline.alter.split import marks_inside
from tapeline.alter.story import Story, piece_named, spoken
from tapeline.alter.uncrossed import uncrossed
from tapeline.geometry import Path, Rigid
from tapeline.lengths import Length
from tapeline.pattern import Edge, EdgeKind, EdgeRef, Garment, Join, Notch, Piece

__all__ = ["move_seam"]


@dataclass(frozen=True, slots=True)
class _Move:
    """Which piece gives and which takes, how the one is laid to the other, and where the new seam cuts."""

    giver: Piece
    taker: Piece
    gives: EdgeRef
    takes: EdgeRef
    lay: Rigid
    found: OutlineCut

    @property
    def over(self) -> bool:
        """Whether the giver is turned over when it is laid to the taker."""
        return self.lay.turns_over

    def neighbours(self, piece: Piece, edge: str) -> tuple[Edge, Edge]:
        """The edges before and after one."""
        at = next(k for k, one in enumerate(piece.edges) if one.name == edge)
        return piece.edges[at - 1], piece.edges[(at + 1) % len(piece.edges)]

    def strip(self, *, before: bool) -> EdgePart | None:
        """What is given up of the edge before the seam's, or after it; none where the seam stays at that end."""
        before_edge, after_edge = self.neighbours(self.giver, self.gives.edge)
        part = self.found.beyond[0 if before else -1]
        return part if part.was == (before_edge if before else after_edge).name and not part.whole else None

    def corner(self, *, before: bool) -> Corner | None:
        """One end of the seam, as the giver is drawn."""
        part = self.strip(before=before)
        if part is None:
            return None
        beside = self.neighbours(self.taker, self.takes.edge)
        theirs_before = before == self.over
        gives = EdgeRef(self.giver.name, part.was, backwards=not before)
        takes = EdgeRef(self.taker.name, beside[0 if theirs_before else 1].name, backwards=not theirs_before)
        return Corner(gives, takes, part.edge.length)


def move_seam(garment: Garment, seam: str, by: Length, *, into: str, by_end: Length | None = None) -> Garment:
    """A seam between two pieces moves into one of them: a shoulder seam forward, a side seam forward.

    What the one gives up, the other takes, with the lines that ran over the seam; both are cut along one line, so the
    new seam is as long on both sides. The area of both together and the lengths of the lines over the seam are what
    they were; so are the girths round both, where the seam moves evenly. Notches on the seam go along, a band's notch
    too, and the crown of a sleeve with its ease; where a partner cannot be divided anew, the part that was taken stays
    an edge of its own.

    Args:
        garment: What is altered.
        seam: One that sews one edge each of two pieces that lie on each other along it.
        by: How far, square to the seam; where it begins, as it is walked, if `by_end` says another at its end.
        into: The piece that gives.
        by_end: How far at the seam's end.

    Raises `InputError`: `seam-unknown`, `seam-not-flat`, `cut-differently`, `edge-sewn-twice`, `not-in-seam`,
    `seam-moved-back` (less than nothing: move it into the other piece), `seam-moved-too-far`, `outline-would-cross`.

    >>> from tapeline.draft import Draft
    >>> from tapeline.lengths import cm
    >>> from tapeline.measures import size_wearer
    >>> from tapeline.styles import STYLES
    >>> tee = STYLES["tee"].page(Draft(size_wearer("92"), {}), STYLES["tee"].choices(), surveyed=True)
    >>> forward = move_seam(tee, "shoulder", cm(1), into="front")
    >>> round(forward.piece("back").edge("armhole").length - tee.piece("back").edge("armhole").length, 1)
    10.0
    """
    move = _move(garment, seam, (by, by if by_end is None else by_end), into)
    giver, taker = move.giver, move.taker
    story = Story(garment)
    title = f"The {spoken(seam)} seam moves into the {spoken(into)}"
    story.section(taker.name, title)
    became: dict[tuple[str, str], tuple[EdgeRef, ...]] = {}
    apart: dict[str, str] = {}
    for before in (True, False):
        corner, part = move.corner(before=before), move.strip(before=before)
        if corner is None or part is None:
            continue
        if goes_along(garment, corner):
            garment = carried(story, garment, corner)
        else:
            place = part.start_mm if before else part.end_mm
            garment = notched_across(garment, giver.name, {part.was: [place]})
            apart[corner.takes.edge] = f"{giver.name}_{part.was}"
            rest = EdgeRef(giver.name, part.was)
            off = EdgeRef(taker.name, apart[corner.takes.edge], backwards=move.over)
            became[giver.name, part.was] = (rest, off) if before else (off, rest)
    # What is sewn to them may have changed the notches of the pieces themselves.
    gave = _gave(replace(move, giver=garment.piece(giver.name)))
    took = _took(replace(move, taker=garment.piece(taker.name)), apart)
    for made in (gave, took):
        uncrossed(made, title, "move it less far")
    _tell(story, move, gave, took)
    after = with_pieces(garment, gave, took)
    return replace(
        after,
        seams=resewn(after.seams, became),
        joins=_joins(garment, move, apart),
        girths=tuple(girth_kept(garment, after, girth) for girth in garment.girths),
        steps=story.steps,
    )


def _move(garment: Garment, seam: str, by: tuple[Length, Length], into: str) -> _Move:
    found = seam_of_two(garment, seam)
    refs = {ref.piece: ref for ref in (*found.a, *found.b)}
    if into not in refs:
        raise refused("not-in-seam", seam, f"the {into} is not sewn in the seam {seam}", f"name {' or '.join(refs)}")
    if min(one.mm for one in by) < 0 or max(one.mm for one in by) <= 0:
        what = f"the seam {seam} would move by {by[0].show()} and {by[1].show()} into the {into}"
        other = next(name for name in refs if name != into)
        raise refused("seam-moved-back", seam, what, f"move it by more than nothing, or into the {other}")
    gives = refs[into]
    takes = next(ref for ref in refs.values() if ref is not gives)
    giver, taker = piece_named(garment, gives.piece), piece_named(garment, takes.piece)
    cut_alike(giver, taker)
    sewn_once(garment, found)
    laid, lying = garment.path(gives), garment.path(takes)
    over = gives.backwards == takes.backwards
    lay = Rigid.laying(laid.start, laid.end - laid.start, lying.start, lying.end - lying.start, turned_over=over)
    lies_flat(found, lying, laid.moved(lay))
    start, end = by if not gives.backwards else by[::-1]
    line = moved_line(giver.edge(gives.edge), start, end)
    move = _Move(giver, taker, gives, takes, lay, cut_outline(giver, line))
    cut = [part.was for part in move.found.beyond]
    parts = [part for part in (move.strip(before=True), move.strip(before=False)) if part is not None]
    if gives.edge not in cut or len(cut) != 1 + len(parts):
        raise bad_line("seam-moved-too-far", giver, line, "takes away a whole edge beside the seam", "move it less far")
    for corner in filter(None, (move.corner(before=before) for before in (True, False))):
        kinds = giver.edge(corner.gives.edge).kind, taker.edge(corner.takes.edge).kind
        if kinds[0] is not kinds[1] or EdgeKind.FOLD in kinds:
            what = f"would give a {kinds[0]} where the {spoken(taker.name)} has a {kinds[1]}, and no fold can be moved"
            raise bad_line("seam-moved-too-far", giver, line, what, "leave the seam, or unfold the piece first")
    return move


def _gave(move: _Move) -> Piece:
    """The piece that gave, with its edges in their order."""
    giver, edge = move.giver, move.gives.edge
    paths = {part.was: part.edge.path for part in move.found.kept} | {edge: move.found.path}
    cut = {part.was: part.start_mm for part in move.found.kept}
    notches = [
        _on_seam(notch, giver.edge(edge).path, move.found.path)
        if notch.edge == edge
        else replace(notch, at_mm=max(0.0, min(notch.at_mm - cut[notch.edge], paths[notch.edge].length)))
        for notch in giver.notches
    ]
    edges = tuple(replace(one, path=paths[one.name]) for one in giver.edges)
    made = replace(giver, edges=edges, notches=tuple(notches))
    return replace(made, grain=grain_inside(made, giver.grain), marks=tuple(marks_inside(giver, made)))


def _took(move: _Move, apart: dict[str, str]) -> Piece:
    """The piece that took: its edges run on into what was given, or that is an edge of its own."""
    taker, edge = move.taker, move.takes.edge
    at_start, at_end = move.neighbours(taker, edge)
    new = move.found.path.moved(move.lay)
    new = new if move.over else new.reversed()
    parts = [move.strip(before=before) for before in ((True, False) if move.over else (False, True))]
    laid = [part.edge.path.moved(move.lay) if part else None for part in parts]
    first, last = [path.reversed() if path and move.over else path for path in laid]
    old = taker.edge(edge).path
    new = pinned(new, new.start if first else old.start, new.end if last else old.end)
    edges: list[Edge] = []
    for one in taker.edges:
        if one.name == edge:
            edges.append(replace(one, path=new))
        elif one is at_start and first is not None:
            run = pinned(first, old.start, new.start)
            edges += _run_on(one, run, apart.get(one.name), after=True)
        elif one is at_end and last is not None:
            run = pinned(last, new.end, old.end)
            edges += _run_on(one, run, apart.get(one.name), after=False)
        else:
            edges.append(one)
    longer = last.length if last is not None and at_end.name not in apart else 0.0
    notches = [
        _on_seam(notch, old, new)
        if notch.edge == edge
        else replace(notch, at_mm=notch.at_mm + (longer if notch.edge == at_end.name else 0.0))
        for notch in taker.notches
    ]
    return replace(taker, edges=tuple(edges), notches=tuple(notches))


def _run_on(edge: Edge, run: Path, name: str | None, *, after: bool) -> list[Edge]:
    if name is not None:
        new = replace(edge, name=name, path=run)
        return [edge, new] if after else [new, edge]
    return [replace(edge, path=edge.path.joined(run) if after else run.joined(edge.path))]


def _on_seam(notch: Notch, old: Path, new: Path) -> Notch:
    """Square across from where it was."""
    return replace(notch, at_mm=new.length_to(old.at(notch.at_mm)))


def _joins(garment: Garment, move: _Move, apart: dict[str, str]) -> tuple[Join, ...]:
    """Lines that run over the seam do so at the part that was taken, where that is an edge of its own."""
    taker, edge = move.taker.name, move.takes.edge

    def corner(old: tuple[str, str, str]) -> tuple[str, str, str]:
        piece, line, seam = old
        return (piece, apart.get(line, line), seam) if piece == taker and seam == edge else old

    return tuple(replace(join, corners=(corner(join.corners[0]), corner(join.corners[1]))) for join in garment.joins)


def _tell(story: Story, move: _Move, gave: Piece, took: Piece) -> None:
    """The ends of the new seam, and every line that is not as it was."""
    for old, new, ref in ((move.giver, gave, move.gives), (move.taker, took, move.takes)):
        path = new.edge(ref.edge).path
        known = story.label_of(f"{new.name}.{ref.edge}")
        needs = (known,) if known else ()
        ends = [
            story.point(f"{new.name}.{ref.edge}_{where}", "An end of the seam where it is now", how, place, needs)
            for where, place in (("start", path.start), ("end", path.end))
            for how in [(f"on the seam, moved by what was given ({spoken(move.giver.name)})",)]
        ]
        was = {edge.name: edge.path for edge in old.edges}
        for edge in new.edges:
            if was.get(edge.name) != edge.path:
                says = "What the one piece gives, the other takes" if edge.name == ref.edge else "Ends at the seam"
                label = f"{new.name}.{edge.name}"
                before = label if edge.name in was else f"{move.giver.name}.{edge.name.partition('_')[2]}"
                story.edge(before, label, edge.path, says=says, how=("to the seam as it is now",), needs=tuple(ends))

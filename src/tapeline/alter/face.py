"""Facings: for edges that are sewn to nothing, a piece each that is cut as the edge it faces, sewn on and turned in."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace

from tapeline.alter.extend import free_edge
from tapeline.alter.grain import grain_inside
from tapeline.alter.outline_cut import pinned
from tapeline.alter.sewn import with_pieces
from tapeline.alter.split import NOTCH_SHARE
from tapeline.alter.story import Story, edge_named, piece_named, spoken, unused
from tapeline.alter.stretch import more_than_nothing
from tapeline.alter.uncrossed import uncrossed
from tapeline.geometry import Line, Path
from tapeline.geometry.beside import beside
from tapeline.geometry.crossing import crossings
from tapeline.lengths import Length
from tapeline.pattern import Edge, EdgeKind, EdgeRef, Garment, Notch, Piece, Seam
from tapeline.problems import InputError, Problem, Severity

__all__ = ["face"]

RUN_ON_MM = 500.0
"""The inner line is run on so far, to find where it meets the edges beside."""
INNER = "inner"
"""What the free edge of a facing is called."""


def face(garment: Garment, edges: Sequence[tuple[str, str]], width: Length, *, name: str = "facing") -> Garment:
    """Edges that run on into each other over seams get a facing each, sewn together where the pieces are.

    A facing is traced from its piece: the faced edge itself, as much of the edges beside as it covers, and an inner
    line that lies a width inside. It lies on the fold where the piece does. The outline of the pieces stays; their
    faced edges, turned up or neatened before, are seams from now on, notched alike on both sides.

    Args:
        garment: What is altered.
        edges: Piece and edge of each, such as `("back", "hem")`.
        width: How wide the facings are.
        name: The facing of the back is called `back_facing`, its seam `back_facing_seam`.

    Raises `InputError`: `piece-unknown`, `edge-unknown`, `edge-sewn`, `name-taken`, `fullness-not-more`,
    `facing-does-not-fit` where it is wider than the piece beside the edge is long, `outline-would-cross`.

    >>> from tapeline.draft import Draft
    >>> from tapeline.lengths import cm
    >>> from tapeline.measures import size_wearer
    >>> from tapeline.styles import STYLES
    >>> tee = STYLES["tee"].page(Draft(size_wearer("92"), {}), STYLES["tee"].choices(), surveyed=True)
    >>> faced = face(tee, [("back", "hem"), ("front", "hem")], cm(5))
    >>> [edge.name for edge in faced.piece("back_facing").edges]
    ['hem', 'centre', 'inner', 'side']
    >>> [seam.name for seam in faced.seams][-3:]
    ['back_facing_seam', 'front_facing_seam', 'front_facing_side']
    """
    made: list[_Facing] = []
    for piece, edge in edges:
        whole = piece_named(garment, piece)
        old = edge_named(whole, edge)
        more_than_nothing(width, f"{piece}.{edge}")
        free_edge(garment, whole, old, (EdgeKind.HEM, EdgeKind.NEATENED))
        one = _Facing(whole, old, width, f"{piece}_{name}")
        unused("piece", one.name, [other.name for other in garment.pieces] + [other.name for other in made])
        made.append(one)
    pieces = {one.whole.name: one for one in made}
    ends = tuple(_end_seams(garment, pieces))
    sewn = {(ref.piece, ref.edge) for seam in ends for ref in (*seam.a, *seam.b)}
    story = Story(garment)
    for one in made:
        facing = one.piece(sewn)
        title = f"A facing, {width.show()} wide, for the {spoken(one.edge.name)} of the {spoken(one.whole.name)}"
        uncrossed(facing, title, "make it narrower: the edge bends more tightly than the facing is wide")
        story.section(facing.name, title)
        for edge_of in facing.edges:
            traced = edge_of.name != INNER
            how = (f"traced from the {spoken(one.whole.name)}",) if traced else (width, " inside the faced edge")
            says = "As on the piece that it faces" if traced else "Neatened, sewn to nothing"
            known = story.label_of(f"{one.whole.name}.{edge_of.name}") if traced else ""
            story.line(f"{facing.name}.{edge_of.name}", says, how, edge_of.path, (known,) if known else ())
        faced = replace(one.edge, kind=EdgeKind.SEAM, allowance_mm=None)
        body = replace(
            garment.piece(one.whole.name),
            edges=tuple(faced if edge is one.edge else edge for edge in one.whole.edges),
            notches=tuple(dict.fromkeys((*one.whole.notches, *one.notches(one.whole)))),
        )
        garment = with_pieces(garment, body, facing)
    seams = (*garment.seams, *(one.seam() for one in made), *ends)
    for seam in seams[len(garment.seams) :]:
        unused("seam", seam.name, [other.name for other in garment.seams])
    return replace(garment, seams=seams, steps=story.steps)


@dataclass(frozen=True, slots=True)
class _Facing:
    """One facing, and what it is traced from."""

    whole: Piece
    edge: Edge
    width: Length
    name: str

    def beside(self) -> tuple[Edge, Edge]:
        """The edges before and after the faced one."""
        names = [one.name for one in self.whole.edges]
        at = names.index(self.edge.name)
        return self.whole.edges[at - 1], self.whole.edges[(at + 1) % len(names)]

    def lines(self) -> tuple[Path, Path, Path]:
        """Of the edge before the part that is covered; the inner line, the way the edge runs; and of the edge after."""
        before, after = self.beside()
        inner = beside(self.edge.path, -self.width.mm)
        head = Line(inner.start + inner.leaves * -RUN_ON_MM, inner.start)
        tail = Line(inner.end, inner.end + inner.arrives * RUN_ON_MM)
        run = Path((head, *inner.segments, tail))
        starts, ends = crossings(run, before.path), crossings(run, after.path)
        if not starts or not ends:
            raise self._does_not_fit()
        start = max(starts, key=lambda pair: pair[1])
        end = min(ends, key=lambda pair: pair[1])
        if end[0] <= start[0]:
            raise self._does_not_fit()
        first = before.path.part(start[1], before.path.length)
        last = after.path.part(0, end[1])
        return first, pinned(run.part(start[0], end[0]), first.start, last.end), last

    def piece(self, sewn: set[tuple[str, str]]) -> Piece:
        """Clockwise: the faced edge, the part after it, the inner line back, the part before it."""
        first, inner, last = self.lines()
        before, after = self.beside()
        edges = (
            replace(self.edge, kind=EdgeKind.SEAM, allowance_mm=None),
            self._end(after, last, sewn),
            Edge(INNER, inner.reversed(), EdgeKind.NEATENED),
            self._end(before, first, sewn),
        )
        title = f"{self.whole.title}, facing of the {spoken(self.edge.name)}"
        made = Piece(self.name, title, edges, self.whole.grain, self.whole.cut)
        made = replace(made, notches=self.notches(self.whole))
        return replace(made, grain=grain_inside(made, self.whole.grain))

    def _end(self, edge: Edge, part: Path, sewn: set[tuple[str, str]]) -> Edge:
        if edge.fold:
            return replace(edge, path=part)
        kind = EdgeKind.SEAM if (self.name, edge.name) in sewn else EdgeKind.NEATENED
        return Edge(edge.name, part, kind)

    def notches(self, whole: Piece) -> tuple[Notch, ...]:
        """Where facing and piece meet: as the edge was notched, or else once, not in the middle."""
        known = whole.notches_on(self.edge.name)
        return known or (Notch(self.edge.name, self.edge.length * NOTCH_SHARE),)

    def seam(self) -> Seam:
        """Facing to piece."""
        one, other = EdgeRef(self.name, self.edge.name), EdgeRef(self.whole.name, self.edge.name)
        return Seam(f"{self.name}_seam", (one,), (other,), Length(0.0))

    def _does_not_fit(self) -> InputError:
        says = (
            f"a facing {self.width.show()} wide does not lie on the {spoken(self.whole.name)} along its "
            f"{spoken(self.edge.name)}: it reaches past the edges beside"
        )
        where = f"{self.whole.name}.{self.edge.name}"
        return InputError(Problem("facing-does-not-fit", Severity.ERROR, says, where, "make it narrower"))


def _end_seams(garment: Garment, made: dict[str, _Facing]) -> list[Seam]:
    """Where two faced edges run into each other over a seam, their facings are sewn together too."""
    found = []
    for seam in garment.seams:
        sides = []
        for side in (seam.a, seam.b):
            # The faced corner lies at one end of the seam.
            ref = next((ref for ref in (side[0], side[-1]) if ref.piece in made), None)
            facing = made[ref.piece] if ref is not None else None
            names = [edge.name for edge in facing.beside()] if facing is not None else []
            sides.append(
                EdgeRef(facing.name, ref.edge, ref.backwards) if ref and facing and ref.edge in names else None
            )
        one, other = sides
        if one is not None and other is not None and one != other:
            name = f"{one.piece}_{one.edge}"
            found.append(Seam(name, (one,), (other,), Length(0.0)))
    return found

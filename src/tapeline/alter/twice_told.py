"""The names of a garment that was drafted twice, and its construction: first the right side, then the left."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import dataclass, replace
from functools import cache, cached_property

from tapeline.geometry import Path, Point, Rigid
from tapeline.lengths import Length, Phrase
from tapeline.pattern import EdgeRef, Garment, Join, Size, Source, Step, StepKind, width_at

__all__ = ["MOST_APART_MM", "SideOf", "Sides", "drawn_side", "told"]

SAME_MM = 1e-9
ROUNDING_MM = 1e-6
MOST_APART_MM = 2.0
"""Two halves are brought together over no more; our own choice: less than cutting is exact."""
DRAWN = {
    "right": ("back", "yoke", "neckband", "collar", "sleeve", "cuff", "armhole"),
    # An under collar lies against the upper one, right side to right side.
    "left": ("front", "under_collar"),
}
"""Which side a half or a piece of a pair is, as it is drawn with the right side of the cloth up: by how names begin."""


def drawn_side(name: str) -> str:
    """The side that a piece is drawn for; nothing where we do not know.

    >>> drawn_side("back"), drawn_side("front_facing"), drawn_side("hood")
    ('right', 'left', '')
    """
    return next((side for side, names in DRAWN.items() if name.startswith(names)), "")


@dataclass(frozen=True, slots=True)
class SideOf:
    """One side, the draft that it comes from, and what its parts are called."""

    name: str
    garment: Garment
    differ: frozenset[str]
    renamed: Mapping[str, str]
    """Sizes that are others than on the right side."""

    def is_image(self, piece: str) -> bool:
        """Whether this side's half, or piece of a pair, lies turned over from how it was drawn."""
        return piece in self.differ and drawn_side(piece) != self.name

    def piece(self, piece: str) -> str:
        """What a piece is called on this side."""
        apart = self.is_image(piece) and not self.garment.piece(piece).on_fold
        return f"{self.name}_{piece}" if apart else piece

    def edge(self, piece: str, edge: str) -> str:
        """What an edge is called on this side."""
        return f"{edge}_{self.name}" if self.is_image(piece) and self.garment.piece(piece).on_fold else edge

    def run(self, refs: tuple[EdgeRef, ...]) -> tuple[EdgeRef, ...]:
        """A side of a seam; edges that were turned over run the other way."""
        return tuple(
            EdgeRef(self.piece(r.piece), self.edge(r.piece, r.edge), r.backwards is not self.is_image(r.piece))
            for r in refs
        )

    def corners(self, join: Join) -> tuple[tuple[str, str, str], tuple[str, str, str]]:
        """The corners of a join."""
        one, two = (
            (self.piece(name), self.edge(name, line), self.edge(name, seam)) for name, line, seam in join.corners
        )
        return one, two

    def level(self, piece: str, mark: str, move: Rigid) -> Path:
        """The level of a girth across this half, from the centre to the side."""
        at = self.garment.points[f"{piece}.{mark}"]
        width = width_at(self.garment.piece(piece), at)
        return Path.through(at, Point(at.x + width, at.y)).moved(move)

    def label(self, label: str) -> str:
        """What a point, a line or a size is called on this side."""
        sheet, dot, name = label.rpartition(".")
        if not dot:
            return self.renamed.get(label, label)
        if not self.is_image(sheet):
            return label
        if not self.garment.piece(sheet).on_fold:
            return f"{self.name}_{sheet}.{name}"
        # The fold is one line for both halves.
        return label if name == "centre" else f"{sheet}.{name}_{self.name}"

    def length(self, length: Length) -> Length:
        """A length with the names of this side's sizes in its formula."""
        if not self.renamed:
            return length
        parts = tuple(self.length(part) if isinstance(part, Length) else part for part in length.parts)
        return Length(length.mm, self.renamed.get(length.name, length.name), length.operator, parts)

    def phrase(self, phrase: Phrase) -> Phrase:
        """What the hand does."""
        return tuple(self.length(part) if isinstance(part, Length) else part for part in phrase)


# Without slots: each side, and how its pieces are laid over, is worked out once.
@dataclass(frozen=True)
class Sides:
    """Two drafts of one style, and the pieces in which they differ."""

    right: Garment
    left: Garment
    differ: frozenset[str]

    @cached_property
    def of_right(self) -> SideOf:
        """The right side, whose sizes keep their names."""
        return SideOf("right", self.right, self.differ, {})

    @cached_property
    def of_left(self) -> SideOf:
        """The left side; a size that is another than on the right has the side in its name."""
        known = {size.name: size.length.mm for size in self.right.sizes}
        renamed = {
            size.name: f"left_{size.name}"
            for size in self.left.sizes
            if size.source is not Source.CHOICE and abs(known.get(size.name, -1.0) - size.length.mm) > SAME_MM
        }
        return SideOf("left", self.left, self.differ, renamed)

    def drawn(self, piece: str) -> SideOf:
        """The side that a piece is drawn for."""
        return self.of_left if drawn_side(piece) == "left" else self.of_right

    def other(self, piece: str) -> SideOf:
        """The side that it is not drawn for."""
        return self.of_right if drawn_side(piece) == "left" else self.of_left

    def levels(self, piece: str) -> tuple[str, ...]:
        """The levels at which girths are measured across a piece."""
        marks = (
            mark for girth in self.right.girths for name, mark, times in girth.across if name == piece and times > 1
        )
        return tuple(mark for mark in dict.fromkeys(marks) if f"{piece}.{mark}" in self.right.points)

    def over(self, piece: str) -> Rigid:
        """The move that lays the half or the piece that was not drawn where it belongs, turned over."""
        half, other = (side.garment.piece(piece) for side in (self.drawn(piece), self.other(piece)))
        if not half.on_fold:
            return Rigid(a=-1.0)
        fold, theirs = (next(edge.path for edge in p.edges if edge.fold) for p in (half, other))
        if abs(fold.length - theirs.length) > ROUNDING_MM:
            # One hem lies deeper. Both are drawn on the same paper: turned over about the fold, heights stay.
            theirs = fold
        return Rigid.laying(
            theirs.start, theirs.end - theirs.start, fold.start, fold.end - fold.start, turned_over=True
        )

    @property
    def sizes(self) -> tuple[Size, ...]:
        """Those of the right side, and those of the left that are others."""
        known = {size.name for size in self.right.sizes}
        left = self.of_left
        others = (
            replace(size, name=left.label(size.name), length=left.length(size.length), says=f"{size.says}, left side")
            if size.name in left.renamed
            else size
            for size in self.left.sizes
            if size.name in left.renamed or size.name not in known
        )
        return (*self.right.sizes, *others)


def told(sides: Sides, edges: Mapping[str, Path]) -> tuple[Step, ...]:
    """The construction of the right side, then what is other on the left; edges are drawn as they are in the pieces."""
    steps: list[Step] = []
    known: set[str] = set()
    over = cache(sides.over)
    for side in (sides.of_right, sides.of_left):
        waiting: Step | None = None
        for step in side.garment.steps:
            if step.kind is StepKind.SECTION:
                waiting = replace(step, label=f"{step.label}, {side.name}", says=f"{step.says}, {side.name} side")
                continue
            label = side.label(step.label)
            if label in known:
                continue
            if waiting is not None:
                steps.append(waiting)
                waiting = None
            known.add(label)
            steps.append(_told(over, side, step, edges))
    return tuple(steps)


def _told(over: Callable[[str], Rigid], side: SideOf, step: Step, edges: Mapping[str, Path]) -> Step:
    """A step under its side's names, where its mark lies now."""
    needs = tuple(side.label(need) for need in step.needs)
    said = replace(
        step,
        label=side.label(step.label),
        how=side.phrase(step.how),
        lengths=tuple(side.length(length) for length in step.lengths),
        needs=needs,
    )
    if not side.is_image(step.sheet):
        return said
    move = over(step.sheet)
    path = None if step.path is None else _as_edge(step.path.moved(move), said.label, edges)
    return replace(said, point=None if step.point is None else move.point(step.point), path=path)


def _as_edge(path: Path, label: str, edges: Mapping[str, Path]) -> Path:
    """The very line of an edge that it is, from its other end.

    Both differ by rounding alone; the edge of the same name also where it was made to meet the other half.
    """
    own = [edge for name, edge in edges.items() if name == label]
    for allowed, among in ((ROUNDING_MM, own), (ROUNDING_MM, edges.values()), (MOST_APART_MM, own)):
        for edge in among:
            ends = (edge.end, path.start), (edge.start, path.end)
            same = len(edge.segments) == len(path.segments) and abs(edge.length - path.length) < allowed
            if same and all(one.distance_to(other) < allowed for one, other in ends):
                return edge.reversed()
    return path

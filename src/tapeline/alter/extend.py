"""An extension: a strip of paper beyond an edge that is sewn to nothing, as a front has where it laps over."""

from __future__ import annotations

from dataclasses import replace

from tapeline.alter.sewn import with_pieces
from tapeline.alter.story import Story, edge_named, piece_named, spoken, unused
from tapeline.alter.stretch import more_than_nothing
from tapeline.alter.uncrossed import uncrossed
from tapeline.geometry import Path, Rigid
from tapeline.lengths import Length
from tapeline.pattern import Cut, Edge, EdgeKind, Garment, Mark, Piece
from tapeline.problems import InputError, Problem, Severity

__all__ = ["extend", "free_edge"]

STRAIGHT_MM = 0.01
RUNS_ON = (EdgeKind.HEM, EdgeKind.NEATENED)
"""An edge beside the strip that nothing is sewn to goes on along it."""


def extend(garment: Garment, piece: str, edge: str, by: Length) -> Garment:
    """A straight edge moves out of its piece, square to itself, and the strip between becomes part of the piece.

    Where the edge lay on the fold, the piece is cut for each side from now on, and where it lay stays marked as the
    centre: there the two sides lie on each other, and there girths are measured, so they are kept. A hem beside it runs
    on; beside a seam the short end of the strip is neatened, and what is sewn there ends where it ended.

    Args:
        garment: What is altered.
        piece: The piece that reaches farther.
        edge: On the fold, or neatened: nothing may be sewn to it.
        by: How far.

    Raises `InputError`: `piece-unknown`, `edge-unknown`, `edge-sewn`, `edge-not-straight`, `fullness-not-more`,
    `name-taken`, `line-through-join`, `outline-would-cross`.

    >>> from tapeline.draft import Draft
    >>> from tapeline.lengths import cm
    >>> from tapeline.measures import size_wearer
    >>> from tapeline.styles import STYLES
    >>> tee = STYLES["tee"].page(Draft(size_wearer("92"), {}), STYLES["tee"].choices(), surveyed=True)
    >>> lapped = extend(tee, "front", "centre", cm(2)).piece("front")
    >>> [edge.name for edge in lapped.edges][:3], lapped.cut
    (['centre', 'centre_top', 'neckline'], Cut(quantity=2, cloth='shell', mirrored=True))
    """
    whole = piece_named(garment, piece)
    old = edge_named(whole, edge)
    more_than_nothing(by, f"{piece}.{edge}")
    free_edge(garment, whole, old, (EdgeKind.FOLD, EdgeKind.NEATENED))
    _straight(whole, old)
    if any(
        (name, line) == (piece, edge) or (name, seam) == (piece, edge)
        for join in garment.joins
        for name, line, seam in join.corners
    ):
        says = f"a line runs over the {spoken(edge)} of the {spoken(piece)} onto another piece, and would end before it"
        raise InputError(Problem("line-through-join", Severity.ERROR, says, f"{piece}.{edge}", "extend another edge"))
    names = [one.name for one in whole.edges]
    at = names.index(edge)
    before, after = whole.edges[at - 1], whole.edges[(at + 1) % len(names)]
    move = Rigid.shift(old.path.leaves.left * by.mm)
    moved = old.path.moved(move)
    low, top = Path.through(old.path.start, moved.start), Path.through(moved.end, old.path.end)
    outer = replace(old, path=moved, kind=EdgeKind.NEATENED)
    strips = [
        Edge(f"{edge}_{where}", path, EdgeKind.NEATENED)
        for where, path, beside in (("low", low, before), ("top", top, after))
        if beside.kind not in RUNS_ON
    ]
    for strip in strips:
        unused("edge", strip.name, names)
    around = {
        before.name: replace(before, path=before.path.joined(low)),
        after.name: replace(after, path=top.joined(after.path)),
    }
    around = {name: one for name, one in around.items() if one.kind in RUNS_ON}
    edges: list[Edge] = []
    for one in whole.edges:
        edges += [strip for strip in strips if one is old and strip.path is low]
        edges.append(outer if one is old else around.get(one.name, one))
        edges += [strip for strip in strips if one is old and strip.path is top]
    notches = tuple(
        replace(n, at_mm=n.at_mm + by.mm) if n.edge == after.name and after.name in around else n for n in whole.notches
    )
    cut = Cut(whole.cut.quantity * 2, whole.cut.cloth, mirrored=True) if old.fold else whole.cut
    marks = (*whole.marks, Mark("centre", old.path)) if old.fold else whole.marks
    made = replace(whole, edges=tuple(edges), notches=notches, cut=cut, marks=marks)
    title = f"The {spoken(piece)} reaches {by.show()} beyond its {spoken(edge)}"
    uncrossed(made, title, "extend it less far")

    story = Story(garment)
    story.section(piece, title)
    known = tuple(filter(None, (story.label_of(f"{piece}.{edge}"),)))
    ends = [
        story.point(f"{piece}.{edge}_{where}_end", "An end of the extension", how, place, known, by)
        for where, place in (("low", moved.start), ("top", moved.end))
        for how in [(f"square out from the {spoken(edge)}, ", by)]
    ]
    says = "Farther out by the extension"
    story.edge(f"{piece}.{edge}", f"{piece}.{edge}", moved, says=says, how=("between both ends",), needs=tuple(ends))
    for one in around.values():
        label = f"{piece}.{one.name}"
        story.edge(label, label, one.path, says="Runs on to the extended edge", how=("straight on",), needs=tuple(ends))
    for strip in strips:
        told = "Square to the extended edge"
        story.line(f"{piece}.{strip.name}", told, ("straight to the end of the extension",), strip.path, tuple(ends))
    return replace(with_pieces(garment, made), steps=story.steps)


def free_edge(garment: Garment, whole: Piece, edge: Edge, kinds: tuple[EdgeKind, ...]) -> None:
    """Raises `InputError` (`edge-sewn`) where an edge is of another kind, or something is sewn to it."""
    sewn = any((ref.piece, ref.edge) == (whole.name, edge.name) for seam in garment.seams for ref in (*seam.a, *seam.b))
    if sewn or edge.kind not in kinds:
        what = "is sewn" if sewn or edge.kind is EdgeKind.SEAM else f"is a {edge.kind}"
        says = (
            f"the {spoken(edge.name)} of the {spoken(whole.name)} {what}; only what is {' or '.join(kinds)} can be that"
        )
        hint = "choose a free edge, or move the seam"
        raise InputError(Problem("edge-sewn", Severity.ERROR, says, f"{whole.name}.{edge.name}", hint))


def _straight(whole: Piece, edge: Edge) -> None:
    chord = Path.through(edge.path.start, edge.path.end)
    if max(chord.distance_to(knot) for knot in edge.path.knots) > STRAIGHT_MM:
        says = (
            f"the {spoken(edge.name)} of the {spoken(whole.name)} bends, and what is cut on along it could not lie flat"
        )
        hint = "face a curved edge instead"
        raise InputError(Problem("edge-not-straight", Severity.ERROR, says, f"{whole.name}.{edge.name}", hint))

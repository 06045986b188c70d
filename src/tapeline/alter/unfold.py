"""Unfolding a piece that is drawn as one half on the fold, and turning a piece over."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace

from tapeline.alter.outline_cut import pinned
from tapeline.alter.sewn import with_pieces
from tapeline.alter.story import Story, piece_named, spoken
from tapeline.geometry import Point, Rigid
from tapeline.pattern import Edge, EdgeRef, Garment, Girth, Join, Mark, Piece, Seam
from tapeline.problems import InputError, Problem, Severity

__all__ = ["mirror", "unfold"]

OTHER = "_mirrored"
"""Ends the name of an edge, mark, seam on the other side of the fold."""


def unfold(garment: Garment, piece: str) -> Garment:
    """A half on the fold becomes the whole piece; what is on the other side is named after what it mirrors.

    The half that was drawn keeps its names, seams and joins. Each edge has its image (`side`, `side_mirrored`), and so
    has each seam and each join: sewn to the image where the other piece is unfolded too, and otherwise to the half that
    stands for both sides. The area doubles; every length, angle and notch of the one side is on the other.

    Raises `InputError`: `piece-unknown`, and `no-fold` when nothing lies on the fold.

    >>> from tapeline.draft import Draft
    >>> from tapeline.measures import size_wearer
    >>> from tapeline.styles import STYLES
    >>> tee = STYLES["tee"].page(Draft(size_wearer("92"), {}), STYLES["tee"].choices(), surveyed=True)
    >>> [edge.name for edge in unfold(tee, "back").piece("back").edges][:6]
    ['neckline', 'shoulder', 'armhole', 'side', 'hem', 'hem_mirrored']
    """
    half = piece_named(garment, piece)
    at, over = _fold(half)
    edges = (*half.edges[at + 1 :], *half.edges[:at])
    images = tuple(_image(edge, over) for edge in reversed(edges))
    images = _closed(images, edges[-1].path.end, edges[0].path.start)
    lengths = {edge.name: edge.length for edge in edges}
    whole = replace(
        half,
        edges=(*edges, *images),
        notches=(
            *half.notches,
            *(replace(n, edge=n.edge + OTHER, at_mm=lengths[n.edge] - n.at_mm) for n in half.notches),
        ),
        marks=(*half.marks, *(Mark(mark.name + OTHER, mark.path.moved(over)) for mark in half.marks)),
    )
    story = Story(garment)
    story.section(piece, f"The {spoken(piece)} is unfolded")
    fold = story.label_of(f"{piece}.{half.edges[at].name}")
    for edge, image in zip(reversed(edges), images, strict=True):
        how = (f"{spoken(edge.name)} on the other side of the fold",)
        needs = (fold,) if fold else ()
        story.edge(
            f"{piece}.{edge.name}", f"{piece}.{image.name}", image.path, says="As on this side", how=how, needs=needs
        )
    return replace(
        with_pieces(garment, whole),
        seams=tuple(_seams(garment, piece)),
        joins=tuple(_joins(garment, piece)),
        girths=tuple(_girth(garment, girth, piece) for girth in garment.girths),
        steps=story.steps,
    )


def mirror(piece: Piece) -> Piece:
    """The piece turned over about an upright line, as the other of a pair lies; names, lengths and notches stay.

    >>> from tapeline.draft import Draft
    >>> from tapeline.measures import size_wearer
    >>> from tapeline.styles import STYLES
    >>> tee = STYLES["tee"].page(Draft(size_wearer("92"), {}), STYLES["tee"].choices(), surveyed=True)
    >>> mirror(mirror(tee.piece("sleeve"))) == tee.piece("sleeve")
    True
    """
    over = Rigid(a=-1.0)
    edges = tuple(replace(edge, path=edge.path.moved(over).reversed()) for edge in reversed(piece.edges))
    lengths = {edge.name: edge.length for edge in piece.edges}
    notches = tuple(replace(n, at_mm=lengths[n.edge] - n.at_mm) for n in piece.notches)
    marks = tuple(Mark(mark.name, mark.path.moved(over)) for mark in piece.marks)
    return replace(piece, edges=edges, grain=piece.grain.moved(over), notches=notches, marks=marks)


def _fold(half: Piece) -> tuple[int, Rigid]:
    """Which edge lies on the fold, and the move that turns the paper over about it."""
    folds = [k for k, edge in enumerate(half.edges) if edge.fold]
    if not folds:
        raise InputError(
            Problem(
                "no-fold",
                Severity.ERROR,
                f"no edge of the {spoken(half.name)} lies on the fold: it is whole already",
                half.name,
                "unfold a piece that is drawn as one half; for the other of a pair, turn a piece over with `mirror`",
            )
        )
    path = half.edges[folds[0]].path
    return folds[0], Rigid.over(path.start, (path.end - path.start).unit)


def _image(edge: Edge, over: Rigid) -> Edge:
    return replace(edge, name=edge.name + OTHER, path=edge.path.moved(over).reversed())


def _closed(images: tuple[Edge, ...], start: Point, end: Point) -> tuple[Edge, ...]:
    """The images with their outer ends exactly where the half ends and begins; they are there but for rounding."""
    first, *rest = images
    first = replace(first, path=pinned(first.path, start, first.path.end))
    *middle, last = (first, *rest)
    return (*middle, replace(last, path=pinned(last.path, last.path.start, end)))


def _other_side(side: tuple[EdgeRef, ...], piece: str) -> tuple[EdgeRef, ...]:
    """A side of a seam with the images of one piece's edges; they run the other way round."""
    return tuple(EdgeRef(ref.piece, ref.edge + OTHER, not ref.backwards) if ref.piece == piece else ref for ref in side)


def _seams(garment: Garment, piece: str) -> Iterator[Seam]:
    names = {seam.name for seam in garment.seams}
    images: list[Seam] = []
    for seam in garment.seams:
        if all(ref.piece != piece for ref in (*seam.a, *seam.b)):
            yield seam
        elif seam.a == seam.b:
            # An edge that stood for both sides, sewn to itself.
            yield replace(seam, b=_other_side(seam.b, piece))
        elif seam.name.endswith(OTHER):
            yield replace(seam, a=_other_side(seam.a, piece), b=_other_side(seam.b, piece))
        else:
            yield seam
            if seam.name + OTHER not in names:
                images.append(
                    replace(seam, name=seam.name + OTHER, a=_other_side(seam.a, piece), b=_other_side(seam.b, piece))
                )
    yield from images


def _joins(garment: Garment, piece: str) -> Iterator[Join]:
    there = {(join.line, join.seam) for join in garment.joins}
    images: list[Join] = []

    def image(join: Join) -> Join:
        one, two = (
            (name, line + OTHER, seam + OTHER) if name == piece else (name, line, seam)
            for name, line, seam in join.corners
        )
        seam = join.seam if join.seam.endswith(OTHER) else join.seam + OTHER
        return replace(join, seam=seam, corners=(one, two))

    for join in garment.joins:
        ours = any(name == piece for name, _, _ in join.corners)
        if ours and join.seam.endswith(OTHER):
            yield image(join)
            continue
        yield join
        if ours and (join.line, join.seam + OTHER) not in there:
            images.append(image(join))
    yield from images


def _girth(garment: Garment, girth: Girth, piece: str) -> Girth:
    """Measured once across the whole where it was twice across the half."""
    across: list[tuple[str, str, float]] = []
    for name, mark, times in girth.across:
        if name != piece:
            across.append((name, mark, times))
        elif f"{name}.{mark}" in garment.points:
            across.append((name, mark, times / 2))
        else:
            across += [(name, mark, times / 2), (name, mark + OTHER, times / 2)]
    return replace(girth, across=tuple(across))

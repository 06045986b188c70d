"""A garment whose sides are not alike: drafted twice, for the right side and for the left, and put together.

Both drafts are of the same style. Pieces on the fold become whole, one half from each draft; of a pair, the right one
comes from the one draft and the left one from the other, and each is cut once; what is the same in both stays.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace

from tapeline.alter.outline_cut import pinned
from tapeline.alter.twice_told import MOST_APART_MM, SideOf, Sides, drawn_side, told
from tapeline.geometry import Rigid
from tapeline.pattern import Cut, Garment, Girth, Join, Mark, Piece, Seam
from tapeline.problems import InputError, Problem, Severity

__all__ = ["uneven"]

ROUND_THE_ARM = ("armhole", "cuff")
"""Strips of which each side has one, though one is not the other turned over."""


def uneven(right: Garment, left: Garment) -> Garment:
    """One garment of two drafts of the same style: its right side from the one, its left side from the other.

    A piece lies as it is drawn, right side of the cloth up: so the drawn half of a back is the right one, that of a
    front the left one. The half that was not drawn has its side in the names of its edges (`side_left`), points
    (`left_underarm`) and seams. Each side keeps the lengths, angles, notches and seams of its draft.

    Raises `InputError` (`sides-not-apart`) where a piece that differs is neither on the fold nor one of a pair, or
    where both halves of one on the fold do not meet in its ends.

    >>> from tapeline.draft import Draft
    >>> from tapeline.lengths import cm
    >>> from tapeline.measures import size_wearer
    >>> from tapeline.pattern import Corrections
    >>> from tapeline.styles import STYLES
    >>> def tee(sloping):
    ...     d = Draft(size_wearer("92"), {}, corrections=Corrections(sloping_shoulders=sloping))
    ...     return STYLES["tee"].page(d, STYLES["tee"].choices(), surveyed=True)
    >>> both = uneven(tee(cm(0)), tee(cm(1)))
    >>> [(piece.title, piece.cut.quantity) for piece in both.pieces]
    [('Back', 1), ('Front', 1), ('Right sleeve', 1), ('Left sleeve', 1), ('Neckband', 1)]
    """
    differ = frozenset(piece.name for piece in right.pieces if piece != left.piece(piece.name))
    if not differ:
        return right
    sides = Sides(right, left, differ)
    for name in differ:
        _can_be_apart(right.piece(name), left.piece(name))
    pieces = tuple(made for piece in right.pieces for made in _pieces(sides, piece.name))
    return replace(
        right,
        pieces=pieces,
        seams=tuple(_seams(sides)),
        joins=tuple(_joins(sides)),
        girths=tuple(_girth(sides, girth) for girth in right.girths),
        sizes=sides.sizes,
        steps=told(sides, {f"{piece.name}.{edge.name}": edge.path for piece in pieces for edge in piece.edges}),
    )


def _can_be_apart(piece: Piece, other: Piece) -> None:
    paired = piece.cut.quantity % 2 == 0 and (piece.cut.mirrored or piece.name.startswith(ROUND_THE_ARM))
    if not (piece.on_fold or paired) or not drawn_side(piece.name) or _folds_apart(piece, other) > MOST_APART_MM:
        raise InputError(
            Problem(
                "sides-not-apart",
                Severity.ERROR,
                f"the {piece.title.lower()} would differ from side to side, and cannot be drafted left and right",
                where="garment.corrections",
                hint="correct both shoulders alike, or choose a style with a band. Nothing was drafted.",
            )
        )


def _folds_apart(one: Piece, other: Piece) -> float:
    """By how much one's fold is longer than the other's, mm."""
    folds = ([edge.length for edge in piece.edges if edge.fold] for piece in (one, other))
    return max((abs(a - b) for a, b in zip(*folds, strict=True)), default=0.0)


def _pieces(sides: Sides, name: str) -> Iterator[Piece]:
    if name not in sides.differ:
        yield sides.right.piece(name)
        return
    drawn, other = sides.drawn(name), sides.other(name)
    half = drawn.garment.piece(name)
    if half.on_fold:
        yield _whole(sides, half, drawn, other)
        return
    one, two = (
        replace(
            piece, name=side.piece(name), title=f"{side.name} {half.title.lower()}".capitalize(), cut=_once(half.cut)
        )
        for piece, side in ((half, drawn), (_turned(other.garment.piece(name), sides.over(name)), other))
    )
    for piece, side, move in ((one, drawn, Rigid()), (two, other, sides.over(name))):
        yield replace(piece, marks=(*piece.marks, *_levels(sides, side, name, move)))


def _once(cut: Cut) -> Cut:
    return Cut(cut.quantity // 2, cut.cloth)


def _whole(sides: Sides, half: Piece, drawn: SideOf, other: SideOf) -> Piece:
    """The drawn half, and the other draft's half turned over about the fold."""
    theirs = other.garment.piece(half.name)
    at = next(k for k, edge in enumerate(half.edges) if edge.fold)
    over = sides.over(half.name)
    turned = _turned(theirs, over)
    edges = (*half.edges[at + 1 :], *half.edges[:at])
    back = len(theirs.edges) - 1 - at
    images = [replace(e, name=other.edge(half.name, e.name)) for e in (*turned.edges[back + 1 :], *turned.edges[:back])]
    # The folds lie on the same line; where one hem had to be set a little deeper to fit its side, they meet in ours.
    images[0] = replace(images[0], path=pinned(images[0].path, edges[-1].path.end, images[0].path.end))
    images[-1] = replace(images[-1], path=pinned(images[-1].path, images[-1].path.start, edges[0].path.start))
    levels = (*_levels(sides, drawn, half.name, Rigid()), *_levels(sides, other, half.name, over))
    return replace(
        half,
        edges=(*edges, *images),
        notches=(
            *half.notches,
            *(replace(notch, edge=other.edge(half.name, notch.edge)) for notch in turned.notches),
        ),
        marks=(*half.marks, *(replace(m, name=f"{m.name}_{other.name}") for m in turned.marks), *levels),
        pointed=(*half.pointed, *(other.edge(half.name, name) for name in half.pointed)),
    )


def _levels(sides: Sides, side: SideOf, piece: str, move: Rigid) -> Iterator[Mark]:
    """Lines across one side at the levels of girths, by which the two sides are measured."""
    for mark in sides.levels(piece):
        yield Mark(f"{mark}_across_{side.name}", side.level(piece, mark, move))


def _turned(piece: Piece, over: Rigid) -> Piece:
    """A piece turned over: its edges run the other way, in the other order."""
    lengths = {edge.name: edge.length for edge in piece.edges}
    return replace(
        piece,
        edges=tuple(replace(edge, path=edge.path.moved(over).reversed()) for edge in reversed(piece.edges)),
        grain=piece.grain.moved(over),
        notches=tuple(replace(n, at_mm=lengths[n.edge] - n.at_mm) for n in piece.notches),
        marks=tuple(replace(mark, path=mark.path.moved(over)) for mark in piece.marks),
    )


def _seams(sides: Sides) -> Iterator[Seam]:
    of_left = {seam.name: seam for seam in sides.left.seams}
    for seam in sides.right.seams:
        if not any(ref.piece in sides.differ for ref in (*seam.a, *seam.b)):
            yield seam
            continue
        other = of_left[seam.name]
        a, b = sides.of_right.run(seam.a), sides.of_right.run(seam.b)
        if seam.a == seam.b and sides.right.piece(seam.a[0].piece).cut.quantity == 1:
            # An edge that stood for both sides, sewn to itself; not those of a piece that is cut twice.
            yield replace(seam, a=a, b=sides.of_left.run(other.b))
            continue
        yield replace(seam, a=a, b=b)
        yield replace(other, name=f"{seam.name}_left", a=sides.of_left.run(other.a), b=sides.of_left.run(other.b))


def _joins(sides: Sides) -> Iterator[Join]:
    for join in sides.right.joins:
        if not any(piece in sides.differ for piece, _, _ in join.corners):
            yield join
            continue
        yield replace(join, corners=sides.of_right.corners(join))
        yield replace(join, seam=f"{join.seam}_left", corners=sides.of_left.corners(join))


def _girth(sides: Sides, girth: Girth) -> Girth:
    """Once across each half where it was twice across one; of a pair, or of own sleeves, across the right one."""
    across: list[tuple[str, str, float]] = []
    for name, mark, times in girth.across:
        if name not in sides.differ:
            across.append((name, mark, times))
        elif times == 1 and sides.right.piece(name).on_fold:
            across.append((name, sides.of_right.edge(name, mark), times))
        elif times == 1:
            across.append((sides.of_right.piece(name), mark, times))
        elif mark in sides.levels(name):
            across += [
                (side.piece(name), f"{mark}_across_{side.name}", times / 2) for side in (sides.of_right, sides.of_left)
            ]
        else:
            across += [(name, side.edge(name, mark), times / 2) for side in (sides.of_right, sides.of_left)]
    if across == list(girth.across) or any(times == 1 for _, _, times in girth.across):
        return replace(girth, across=tuple(across))
    eases = girth.ease, sides.of_left.length(next(g for g in sides.left.girths if g.name == girth.name).ease)
    return replace(girth, ease=girth.ease if eases[0] == eases[1] else (eases[0] + eases[1]) / 2, across=tuple(across))

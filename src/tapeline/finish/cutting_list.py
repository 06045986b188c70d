"""The cutting list: what has to come out of which cloth, and how much room each piece takes."""

from __future__ import annotations

from collections.abc import Iterable
from functools import lru_cache

from tapeline.finish.finished import CuttingListRow, FinishedPiece
from tapeline.geometry import Point, Rigid
from tapeline.pattern import Piece

__all__ = ["cutting_list", "laid_size"]


def cutting_list(pieces: Iterable[FinishedPiece]) -> tuple[CuttingListRow, ...]:
    """One row for each piece; pieces of one cloth together, cloths in the order they first come up."""
    every = list(pieces)
    cloths = list(dict.fromkeys(finished.piece.cut.cloth for finished in every))
    return tuple(_row(finished) for finished in sorted(every, key=lambda f: cloths.index(f.piece.cut.cloth)))


def _row(finished: FinishedPiece) -> CuttingListRow:
    piece = finished.piece
    width, length = laid_size(finished)
    return CuttingListRow(
        piece=piece.name,
        title=piece.title,
        cloth=piece.cut.cloth,
        quantity=piece.cut.quantity,
        on_fold=piece.on_fold,
        mirrored=piece.cut.mirrored,
        width_mm=width,
        length_mm=length,
    )


@lru_cache(maxsize=32)
def laid_size(finished: FinishedPiece) -> tuple[float, float]:
    """Across and along the grain, mm, of the piece as cut; one on the fold is unfolded first."""
    piece = finished.piece
    points = finished.cut_line.flattened()
    points += _other_half(piece, points)
    grain = (piece.grain.end - piece.grain.start).unit
    across = [p.x * grain.y - p.y * grain.x for p in points]
    along = [p.x * grain.x + p.y * grain.y for p in points]
    return max(across) - min(across), max(along) - min(along)


def _other_half(piece: Piece, points: list[Point]) -> list[Point]:
    folds = [edge.path for edge in piece.edges if edge.fold]
    if not folds:
        return []
    fold = folds[0]
    way = fold.end - fold.start
    over = Rigid.laying(fold.start, way, fold.start, way, turned_over=True)
    return [over.point(p) for p in points]

"""The cutting list: what has to come out of which cloth, and how much room each piece takes."""

from __future__ import annotations

from collections.abc import Iterable
from functools import lru_cache

from tapeline.finish.finished import CuttingListRow, FinishedPiece
from tapeline.geometry import Rigid, extent

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
    piece, outline = finished.piece, finished.cut_line
    grain = piece.grain.end - piece.grain.start
    halves = [outline]
    for fold in (edge.path for edge in piece.edges if edge.fold):
        way = fold.end - fold.start
        halves.append(outline.moved(Rigid.laying(fold.start, way, fold.start, way, turned_over=True)))
        break
    return extent(halves, grain.right), extent(halves, grain)

"""The cutting list: what has to come out of which cloth, and how much room each piece takes."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass
from functools import lru_cache

from tapeline.finish.finished_piece import FinishedPiece
from tapeline.geometry import Rigid, extent

__all__ = ["CuttingListRow", "cutting_list", "laid_size"]


@dataclass(frozen=True, slots=True)
class CuttingListRow:
    """One line of the cutting list."""

    piece: str
    title: str
    cloth: str
    quantity: int
    on_fold: bool
    mirrored: bool
    width_mm: float
    """Across the grain, of the cut piece as laid out (a piece on the fold unfolded)."""
    length_mm: float
    """Along the grain."""


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
        halves.append(outline.moved(Rigid.over(fold.start, way)))
        break
    return extent(halves, grain.right), extent(halves, grain)

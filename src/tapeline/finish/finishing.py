"""From a drafted garment to pieces that can be cut."""

from __future__ import annotations

from functools import lru_cache

from tapeline.finish.choices import FinishChoices, allowances
from tapeline.finish.cut_line import cut_line
from tapeline.finish.finished import Finished
from tapeline.finish.finished_piece import FinishedPiece, Title
from tapeline.finish.notches import ticks
from tapeline.finish.words import words
from tapeline.pattern import Garment, Join, Piece
from tapeline.problems import InputError, Problem

__all__ = ["finish"]

MOST_KEPT = 32
"""Finished pieces that are remembered: a few garments."""


def finish(garment: Garment, choices: FinishChoices, title: Title) -> Finished:
    """Allowances, cut lines, notches, words and the cutting list of every piece.

    Raises `InputError` with all that is wrong with the choices (see `allowances`), or with every piece around which
    an allowance does not fit (`allowance-too-wide`).
    """
    widths = allowances(garment, choices)
    pieces: list[FinishedPiece] = []
    problems: list[Problem] = []
    for piece in garment.pieces:
        try:
            own = tuple(widths[piece.name].items())
            pieces.append(_finish_piece(piece, own, garment.joins, choices.notch_depth_mm, title))
        except InputError as error:
            problems += error.problems
    if problems:
        raise InputError(problems)
    return Finished(garment, title, tuple(pieces))


@lru_cache(maxsize=MOST_KEPT)
def _finish_piece(
    piece: Piece, own: tuple[tuple[str, float], ...], joins: tuple[Join, ...], notch_depth_mm: float, title: Title
) -> FinishedPiece:
    """One piece, from values alone: a piece that a change did not touch is not finished again."""
    widths = dict(own)
    outline = cut_line(piece, widths, joins)
    return FinishedPiece(
        piece=piece,
        cut_line=outline,
        allowances=tuple((edge.name, widths[edge.name]) for edge in piece.edges),
        ticks=ticks(piece, outline, widths, notch_depth_mm),
        words=words(piece, title),
    )

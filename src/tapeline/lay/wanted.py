"""What cannot be laid is said before anything is: no piece, no quantity, a cloth narrower than a piece."""

from __future__ import annotations

import math
from collections.abc import Iterator, Sequence

from tapeline.geometry import Rigid, bounds, placed, unsound
from tapeline.lay.cloth import LayCloth
from tapeline.lay.need import allowed_turns
from tapeline.lay.piece import LayPiece
from tapeline.problems import Problem, Severity

__all__ = ["cannot_be_laid"]

SLACK_MM = 0.01
"""A piece as wide as the cloth fits; so much is rounding."""
SAMPLES = 90
"""Of a quarter turn, for a piece that may be turned any way."""


def cannot_be_laid(pieces: Sequence[LayPiece], cloth: LayCloth) -> Iterator[Problem]:
    """Every reason why there is no plan.

    >>> from tapeline.geometry import Point
    >>> wide = LayPiece("back", "marit", (Point(0, 0), Point(700, 0), Point(700, 600), Point(0, 600)))
    >>> [problem.says for problem in cannot_be_laid([wide], LayCloth(width_mm=500))]
    ['marit/back is 600.0 mm wide; the cloth shell has 500.0 mm to lay it on, laid open']
    """
    wrong = list(cloth.problems())
    yield from wrong
    if not pieces:
        says = f"no piece is cut from the cloth {cloth.name}"
        yield Problem("lay-empty", Severity.ERROR, says, f"cloth {cloth.name}", "Nothing was laid")
    for piece in pieces:
        yield from _of_piece(piece)
        if (
            not wrong
            and not unsound(piece.outline)
            and (width := _least_width(piece, cloth)) > cloth.strip_mm + SLACK_MM
        ):
            yield Problem(
                "lay-too-narrow",
                Severity.ERROR,
                f"{piece.key} is {width:.1f} mm wide; the cloth {cloth.name} has {cloth.strip_mm:.1f} mm to lay it on, "
                f"laid {cloth.spread}",
                f"cloth {cloth.name}",
                "a wider cloth, less selvedge, or cloth laid open. Nothing was laid",
            )


def _of_piece(piece: LayPiece) -> Iterator[Problem]:
    if wrong := unsound(piece.outline):
        says = f"the outline of {piece.key} cannot be laid: {wrong}"
        yield Problem("lay-outline", Severity.ERROR, says, piece.key, "Nothing was laid")
    counts = (piece.upright, piece.turned_over, piece.garments)
    if min(counts) < 0 or piece.upright + piece.turned_over < 1 or piece.garments < 1:
        says = f"{piece.key} is wanted {piece.upright + piece.turned_over} times, for {piece.garments} garments"
        yield Problem("lay-zero", Severity.ERROR, says, piece.key, "a lay has at least one of every piece")


def _least_width(piece: LayPiece, cloth: LayCloth) -> float:
    turns = allowed_turns(piece, cloth) or tuple(math.pi / 2 * n / SAMPLES for n in range(SAMPLES + 1))
    if cloth.tilt and not piece.on_fold:
        turns = tuple(turn + lean for turn in turns for lean in (0.0, cloth.tilt, -cloth.tilt))
    heights = [bounds(placed(piece.outline, Rigid.turn(turn))) for turn in turns]
    return min(box[3] - box[1] for box in heights)

"""How many of each piece have to be laid, and which way: two layers cut pairs, halves of pieces only lie on a fold."""

from __future__ import annotations

import math

from tapeline.lay.cloth import Direction, LayCloth, Spread
from tapeline.lay.piece import LayPiece

__all__ = ["allowed_turns", "need"]


def need(piece: LayPiece, cloth: LayCloth) -> dict[bool, int]:
    """How many placements all its garments take, as drawn (False) and turned over (True).

    On two layers every placement cuts one as drawn and one turned over; a half on the fold is cut once, whole.

    >>> sleeve = LayPiece("sleeve", "marit", (), upright=1, turned_over=1, garments=3)
    >>> need(sleeve, LayCloth()), need(sleeve, LayCloth(spread=Spread.FOLDED))
    ({False: 3, True: 3}, {False: 3, True: 0})
    """
    upright, over = piece.upright * piece.garments, piece.turned_over * piece.garments
    if cloth.spread is Spread.OPEN:
        return {False: upright, True: over}
    if piece.on_fold:
        return {False: upright + over, True: 0}
    if piece.alike_over:
        return {False: math.ceil((upright + over) / 2), True: 0}
    return {False: max(upright, over), True: 0}


def allowed_turns(piece: LayPiece, cloth: LayCloth) -> tuple[float, ...]:
    """Which turns a piece may have on a cloth, in radians, but for the tilt; empty when it may have any.

    >>> allowed_turns(LayPiece("front", "marit", ()), LayCloth(direction=Direction.ONE_WAY))
    (0.0,)
    """
    if piece.free:
        return ()
    return (0.0,) if cloth.direction is Direction.ONE_WAY else (0.0, math.pi)

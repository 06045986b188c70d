"""The room that a piece takes: its outline with half the gap and a hair round it, made ready to be pushed about."""

from __future__ import annotations

import math
from functools import lru_cache

from tapeline.geometry import Outline, Point, Rigid, Solid, Vector, bounds, grown, placed, swept
from tapeline.lay.cloth import LayCloth
from tapeline.lay.piece import LayPiece

__all__ = [
    "CHORD_MM",
    "FINE_MM",
    "HAIR_MM",
    "ROUGH_MM",
    "Stance",
    "margin",
    "outline_box",
    "repeats",
    "room",
    "room_to_match",
    "solid",
    "stripe_shift",
]

HAIR_MM = 0.02
"""Kept round every outline besides the gap, so that rounding and the engine's own slack never make two overlap."""
CHORD_MM = 0.1
"""The engine sees outlines with fewer corners, nowhere further out than this: it is the quicker for it."""
FINE_MM = 0.05
"""The same, where a plan is pushed together in the end."""
ROUGH_MM = 1.0
"""The same, for the first plan, which has to be there at once."""


Stance = tuple[bool, float]
"""Whether a piece is turned over, and by how much it is turned to the left, in radians."""


def margin(cloth: LayCloth) -> float:
    """Half the gap, and the hair."""
    return cloth.gap_mm / 2 + HAIR_MM


@lru_cache(maxsize=512)
def room(piece: LayPiece, margin_mm: float, stance: Stance, chord: float = 0.0) -> Outline:
    """Grown, turned over and turned about the piece's origin."""
    over, turn = stance
    move = (Rigid(d=-1.0) if over else Rigid()).then(Rigid.turn(turn))
    return placed(_grown(piece.outline, margin_mm, chord), move)


@lru_cache(maxsize=512)
def _grown(outline: Outline, margin_mm: float, chord: float) -> Outline:
    return grown(outline, margin_mm, chord=chord)


@lru_cache(maxsize=512)
def solid(piece: LayPiece, margin_mm: float, stance: Stance, chord: float) -> Solid:
    """The room, made ready to be pushed."""
    return Solid(room(piece, margin_mm, stance, chord))


@lru_cache(maxsize=512)
def outline_box(piece: LayPiece, stance: Stance) -> tuple[float, float, float, float]:
    """How far the outline itself reaches from the piece's origin, turned so."""
    return bounds(room(piece, 0.0, stance))


def repeats(piece: LayPiece, cloth: LayCloth) -> Vector:
    """Along and across, after how much the cloth looks the same to this piece; 0 where it need not match."""
    return Vector(cloth.repeat_along_mm, cloth.repeat_across_mm) if piece.match is not None else Vector(0, 0)


def room_to_match(piece: LayPiece, cloth: LayCloth, over: bool) -> Outline:  # noqa: FBT001 - a stance's first half
    """The room for the engine, swept over one repeat along and across: somewhere in it the piece is on its stripe."""
    outline = room(piece, margin(cloth), (over, 0.0), CHORD_MM)
    by = repeats(piece, cloth)
    for way in (Vector(by.x, 0), Vector(0, by.y)):
        if way.x or way.y:
            outline = swept(outline, way)
    return outline


def stripe_shift(piece: LayPiece, cloth: LayCloth, at: Point, back: Vector) -> Vector:
    """How far a piece has to be shifted to lie on its stripes, at most one repeat.

    Args:
        piece: Matched or not.
        cloth: With its repeats and its dominant lines.
        at: Where the place that has to match lies now.
        back: 1 or -1 along and across: to which side it may be shifted.
    """
    by = repeats(piece, cloth)
    x = _shift(cloth.line_along_mm - at.x, by.x, back.x)
    return Vector(x, _shift(cloth.line_across_mm - at.y, by.y, back.y))


def _shift(lack: float, repeat: float, side: float) -> float:
    if not repeat:
        return 0.0
    away = (lack * side) % repeat
    # What lies a hair beside a line lies on it: rounding must not send it a repeat further.
    return side * (0.0 if min(away, repeat - away) < 1e-7 else away) if side else math.remainder(lack, repeat)

r"""Halves on the fold, for an engine that can hold nothing in place: all of them in a row, as the teeth of one comb.

::

      |  __     __        A back as thin as a hair runs along the fold, and at its left end a bar as high as the strip:
      | |  \   |  |       the engine cannot lay it anywhere but with its back on the fold.
      |_|___\__|__|_

On a tube there are two folds: every second tooth hangs from the upper one.
"""

from __future__ import annotations

import math
import random
from collections.abc import Sequence
from dataclasses import dataclass, replace

from tapeline.geometry import Outline, Point, Rigid, Solid, Vector, ground, placed, push_left, swept, united
from tapeline.lay.cloth import Direction, LayCloth, Spread
from tapeline.lay.drop import Copy
from tapeline.lay.plan import Placement
from tapeline.lay.rooms import (
    CHORD_MM,
    FINE_MM,
    HAIR_MM,
    Stance,
    margin,
    outline_box,
    repeats,
    room,
    solid,
    stripe_shift,
)

__all__ = ["Comb", "combs"]

THIN_MM = HAIR_MM
"""The bar, and how far the back reaches into the strip."""


@dataclass(frozen=True, slots=True)
class Comb:
    """One outline for the engine, and the halves that it stands for, in the same axes."""

    outline: Outline
    teeth: tuple[Placement, ...]


def combs(
    halves: Sequence[Copy], cloth: LayCloth, chance: random.Random, facing: dict[tuple[str, int], float]
) -> list[Comb]:
    """The halves in a row along the fold of the cloth, or along both folds of a tube; none where there are no halves.

    Args:
        halves: Copies of pieces on the fold.
        cloth: Folded or tubular.
        chance: Sets the order, and which way each faces where either is allowed.
        facing: The turn of each garment, where all its pieces face one way.
    """
    if not halves:
        return []
    order = list(halves)
    chance.shuffle(order)
    tube = cloth.spread is Spread.TUBULAR
    rows = [(copy, tube and n % 2 == 1) for n, copy in enumerate(order)]
    return [_comb([(copy, _stance(copy, cloth, chance, facing, upper), upper) for copy, upper in rows], cloth)]


def _stance(
    copy: Copy,
    cloth: LayCloth,
    chance: random.Random,
    facing: dict[tuple[str, int], float],
    upper: bool,  # noqa: FBT001 - of this file only
) -> Stance:
    """A half on the lower fold faces back when it is turned over and right round; on the upper fold the other way."""
    back = cloth.direction is Direction.TWO_WAY and chance.random() < 0.5
    if cloth.direction is Direction.BY_GARMENT:
        back = facing.get((copy.piece.garment, copy.garment), 0.0) > 0
    return (back != upper, math.pi if back else 0.0)


def _comb(row: Sequence[tuple[Copy, Stance, bool]], cloth: LayCloth) -> Comb:
    wide = margin(cloth)
    teeth: list[Placement] = []
    solids: list[Solid] = []
    shapes: list[Outline] = []
    for copy, stance, upper in row:
        piece = copy.piece
        level = cloth.strip_mm if upper else 0.0
        body = solid(piece, wide, stance, FINE_MM)
        far = max((one.box[2] for one in solids), default=0.0) + 1.0 - body.box[0]
        moving = body.shifted(far, level)
        edge = far + outline_box(piece, stance)[0]
        way = min((edge, *(push_left(moving, one) for one in solids)))
        at = Placement(piece.key, copy.garment, far - way, level, stance[1], stance[0])
        if piece.match is not None and cloth.repeat_along_mm:
            shift = stripe_shift(piece, cloth, at.move.point(piece.match), Vector(1, 0)).x
            at = replace(at, x=at.x + shift)
        teeth.append(at)
        # Swept over its stripe; the comb is shifted as one, so the teeth need not keep clear of each other's sweep.
        tooth = placed(room(piece, wide, stance, CHORD_MM), Rigid.shift(Vector(at.x, level)))
        if by := repeats(piece, cloth).x:
            tooth = swept(tooth, Vector(by, 0))
        solids.append(body.shifted(at.x, level))
        shapes.append(_cut_off(tooth, level, upper))
    left = min(p.x for shape in shapes for p in shape)
    right = max(p.x for shape in shapes for p in shape)
    low, high = -wide, cloth.strip_mm + wide
    frame = [_box(left - THIN_MM, low, left + THIN_MM, high), _box(left - THIN_MM, low, right, THIN_MM)]
    if any(upper for _, _, upper in row):
        frame.append(_box(left - THIN_MM, high - wide - THIN_MM, right, high))
    return Comb(max(united([*shapes, *frame]), key=ground), tuple(teeth))


def _cut_off(tooth: Outline, level: float, upper: bool) -> Outline:  # noqa: FBT001 - of this file only
    """Without what lies beyond the fold: that is cloth of the other layer."""
    kept = [Point(p.x, min(p.y, level) if upper else max(p.y, level)) for p in tooth]
    once = [p for n, p in enumerate(kept) if p != kept[n - 1]]
    return united([tuple(once)])[0]


def _box(left: float, low: float, right: float, high: float) -> Outline:
    return Point(left, low), Point(right, low), Point(right, high), Point(left, high)

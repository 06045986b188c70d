"""A half made looser with scissors, as the classroom does: cut, and paper put in."""

from __future__ import annotations

import math

from tapeline.alter.cut_line import CutLine, level, upright
from tapeline.alter.lengthen import lengthen
from tapeline.alter.spread import Spread, spread
from tapeline.alter.story import edge_named, latest, piece_named
from tapeline.lengths import Length, cm
from tapeline.pattern import Garment, StepKind

__all__ = ["fold_line", "loosened", "lowering_line", "outer_cut", "shoulder_cut"]

BELOW_THE_POINT = cm(1)
"""Paper goes in this far below the armhole point: a cut through a knot of the line would move the knot half way."""
BELOW_THE_UNDERARM = cm(0.5)
"""As much is folded away from here down: the underarm itself has gone along."""
OUT_FROM_THE_NECK = cm(3)
"""Where the shoulder is cut: clear of the neckline, inside every shoulder that can be drafted."""
NOTHING = Length(0.0)


def loosened(
    garment: Garment, half: str, *, side: Length = NOTHING, drop: Length = NOTHING, shoulder: Length = NOTHING
) -> Garment:
    """A half of a block is cut and spread, so that it comes out as the rule of looseness extends it.

    The armhole is lowered by putting paper in above the chest line and folding as much away below it: waist and hip
    stay. Then the half is cut from shoulder to hem, and what is beyond goes out along the shoulder seam; and cut from
    armhole to hem, and the side goes out by the rest, and up by what the shoulder went down.

    Neckline, shoulder's slope and every name, seam and notch are kept; underarm, shoulder tip and side at the hip lie
    where the rule puts them. Sleeve and other half are not changed.

    Args:
        garment: What is altered; its half has the points of the block.
        half: `back` or `front`.
        side: Out at the side seam.
        drop: Down at the armhole.
        shoulder: Out at the shoulder, along its seam.

    Raises `InputError`: as `lengthen` and `spread`, where a line does not cross the half as it must.

    >>> from tapeline.draft import Draft
    >>> from tapeline.measures import size_wearer
    >>> from tapeline.styles import STYLES
    >>> block = STYLES["block"].page(Draft(size_wearer("92"), {}), STYLES["block"].choices(), surveyed=True)
    >>> looser = loosened(block, "back", side=cm(2), drop=cm(2), shoulder=cm(1))
    >>> moved = latest(looser, "back.underarm").point - latest(block, "back.underarm").point
    >>> round(moved.x, 6), round(moved.y, 6)
    (20.0, -20.0)
    """
    whole = piece_named(garment, half)
    if drop.mm:
        garment = lengthen(garment, half, lowering_line(garment, half), drop)
        garment = lengthen(garment, half, fold_line(garment, half), drop * -1)
    seam = edge_named(whole, "shoulder").path.leaves
    angle = math.atan2(-seam.y, seam.x)
    out, fall = shoulder * math.cos(angle), shoulder * math.sin(angle)
    cuts = [
        Spread(shoulder_cut(garment, half), out, slide=fall),
        Spread(outer_cut(garment, half), side - out, slide=fall * -1),
    ]
    return spread(garment, half, [one for one in cuts if one.by.mm or one.slide.mm])


def lowering_line(garment: Garment, half: str) -> CutLine:
    """Where paper is put in to lower the armhole."""
    return level(garment, f"{half}.{half}_armhole_point", down=BELOW_THE_POINT)


def fold_line(garment: Garment, half: str) -> CutLine:
    """Where as much is folded away."""
    return level(garment, f"{half}.underarm", down=BELOW_THE_UNDERARM)


def shoulder_cut(garment: Garment, half: str) -> CutLine:
    """From the shoulder to the hem."""
    label = latest(garment, f"{half}.{half}_neck_point", StepKind.POINT).label
    return upright(garment, label, out=OUT_FROM_THE_NECK)


def outer_cut(garment: Garment, half: str) -> CutLine:
    """From the armhole to the hem."""
    return upright(garment, f"{half}.{half}_armhole_hollow")

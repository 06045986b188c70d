"""The armhole of a top without sleeves: the shoulder ends inside the shoulder point, and the armhole is cut in.

What is narrower, and how high the underarm is, are meant of the finished top: a band inside the armhole is wider than
the cut piece by its width, so the piece is cut back by as much.
Rules: common practice in the trade, no published source.
"""

from __future__ import annotations

from dataclasses import dataclass, replace
from fractions import Fraction

from tapeline.blocks.dartless import Half
from tapeline.blocks.outline import armhole
from tapeline.draft import Draft, Drawn, Place, Sheet, halfway
from tapeline.lengths import Length, cm

__all__ = ["HIGHEST", "SleevelessLines", "sleeveless_lines"]

CUT_IN = Fraction(5, 6)
"""The armhole's point goes in by this share of what the shoulder is narrower: straps widen a little downward."""
LEAST_STRAP = cm(2)
"""From the neckline to the armhole, along the shoulder: less is a cord and no shoulder."""
HIGHEST = cm(2)
"""Higher than the block by more, and the edge cuts into the armpit: the block lies about so much below it."""


@dataclass(frozen=True, slots=True)
class SleevelessLines:
    """Shoulder and armhole of one half, and where the armhole is notched."""

    shoulder: Drawn
    armhole: Drawn
    notch: Place


def sleeveless_lines(
    d: Draft, sheet: Sheet, half: Half, neckline_end: Place, side: Drawn, *, narrower: Length, band: Length
) -> SleevelessLines:
    """The strap's end on the shoulder, the armhole's points moved in with it, the armhole square to both seams."""
    name = sheet.name
    whole = d.measured(
        f"{name}_shoulder_to_point", "The shoulder to the shoulder point", half.shoulder_tip.reading_from(neckline_end)
    )
    cut_back = d.measured("strap_cut_back", "Narrower as chosen, and by the band inside the armhole", narrower + band)
    d.require(
        "strap-too-narrow",
        whole - cut_back,
        LEAST_STRAP,
        says="neckline and armhole leave too little shoulder between them",
        where=name,
        hint="make the shoulder less narrow with garment.shoulder_narrower, widen the neckline less, "
        "or take narrower bands",
    )
    tip = sheet.point(
        "strap_end", "In from the shoulder point, along the shoulder", half.shoulder_tip.toward(neckline_end, cut_back)
    )
    sheet.straight("given_up", "What the shoulder gives up", half.shoulder_tip, tip)
    shoulder = sheet.straight("shoulder", "Sewn to the other shoulder, which is as long", neckline_end, tip)
    point = sheet.point(
        "armhole_point",
        "In by five sixths of what the shoulder gives up: the strap widens a little downward",
        half.armhole_point.inward(cut_back * CUT_IN),
    )
    corner = sheet.point("armhole_corner", "Straight below it, on the chest line", point.level_with(half.underarm))
    middle = sheet.point("armhole_middle", "Middle of the straight line to the underarm", halfway(point, half.underarm))
    hollow = sheet.point("armhole_hollow", "How far the armhole bends into the corner", halfway(corner, middle))
    moved = replace(half, shoulder_tip=tip, armhole_point=point, armhole_hollow=hollow)
    return SleevelessLines(shoulder, armhole(sheet, moved, shoulder, side), point)

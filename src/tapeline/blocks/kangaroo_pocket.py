"""The kangaroo pocket: one across the front, into which both hands go at slanted openings.

Shares: common practice in the trade, no published source.
"""

from __future__ import annotations

from fractions import Fraction

from tapeline.blocks.pocket_choices import PocketChoices
from tapeline.blocks.pocket_place import OPENING_HEM, UNDER, OnFront, Pocket, above_hem, on_front, room_above
from tapeline.draft import Draft, Place, Sheet, folded, hemmed, laid
from tapeline.lengths import Length, at_most, cm
from tapeline.pattern import Cut

__all__ = ["kangaroo"]

MOST_OF_HEM = Fraction(3, 4)
"""It is no wider than this share of the hem."""
GRAIN = cm(4)


def kangaroo(d: Draft, c: PocketChoices, on: OnFront, hand: Length) -> Pocket:
    """Half a pocket, on the fold at the centre front; the hands go in at the slanted sides."""
    hem = d.measured("front_hem_width", "Straight across the half front, at the hem", on.hem.reading_across())
    wide = d.measured(
        "pocket_half_width",
        "From the centre to the side of the pocket: nine tenths of a hand, and not past three quarters of the hem",
        at_most(hand * Fraction(9, 10) + c.roomier / 2, hem * MOST_OF_HEM),
    )
    narrow = d.measured("pocket_half_top", "The same along its upper edge: three fifths", wide * Fraction(3, 5))
    depth = d.measured("pocket_depth", "A hand and a tenth of one", hand * Fraction(11, 10) + c.roomier)
    below = d.measured("pocket_side", "Its upright side, below the opening: a quarter of the depth", depth / 4)
    front = d.sheet("front")
    front.section("The pocket's place")
    foot = front.point(
        "pocket_foot", "The middle of the pocket's lower edge", above_hem(front, c, on, (cm(0), wide), on.hem_centre)
    )
    room_above(d, on, foot, depth)

    def corners(s: Sheet, at: Place) -> tuple[Place, ...]:
        side = s.point("pocket_side_foot", "The lower corner", at.out(wide))
        low = s.point("pocket_opening_foot", "The opening's lower end: stitched to and fro", side.up(below))
        top = s.point("pocket_top", "The middle of the upper edge", at.up(depth))
        high = s.point(
            "pocket_opening_top",
            "The opening's upper end: it is pulled here, so that a scrap of cloth goes behind the front",
            top.out(narrow),
        )
        return top, high, low, side, at

    mark = on_front(front, corners(front, foot))
    s = d.sheet("pocket")
    s.section("The kangaroo pocket")
    top, high, low, side, foot = corners(s, s.point("pocket_foot", "The middle of its lower edge", s.origin))
    piece = s.piece(
        "Kangaroo pocket",
        folded("centre", s.straight("centre", "On the fold of the cloth", foot, top)),
        laid("top", s.straight("top", UNDER, top, high)),
        hemmed("opening", s.straight("opening", "Where the hand goes in", high, low), OPENING_HEM),
        laid("side", s.straight("side", UNDER, low, side)),
        laid("bottom", s.straight("bottom", UNDER, side, foot)),
        grain=(foot.out(GRAIN).up(GRAIN), foot.out(GRAIN).up(GRAIN * 2)),
        cut=Cut(1),
    )
    return Pocket(piece, mark)

"""Patch pockets: one on the breast, or two above the hem.

Shares: common practice in the trade, no published source.
"""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction

from tapeline.blocks.pocket_choices import PocketChoices
from tapeline.blocks.pocket_place import OPENING_HEM, UNDER, OnFront, Pocket, above_hem, on_front, room_above
from tapeline.draft import Draft, Place, Sheet, hemmed, laid
from tapeline.lengths import Length, cm
from tapeline.pattern import Cut

__all__ = ["breast", "hips"]

FROM_ARMHOLE = cm(1)
"""A breast pocket keeps so far off the armhole, or its seam allowance and the pocket lie on each other."""
ABOVE_HEM = cm(2)
"""A breast pocket's point keeps so far off the hem of a cropped top: a hem is turned up below it."""
BESIDE = cm(2)
"""Left of the front beside a hip pocket, both sides together."""


@dataclass(frozen=True, slots=True)
class Patch:
    """Sizes of a patch: whole width, depth at the sides, and how much deeper in the middle."""

    width: Length
    depth: Length
    point: Length


def breast(d: Draft, c: PocketChoices, on: OnFront, hand: Length) -> Pocket:
    """One patch with a shallow point, on the wearer's left."""
    width = d.measured("pocket_width", "Three fifths of a hand", hand * Fraction(3, 5) + c.roomier)
    size = Patch(
        width,
        d.measured("pocket_depth", "As deep at the sides as it is wide", width + cm(0)),
        d.measured("pocket_point", "Deeper in the middle by an eighth of that", width / 8),
    )
    middle = d.measured(
        "pocket_middle",
        "From the centre to the pocket's middle: three fifths of the way to the armhole",
        on.half_chest * Fraction(3, 5),
    )
    front = d.sheet("front")
    front.section("The pocket's place")
    mouth = front.point(
        "pocket_mouth",
        "The middle of its mouth, on the wearer's left only",
        on.chest_level.up(c.above_chest).out(middle),
    )
    if c.above_chest.mm > 0:
        clear = front.point("pocket_armhole", "The armhole at the level of the mouth", on.armhole.crossing_level(mouth))
        d.require(
            "pocket-over-armhole",
            d.measured("pocket_room", "From the pocket's middle to the armhole", clear.reading_from(mouth)),
            width / 2 + FROM_ARMHOLE,
            says="the breast pocket would lie under the arm",
            where="garment.pocket.roomier",
            hint="make garment.pocket.roomier or garment.pocket.above_chest smaller",
        )
    at = front.point("pocket_point", "Straight below it, by its depth", mouth.down(size.depth + size.point))
    d.require(
        "pocket-past-hem",
        at.reading_down_to(on.hem.crossing_plumb(at)).length.named("pocket_above_the_hem"),
        ABOVE_HEM,
        says="the breast pocket would reach down into the hem",
        where="garment.length",
        hint="make garment.length longer, or garment.pocket.roomier smaller, or raise the pocket with "
        "garment.pocket.above_chest",
    )
    return patch(d, "Breast pocket", front, at, size, count=1)


def hips(d: Draft, c: PocketChoices, on: OnFront, hand: Length) -> Pocket:
    """Two square patches above the hem."""
    width = d.measured("pocket_width", "Three quarters of a hand", hand * Fraction(3, 4) + c.roomier)
    depth = d.measured("pocket_depth", "Deeper than it is wide by an eighth", width * Fraction(9, 8))
    size = Patch(width, depth, cm(0))
    hem = d.measured("front_hem_width", "Straight across the half front, at the hem", on.hem.reading_across())
    middle = d.measured("pocket_middle", "From the centre to the pocket's middle: half way", hem / 2)
    front = d.sheet("front")
    front.section("The pocket's place")
    start = front.point(
        "pocket_upright", "On the hem's level at the centre, below the middle", on.hem_centre.out(middle)
    )
    d.require(
        "pocket-too-wide",
        hem,
        width + BESIDE,
        says="the pockets leave less than a centimetre at either side of them",
        where="garment.pocket.roomier",
        hint="make garment.pocket.roomier smaller",
    )
    low = above_hem(front, c, on, (middle - width / 2, middle + width / 2), start)
    foot = front.point("pocket_foot", "The middle of its lower edge", low)
    room_above(d, on, foot, depth)
    return patch(d, "Hip pocket", front, foot, size, count=2)


def patch(d: Draft, title: str, front: Sheet, at: Place, size: Patch, *, count: int) -> Pocket:
    """A patch whose middle stands on a place of the front."""

    def corners(s: Sheet, foot: Place) -> tuple[Place, ...]:
        half = size.width / 2
        left = s.point("pocket_low_in", "Its lower corner, nearer to the centre", foot.inward(half).up(size.point))
        right = s.point("pocket_low_out", "Its other lower corner", foot.out(half).up(size.point))
        high = s.point(
            "pocket_high_in", "Its upper corner: it is pulled here, and stitched to and fro", left.up(size.depth)
        )
        return left, high, s.point("pocket_high_out", "The other, stitched as well", right.up(size.depth)), right, foot

    places = corners(front, at)
    mark = on_front(front, (*places, places[0]))
    s = d.sheet("pocket")
    s.section(f"The {title.lower()}")
    foot = s.point("pocket_foot", "The middle of its lower edge", s.origin)
    left, high, other, right, _ = corners(s, foot)
    grain = left.out(size.width / 8).up(size.depth / 5)
    piece = s.piece(
        title,
        laid("side_in", s.straight("side_in", UNDER, left, high)),
        hemmed("mouth", s.straight("mouth", "Where the hand goes in", high, other), OPENING_HEM),
        laid("side_out", s.straight("side_out", UNDER, other, right)),
        laid("bottom_out", s.straight("bottom_out", UNDER, right, foot)),
        laid("bottom_in", s.straight("bottom_in", UNDER, foot, left)),
        grain=(grain, grain.up(size.depth * Fraction(3, 5))),
        cut=Cut(count),
    )
    return Pocket(piece, mark)

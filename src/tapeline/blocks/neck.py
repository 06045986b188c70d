"""The neck: its points, the shoulder lines that set out from them, and the neckline drawn over the sewn shoulder.

Rules of proportion: common practice in the trade, no published source.
"""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction

from tapeline.blocks.neck_shapes import STRAIGHT, NeckLine, NeckShape
from tapeline.draft import (
    Draft,
    Drawn,
    Heading,
    Place,
    Ray,
    Sheet,
    WornHalf,
    halfway,
    over_seam,
    part_way,
    worn_line,
    worn_line_from_point,
)
from tapeline.lengths import Length, cm

__all__ = [
    "SHOULDER_RUN",
    "Neck",
    "Neckline",
    "boat_neckline",
    "deeper",
    "neck",
    "neckline",
    "pointed_neckline",
    "shaped_neckline",
    "square_neckline",
]

SHOULDER_RUN = cm(14)
"""The shoulder's fall is told over this run."""
RISE = 3
"""The back neck rises by the neck width over this."""
DEPTH = cm(1)
"""The front neck is this much deeper than the neck is wide."""
V_SHARE = Fraction(3, 4)
V_OUT = 24
"""A v bends from this share of its straight line, which lies out there by its length over this; our own choice."""
GUIDE_SHARE = Fraction(2, 3)
GUIDE_BEYOND = cm(0.3)
"""The front neckline passes this share of the way down the diagonal, and this much further."""
SLANTS_IN = cm(0.5)
"""The sides of a square neck come in by this much: upright they look as if they ran apart."""
CORNER_MEANT = "a boat neck runs nearly straight from shoulder to shoulder; drawn smooth over the seam it would wave"


@dataclass(frozen=True, slots=True)
class Neck:
    """Where the neckline may begin and end, and the two shoulder lines."""

    back: Sheet
    front: Sheet
    nape: Place
    back_neck_point: Place
    back_shoulder_line: Ray
    front_level: Place
    front_neck: Place
    front_neck_point: Place
    front_shoulder_line: Ray


@dataclass(frozen=True, slots=True)
class Neckline:
    """The two halves of one line, each from the centre to the shoulder."""

    back: Drawn
    front: Drawn
    pointed: bool = False
    """Whether the front meets the centre in a point."""
    shape: NeckLine = NeckLine.SWEEP
    corner: Place | None = None
    """Of a square neck."""
    body: tuple[Drawn, Drawn] | None = None
    """What front and back have of it, where the rest goes with a raglan sleeve."""
    tops: tuple[Place, Place] | None = None
    """Of a funnel: where its upper edge meets the shoulder seam, back and front."""
    centres: tuple[Place, Place] | None = None
    """Of a funnel: where its upper edge meets the centre, back and front."""

    @property
    def bends(self) -> str:
        """Why it has a corner at the shoulder; empty where it runs on over the seam."""
        return CORNER_MEANT if self.shape is NeckLine.BOAT else ""


def neck(d: Draft, neck_width: Length, back_fall: Length, front_fall: Length) -> Neck:
    """Points of the neck on both sheets; the nape is the origin of both, so that all levels are the same."""
    back, front = d.sheet("back"), d.sheet("front")

    back.section("The neck")
    nape = back.point("nape", "The bone at the back of the neck: every level is measured down from it", back.origin)
    back_neck_point = back.point(
        "back_neck_point",
        "Where the shoulder meets the neck: out by the neck width, up by a third of it",
        nape.out(neck_width).up(neck_width / RISE),
    )
    back_shoulder_line = back.ray(
        "shoulder_line", "The slope of the shoulder", back_neck_point, back_fall, SHOULDER_RUN
    )

    front.section("The neck")
    level = front.point("nape_level", "The level of the nape, on the centre front", front.origin)
    front_neck_point = front.point(
        "front_neck_point",
        "Level with the back's, so that the shoulders meet",
        level.out(neck_width).up(neck_width / RISE),
    )
    front_neck = front.point(
        "front_neck",
        "The pit of the neck: below the neck points by as much as the neck is wide, and 1 more",
        level.up(neck_width / RISE).down(neck_width + DEPTH),
    )
    front_shoulder_line = front.ray(
        "shoulder_line",
        "The front shoulder falls a little more: the seam lies forward of the ridge",
        front_neck_point,
        front_fall,
        SHOULDER_RUN,
    )
    return Neck(
        back,
        front,
        nape,
        back_neck_point,
        back_shoulder_line,
        level,
        front_neck,
        front_neck_point,
        front_shoulder_line,
    )


def deeper(n: Neck, neck_width: Length, depth: float | Fraction) -> Place:
    """The pit of the neck, or further down: where a front would end that is so much deeper than the neck's own."""
    whole = neck_width + DEPTH
    if depth == 1:
        return n.front_neck
    return n.front_neck.down(whole * (depth - 1)) if depth > 1 else n.front_neck.up(whole * (1 - depth))


def shaped_neckline(n: Neck, shape: NeckShape, ends: tuple[Place, Place, Place, Place]) -> Neckline:
    """The line that a shape asks for; its ends are those at the centre and shoulder of the back, then of the front."""
    if shape.line is NeckLine.BOAT:
        return boat_neckline(n, *ends)
    if shape.line is NeckLine.SQUARE:
        return square_neckline(n, *ends)
    if shape.fullness == STRAIGHT:
        return pointed_neckline(n, *ends)
    return neckline(n, *ends, fullness=shape.fullness)


def neckline(
    n: Neck,
    back_centre: Place,
    back_end: Place,
    front_centre: Place,
    front_end: Place,
    *,
    fullness: float | Fraction = GUIDE_SHARE,
) -> Neckline:
    """One fair line over the sewn shoulder, square to both centres.

    It passes the point two thirds (or as `fullness` says) down the diagonal of the front neck's rectangle, and a little
    further. Drawn apart
    and square to the shoulder, both halves would get a wave.
    """
    n.front.section("The neckline")
    inner = n.front.point(
        "neckline_inner_corner", "Inner top corner of the front neck's rectangle", front_centre.level_with(front_end)
    )
    outer = n.front.point(
        "neckline_outer_corner", "Outer lower corner of the front neck's rectangle", front_end.level_with(front_centre)
    )
    guide = n.front.point(
        "neckline_guide",
        "Keeps the front neckline round: on the diagonal, two thirds down and a little further"
        if fullness == GUIDE_SHARE
        else "Makes the front neckline as full as its shape is meant: on the diagonal",
        part_way(inner, outer, Fraction(fullness).limit_denominator(100)).toward(outer, GUIDE_BEYOND),
    )
    front, back = worn_line(
        "neckline",
        "Square to both centres, smooth over the shoulder",
        WornHalf(n.front, (front_centre, guide, front_end), n.front_shoulder_line, n.front.centre.square),
        WornHalf(n.back, (back_centre, back_end), n.back_shoulder_line, n.back.centre.square),
    )
    return Neckline(back, front)


def pointed_neckline(n: Neck, back_centre: Place, back_end: Place, front_centre: Place, front_end: Place) -> Neckline:
    """A v: straight where it leaves the point, one fair line over the sewn shoulder, square to the centre back."""
    n.front.section("The neckline")
    straight = front_end.reading_from(front_centre).length
    guide = n.front.point(
        "neckline_guide",
        "Three quarters of the way up the v, out by a part in 24: from here it bends to meet the back",
        part_way(front_centre, front_end, V_SHARE).away_from((front_end, front_centre), straight / V_OUT),
    )

    toward = Heading((front_end.point - front_centre.point).unit, "straight at the point")
    front, back = worn_line_from_point(
        "neckline",
        "Straight at the point, smooth over the shoulder, square to the centre back",
        WornHalf(n.front, (front_centre, guide, front_end), n.front_shoulder_line, toward),
        WornHalf(n.back, (back_centre, back_end), n.back_shoulder_line, n.back.centre.square),
    )
    return Neckline(back, front, pointed=True)


def boat_neckline(n: Neck, back_centre: Place, back_end: Place, front_centre: Place, front_end: Place) -> Neckline:
    """Two shallow lines, each square to its centre and free at the shoulder, where they meet in a corner."""

    def shallow(sheet: Sheet, centre: Place, end: Place) -> Drawn:
        sheet.section("The neckline")
        says = "Shallow: square to the centre, and free at the shoulder, where a corner is meant"
        return sheet.curve("neckline", says, centre, end, leave=sheet.centre.square)

    return Neckline(
        shallow(n.back, back_centre, back_end), shallow(n.front, front_centre, front_end), shape=NeckLine.BOAT
    )


def square_neckline(n: Neck, back_centre: Place, back_end: Place, front_centre: Place, front_end: Place) -> Neckline:
    """Straight down from the shoulder and straight across; the back goes on from the front's side, over the seam."""
    n.front.section("The neckline")
    corner = n.front.point(
        "neckline_corner",
        "Below the shoulder's end, a little further in: upright, the sides would look as if they ran apart",
        front_end.level_with(front_centre).inward(SLANTS_IN),
    )
    front = n.front.straight(
        "neckline", "Straight across from the centre, and straight up", front_centre, corner, front_end
    )
    n.back.section("The neckline")
    arrive = over_seam(front, n.front_shoulder_line, n.back_shoulder_line)
    corner_behind = n.back.point(
        "neckline_corner",
        "Where the front's side, laid on, comes down to the level",
        back_end.back_along(arrive, back_centre),
    )
    guide = n.back.point(
        "neckline_guide",
        "Half way from there to the straight line between the ends: the back is round where the front is square",
        halfway(corner_behind, halfway(back_centre, back_end)),
    )
    back = n.back.curve(
        "neckline",
        "Square to the centre back; at the shoulder it goes on as the front comes",
        back_centre,
        guide,
        back_end,
        leave=n.back.centre.square,
        arrive=arrive,
    )
    return Neckline(back, front, shape=NeckLine.SQUARE, corner=corner)

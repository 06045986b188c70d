"""A funnel: the neck cut on to back and front, standing away; the shoulder seam bends up into it.

Its upper edge is level, so that what is turned inside lies flat on it. The front is drawn first: its side goes straight
up; the back's is the same, laid on shoulder on shoulder. Rules: common practice in the trade, no published source.
"""

from __future__ import annotations

from fractions import Fraction

from tapeline.blocks.neck import Neck, Neckline
from tapeline.blocks.neck_shapes import NeckLine
from tapeline.draft import Drawn, Place, Sheet, arc_centre, laid_on, part_way
from tapeline.lengths import Length

__all__ = ["funnel_neckline", "raised_shoulder"]

BENDS_FROM = Fraction(1, 2)
"""From the top down, the side of the funnel is straight for this share of its height."""


def funnel_neckline(n: Neck, back_end: Place, front_end: Place, rise: Length) -> Neckline:
    """The upper edges of back and front, and their tops at the shoulder seam."""
    n.front.section("The funnel")
    front_top = n.front.point("funnel_top", "Straight up from the shoulder: the neck stands away", front_end.up(rise))
    front_centre = n.front.point(
        "neckline_centre", "Level with it, on the centre front", n.front_neck.level_with(front_top)
    )
    n.front.straight("funnel_side", "The side of the funnel, before it is rounded", front_end, front_top)
    front = n.front.straight("neckline", "Level: what is turned inside lies flat on it", front_centre, front_top)

    n.back.section("The funnel")
    back_top = n.back.point(
        "funnel_top",
        "As on the front, laid on shoulder on shoulder, so that both seams are alike",
        laid_on(front_top, n.front_shoulder_line.starting(front_end), n.back_shoulder_line.starting(back_end)),
    )
    side = n.back.straight("funnel_side", "The side of the funnel, before it is rounded", back_end, back_top)
    arrive = side.square_at_end
    back_centre = n.back.point(
        "neckline_centre", "Where one arc that comes in square to the side begins level", arc_centre(back_top, arrive)
    )
    back = n.back.curve(
        "neckline",
        "Square to the centre back and to the funnel's side, so that it runs on over the seam",
        back_centre,
        back_top,
        leave=n.back.centre.square,
        arrive=arrive,
    )
    return Neckline(back, front, shape=NeckLine.FUNNEL, tops=(back_top, front_top), centres=(back_centre, front_centre))


def raised_shoulder(s: Sheet, top: Place, foot: Place, shoulder: Drawn, rise: Length) -> Drawn:
    """The shoulder seam from the top of the funnel: down its side, round into the shoulder, and along it."""
    begins = s.point("funnel_bend", "Here the side begins to bend outward", part_way(top, foot, BENDS_FROM))
    ends = s.point(
        "funnel_end", "Here it has become the shoulder: as far out as the funnel is high", shoulder.along(rise)
    )
    down = s.straight("funnel_upper", "The upper part of its side", top, begins)
    bend = s.curve(
        "funnel_curve",
        "Round from the neck into the shoulder",
        begins,
        ends,
        leave=down.onward,
        arrive=shoulder.way_at(rise),
    )
    rest = s.drawn(
        "shoulder_outer",
        "The rest of the shoulder",
        shoulder.path.part(rise.mm, shoulder.path.length),
        (f"the {shoulder.name} from there on",),
        (shoulder.label,),
    )
    return s.joined("raised_shoulder", "Sewn to the other shoulder, which is its mirror image", down, bend, rest)

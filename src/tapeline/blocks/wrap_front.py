"""A front that wraps over to the other side seam without buttons: two whole fronts, cut alike, on each other.

From the shoulder the front's edge runs across the body to the other side seam and is caught there, so nothing has to be
tied. Rules: common practice in the trade, no published source.
"""

from __future__ import annotations

from dataclasses import dataclass

from tapeline.blocks.centre import Centre, CentreRule, HalfLines
from tapeline.draft import Draft, Heading, Place, Sheet, hemmed, part_from, sewn, turned
from tapeline.lengths import Length, cm
from tapeline.pattern import Cut, Mark, choice

__all__ = ["WrapChoices", "wrap_front"]

LEAST_SIDE = cm(3)
"""Of the side seam, above and below the place where the other front's edge meets it."""
LEAST_CROSSING = cm(1)
"""The fronts cross at least so far below the pit of the neck: higher, and the edge lies on the throat."""


@dataclass(frozen=True, slots=True)
class WrapChoices:
    """Where the front's edge ends."""

    above_waist: Length = choice(
        cm(3), -25, 12, "the front's edge meets the other side seam so far above the waist; below nothing, lower"
    )


def wrap_front(c: WrapChoices) -> CentreRule:
    """The rule that carries a front on to the other side seam."""

    def draw(d: Draft, s: Sheet, lines: HalfLines) -> Centre:
        s.section("What wraps over to the other side")
        level = s.point(
            "wrap_level", "Where the edge meets the side, on the centre", lines.half.waist_level.up(c.above_waist)
        )
        side = lines.side
        d.require(
            "wrap-past-side",
            Length(min(side.path.start.y - level.point.y, level.point.y - side.path.end.y), "side_beside_the_wrap"),
            LEAST_SIDE,
            says="the front's edge would meet the other side within 3 cm of its underarm or its hem",
            where="garment.wrap.above_waist",
            hint="bring garment.wrap.above_waist nearer to 0, or make garment.length longer",
        )
        other = turned(s, "other_side", "The side, traced through to the other half", side, lines.centre)
        meets = s.point("wrap_meets", "Here the edge is caught in the other side seam", other.crossing_level(level))
        below = part_from(s, "side_over", "Caught in the other side seam, under it", other, meets)
        hem = turned(s, "hem_over", "The hem, traced through to the other half", lines.hem, lines.centre)
        arrive = Heading(lines.neckline.path.arrives, "as the neckline comes up to the shoulder")
        edge = s.curve(
            "wrap_edge",
            "From the other side across the body, and over the shoulder in one line with the back",
            Place(below.path.start, meets.label),
            Place(lines.neckline.path.end, "front.neckline_shoulder"),
            arrive=arrive,
        )
        crossed = s.point("wrap_crossed", "Here both fronts cross, at the centre", edge.crossing_plumb(level))
        d.require(
            "wrap-on-throat",
            lines.pit.reading_down_to(crossed).length,
            LEAST_CROSSING,
            says="the fronts would cross hardly below the pit of the neck",
            where="garment.wrap.above_waist",
            hint="make garment.wrap.above_waist smaller, so that the edge ends lower, or garment.neckline.widen larger",
        )
        return Centre(
            (hemmed("hem_over", hem.reversed), sewn("side_over", below.reversed)),
            edge,
            Cut(2, mirrored=True),
            (Mark("centre", lines.centre.path),),
        )

    return CentreRule("The centre {}, which the other front lies over", draw)

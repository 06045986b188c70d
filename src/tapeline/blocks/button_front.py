"""A front that laps over and closes with buttons; its facing is cut in one with it and folded back along the edge.

Rules: common practice in the trade, no published source.
"""

from __future__ import annotations

from tapeline.blocks.buttons import buttons
from tapeline.blocks.centre import Centre, CentreRule, HalfLines
from tapeline.draft import STRAIGHT_DOWN, Draft, Sheet, hemmed, neatened, opposite, part_to, sewn, turned
from tapeline.lengths import Length, at_most, cm
from tapeline.pattern import Cut, Mark

__all__ = ["button_front", "lap"]

BEYOND_THE_BUTTON = cm(1)
"""From the rim of a button to the front edge."""
ON_THE_SHOULDER = cm(4)
"""The facing takes so much of the shoulder seam, or half of a short one."""
LEAST_INSIDE = cm(2)
"""Further in than the centre: a narrower facing would not hold the buttonholes."""


def lap(d: Draft, button: Length) -> Length:
    """How far the front reaches beyond the centre."""
    return d.measured("lap", "Beyond the centre: half a button, and 1 beyond its rim", button / 2 + BEYOND_THE_BUTTON)


def button_front(button: Length, apart: Length, above_hem: Length, facing: Length, first: Length) -> CentreRule:
    """The rule that draws front edge, facing, buttons and buttonholes."""

    def draw(d: Draft, s: Sheet, lines: HalfLines) -> Centre:
        neck, hem_centre = lines.neckline_centre, lines.hem_centre
        by = lap(d, button)
        d.require(
            "facing-too-narrow",
            facing,
            by * 2 + LEAST_INSIDE,
            says="the facing hardly reaches past the buttonholes",
            where="garment.front.facing",
            hint="make garment.front.facing wider, or garment.front.button smaller",
        )
        s.section("The front edge")
        top = s.point("front_edge_top", "The front laps over the other by as much beyond the centre", neck.inward(by))
        low = s.point("front_edge_low", "The same at the hem", hem_centre.inward(by))
        edge = s.straight("front_edge", "The front edge: the facing is folded back along it", low, top)

        s.section("The facing, as it lies under the front")
        on_shoulder = d.measured(
            "facing_on_shoulder", "Along the shoulder", at_most(ON_THE_SHOULDER, lines.shoulder.reading().length / 2)
        )
        shoulder_end = s.point(
            "facing_shoulder", "Where the facing ends on the shoulder", lines.shoulder.along(on_shoulder)
        )
        chest = s.point(
            "facing_chest", "Its width at the chest line, from the front edge", lines.half.chest_level.out(facing - by)
        )
        hem_end = s.point("facing_hem", "As wide at the hem", lines.hem.crossing_plumb(chest))
        shoulder = part_to(s, "facing_shoulder_line", "Under the shoulder seam", lines.shoulder, shoulder_end)
        hem = part_to(s, "facing_hem_line", "Turned up with the hem", lines.hem.reversed, hem_end)
        upper = s.curve(
            "facing_upper",
            "Square to the shoulder, then straight down",
            shoulder_end,
            chest,
            leave=shoulder.square_at_end,
            arrive=STRAIGHT_DOWN,
        )
        lower = s.straight("facing_lower", "Straight down to the hem", chest, hem_end)
        inner = s.joined("facing_inner", "The inner edge of the facing", upper, lower)

        s.section("The facing, folded out along the front edge")
        neck_out = s.point("facing_neck", "The neckline's beginning, on the facing", opposite(neck, edge))
        hem_out = s.point("facing_hem_centre", "The hem's end, on the facing", opposite(hem_centre, edge))
        lap_hem = s.straight("lap_hem", "The hem runs on level under the lap", hem_centre, hem_out)
        hem_turned = turned(s, "facing_hem_turned", "The facing's hem", hem, edge)
        edges = (
            hemmed("facing_hem", s.joined("facing_whole_hem", "Turned up with the hem", lap_hem, hem_turned)),
            neatened(
                "facing_inner", turned(s, "facing_inner_turned", "Neatened, sewn to nothing", inner.reversed, edge)
            ),
            neatened(
                "facing_shoulder",
                turned(s, "facing_shoulder_turned", "Tacked to the shoulder seam", shoulder.reversed, edge),
            ),
            sewn(
                "facing_neckline",
                turned(
                    s, "facing_neckline", "Sewn to the neckline with the collar between", lines.neckline.reversed, edge
                ),
            ),
            sewn("facing_lap", s.straight("facing_lap", "Sewn to the lap's upper edge", neck_out, top)),
            sewn("lap", s.straight("lap", "The upper edge of the lap, level", top, neck)),
        )
        marks = (
            Mark("centre", lines.centre.path),
            Mark("front_edge", edge.path),
            *buttons(d, s, lines, button=button, first=first, most_apart=apart, above_hem=above_hem),
        )
        return Centre(edges, lines.neckline, Cut(2, mirrored=True), marks)

    return CentreRule("The centre {}: where both halves lie on each other when it is buttoned", draw)

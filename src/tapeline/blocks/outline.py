"""The lines of back and front around the points: shoulder, armhole, side, hem."""

from __future__ import annotations

from dataclasses import dataclass

from tapeline.blocks.dartless import Half
from tapeline.draft import LEVEL, STRAIGHT_DOWN, Drawn, Place, Reading, Sheet
from tapeline.lengths import Length, cm

__all__ = ["SideLines", "armhole", "shaped_side", "square_hem", "straight_side"]

NO_FLARE = cm(0)


@dataclass(frozen=True, slots=True)
class SideLines:
    """The side seam of one half, and the place of its waist."""

    side: Drawn
    waist: Place
    waist_out: Reading
    hem: Place


def armhole(sheet: Sheet, half: Half, shoulder: Drawn, side: Drawn, name: str = "armhole") -> Drawn:
    """From the shoulder tip, square to the shoulder, to the underarm, square to the side.

    Level at the underarm would leave a point or a dip there when the side slants.
    """
    return sheet.curve(
        name,
        "Square to the shoulder and square to the side, so that it runs on smoothly over both seams",
        half.shoulder_tip,
        half.armhole_point,
        half.armhole_hollow,
        half.underarm,
        leave=shoulder.square_at_end,
        arrive=side.square_at_start,
    )


def straight_side(sheet: Sheet, half: Half, hem: Place) -> SideLines:
    """Straight from the underarm to the hip line and on: nothing is taken in at the waist."""
    to_hip = sheet.straight("side_line", "Underarm to hip, straight", half.underarm, half.side_hip)
    waist = sheet.point("side_waist", "The side at the waist", to_hip.crossing_level(half.waist_level))
    end = sheet.point(
        "side_hem",
        "Where the side ends: one arc can leave the centre level and meet the side square",
        to_hip.arc_end(hem),
    )
    side = sheet.straight("side", "Underarm to hem", half.underarm, end)
    return SideLines(side, waist, waist.reading_from(half.waist_level), end)


def shaped_side(sheet: Sheet, half: Half, taken_in: Length, hem: Place, flare: Length = NO_FLARE) -> SideLines:
    """Taken in at the waist, following the body to the hip, from there straight down or flared."""
    straight = sheet.straight("side_line", "Underarm to hip, straight", half.underarm, half.side_hip)
    waist = sheet.point(
        "side_waist",
        "Taken in at the waist, from the straight line",
        straight.crossing_level(half.waist_level).inward(taken_in),
    )
    arrive, end, says = STRAIGHT_DOWN, half.side_hip.level_with(hem), "The side at the hem, straight below the hip"
    if flare.mm:
        out = sheet.point(
            "side_flare", "Out by the flare, level with the hem", half.side_hip.level_with(hem).out(flare)
        )
        below_hip = sheet.straight("side_flare_line", "From the hip to the flare, straight", half.side_hip, out)
        arrive, end, says = below_hip.onward, below_hip.arc_end(hem), "Where one arc from the centre meets it square"
    to_hip = sheet.curve(
        "side_to_hip",
        "Follows the body from underarm to hip",
        half.underarm,
        waist,
        half.side_hip,
        leave=STRAIGHT_DOWN,
        arrive=arrive,
    )
    end = sheet.point("side_hem", says, end)
    below = sheet.straight("side_below_hip", "Straight on from the hip", half.side_hip, end)
    return SideLines(
        sheet.joined("side", "Underarm to hem", to_hip, below), waist, waist.reading_from(half.waist_level), end
    )


def square_hem(sheet: Sheet, centre: Place, side: SideLines) -> Drawn:
    """From the side, square to it, to the centre, square to the fold."""
    return sheet.curve(
        "hem",
        "Square to the side and square to the centre, so that it runs on smoothly over both",
        side.hem,
        centre,
        leave=side.side.square_at_end,
        arrive=LEVEL,
    )

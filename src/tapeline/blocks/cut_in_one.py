"""A sleeve cut in one with the body: the shoulder line runs on down the arm, and the underarm runs into the side.

The sleeve is drawn at the angle at which it hangs. Lifted, it turns about the shoulder point, and the underarm has to
reach: so far as its curve is longer than the straight line, or a gusset gives what opens
(docs/explanation/raglan-and-cut-in-one.md).
Rules: common practice in the trade, no published source.
"""

from __future__ import annotations

from dataclasses import dataclass

from tapeline.blocks.cut_in_one_arm import (
    ROUND,
    CutInOneSizes,
    across_arm,
    at_the_wrist,
    on_the_side,
    over_the_shoulder,
    refuse_short_sleeve,
    refuse_too_steep,
    rounded,
    underarm_corner,
)
from tapeline.blocks.cut_in_one_choices import ArmChoices, CutInOneSleeveChoices, Underarm
from tapeline.blocks.dartless import Half
from tapeline.blocks.gusset import slit_lines, slit_opens
from tapeline.blocks.neck import SHOULDER_RUN
from tapeline.blocks.outline import SideLines
from tapeline.draft import Draft, Drawn, Place, Reading, Sheet, fall_at, foot_of, lift_until
from tapeline.lengths import Length, cm

__all__ = ["CutInOne", "cut_in_one_lines"]


@dataclass(frozen=True, slots=True)
class CutInOne:
    """The lines of one half, from the neck round the arm to the side."""

    overarm: Drawn
    shoulder_point: Place
    hem: Drawn
    underarm: Drawn
    """From the sleeve's hem to where the side begins, or to the slit."""
    slit: tuple[Drawn, Drawn] | None
    """From the sleeve to its end, and from there to the side."""
    side: Drawn
    side_out: Reading
    """From the centre line to where it begins."""
    on_sleeve: Place
    """Where the underarm leaves the straight line of the sleeve."""
    across: Drawn
    """Half round the upper arm."""
    length: Length
    """Of the sleeve, from the shoulder point."""
    straight: Length
    """The first half's underarm seam from the hem, as far as it is straight."""
    below: Length
    """The whole of it."""
    opens: Length | None
    """How far the slit opens when the arm is lifted."""


def cut_in_one_lines(
    d: Draft,
    sheet: Sheet,
    half: Half,
    neckline_end: Place,
    side: SideLines,
    *,
    arm: ArmChoices,
    sleeve: CutInOneSleeveChoices,
    sizes: CutInOneSizes,
    other: CutInOne | None,
) -> CutInOne:
    """One half; the second gets the sleeve's and the underarm's length of the first, `other`."""
    name = sheet.name
    fall = d.measured("arm_fall", "How far the sleeve falls over 14", fall_at(arm.hang, SHOULDER_RUN))
    refuse_too_steep(d, arm, fall)
    top = over_the_shoulder(d, sheet, half, neckline_end, fall)
    ray, straight, round_over = top.arm, top.straight, top.round_over
    wrist_over, wrist = at_the_wrist(sheet, top, sizes)
    reaches, corner = underarm_corner(d, sheet, half, side, arm)
    line = sheet.straight("underarm_line", "From there to the wrist, straight", corner, wrist)
    gusset = arm.underarm is Underarm.GUSSET
    begins = "underarm_sleeve" if gusset else "curve_start"
    on_sleeve = sheet.point(begins, "So far along the sleeve", line.along(reaches))
    on_side = sheet.point("underarm_side", "As far down the side", on_the_side(side, arm, reaches))
    _, below_side = sheet.cut(
        ("side_above", "side_below"), ("Given up to the underarm", "Sewn to the other half"), side.side, on_side
    )
    slit: tuple[Drawn, Drawn] | None = None
    curve: Drawn | None = None
    opens: Length | None = None
    middle = on_sleeve
    if gusset:
        slit = slit_lines(d, sheet, arm.slit, on_sleeve, on_side)
        opens = slit_opens(d, sheet, half.shoulder_tip, on_sleeve, on_side, arm=arm)
    else:
        curve, middle = rounded(d, sheet, (line, below_side), on_sleeve, on_side)
        if other is None:
            lift = lift_until(on_sleeve, half.shoulder_tip, on_side, d.sizes[f"{name}_underarm_curve"].length)
            d.measured(
                "arm_reach_fall",
                "How far the arm falls over 14 when it is lifted until the underarm curve is straight",
                fall_at(arm.hang - lift, SHOULDER_RUN),
            )
    across = across_arm(sheet, middle, (straight, wrist_over))
    if other is None:
        foot = sheet.point("underarm_foot", "Square across from it", foot_of(on_sleeve, (straight, wrist_over)))
        down = d.measured("underarm_below_round", "Down the straight arm to there", foot.reading_from(straight))
        clears = d.measured("underarm_depth", "From the shoulder point down the arm to the underarm", round_over + down)
        length = d.measured(
            "sleeve_length", "From the shoulder point to the hem", sleeve.length.on(sizes.arm_length, clears)
        )
        refuse_short_sleeve(d, length, clears)
    else:
        length = other.length
    hem_over = sheet.point("sleeve_hem_level", "The sleeve's hem, on top", ray.at(length - round_over + ROUND))
    rest = sheet.straight("overarm_rest", "Straight down the arm", straight, hem_over)
    overarm = sheet.joined("overarm", "Front and back are sewn together over the arm", top.shoulder, top.over, rest)
    taken = curve.reading().length if curve else cm(0)
    if other is None:
        under = sheet.point(
            "underarm_hem", "Where one arc from the overarm seam comes in square", line.arc_end(hem_over, rest)
        )
        seam_length = d.measured("underarm_straight", "The sleeve's underarm, straight", under.reading_from(on_sleeve))
        below = d.measured("underarm", "The underarm seam, down to the side", seam_length + taken)
    else:
        seam_length, below = other.straight, other.below
        under = sheet.point(
            "underarm_hem",
            "So far out that the underarm seams are equal",
            line.along(reaches + below - taken),
        )
    hem = sheet.curve(
        "sleeve_hem",
        "Square to both seams, so that it is round when sewn",
        hem_over,
        under,
        leave=rest.square_at_end,
        arrive=line.square_at_end,
    )
    up = sheet.straight("underarm_rest", "Straight from the hem", under, on_sleeve)
    underarm = sheet.joined("underarm_seam", "Sewn to the other half", up, curve) if curve else up
    side_out = on_side.reading_from(half.chest_level.level_with(on_side))
    return CutInOne(
        overarm,
        half.shoulder_tip,
        hem,
        underarm,
        slit,
        below_side,
        side_out,
        on_sleeve,
        across,
        length,
        seam_length,
        below,
        opens,
    )

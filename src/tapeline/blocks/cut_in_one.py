"""A sleeve cut in one with the body: the shoulder line runs on down the arm, and the underarm runs into the side.

The sleeve is drawn at the angle at which it hangs. Lifted, it turns about the shoulder point, and the underarm has to
reach: so far as its curve is longer than the straight line, or a gusset gives what opens
(docs/explanation/raglan-and-cut-in-one.md).
Rules: common practice in the trade, no published source.
"""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction

from tapeline.blocks.cut_in_one_choices import ArmChoices, CutInOneSleeveChoices, Underarm
from tapeline.blocks.dartless import Half
from tapeline.blocks.gusset import MOUTH, slit_lines, slit_opens
from tapeline.blocks.neck import SHOULDER_RUN
from tapeline.blocks.outline import SideLines
from tapeline.draft import Draft, Drawn, Place, Ray, Reading, Sheet, fall_at, foot_of, lift_until
from tapeline.lengths import Length, at_most, cm

__all__ = ["CutInOne", "CutInOneSizes", "cut_in_one_lines"]

ROUND = cm(3)
"""The overarm seam runs straight on over the shoulder point for so long, and bends within twice as much."""
STEEPEST = 40
"""Degrees: steeper, and without a gusset the arm lifts the garment (common practice, no source)."""
LEAST_UNDERARM = cm(1)
SLIT_ABOVE_WAIST = Fraction(9, 10)
ABOVE_WAIST = Fraction(2, 3)
"""Of the side down to the waist the underarm takes so much at most: below it the side follows the body."""


@dataclass(frozen=True, slots=True)
class CutInOneSizes:
    """What both halves are drawn with."""

    arm_length: Length
    wrist_width: Length


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
    wrist_over = sheet.point("wrist_over", "The wrist, on top", ray.at(sizes.arm_length - round_over + ROUND))
    wrist = sheet.point(
        "wrist",
        "The wrist, under the arm: half its width square across",
        wrist_over.away_from((wrist_over, straight), sizes.wrist_width / 2),
    )
    reaches, corner = underarm_corner(d, sheet, half, side, arm)
    line = sheet.straight("underarm_line", "From there to the wrist, straight", corner, wrist)
    on_sleeve = sheet.point("underarm_sleeve", "So far along the sleeve", line.along(reaches))
    on_side = sheet.point("underarm_side", "As far down the side", on_the_side(side, arm, reaches))
    _, below_side = sheet.cut(
        ("side_above", "side_below"), ("Given up to the underarm", "Sewn to the other half"), side.side, on_side
    )
    slit: tuple[Drawn, Drawn] | None = None
    curve: Drawn | None = None
    opens: Length | None = None
    middle = on_sleeve
    if arm.underarm is Underarm.GUSSET:
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
    over_foot = sheet.point("arm_foot", "Square across the arm from there", foot_of(middle, (straight, wrist_over)))
    across = sheet.straight("arm_across", "Half round the upper arm", over_foot, middle)
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


@dataclass(frozen=True, slots=True)
class OverShoulder:
    """Shoulder and arm, and the round between them."""

    shoulder: Drawn
    over: Drawn
    arm: Ray
    straight: Place
    """Where the arm is straight."""
    round_over: Length


def over_the_shoulder(d: Draft, sheet: Sheet, half: Half, neckline_end: Place, fall: Length) -> OverShoulder:
    """Straight on over the shoulder point, round, and down the line of the arm."""
    name = sheet.name
    shoulder = sheet.straight("shoulder", "As far as the shoulder point", neckline_end, half.shoulder_tip)
    along = d.measured(f"{name}_shoulder", "From the neckline to the shoulder point", shoulder.reading())
    corner = sheet.point(
        "overarm_corner", "Straight on along the shoulder: the bone keeps its room", shoulder.along(along + ROUND)
    )
    arm = sheet.ray("arm_line", "The line down which the arm hangs", corner, fall, SHOULDER_RUN)
    straight = sheet.point("overarm_straight", "From here the arm is straight", arm.at(ROUND))
    over = sheet.curve(
        "overarm_round",
        "Bends from the shoulder into the arm",
        half.shoulder_tip,
        straight,
        leave=shoulder.onward,
        arrive=arm.onward,
    )
    round_over = d.measured(f"{name}_over", "Round over the shoulder", over.reading())
    return OverShoulder(shoulder, over, arm, straight, round_over)


def refuse_too_steep(d: Draft, arm: ArmChoices, fall: Length) -> None:
    """Without a gusset a steep sleeve cannot be lifted."""
    if arm.underarm is Underarm.CURVE:
        d.require(
            "cut-in-one-too-steep",
            fall_at(STEEPEST, SHOULDER_RUN).length + cm(0.001),
            fall,
            says="a sleeve that is cut in one and hangs so steeply has an underarm too short to lift the arm: "
            "it would lift the whole garment",
            where="garment.arm.hang",
            hint='make garment.arm.hang 40 or less, or set garment.arm.underarm = "gusset"',
        )


def underarm_corner(d: Draft, s: Sheet, half: Half, side: SideLines, arm: ArmChoices) -> tuple[Length, Place]:
    """How far from their corner sleeve and side are given up to the underarm, and the corner."""
    to_waist = d.measured(f"{s.name}_underarm_to_waist", "Down the side to the waist", side.side.reading_to(side.waist))
    if arm.underarm is Underarm.CURVE:
        reaches = d.measured(
            f"{s.name}_underarm_reach",
            "As far as the curve is to reach, but not past two thirds of the way to the waist",
            at_most(arm.curve, to_waist * ABOVE_WAIST),
        )
        return reaches, half.underarm
    mouth = d.measured(f"{s.name}_underarm_reach", "Half the slit's side: its mouth", arm.slit * MOUTH)
    d.require(
        "slit-past-waist",
        to_waist * SLIT_ABOVE_WAIST,
        arm.slit,
        says="the slit for the gusset would reach down to the waist",
        where="garment.arm.slit",
        hint="make garment.arm.slit smaller, or the armhole less low with garment.looseness.drop",
    )
    low = "Lower than without a gusset, which gives back what the arm loses by it: a steep sleeve needs the width"
    return mouth, s.point("gusset_corner", low, side.side.along(mouth))


def on_the_side(side: SideLines, arm: ArmChoices, reaches: Length) -> Place:
    """As far below the corner as is given up of the sleeve."""
    return side.side.along(arm.slit if arm.underarm is Underarm.GUSSET else reaches)


def refuse_short_sleeve(d: Draft, length: Length, clears: Length) -> None:
    """A sleeve has an underarm seam."""
    d.require(
        "sleeve-too-short",
        length,
        clears + LEAST_UNDERARM,
        says="the sleeve ends before it clears the underarm",
        where="sleeve",
        hint="make garment.sleeve.length longer, or garment.arm.curve (or slit) smaller",
    )


def rounded(d: Draft, s: Sheet, lines: tuple[Drawn, Drawn], on_sleeve: Place, on_side: Place) -> tuple[Drawn, Place]:
    """The curve from the sleeve's underarm line into the side, and its middle."""
    line, side = lines
    curve = s.curve(
        "underarm_curve",
        "Rounds the underarm: straight on from the sleeve, and into the side",
        on_sleeve,
        on_side,
        leave=line.reversed.onward,
        arrive=side.outset,
    )
    length = d.measured(f"{s.name}_underarm_curve", "Along the underarm curve", curve.reading())
    return curve, s.point("underarm_middle", "The middle of the curve", curve.along(length / 2))

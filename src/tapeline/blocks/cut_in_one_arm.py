"""The arm of a sleeve that is cut in one: over the shoulder, down to the wrist, and the corner under the arm.

Rules: common practice in the trade, no published source.
"""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction

from tapeline.blocks.cut_in_one_choices import ArmChoices, Underarm
from tapeline.blocks.dartless import Half
from tapeline.blocks.gusset import MOUTH
from tapeline.blocks.neck import SHOULDER_RUN
from tapeline.blocks.outline import SideLines
from tapeline.draft import Draft, Drawn, Place, Ray, Sheet, fall_at, foot_of
from tapeline.lengths import Length, at_most, cm

__all__ = [
    "ROUND",
    "CutInOneSizes",
    "OverShoulder",
    "across_arm",
    "at_the_wrist",
    "on_the_side",
    "over_the_shoulder",
    "refuse_short_sleeve",
    "refuse_too_steep",
    "rounded",
    "underarm_corner",
]

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


def at_the_wrist(s: Sheet, top: OverShoulder, sizes: CutInOneSizes) -> tuple[Place, Place]:
    """The wrist on top of the arm and under it."""
    wrist_over = s.point("wrist_over", "The wrist, on top", top.arm.at(sizes.arm_length - top.round_over + ROUND))
    return wrist_over, s.point(
        "wrist",
        "The wrist, under the arm: half its width square across",
        wrist_over.away_from((wrist_over, top.straight), sizes.wrist_width / 2),
    )


def across_arm(s: Sheet, underarm: Place, arm: tuple[Place, Place]) -> Drawn:
    """Square across the sleeve."""
    foot = s.point("arm_foot", "Square across the arm from there", foot_of(underarm, arm))
    return s.straight("arm_across", "Half round the upper arm", foot, underarm)

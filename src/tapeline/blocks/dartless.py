"""The dartless block: back and front of a plain top, one half each, by proportion.

Rules of proportion: common practice in the trade, no published source. It holds for bodies whose shoulder points lie
outside the neck and whose armholes are wider than nothing; `armhole-closed` and `shoulder-not-reached` say when not.
"""

from __future__ import annotations

from dataclasses import dataclass, replace
from fractions import Fraction

from tapeline.blocks.corrected_sizes import back_lengths, chest_quarters, eased_shoulder, longer_front
from tapeline.blocks.frame import Frame
from tapeline.blocks.looseness import Looseness
from tapeline.blocks.neck import Neck, neck
from tapeline.blocks.shoulder import back_lines, front_lines, lowered, sloped_back
from tapeline.draft import Draft, Place, corrected, foot_of, halfway, part_way
from tapeline.lengths import cm

__all__ = ["Dartless", "Half", "dartless"]

LEAST_ARMHOLE = cm(8)
"""From the shoulder tip's level down to the chest line: less, and no arm goes through."""
LEAST_UNDERARM = cm(1.5)
"""From the back-width line out to the side: less, and there is no armhole to draw."""
LEAST_TO_WAIST = cm(3)
"""From the chest line down to the waist."""
MOST_SHOULDER = cm(2)
MOST_BUST = cm(10)
"""Over the upper chest; common practice, no source: the survey's fullest, one woman in three hundred."""
BELOW_THE_MIDDLE = cm(1)
"""The back armhole point lies this much below the middle of the armhole."""
FRONT_POINT_SHARE = Fraction(2, 3)
"""The front armhole point lies this far down from the shoulder's level to the chest line."""


@dataclass(frozen=True, slots=True)
class Half:
    """The points of a back or front half that lines are drawn through."""

    shoulder_tip: Place
    armhole_point: Place
    armhole_hollow: Place
    underarm: Place
    chest_level: Place
    waist_level: Place
    hip_level: Place
    side_hip: Place


@dataclass(frozen=True, slots=True)
class Dartless:
    """The block's points: neck, back and front."""

    neck: Neck
    back: Half
    front: Half


def dartless(d: Draft, f: Frame, c: Looseness) -> Dartless:
    """All points of the block, loosened."""
    n = neck(d, f.neck_width, f.back_shoulder_fall, f.front_shoulder_fall)
    chest_depth = d.measured(
        "chest_depth",
        "Nape to chest line, with the armhole's drop",
        corrected(
            f.armhole_depth + c.drop,
            more=lowered(d),
            less=(d.correction("square_shoulders"),),
        ),
    )
    longer_back = back_lengths(d, chest_depth, f.back_length)
    chest_quarter = d.measured("chest_quarter", "A quarter of the bust, and the side's ease", f.bust / 4 + c.side)
    quarters = chest_quarters(d, chest_quarter)
    hip_quarter = d.measured("hip_quarter", "A quarter of the hip, and the side's ease", f.hip / 4 + c.side)
    blades = d.correction("shoulder_blades")
    back_line = d.measured(
        "back_line", "Centre back to the back-width line", corrected(f.half_back_width + c.shoulder, more=(blades,))
    )
    chest_line = d.measured(
        "front_line", "Centre front to the chest-width line", f.half_chest_width + c.shoulder - c.scoop
    )

    d.require(
        "back-wider-than-chest",
        quarters.back,
        back_line + LEAST_UNDERARM,
        says="the back-width line leaves no room for an armhole",
        where="back",
        hint="take bust, upper chest and back width again, or set half_back_width by hand",
    )
    d.require(
        "chest-wider-than-bust",
        quarters.front,
        chest_line + LEAST_UNDERARM,
        says="the chest-width line leaves no room for an armhole",
        where="front",
        hint="take bust, upper chest and chest width again, or set half_chest_width by hand",
    )
    d.require(
        "waist-above-chest",
        f.back_length,
        chest_depth + LEAST_TO_WAIST,
        says="the chest line lies at the waist or below it",
        where="back",
        hint="take back length and upper chest again, lower the looseness, or set armhole_depth by hand",
    )
    d.remark(
        "shoulder-wide",
        c.shoulder,
        above=MOST_SHOULDER,
        says="past 2 cm a wider shoulder stands away in an angle unless the shoulder is drawn dropped",
        where="garment.looseness.shoulder",
        hint="keep it at 2 cm or less, or choose the style with a dropped shoulder",
    )
    d.remark(
        "shoulder-inside-back",
        f.half_back_width,
        above=f.shoulder_width / 2,
        says="the back is wider at the arms than the shoulders are, so the armhole bends outward on its way down",
        where="back.armhole",
        hint="take shoulder width and back width again, or set half_back_width by hand",
    )
    d.remark(
        "bust-wants-dart",
        f.bust - d.tape("upper_chest"),
        above=MOST_BUST,
        says="without a dart so much bust over the upper chest makes the armhole wide and the front hem dip",
        where="front",
        hint="take bust and upper chest again, or give the front some of the back's width and more length with "
        "garment.corrections.full_bust; a dart is not drafted yet",
    )

    n.back.section("The levels of the back")
    back_chest = n.back.point("chest_level", "The chest line, on the centre back", n.nape.down(longer_back.to_chest))
    back_waist = n.back.point("waist_level", "The waist line", n.nape.down(longer_back.to_waist))
    back_hip = n.back.point("hip_level", "The hip line", back_waist.down(f.hip_depth))

    n.back.section("Shoulder, underarm and side of the back")
    back_sloped = sloped_back(d, n, f.shoulder_width / 2)
    shoulder_length = d.size(
        "shoulder_length",
        "Neck point to shoulder point, along the shoulder",
        back_sloped.until(f.shoulder_width / 2, straight_from=n.nape),
        taped=lambda: d.tape("shoulder_length"),
    )
    back_shoulders = back_lines(d, n, back_sloped, shoulder_length)
    back_shoulder = eased_shoulder(d, shoulder_length + c.shoulder, blades)
    back_tip = n.back.point(
        "back_shoulder_tip",
        "The shoulder point, and out by the looseness of the shoulder",
        back_shoulders.sewn.at(back_shoulder),
    )
    back_underarm = n.back.point("underarm", "Where the side seam begins", back_chest.out(quarters.back))
    back_side_hip = n.back.point("side_hip", "The side at the hip", back_hip.out(hip_quarter))

    d.require(
        "armhole-closed",
        back_tip.reading_down_to(back_chest).length,
        LEAST_ARMHOLE,
        says="the shoulder tip lies too near the chest line for an arm to go through",
        where="back",
        hint="take shoulder slope, shoulder width and upper chest again, or set armhole_depth by hand",
    )

    n.back.section("The back armhole")
    back_corner = n.back.point(
        "back_width_corner", "Where the back-width line meets the chest line", back_chest.out(back_line)
    )
    back_top = n.back.point(
        "back_width_top",
        "The shoulder's level on the same line",
        back_corner.level_with(back_shoulders.level(back_tip, back_shoulder)),
    )
    back_armhole_point = n.back.point(
        "back_armhole_point",
        "On the back-width line, 1 below the middle: the blade needs room",
        halfway(back_top, back_corner).down(BELOW_THE_MIDDLE),
    )
    back_middle = n.back.point(
        "back_armhole_middle", "Middle of the straight line to the underarm", halfway(back_armhole_point, back_underarm)
    )
    back_hollow = n.back.point(
        "back_armhole_hollow", "How far the armhole bends into the corner", halfway(back_corner, back_middle)
    )

    n.front.section("The levels of the front")
    front_chest = n.front.point("chest_level", "The chest line, on the centre front", n.front_level.down(chest_depth))
    front_waist = n.front.point("waist_level", "The waist line", n.front_level.down(longer_front(d, f.back_length)))
    front_hip = n.front.point("hip_level", "The hip line", front_waist.down(f.hip_depth))

    n.front.section("Shoulder, underarm and side of the front")
    front_shoulders = front_lines(d, n, shoulder_length)
    front_tip = n.front.point(
        "front_shoulder_tip",
        "As long a shoulder as the back's",
        front_shoulders.sewn.at(shoulder_length + c.shoulder),
    )
    front_underarm = n.front.point("underarm", "Where the side seam begins", front_chest.out(quarters.front))
    front_side_hip = n.front.point("side_hip", "The side at the hip", front_hip.out(hip_quarter))

    n.front.section("The front armhole")
    front_corner = n.front.point(
        "chest_width_corner", "Where the chest-width line meets the chest line", front_chest.out(chest_line)
    )
    front_top = n.front.point(
        "chest_width_top",
        "The shoulder's level on the same line",
        front_corner.level_with(front_shoulders.level(front_tip, shoulder_length + c.shoulder)),
    )
    front_armhole_point = n.front.point(
        "front_armhole_point",
        "On the chest-width line, two thirds of the way down: the arm reaches forward",
        part_way(front_top, front_corner, FRONT_POINT_SHARE),
    )
    front_foot = n.front.point(
        "front_armhole_foot",
        "Square from the corner onto the straight line to the underarm",
        foot_of(front_corner, (front_armhole_point, front_underarm)),
    )
    front_hollow = n.front.point(
        "front_armhole_hollow",
        "How far the armhole bends into the corner: deeper than at the back",
        halfway(front_corner, front_foot),
    )
    return Dartless(
        replace(n, back_shoulder_line=back_shoulders.sewn, front_shoulder_line=front_shoulders.sewn),
        Half(back_tip, back_armhole_point, back_hollow, back_underarm, back_chest, back_waist, back_hip, back_side_hip),
        Half(
            front_tip,
            front_armhole_point,
            front_hollow,
            front_underarm,
            front_chest,
            front_waist,
            front_hip,
            front_side_hip,
        ),
    )
